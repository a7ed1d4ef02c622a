//! What a case comes to, as pages say it.

use super::input::Booklet;
use super::view::capital;
use crate::catalogue::Fitting;
use crate::facts::words;
use crate::mixups::words::{stands, why};
use crate::mixups::{Consequence, Summary};
use serde_json::{Value, json};

/// A case of a table that a fitting is built by: the same, unless that would read as an order to build what must not be
/// built.
pub(super) fn to_build(booklet: &Booklet<'_>, fitting: &Fitting, comes: &Consequence) -> Value {
    if !words::must_not_be_built(fitting, comes) {
        return cell(booklet, comes);
    }
    json!({
        "class": "", "heading": capital(words::to_build(fitting, comes)), "noticed": "", "text": "", "detail": "",
    })
}

/// A case in words: its summary, by what it is noticed, why, and the stand-out.
pub(super) fn cell(booklet: &Booklet<'_>, comes: &Consequence) -> Value {
    let noticed = words::unmeasured(comes).unwrap_or_default();
    // Of what stands proud, the words beside it say how far.
    let said = matches!(comes.summary, Summary::StandsProud | Summary::ForcedProud);
    let stand_out = comes
        .outcome
        .stand_out
        .filter(|_| !said)
        .map_or_else(String::new, |length| format!("{} seated", stands(length, booklet.numerals)));
    json!({
        "class": class(comes), "heading": comes.summary.heading(), "noticed": capital(noticed),
        "text": why(comes, booklet.numerals), "detail": stand_out,
    })
}

/// The class that a case is drawn by. Its words, which are those of the card, say all that the class shows.
fn class(comes: &Consequence) -> &'static str {
    match comes {
        Consequence { summary: Summary::Right, .. } => "right-part",
        Consequence { hidden: true, .. } => "hidden-danger",
        Consequence { danger: true, .. } => "seen-danger",
        _ => "",
    }
}
