//! The right part and a wrong one side by side: the grip magnified, stand-outs, marks; or that nothing differs.

use super::contact::Contact;
use super::setup::Setup;
use crate::catalogue::{Conductor, Fitting, Limits, Part};
use crate::grip::{Outcome, Verdict};
use crate::sketch::appearance::{Appearance, Pen, Shade, Tone};
use crate::sketch::draft::{Caption, Draft};
use crate::sketch::drawing::Drawing;
use crate::sketch::hatch::Hatch;
use crate::sketch::letters::Anchor;
use crate::sketch::options::Options;
use crate::sketch::outline::{Outline, boxed};
use crate::sketch::plane::{Affine, Point, Rect, Vec2, at};
use crate::sketch::scale::Scale;
use crate::sketch::scene::Purpose;
use crate::units::Length;
use std::sync::Arc;

/// What a wrong part does, beside what the fitting's own does: the detail of the grip at 5:1 or more with the gap in
/// solid ink and its size, shut slits drawn shut, the right part's edge in dashes; how far each stands out; the marks of
/// both. Where neither gap nor stand-out differs so that it can be seen on site, it says so.
///
/// `limits` are those of the catalogue that the fitting is from.
#[must_use]
pub fn side_by_side(fitting: &Fitting, limits: &Limits, wrong: &WrongPart<'_>, options: &Options) -> Drawing {
    let &WrongPart { part, conductor, outcome, words, worn_to } = wrong;
    let right = Setup::on(conductor, worn_to, fitting, limits);
    let other = Setup { conductor, worn_to, ..Setup::with(fitting, part, outcome) };
    let own = fitting.items.iter().find(|item| item.part.role == part.role).map(|item| &item.part);
    let contacts = Contact::pair(&right, &other).filter(|(_, wrong)| wrong.gap.is_some());
    let outs = [&right, &other].map(|setup| setup.outcome.as_ref().and_then(|outcome| outcome.stand_out));
    let same = contacts.is_none() && looks_right(outcome, outs, limits.visible_stand_out);
    let same = same.then(|| SAME.to_owned());
    let said = on_wire(fitting, wrong, options).into_iter().chain(same).collect::<Vec<_>>().join(" ");
    let gap = outcome.gap.map(Length::mm);
    let compared = Compared { own, wrong: part, contacts, gap, outs: stand_outs(outs), words, said };
    let scale = compared.scale(options);
    let draft = compared.compose(options, scale);
    draft.finish(compared.caption(fitting, scale, options))
}

/// A part that is not the fitting's own, on a conductor of the fitting.
#[derive(Debug, Clone, Copy)]
pub struct WrongPart<'a> {
    /// The part.
    pub part: &'a Part,
    /// The conductor.
    pub conductor: &'a Conductor,
    /// What comes of it.
    pub outcome: &'a Outcome,
    /// What the fitting's own part comes to, then this one.
    pub words: [&'a str; 2],
    /// The height of a contact wire where that comes of it; `None` on new wire, and on what does not wear.
    pub worn_to: Option<Length>,
}

/// On which wire it is so, where that is not the only one or not new.
fn on_wire(fitting: &Fitting, wrong: &WrongPart<'_>, options: &Options) -> Option<String> {
    let several = fitting.conductors.len() > 1;
    let wire = if several { wrong.conductor.name.as_str() } else { "wire" };
    let worn = wrong.worn_to.map(|height| format!(" worn to {}", options.numerals.length(height, 1)));
    (several || worn.is_some()).then(|| format!("On {wire}{}.", worn.unwrap_or_default()))
}

/// Whether a wrong part closes on the conductor and stands out as far as the right one, as far as anybody sees on site.
fn looks_right(outcome: &Outcome, outs: [Option<Length>; 2], visible: Length) -> bool {
    let [own, other] = outs;
    let alike = own.zip(other).is_some_and(|(own, other)| (own - other).mm().abs() < visible.mm());
    alike && matches!(outcome.verdict, Verdict::Grips | Verdict::Marginal)
}

/// A smaller difference of stand-outs is not printed, in millimetres.
const LEAST_SHIFT: f64 = 0.1;

/// What is said where nothing differs.
const SAME: &str = "Nothing differs to see: read mark and stamp.";

/// Both stand-outs, where both are known and one can be told from the other.
fn stand_outs([own, other]: [Option<Length>; 2]) -> Option<[Length; 2]> {
    let (own, other) = own.zip(other)?;
    ((own - other).mm().abs() >= LEAST_SHIFT).then_some([own, other])
}

struct Compared<'a> {
    own: Option<&'a Arc<Part>>,
    wrong: &'a Part,
    contacts: Option<(Contact, Contact)>,
    /// What the wrong part leaves open, in millimetres, where that is worked out; else it is as drawn.
    gap: Option<f64>,
    outs: Option<[Length; 2]>,
    words: [&'a str; 2],
    /// On which wire, and that nothing differs to see, where it is so.
    said: String,
}

