//! What a card's faces say against what its check code covers: nothing is lost in any size, and nothing is printed
//! that could change without changing the code.

use super::made::{self, Made, sizes};
use super::said::Said;
use fittingcards::cards::Card;
use fittingcards::catalogue::{Settings, Status};
use fittingcards::facts::{CardFacts, Content};

/// Catalogues whose cards print in every size; those with too much for a card of some size print where they fit.
pub const CATALOGUES: [&str; 6] = [
    "content",
    "tests/cases/gaps/in",
    "tests/cases/long-names/in",
    "tests/cases/plain/in",
    "tests/cases/statuses/in",
    "tests/cases/ten-parts/in",
];

#[test]
fn nothing_that_a_card_must_print_is_lost_in_any_size() {
    let mut all = Vec::new();
    of_every_size(|catalogue, size, made, card| {
        let lost = lost(made.facts_of(card), card, size.starts_with("ID-1"));
        all.extend(lost.into_iter().map(|text| format!("{catalogue} {size} {}: {text}", card.number)));
    });
    assert!(all.is_empty(), "{} texts are lost:\n{}", all.len(), all.join("\n"));
}

/// What a card should print and does not; `small` is the size that carries less.
pub fn lost(facts: &CardFacts, card: &Card, small: bool) -> Vec<String> {
    let said = [Said::on(&[&card.front]), Said::on(&[&card.back]), Said::on(&[&card.front, &card.back])];
    let needed = needed(facts, small).into_iter();
    let lost = needed.filter(|needed| !said[needed.on as usize].has(&needed.text));
    lost.map(|needed| format!("{} “{}”", needed.what, needed.text)).collect()
}

#[test]
fn nothing_is_printed_that_the_check_code_does_not_cover() {
    let mut bare = Vec::new();
    of_every_size(|catalogue, size, made, card| {
        let (settings, facts) = (&made.settings, made.facts_of(card));
        for (face, mut said) in [&card.front, &card.back]
            .into_iter()
            .flat_map(|face| [(face, Said::on(&[face])), (face, Said::in_drawings_of(face))])
        {
            said.strike_scales();
            fixed(settings).iter().for_each(|text| said.strike(text));
            covered(facts).iter().for_each(|text| said.strike(text));
            figures(facts).iter().for_each(|text| said.strike(text));
            for left in said.left() {
                bare.push(format!("{catalogue} {size} {}, {}: “{left}”", card.number, face.side.word()));
            }
        }
    });
    assert!(bare.is_empty(), "{} texts are not among the printed ones:\n{}", bare.len(), bare.join("\n"));
}

/// Smaller cards may leave out rows in which nothing is due; A6 has room for all.
#[test]
fn the_whole_wear_table_stands_on_a6() {
    let (mut tables, mut lost) = (0, Vec::new());
    of_every_size(|catalogue, size, made, card| {
        let Content::Fitting(facts) = &made.facts_of(card).content else { return };
        for wear in
            facts.conductors.iter().filter_map(|held| held.wear.as_ref()).filter(|_| size.starts_with("A6"))
        {
            tables += 1;
            let said = Said::on(&[&card.back]);
            let texts = wear.rows.iter().flat_map(|row| [&row.height, &row.flat, &row.section, &row.worn]);
            let missing = texts.filter(|text| !said.has(text));
            lost.extend(missing.map(|text| format!("{catalogue} {size} {}: {text}", card.number)));
        }
    });
    assert!(lost.is_empty() && tables >= 4, "{tables} tables; {}", lost.join("\n"));
}

/// Looks at every card of every catalogue in every size.
pub fn of_every_size(mut look: impl FnMut(&str, &str, &Made, &Card)) {
    for catalogue in CATALOGUES {
        for size in sizes() {
            let made = made::once(catalogue, size);
            let whole = ["long-names", "ten-parts"].iter().all(|full| !catalogue.contains(full));
            assert!(!whole || made.cards.len() == made.facts.len(), "{catalogue} {size}: a card is missing");
            made.cards.iter().for_each(|card| look(catalogue, size, made, card));
        }
    }
}

/// Where a text must stand.
#[derive(Clone, Copy)]
enum On {
    Front,
    Back,
    Either,
}

struct Needed {
    what: &'static str,
    text: String,
    on: On,
}

/// What a card must print; `small` is the size that carries less. Every field is named, so that a new one is
/// decided upon here.
fn needed(facts: &CardFacts, small: bool) -> Vec<Needed> {
    let mut list = Vec::new();
    let mut add = |what, on, text: &str| {
        if !text.is_empty() {
            list.push(Needed { what, text: text.to_owned(), on });
        }
    };
    let CardFacts { number, title, status: _, status_words, before_work, content, caution } = facts;
    for on in [On::Front, On::Back] {
        add("number", on, number);
        add("status", on, status_words);
    }
    add("title", On::Front, title);
    for line in before_work {
        add("before work", On::Back, line);
    }
    add("caution", On::Back, caution);
    match content {
        Content::Fitting(_) => of_fitting(facts, small, &mut add),
        Content::Body(_) => of_body(facts, &mut add),
    }
    list
}

