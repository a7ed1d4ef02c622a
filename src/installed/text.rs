//! A follow-up for people to read.

use super::{Affected, FollowUp};
use crate::units::Numerals;
use std::fmt::Write;

/// What is said before all else: whoever reads the list may stand at one of its places.
pub const UNDER_TENSION: &str = "Nothing here is opened under tension: take the load on a puller first.";

/// The follow-up in words: a head, then place by place.
#[must_use]
pub fn follow_up_text(found: &FollowUp<'_>, numerals: Numerals) -> String {
    let mut text = head(found);
    for place in &found.places {
        let installed = place.installed;
        let _ =
            writeln!(text, "\n{}, {} {}", installed.place, installed.fitting.number, installed.fitting.name);
        let _ = writeln!(text, "  {}", standing(place, numerals));
        for reason in &place.reasons {
            let _ = writeln!(text, "  - {}", reason.words);
        }
    }
    text
}

fn head(found: &FollowUp<'_>) -> String {
    let overdue = found.places.iter().filter(|place| place.is_overdue).count();
    let of = match found.installed {
        1 => "1 installed fitting".to_owned(),
        count => format!("{count} installed fittings"),
    };
    let about = found.notice.as_ref().map(|notice| format!(" by notice {notice}")).unwrap_or_default();
    let day = match found.date {
        Some(date) => format!("on {date}, {overdue} overdue"),
        None => "the catalogue has no date, so none is known to be overdue".to_owned(),
    };
    let caution = if found.places.is_empty() { String::new() } else { format!("{UNDER_TENSION}\n") };
    format!("{} of {of} to follow up{about}; {day}\n{caution}", found.places.len())
}

/// When it is due and how much it holds, with who built it.
fn standing(place: &Affected<'_>, numerals: Numerals) -> String {
    let installed = place.installed;
    let due = match (place.is_overdue, place.due) {
        (true, Some(due)) => Some(format!("OVERDUE since {due}")),
        (true, None) => Some("OVERDUE: at once".to_owned()),
        (false, due) => due.map(|due| format!("by {due}")),
    };
    let factor = place.working_factor.map(|factor| format!("working factor {}", numerals.fixed(factor, 1)));
    let built = installed.built.map(|day| format!("built {day}"));
    let by = (!installed.by.is_empty()).then(|| format!("by {}", installed.by));
    let built = [built, by].into_iter().flatten().collect::<Vec<_>>().join(" ");
    let built = Some(built).filter(|built| !built.is_empty());
    let slip = (!installed.slip.is_empty()).then(|| format!("slip {}", installed.slip));
    let known: Vec<String> = [due, factor, built, slip].into_iter().flatten().collect();
    if known.is_empty() { "no day, load or name is known".to_owned() } else { known.join("; ") }
}
