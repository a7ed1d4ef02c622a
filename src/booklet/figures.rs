//! Drawings on pages: inline, so that the page's own colours and the reader's dark mode reach them.

use super::input::Booklet;
use crate::cards::wrong_part;
use crate::catalogue::{AssemblyStage, Conductor, Family, Fitting, Limits, Part, Status, WearLimits};
use crate::mixups::{BodyMixups, Case};
use crate::notes::address::slug;
use crate::sketch::{
    self, Drawing, Options, assembly, conductor_section, conductor_to_lay_on, end_views, line_up,
    side_by_side, stages as drawn_stages, worn_section,
};
use crate::units::Length;
use serde_json::{Value, json};
use std::fmt::Debug;
use std::sync::Arc;

/// Pixels a millimetre of drawing: its 7 pt type comes to the size of the page's small type.
const PIXELS_PER_MM: f64 = 5.2;
/// What a drawing says that is as large as what it shows.
const TRUE_SIZE: &str = "1:1";
/// Drawings wider than this scroll on a narrow screen, since their type would shrink to nothing.
const NARROW_PIXELS: f64 = 420.0;
/// The most room for an assembled fitting.
const ASSEMBLY_ROOM: (f64, f64) = (136.0, 90.0);
/// The most room for one of several drawings side by side.
const STAGE_ROOM: (f64, f64) = (78.0, 56.0);
/// The most room for all gripping parts of a body.
const LINE_UP_ROOM: (f64, f64) = (170.0, 60.0);
/// The most room for one part.
const PART_ROOM: (f64, f64) = (70.0, 50.0);
/// The most room for the ends of gripping parts, as wide as the text of an A4 page.
const ENDS_ROOM: (f64, f64) = (170.0, 120.0);
/// The most room for a right part and a wrong one beside each other.
const BESIDE_EACH_OTHER_ROOM: (f64, f64) = (130.0, 56.0);
/// The most room for one of the wrong parts of a teaching sheet: half the width of the text of an A4 page.
const TAUGHT_ROOM: (f64, f64) = (91.0, 44.0);
/// The most room for a conductor beside its fitting.
const BESIDE_ROOM: (f64, f64) = (60.0, 60.0);
/// The most room for a contact wire that wears beside its form.
const WEARING_ROOM: (f64, f64) = (40.0, 40.0);
/// The most room for the picture of a word.
const WORD_ROOM: (f64, f64) = (90.0, 60.0);
/// How much larger than true the grooves of a wire are shown.
const GROOVES_SCALE: f64 = 3.0;
/// The most room for the section of a conductor.
const SECTION_ROOM: (f64, f64) = (74.0, 74.0);

/// The fitting assembled, and its conductors.
pub(super) fn of_fitting(booklet: &Booklet<'_>, fitting: &Fitting) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        return vec![outline(booklet, &(hashes.fitting_as_drawn(fitting), limits(booklet)))];
    }
    let mut figures =
        vec![figure("assembly", &assembly(fitting, limits(booklet), &room(booklet, ASSEMBLY_ROOM)))];
    figures.extend(fitting.conductors.iter().map(|conductor| {
        let section = conductor_section(conductor, &room(booklet, BESIDE_ROOM));
        figure(&format!("section-{}", conductor.id), &section)
    }));
    figures
}

/// A dead-end apart, entered and seated, each with the printed steps that belong to it; other families go together in
/// one step. What must not be built has no stages, as it has no steps.
pub(super) fn stages(booklet: &Booklet<'_>, fitting: &Fitting, printed: &[String]) -> Vec<Value> {
    if fitting.status != Status::Current {
        return Vec::new();
    }
    // What they are drawn from stands in place of the assembled fitting, which is on the same page.
    if booklet.outlines.is_some() || !matches!(fitting.family, Family::ConeDeadEnd | Family::WedgeDeadEnd) {
        return Vec::new();
    }
    let drawings = drawn_stages(fitting, limits(booklet), &room(booklet, STAGE_ROOM));
    let of_stage = |(stage, drawing): (&AssemblyStage, &Drawing)| {
        let steps: Vec<Value> = staged_steps(fitting, printed)
            .filter(|(of, ..)| of == stage)
            .map(|(_, number, text)| json!({ "n": number, "text": text }))
            .collect();
        json!({ "figure": figure(&format!("stage-{}", stage.word()), drawing), "steps": steps })
    };
    AssemblyStage::ALL.iter().zip(&drawings).map(of_stage).collect()
}

/// The steps as they are printed, each with its number and its stage: its own, else that of the step before. Where no
/// step names one, none belongs to any.
fn staged_steps<'f>(
    fitting: &'f Fitting,
    printed: &'f [String],
) -> impl Iterator<Item = (AssemblyStage, usize, &'f String)> {
    let named = fitting.steps.iter().any(|step| step.stage.is_some());
    let mut reached = AssemblyStage::Apart;
    let steps = fitting.steps.iter().zip(printed).zip(1..).filter(move |_| named);
    steps.map(move |((step, text), number)| {
        reached = step.stage.unwrap_or(reached);
        (reached, number, text)
    })
}

