//! The key to drawings: tones of materials, kinds of lines, cut surfaces.

use super::appearance::{Appearance, Pen, Shade, Tone, word};
use super::draft::{Caption, Draft};
use super::drawing::Drawing;
use super::hatch::Hatch;
use super::options::Options;
use super::outline::Outline;
use super::plane::{Rect, at};
use super::scene::Purpose;
use crate::section::MaterialGroup;

/// Width and height of a sample, in type sizes.
const SAMPLE: (f64, f64) = (7.0, 3.0);

/// One small drawing for everything that drawings use, each titled with what it means: the tones of
/// every family of materials, kinds of lines, hatching of touching parts, slip marks.
#[must_use]
pub fn key(options: &Options) -> Vec<Drawing> {
    let groups = [
        MaterialGroup::Copper,
        MaterialGroup::Bronze,
        MaterialGroup::Aluminium,
        MaterialGroup::Steel,
        MaterialGroup::Stainless,
        MaterialGroup::Iron,
        MaterialGroup::Zinc,
        MaterialGroup::Polymer,
    ];
    let lines = [
        (Pen::Heavy, "gripping part", "Widest line: edges of the gripping part."),
        (Pen::Thick, "visible edge", "Wide line: edges that are seen or cut."),
        (Pen::Thin, "dimension, hatching", "Narrow line: dimensions, leaders, hatching, lay of wires."),
        (Pen::Centre, "axis", "Dash-dot line: axis."),
        (Pen::Gone, "gone", "Dashed line: metal that has worn away."),
    ];
    let mut samples: Vec<Drawing> = groups.into_iter().map(|group| material(options, group)).collect();
    samples.extend(lines.map(|(pen, title, says)| line(options, pen, title, says)));
    samples.push(hatching(options));
    samples.push(slip_mark(options));
    samples
}

fn sample(options: &Options) -> (f64, f64) {
    let size = options.type_size.mm();
    (SAMPLE.0 * size, SAMPLE.1 * size)
}

fn finished(draft: Draft, title: &str, description: &str) -> Drawing {
    draft.finish(Caption {
        scale: String::new(),
        title: title.to_owned(),
        description: description.to_owned(),
    })
}

/// The depths of a material's tone, side by side, with that of a gripping part.
fn material(options: &Options, group: MaterialGroup) -> Drawing {
    let mut draft = Draft::new(options);
    let (wide, high) = sample(options);
    let metals =
        [Shade::Pale, Shade::Plain, Shade::Deep].map(|shade| (Tone::Metal(group, shade), Pen::Thick));
    for (index, (tone, pen)) in metals.into_iter().chain([(Tone::Grip(group), Pen::Heavy)]).enumerate() {
        let left = index as f64 * wide / 4.0;
        let outline = Outline::rectangle(Rect::new(left, 0.0, left + wide / 4.0, high));
        draft.area(Purpose::View(0), outline, Appearance::area(tone, pen));
    }
    let description = format!(
        "Tones of {}: pale on parts, by turns on layers of wires, darkest on the gripping part. Bodies are white.",
        word(group)
    );
    finished(draft, word(group), &description)
}

fn line(options: &Options, pen: Pen, title: &str, description: &str) -> Drawing {
    let mut draft = Draft::new(options);
    let (wide, _) = sample(options);
    draft.scene.line(Purpose::Edge, &[at(0.0, 0.0), at(wide, 0.0)], Appearance::line(pen));
    finished(draft, title, description)
}

fn hatching(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    let (wide, high) = sample(options);
    for index in 0..3 {
        let left = index as f64 * wide / 3.0;
        let outline = Outline::rectangle(Rect::new(left, 0.0, left + wide / 3.0, high));
        let lines = Hatch::of(index, 0.5 * draft.size()).lines(&outline);
        let lines = lines.into_iter().map(|line| vec![line.p0, line.p1]).collect();
        draft.scene.lines(Purpose::Hatch(index), lines, Appearance::line(Pen::Thin));
        draft.area(Purpose::Cut(index), outline, Appearance::line(Pen::Thick));
    }
    finished(
        draft,
        "cut surface",
        "Hatching: cut surfaces; parts that touch differ in direction or distance.",
    )
}

fn slip_mark(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    let (wide, high) = sample(options);
    let rectangle = |from: f64, to: f64| Outline::rectangle(Rect::new(from, 0.0, to, high));
    let wire = Appearance::area(Tone::Metal(MaterialGroup::Copper, Shade::Deep), Pen::Thin);
    draft.area(Purpose::Wire, rectangle(0.0, wide), wire);
    draft.area(Purpose::Wire, rectangle(0.44 * wide, 0.56 * wide), Appearance::solid(Tone::Signal));
    finished(draft, "slip mark", "Slip mark: paint on the conductor where it goes into the fitting.")
}
