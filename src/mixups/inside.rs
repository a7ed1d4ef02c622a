//! Which parts can be inside a closed fitting.

use super::acceptance::{Acceptance, At, Need, Read, Reading, Test, Way};
use super::draw_in::{Interval, seated, tensioned};
use super::identify::{Unanswerable, refuse};
use super::json::number;
use super::right_inside;
use super::{BodyMixups, Consequence, Mixups, Summary};
use crate::catalogue::{Fitting, Gaps, Part, StandOutFrom};
use crate::units::{Length, Numerals};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;
use std::sync::Arc;

/// How far a stand-out that was read with a rule may be off, where nothing else is said.
pub const STAND_OUT_TOLERANCE: Length = Length::from_mm(0.5);

/// What to do where no part agrees with a reading.
pub const NONE_FITS: &str = "nothing that goes in agrees with this reading: keep clear; take the load on a \
                             puller first, then ask. Do not open it";
/// What to do where a wrong part agrees with a reading.
pub const WRONG_FITS: &str = "it can be a wrong part: read its stamp or mark; where neither can be seen, treat it \
                              as wrong: keep clear; take the load on a puller first, then ask. Do not open it";
/// What is said where the right part alone agrees.
pub const RIGHT_FITS: &str = "only the right part stands out like this; that does not prove that it grips";

/// What may be otherwise where records are left out.
const OTHERWISE: &str = "another part can be inside";

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
    pub state: LineLoad,
}

/// Whether line tension has been on a fitting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LineLoad {
    /// Tightened, and no more.
    Seated,
    /// Under line tension, or after it.
    Tensioned,
    /// Either.
    #[default]
    Unknown,
}

impl LineLoad {
    fn word(self) -> &'static str {
        match self {
            Self::Seated => "seated",
            Self::Tensioned => "tensioned",
            Self::Unknown => "unknown",
        }
    }
}

/// What it would mean to find something inside; the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Meaning {
    /// A danger that nothing measured shows.
    Hidden,
    /// Another danger.
    Seen,
    /// Neither a danger nor right.
    Other,
    /// What belongs there.
    Right,
}

impl Meaning {
    /// Every one of them, the worst first.
    pub const ALL: [Self; 4] = [Self::Hidden, Self::Seen, Self::Other, Self::Right];

    /// Its place among them, from 0: the lower, the worse.
    #[must_use]
    pub fn rank(self) -> usize {
        Self::ALL.iter().position(|found| *found == self).unwrap_or_default()
    }

    /// What is said where it is the worst that agrees with a reading; without one, where nothing agrees.
    #[must_use]
    pub fn remark(worst: Option<Self>) -> &'static str {
        match worst {
            None => NONE_FITS,
            Some(Self::Right) => RIGHT_FITS,
            Some(_) => WRONG_FITS,
        }
    }
}

/// A part, or the whole kit of a fitting, that goes together with that body and conductor.
#[derive(Debug, Clone)]
pub struct PossibleInside {
    /// The part, or the first gripping part of the kit.
    pub part: Arc<Part>,
    /// The fitting whose whole kit it is; `None` for a single part.
    pub kit: Option<Arc<Fitting>>,
    /// The fitting that it is judged in.
    pub fitting: Arc<Fitting>,
    /// Whether it belongs there.
    pub right: bool,
    /// What it comes to.
    pub summary: Summary,
    /// What it would mean to find it, in whichever fitting of the body.
    pub found: Meaning,
    /// Where it would stand out after seating.
    pub stand_out: Option<Length>,
    /// The same over the tolerances; `None` where it is not known.
    pub seated: Option<Interval>,
    /// Where line tension would have drawn it; `None` where it is not known.
    pub tensioned: Option<Interval>,
}

impl PossibleInside {
    /// Which part or kit it is: its number, and whether it is a kit.
    fn name(&self) -> (&str, bool) {
        self.kit.as_ref().map_or((&self.part.number, false), |kit| (&kit.number, true))
    }

    /// The readings that it takes; one whose stand-out is not known can't be ruled out.
    fn acceptance(&self, numerals: Numerals) -> Acceptance {
        let way = |interval: Option<Interval>, state: LineLoad| {
            let of = Reading::State;
            let mut needs = vec![Need::Among { of, words: vec![state.word(), LineLoad::Unknown.word()] }];
            needs.extend(interval.map(|interval| interval.need(Reading::StandOut)));
            Way::new(needs)
        };
        let ways = vec![way(self.seated, LineLoad::Seated), way(self.tensioned, LineLoad::Tensioned)];
        let otherwise = format!("it would be {}", self.where_out(LineLoad::Unknown, numerals));
        let own = Test { of: Reading::StandOut, ways, otherwise };
        let more = if self.right { right_inside::tests(&self.fitting) } else { Vec::new() };
        Acceptance {
            tests: [own].into_iter().chain(more).collect(),
            at: self.stand_out.map(|at| At::length(Reading::StandOut, at)),
        }
    }

