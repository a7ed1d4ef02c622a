#![doc = include_str!("../explain/codes/reused-against-record.md")]

use super::Context;
use super::clauses_of_text::{ClauseWord, clauses};
use super::inspected::{built, on_wording};
use super::load_words::is_negating;
use crate::catalogue::{Fitting, Reuse, Role, Wording};
use crate::diagnostics::{Finding, Findings, Severity};

/// Words that say that something is used once more.
const ONCE_MORE: [&str; 4] = ["same", "old", "used", "reuse"];
/// Words with which it is another one, or none.
const ANOTHER: [&str; 6] = ["new", "another", "scrap", "fresh", "different", "replace"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let names: Vec<&'static str> = never_again(fitting).collect();
        for wording in texts(fitting) {
            findings.extend(names.iter().find_map(|name| finding(fitting, wording, name)));
        }
    }
}

/// What texts call the parts of a fitting that hold its conductor and are never used again.
fn never_again(fitting: &Fitting) -> impl Iterator<Item = &'static str> {
    let parts = fitting.gripping().map(|item| &item.part);
    parts.filter(|part| part.reuse == Some(Reuse::Never)).filter_map(|part| match part.role {
        Role::Cone => Some("cone"),
        Role::Wedge => Some("wedge"),
        Role::Ferrule => Some("ferrule"),
        Role::Sleeve => Some("sleeve"),
        _ => None,
    })
}

/// What is done, and what a failed check calls for.
fn texts(fitting: &Fitting) -> impl Iterator<Item = &Wording> {
    let steps = fitting.steps.iter().map(|step| &step.wording);
    steps.chain(&fitting.if_wrong.before_load).chain(&fitting.if_wrong.under_load)
}

fn finding(fitting: &Fitting, wording: &Wording, name: &str) -> Option<Finding> {
    let word = used_again(&wording.text, name)?;
    let message = format!("this says to use the {name} again, and its record says never");
    let finding = on_wording(Severity::Error, "reused-against-record", fitting, wording, word.at, message);
    Some(
        finding
            .found(word.text)
            .expected(format!("a new {name}"))
            .help("say that it is scrap, or state `reuse: if-undamaged` where its maker allows that"),
    )
}

/// The word of a clause that says to use a part of this name once more.
fn used_again(text: &str, name: &str) -> Option<ClauseWord> {
    clauses(text).into_iter().find_map(|clause| {
        let has = |words: &[&str]| clause.iter().any(|word| words.contains(&word.text.as_str()));
        let is_denied = has(&ANOTHER) || clause.iter().any(|word| is_negating(&word.text));
        let named = has(&[name]) && !is_denied;
        named.then(|| clause.iter().find(|word| ONCE_MORE.contains(&word.text.as_str())).cloned())?
    })
}

#[cfg(test)]
mod tests {
    use super::used_again;

    #[test]
    fn a_part_that_is_put_in_once_more_is_found() {
        let word = |text: &str| used_again(text, "cone").map(|word| word.text);
        assert_eq!(word("Open it, put the same cone back in.").as_deref(), Some("same"));
        assert_eq!(word("Take the old cone if it looks good.").as_deref(), Some("old"));
        for sound in [
            "Take it apart; the cone is scrap.",
            "Never use a cone again.",
            "Begin again with a new cone.",
            "Take it apart, begin again.",
            "Scrap the used cone.",
        ] {
            assert_eq!(word(sound), None, "{sound}");
        }
    }
}
