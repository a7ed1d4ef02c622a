//! One side of a sheet: faces at true size, each block inside its own tag.

use super::impose::{Rectangle, Slot};
use super::margin::{self, Margin};
use super::options::Options;
use super::points::{pt, rect};
use super::syllables::{self, Known};
use crate::cards::{Block, BlockKind, Face, Layer, Side};
use crate::typeset::Fonts;
use crate::units::Length;
use krilla::Document;
use krilla::destination::XyzDestination;
use krilla::geom::{Point, Size, Transform};
use krilla::outline::OutlineNode;
use krilla::page::PageSettings;
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, Identifier, Node, Tag, TagGroup};
use krilla_svg::{SurfaceExt, SvgSettings};
use std::num::NonZeroU16;

const FIRST_LEVEL: NonZeroU16 = NonZeroU16::MIN;
const SECOND_LEVEL: NonZeroU16 = FIRST_LEVEL.saturating_add(1);
/// Points in a millimetre.
const SCALE: f32 = 72.0 / 25.4;

/// Counts pages, so that the outline can point at them, and keeps fonts.
#[derive(Default)]
pub(super) struct Printer {
    pages: usize,
    known: Known,
}

/// A page that is being drawn on.
pub(super) struct Page<'a, 'b> {
    surface: &'a mut Surface<'b>,
    index: usize,
    fonts: &'a Fonts,
    known: &'a mut Known,
}

impl Printer {
    /// Adds a page with its margin, where it has one, and lets `draw` fill it.
    pub(super) fn print(
        &mut self,
        document: &mut Document,
        size: (Length, Length),
        margin: Option<&Margin>,
        options: &Options<'_>,
        draw: impl FnOnce(&mut Page<'_, '_>),
    ) {
        let mut page = document.start_page_with(settings(size, margin, options));
        let mut surface = page.surface();
        let (index, fonts, known) = (self.pages, options.fonts, &mut self.known);
        draw(&mut Page { surface: &mut surface, index, fonts, known });
        if let Some(margin) = margin {
            margin::draw(&mut surface, size, margin, options);
        }
        surface.finish();
        page.finish();
        self.pages += 1;
    }
}

/// MediaBox the sheet, TrimBox round all cuts, BleedBox that and the bleed; without a margin all three are the sheet.
fn settings(size: (Length, Length), margin: Option<&Margin>, options: &Options<'_>) -> PageSettings {
    let sheet = Rectangle { left: Length::ZERO, top: Length::ZERO, width: size.0, height: size.1 };
    let settings =
        PageSettings::from_wh(pt(size.0), pt(size.1)).unwrap_or_default().with_media_box(rect(sheet));
    let Some(margin) = margin else {
        return settings.with_trim_box(rect(sheet)).with_bleed_box(rect(sheet));
    };
    let bled = margin.trim_bounds.map(|trim| trim.grown(options.format.bleed));
    settings.with_trim_box(margin.trim_bounds.and_then(rect)).with_bleed_box(bled.and_then(rect))
}

impl<'b> Page<'_, 'b> {
    /// The surface, for what has no blocks.
    pub(super) fn surface(&mut self) -> &mut Surface<'b> {
        self.surface
    }

    /// Draws one face.
    pub(super) fn face(&mut self, slot: Slot, face: &Face, tags: &mut ItemTags) {
        if face.side == Side::Front {
            let corner = Point::from_xy(pt(slot.trim.left), pt(slot.trim.top));
            tags.destination = Some(XyzDestination::new(self.index, corner));
        }
        self.surface.push_transform(&placed(slot, face));
        for block in &face.blocks {
            tags.children.extend(self.block(block, tags.level(block)));
        }
        self.surface.pop();
    }

    fn block(&mut self, block: &Block, level: NonZeroU16) -> Option<Node> {
        let drawn: Vec<Identifier> =
            block.layers.iter().filter_map(|layer| self.layer(layer, block.kind)).collect();
        let words = block.words();
        let mut group = match block.kind {
            BlockKind::Ornament => return None,
            BlockKind::Heading => TagGroup::new(Tag::Hn(level, None).with_actual_text(words)),
            BlockKind::Text => TagGroup::new(Tag::P.with_actual_text(words)),
            BlockKind::Drawing => TagGroup::new(Tag::Figure(Some(block.alternative.clone()))),
        };
        for identifier in drawn {
            group.push(identifier);
        }
        Some(group.into())
    }

    /// Draws one layer inside its own mark.
    fn layer(&mut self, layer: &Layer, kind: BlockKind) -> Option<Identifier> {
        let size = Size::from_wh(layer.tree.size().width(), layer.tree.size().height())?;
        let tag = match kind {
            BlockKind::Ornament => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)),
            BlockKind::Heading | BlockKind::Text | BlockKind::Drawing => ContentTag::Other,
        };
        let identifier = self.surface.start_tagged(tag);
        let by_syllables = layer.by_syllables.then_some(&layer.tree);
        let drawn = by_syllables.and_then(|tree| syllables::draw(self.surface, tree, self.fonts, self.known));
        let drawn = drawn.or_else(|| self.surface.draw_svg(&layer.tree, size, SvgSettings::default()));
        self.surface.end_tagged();
        drawn.map(|()| identifier)
    }
}

/// From a face's millimetres, counted from the corner of its bleed, to the sheet's points.
fn placed(slot: Slot, face: &Face) -> Transform {
    let bled = slot.trim.grown(face.bleed);
    if slot.turned {
        Transform::from_row(-SCALE, 0.0, 0.0, -SCALE, pt(bled.right()), pt(bled.bottom()))
    } else {
        Transform::from_row(SCALE, 0.0, 0.0, SCALE, pt(bled.left), pt(bled.top))
    }
}

/// The tags of one item: its front and then its back, whatever pages they are on.
pub(super) struct ItemTags {
    title: String,
    destination: Option<XyzDestination>,
    children: Vec<Node>,
}

impl ItemTags {
    pub(super) fn new(title: &str) -> Self {
        Self { title: title.to_owned(), destination: None, children: Vec::new() }
    }

    /// The first heading of an item names it; others stand below it.
    fn level(&self, block: &Block) -> NonZeroU16 {
        let first = self.children.is_empty() && block.kind == BlockKind::Heading;
        if first { FIRST_LEVEL } else { SECOND_LEVEL }
    }

    pub(super) fn finish(self) -> (OutlineNode, TagGroup) {
        let destination =
            self.destination.unwrap_or_else(|| XyzDestination::new(0, Point::from_xy(0.0, 0.0)));
        let group = TagGroup::with_children(Tag::Section, self.children);
        (OutlineNode::new(self.title, destination), group)
    }
}