/// What each of these wrong parts does in a fitting, beside what its own does.
pub(super) fn right_and_wrong(booklet: &Booklet<'_>, fitting: &Fitting, wrong: &[&Case]) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        let parts: Vec<_> = wrong
            .iter()
            .map(|case| {
                let worn_to = case.worn.map(|worn| worn.height);
                let conductor = &case.conductor.id;
                (hashes.part(&case.part), conductor, &case.outcome, case.words_side_by_side(), worn_to)
            })
            .collect();
        return vec![outline(booklet, &(hashes.fitting_as_drawn(fitting), limits(booklet), parts))];
    }
    let room = room(booklet, BESIDE_EACH_OTHER_ROOM);
    let drawn = wrong.iter().map(|case| {
        let drawing = side_by_side(fitting, limits(booklet), &wrong_part(case), &room);
        let of = (fitting.conductors.len() > 1).then(|| format!("-on-{}", case.conductor.id));
        let with = format!("{}-with-{}", fitting.number, case.part.number);
        figure(&format!("{with}{}", of.unwrap_or_default()), &drawing)
    });
    drawn.collect()
}

/// What a wrong part does where it is worst, large enough to be taught from.
pub(super) fn taught(booklet: &Booklet<'_>, case: &Case) -> Value {
    let fitting = &case.fitting;
    if let Some(hashes) = booklet.outlines {
        let records = (hashes.fitting_as_drawn(fitting), hashes.part(&case.part));
        let worn_to = case.worn.map(|worn| worn.height);
        let comes = (&case.conductor.id, &case.outcome, case.words_side_by_side(), worn_to);
        return outline(booklet, &(records, comes, limits(booklet)));
    }
    let drawing = side_by_side(fitting, limits(booklet), &wrong_part(case), &room(booklet, TAUGHT_ROOM));
    figure(&format!("taught-{}", case.part.number), &drawing)
}

/// The gripping parts of a body, side by side at one scale, and their large ends at true size where the records have
/// their sizes.
pub(super) fn gripping_parts(booklet: &Booklet<'_>, found: &BodyMixups) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        let parts: Vec<_> = found.parts.iter().map(|part| hashes.part(part)).collect();
        return vec![outline(booklet, &(hashes.part(&found.body), parts))];
    }
    let ends = end_views(&found.body, &found.parts, &room(booklet, ENDS_ROOM));
    let side = line_up(&found.body, &found.parts, &room(booklet, LINE_UP_ROOM));
    let ends =
        ends.map(
            |ends| if ends.scale == TRUE_SIZE { at_true_size("ends", &ends) } else { figure("ends", &ends) },
        );
    ends.into_iter().chain([figure("line-up", &side)]).collect()
}

/// A part that decides: cut open above the axis and seen below it, and its large end at true size with its mark.
pub(super) fn of_part(booklet: &Booklet<'_>, body: &Part, part: &Arc<Part>) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        return vec![outline(booklet, &(hashes.part(body), hashes.part(part)))];
    }
    let side = line_up(body, std::slice::from_ref(part), &room(booklet, PART_ROOM));
    let side = Drawing { title: format!("{} {}, cut and from outside", part.number, part.name), ..side };
    let end = sketch::end_view(body, part, &room(booklet, ENDS_ROOM)).map(|end| at_true_size("end", &end));
    [figure("side", &side)].into_iter().chain(end).collect()
}

/// Everything that drawings use, each with what it means.
pub(super) fn key(booklet: &Booklet<'_>) -> Vec<Value> {
    if booklet.outlines.is_some() {
        return vec![outline(booklet, &())];
    }
    let drawings = sketch::key(&room(booklet, SECTION_ROOM));
    drawings.iter().zip(1..).map(|(drawing, number)| figure(&format!("key-{number}"), drawing)).collect()
}

/// The picture of one of the trade's words, where there is one. Grooves are those of the first wire that has some.
pub(super) fn of_word(booklet: &Booklet<'_>, word: &str) -> Vec<Value> {
    let wires = booklet.input.catalogue.conductors.values();
    let grooved = wires.filter(|wire| !wire.identity.grooves.is_empty()).take(1);
    let grooved: Vec<_> = grooved.filter(|_| word == "identification grooves").collect();
    let drawn = match word {
        "collet" => sketch::how_a_cone_grips,
        "spreading cone" => sketch::how_a_spreading_cone_grips,
        "wedge" => sketch::how_a_wedge_grips,
        "stand-out" => sketch::where_stand_out_is_measured,
        _ => {
            let picture = |wire: &Arc<Conductor>| match booklet.outlines {
                Some(hashes) => outline(booklet, &hashes.conductor(wire)),
                None => grooves(booklet, wire),
            };
            return grooved.into_iter().map(picture).collect();
        }
    };
    if booklet.outlines.is_some() {
        return vec![outline(booklet, &word)];
    }
    vec![figure(&format!("word-{}", slug(word)), &drawn(&room(booklet, WORD_ROOM)))]
}