    /// Whether a reading agrees; a part whose stand-out is not known can't be ruled out.
    #[must_use]
    pub fn fits(&self, stand_out: Length, tolerance: Length, state: LineLoad) -> bool {
        self.acceptance(Numerals::default()).agrees(&read(stand_out, tolerance, state))
    }

    /// Where it would stand out in a state, in words: seated, tensioned or both.
    #[must_use]
    pub fn where_out(&self, state: LineLoad, numerals: Numerals) -> String {
        let words = |interval: Option<Interval>| {
            interval.map_or_else(|| "not known".to_owned(), |interval| interval.words(numerals))
        };
        let seated = || format!("seated {}", words(self.seated));
        let tensioned = || format!("tensioned {}", words(self.tensioned));
        match state {
            _ if self.seated.is_none() => "not known how far out".to_owned(),
            LineLoad::Seated => seated(),
            LineLoad::Tensioned => tensioned(),
            LineLoad::Unknown => format!("{}, {}", seated(), tensioned()),
        }
    }

    /// What a look-up goes by.
    #[must_use]
    pub fn to_json(&self, numerals: Numerals) -> Value {
        self.acceptance(numerals).to_json()
    }
}

/// Everything that goes together with a body and a conductor: what the command and the booklet look a
/// reading up in. What is right comes first; then part by part, fitting by fitting, then kits.
#[must_use]
pub fn closed_with(body: &BodyMixups, conductor: &str) -> Vec<PossibleInside> {
    let cases = body.cases.iter().filter(|case| case.conductor.id == conductor);
    let cases = cases.map(|case| one(Arc::clone(&case.part), None, &case.fitting, &case.comes));
    let kits = body.kits.iter().filter(|kit| kit.conductor.id == conductor && kit.parts.len() > 1);
    let kits = kits.filter_map(|kit| {
        let part = kit.parts.iter().find(|part| part.role.grips()).or_else(|| kit.parts.first())?;
        Some(one(Arc::clone(part), Some(Arc::clone(&kit.kit)), &kit.fitting, &kit.comes))
    });
    let mut all: Vec<PossibleInside> = cases.chain(kits).flatten().collect();
    let worst: Vec<Meaning> = all.iter().map(|inside| worst(inside, &all)).collect();
    for (inside, worst) in all.iter_mut().zip(worst) {
        inside.found = worst;
    }
    all.sort_by_key(|inside| !inside.right);
    all
}

/// The same by part or kit: a list for each, with one entry a fitting of the body.
#[must_use]
pub fn closed_by_name(body: &BodyMixups, conductor: &str) -> Vec<Vec<PossibleInside>> {
    let mut named: Vec<Vec<PossibleInside>> = Vec::new();
    for here in closed_with(body, conductor) {
        match named.iter_mut().find(|there| there[0].name() == here.name()) {
            Some(there) => there.push(here),
            None => named.push(vec![here]),
        }
    }
    named
}

/// What a look-up on a closed fitting goes by, whatever the fitting: what no reading can be, what is said, the
/// states of a part from the worst on.
#[must_use]
pub fn closed_json() -> Value {
    let says = Meaning::ALL.map(|worst| Meaning::remark(Some(worst)));
    json!({
        "limits": limits().iter().map(Test::to_json).collect::<Vec<_>>(),
        "says": says,
        "none": Meaning::remark(None),
    })
}

/// What no reading on a closed fitting can be.
fn limits() -> Vec<Test> {
    let range = |of, least, most, otherwise| Test::one(of, Need::within(of, least, most), otherwise);
    vec![
        range(Reading::StandOut, -500.0, 500.0, "a stand-out is from -500 to 500 mm"),
        range(Reading::Tolerance, 0.0, 50.0, "a tolerance is from 0 to 50 mm"),
    ]
}

fn one(
    part: Arc<Part>,
    kit: Option<Arc<Fitting>>,
    fitting: &Arc<Fitting>,
    comes: &Consequence,
) -> Option<PossibleInside> {
    // The gap under a screw is not what is computed: a reading of it settles nothing.
    let is_gap = fitting.stand_out.as_ref().is_some_and(|stated| stated.from == StandOutFrom::ScrewGap);
    comes.outcome.goes_together().then(|| PossibleInside {
        part,
        kit,
        fitting: Arc::clone(fitting),
        right: comes.right,
        summary: comes.summary,
        found: match comes {
            Consequence { summary: Summary::Right, right: true, .. } => Meaning::Right,
            Consequence { hidden: true, .. } => Meaning::Hidden,
            Consequence { danger: true, .. } => Meaning::Seen,
            _ => Meaning::Other,
        },
        stand_out: comes.outcome.stand_out.filter(|_| !is_gap),
        seated: seated(comes).filter(|_| !is_gap),
        tensioned: tensioned(comes, fitting.stand_out.as_ref()).filter(|_| !is_gap),
    })
}

