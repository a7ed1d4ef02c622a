//! What lies in a body: which part is right, what a wrong one comes to, and by what it is found once the body is closed.

use super::refuted::{does_not_come_to, is_not_found_by};
use crate::catalogue::{Part, Status};
use crate::facts::{mark_facts, words};
use crate::grip::Verdict;
use crate::mixups::words::{happens, noticed};
use crate::mixups::{BodyMixups, Case, SeenBy, Summary, alike_in_place};
use crate::notes::address;
use crate::training::Input;
use crate::training::question::{About, Answer, Kind, Picture, Question};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Which of a body's parts is right on a conductor, and proven. Wrong are those that are neither there: hidden ones come
/// first. A part whose verdict is not known is offered to nobody.
pub(in crate::training) fn which_is_right(input: Input<'_>) -> Vec<Question> {
    let mut questions = Vec::new();
    for body in &input.cards.mixups.bodies {
        let known = Held::of(body);
        for right in body.cases.iter().filter(|case| is_right(case)) {
            let mut wrong: Vec<&Case> = body
                .cases
                .iter()
                .filter(|case| {
                    case.fitting.number == right.fitting.number && case.conductor.id == right.conductor.id
                })
                .filter(|case| alike_in_place(&case.part, &right.part) && known.is_surely_wrong(case))
                .collect();
            wrong.sort_by_key(|case| case.weight());
            let role = words::role(right.part.role).to_lowercase();
            let asks = format!(
                "{} {} is to hold {}. Which {role} is right for it, and proven?",
                body.body.name,
                called(&body.body),
                held(input, right)
            );
            questions.push(Question {
                kind: Kind::Which,
                about: about(right, ""),
                asks,
                picture: Some(Picture::Conductor(Arc::clone(&right.conductor))),
                right: part(
                    right,
                    "The fitting's own part, proven on this conductor in this body.".to_owned(),
                ),
                wrong: wrong.into_iter().map(|case| part(case, happens(case, input.numerals()))).collect(),
                card: right.fitting.number.clone(),
                page: address::fitting(&right.fitting.number).file(),
            });
        }
    }
    questions
}

fn is_right(case: &Case) -> bool {
    case.fitting.status == Status::Current && case.right && case.proven && case.summary == Summary::Right
}

/// Parts by the conductors that they are right for or proven on, in any fitting of a body.
struct Held<'a>(BTreeSet<(&'a str, &'a str)>);

impl<'a> Held<'a> {
    fn of(body: &'a BodyMixups) -> Self {
        let holding = body.cases.iter().filter(|case| case.right || case.proven);
        Self(holding.map(|case| (case.part.number.as_str(), case.conductor.id.as_str())).collect())
    }

    /// Whether a part is neither right nor proven on a conductor, and its verdict is known, however worn that is.
    fn is_surely_wrong(&self, case: &Case) -> bool {
        let place = (case.part.number.as_str(), case.conductor.id.as_str());
        !self.0.contains(&place) && case.outcome.verdict != Verdict::Unknown && case.worn.is_none()
    }
}

/// A part as an answer: its stamp, and its mark where it has one.
fn part(case: &Case, why: String) -> Answer {
    let mark = case.mark.as_ref().map(mark_facts);
    Answer { text: case.part.stamp.clone(), mark, value: case.part.number.clone(), why }
}

fn called(part: &Part) -> &str {
    if part.stamp.is_empty() { &part.number } else { &part.stamp }
}

/// A conductor in words that somebody can check on it.
fn held(input: Input<'_>, case: &Case) -> String {
    let facts = crate::facts::conductor(&case.conductor, input.numerals());
    format!("{} ({}, {}, {})", facts.name, facts.material, facts.build, facts.diameter)
}

fn about(case: &Case, other: &str) -> About {
    About {
        fitting: case.fitting.number.clone(),
        conductor: case.conductor.id.clone(),
        other: other.to_owned(),
        readings: Vec::new(),
    }
}

/// The wrong parts that a question can be asked of: those that a fitting in use could get, whose outcome is certain.
fn wrong_parts<'a>(input: Input<'a>) -> Vec<(&'a BodyMixups, &'a Case)> {
    let of_body = |body: &'a BodyMixups| {
        let known = Held::of(body);
        let is_asked = move |case: &&Case| {
            let is_built = case.fitting.status == Status::Current;
            is_built && known.is_surely_wrong(case) && !case.part.stamp.is_empty()
        };
        body.cases.iter().filter(is_asked).map(move |case| (body, case)).collect::<Vec<_>>()
    };
    input.cards.mixups.bodies.iter().flat_map(of_body).collect()
}

