//! Wrong parts and kits as a fitting's card names them.

use super::{NotThis, forms, mark, words};
use crate::catalogue::Fitting;
use crate::mixups::words::summary as words_of;
use crate::mixups::{Case, Consequence, Kit, Mixups, Summary};
use crate::units::{Length, Numerals};

/// A card names this many wrong parts; the rest are on the body's card.
const NAMED_WRONG_PARTS: usize = 3;

/// The wrong parts and kits that a card names, and how many more there are, of which whole kits.
pub(super) fn named(fitting: &Fitting, mixups: &Mixups, numerals: Numerals) -> (Vec<NotThis>, Vec<NotThis>) {
    let mut said: Vec<NotThis> =
        said_once(fitting, mixups, numerals).into_iter().map(|(_, facts)| facts).collect();
    let more = said.split_off(said.len().min(NAMED_WRONG_PARTS));
    (said, more)
}

/// Those of the wrong parts which a fitting's card names that close and hold nothing: what a card may draw beside its own.
#[must_use]
pub fn drawn_wrong_parts<'a>(fitting: &Fitting, mixups: &'a Mixups, numerals: Numerals) -> Vec<&'a Case> {
    let named = said_once(fitting, mixups, numerals).into_iter().take(NAMED_WRONG_PARTS);
    named.filter_map(|(wrong, _)| wrong.drawn()).collect()
}

/// A part, or another fitting's whole kit, that does not belong in a fitting.
#[derive(Clone, Copy)]
enum Wrong<'a> {
    Part(&'a Case),
    Kit(&'a Kit),
}

/// The wrong parts and kits, the worst first: dangers only. What is proven on this conductor may be used, and what will not
/// go in harms nobody.
fn not_to_be_used<'a>(fitting: &Fitting, mixups: &'a Mixups) -> Vec<Wrong<'a>> {
    let parts = mixups.wrong_parts(fitting).into_iter().map(Wrong::Part);
    let kits = mixups.wrong_kits(fitting).into_iter().map(Wrong::Kit);
    let mut wrong: Vec<Wrong<'_>> = parts.chain(kits).collect();
    wrong.retain(|wrong| !matches!(wrong.comes().summary, Summary::ProvenHereToo | Summary::WillNotGoIn));
    wrong.sort_by_key(|wrong| wrong.comes().weight());
    wrong
}

/// All of them with what a card says of each; without a kit that comes to what one of its parts comes to by itself.
fn said_once<'a>(fitting: &Fitting, mixups: &'a Mixups, numerals: Numerals) -> Vec<(Wrong<'a>, NotThis)> {
    let mut said: Vec<(Wrong<'a>, NotThis)> = Vec::new();
    for one in not_to_be_used(fitting, mixups) {
        let facts = one.facts(numerals);
        let comes_to = |facts: &NotThis| (facts.happens.clone(), facts.noticed.clone(), facts.hidden);
        let is_same = |other: &&NotThis| comes_to(other) == comes_to(&facts);
        if !said.iter().map(|(_, facts)| facts).filter(is_same).any(|other| one.has(&other.number)) {
            said.push((one, facts));
        }
    }
    said
}

impl<'a> Wrong<'a> {
    fn comes(self) -> &'a Consequence {
        match self {
            Self::Part(case) => &case.comes,
            Self::Kit(kit) => &kit.comes,
        }
    }

    /// Whether it is a kit with this part.
    fn has(self, part: &str) -> bool {
        matches!(self, Self::Kit(kit) if kit.parts.iter().any(|own| own.number == part))
    }

    /// A part that closes and holds nothing.
    fn drawn(self) -> Option<&'a Case> {
        match self {
            Self::Part(case) if case.summary == Summary::HoldsNothing => Some(case),
            _ => None,
        }
    }

    fn facts(self, numerals: Numerals) -> NotThis {
        match self {
            Self::Part(case) => {
                let happens = words_of(&case.comes, &case.fitting, &case.conductor, numerals);
                let facts = not_this(&case.comes, [&case.part.number, &case.part.stamp, &happens], numerals);
                NotThis { drawn: self.drawn().map_or_else(Vec::new, |case| drawn(case, numerals)), ..facts }
            }
            Self::Kit(kit) => {
                let gripping = kit.parts.iter().find(|part| part.role.grips());
                let stamp = gripping.map_or("", |part| part.stamp.as_str());
                let happens = words_of(&kit.comes, &kit.fitting, &kit.conductor, numerals);
                let number = format!("kit of {}", kit.kit.number);
                let facts = not_this(&kit.comes, [&number, stamp, &happens], numerals);
                NotThis { with: with(kit), ..facts }
            }
        }
    }
}

