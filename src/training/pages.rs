//! The pages for the training cell before their layouts are filled: quizzes with their keys, assessment sheets, and the
//! index of all that there is.

use super::index::Beside;
use super::page::Page;
use super::quiz::{Asked, Pool};
use super::{Input, assessments, index, quiz_pages};
use crate::diagnostics::{Finding, Findings};

/// Every page, and what the records settle too little for. The index leads to what lies beside the pages.
#[must_use]
pub fn pages(input: Input<'_>, beside: &Beside) -> (Vec<Page>, Findings) {
    let (mut pages, mut findings) = (Vec::new(), Findings::new());
    let pool = Pool::of(input);
    let wanted = input.training.questions as usize;
    for group in &input.training.groups {
        let asked: Vec<Asked> = pool.quiz(&input.settings().edition, &group.id, wanted);
        if asked.len() < wanted {
            findings.push(short(input, &group.id, asked.len(), wanted));
        }
        pages.extend(quiz_pages::pages(input, group, &asked));
    }
    let assessed = assessments::pages(input);
    let index = index::page(input, beside, &assessed);
    pages.extend(assessed.into_iter().map(|(_, page)| page));
    pages.push(index);
    for page in &mut pages {
        framed(input, page);
    }
    (pages, findings)
}

fn short(input: Input<'_>, group: &str, found: usize, wanted: usize) -> Finding {
    let origin = &input.settings().origin;
    let said = format!("the quiz of group {group} has {found} questions: the records settle no more");
    Finding::warning("quiz-short", origin.of("training.questions"), said)
        .field("training.questions")
        .found(found.to_string())
        .expected(wanted.to_string())
        .help("ask for fewer, or state what questions are made of: marks, stamps, windows, torques, proofs")
}

/// What every page says.
fn framed(input: Input<'_>, page: &mut Page) {
    let settings = input.settings();
    let date = settings.date.map(|date| format!(" · {date}")).unwrap_or_default();
    page.values["title"] = settings.title.as_str().into();
    page.values["owner"] = settings.owner.as_str().into();
    page.values["language"] = settings.language.as_str().into();
    page.values["caution"] = settings.caution.as_str().into();
    let draft = if input.has_drafts() { "Draft, not issued · " } else { "" };
    page.values["state"] = format!("{draft}edition {}{date}", settings.edition).into();
    page.shows.extend([
        ("the caution", settings.caution.clone()),
        ("the edition and its date", format!("edition {}{date}", settings.edition)),
        ("that it is a draft", draft.trim_end_matches(" · ").to_owned()),
        ("where copies are checked", "check the register".to_owned()),
    ]);
    for card in page.values["cards"].as_array().into_iter().flatten() {
        let text = |value: &serde_json::Value| value.as_str().unwrap_or_default().to_owned();
        page.shows.push(("the cards that it goes by", text(&card["number"])));
        let standing = &card["standing"];
        page.shows.push(("issue and check code of its cards", text(&standing["standing"])));
        page.shows.push(("issue and check code of its cards", text(&standing["check_code"])));
    }
}
