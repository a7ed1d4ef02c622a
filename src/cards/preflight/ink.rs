//! The texts of a face with the room that their ink takes, in millimetres from the corner of the cut.

use crate::cards::face::{BlockKind, Face};
use usvg::{Group, Node, Text};

/// Everything on a face that is read.
pub(super) struct Ink<'a> {
    pub texts: Vec<InkedText<'a>>,
    /// The drawings with the room that each takes.
    pub drawings: Vec<(&'a str, Bounds)>,
}

/// A text and the box round its ink.
pub(super) struct InkedText<'a> {
    pub block: &'a str,
    pub text: &'a Text,
    pub bounds: Bounds,
}

/// A box: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bounds {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl<'a> Ink<'a> {
    pub fn of(face: &'a Face) -> Self {
        let (mut texts, mut drawings) = (Vec::new(), Vec::new());
        let bleed = face.bleed.mm();
        for block in &face.blocks {
            if block.kind == BlockKind::Drawing && block.tree.root().has_children() {
                drawings.push((
                    block.name.as_str(),
                    Bounds::of(block.tree.root().abs_stroke_bounding_box(), bleed),
                ));
            }
            gather(block.tree.root(), &mut |text| {
                texts.push(InkedText {
                    block: &block.name,
                    text,
                    bounds: Bounds::of(text.abs_stroke_bounding_box(), bleed),
                });
            });
        }
        Self { texts, drawings }
    }
}

fn gather<'a>(group: &'a Group, found: &mut impl FnMut(&'a Text)) {
    for node in group.children() {
        match node {
            Node::Group(group) => gather(group, found),
            Node::Text(text) => found(text),
            Node::Path(_) | Node::Image(_) => {}
        }
    }
}

impl Bounds {
    fn of(ink: usvg::Rect, bleed: f64) -> Self {
        Self {
            left: f64::from(ink.left()) - bleed,
            top: f64::from(ink.top()) - bleed,
            right: f64::from(ink.right()) - bleed,
            bottom: f64::from(ink.bottom()) - bleed,
        }
    }

    /// How far this box runs out of another; at most 0 where it lies inside.
    pub fn outside(self, other: Self) -> f64 {
        let out = [
            other.left - self.left,
            other.top - self.top,
            self.right - other.right,
            self.bottom - other.bottom,
        ];
        out.into_iter().fold(f64::NEG_INFINITY, f64::max)
    }

    /// How far two boxes lie over each other; at most 0 where they don't.
    pub fn overlap(self, other: Self) -> f64 {
        let across = self.right.min(other.right) - self.left.max(other.left);
        let along = self.bottom.min(other.bottom) - self.top.max(other.top);
        across.min(along)
    }
}

impl InkedText<'_> {
    /// What it says.
    pub fn words(&self) -> String {
        self.text.chunks().iter().map(usvg::TextChunk::text).collect()
    }
}
