//! The figures that a text of a fitting may state because a record has them, each with what it is of.

use super::figures_of_text::Figures;
use super::units_of_text::Unit;
use super::words_of_text::words;
use crate::catalogue::{Fitting, Origin};

/// The figures of a fitting's own record, its procedure, parts and conductors.
pub(super) struct KnownFigures {
    figures: Vec<(Quantity, f64)>,
    spanners: Vec<f64>,
    threads: Vec<String>,
}

/// What a figure is of: lengths in millimetres, areas in mm², angles in degrees.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Quantity {
    Length,
    Area,
    Angle,
    Wires,
}

/// The figures that records of a fitting have.
pub(super) fn known_figures(fitting: &Fitting) -> KnownFigures {
    let parts = fitting.items.iter().map(|item| &item.part.origin);
    let conductors = fitting.conductors.iter().map(|held| &held.origin);
    let procedure = fitting.procedure.iter().map(|procedure| &procedure.origin);
    let origins = [&fitting.origin].into_iter().chain(procedure).chain(parts).chain(conductors);
    let stated = origins.flat_map(stated);
    KnownFigures {
        figures: stated.chain(wires(fitting)).collect(),
        spanners: fitting.tightening.iter().filter_map(|line| line.spanner).map(|size| size.mm()).collect(),
        threads: threads(fitting),
    }
}

impl KnownFigures {
    /// Whether a record has figures that a text states. Torques and loads have a rule of their own.
    pub(super) fn have(&self, stated: &Figures) -> bool {
        let (quantity, factor) = match stated.unit {
            Unit::Other("wires" | "wire") => (Quantity::Wires, 1.0),
            Unit::Other("mm²") => (Quantity::Area, 1.0),
            Unit::Other("°") => (Quantity::Angle, 1.0),
            Unit::Other("cm") => (Quantity::Length, 10.0),
            Unit::Other("m") => (Quantity::Length, 1000.0),
            Unit::Other(_) => (Quantity::Length, 1.0),
            Unit::Torque | Unit::Load | Unit::Mass => return true,
        };
        let of_it = || self.figures.iter().filter(|(known, _)| *known == quantity).map(|(_, value)| *value);
        // A length is written with a minus where it goes inwards; the record may say so in words.
        let is_same = |known: f64, value: f64| (known.abs() - value.abs() * factor).abs() < 1e-9;
        stated.values.iter().all(|value| of_it().any(|known| is_same(known, *value)))
    }

    /// Whether something is tightened with a spanner of this size.
    pub(super) fn have_spanner(&self, size: &str) -> bool {
        let size: Option<f64> = size.replace(',', ".").parse().ok();
        size.is_some_and(|size| self.spanners.iter().any(|known| (known - size).abs() < 1e-9))
    }

    /// Whether something has this thread; its pitch need not be said.
    pub(super) fn have_thread(&self, thread: &str) -> bool {
        let thread = plain_thread(thread);
        self.threads.iter().any(|known| {
            known.strip_prefix(thread.as_str()).is_some_and(|rest| rest.is_empty() || rest.starts_with('x'))
        })
    }
}

fn stated(origin: &Origin) -> impl Iterator<Item = (Quantity, f64)> {
    origin.numbers.iter().filter_map(|(path, written)| {
        let (quantity, factor) = path.rsplit('.').find_map(quantity)?;
        Some((quantity, written.value * factor))
    })
}

/// What a key of a record states, and how many of the unit that its ending names; `None` where it says nothing of that.
fn quantity(key: &str) -> Option<(Quantity, f64)> {
    match key.rsplit('_').next()? {
        _ if key.contains("_per_") => None,
        "mm" => Some((Quantity::Length, 1.0)),
        "m" if key.ends_with("_m") => Some((Quantity::Length, 1000.0)),
        "mm2" => Some((Quantity::Area, 1.0)),
        "deg" => Some((Quantity::Angle, 1.0)),
        "wires" | "hole" if key == "wires" || key == "wires_through_hole" => Some((Quantity::Wires, 1.0)),
        _ => None,
    }
}

/// How many wires lie in one layer of a conductor, and in those next to each other.
fn wires(fitting: &Fitting) -> Vec<(Quantity, f64)> {
    let mut counts = Vec::new();
    for held in &fitting.conductors {
        let layers: Vec<f64> = held.section.layers.iter().map(|layer| f64::from(layer.wires)).collect();
        for from in 0..layers.len() {
            counts.extend(
                (from..layers.len()).map(|to| (Quantity::Wires, layers[from..=to].iter().sum::<f64>())),
            );
        }
    }
    counts
}

/// Threads of what is tightened, and whatever else may look like one: names, stamps and marks of the parts.
fn threads(fitting: &Fitting) -> Vec<String> {
    let parts = fitting.items.iter().map(|item| &item.part);
    let of_parts = parts.flat_map(|part| {
        let mark = part.mark.as_ref().map_or("", |mark| mark.text.as_str());
        [part.name.as_str(), &part.number, &part.stamp, &part.drawing, mark]
    });
    let tightened = fitting.tightening.iter().flat_map(|line| [line.thread.as_str(), &line.item]);
    let tags = fitting.conductors.iter().flat_map(|held| [held.identity.drum_tag.as_str(), &held.name]);
    let own = [fitting.name.as_str(), &fitting.number, &fitting.stamp].into_iter();
    let texts = own.chain(of_parts).chain(tightened).chain(tags);
    texts.flat_map(words).map(|word| plain_thread(word.text)).collect()
}

fn plain_thread(thread: &str) -> String {
    thread.to_lowercase().replace('×', "x")
}
