//! The drawings on a card, each made for the room that the layout gives it.

use super::input::Input;
use crate::catalogue::Fitting;
use crate::facts::drawn_wrong_parts;
use crate::mixups::{BodyMixups, Case};
use crate::sketch::{
    Detail, Drawing, Options, WrongPart, assembly, conductor_section, conductor_to_lay_on, end_view,
    end_views, line_up, side_by_side, worn_profiles,
};
use crate::units::{Length, Numerals};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// The drawings of one card.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drawings<'a> {
    input: Input<'a>,
    fitting: Option<&'a Arc<Fitting>>,
    body: Option<&'a BodyMixups>,
    /// Drawings that whoever asks for the face brings: "own-1" and so on.
    own: &'a [Drawing],
}

/// Gripping parts drawn lower than this can't be told apart: they are left out, as are more of them than
/// stand side by side.
const LEAST_LINE_UP: Length = Length::from_mm(11.0);

/// The wrong part of a case as it is drawn beside the right one, on the wire on which it is at its worst.
#[must_use]
pub fn wrong_part(case: &Case) -> WrongPart<'_> {
    WrongPart {
        part: &case.part,
        conductor: &case.conductor,
        outcome: &case.outcome,
        words: case.words_side_by_side(),
        worn_to: case.worn.map(|worn| worn.height),
    }
}

impl<'a> Drawings<'a> {
    /// The drawings of the fitting or body of this number.
    pub fn of(input: Input<'a>, number: &str) -> Self {
        let fitting = input.catalogue.fittings.get(number);
        Self { input, fitting, body: input.mixups.body(number), own: &[] }
    }

    /// The same with drawings that are brought.
    pub fn with_own(self, own: &'a [Drawing]) -> Self {
        Self { own, ..self }
    }

    /// Whether there is an assembly to draw.
    pub fn has_assembly(&self) -> bool {
        self.fitting.is_some()
    }

    /// Whether there are gripping parts to draw side by side.
    pub fn has_line_up(&self) -> bool {
        self.body.is_some_and(|body| body.parts.len() > 1)
    }

    /// Whether each gripping part has an end to be drawn.
    pub fn has_ends(&self) -> bool {
        self.body.is_some_and(|body| (1..=body.parts.len()).all(|nth| self.end(nth).is_some()))
    }

    /// Whether a wrong part shows what differs.
    pub fn has_wrong(&self) -> bool {
        self.wrong(1).is_some()
    }

    /// The drawings of these names that are as large as they come.
    pub fn natural(&self, names: &BTreeSet<&str>) -> BTreeMap<String, Drawing> {
        let drawn = names.iter().filter_map(|name| {
            let (kind, nth) = name.rsplit_once('-')?;
            let nth: usize = nth.parse().ok().filter(|nth| *nth > 0)?;
            let options = self.options(Length::ZERO, Length::ZERO);
            let conductor = || self.fitting.and_then(|fitting| fitting.conductors.get(nth - 1));
            let drawing = match kind {
                "true-size" => conductor_to_lay_on(conductor()?, &options),
                "worn" => worn_profiles(conductor()?, &options)?,
                "end" => self.end(nth)?,
                "wrong" => self.wrong(nth)?,
                "own" => self.own.get(nth - 1)?.clone(),
                _ => return None,
            };
            Some(((*name).to_owned(), drawing))
        });
        drawn.collect()
    }

    /// The end of a gripping part, a tenth of the card high at least.
    fn end(&self, nth: usize) -> Option<Drawing> {
        let body = self.body?;
        let (width, height) = self.input.catalogue.settings.card.trim();
        let options = self.options(width * 0.48, height * 0.155);
        end_view(&body.body, body.parts.get(nth - 1)?, &options)
    }

    /// What differs between the fitting's own part and one of the worst wrong ones that are listed on the card.
    fn wrong(&self, nth: usize) -> Option<Drawing> {
        let (fitting, catalogue) = (self.fitting?, self.input.catalogue);
        let numerals = Numerals::new(catalogue.settings.decimal_mark);
        let case = drawn_wrong_parts(fitting, self.input.mixups, numerals).into_iter().nth(nth - 1)?;
        let (width, height) = catalogue.settings.card.trim();
        let options = self.options(width - Length::from_mm(8.0), height * 0.225);
        let limits = &catalogue.settings.limits;
        Some(side_by_side(fitting, limits, &wrong_part(case), &options))
    }

    /// The drawing of this name, at most so large.
    pub fn draw(&self, name: &str, width: Length, height: Length) -> Option<Drawing> {
        let options = self.options(width, height);
        let drawing = match name {
            "assembly" => assembly(self.fitting?, &self.input.catalogue.settings.limits, &options),
            "section" => conductor_section(self.fitting?.conductor(), &options),
            "line-up" => {
                let body = self.body?;
                let ends = end_views(&body.body, &body.parts, &options);
                let drawing = ends.unwrap_or_else(|| line_up(&body.body, &body.parts, &options));
                let inside = drawing.width <= width && drawing.height <= height;
                (inside && drawing.height >= LEAST_LINE_UP).then_some(drawing)?
            }
            _ => return None,
        };
        Some(drawing)
    }

    fn options(&self, width: Length, height: Length) -> Options<'a> {
        let settings = &self.input.catalogue.settings;
        Options {
            type_size: settings.limits.smallest_type.max(Length::from_pt(7.0)),
            numerals: Numerals::new(settings.decimal_mark),
            detail: Detail::Card,
            ..Options::new(self.input.fonts, width, height)
        }
    }
}