/// What of a kit goes in beside its gripping part, by stamp or number; what the fitting has itself is no news.
fn with(kit: &Kit) -> String {
    let gripping = kit.parts.iter().find(|part| part.role.grips());
    let beside = kit.parts.iter().filter(|part| gripping.is_none_or(|first| first.number != part.number));
    let own = |number: &str| kit.fitting.items.iter().any(|item| item.part.number == number);
    let called = beside
        .filter(|part| !own(&part.number))
        .map(|part| if part.stamp.is_empty() { part.number.as_str() } else { part.stamp.as_str() });
    let called = called.collect::<Vec<_>>().join(", ");
    if called.is_empty() { called } else { format!("with {called}") }
}

fn not_this(comes: &Consequence, [number, stamp, happens]: [&str; 3], numerals: Numerals) -> NotThis {
    NotThis {
        number: number.to_owned(),
        stamp: stamp.to_owned(),
        with: String::new(),
        mark: comes.mark.as_ref().map(mark::facts),
        happens: happens.to_owned(),
        noticed: noticed(comes, numerals),
        hidden: comes.hidden,
        drawn: Vec::new(),
    }
}

/// A smaller difference of stand-outs is not drawn, in millimetres.
const LEAST_SHIFT: f64 = 0.1;

/// What a drawing of a fitting's own part and a wrong one says: which part is the right one, how far each stands out, and the
/// gap.
fn drawn(case: &Case, numerals: Numerals) -> Vec<(&'static str, String)> {
    let own = case.fitting.items.iter().map(|item| &item.part).find(|part| part.role == case.part.role);
    let right = own.into_iter().flat_map(|part| {
        let called = if part.stamp.is_empty() { &part.number } else { &part.stamp };
        let mark = part.mark.as_ref().map(|mark| ("mark of the right part", mark::facts(mark).words()));
        [("right part", called.clone())].into_iter().chain(mark)
    });
    let gap = case.outcome.gap.map(|gap| ("gap", numerals.length(gap, 1)));
    let own = case.outcome.stand_out.zip(case.stand_out_shift).map(|(wrong, shift)| wrong - shift);
    let outs = [("stand-out of the right part", own), ("stand-out", case.outcome.stand_out)];
    let differ = case.stand_out_shift.is_some_and(|shift| shift.mm().abs() >= LEAST_SHIFT);
    let outs = outs.into_iter().filter(|_| differ);
    let outs = outs.filter_map(|(which, out)| Some((which, stands(out?, numerals))));
    right.chain(outs).chain(gap).collect()
}

fn stands(out: Length, numerals: Numerals) -> String {
    let size = numerals.length(Length::from_mm(out.mm().abs()), 1);
    if out.mm() < 0.0 { format!("sunk {size}") } else { format!("stands out {size}") }
}

/// How one would notice, in the few words that a card has room for.
fn noticed(comes: &Consequence, numerals: Numerals) -> String {
    if let Some(words) = words::unmeasured(comes) {
        return words.to_owned();
    }
    match comes.outcome.stand_out {
        _ if !comes.danger => String::new(),
        Some(stand_out) => forms::stand_out(stand_out, numerals),
        None => "stand-out wrong".to_owned(),
    }
}
