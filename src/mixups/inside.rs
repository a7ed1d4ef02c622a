//! Which parts can be inside a closed fitting.

use super::draw_in::{Interval, seated, tensioned};
use super::identify::{Unanswerable, check_length};
use super::json::number;
use super::{BodyMixups, Consequence, Mixups, Summary};
use crate::catalogue::{Fitting, Part};
use crate::units::Length;
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// How far a stand-out that was read with a rule may be off, where nothing else is said.
pub const STAND_OUT_TOLERANCE: Length = Length::from_mm(0.5);

/// What to do where no part agrees with a reading.
pub const NONE_FITS: &str = "nothing that goes in agrees with this reading: keep clear; take the load on a \
                             puller first, then ask. Do not open it";

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
    /// Whether line tension has drawn the gripping part in.
    pub state: Pull,
}

/// Whether line tension has been on a fitting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pull {
    /// Tightened, and no more.
    Seated,
    /// Under line tension, or after it.
    Tensioned,
    /// Either.
    #[default]
    Unknown,
}

/// A part, or the whole kit of a fitting, that goes together with that body and conductor.
#[derive(Debug, Clone)]
pub struct Inside {
    /// The part, or the first gripping part of the kit.
    pub part: Arc<Part>,
    /// The fitting whose whole kit it is; `None` for a single part.
    pub kit: Option<Arc<Fitting>>,
    /// Whether it belongs there.
    pub right: bool,
    /// What it comes to.
    pub summary: Summary,
    /// Where it would stand out after seating.
    pub stand_out: Option<Length>,
    /// The same over the tolerances; `None` where it is not known.
    pub seated: Option<Interval>,
    /// Where line tension would have drawn it; `None` where it is not known.
    pub tensioned: Option<Interval>,
}

impl Inside {
    /// Whether a reading agrees; a part whose stand-out is not known can't be ruled out.
    #[must_use]
    pub fn fits(&self, reading: Length, tolerance: Length, state: Pull) -> bool {
        let within =
            |interval: Option<Interval>| interval.is_none_or(|interval| interval.takes(reading, tolerance));
        match state {
            Pull::Seated => within(self.seated),
            Pull::Tensioned => within(self.tensioned),
            Pull::Unknown => within(self.seated) || within(self.tensioned),
        }
    }
}

/// Everything that goes together with a body and a conductor: what the command and the booklet look a
/// reading up in. What is right comes first; then part by part, fitting by fitting, then kits.
#[must_use]
pub fn closed_with(body: &BodyMixups, conductor: &str) -> Vec<Inside> {
    let cases = body.cases.iter().filter(|case| case.conductor.id == conductor);
    let cases = cases.map(|case| one(Arc::clone(&case.part), None, &case.fitting, &case.comes));
    let kits = body.kits.iter().filter(|kit| kit.conductor.id == conductor && kit.parts.len() > 1);
    let kits = kits.filter_map(|kit| {
        let part = kit.parts.iter().find(|part| part.role.grips()).or_else(|| kit.parts.first())?;
        Some(one(Arc::clone(part), Some(Arc::clone(&kit.kit)), &kit.fitting, &kit.comes))
    });
    let mut all: Vec<Inside> = cases.chain(kits).flatten().collect();
    all.sort_by_key(|inside| !inside.right);
    all
}

fn one(part: Arc<Part>, kit: Option<Arc<Fitting>>, fitting: &Fitting, comes: &Consequence) -> Option<Inside> {
    comes.outcome.goes_together().then(|| Inside {
        part,
        kit,
        right: comes.right,
        summary: comes.summary,
        stand_out: comes.outcome.stand_out,
        seated: seated(&comes.outcome),
        tensioned: tensioned(&comes.outcome, fitting.stand_out.as_ref()),
    })
}

/// What a reading on a closed fitting says.
#[derive(Debug, Clone)]
pub struct ClosedAnswer {
    /// What goes together there: what agrees with the reading first, and among it the nearest.
    pub inside: Vec<Inside>,
    /// How many of them, from the front, agree.
    pub agreeing: usize,
}

