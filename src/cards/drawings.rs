//! The drawings on a card, each made for the room that the layout gives it.

use super::input::Input;
use crate::catalogue::{Conductor, Fitting};
use crate::mixups::BodyMixups;
use crate::sketch::{
    Detail, Drawing, Options, assembly, conductor_section, conductor_true_size, end_views, line_up,
};
use crate::units::{Length, Numerals};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The drawings of one card.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drawings<'a> {
    input: Input<'a>,
    fitting: Option<&'a Arc<Fitting>>,
    body: Option<&'a BodyMixups>,
}

/// Gripping parts drawn lower than this can't be told apart: they are left out, as are more of them than
/// stand side by side.
const LEAST_LINE_UP: Length = Length::from_mm(6.0);

impl<'a> Drawings<'a> {
    /// The drawings of the fitting or body of this number.
    pub fn of(input: Input<'a>, number: &str) -> Self {
        Self { input, fitting: input.catalogue.fittings.get(number), body: input.mixups.body(number) }
    }

    /// Whether there is an assembly to draw.
    pub fn has_assembly(&self) -> bool {
        self.fitting.is_some()
    }

    /// Whether there are gripping parts to draw side by side.
    pub fn has_line_up(&self) -> bool {
        self.body.is_some_and(|body| body.parts.len() > 1)
    }

    /// The sections of the card's conductors at true size, by their names.
    pub fn sections(&self) -> BTreeMap<String, Drawing> {
        let options = self.options(Length::ZERO, Length::ZERO);
        let section = |(index, conductor): (usize, &Arc<Conductor>)| {
            (format!("true-size-{}", index + 1), conductor_true_size(conductor, &options))
        };
        let conductors = self.fitting.map_or(&[][..], |fitting| &fitting.conductors);
        conductors.iter().enumerate().map(section).collect()
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
