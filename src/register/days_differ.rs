//! Cards that change by notices of different days.

use super::{CardChange, Comparison};
use crate::catalogue::Catalogue;
use crate::diagnostics::{Finding, Findings};
use jiff::civil::Date;

/// What is told of cards that are issued on a day and change by notices of which some hold already and others don't: they
/// are issued as holding at once.
#[must_use]
pub fn days_differ(comparison: &Comparison, catalogue: &Catalogue, issued: Date) -> Findings {
    let mut findings = Findings::new();
    findings.extend(comparison.print_again.iter().filter_map(|card| of_card(card, catalogue, issued)));
    findings
}

fn of_card(card: &CardChange, catalogue: &Catalogue, issued: Date) -> Option<Finding> {
    let fitting = catalogue.fittings.get(&card.number)?;
    let numbers = card.notices();
    let notices = numbers.iter().filter_map(|number| catalogue.notices.get(number));
    let (later, now): (Vec<_>, Vec<_>) =
        notices.partition(|notice| notice.effective.is_some_and(|day| day > issued));
    let (later, now) = (later.first()?, now.first()?);
    let day = later.effective?;
    let message = format!("its notice {} holds already, and {} only from {day} on", now.number, later.number);
    Some(
        Finding::warning("notices-of-different-days", fitting.origin.of("notices"), message)
            .record(&card.number)
            .field("notices")
            .help("the card is issued as holding at once; issue an edition for what holds already, and cite the later \
                   notice in one nearer its day"),
    )
}
