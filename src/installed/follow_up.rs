//! Which fittings in the line call for something, the most urgent first.

use super::asked::{Affected, FollowUp, Reason, ReasonKind};
use super::card::Cards;
use super::known::Known;
use super::{Installed, due, readings};
use crate::catalogue::Catalogue;
use crate::mixups::Mixups;
use crate::register::Register;
use crate::units::Numerals;
use jiff::civil::Date;
use std::cmp::Ordering;

/// Which fittings in the line call for something. With a notice, only those whose fitting cites it, each of them.
#[must_use]
pub fn follow_up<'a>(
    catalogue: &Catalogue,
    mixups: &Mixups,
    installed: &'a [Installed],
    notice: Option<&str>,
) -> FollowUp<'a> {
    let register = Register::of(catalogue);
    let mut looking = Looking {
        numerals: Numerals::new(catalogue.settings.decimal_mark),
        known: Known::of(mixups),
        cards: Cards::of(&register),
        notice,
    };
    let date = catalogue.settings.date;
    let cites = |installed: &&Installed| {
        let mut cited = installed.fitting.notices.iter();
        notice.is_none_or(|number| cited.any(|notice| notice.number == number))
    };
    let mut places: Vec<Affected<'a>> =
        installed.iter().filter(cites).filter_map(|installed| looking.affected(installed, date)).collect();
    places.sort_by(order);
    FollowUp { date, notice: notice.map(str::to_owned), installed: installed.len(), places }
}

struct Looking<'k> {
    numerals: Numerals,
    known: Known<'k>,
    cards: Cards<'k>,
    notice: Option<&'k str>,
}

impl Looking<'_> {
    fn affected<'a>(&mut self, installed: &'a Installed, date: Option<Date>) -> Option<Affected<'a>> {
        let mut reasons: Vec<Reason> = due::by_status(&installed.fitting).into_iter().collect();
        reasons.extend(due::by_parts(installed));
        reasons.extend(readings::wrong_part(installed, &self.known));
        reasons.extend(readings::contradiction(installed, &mut self.known, self.numerals));
        reasons.extend(readings::no_go(installed, self.numerals));
        reasons.extend(due::by_notices(installed, self.notice));
        reasons.extend(self.cards.built_against(installed));
        reasons.extend(self.cards.reason(installed));
        reasons.sort_by_key(|reason| reason.kind);
        let due = reasons.iter().filter_map(|reason| reason.due).min();
        let stop = reasons.iter().any(|reason| reason.kind == ReasonKind::StopNow);
        let is_overdue = stop || due.zip(date).is_some_and(|(due, date)| due < date);
        // Of a wrong part, or one that stands wrong, nobody knows what it holds.
        let in_doubt = reasons.iter().any(|reason| reason.kind.is_doubt());
        let working_factor = installed.working_factor().filter(|_| !in_doubt);
        (!reasons.is_empty()).then_some(Affected { installed, reasons, due, is_overdue, working_factor })
    }
}

fn order(one: &Affected<'_>, other: &Affected<'_>) -> Ordering {
    let factor = |place: &Affected<'_>| place.working_factor.unwrap_or(f64::INFINITY);
    (rank(one), day(one))
        .cmp(&(rank(other), day(other)))
        .then_with(|| factor(one).total_cmp(&factor(other)))
        .then_with(|| one.installed.at.cmp(&other.installed.at))
}

fn rank(place: &Affected<'_>) -> u8 {
    let kind = place.reasons.first().map_or(ReasonKind::MayStay, |reason| reason.kind);
    if place.is_overdue { 0 } else { kind.rank() }
}

/// Where the day counts, what is to be stopped at once comes first, and what has no day last.
fn day(place: &Affected<'_>) -> (u8, Option<Date>) {
    let stop = place.reasons.iter().any(|reason| reason.kind == ReasonKind::StopNow);
    match (rank(place), place.due) {
        (0 | 2, _) if stop => (0, None),
        (0 | 2, Some(due)) => (1, Some(due)),
        (0 | 2, None) => (2, None),
        _ => (0, None),
    }
}
