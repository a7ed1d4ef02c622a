//! How values of a fitting are printed: one function a value, for its own line of the card and for texts that name it.

use crate::catalogue::{Fitting, Tightening};
use crate::units::{Length, Numerals, Range, Torque};

pub(super) fn torque(tightening: &Tightening, numerals: Numerals) -> Option<String> {
    tightening.torque.map(|window| torque_window(window, numerals))
}

fn torque_window(window: Range<Torque>, numerals: Numerals) -> String {
    let (least, most) = (numerals.shortest(window.least().nm(), 1), numerals.shortest(window.most().nm(), 1));
    if least == most {
        format!("{least}\u{a0}N·m")
    } else {
        format!("{least}\u{a0}to\u{a0}{most}\u{a0}N·m")
    }
}

pub(super) fn spanner(tightening: &Tightening, numerals: Numerals) -> Option<String> {
    tightening.spanner.map(|width| length(width, numerals))
}

pub(super) fn insertion(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.insertion.map(|insertion| length(insertion, numerals))
}

pub(super) fn tail(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.tail.map(|tail| length(tail, numerals))
}

pub(super) fn seated(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.stand_out.as_ref()?.seated.map(|window| lengths(window, numerals))
}

pub(super) fn tensioned(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.stand_out.as_ref()?.tensioned.map(|window| lengths(window, numerals))
}

pub(super) fn draw_in_max(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.stand_out.as_ref()?.draw_in_max.map(|most| numerals.length(most, 1))
}

pub(super) fn line_tension_max(fitting: &Fitting, numerals: Numerals) -> Option<String> {
    fitting.line_tension_max.map(|force| numerals.force(force))
}

pub(super) fn wear_height(height: Option<Length>, numerals: Numerals) -> Option<String> {
    height.map(|height| numerals.length(height, 1))
}

fn length(length: Length, numerals: Numerals) -> String {
    format!("{}\u{a0}mm", numerals.shortest(length.mm(), 1))
}

fn lengths(window: Range<Length>, numerals: Numerals) -> String {
    numerals.range(window.map(Length::mm), 1, "mm")
}
