//! How values of a fitting are printed: one function a value, for its own line of the card and for texts that name it.
//! What a record states has the digits of the record.

use crate::catalogue::{Conductor, Fitting, Part};
use crate::grip::Geometry;
use crate::units::{Force, Length, Numerals, Range, Torque};

pub(super) fn torque(fitting: &Fitting, nth: usize, numerals: Numerals) -> Option<String> {
    let window = fitting.tightening.get(nth)?.torque?.map(Torque::nm);
    Some(stated_window(fitting, &format!("tightening.{nth}.torque_Nm"), window, "N·m", numerals))
}

pub(super) fn spanner(fitting: &Fitting, nth: usize, numerals: Numerals) -> Option<String> {
    let width = fitting.tightening.get(nth)?.spanner?;
    Some(fitting.with_unit(&format!("tightening.{nth}.spanner_mm"), width.mm(), "mm", numerals))
}

pub(super) fn insertion(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.insertion.map(|insertion| fitting.with_unit("insertion_mm", insertion.mm(), "mm", numerals))
}

pub(super) fn tail(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.tail.map(|tail| fitting.with_unit("tail_mm", tail.mm(), "mm", numerals))
}

pub(super) fn seated(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    let window = fitting.stand_out.as_ref()?.seated?.map(Length::mm);
    Some(out_or_sunk(fitting, "stand_out.seated_mm", window, numerals))
}

pub(super) fn tensioned(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    let window = fitting.stand_out.as_ref()?.tensioned?.map(Length::mm);
    Some(out_or_sunk(fitting, "stand_out.tensioned_mm", window, numerals))
}

pub(super) fn draw_in_max(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    let most = fitting.stand_out.as_ref()?.draw_in_max?;
    Some(fitting.with_unit("stand_out.draw_in_max_mm", most.mm(), "mm", numerals))
}

pub(super) fn line_tension_max(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    load(fitting, "line_tension_max_kN", fitting.line_tension_max, numerals)
}

/// A load of a fitting's record, by its field.
#[must_use]
pub fn load(fitting: &Fitting, field: &str, force: Option<Force>, numerals: Numerals) -> Option<String> {
    force.map(|force| fitting.with_unit(field, force.kn(), "kN", numerals))
}

/// A remaining height of a contact wire, by its key.
#[must_use]
pub fn wear_height(
    held: &Conductor,
    key: &str,
    height: Option<Length>,
    numerals: Numerals,
) -> Option<String> {
    let field = format!("construction.grooved.wear.{key}");
    height.map(|height| held.origin.with_unit(&field, height.mm(), "mm", numerals))
}

/// The die that a part is pressed with.
pub(super) fn die(part: &Part) -> Option<String> {
    match part.geometry.as_ref()? {
        Geometry::Sleeve(sleeve) => sleeve.die.clone(),
        Geometry::Ferrule(ferrule) => ferrule.die.clone(),
        _ => None,
    }
}

/// What a pressed part must measure afterwards.
pub(super) fn pressed(part: &Part, numerals: Numerals) -> Option<String> {
    let (kind, pressed) = match part.geometry.as_ref()? {
        Geometry::Sleeve(sleeve) => ("sleeve", sleeve.pressed?),
        Geometry::Ferrule(ferrule) => ("ferrule", ferrule.pressed?),
        _ => return None,
    };
    let decimals = |end: &str| part.origin.decimals(&format!("geometry.{kind}.pressed_mm.{end}"));
    Some(window(pressed.map(Length::mm), "mm", numerals, decimals))
}

/// A window of stand-outs; one that lies below the face says how far the part is sunk: a minus is overlooked.
fn out_or_sunk(fitting: &Fitting, field: &str, window: Range<f64>, numerals: Numerals) -> String {
    if window.least() >= 0.0 || window.most() > 0.0 {
        return stated_window(fitting, field, window, "mm", numerals);
    }
    let end = |key: &str, value: f64| numerals.stated(-value, fitting.decimals(&format!("{field}.{key}")));
    let (least, most) = (end("max", window.most()), end("min", window.least()));
    if least == most {
        format!("sunk\u{a0}{least}\u{a0}mm")
    } else {
        format!("sunk\u{a0}{least}\u{a0}to\u{a0}{most}\u{a0}mm")
    }
}

/// A computed stand-out in words.
pub(super) fn stand_out(length: Length, numerals: Numerals) -> String {
    let size = numerals.length(Length::from_mm(length.mm().abs()), 1);
    if length.mm() < 0.0 { format!("sunk {size}") } else { format!("stand-out {size}") }
}

/// A window of a fitting's record, with its digits.
#[must_use]
pub fn stated_window(
    fitting: &Fitting,
    field: &str,
    stated: Range<f64>,
    unit: &str,
    numerals: Numerals,
) -> String {
    window(stated, unit, numerals, |end| fitting.decimals(&format!("{field}.{end}")))
}

/// Least and most with a unit; the number alone where both read the same. `decimals` says how many each has.
fn window(
    stated: Range<f64>,
    unit: &str,
    numerals: Numerals,
    decimals: impl Fn(&str) -> Option<usize>,
) -> String {
    let least = numerals.stated(stated.least(), decimals("min"));
    let most = numerals.stated(stated.most(), decimals("max"));
    if least == most {
        format!("{least}\u{a0}{unit}")
    } else {
        format!("{least}\u{a0}to\u{a0}{most}\u{a0}{unit}")
    }
}
