//! Torques and loads in texts that name no values: lines before work, cautions, and what is tightened.

use super::Context;
use super::clauses_of_text::sentence;
use super::contradicting_figures::{has_load, has_torque};
use super::figures_of_gear::{MassOf, is_of_gear, is_of_wrench, mass_of};
use super::figures_of_text::{Figures, figures};
use super::inspected::built;
use super::plain_texts::{PlainText, Whose, plain_texts};
use super::units_of_text::Unit;
use super::words_of_text::words;
use crate::catalogue::{Conductor, Fitting};
use crate::diagnostics::{Finding, Severity};

/// What these texts say of torques and loads that the cards which print them do not.
pub(super) fn in_plain_texts(context: Context<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for plain in plain_texts(context.catalogue) {
        found.extend(figures(plain.text).iter().filter_map(|stated| finding(context, &plain, stated)));
    }
    found
}

fn finding(context: Context<'_>, plain: &PlainText<'_>, stated: &Figures) -> Option<Finding> {
    let words = words(plain.text);
    let (is_known, is_of_tool, message) = match stated.unit {
        Unit::Torque => (
            is_known(context, plain.whose, |fitting| has_torque(fitting, stated)),
            is_of_wrench(&words, stated),
            "cards that print this have no such torque",
        ),
        Unit::Load => (
            is_known(context, plain.whose, |fitting| has_load(fitting, stated))
                || is_breaking(plain.whose, stated),
            is_of_gear(&words, stated),
            "cards that print this have no such load",
        ),
        Unit::Mass => {
            let is_load = mass_of(&words, stated, &sentence(plain.text, stated.at)) == MassOf::Line;
            (!is_load, false, "this is a mass: loads are stated in kN")
        }
        Unit::Other(_) => return None,
    };
    let severity = if is_of_tool { Severity::Note } else { Severity::Error };
    let help = "leave it out, and state it in the records of the fittings that it is of";
    let finding =
        || plain.finding(severity, "text-contradicts-record", message).found(&*stated.written).help(help);
    (!is_known).then(finding)
}

/// Whether the fittings whose cards print a text have what it states: all of them, or one of a conductor's.
fn is_known(context: Context<'_>, whose: Whose<'_>, has: impl Fn(&Fitting) -> bool) -> bool {
    match whose {
        Whose::All => built(context).all(|fitting| has(fitting)),
        Whose::Conductor(conductor) => {
            let holds = |fitting: &Fitting| fitting.conductors.iter().any(|held| held.id == conductor.id);
            built(context).any(|fitting| holds(fitting) && has(fitting))
        }
        Whose::Fitting(fitting) => has(fitting),
    }
}

/// Whether a load is that which a conductor breaks at.
fn is_breaking(whose: Whose<'_>, stated: &Figures) -> bool {
    let Whose::Conductor(conductor) = whose else { return false };
    let loads = |conductor: &Conductor| [conductor.stated.breaking_load, conductor.section.breaking_load];
    let is_one =
        |value: &f64| loads(conductor).into_iter().flatten().any(|load| (load.kn() - value).abs() < 1e-9);
    !stated.values.is_empty() && stated.values.iter().all(is_one)
}