/// What a wrong part comes to: the words of its summary, against those of others that can't hold beside it.
pub(in crate::training) fn what_comes_of_it(input: Input<'_>) -> Vec<Question> {
    let ask = |(body, case): (&BodyMixups, &Case)| {
        let others = excluded_by(case.summary)?;
        let role = words::role(case.part.role).to_lowercase();
        let asks = format!(
            "{} {}, for {}: by mistake the {role} stamped {} is put in, all else is right. What comes of it?",
            body.body.name,
            called(&body.body),
            case.conductor.name,
            case.part.stamp
        );
        let words = |summary: Summary, why: String| Answer::new(summary.heading(), summary.words(), why);
        Some(Question {
            kind: Kind::Comes,
            about: about(case, &case.part.number),
            asks,
            picture: Some(Picture::End(Arc::clone(&body.body), Arc::clone(&case.part))),
            right: words(case.summary, happens(case, input.numerals())),
            wrong: others.iter().map(|said| words(*said, does_not_come_to(body, case, *said))).collect(),
            card: case.fitting.number.clone(),
            page: address::fitting(&case.fitting.number).file(),
        })
    };
    wrong_parts(input).into_iter().filter_map(ask).collect()
}

/// Summaries that are surely not so where this one is; none where it settles nothing. "Fits, looks right, not proven" may
/// be said of what holds nothing as well, so the two are never offered against each other in that order; and what stands
/// proud over a set of wires may hold nothing over another that is forced through.
fn excluded_by(summary: Summary) -> Option<&'static [Summary]> {
    use Summary::{
        CoreNotHeld, ForcedProud, HoldsNothing, NotProven, OneEnd, Right, StandsProud, WillNotGoIn,
    };
    match summary {
        NotProven => Some(&[Right, WillNotGoIn, StandsProud]),
        HoldsNothing | CoreNotHeld | OneEnd => Some(&[Right, WillNotGoIn, StandsProud]),
        StandsProud | ForcedProud => Some(&[Right, WillNotGoIn]),
        WillNotGoIn => Some(&[Right, StandsProud, HoldsNothing, NotProven]),
        _ => None,
    }
}

/// By what a wrong part would be found once the body is closed.
pub(in crate::training) fn by_what_it_is_found(input: Input<'_>) -> Vec<Question> {
    let ask = |(body, case): (&BodyMixups, &Case)| {
        if !case.danger || !settles_what_is_measured(case) || excluded_by(case.summary).is_none() {
            return None;
        }
        let role = words::role(case.part.role).to_lowercase();
        let asks = format!(
            "{} {}, for {}: the {role} stamped {} was put in by mistake, and the body is closed. By what could somebody \
             still find it?",
            body.body.name,
            called(&body.body),
            case.conductor.name,
            case.part.stamp
        );
        let answer = |seen: SeenBy, why: String| Answer::new(found_by(seen), seen.word(), why);
        let others = [SeenBy::Measurement, SeenBy::Mark, SeenBy::Nothing];
        Some(Question {
            kind: Kind::Seen,
            about: about(case, &case.part.number),
            asks,
            picture: Some(Picture::End(Arc::clone(&body.body), Arc::clone(&case.part))),
            right: answer(case.seen_by, noticed(case, input.numerals())),
            wrong: others
                .into_iter()
                .filter(|seen| *seen != case.seen_by)
                .map(|seen| answer(seen, is_not_found_by(case, seen, measured(case), input.numerals())))
                .collect(),
            card: case.fitting.number.clone(),
            page: address::fitting(&case.fitting.number).file(),
        })
    };
    wrong_parts(input).into_iter().filter_map(ask).collect()
}

/// A stand-out that is no further inside its window than this may be read outside.
const CLEAR_OF_AN_END: f64 = 0.3;

/// Whether it is certain that measuring the stand-out finds a wrong part, or that it does not. What is outside its window by
/// less than counts as seen is found by a good rule, and by another not.
fn settles_what_is_measured(case: &Case) -> bool {
    let window = case.fitting.stand_out.as_ref().and_then(|stated| stated.seated);
    match (case.outcome.stand_out, window) {
        _ if case.seen_by == SeenBy::Measurement || !measured(case) => true,
        (Some(level), Some(window)) => {
            let inside = (level.mm() - window.least().mm()).min(window.most().mm() - level.mm());
            inside >= CLEAR_OF_AN_END
        }
        (Some(_), None) => true,
        (None, _) => false,
    }
}

/// Whether a fitting's record says that its stand-out is measured.
fn measured(case: &Case) -> bool {
    use crate::catalogue::StandOutFrom;
    case.fitting.stand_out.as_ref().is_none_or(|stated| stated.from != StandOutFrom::None)
}

fn found_by(seen: SeenBy) -> &'static str {
    match seen {
        SeenBy::Measurement => "By measuring the stand-out",
        SeenBy::Mark => "Only by its mark, which still shows",
        SeenBy::Nothing => "By nothing from outside: it must be read before closing",
    }
}
