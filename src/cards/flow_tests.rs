//! What the layout library is told again must come to the same as what it is told anew, and the loosest setting is found.

use super::flow::Flow;
use super::setting::{Clear, Setting};
use super::tests::{with_face, with_input};
use super::tightness::Tightness;
use super::too_full::SLACK;
use std::collections::BTreeSet;

/// All that a setting moves: a heading at the punched corner, columns, a table with a text that shrinks, a drawing.
const FACE: &str = "
<block id=\"title\" kind=\"heading\"><text class=\"title\">Dead-end for the earth wire of 8 mm</text></block>
<block id=\"all\" above=\"1\" edges=\"left right\"><text>Read the stamp, and look at the paint of the cone.</text></block>
<columns above=\"1.4\" between=\"3\" share=\"0.4 0.6\">
<stack><block id=\"left\"><text>A text that breaks into more lines the narrower its column is, one after the other.</text></block>
<table id=\"rows\" above=\"1\" columns=\"auto 1fr\" between=\"1\" gap=\"0.5\">
<tr><text>1</text><text class=\"stamps\" shrink=\"yes\">C 8.0 LONG, 9</text></tr>
<tr><text>2</text><text>Beside it one that breaks, and stands on its base line.</text></tr></table></stack>
<stack><block id=\"right\"><text>Another that breaks, but in fewer.</text></block></stack>
</columns>
<block id=\"drawing\" kind=\"drawing\" above=\"1\"><drawing of=\"assembly\" least=\"12\" wanted=\"20\" most=\"40\"/></block>
<block id=\"foot\" foot=\"yes\"><text class=\"foot\">Cards never authorise work.</text></block>";

/// Would miss: a face with another kind of element whose place hangs on the setting.
#[test]
fn a_setting_told_after_others_lays_out_the_same_as_told_alone() {
    let mut random = fastrand::Rng::with_seed(7);
    with_input(&with_face(FACE), |input, facts| {
        let [front, _] = super::jobs(input, &facts[0]);
        let fitted = front.fit(&front.fill().expect("filled")).expect("fitted");
        let (face, measurer) = (&fitted.described.description, front.measurer(&fitted.described));
        let children = face.children_in(0).len();
        for tightness in [Tightness::STEPS[0], Tightness::STEPS[3], Tightness::TIGHTEST] {
            let mut by_chance = || Setting {
                tightness,
                form: 0,
                drawing: Some(f64::from(random.u8(12..40))),
                share: f64::from(random.u8(30..70)) / 100.0,
                clear: (0..children).map(|_| clear(random.u8(0..4))).collect(),
                height: random.bool().then_some(99.0),
            };
            let mut flow = Flow::new(face, &by_chance(), &measurer);
            let mut heights = Vec::new();
            for _ in 0..100 {
                let setting = by_chance();
                let (again, height) = flow.again(&setting);
                let (alone, height_alone) = Flow::new(face, &setting, &measurer).laid();
                assert_eq!(again.len(), alone.len());
                for (one, other) in again.iter().zip(&alone) {
                    assert_eq!((one.rect, one.edges), (other.rect, other.edges), "{setting:?}");
                }
                assert!((height - height_alone).abs() < f64::EPSILON, "{setting:?}");
                heights.push(height.to_bits());
            }
            heights.sort_unstable();
            heights.dedup();
            assert!(heights.len() > 20, "the settings differ in height: {}", heights.len());
        }
    });
}

/// The second way tries every step from the loosest on. Would miss: a face with a drawing, or with two columns.
#[test]
fn a_face_is_set_in_the_loosest_step_that_has_room() {
    let mut seen = BTreeSet::new();
    for paragraphs in 1..20 {
        let block = |number: usize| {
            let text = "Read the stamp, and look at the paint of the cone before it goes in.";
            format!("<block id=\"b{number}\" above=\"1.4\"><text>{text}</text></block>\n")
        };
        let face = (0..paragraphs).map(block).collect::<String>();
        with_input(&with_face(&format!("<space height=\"12\"/>\n{face}")), |input, facts| {
            let [front, _] = super::jobs(input, &facts[0]);
            let Ok(fitted) = front.fit(&front.fill().expect("filled")) else { return };
            let (face, measurer) = (&fitted.described.description, front.measurer(&fitted.described));
            let has_room = |step: &usize| {
                let setting = Setting { tightness: Tightness::STEPS[*step], ..fitted.fitted.setting.clone() };
                Flow::new(face, &setting, &measurer).laid().1 <= measurer.inside.1 + SLACK
            };
            let loosest = (0..Tightness::STEPS.len()).find(has_room).expect("a step with room");
            assert_eq!(fitted.fitted.setting.tightness, Tightness::STEPS[loosest], "{paragraphs} paragraphs");
            seen.insert(loosest);
        });
    }
    assert!(seen.len() > 4, "steps that were the loosest: {seen:?}");
}

fn clear(chance: u8) -> Clear {
    match chance {
        0 | 1 => Clear::Already,
        2 => Clear::Beside,
        lower => Clear::Below(f64::from(lower)),
    }
}
