//! Each value of the demo stands in one record: where it is changed there, every text of the card that shows it shows the
//! new one, or a finding says which does not.

use super::edited::{Files, Outcome, Replaced, document, files, outcome, says, with};
use crate::fixtures::DEMO;
use fittingcards::catalogue::{Fitting, Status};
use fittingcards::facts::{self, VALUE_NAMES};
use fittingcards::units::Numerals;
use proptest::prelude::*;
use std::sync::LazyLock;

/// The records as they are, and what they come to.
static FILES: LazyLock<Files> = LazyLock::new(files);
static BEFORE: LazyLock<Outcome> = LazyLock::new(|| outcome(&FILES));

/// What values become.
struct New {
    number: String,
    /// Least and most.
    window: [String; 2],
    stamp: String,
    mark: String,
}

/// A value as its record states it, and what stands for it afterwards; both as a card prints them.
struct Change {
    fitting: String,
    record: String,
    was: String,
    is: String,
    printed: (String, String),
}

#[test]
fn a_value_that_is_changed_in_its_record_changes_everywhere_on_the_card() {
    let new = New {
        number: "3.17".to_owned(),
        window: ["1.25", "1.50"].map(str::to_owned),
        stamp: "QX9 77.7".to_owned(),
        mark: "QZ".to_owned(),
    };
    let changes = all(&new);
    let faults: Vec<String> = changes.iter().flat_map(faults).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(changes.len() > 60, "{} values were changed", changes.len());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn so_does_any_value_that_becomes_any_other(
        which in any::<prop::sample::Index>(),
        number in 1_u32..400_000,
        decimals in 0_usize..4,
        stamp in "[A-Z]{1,3}[1-9] [0-9]{2}\\.[0-9]",
        mark in "[A-Z]{2}",
    ) {
        let number = f64::from(number) / 1000.0;
        let written = |value: f64| format!("{value:.decimals$}");
        let window = [written(number + 1.0), written(number + 3.0)];
        let new = New { number: written(number + 1.0), window, stamp, mark };
        let changes = all(&new);
        let faults = faults(which.get(&changes));
        prop_assert!(faults.is_empty(), "{}", faults.join("\n"));
    }
}

fn all(new: &New) -> Vec<Change> {
    let current = DEMO.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current);
    current.flat_map(|fitting| of_fitting(fitting, new)).collect()
}

/// What still shows the old value, or shows neither.
fn faults(change: &Change) -> Vec<String> {
    let number = &change.fitting;
    let (was, is) = &change.printed;
    let before = printed(&BEFORE, number);
    let after = printed(&outcome(&with(&FILES, &change.replaced())), number);
    let shows = |printed: &Printed, value: &str| printed.texts.iter().any(|text| says(text, value));
    let mut faults = Vec::new();
    if !shows(&before, was) || !shows(&after, is) {
        faults.push(format!("{number}: “{was}” or “{is}” is not printed"));
    }
    // Another of its values may read the same.
    let stale =
        after.texts.iter().filter(|text| says(text, was) && !after.told && !after.values.contains(was));
    faults.extend(stale.map(|text| format!("{number}: “{text}” still says “{was}”")));
    faults
}

impl Change {
    fn replaced(&self) -> Replaced<'_> {
        Replaced { record: &self.record, was: &self.was, is: &self.is }
    }
}

/// The changes of a fitting's own values, of its gripping part's stamp and of its mark.
fn of_fitting(fitting: &Fitting, new: &New) -> Vec<Change> {
    let number = &fitting.number;
    let on = |record: &str| On { fitting: number.clone(), record: record.to_owned() };
    let mut changes = Vec::new();
    for (key, unit) in [("insertion_mm", "mm"), ("tail_mm", "mm"), ("line_tension_max_kN", "kN")] {
        changes.extend(on(number).one(key, unit, &new.number));
    }
    for key in ["seated_mm", "tensioned_mm"] {
        changes.extend(on(number).window(key, "mm", &new.window));
    }
    let procedure = fitting.procedure.as_ref().map(|procedure| on(&procedure.id));
    let torque = |on: On| on.window("torque_Nm", "N·m", &new.window);
    changes.extend(torque(on(number)).or_else(|| torque(procedure?)));
    if let Some(item) = fitting.gripping().next() {
        changes.extend(on(&item.part.number).quoted("stamp: \"", &new.stamp));
        changes.extend(on(&item.part.number).quoted("text: \"", &new.mark));
    }
    changes
}

/// A record that a value of a fitting stands in.
struct On {
    fitting: String,
    record: String,
}

impl On {
    /// A key with one number.
    fn one(&self, key: &str, unit: &str, new: &str) -> Option<Change> {
        let (_, rest) = document(&FILES, &self.record)?.split_once(&format!("\n{key}: "))?;
        let old = rest.split_whitespace().next()?;
        let printed = (format!("{old} {unit}"), format!("{new} {unit}"));
        Some(self.change(format!("{key}: {old}"), format!("{key}: {new}"), printed))
    }

    /// A key with least and most.
    fn window(&self, key: &str, unit: &str, [low, high]: &[String; 2]) -> Option<Change> {
        let head = format!("{key}: {{ min: ");
        let (_, rest) = document(&FILES, &self.record)?.split_once(&head)?;
        let (least, rest) = rest.split_once(", max: ")?;
        let (most, _) = rest.split_once(" }")?;
        let old = match (least.strip_prefix('-'), most.strip_prefix('-')) {
            // Below the face: how far it is sunk, the least first.
            (Some(most), Some(least)) => format!("sunk {least} to {most} {unit}"),
            _ if least == most => format!("{least} {unit}"),
            _ => format!("{least} to {most} {unit}"),
        };
        let was = format!("{head}{least}, max: {most} }}");
        Some(self.change(
            was,
            format!("{head}{low}, max: {high} }}"),
            (old, format!("{low} to {high} {unit}")),
        ))
    }

    /// A key with a text in quotes.
    fn quoted(&self, head: &str, new: &str) -> Option<Change> {
        let (_, rest) = document(&FILES, &self.record)?.split_once(head)?;
        let (old, _) = rest.split_once('"')?;
        let printed = (old.to_owned(), new.to_owned());
        Some(self.change(format!("{head}{old}\""), format!("{head}{new}\""), printed))
    }

    fn change(&self, was: String, is: String, printed: (String, String)) -> Change {
        Change { fitting: self.fitting.clone(), record: self.record.clone(), was, is, printed }
    }
}

/// What a fitting's card comes to.
struct Printed {
    /// Its texts, but those of wrong parts.
    texts: Vec<String>,
    /// Its values, each in the form that is printed.
    values: Vec<String>,
    /// Whether a finding says that a text contradicts the record.
    told: bool,
}

fn printed(outcome: &Outcome, number: &str) -> Printed {
    let own = outcome.card(number).printed().into_iter().filter(|text| !text.name.starts_with("not "));
    let values = facts::values(&outcome.catalogue.fittings[number], Numerals::default());
    let values = VALUE_NAMES.iter().filter_map(|name| values.get(name).ok());
    let values = values.map(|value| value.replace('\u{a0}', " ")).collect();
    Printed {
        texts: own.map(|text| text.text).collect(),
        values,
        told: outcome.has("text-contradicts-record"),
    }
}