/// What is right in its fitting is right there; all else is as bad as in the worst fitting of the body.
fn worst(inside: &PossibleInside, all: &[PossibleInside]) -> Meaning {
    if inside.found == Meaning::Right {
        return Meaning::Right;
    }
    let same = all.iter().filter(|other| other.name() == inside.name());
    same.map(|other| other.found).filter(|found| *found != Meaning::Right).min().unwrap_or(inside.found)
}

/// What a reading on a closed fitting says.
#[derive(Debug, Clone)]
pub struct ClosedAnswer {
    /// What goes together there: what agrees with the reading first, among it the worst, and then the nearest.
    pub inside: Vec<PossibleInside>,
    /// How many of them, from the front, agree.
    pub agreeing: usize,
    /// What is to be thought of where the right part agrees: that the reading is no go, or what its fitting's status says.
    pub remarks: BTreeSet<&'static str>,
    /// What is to be said first where records could not be looked at.
    pub incomplete: Option<String>,
}

/// The parts and kits that go together with a body and a conductor, against a reading.
///
/// # Errors
/// Where the reading is not possible, or no fitting of that body holds that conductor.
pub fn inside(mixups: &Mixups, closed: &Closed<'_>) -> Result<ClosedAnswer, Unanswerable> {
    let read = read(closed.stand_out, closed.tolerance, closed.state);
    refuse(&limits(), &read, Numerals::default())?;
    let body = mixups
        .body(closed.body)
        .ok_or_else(|| Unanswerable(format!("no gripping part goes into a body {}", closed.body)))?;
    check_conductor(body, closed)?;
    let takes = |inside: &PossibleInside| inside.acceptance(Numerals::default());
    let judged = closed_by_name(body, closed.conductor).into_iter().filter_map(|named| {
        let agreeing = named.iter().position(|inside| takes(inside).agrees(&read));
        let inside = named.into_iter().nth(agreeing.unwrap_or(0))?;
        Some((agreeing.is_none(), inside.found, takes(&inside).distance(&read), inside))
    });
    let mut judged: Vec<(bool, Meaning, f64, PossibleInside)> = judged.collect();
    judged.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then_with(|| a.2.total_cmp(&b.2)));
    let agreeing = judged.iter().filter(|(fails, ..)| !fails).count();
    let incomplete = Gaps::stop(mixups.gaps.deciding, OTHERWISE);
    let remarks = judged[..agreeing].iter().flat_map(|(.., inside)| takes(inside).remarks(&read)).collect();
    Ok(ClosedAnswer {
        agreeing,
        remarks,
        incomplete,
        inside: judged.into_iter().map(|(.., inside)| inside).collect(),
    })
}

impl ClosedAnswer {
    /// What is to be thought and done. The right part never stands alone where others could not be looked at.
    #[must_use]
    pub fn remark(&self) -> &'static str {
        match self.inside[..self.agreeing].first().map(|inside| inside.found) {
            Some(Meaning::Right) if self.incomplete.is_some() => WRONG_FITS,
            worst => Meaning::remark(worst),
        }
    }
}

fn read(stand_out: Length, tolerance: Length, state: LineLoad) -> Read {
    let mut read = Read::default();
    read.numbers.insert(Reading::StandOut, stand_out.mm());
    read.numbers.insert(Reading::Tolerance, tolerance.mm());
    read.words.insert(Reading::State, state.word());
    read
}

/// The answer as JSON for other programs.
#[must_use]
pub fn inside_to_json(answer: &ClosedAnswer, closed: &Closed<'_>) -> Value {
    let inside = answer.inside.iter().enumerate();
    let inside: Vec<Value> =
        inside.map(|(nth, inside)| entry(inside, nth < answer.agreeing, closed)).collect();
    let mut object = Map::new();
    object.insert("inside".into(), json!(inside));
    let first = answer.incomplete.as_deref().into_iter().chain([answer.remark()]);
    let remarks: Vec<&str> = first.chain(answer.remarks.iter().copied()).collect();
    object.insert("remarks".into(), json!(remarks));
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

fn entry(inside: &PossibleInside, fits: bool, closed: &Closed<'_>) -> Value {
    let mut object = Map::new();
    object.insert("part".into(), json!(inside.part.number));
    object.extend(inside.kit.as_ref().map(|kit| ("kit".to_owned(), json!(kit.number))));
    object.insert("right".into(), json!(inside.found == Meaning::Right));
    object.insert("summary".into(), json!(inside.summary.words()));
    object.extend(inside.stand_out.map(|length| ("stand_out_mm".to_owned(), number(length))));
    let ends = |interval: Interval| json!([interval.least.map(number), number(interval.most)]);
    if closed.state != LineLoad::Tensioned {
        object.extend(inside.seated.map(|interval| ("interval_mm".to_owned(), ends(interval))));
    }
    let key = if closed.state == LineLoad::Tensioned { "interval_mm" } else { "tensioned_mm" };
    if closed.state != LineLoad::Seated {
        object.extend(inside.tensioned.map(|interval| (key.to_owned(), ends(interval))));
    }
    object.insert("fits_reading".into(), json!(fits));
    Value::Object(object)
}
