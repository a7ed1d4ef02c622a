//! Which gripping parts can be inside a closed fitting.

use super::identify::{Unanswerable, check_length};
use super::json::number;
use super::{BodyMixups, Case, Mixups};
use crate::catalogue::Part;
use crate::units::{Length, Range};
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// A closed fitting with its stand-out measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Closed<'a> {
    /// Number of the body.
    pub body: &'a str,
    /// Id of the conductor in it.
    pub conductor: &'a str,
    /// Stand-out as measured.
    pub stand_out: Length,
    /// How far the reading may be off; 0.5 mm is usual.
    pub tolerance: Length,
}

/// A gripping part that goes together with that body and conductor.
#[derive(Debug, Clone)]
pub struct Inside {
    /// The part.
    pub part: Arc<Part>,
    /// Whether it belongs there.
    pub right: bool,
    /// Where it would stand out.
    pub stand_out: Option<Length>,
    /// The same over the tolerances.
    pub interval: Option<Range<Length>>,
    /// Whether the reading agrees; a part whose stand-out is not known can't be ruled out.
    pub fits_reading: bool,
}

/// The gripping parts that go together with a body and a conductor: those that agree with the reading
/// first, and among them the nearest.
///
/// # Errors
/// Where the reading is not possible, or no fitting of that body holds that conductor.
pub fn inside(mixups: &Mixups, closed: &Closed<'_>) -> Result<Vec<Inside>, Unanswerable> {
    check_length("stand-out", closed.stand_out, 500.0)?;
    check_length("tolerance", closed.tolerance, 50.0)?;
    if closed.tolerance < Length::ZERO {
        return Err(Unanswerable("a tolerance can't be negative".into()));
    }
    let body = mixups
        .body(closed.body)
        .ok_or_else(|| Unanswerable(format!("no gripping part goes into a body {}", closed.body)))?;
    let mut found: Vec<Inside> = Vec::new();
    for case in cases(body, closed)? {
        let here = Inside {
            part: Arc::clone(&case.part),
            right: case.right,
            stand_out: case.outcome.stand_out,
            interval: case.outcome.stand_out_interval,
            fits_reading: case.outcome.stand_out_interval.is_none_or(|interval| fits(interval, closed)),
        };
        match found.iter_mut().find(|there| there.part.number == here.part.number) {
            Some(there) if (here.right, here.fits_reading) > (there.right, there.fits_reading) => {
                *there = here
            }
            Some(_) => {}
            None => found.push(here),
        }
    }
    found.sort_by(|a, b| {
        let off =
            |inside: &Inside| inside.stand_out.map_or(f64::INFINITY, |at| (at - closed.stand_out).abs().mm());
        b.fits_reading.cmp(&a.fits_reading).then_with(|| off(a).total_cmp(&off(b)))
    });
    Ok(found)
}

/// The answer as JSON for other programs.
#[must_use]
pub fn inside_to_json(found: &[Inside]) -> Value {
    json!({ "inside": found.iter().map(one).collect::<Vec<_>>() })
}

fn cases<'a>(
    body: &'a BodyMixups,
    closed: &Closed<'_>,
) -> Result<impl Iterator<Item = &'a Case>, Unanswerable> {
    if !body.cases.iter().any(|case| case.conductor.id == closed.conductor) {
        let mut held: Vec<&str> = body.cases.iter().map(|case| case.conductor.id.as_str()).collect();
        held.sort_unstable();
        held.dedup();
        return Err(Unanswerable(format!(
            "no fitting with body {} holds {}; there are fittings for {}",
            closed.body,
            closed.conductor,
            held.join(", ")
        )));
    }
    let conductor = closed.conductor.to_owned();
    Ok(body.cases.iter().filter(move |case| case.conductor.id == conductor && case.outcome.goes_together()))
}

fn fits(interval: Range<Length>, closed: &Closed<'_>) -> bool {
    interval.widened(closed.tolerance + Length::from_mm(1e-9)).contains(closed.stand_out)
}

fn one(inside: &Inside) -> Value {
    let mut object = Map::new();
    object.insert("part".into(), json!(inside.part.number));
    object.insert("right".into(), json!(inside.right));
    object.extend(inside.stand_out.map(|length| ("stand_out_mm".to_owned(), number(length))));
    object.extend(inside.interval.map(|interval| {
        ("interval_mm".to_owned(), json!([number(interval.least()), number(interval.most())]))
    }));
    object.insert("fits_reading".into(), json!(inside.fits_reading));
    Value::Object(object)
}
