//! What a conductor is laid on, at true size: its section beside a scale, a contact wire's with its identification
//! grooves and running face, and worn.

use super::{Subject, add_cut_surfaces, cut_surfaces};
use crate::catalogue::Conductor;
use crate::section::Construction;
use crate::sketch::appearance::{Appearance, Pen};
use crate::sketch::draft::{Caption, Draft};
use crate::sketch::drawing::Drawing;
use crate::sketch::letters::Anchor;
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::{Affine, Rect, at};
use crate::sketch::scene::Purpose;
use crate::units::Length;

/// The section of a conductor at exactly 1:1, whatever the room, beside a scale of millimetres as long as it is across.
///
/// A contact wire stands on its running face.
#[must_use]
pub fn conductor_to_lay_on(conductor: &Conductor, options: &Options) -> Drawing {
    let subject = Subject::of(conductor);
    let options = Options { detail: Detail::Bare, ..*options };
    let mut draft = Draft::new(&options);
    add_cut_surfaces(&mut draft, &cut_surfaces(&subject), Affine::IDENTITY, 1.0);
    let section = draft.scene.bounds();
    let mut said = "Section at true size, beside a scale of millimetres.".to_owned();
    if let Construction::Grooved(grooved) = &conductor.construction {
        let radius = grooved.height.mm() / 2.0;
        draft.scene.line(
            Purpose::Edge,
            &[at(-0.5 * radius, section.y1 + 0.5), at(0.5 * radius, section.y1 + 0.5)],
            Appearance::line(Pen::Heavy),
        );
        said.push_str(" The running face is below, on the heavy line.");
        if subject.identification_grooves > 0 {
            said.push_str(&format!(" Identification grooves in the head: {}.", conductor.identity.grooves));
        }
    }
    scale_beside(&mut draft, section);
    let bounds = draft.bounds();
    draft.finish_within(
        bounds,
        Caption {
            scale: "1:1".to_owned(),
            title: format!("Section of {}", conductor.name),
            description: said,
        },
    )
}

/// A contact wire at 1:1 as it is at plan, replace and stop height, what is gone in dashes, each above its height.
/// Nothing of any other wire, or where no height is stated.
#[must_use]
pub fn worn_profiles(conductor: &Conductor, options: &Options) -> Option<Drawing> {
    let limits = conductor.wear.as_ref()?;
    let heights =
        [("plan", limits.plan_height), ("replace", limits.replace_height), ("stop", limits.stop_height)];
    let written = |name: &str, height: Length| {
        let field = format!("construction.grooved.wear.{name}_height_mm");
        conductor.origin.with_unit(&field, height.mm(), "mm", options.numerals)
    };
    let stated: Vec<(&str, Length, String)> = heights
        .into_iter()
        .filter_map(|(name, height)| height.map(|height| (name, height, written(name, height))))
        .collect();
    let Construction::Grooved(grooved) = &conductor.construction else { return None };
    let radius = grooved.height.mm() / 2.0;
    let mut draft = Draft::new(options);
    let size = draft.size();
    let mut left = 0.0;
    for (name, height, written) in &stated {
        let text = format!("{name} {written}");
        let wide = draft.lettering().width(&text).max(2.0 * radius);
        let middle = left + wide / 2.0;
        let subject = Subject { worn_to: Some(*height), ..Subject::of(conductor) };
        add_cut_surfaces(&mut draft, &cut_surfaces(&subject), Affine::translate((middle, 0.0)), 1.0);
        let foot = at(middle, radius + 0.9 * size);
        let lettered = draft.level(foot, Anchor::Middle, &text);
        draft.scene.text(lettered);
        draft.printed(name, written);
        left += wide + 1.2 * size;
    }
    let bounds = draft.bounds();
    let title = format!("{} worn, at true size", conductor.name);
    let caption =
        Caption { scale: "1:1".to_owned(), description: format!("{title}: lay the wire here."), title };
    (!stated.is_empty()).then(|| draft.finish_within(bounds, caption))
}

/// A scale left of a box, as high as it is, a line each millimetre, every fifth longer.
fn scale_beside(draft: &mut Draft, section: Rect) {
    let right = section.x0 - 0.9;
    let whole = section.height().round().clamp(1.0, 200.0) as u32;
    let mut ticks = vec![vec![at(right, section.y1), at(right, section.y1 - section.height())]];
    for nth in 0..=whole {
        let y = section.y1 - f64::from(nth);
        let long = if nth % 10 == 0 {
            2.0
        } else if nth % 5 == 0 {
            1.5
        } else {
            0.8
        };
        if y >= section.y0 - 1e-9 {
            ticks.push(vec![at(right, y), at(right - long, y)]);
        }
    }
    draft.scene.lines(Purpose::Edge, ticks, Appearance::line(Pen::Thin));
}