impl Compared<'_> {
    /// The largest round scale, 5:1 or more, at which the gap takes a third of the view's height.
    fn scale(&self, options: &Options) -> Scale {
        let high = view_height(options, self.rows(options));
        let gap =
            self.contacts.as_ref().and_then(|(_, wrong)| wrong.gap).map_or(1.0, |(top, foot, _)| foot - top);
        let reach = self.contacts.as_ref().map_or(1.0, |(_, wrong)| wrong.reach);
        Scale::below((high / (3.0 * gap)).min(high / reach).clamp(5.0, 20.0))
            .into_iter()
            .next()
            .unwrap_or(Scale(5.0))
    }

    /// Height of what stands below the views.
    fn rows(&self, options: &Options) -> f64 {
        let size = options.type_size.mm();
        (if self.outs.is_some() { 3.6 * size } else { 0.0 }) + 3.6 * size
    }

    fn compose<'o>(&self, options: &'o Options<'o>, scale: Scale) -> Draft<'o> {
        let mut draft = Draft::new(options);
        let (size, half) = (draft.size(), options.width.mm() / 2.0);
        let margin = draft.lettering().width("00.0 mm") + 0.6 * size;
        let parts = [self.own.map(|part| &**part), Some(self.wrong)];
        for (index, part) in parts.into_iter().enumerate() {
            let left = index as f64 * half + 0.3;
            let mut top = 0.3;
            if let Some((right, wrong)) = &self.contacts {
                let high = view_height(options, self.rows(options));
                let view = Rect::new(left, top, left + half - margin - 0.6, top + high);
                let shown = if index == 0 { right } else { wrong };
                let ghost = (index == 1).then_some(&right.edge);
                let gap = self.gap.filter(|_| index == 1);
                look_closely(&mut draft, shown, (ghost, gap), wrong.focus, view, scale);
                top += high + 0.6 * size;
            }
            if let Some(outs) = self.outs {
                stand_out(&mut draft, at(left, top), outs[index], part);
                top += 3.6 * size;
            }
            named(&mut draft, at(left, top), part, self.words[index]);
        }
        if !self.said.is_empty() {
            let said = draft.level(at(0.3, -0.8 * size), Anchor::Start, &self.said);
            draft.scene.text(said);
        }
        draft.scene.unsound |= self.contacts.as_ref().is_some_and(|(one, two)| one.unsound || two.unsound);
        draft
    }

    fn caption(&self, fitting: &Fitting, scale: Scale, options: &Options) -> Caption {
        let gap = self.contacts.as_ref().and_then(|(_, wrong)| wrong.gap);
        let gap = gap.map_or_else(String::new, |(top, foot, said)| {
            let size = Length::from_mm(self.gap.unwrap_or(foot - top));
            format!(" {said} {}.", options.numerals.length(size, 1))
        });
        let outs = self.outs.map_or_else(String::new, |[own, other]| {
            let said = |out: Length| out_words(out, options);
            format!(" Right: {}; wrong: {}.", said(own), said(other))
        });
        let scale =
            if self.contacts.is_some() { scale.words(options.numerals) } else { "not to scale".to_owned() };
        Caption {
            scale,
            title: format!("{} and the wrong part {}", fitting.name, self.wrong.number),
            description: format!(
                "{}, {}: {}.{gap}{outs}{}{}",
                self.wrong.number,
                self.wrong.name,
                self.words[1],
                if self.said.is_empty() { "" } else { " " },
                self.said
            ),
        }
    }
}

/// What is left of the room for the views.
fn view_height(options: &Options, rows: f64) -> f64 {
    (options.height.mm() - rows - 1.2 * options.type_size.mm()).clamp(8.0, 34.0)
}

/// A view through a window: surfaces, the right part's edge in dashes, the gap with its size, as drawn where no other is
/// given.
fn look_closely(
    draft: &mut Draft,
    contact: &Contact,
    (ghost, size): (Option<&Vec<Point>>, Option<f64>),
    focus: Point,
    view: Rect,
    scale: Scale,
) {
    let place = Affine::translate(view.center().to_vec2())
        * Affine::scale(scale.0)
        * Affine::translate(-focus.to_vec2());
    let seen = |ring: &[Point]| boxed(&ring.iter().map(|&point| place * point).collect::<Vec<_>>(), view);
    for surface in &contact.surfaces {
        let ring = seen(&surface.ring);
        if ring.len() < 3 {
            continue;
        }
        let outline = Outline::new(ring);
        let lines = surface
            .hatch
            .map(|hatch| Hatch::of(hatch, 0.6 * draft.size()).lines(&outline))
            .unwrap_or_default();
        let lines = lines.into_iter().map(|line| vec![line.p0, line.p1]).collect();
        draft.area(Purpose::Wire, outline.clone(), Appearance::solid(surface.tone));
        draft.scene.lines(Purpose::Edge, lines, Appearance::line(Pen::Thin));
        let pen = if surface.grips { Pen::Heavy } else { Pen::Thin };
        draft.area(Purpose::Wire, outline, Appearance::line(pen));
    }
    if let Some(ghost) = ghost {
        let ring = seen(ghost);
        if ring.len() > 2 {
            draft.area(Purpose::Wire, Outline::new(ring.clone()), Appearance::line(Pen::Halo));
            draft.area(Purpose::Wire, Outline::new(ring), Appearance::line(Pen::Gone));
        }
    }
    draft.area(Purpose::Wire, Outline::rectangle(view), Appearance::line(Pen::Thick));
    if let Some((top, foot, name)) = contact.gap {
        let [top, foot] = [top, foot].map(|y| (place * at(focus.x, y)).y);
        let size = size.unwrap_or((foot - top) / scale.0);
        let text = draft.options.numerals.length(Length::from_mm(size), 1);
        size_of_gap(draft, (top, foot), view, name, &text);
    }
}

