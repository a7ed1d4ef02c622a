//! The facts of a fitting's card.

use super::ground::Ground;
use super::{
    CardFacts, CheckFacts, Content, FittingFacts, IfWrongFacts, NoticeFacts, PartLine, TighteningFacts,
    Values, body, completeness, conductor, failed, forms, mark, not_these, values, words,
};
use crate::catalogue::{
    Catalogue, Conductor, Fitting, Item, Notice, StandOutFrom, Status, Tightening, Wording,
};
use crate::mixups::Mixups;
use crate::units::Numerals;
use std::sync::Arc;

pub(super) fn facts(fitting: &Fitting, ground: &Ground<'_>) -> CardFacts {
    let settings = &ground.catalogue.settings;
    CardFacts {
        number: fitting.number.clone(),
        title: fitting.name.clone(),
        status: fitting.status,
        status_words: status_words(fitting, ground.catalogue, ground.mixups),
        before_work: settings.before_work.clone(),
        content: Content::Fitting(Box::new(content(fitting, ground))),
        caution: settings.caution.clone(),
    }
}

/// What a crew obeys; of a fitting that may be built, what its record lacks.
fn status_words(fitting: &Fitting, catalogue: &Catalogue, mixups: &Mixups) -> String {
    match fitting.status {
        Status::Current => completeness::in_words(&completeness::lacking(fitting, catalogue, mixups)),
        status => words::status(status, fitting.use_instead.as_deref()),
    }
}

fn content(fitting: &Fitting, ground: &Ground<'_>) -> FittingFacts {
    let numerals = ground.numerals;
    let gripping = fitting.gripping().next();
    let (wrong, more_wrong) = not_these::named(fitting, ground.mixups, numerals);
    let values = values(fitting, numerals);
    let if_wrong = failed::if_wrong(fitting, &values);
    // What must not be built carries no building instructions.
    let built = fitting.status == Status::Current;
    let built_by = |texts: Vec<&Wording>| if built { filled(texts, &values) } else { Vec::new() };
    FittingFacts {
        family: words::family(fitting.family).to_owned(),
        mark: fitting.mark.as_ref().map(mark::facts),
        conductors: once(&fitting.conductors)
            .map(|held| conductor::with_alike(held, &ground.alikes, numerals))
            .collect(),
        gripping_name: gripping.map(|item| item.part.name.clone()).unwrap_or_default(),
        gripping_number: gripping.map(|item| item.part.number.clone()).unwrap_or_default(),
        gripping_stamp: gripping.map(|item| item.part.stamp.clone()).unwrap_or_default(),
        stamp: fitting.stamp.clone(),
        parts: parts(fitting),
        not_these: wrong,
        not_these_more: more_wrong.len(),
        more_kits: more_wrong.iter().any(|wrong| !wrong.with.is_empty()),
        body_card: body::shared_body(fitting, ground),
        steps: built_by(fitting.steps.iter().map(|step| &step.wording).collect()),
        step_values: fitting.steps.iter().map(|step| values.named_in(&step.wording.text)).collect(),
        tightening: fitting
            .tightening
            .iter()
            .enumerate()
            .filter(|_| built)
            .map(|(nth, tightening)| tightened(fitting, nth, tightening, numerals))
            .collect(),
        checks: checks(fitting, &if_wrong, numerals),
        if_wrong,
        witness: built_by(fitting.witness.iter().collect()).concat(),
        line_tension_max: forms::line_tension_max(fitting, numerals),
        reject_if: filled(&fitting.reject_if, &values),
        dimensions: dimensions(fitting, numerals),
        pointed_at: pointed_at(fitting),
        notices: fitting.notices.iter().map(|notice| notice_facts(notice)).collect(),
        supersedes: ground.superseded_by(&fitting.number),
        in_service: fitting.in_service.map(words::in_service),
    }
}

fn parts(fitting: &Fitting) -> Vec<PartLine> {
    fitting.items.iter().zip(1..).map(|(item, number)| part_line(item, number)).collect()
}

fn part_line(item: &Item, number: u32) -> PartLine {
    let part = &item.part;
    PartLine {
        item: number,
        role: words::role(part.role).to_owned(),
        number: part.number.clone(),
        stamp: part.stamp.clone(),
        quantity: item.quantity,
        gripping: part.role.grips(),
        name: part.name.clone(),
        reuse: part.reuse.map(words::reuse).unwrap_or_default().to_owned(),
    }
}