/// The parts and kits that go together with a body and a conductor, against a reading.
///
/// # Errors
/// Where the reading is not possible, or no fitting of that body holds that conductor.
pub fn inside(mixups: &Mixups, closed: &Closed<'_>) -> Result<ClosedAnswer, Unanswerable> {
    check_length("stand-out", closed.stand_out, 500.0)?;
    check_length("tolerance", closed.tolerance, 50.0)?;
    if closed.tolerance < Length::ZERO {
        return Err(Unanswerable("a tolerance can't be negative".into()));
    }
    let body = mixups
        .body(closed.body)
        .ok_or_else(|| Unanswerable(format!("no gripping part goes into a body {}", closed.body)))?;
    check_conductor(body, closed)?;
    let fits = |inside: &Inside| inside.fits(closed.stand_out, closed.tolerance, closed.state);
    let mut found: Vec<Inside> = Vec::new();
    for here in closed_with(body, closed.conductor) {
        let name =
            |inside: &Inside| (inside.part.number.clone(), inside.kit.as_ref().map(|kit| kit.number.clone()));
        match found.iter_mut().find(|there| name(there) == name(&here)) {
            Some(there) if (fits(&here), here.right) > (fits(there), there.right) => *there = here,
            Some(_) => {}
            None => found.push(here),
        }
    }
    found.sort_by(|a, b| {
        let off =
            |inside: &Inside| inside.stand_out.map_or(f64::INFINITY, |at| (at - closed.stand_out).abs().mm());
        fits(b).cmp(&fits(a)).then_with(|| off(a).total_cmp(&off(b)))
    });
    Ok(ClosedAnswer { agreeing: found.iter().filter(|inside| fits(inside)).count(), inside: found })
}

/// The answer as JSON for other programs.
#[must_use]
pub fn inside_to_json(answer: &ClosedAnswer, closed: &Closed<'_>) -> Value {
    let inside = answer.inside.iter().enumerate();
    let inside: Vec<Value> =
        inside.map(|(nth, inside)| entry(inside, nth < answer.agreeing, closed)).collect();
    let mut object = Map::new();
    object.insert("inside".into(), json!(inside));
    if answer.agreeing == 0 {
        object.insert("remarks".into(), json!([NONE_FITS]));
    }
    Value::Object(object)
}

fn check_conductor(body: &BodyMixups, closed: &Closed<'_>) -> Result<(), Unanswerable> {
    if body.cases.iter().any(|case| case.conductor.id == closed.conductor) {
        return Ok(());
    }
    let mut held: Vec<&str> = body.cases.iter().map(|case| case.conductor.id.as_str()).collect();
    held.sort_unstable();
    held.dedup();
    Err(Unanswerable(format!(
        "no fitting with body {} holds {}; there are fittings for {}",
        closed.body,
        closed.conductor,
        held.join(", ")
    )))
}

fn entry(inside: &Inside, fits: bool, closed: &Closed<'_>) -> Value {
    let mut object = Map::new();
    object.insert("part".into(), json!(inside.part.number));
    object.extend(inside.kit.as_ref().map(|kit| ("kit".to_owned(), json!(kit.number))));
    object.insert("right".into(), json!(inside.right));
    object.insert("summary".into(), json!(inside.summary.words()));
    object.extend(inside.stand_out.map(|length| ("stand_out_mm".to_owned(), number(length))));
    let ends = |interval: Interval| json!([interval.least.map(number), number(interval.most)]);
    if closed.state != Pull::Tensioned {
        object.extend(inside.seated.map(|interval| ("interval_mm".to_owned(), ends(interval))));
    }
    let key = if closed.state == Pull::Tensioned { "interval_mm" } else { "tensioned_mm" };
    if closed.state != Pull::Seated {
        object.extend(inside.tensioned.map(|interval| (key.to_owned(), ends(interval))));
    }
    object.insert("fits_reading".into(), json!(fits));
    Value::Object(object)
}