/// The size of a gap beside its view, arrows from outside on its edges.
fn size_of_gap(draft: &mut Draft, (top, foot): (f64, f64), view: Rect, name: &str, text: &str) {
    let size = draft.size();
    let x = view.center().x;
    let seen = |tip: &(f64, f64)| tip.0 > view.y0 + 0.5 * size && tip.0 < view.y1 - 0.5 * size;
    for (tip, way) in [(top, -1.0), (foot, 1.0)].into_iter().filter(seen) {
        let tail = at(x, (tip + way * 1.7 * size).clamp(view.y0, view.y1));
        draft.thin(Purpose::Dimension, &[at(x, tip), tail]);
        draft.arrowhead(at(x, tip), Vec2::new(0.0, way));
    }
    let place = at(view.x1 + 0.4 * size, f64::midpoint(top, foot));
    let above = at(place.x, place.y - 1.4 * size);
    let said = draft.level(above, Anchor::Start, name);
    draft.scene.text(said);
    if draft.text_at_first_clear(&[(place, Anchor::Start)], text).is_some() {
        draft.printed(name, text);
    }
}

/// More than this is not drawn, in millimetres: the words say how far.
const MOST_OUT: f64 = 6.5;

/// How far a part stands out of the body's face, or lies below it, at true size.
fn stand_out(draft: &mut Draft, corner: Point, out: Length, part: Option<&Part>) {
    let size = draft.size();
    let (long, high) = (12.0, 2.6 * size);
    let face = corner.x + long;
    let end = (face + out.mm()).clamp(corner.x + 1.0, face + MOST_OUT);
    let wall = 0.6 * size;
    for (top, foot) in [(0.0, wall), (high - wall, high)] {
        let outline = Outline::rectangle(Rect::new(corner.x, corner.y + top, face, corner.y + foot));
        let lines =
            Hatch::of(0, 0.5 * size).lines(&outline).into_iter().map(|line| vec![line.p0, line.p1]).collect();
        draft.scene.lines(Purpose::Edge, lines, Appearance::line(Pen::Thin));
        draft.area(Purpose::Wire, outline, Appearance::line(Pen::Thick));
    }
    let tone = part.map_or(Tone::Metal(crate::section::MaterialGroup::Steel, Shade::Deep), |part| {
        Tone::Grip(part.material.group)
    });
    let block = Rect::new(corner.x, corner.y + wall, end, corner.y + high - wall);
    draft.area(Purpose::Wire, Outline::rectangle(block), Appearance::area(tone, Pen::Heavy));
    let text = out_words(out, draft.options);
    let place = at(face.max(end) + 0.6 * size, corner.y + high / 2.0);
    if draft.text_at_first_clear(&[(place, Anchor::Start)], &text).is_some() {
        let size = draft.options.numerals.length(Length::from_mm(out.mm().abs()), 1);
        draft.printed("stand-out", &size);
    }
}

/// A stand-out in words.
fn out_words(out: Length, options: &Options) -> String {
    let size = options.numerals.length(Length::from_mm(out.mm().abs()), 1);
    if out.mm() < 0.0 { format!("sunk\u{a0}{size}") } else { format!("stands\u{a0}out\u{a0}{size}") }
}

/// The mark and stamp of a part, and what it is.
fn named(draft: &mut Draft, corner: Point, part: Option<&Part>, words: &str) {
    let size = draft.size();
    let mut x = corner.x;
    if let Some(mark) = part.and_then(|part| part.mark.as_ref()) {
        x = draft.chip(mark, corner).x1 + 0.6 * size;
    }
    let stamp = part.map_or("", |part| if part.stamp.is_empty() { &part.number } else { &part.stamp });
    let stamp = draft.level(at(x, corner.y + 0.75 * size), Anchor::Start, stamp);
    draft.scene.text(stamp);
    let words = draft.level(at(corner.x, corner.y + 2.3 * size), Anchor::Start, words);
    draft.scene.text(words);
}