/// Each conductor once: a joint may hold the same from both ends.
fn once(conductors: &[Arc<Conductor>]) -> impl Iterator<Item = &Arc<Conductor>> {
    let first =
        |(nth, held): &(usize, &Arc<Conductor>)| !conductors[..*nth].iter().any(|other| other.id == held.id);
    conductors.iter().enumerate().filter(first).map(|(_, held)| held)
}

fn tightened(fitting: &Fitting, nth: usize, tightening: &Tightening, numerals: Numerals) -> TighteningFacts {
    let item = [tightening.item.as_str(), tightening.thread.as_str()];
    TighteningFacts {
        item: item.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" "),
        torque: forms::torque(fitting, nth, numerals).unwrap_or_default(),
        spanner: forms::spanner(fitting, nth, numerals)
            .map(|width| format!("spanner {width}"))
            .unwrap_or_default(),
        grease: if tightening.grease.is_empty() {
            String::new()
        } else {
            format!("grease {}; nothing else", tightening.grease.join(", "))
        },
        passes: match tightening.passes {
            Some(passes) if passes > 1 => format!("{passes}\u{a0}passes"),
            _ => String::new(),
        },
    }
}

fn checks(fitting: &Fitting, if_wrong: &IfWrongFacts, numerals: Numerals) -> Vec<CheckFacts> {
    let mut checks = Vec::new();
    // Whoever reads this at a fitting under tension must see that it is not for them.
    let before_load = match if_wrong.before_load.as_str() {
        "" => String::new(),
        said => format!("before load: {said}"),
    };
    if let Some(stand_out) = fitting.stand_out.as_ref().filter(|stated| stated.from != StandOutFrom::None) {
        let mut measured = |when: &str, what: &str, go: Option<String>, no_go: &str| {
            checks.extend(go.map(|go| check(when, what, &go, no_go)));
        };
        let what = words::stand_out(stand_out.from);
        measured("Seated", what, forms::seated(fitting, numerals), &before_load);
        measured("Tensioned", what, forms::tensioned(fitting, numerals), &if_wrong.under_load);
        let most = forms::draw_in_max(fitting, numerals).map(|most| format!("0\u{a0}to\u{a0}{most}"));
        measured("Tensioned", "drawn in", most, &if_wrong.under_load);
    }
    for part in fitting.gripping().map(|item| &item.part) {
        let Some(go) = forms::pressed(part, numerals) else { continue };
        let when = forms::die(part).map_or("Pressed".to_owned(), |die| format!("Pressed, die\u{a0}{die}"));
        checks.push(check(&when, "across", &go, &before_load));
    }
    let stamp = fitting.gripping().map(|item| &item.part.stamp).find(|stamp| !stamp.is_empty());
    // Where a second person reads it, that is the check.
    if let Some(stamp) = stamp.filter(|_| fitting.witness.is_none() && fitting.status == Status::Current) {
        checks.insert(0, check("Before closing", "stamp", stamp, &before_load));
    }
    checks
}

fn check(when: &str, what: &str, go: &str, no_go: &str) -> CheckFacts {
    CheckFacts { when: when.to_owned(), what: what.to_owned(), go: go.to_owned(), no_go: no_go.to_owned() }
}

fn dimensions(fitting: &Fitting, numerals: Numerals) -> Vec<(String, String)> {
    let lengths =
        [("insertion", forms::insertion(fitting, numerals)), ("tail", forms::tail(fitting, numerals))];
    lengths.into_iter().filter_map(|(name, length)| Some((name.to_owned(), length?))).collect()
}

/// Paint on the conductor and a stamp are shown, not measured: a drawing without them is another drawing.
fn pointed_at(fitting: &Fitting) -> Vec<(&'static str, &'static str)> {
    let painted = (fitting.slip_mark == Some(true)).then_some(("slip mark", "on the conductor"));
    let gripping = fitting.gripping().next().map(|item| &item.part);
    let stamped = gripping.filter(|part| !part.stamp.is_empty()).and_then(|part| part.stamp_on);
    painted.into_iter().chain(stamped.map(|on| ("stamp", words::stamp_place(on)))).collect()
}

/// Texts with their values put in.
fn filled<'a>(wordings: impl IntoIterator<Item = &'a Wording>, values: &Values) -> Vec<String> {
    wordings.into_iter().map(|wording| values.filled(&wording.text)).collect()
}

fn notice_facts(notice: &Notice) -> NoticeFacts {
    NoticeFacts {
        number: notice.number.clone(),
        title: notice.title.clone(),
        in_force_from: notice.effective.map(|day| day.to_string()).unwrap_or_default(),
    }
}
