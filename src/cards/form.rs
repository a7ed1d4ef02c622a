//! Forms: one-sided faces beside cards and kit tags, such as slips, labels and gauges, whose words somebody else settles.

use super::complete::finding;
use super::compose::{FaceJob, Format};
use super::drawings::Drawings;
use super::face::{Face, Side};
use super::input::Input;
use super::make::{self, About};
use super::must_show::{Must, in_force, lacking};
use super::preflight;
use super::shape::Shape;
use super::values;
use crate::catalogue::Settings;
use crate::diagnostics::{Finding, Findings};
use crate::facts::MarkFacts;
use crate::register::Standing;
use crate::sketch::Drawing;
use serde_json::{Map, Value};
use std::sync::Arc;

/// What can be done about a form that is too full.
const SHORTEN: &str = "shorten this text in the record, or names of the fitting, its parts or conductors";

/// A face beside cards that is to be made.
#[derive(Debug, Clone)]
pub struct Form {
    /// Its layout's path below the layouts folder, such as "training/slip.xml".
    pub layout: &'static str,
    /// What the style calls it beside its size, such as "slip".
    pub style: &'static str,
    /// Its size.
    pub shape: Shape,
    /// The number of the record that it is about.
    pub number: String,
    /// What an outline calls it.
    pub title: String,
    /// What findings call it.
    pub called: String,
    /// What its layout is filled with, beside its size.
    pub values: Map<String, Value>,
    /// What it must show, each with what it is called.
    pub shows: Vec<(&'static str, String)>,
    /// Stamps that must be as large as those on cards.
    pub stamps: Vec<String>,
    /// Drawings that the layout calls "own-1" and so on.
    pub drawings: Vec<Drawing>,
}

/// A form that is made.
#[derive(Debug, Clone)]
pub struct FormFace {
    /// What an outline calls it.
    pub title: String,
    /// What is printed.
    pub face: Face,
}

impl Form {
    /// The same, which must say whether the card that it goes by is in force.
    #[must_use]
    pub fn in_force(mut self, input: Input<'_>, standing: &Standing) -> Self {
        self.shows.extend(in_force(input, standing));
        self
    }
}

/// A form, with what its preflight finds; none where it can't be made.
#[must_use]
pub fn make_form(input: Input<'_>, form: &Form) -> (Option<FormFace>, Findings) {
    let about = About { input, number: &form.number, called: &form.called };
    let face = match job(input, form).face() {
        Ok(face) => face,
        Err(error) => return (None, make::found("form-too-full", SHORTEN, about, error)),
    };
    let mut findings = preflight::face(&face, make::limits(input, about, Side::Front, &form.stamps));
    findings.extend(incomplete(&face, form));
    (Some(FormFace { title: form.title.clone(), face }), findings)
}

fn incomplete(face: &Face, form: &Form) -> Option<Finding> {
    let musts: Vec<Must> = form.shows.iter().map(Must::text).collect();
    finding(&lacking(&[face], &musts), &form.called, form.layout, &form.number)
}

fn job<'a>(input: Input<'a>, form: &'a Form) -> FaceJob<'a> {
    let format = Format::of(input, form.shape, Some(form.style));
    let mut values = form.values.clone();
    values.extend(format.values());
    FaceJob {
        layout: form.layout.to_owned(),
        side: Side::Front,
        values: Arc::new(Value::Object(values)),
        drawings: Drawings::of(input, &form.number).with_own(&form.drawings),
        changed: Arc::default(),
        format,
    }
}

/// A mark as layouts of faces get it: in words, and with the colours that it is printed in.
#[must_use]
pub fn form_mark(facts: &MarkFacts) -> Value {
    values::mark(facts)
}

/// Where a card stands, as layouts get it: `standing`, `edition`, `date`, `check_code`, `draft`.
#[must_use]
pub fn form_standing(standing: &Standing, settings: &Settings) -> Value {
    values::foot(standing, "", settings)
}

/// A stamp or number that is never broken.
#[must_use]
pub fn form_whole(code: &str) -> String {
    values::whole(code)
}
