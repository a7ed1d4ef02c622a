//! Everything that a face is drawn with, each with the room that its ink takes, in millimetres from the
//! corner of the cut.

use super::bounds::Bounds;
use crate::cards::drawings::MADE_HERE;
use crate::cards::face::{Block, BlockKind, Face};
use crate::units::Length;
use usvg::{Group, Image, Node, Path, Text, Transform};

/// Everything on a face, in the order of drawing.
#[derive(Default)]
pub(super) struct Ink<'a> {
    pub texts: Vec<InkedText<'a>>,
    /// Lines and fills.
    pub shapes: Vec<Shape<'a>>,
    pub pictures: Vec<Picture<'a>>,
    /// Blocks that are drawings with the room that each takes.
    pub drawings: Vec<(&'a str, Bounds)>,
    /// Drawings that this program made, each with how the layout moves and scales it.
    pub made_here: Vec<(&'a str, Transform)>,
}

/// A text.
pub(super) struct InkedText<'a> {
    pub block: &'a str,
    pub kind: BlockKind,
    pub text: &'a Text,
    /// Whether it stands in a drawing that this program made.
    pub made_here: bool,
    /// The box round its ink.
    pub bounds: Bounds,
    /// What the layout lets show of it.
    pub window: Option<Bounds>,
    pub opacity: f32,
    /// How many shapes are drawn before it.
    pub above: usize,
}

/// A line or a fill.
pub(super) struct Shape<'a> {
    pub block: &'a str,
    pub path: &'a Path,
    /// The box round its fill.
    pub bounds: Bounds,
    /// The box round its ink, lines among it.
    pub inked: Bounds,
    /// What the layout lets show of it.
    pub window: Option<Bounds>,
    pub opacity: f32,
}

/// A raster image.
pub(super) struct Picture<'a> {
    pub block: &'a str,
    pub image: &'a Image,
    pub inked: Bounds,
}

impl<'a> Ink<'a> {
    pub fn of(face: &'a Face) -> Self {
        let mut ink = Self::default();
        for block in &face.blocks {
            let root = block.tree.root();
            if block.kind == BlockKind::Drawing && root.has_children() {
                let bounds = Bounds::of(root.abs_stroke_bounding_box(), face.bleed.mm());
                ink.drawings.push((&block.name, bounds));
            }
            let walk = Walk { block, bleed: face.bleed.mm(), opacity: 1.0, window: None, made_here: false };
            walk.gather(root, &mut ink);
        }
        ink
    }

    /// The texts of a block.
    pub fn texts_of(&self, block: &Block) -> impl Iterator<Item = &InkedText<'a>> {
        self.texts.iter().filter(move |text| text.block == block.name)
    }
}

/// What the groups round a node say.
#[derive(Clone, Copy)]
struct Walk<'a> {
    block: &'a Block,
    bleed: f64,
    opacity: f32,
    window: Option<Bounds>,
    made_here: bool,
}

impl<'a> Walk<'a> {
    fn gather(self, group: &'a Group, ink: &mut Ink<'a>) {
        let within = self.into_group(group);
        if within.made_here && !self.made_here {
            ink.made_here.push((&self.block.name, group.abs_transform()));
        }
        for node in group.children() {
            match node {
                Node::Group(group) => within.gather(group, ink),
                Node::Text(text) => ink.texts.push(within.text(text, ink.shapes.len())),
                Node::Path(path) if path.is_visible() => ink.shapes.push(within.shape(path)),
                Node::Image(image) => ink.pictures.push(within.picture(image)),
                Node::Path(_) => {}
            }
        }
    }

    fn into_group(self, group: &Group) -> Self {
        let mut window = self.window;
        for shown in windows(group) {
            let shown = Bounds::of(shown, self.bleed);
            window = Some(window.map_or(shown, |window| window.common(shown)));
        }
        Self {
            opacity: self.opacity * group.opacity().get(),
            window,
            made_here: self.made_here || group.id().starts_with(MADE_HERE),
            ..self
        }
    }

    fn text(self, text: &'a Text, above: usize) -> InkedText<'a> {
        InkedText {
            block: &self.block.name,
            kind: self.block.kind,
            text,
            made_here: self.made_here,
            bounds: Bounds::of(text.abs_stroke_bounding_box(), self.bleed),
            window: self.window,
            opacity: self.opacity,
            above,
        }
    }

    fn shape(self, path: &'a Path) -> Shape<'a> {
        Shape {
            block: &self.block.name,
            path,
            bounds: Bounds::of(path.abs_bounding_box(), self.bleed),
            inked: Bounds::of(path.abs_stroke_bounding_box(), self.bleed),
            window: self.window,
            opacity: self.opacity,
        }
    }

    fn picture(self, image: &'a Image) -> Picture<'a> {
        let inked = Bounds::of(image.abs_bounding_box(), self.bleed);
        Picture { block: &self.block.name, image, inked }
    }
}

/// The boxes round what a group's clip and mask let show.
fn windows(group: &Group) -> impl Iterator<Item = usvg::Rect> {
    let clip = group.clip_path().and_then(|clip| {
        let transform = group.abs_transform().pre_concat(clip.transform());
        clip.root().bounding_box().transform(transform)
    });
    let mask = group.mask().and_then(|mask| mask.rect().to_rect().transform(group.abs_transform()));
    clip.into_iter().chain(mask)
}

impl Shape<'_> {
    /// Its fill, where it has one that covers anything.
    pub fn fill(&self) -> Option<&usvg::Fill> {
        let room = self.path.data().bounds();
        self.path.fill().filter(|_| room.width() > 0.0 && room.height() > 0.0)
    }
}

impl InkedText<'_> {
    /// What it says.
    pub fn words(&self) -> String {
        self.text.chunks().iter().map(usvg::TextChunk::text).collect()
    }

    /// The smallest type in it, as it is printed; where a layout squeezes it, across the squeeze.
    pub fn size(&self) -> Length {
        let spans = self.text.chunks().iter().flat_map(|chunk| chunk.spans());
        let smallest = spans.map(|span| f64::from(span.font_size().get())).fold(f64::INFINITY, f64::min);
        Length::from_mm(smallest * scales(self.text.abs_transform()).0)
    }
}

/// The least and the most that a transform makes of one millimetre, over all directions: its singular values.
pub(super) fn scales(transform: Transform) -> (f64, f64) {
    let [a, b, c, d] = [transform.sx, transform.ky, transform.kx, transform.sy].map(f64::from);
    let (half, area) = ((a * a + b * b + c * c + d * d) / 2.0, a * d - b * c);
    let spread = (half * half - area * area).max(0.0).sqrt();
    ((half - spread).max(0.0).sqrt(), (half + spread).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_are_those_of_the_longest_and_the_shortest_direction() {
        let near = |transform, (least, most): (f64, f64)| {
            let found = scales(transform);
            assert!((found.0 - least).abs() < 1e-6 && (found.1 - most).abs() < 1e-6, "{found:?}");
        };
        near(Transform::from_translate(3.0, 4.0), (1.0, 1.0));
        near(Transform::from_rotate(30.0), (1.0, 1.0));
        near(Transform::from_scale(2.0, -0.5).post_concat(Transform::from_rotate(60.0)), (0.5, 2.0));
        // A shear by 1: singular values are the golden ratio and its inverse.
        near(Transform::from_row(1.0, 0.0, 1.0, 1.0, 0.0, 0.0), (0.618_034, 1.618_034));
    }
}
