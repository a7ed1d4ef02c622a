//! The page of fittings in the line that call for something, to be signed.

use super::{Page, Told, page};
use crate::installed::{Affected, FollowUp, UNDER_TENSION};
use crate::units::Numerals;
use serde_json::{Value, json};

/// So many places stand on the page; the table has all.
const PLACES_ON_THE_PAGE: usize = 500;

impl Told<'_> {
    /// The page; none where nobody has written down what is in the line.
    pub(super) fn follow_up_page(&self) -> Option<Page> {
        let found = self.follow_up.as_ref()?;
        let numerals = Numerals::new(self.prepared.catalogue.settings.decimal_mark);
        let places = found.places.iter().take(PLACES_ON_THE_PAGE).map(|place| line(place, numerals));
        let values = json!({
            "caution_first": UNDER_TENSION, "date": found.date.map(|date| date.to_string()).unwrap_or_default(),
            "installed": found.installed, "count": found.places.len(), "overdue": overdue(found),
            "places": places.collect::<Vec<_>>(), "more": found.places.len().saturating_sub(PLACES_ON_THE_PAGE),
        });
        Some(page("follow-up", "Fittings in the line to follow up", values))
    }
}

fn overdue(found: &FollowUp<'_>) -> usize {
    found.places.iter().filter(|place| place.is_overdue).count()
}

fn line(place: &Affected<'_>, numerals: Numerals) -> Value {
    let installed = place.installed;
    let in_doubt = place.reasons.iter().any(|reason| reason.kind.is_doubt());
    let otherwise = |words: &str| if in_doubt { words.to_owned() } else { String::new() };
    json!({
        "place": installed.place, "number": installed.fitting.number, "title": installed.fitting.name,
        "overdue": place.is_overdue, "due": place.due.map_or_else(|| otherwise("now"), |day| day.to_string()),
        "factor": place.working_factor.map_or_else(|| otherwise("not known"), |factor| numerals.fixed(factor, 1)),
        "slip": installed.slip, "reasons": place.reasons.iter().map(|reason| &reason.words).collect::<Vec<_>>(),
    })
}
