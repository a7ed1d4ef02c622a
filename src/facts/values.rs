//! The values of a fitting that its texts may name in braces, as its card prints them.

use super::{ConductorFacts, conductor, forms};
use crate::catalogue::{Conductor, Fitting, PieceKind, WearLimits, pieces};
use crate::section::Construction;
use crate::units::Numerals;
use std::collections::BTreeMap;

/// The names that texts may use, with what stands for each. Those of which a fitting can have several take a number,
/// such as `torque.2`.
pub const NAMED_VALUES: [(&str, &str); 22] = [
    ("torque", "least and most torque of what is tightened"),
    ("spanner", "width across flats of its wrench"),
    ("stamp", "stamp of the gripping part"),
    ("mark", "text of the mark"),
    ("fitting_stamp", "stamp on the assembled fitting"),
    ("conductor", "name of the conductor"),
    ("drum_tag", "what its drum tag says"),
    ("tracer", "its tracer"),
    ("grooves", "its identification grooves"),
    ("wires", "how many wires it has"),
    ("diameter", "its overall diameter"),
    ("insertion", "how far it goes in"),
    ("tail", "how much of it sticks out behind"),
    ("seated", "stand-out after seating, least and most"),
    ("tensioned", "stand-out under tension, least and most"),
    ("draw_in", "the most that tension may draw the gripping part in"),
    ("tension_max", "line tension max"),
    ("die", "die that presses the sleeve or ferrule"),
    ("pressed", "its size after pressing, least and most"),
    ("plan_height", "height of the contact wire at which its replacement is planned"),
    ("replace_height", "height at which it is replaced"),
    ("stop_height", "height at which no train runs under it"),
];

/// The names alone.
pub const VALUE_NAMES: [&str; NAMED_VALUES.len()] = {
    let mut names = [""; NAMED_VALUES.len()];
    let mut nth = 0;
    while nth < names.len() {
        names[nth] = NAMED_VALUES[nth].0;
        nth += 1;
    }
    names
};

/// Names that take a number: a fitting has one of them for each tightening or conductor.
const NUMBERED: [&str; 11] = [
    "torque",
    "spanner",
    "drum_tag",
    "tracer",
    "grooves",
    "wires",
    "diameter",
    "conductor",
    "plan_height",
    "replace_height",
    "stop_height",
];

/// The values of one fitting by their names.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Values(BTreeMap<String, String>);

/// Why a text can't name a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unnamed {
    /// There is no such name.
    Unknown,
    /// The fitting has no value for it.
    Absent,
}

/// The values of a fitting, in the words of its card.
#[must_use]
pub fn values(fitting: &Fitting, numerals: Numerals) -> Values {
    let mut values = Values::default();
    for nth in 0..fitting.tightening.len() {
        values.put("torque", nth + 1, forms::torque(fitting, nth, numerals));
        values.put("spanner", nth + 1, forms::spanner(fitting, nth, numerals));
    }
    for (nth, held) in (1..).zip(&fitting.conductors) {
        of_conductor(&mut values, nth, held, numerals);
    }
    let gripping = fitting.gripping().map(|item| &item.part.stamp).find(|stamp| !stamp.is_empty());
    values.put("stamp", 1, gripping.map(|stamp| whole(stamp)));
    values.put("mark", 1, fitting.mark.as_ref().map(|mark| whole(&mark.text)));
    values.put("fitting_stamp", 1, Some(whole(&fitting.stamp)));
    values.put("insertion", 1, forms::insertion(fitting, numerals));
    values.put("tail", 1, forms::tail(fitting, numerals));
    values.put("seated", 1, forms::seated(fitting, numerals));
    values.put("tensioned", 1, forms::tensioned(fitting, numerals));
    values.put("draw_in", 1, forms::draw_in_max(fitting, numerals));
    values.put("tension_max", 1, forms::line_tension_max(fitting, numerals));
    let pressed = fitting.gripping().find(|item| forms::die(&item.part).is_some()).map(|item| &item.part);
    values.put("die", 1, pressed.and_then(|part| forms::die(part)).map(|die| whole(&die)));
    values.put("pressed", 1, pressed.and_then(|part| forms::pressed(part, numerals)));
    values
}

fn of_conductor(values: &mut Values, nth: usize, held: &Conductor, numerals: Numerals) {
    let ConductorFacts { name, build, diameter, .. } = conductor(held, numerals);
    let counted = matches!(held.construction, Construction::Stranded(_) | Construction::Composite(_));
    let wear = |key: &str, height: fn(&WearLimits) -> Option<_>| {
        held.wear.as_ref().and_then(|wear| forms::wear_height(held, key, height(wear), numerals))
    };
    values.put("conductor", nth, Some(name));
    values.put("wires", nth, counted.then_some(build));
    values.put("diameter", nth, Some(diameter));
    values.put("drum_tag", nth, Some(whole(&held.identity.drum_tag)));
    values.put("tracer", nth, Some(held.identity.tracer.clone()));
    values.put("grooves", nth, Some(held.identity.grooves.clone()));
    values.put("plan_height", nth, wear("plan_height_mm", |wear| wear.plan_height));
    values.put("replace_height", nth, wear("replace_height_mm", |wear| wear.replace_height));
    values.put("stop_height", nth, wear("stop_height_mm", |wear| wear.stop_height));
}

impl Values {
    /// The first of a name has it bare and with its number.
    fn put(&mut self, name: &str, nth: usize, text: Option<String>) {
        let Some(text) = text.filter(|text| !text.is_empty()) else { return };
        if nth == 1 {
            self.0.insert(name.to_owned(), text.clone());
        }
        self.0.insert(format!("{name}.{nth}"), text);
    }

    /// The value of a name as the card prints it.
    ///
    /// # Errors
    /// Where there is no such name, or the fitting has no value for it.
    pub fn get(&self, name: &str) -> Result<&str, Unnamed> {
        if !is_name(name) {
            return Err(Unnamed::Unknown);
        }
        self.0.get(name).map(String::as_str).ok_or(Unnamed::Absent)
    }

    /// The values that a text names, in order.
    pub(super) fn named_in(&self, text: &str) -> Vec<String> {
        let value = |kind| if let PieceKind::Value(name) = kind { self.get(name).ok() } else { None };
        pieces(text).into_iter().filter_map(|found| value(found.kind)).map(str::to_owned).collect()
    }

    /// A text with its values put in; a name without a value stays as it is written, which is a finding of its own.
    #[must_use]
    pub fn filled(&self, text: &str) -> String {
        let piece = |kind| match kind {
            PieceKind::Words(words) | PieceKind::Unclosed(words) => words.to_owned(),
            PieceKind::Value(name) => self.get(name).map_or_else(|_| format!("{{{name}}}"), str::to_owned),
        };
        pieces(text).into_iter().map(|found| piece(found.kind)).collect()
    }
}

fn is_name(name: &str) -> bool {
    let Some((name, number)) = name.split_once('.') else { return VALUE_NAMES.contains(&name) };
    let counted = !number.is_empty() && !number.starts_with('0');
    NUMBERED.contains(&name) && counted && number.chars().all(|digit| digit.is_ascii_digit())
}

/// A stamp, mark or tag is never broken, not even at its spaces.
fn whole(text: &str) -> String {
    text.replace(' ', "\u{a0}")
}
