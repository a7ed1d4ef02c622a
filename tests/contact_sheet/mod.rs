//! A contact sheet of every drawing of the demo, light, dark and in grey, for people to look at: it is
//! written to `target/contact_sheet.html` and not shipped. What needs no eye is looked over here.

mod drawings;

use crate::fixtures::{DEMO, root};
use drawings::Shown;
use fittingcards::catalogue::Family;
use fittingcards::sketch::dark_rules;
use fittingcards::source::{MemoryWorld, World};
use fittingcards::typeset::Fonts;
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::fmt::Write;
use std::sync::LazyLock;
use usvg::{Group, Node, Rect};

const LOOK: &str = "body { font: 12px sans-serif; margin: 0 } section { padding: 12px } \
    figure { display: inline-block; margin: 4px; padding: 2px; border: 1px solid #8884; vertical-align: top } \
    .grey { filter: grayscale(1) } .dark { background: #14171a; color: #f4f5f6 }";

/// Pixels that usvg makes of a millimetre.
const PIXELS: f64 = 96.0 / 25.4;

static FONTS: LazyLock<Fonts> = LazyLock::new(|| Fonts::new(&MemoryWorld::new().fonts(), &[]).0);

static SHEET: LazyLock<Vec<Shown>> = LazyLock::new(|| drawings::all(&DEMO.catalogue, &FONTS));

#[test]
fn every_drawing_of_the_demo_is_on_one_sheet() {
    let page = page(&SHEET);
    for look in ["light", "dark", "grey"] {
        let start = page.find(&format!("<section class=\"{look}\">")).expect(look);
        let section = page[start..].split("</section>").next().unwrap();
        assert_eq!(section.matches("<svg ").count(), SHEET.len(), "{look}");
    }
    std::fs::write(root().join("target/contact_sheet.html"), page).unwrap();
    let largest = SHEET.iter().map(|shown| shown.drawing.to_svg().len()).max().unwrap();
    assert!(largest < 60_000, "the largest drawing has {largest} bytes");
}

fn page(sheet: &[Shown]) -> String {
    let mut page =
        format!("<!doctype html><meta charset=\"utf-8\"><title>Contact sheet</title><style>{LOOK}");
    for rule in dark_rules().lines() {
        let _ = writeln!(page, ".dark {rule}");
    }
    page.push_str("</style>");
    for look in ["light", "dark", "grey"] {
        let _ = write!(page, "<section class=\"{look}\"><h1>{look}</h1>");
        for Shown { of, drawing, .. } in sheet {
            let (svg, title, scale) = (drawing.to_svg(), &drawing.title, &drawing.scale);
            let _ = write!(page, "<figure>{svg}<figcaption>{of} {title} {scale}</figcaption></figure>");
        }
        page.push_str("</section>");
    }
    page
}

#[test]
fn every_family_fitting_conductor_body_and_mix_up_of_the_demo_is_drawn() {
    let demo = &DEMO.catalogue;
    let on_sheet = |of: &str| SHEET.iter().filter(|shown| shown.of == of).count();
    let drawn = demo.fittings.values().filter(|fitting| on_sheet(&fitting.number) == 5);
    assert_eq!(drawn.clone().count(), demo.fittings.len(), "two assemblies and three stages of each fitting");
    assert_eq!(drawn.map(|fitting| fitting.family).collect::<BTreeSet<Family>>().len(), 6);
    for conductor in demo.conductors.values() {
        let worn = conductor.wear.as_ref().is_some_and(|wear| wear.stop_height.is_some());
        assert_eq!(on_sheet(&conductor.id), 3 + usize::from(worn), "{}", conductor.id);
    }
    for body in &DEMO.mixups.bodies {
        assert_eq!(on_sheet(&body.body.number), 1, "{}", body.body.number);
        for case in body.cases.iter().filter(|case| !case.right) {
            let of = format!("{} beside {}", case.part.number, case.fitting.number);
            assert!(on_sheet(&of) > 0, "{of}");
        }
    }
    assert!(on_sheet("") > 0, "the key of lines and hatchings");
}

#[test]
fn every_drawing_has_ink_within_its_edges_and_texts_clear_of_each_other() {
    let faults: Vec<String> = SHEET.par_iter().flat_map_iter(faults).collect();
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

fn faults(shown: &Shown) -> Vec<String> {
    let drawing = &shown.drawing;
    let mut faults = said(shown);
    let tree = usvg::Tree::from_str(&drawing.to_svg(), &FONTS.options()).expect("a drawing that can be read");
    let (ink, [width, height]) =
        (tree.root().abs_stroke_bounding_box(), [drawing.width.mm(), drawing.height.mm()]);
    let [left, top, right, bottom] =
        [ink.left(), ink.top(), ink.right(), ink.bottom()].map(|side| f64::from(side) / PIXELS);
    if right - left < width * 0.5 && bottom - top < height * 0.5 {
        faults.push(format!("its ink covers {:.1} × {:.1} mm", right - left, bottom - top));
    }
    if left < -0.01 || top < -0.01 || right > width + 0.01 || bottom > height + 0.01 {
        faults.push(format!("its ink leaves it: {left:.2} {top:.2} {right:.2} {bottom:.2}"));
    }
    let mut texts = Vec::new();
    gather(tree.root(), &mut texts);
    for (nth, (one, inked)) in texts.iter().enumerate() {
        let met = texts[..nth].iter().filter(|(_, other)| overlap(inked, other));
        faults.extend(met.map(|(other, _)| format!("“{one}” lies on “{other}”")));
    }
    let lacking = drawing.dimensions.iter().filter(|dimension| {
        let text = squeezed(&dimension.text);
        !squeezed(&texts.iter().map(|(text, _)| text.as_str()).collect::<String>()).contains(&text)
    });
    faults.extend(lacking.map(|dimension| format!("{} {} is not in it", dimension.name, dimension.text)));
    faults.into_iter().map(|fault| format!("{} {}: {fault}", shown.of, drawing.title)).collect()
}

/// What is wrong with a drawing's words and size.
fn said(shown: &Shown) -> Vec<String> {
    let Shown { of, drawing, room: [width, height] } = shown;
    let side = |text: &str| text.parse::<f64>().is_ok_and(|side| side >= 1.0);
    let scaled = drawing.scale.split_once(':').is_some_and(|(one, other)| side(one) && side(other));
    let faults = [
        (
            drawing.width.mm() > width + 1e-6 || drawing.height.mm() > height + 1e-6,
            "it is larger than its room",
        ),
        (drawing.title.is_empty() || drawing.description.is_empty(), "it has no title or no description"),
        (!of.is_empty() && !scaled && drawing.scale != "not to scale", "its scale is not said"),
    ];
    faults.into_iter().filter(|(wrong, _)| *wrong).map(|(_, fault)| fault.to_owned()).collect()
}

/// Every text of a drawing with the box round its ink.
fn gather(group: &Group, found: &mut Vec<(String, Rect)>) {
    for node in group.children() {
        match node {
            Node::Group(group) => gather(group, found),
            Node::Text(text) => {
                let words = text.chunks().iter().map(usvg::TextChunk::text).collect();
                found.push((words, text.flattened().abs_bounding_box()));
            }
            Node::Path(_) | Node::Image(_) => {}
        }
    }
}

/// Whether two boxes share more than a hair's breadth.
fn overlap(one: &Rect, other: &Rect) -> bool {
    let across = one.right().min(other.right()) - one.left().max(other.left());
    let down = one.bottom().min(other.bottom()) - one.top().max(other.top());
    across > 0.1 && down > 0.1
}

fn squeezed(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace() && *letter != '⌀').collect()
}
