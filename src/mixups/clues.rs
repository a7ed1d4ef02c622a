//! What tells one conductor from another: signs that each shows by itself, and how two are held against each other.

use super::acceptance::{NEAR, fine};
use super::features::{core, magnetic, outer_wires, scratch, shape, strands, wire_diameter};
use crate::catalogue::Conductor;
use crate::section::{Magnetic, MaterialGroup};
use crate::units::{Length, Numerals};
use serde_json::{Value, json};

/// What is done where nothing by hand tells conductors apart.
pub const STOP: &str = "can't be settled by hand: stop; read the line record or the drum tag";

/// What is done where the labels are the same too.
pub const STOP_LABELLED_ALIKE: &str =
    "can't be settled by hand, and the drum tags say the same: stop; read the line record";

/// Metals that look and feel the same.
const ALIKE: [MaterialGroup; 2] = [MaterialGroup::Copper, MaterialGroup::Bronze];

/// Wires that differ by less are not told apart with a caliper.
const CALIPER: Length = Length::from_mm(0.1);

const SHAPE: &str = "shape";
const DRUM_TAG: &str = "drum tag";

/// Something that tells one conductor from another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clue {
    /// What to look at, such as "wires in the outer layer".
    pub what: &'static str,
    /// What the one shows.
    pub this: String,
    /// What the other shows.
    pub that: String,
}

impl Clue {
    /// In words: "wires in the outer layer: 12, not 18".
    #[must_use]
    pub fn words(&self) -> String {
        format!("{}: {}, not {}", self.what, self.this, self.that)
    }

    /// The same from the other's side.
    #[must_use]
    pub fn turned(&self) -> Self {
        Self { what: self.what, this: self.that.clone(), that: self.this.clone() }
    }
}

/// Something that a conductor shows.
#[derive(Debug, Clone)]
struct Sign {
    what: &'static str,
    says: String,
    /// Where it is a length: that, in millimetres. Two that differ by less than a caliper sees are one.
    mm: Option<f64>,
    /// Another sign that must be the same on both, or this one says nothing.
    within: Option<&'static str>,
}

/// All that tells a conductor from others, surest first.
#[derive(Debug, Clone)]
pub(super) struct Signs {
    by_hand: Vec<Sign>,
    labels: Vec<Sign>,
    metal: Option<&'static str>,
}

/// What tells one conductor from another by hand, surest first; empty where nothing does.
///
/// Copper and bronze have no clue of their own: a fresh scratch shows the same colour on both.
#[must_use]
pub fn clues(one: &Conductor, other: &Conductor, numerals: Numerals) -> Vec<Clue> {
    differing(&signs(one, numerals).by_hand, &signs(other, numerals).by_hand)
}

/// What both conductors show by hand, and the same on both; surest first.
#[must_use]
pub fn same_by_hand(one: &Conductor, other: &Conductor, numerals: Numerals) -> Vec<&'static str> {
    let (these, those) = (signs(one, numerals).by_hand, signs(other, numerals).by_hand);
    let is_same = |this: &&Sign| those.iter().any(|that| that.what == this.what && that.says == this.says);
    these.iter().filter(is_same).map(|sign| sign.what).collect()
}

/// Whether the drum tags of two conductors say the same, and no tracer tells them apart.
#[must_use]
pub fn labelled_alike(one: &Conductor, other: &Conductor) -> bool {
    let numerals = Numerals::default();
    signs(one, numerals).are_labelled_as(&signs(other, numerals))
}

/// What tells one conductor from another in words: by hand, else that nothing does; then by labels.
#[must_use]
pub fn told_apart(one: &Conductor, other: &Conductor, numerals: Numerals) -> String {
    signs(one, numerals).against(&signs(other, numerals))
}