fn of_fitting(facts: &CardFacts, small: bool, add: &mut impl FnMut(&'static str, On, &str)) {
    // What must not be used needs no warning of wrong parts in it.
    let barred = small && facts.status != Status::Current;
    let Content::Fitting(facts) = &facts.content else { return };
    // In the booklet alone: how the family works, what a part is called, whether it is used again.
    let fittingcards::facts::FittingFacts {
        family: _,
        mark,
        conductors,
        gripping_name,
        gripping_number,
        gripping_stamp,
        stamp: _,
        parts,
        not_these,
        not_these_more,
        more_kits,
        body_card,
        steps,
        step_values: _,
        tightening,
        checks,
        if_wrong,
        witness,
        line_tension_max,
        reject_if,
        dimensions,
        // Words where there is room, paint and an arrow in any case.
        pointed_at: _,
        notices,
        supersedes,
        in_service,
    } = &**facts;
    if let Some(mark) = mark {
        add("mark", On::Front, &mark.text);
        add("mark", On::Back, &mark.text);
        add("mark's colour", On::Front, &mark.colour);
        add("notches", On::Front, &mark.notches_words);
    }
    for held in conductors {
        for text in [&held.name, &held.material, &held.build, &held.diameter, &held.section] {
            add("conductor", On::Front, text);
        }
        add("looks like", On::Front, &held.alike);
        if small {
            continue;
        }
        add("nominal size", On::Front, held.nominal.as_deref().unwrap_or_default());
        add("neck", On::Front, held.neck.as_deref().unwrap_or_default());
        add("conductor's caution", On::Front, &held.caution);
        if let Some(wear) = &held.wear {
            add("wear", On::Back, &wear.basis);
            for (name, text) in &wear.limits {
                add("wear", On::Back, name);
                add("wear", On::Back, text.trim_end_matches("\u{a0}mm"));
            }
            // Where there is no room for the whole table, it tells what is due at which height.
            for row in wear.rows.iter().filter(|row| !matches!(row.action.as_str(), "" | "new")) {
                for text in [&row.height, &row.flat, &row.worn] {
                    add("wear", On::Back, text);
                }
            }
        }
    }
    add("gripping part's stamp", On::Front, gripping_stamp);
    add("gripping part", On::Front, gripping_number);
    if !small && !gripping_stamp.is_empty() {
        add("gripping part", On::Front, gripping_name);
    }
    if small {
        for part in parts.iter().filter(|part| part.gripping) {
            add("gripping part", On::Front, &part.number);
            add("gripping part", On::Front, &part.stamp);
        }
    }
    for wrong in not_these.iter().filter(|_| !barred) {
        let called = if wrong.stamp.is_empty() { &wrong.number } else { &wrong.stamp };
        add("not this", On::Front, called);
        add("not this", On::Front, &wrong.happens);
        add("not this", On::Front, if wrong.hidden { &wrong.noticed } else { "" });
        if let Some(mark) = &wrong.mark {
            add("not this", On::Front, &mark.text);
        }
    }
    if !barred && *not_these_more > 0 {
        let where_else =
            body_card.as_deref().map_or("see the booklet".to_owned(), |card| format!("body card {card}"));
        let kits = if *more_kits && body_card.is_some() { ", booklet" } else { "" };
        add("more wrong parts", On::Front, &format!("and {not_these_more} more: {where_else}{kits}"));
    }
    for check in checks {
        for text in [&check.when, &check.what, &check.go, &check.no_go] {
            add("check", On::Back, text);
        }
    }
    for text in [&if_wrong.before_load, &if_wrong.under_load] {
        add("a check fails", On::Back, text);
    }
    add("witness", On::Back, witness);
    add("line tension", On::Back, line_tension_max.as_deref().unwrap_or_default());
    for notice in notices {
        add("notice", On::Back, &notice.number);
    }
    // Of several notices, the last settles all.
    let from = notices.iter().map(|notice| notice.in_force_from.as_str()).max();
    add("in force from", On::Back, from.unwrap_or_default());
    for number in supersedes {
        add("supersedes", On::Back, number);
    }
    add("in service", On::Back, in_service.as_deref().unwrap_or_default());
    if small {
        return;
    }
    for part in parts {
        for text in [&part.role, &part.number, &part.stamp] {
            add("part", On::Front, text);
        }
        if part.quantity > 1 {
            add("quantity", On::Front, &format!("{} × {}", part.quantity, part.role));
        }
    }
    for step in steps {
        add("step", On::Back, step);
    }
    for line in tightening {
        for text in [&line.item, &line.torque, &line.spanner, &line.grease, &line.passes] {
            add("tightening", On::Back, text);
        }
    }
    for text in reject_if {
        add("reject if", On::Back, text);
    }
    for (_, text) in dimensions {
        add("dimension", On::Either, text);
    }
}

fn of_body(facts: &CardFacts, add: &mut impl FnMut(&'static str, On, &str)) {
    let Content::Body(facts) = &facts.content else { return };
    let fittingcards::facts::BodyFacts { stamp, parts, fittings, rows: _ } = &**facts;
    add("stamp on the body", On::Front, stamp);
    for part in parts {
        add("part", On::Front, if part.stamp.is_empty() { &part.number } else { &part.stamp });
        if let Some(mark) = &part.mark {
            add("part's mark", On::Front, &mark.text);
        }
        add("part's status", On::Front, &part.status_words);
        for conductor in &part.conductors {
            add("part's conductor", On::Front, conductor);
        }
    }
    for column in fittings {
        let fittingcards::facts::BodyColumn { number, conductor, status_words } = column;
        add("fitting", On::Back, number);
        add("fitting's conductor", On::Back, conductor);
        add("fitting's status", On::Back, status_words);
    }
}

/// Texts that the check code sees: those that the card prints, and what their names tell.
fn covered(facts: &CardFacts) -> Vec<String> {
    let mut texts = Vec::new();
    for printed in facts.printed() {
        let name = [
            "tightening torque, ",
            "tightening, ",
            "worn to ",
            "wear: ",
            "not ",
            "check ",
            "drawing: ",
            "item ",
            "step ",
        ]
        .iter()
        .fold(printed.name.as_str(), |name, head| name.strip_prefix(head).unwrap_or(name));
        let named = name.split(": ").flat_map(|text| text.split("; ")).flat_map(|text| text.split(" in "));
        texts.extend(named.flat_map(|text| text.split(", ").chain([text])).map(str::to_owned));
        texts.extend(
            printed.text.split("; ").flat_map(|text| text.split([',', '+']).chain([text])).map(str::to_owned),
        );
        // Drawings say a conductor's material and build word by word.
        if printed.name.starts_with("conductor's") {
            texts.extend(
                printed.text.split(" core ").flat_map(|text| text.split(['+', ' '])).map(str::to_owned),
            );
            texts.extend(
                printed.text.split(", ").filter_map(|text| text.strip_prefix("rope ")).map(str::to_owned),
            );
            texts.extend(printed.text.split("core ").map(str::to_owned));
        }
        texts.push(printed.text);
    }
    texts
}

/// The figures of the columns of a body's table: all in a row above it, and each in the list before its fitting.
fn figures(facts: &CardFacts) -> Vec<String> {
    let Content::Body(body) = &facts.content else { return Vec::new() };
    let heads = (1..).zip(&body.fittings);
    let listed =
        heads.clone().flat_map(|(nth, column)| ["", ":"].map(|end| format!("{nth}{end} {}", column.number)));
    listed.chain([heads.map(|(nth, _)| nth.to_string()).collect()]).collect()
}

/// Words of the layouts and of the catalogue as a whole, and signs that the card explains.
fn fixed(settings: &Settings) -> Vec<String> {
    let date = settings.date.map(|date| date.to_string()).unwrap_or_default();
    let edition = format!("draft, not issued · edition {}", settings.edition);
    FIXED
        .iter()
        .map(|text| (*text).to_owned())
        .chain([date, edition])
        .chain((1..=20).map(|n| format!("and {n} more")))
        .collect()
}

/// Longer ones first, where one stands in another.
const FIXED: [&str; 59] = [
    "seated, sunk",
    "seated gap",
    "seated",
    "Large ends at true size: lay the part here.",
    "true size: lay the wire here",
    "Steps: see booklet",
    "seen by its mark only",
    "nobody sees it",
    "remaining height",
    "section left",
    "Reject if",
    "height",
    "left",
    "worn",
    "remaining",
    "printed copy: check the register",
    "One body, several gripping parts: read the stamp and the mark.",
    "Several parts go in: read stamp and mark.",
    "One gripping part: read the stamp and the mark.",
    "One part goes in: read stamp and mark.",
    "no fitting of this catalogue",
    "stamp on the body: ",
    "Card, stamp and part disagree: stop.",
    "Disagreement: stop.",
    "torque does not prove grip",
    "mark on the gripping part",
    "on the gripping part",
    "Wrong parts: body card",
    "Wrong parts: see the booklet",
    "Line tension max",
    "Height, flat in mm",
    "not to scale",
    "see the booklet",
    "body card",
    "Reject if:",
    "Not these",
    "Before load:",
    "in force from",
    "Under load:",
    "nominal",
    "replaces",
    "notice",
    "neck",
    "right part",
    "proven here too",
    "not seen once closed",
    "wrong, it shows",
    "will not go in",
    "withdrawn: do not use",
    "do not use",
    "not known: treat as wrong",
    "no stamp",
    "mm²;",
    "mm²",
    "flat",
    "mm",
    "%",
    "×",
    "replaces",
];
