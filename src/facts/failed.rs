//! What a check that fails calls for: before the line is tensioned, and under tension.

use super::{IfWrongFacts, Values};
use crate::catalogue::{Family, Fitting, Role, Wording};

/// Under tension nothing is loosened, whatever the family.
const UNDER_LOAD: &str = "stop, do not loosen, keep clear; take the load on a puller first";

/// What the record says, else the words of the family. What is done under tension is said of a fitting that never should
/// have any, too: one that is found there must not be cut off or opened.
pub(super) fn if_wrong(fitting: &Fitting, values: &Values) -> IfWrongFacts {
    let stated = |wording: &Option<Wording>| wording.as_ref().map(|wording| values.filled(&wording.text));
    IfWrongFacts {
        before_load: stated(&fitting.if_wrong.before_load).unwrap_or_else(|| before_load(fitting).to_owned()),
        under_load: stated(&fitting.if_wrong.under_load).unwrap_or_else(|| UNDER_LOAD.to_owned()),
    }
}

/// What is scrap once a fitting was closed wrong.
fn before_load(fitting: &Fitting) -> &'static str {
    let holds = |role| fitting.gripping().any(|item| item.part.role == role);
    match fitting.family {
        Family::Sleeve => "cut it off, make it anew",
        _ if holds(Role::Sleeve) || holds(Role::Ferrule) => "cut it off, make it anew",
        _ if holds(Role::Cone) => "take it apart; the cone is scrap",
        _ if holds(Role::Wedge) => "take it apart; the wedge is scrap",
        _ if holds(Role::RopeGrip) => "take it apart; the grips are scrap",
        _ => "take it apart, begin again",
    }
}