/// The section of a wire that is laid on a card, so large that the grooves in its head are seen.
fn grooves(booklet: &Booklet<'_>, wire: &Conductor) -> Value {
    let drawing = conductor_to_lay_on(wire, &room(booklet, SECTION_ROOM));
    let description =
        format!("Grooves in the head, beside a scale of millimetres: {}.", wire.identity.grooves);
    let larger = Drawing { scale: format!("{GROOVES_SCALE}:1"), description, ..drawing };
    sized(
        "word-grooves",
        &larger,
        [larger.width, larger.height].map(|length| format!("{:.2}mm", length.mm() * GROOVES_SCALE)),
        false,
    )
}

/// The section enlarged with its dimensions, and at 1:1.
pub(super) fn of_conductor(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        return vec![outline(booklet, &hashes.conductor(conductor))];
    }
    let enlarged = conductor_section(conductor, &room(booklet, SECTION_ROOM));
    let true_size = conductor_to_lay_on(conductor, &room(booklet, SECTION_ROOM));
    vec![figure("section", &enlarged), at_true_size("true-size", &true_size)]
}

/// A contact wire worn to its stop height, with what is gone.
pub(super) fn worn(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    if let Some(hashes) = booklet.outlines {
        return vec![outline(booklet, &hashes.conductor(conductor))];
    }
    let stop = |limits: &WearLimits| limits.stop_height.or(limits.replace_height).or(limits.plan_height);
    let height = conductor.wear.as_ref().and_then(stop);
    let drawing = height.map(|height| worn_section(conductor, height, &room(booklet, SECTION_ROOM)));
    drawing.iter().map(|drawing| figure(&format!("worn-{}", conductor.id), drawing)).collect()
}

/// A contact wire whose flat follows what is typed beside it.
pub(super) fn wearing(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    if let Some(hashes) = booklet.outlines {
        return outline(booklet, &hashes.conductor(conductor));
    }
    let drawn = sketch::wearing(conductor, &room(booklet, WEARING_ROOM));
    let mut wearing = figure(&format!("wearing-{}", conductor.id), &drawn.left);
    wearing["gone"] = drawn.gone.body.into();
    wearing["mm"] = sketch::number(drawn.scale).into();
    wearing["top"] = sketch::number(drawn.top).into();
    wearing
}

/// What stands for drawings that need not be made: all that they would be drawn from. Fonts are the run's.
fn outline(booklet: &Booklet<'_>, from: &dyn Debug) -> Value {
    json!({ "from": format!("{from:-?}"), "numerals": format!("{:?}", booklet.numerals) })
}

fn limits<'a>(booklet: &Booklet<'a>) -> &'a Limits {
    &booklet.input.catalogue.settings.limits
}

fn room<'a>(booklet: &Booklet<'a>, (width, height): (f64, f64)) -> Options<'a> {
    Options {
        width: Length::from_mm(width),
        height: Length::from_mm(height),
        numerals: booklet.numerals,
        ..booklet.input.drawing
    }
}

/// A drawing as layouts place it, under an id that is the page's only one of that name.
///
/// Here it is larger than its millimetres are, so one that was drawn at 1:1 does not say so.
pub(super) fn figure(id: &str, drawing: &Drawing) -> Value {
    let pixels = |length: Length| length.mm() * PIXELS_PER_MM;
    let wide = pixels(drawing.width) > NARROW_PIXELS;
    let size = [pixels(drawing.width), pixels(drawing.height)].map(|size| format!("{size:.0}"));
    let mut figure = sized(id, drawing, size, wide);
    if drawing.scale == TRUE_SIZE {
        figure["scale"] = "".into();
    }
    figure
}

/// A drawing whose millimetres are millimetres, as far as a screen knows them and where it is printed.
fn at_true_size(id: &str, drawing: &Drawing) -> Value {
    let in_mm = |length: Length| format!("{:.2}mm", length.mm());
    let mut figure = sized(id, drawing, [in_mm(drawing.width), in_mm(drawing.height)], false);
    figure["is_true_size"] = true.into();
    figure
}

fn sized(id: &str, drawing: &Drawing, [width, height]: [String; 2], wide: bool) -> Value {
    json!({
        "id": format!("figure-{id}"),
        "title": drawing.title,
        "description": drawing.description,
        "scale": drawing.scale,
        "is_true_size": false,
        // What is drawn without dimensions has words here, which hold in any size.
        "is_to_scale": drawing.scale.contains(':'),
        "body": drawing.body,
        "width": crate::sketch::number(drawing.width.mm()),
        "height": crate::sketch::number(drawing.height.mm()),
        "shown_width": width,
        "shown_height": height,
        "wide": wide,
    })
}
