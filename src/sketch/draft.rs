//! A drawing in the making: its scene, its lettering, the dimensions printed so far.

use super::appearance::{Appearance, Pen};
use super::drawing::{Dimension, Drawing};
use super::letters::{Anchor, Lettering, Text};
use super::options::{Detail, Options};
use super::outline::Outline;
use super::plane::{Point, Rect, at, grown};
use super::refused;
use super::scale::Scale;
use super::scene::{Purpose, Scene};
use super::write;
use crate::units::Length;

/// A drawing in the making. Everything in it is in millimetres on paper.
#[derive(Clone)]
pub(crate) struct Draft<'a> {
    pub scene: Scene,
    pub options: &'a Options<'a>,
    /// Dimensions printed so far, in reading order.
    pub dimensions: Vec<Dimension>,
    /// Whether every text found a clear place.
    pub complete: bool,
}

/// What a finished drawing is called.
pub(crate) struct Caption {
    pub scale: String,
    pub title: String,
    pub description: String,
}

impl<'a> Draft<'a> {
    pub fn new(options: &'a Options<'a>) -> Self {
        Self { scene: Scene::default(), options, dimensions: Vec::new(), complete: true }
    }

    pub fn lettering(&self) -> Lettering<'a> {
        self.options.lettering()
    }

    /// Type size in millimetres: the measure of gaps and arrowheads.
    pub fn size(&self) -> f64 {
        self.options.type_size.mm()
    }

    /// A text that is centred on the height of its place.
    pub fn level(&self, place: Point, anchor: Anchor, text: &str) -> Text {
        Text::level(self.lettering(), place, anchor, text)
    }

    /// Puts a text at the first of several places where it is clear; at none of them, the drawing is
    /// not complete and the text is left out.
    pub fn text_at_first_clear(&mut self, places: &[(Point, Anchor)], text: &str) -> Option<Rect> {
        let gap = self.size() * 0.14;
        for &(place, anchor) in places {
            let text = self.level(place, anchor, text);
            let bounds = text.bounds();
            if self.scene.is_clear(grown(bounds, gap)) {
                self.scene.text(text);
                return Some(bounds);
            }
        }
        self.complete = false;
        None
    }

    /// Notes a dimension that has been printed.
    pub fn printed(&mut self, name: &str, text: &str) {
        self.dimensions.push(Dimension { name: name.to_owned(), text: text.to_owned() });
    }

    pub fn area(&mut self, purpose: Purpose, outline: Outline, appearance: Appearance) {
        self.scene.area(purpose, outline, appearance);
    }

    pub fn thin(&mut self, purpose: Purpose, points: &[Point]) {
        self.scene.line(purpose, points, Appearance::line(Pen::Thin));
    }

    pub fn centre_line(&mut self, from: Point, to: Point) {
        self.scene.line(Purpose::Centre, &[from, to], Appearance::line(Pen::Centre));
    }

    /// The box round the drawing with half a line's width and a hair of air.
    pub fn bounds(&self) -> Rect {
        grown(self.scene.bounds(), self.options.thick() / 2.0 + 0.1)
    }

    pub fn fits(&self) -> bool {
        let bounds = self.bounds();
        bounds.width() <= self.options.width.mm() + 1e-6 && bounds.height() <= self.options.height.mm() + 1e-6
    }

    /// Moves the drawing to its corner and writes it. A card has no caption: there the drawing itself
    /// says its scale.
    pub fn finish(mut self, caption: Caption) -> Drawing {
        if matches!(self.options.detail, Detail::Items | Detail::Card) {
            self.letter_scale(&caption.scale);
        }
        let bounds = self.bounds();
        self.finish_within(bounds, caption)
    }

    /// Letters the scale in a corner that is clear, else beside or under the drawing where the room lasts.
    fn letter_scale(&mut self, scale: &str) {
        let (bounds, half, gap) = (self.scene.bounds(), self.size() / 2.0, self.size() * 0.4);
        let corners = [
            (at(bounds.x0, bounds.y1 - half), Anchor::Start),
            (at(bounds.x1, bounds.y1 - half), Anchor::End),
            (at(bounds.x0, bounds.y0 + half), Anchor::Start),
            (at(bounds.x1, bounds.y0 + half), Anchor::End),
            (at(bounds.x0 - gap, bounds.y1 - half), Anchor::End),
            (at(bounds.x1 + gap, bounds.y1 - half), Anchor::Start),
            (at(bounds.x0, bounds.y1 + half + gap), Anchor::Start),
        ];
        let room = (self.options.width.mm() - 0.5, self.options.height.mm() - 0.5);
        for (place, anchor) in corners {
            let text = self.level(place, anchor, scale);
            let whole = text.bounds().union(bounds);
            let fits = whole.width() <= room.0 && whole.height() <= room.1;
            if fits && self.scene.is_clear(grown(text.bounds(), self.size() * 0.14)) {
                self.scene.text(text);
                return;
            }
        }
    }

    /// Writes the drawing on a page of its own choice, so that several share one frame.
    pub fn finish_within(mut self, bounds: Rect, caption: Caption) -> Drawing {
        if self.scene.unsound {
            return self.refused(caption);
        }
        self.scene.moved(-bounds.origin().to_vec2());
        Drawing {
            width: Length::from_mm(bounds.width()),
            height: Length::from_mm(bounds.height()),
            scale: caption.scale,
            title: caption.title,
            description: caption.description,
            body: write::body(&self.scene, self.options.thick()),
            dimensions: self.dimensions,
        }
    }

    /// What stands in the place of a drawing that has lost a primitive.
    fn refused(&self, caption: Caption) -> Drawing {
        let mut scene = Scene::default();
        scene.text(self.level(at(0.0, 0.0), Anchor::Start, refused::WORDS));
        let bounds = scene.bounds();
        scene.moved(-bounds.origin().to_vec2());
        Drawing {
            width: Length::from_mm(bounds.width()),
            height: Length::from_mm(bounds.height()),
            scale: caption.scale,
            title: caption.title,
            description: refused::WORDS.to_owned(),
            body: refused::marked(&write::body(&scene, self.options.thick())),
            dimensions: Vec::new(),
        }
    }
}

/// The largest of some falling scales at which everything finds its place within the room; where there
/// is none, the largest at which the drawing fits; the smallest where it never does.
pub(crate) fn fit<'a>(scales: &[Scale], draw: impl FnMut(Scale) -> Draft<'a>) -> Option<(Scale, Draft<'a>)> {
    fit_down_to(scales, 0.5, draw)
}

/// The same, tried at no scale under this share of the largest at which the drawing fits.
pub(crate) fn fit_down_to<'a>(
    scales: &[Scale],
    share: f64,
    mut draw: impl FnMut(Scale) -> Draft<'a>,
) -> Option<(Scale, Draft<'a>)> {
    let mut fallback: Option<(Scale, Draft<'a>, bool)> = None;
    for &scale in scales {
        let draft = draw(scale);
        let fits = draft.fits();
        if fits && draft.complete {
            return Some((scale, draft));
        }
        if fits && fallback.as_ref().is_some_and(|(best, ..)| scale.0 < best.0 * share) {
            break;
        }
        if !fallback.as_ref().is_some_and(|(.., fitted)| *fitted) {
            fallback = Some((scale, draft, fits));
        }
    }
    fallback.map(|(scale, draft, _)| (scale, draft))
}
