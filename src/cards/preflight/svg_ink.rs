//! What SVG of a layout's own is drawn with, each with the room that its ink takes, in millimetres from the trimmed
//! corner.

use crate::cards::face::{Face, ItemMark};
use crate::cards::type_class::TypeClass;
use crate::colour::Srgb;
use crate::diagnostics::Place;
use crate::units::Length;
use kurbo::{Affine, Rect};
use usvg::{Group, Image, Node, Path, Text, Transform};

/// One item of SVG of the layout's own.
pub(super) struct SvgInk<'a> {
    pub at: &'a Place,
    pub block: &'a str,
    /// The room that the layout gives it.
    pub room: Rect,
    /// What its texts are for.
    pub class: TypeClass,
    /// What it stands on.
    pub ground: Srgb,
    /// What is written in the layout.
    pub source: &'a str,
    pub texts: Vec<InkedText<'a>>,
    /// Lines and fills, in the order of drawing.
    pub shapes: Vec<Shape<'a>>,
    pub pictures: Vec<(&'a Image, Rect)>,
}

/// A text.
pub(super) struct InkedText<'a> {
    pub text: &'a Text,
    pub bounds: Rect,
    /// What clips and masks let show of it.
    pub window: Option<Rect>,
    pub opacity: f32,
    /// How many shapes are drawn before it.
    pub above: usize,
}

/// The least width of a letter on the average, in type sizes: words of i and l in a narrow type have more. Common practice, no
/// source.
const NARROWEST: f64 = 0.2;
/// The most by which letters may be set closer than their type has them, in type sizes.
const CLOSEST: f32 = 0.1;

/// A line or a fill.
pub(super) struct Shape<'a> {
    pub path: &'a Path,
    /// The box round its fill.
    pub bounds: Rect,
    /// The box round its ink, lines among it.
    pub inked: Rect,
    pub window: Option<Rect>,
    pub opacity: f32,
    /// From its own units to the trimmed corner's millimetres.
    pub transform: Affine,
}

impl<'a> SvgInk<'a> {
    /// Every such item of a face.
    pub fn all(face: &'a Face) -> Vec<Self> {
        let items = face.blocks.iter().flat_map(|block| block.items.iter().map(move |item| (block, item)));
        items
            .filter_map(|(block, item)| {
                let ItemMark::Svg(svg) = &item.mark else { return None };
                let mut ink = Self {
                    at: &item.at,
                    block: &block.name,
                    room: item.bounds,
                    class: svg.class,
                    ground: svg.ground,
                    source: &svg.source,
                    texts: Vec::new(),
                    shapes: Vec::new(),
                    pictures: Vec::new(),
                };
                if let Some(Node::Group(group)) = block.layers.get(svg.layer)?.tree.node_by_id(&svg.id) {
                    let walk = Walk { bleed: face.bleed.mm(), opacity: 1.0, window: None };
                    walk.gather(group, &mut ink);
                }
                Some(ink)
            })
            .collect()
    }

    /// The boxes round everything that it draws.
    pub fn inked(&self) -> impl Iterator<Item = Rect> {
        let shapes = self.shapes.iter().map(|shape| shape.inked);
        let texts = self.texts.iter().map(|text| text.bounds);
        shapes.chain(texts).chain(self.pictures.iter().map(|(_, bounds)| *bounds))
    }
}

/// What the groups round a node say.
#[derive(Clone, Copy)]
struct Walk {
    bleed: f64,
    opacity: f32,
    window: Option<Rect>,
}

impl Walk {
    fn gather<'a>(self, group: &'a Group, ink: &mut SvgInk<'a>) {
        let within = self.into_group(group);
        for node in group.children() {
            match node {
                Node::Group(group) => within.gather(group, ink),
                Node::Text(text) => {
                    let bounds = within.bounds(text.abs_stroke_bounding_box());
                    let (above, opacity, window) = (ink.shapes.len(), within.opacity, within.window);
                    ink.texts.push(InkedText { text, bounds, window, opacity, above });
                }
                Node::Path(path) if path.is_visible() => ink.shapes.push(within.shape(path)),
                Node::Image(image) => ink.pictures.push((image, within.bounds(image.abs_bounding_box()))),
                Node::Path(_) => {}
            }
        }
    }

    fn into_group(self, group: &Group) -> Self {
        let mut window = self.window;
        for shown in windows(group) {
            let shown = self.bounds(shown);
            window = Some(window.map_or(shown, |window| window.intersect(shown)));
        }
        Self { opacity: self.opacity * group.opacity().get(), window, ..self }
    }

    fn shape(self, path: &Path) -> Shape<'_> {
        Shape {
            path,
            bounds: self.bounds(path.abs_bounding_box()),
            inked: self.bounds(path.abs_stroke_bounding_box()),
            window: self.window,
            opacity: self.opacity,
            transform: Affine::translate((-self.bleed, -self.bleed)) * affine(path.abs_transform()),
        }
    }

    /// A box of a tree, which is measured from the corner of the bleed.
    fn bounds(self, ink: usvg::Rect) -> Rect {
        let [left, top, right, bottom] = [ink.left(), ink.top(), ink.right(), ink.bottom()].map(f64::from);
        Rect::new(left - self.bleed, top - self.bleed, right - self.bleed, bottom - self.bleed)
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
        words(self.text)
    }

    /// Whether it is to be seen, with its letters beside each other.
    pub fn is_spread_out(&self) -> bool {
        let mut spans = self.text.chunks().iter().flat_map(|chunk| chunk.spans());
        let letters = self.words().chars().filter(|letter| !letter.is_whitespace()).count() as f64;
        let least = |size: f64| NARROWEST * size * letters;
        let is_shown = |span: &usvg::TextSpan| {
            let size = span.font_size().get();
            span.is_visible()
                && span.letter_spacing() >= -CLOSEST * size
                && span.text_length().is_none_or(|length| f64::from(length) >= least(f64::from(size)))
        };
        let extent = self.bounds.width().max(self.bounds.height());
        spans.all(is_shown) && extent >= least(self.size().mm())
    }

    /// The smallest type in it, as it is printed; where a layout squeezes it, across the squeeze.
    pub fn size(&self) -> Length {
        let spans = self.text.chunks().iter().flat_map(|chunk| chunk.spans());
        let smallest = spans.map(|span| f64::from(span.font_size().get())).fold(f64::INFINITY, f64::min);
        Length::from_mm(smallest * scales(self.text.abs_transform()).0)
    }
}

/// What a text says.
pub(super) fn words(text: &Text) -> String {
    text.chunks().iter().map(usvg::TextChunk::text).collect()
}

/// Whether a text is drawn with an empty box, the glyph 0 of its font.
pub(super) fn has_box(text: &Text) -> bool {
    text.layouted().iter().flat_map(|span| &span.positioned_glyphs).any(|glyph| glyph.id.0 == 0)
}

pub(super) fn affine(transform: Transform) -> Affine {
    let [a, b, c, d] = [transform.sx, transform.ky, transform.kx, transform.sy].map(f64::from);
    Affine::new([a, b, c, d, f64::from(transform.tx), f64::from(transform.ty)])
}

/// The least and the most that a transform makes of one millimetre, over all directions: its singular values.
pub(super) fn scales(transform: Transform) -> (f64, f64) {
    let [a, b, c, d, ..] = affine(transform).as_coeffs();
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