/// What a conductor shows by hand, and on its labels. A label tells what the maker put in, not what is in
/// the line.
pub(super) fn signs(wire: &Conductor, numerals: Numerals) -> Signs {
    let sign = |what, says: Option<String>| Some(Sign { what, says: says?, mm: None, within: None });
    let within = |what, says: Option<String>| Some(Sign { within: Some(SHAPE), ..sign(what, says)? });
    let count = |count: Option<u32>| count.map(|count| count.to_string());
    let diameter = wire_diameter(wire);
    let by_hand = [
        sign(SHAPE, Some(shape(wire).words().to_owned())),
        within("strands in the outer layer", count(strands(wire))),
        within("wires in the outer layer", count(outer_wires(wire))),
        within("core at the cut end", core(wire).map(str::to_owned)),
        within("wire diameter", diameter.map(|diameter| numerals.length(diameter, 2)))
            .map(|sign| Sign { mm: diameter.map(fine), ..sign }),
        within("identification grooves", stated(&wire.identity.grooves)),
        sign("magnet", magnet(wire)),
        sign("fresh scratch", scratch(wire).map(|scratch| scratch.words().to_owned())),
    ];
    let labels =
        [sign(DRUM_TAG, stated(&wire.identity.drum_tag)), sign("tracer", stated(&wire.identity.tracer))];
    Signs {
        by_hand: by_hand.into_iter().flatten().collect(),
        labels: labels.into_iter().flatten().collect(),
        metal: metal(wire.material.group),
    }
}

impl Signs {
    /// What tells it from another, in words.
    pub(super) fn against(&self, other: &Self) -> String {
        let mut words: Vec<String> =
            differing(&self.by_hand, &other.by_hand).iter().map(Clue::words).collect();
        if words.is_empty() {
            let alike = self.metal.is_some() && other.metal.is_some() && self.metal != other.metal;
            let stop = if self.are_labelled_as(other) { STOP_LABELLED_ALIKE } else { STOP };
            words.push(if alike { alike_metals(stop) } else { nothing_by_hand(stop) });
        }
        words.extend(differing(&self.labels, &other.labels).iter().map(Clue::words));
        words.join("; ")
    }

    fn are_labelled_as(&self, other: &Self) -> bool {
        let tagged = |signs: &Self| signs.labels.iter().any(|sign| sign.what == DRUM_TAG);
        tagged(self) && tagged(other) && differing(&self.labels, &other.labels).is_empty()
    }

    pub(super) fn to_json(&self) -> Value {
        let list = |signs: &[Sign]| {
            let sign = |sign: &Sign| json!({ "what": sign.what, "says": sign.says, "mm": sign.mm, "within": sign.within });
            signs.iter().map(sign).collect::<Vec<_>>()
        };
        json!({ "by_hand": list(&self.by_hand), "labels": list(&self.labels), "metal": self.metal })
    }
}

/// What is said where nothing by hand tells two apart, and from where wires differ: for all conductors alike.
pub(super) fn common_json() -> Value {
    let stops = |stop| json!({ "nothing": nothing_by_hand(stop), "alike": alike_metals(stop) });
    json!({
        "unlike_labels": stops(STOP), "same_labels": stops(STOP_LABELLED_ALIKE),
        "label": DRUM_TAG, "caliper": fine(CALIPER),
    })
}

fn nothing_by_hand(stop: &str) -> String {
    format!("it {stop}")
}

fn alike_metals(stop: &str) -> String {
    format!("copper and bronze look and feel the same, it {stop}")
}

fn differing(these: &[Sign], those: &[Sign]) -> Vec<Clue> {
    let named = |signs: &[Sign], what: &str| signs.iter().position(|sign| sign.what == what);
    let same = |what: &str| match (named(these, what), named(those, what)) {
        (Some(this), Some(that)) => these[this].says == those[that].says,
        _ => false,
    };
    let differ = |this: &Sign, that: &Sign| match (this.mm, that.mm) {
        (Some(one), Some(other)) => (one - other).abs() >= fine(CALIPER) - NEAR,
        _ => this.says != that.says,
    };
    let counts = these.iter().filter(|sign| sign.within.is_none_or(same));
    let found = counts.filter_map(|this| {
        let that = those.iter().find(|that| that.what == this.what && differ(this, that))?;
        Some(Clue { what: this.what, this: this.says.clone(), that: that.says.clone() })
    });
    found.collect()
}

fn metal(group: MaterialGroup) -> Option<&'static str> {
    ALIKE.contains(&group).then_some(match group {
        MaterialGroup::Copper => "copper",
        _ => "bronze",
    })
}

/// A clear yes against a clear no; a slight pull settles nothing.
fn magnet(wire: &Conductor) -> Option<String> {
    match magnetic(wire)? {
        Magnetic::No => Some("does not stick".into()),
        Magnetic::Slight => None,
        Magnetic::Yes => Some("sticks".into()),
    }
}

/// A text that a record states; what it leaves empty is unknown.
fn stated(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| text.to_owned())
}
