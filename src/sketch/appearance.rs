//! What drawings are drawn with: pens, tones and text colour, for light paper and for dark screens.

use super::number::number;
use crate::section::MaterialGroup;
use std::fmt::Write;

/// A line: how wide it is and what it means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Pen {
    /// Visible outlines and cut edges.
    Thick,
    /// Dimensions, leaders, hatching, lay lines.
    Thin,
    /// Axes: dash-dot.
    Centre,
    /// What is no longer there or lies behind: dashed.
    Gone,
}

/// A fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Tone {
    /// A material, in one of three shades of rising depth.
    Metal(MaterialGroup, Shade),
    /// Empty space that hides what lies behind.
    Paper,
    /// Line ink: arrowheads, dots.
    Ink,
    /// A slip mark, or metal that has worn away.
    Signal,
}

/// Depth of a tone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Shade {
    Pale,
    Plain,
    Deep,
}

/// How a primitive looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Appearance {
    pub fill: Option<Tone>,
    pub pen: Option<Pen>,
}

impl Appearance {
    pub fn line(pen: Pen) -> Self {
        Self { fill: None, pen: Some(pen) }
    }

    pub fn area(fill: Tone, pen: Pen) -> Self {
        Self { fill: Some(fill), pen: Some(pen) }
    }

    pub fn solid(fill: Tone) -> Self {
        Self { fill: Some(fill), pen: None }
    }

    /// Classes and presentation attributes, for lines whose thick pen is `thick` millimetres wide.
    pub fn attributes(self, thick: f64) -> String {
        let mut classes = Vec::new();
        let mut looks = String::new();
        match self.fill {
            Some(tone) => {
                classes.push(tone.class());
                let _ = write!(looks, " fill=\"{}\"", tone.light());
            }
            None => looks.push_str(" fill=\"none\""),
        }
        if let Some(pen) = self.pen {
            classes.push(pen.class().to_owned());
            let width = pen.width(thick);
            let _ = write!(looks, " stroke=\"{INK}\" stroke-width=\"{}\"", number(width));
            looks.push_str(" stroke-linejoin=\"round\" stroke-linecap=\"round\"");
            if let Some(dashes) = pen.dashes() {
                let lengths: Vec<String> = dashes.iter().map(|&dash| number(dash * width)).collect();
                let _ = write!(looks, " stroke-dasharray=\"{}\"", lengths.join(" "));
            }
        }
        format!("class=\"{}\"{looks}", classes.join(" "))
    }
}

/// Lines and texts on light paper.
pub(crate) const INK: &str = "#16181a";
/// Lines and texts on a dark screen.
pub(crate) const INK_DARK: &str = "#f4f5f6";
/// Light paper.
pub(crate) const PAPER: &str = "#ffffff";
/// A dark screen.
pub(crate) const PAPER_DARK: &str = "#14171a";

impl Pen {
    fn class(self) -> &'static str {
        match self {
            Self::Thick => "sk-thick",
            Self::Thin => "sk-thin",
            Self::Centre => "sk-centre",
            Self::Gone => "sk-gone",
        }
    }

    /// Wide to narrow is two to one (ISO 128-2).
    pub fn width(self, thick: f64) -> f64 {
        if self == Self::Thick { thick } else { thick / 2.0 }
    }

    /// Dashes and gaps in line widths (ISO 128-2).
    fn dashes(self) -> Option<&'static [f64]> {
        match self {
            Self::Centre => Some(&[24.0, 4.0, 0.5, 4.0]),
            Self::Gone => Some(&[8.0, 4.0]),
            Self::Thick | Self::Thin => None,
        }
    }
}

impl Tone {
    /// Every tone, in a fixed order.
    pub fn all() -> Vec<Self> {
        let groups = GROUPS.iter().flat_map(|(group, ..)| {
            [Shade::Pale, Shade::Plain, Shade::Deep].map(|shade| Self::Metal(*group, shade))
        });
        groups.chain([Self::Paper, Self::Ink, Self::Signal]).collect()
    }

    pub fn class(self) -> String {
        match self {
            Self::Metal(group, shade) => format!("sk-{}-{}", word(group), shade as u8 + 1),
            Self::Paper => "sk-paper".to_owned(),
            Self::Ink => "sk-ink".to_owned(),
            Self::Signal => "sk-signal".to_owned(),
        }
    }

    /// On light paper.
    pub fn light(self) -> &'static str {
        match self {
            Self::Metal(group, shade) => shades(group).0[shade as usize],
            Self::Paper => PAPER,
            Self::Ink => INK,
            Self::Signal => "#8a1c4a",
        }
    }

    /// On a dark screen.
    pub fn dark(self) -> &'static str {
        match self {
            Self::Metal(group, shade) => shades(group).1[shade as usize],
            Self::Paper => PAPER_DARK,
            Self::Ink => INK_DARK,
            Self::Signal => "#ff9ec4",
        }
    }
}

/// The material's word in class names and keys.
pub(crate) fn word(group: MaterialGroup) -> &'static str {
    group.word()
}

fn shades(group: MaterialGroup) -> ([&'static str; 3], [&'static str; 3]) {
    GROUPS.iter().find(|row| row.0 == group).map_or((GROUPS[3].1, GROUPS[3].2), |row| (row.1, row.2))
}

type Row = (MaterialGroup, [&'static str; 3], [&'static str; 3]);

/// Our own tones: pale, plain and deep of one material differ in lightness enough for grey copies.
const GROUPS: [Row; 8] = [
    (MaterialGroup::Copper, ["#fbe6d8", "#f2c4a4", "#dd9d74"], ["#3a2418", "#5c3723", "#7c4d31"]),
    (MaterialGroup::Bronze, ["#f8efcf", "#ebd793", "#cfb45f"], ["#302a12", "#4c421b", "#695b27"]),
    (MaterialGroup::Aluminium, ["#f1f5f8", "#d9e2e9", "#b9c6d1"], ["#262c31", "#3b454d", "#525f6a"]),
    (MaterialGroup::Steel, ["#e3e7eb", "#c0c9d1", "#9aa6b1"], ["#1d232a", "#2f3a45", "#475563"]),
    (MaterialGroup::Stainless, ["#e6eeec", "#c4d5d1", "#9db4af"], ["#1b2826", "#2c403c", "#425d57"]),
    (MaterialGroup::Iron, ["#ebe7e2", "#d0c8bf", "#aba094"], ["#28241f", "#3f3931", "#595147"]),
    (MaterialGroup::Zinc, ["#eeeef4", "#d3d3e0", "#b0b0c4"], ["#232330", "#37374b", "#4e4e68"]),
    (MaterialGroup::Polymer, ["#e4f2e1", "#c0dfba", "#94c08c"], ["#18281a", "#264029", "#3a5f3e"]),
];

/// Style rules that turn drawings dark, one selector and one rule a line: put them where a page is dark, such as within
/// `@media (prefers-color-scheme: dark)`. Drawings carry the light look themselves.
///
/// ```
/// assert!(fittingcards::sketch::dark_rules().contains(".sk-thick"));
/// ```
#[must_use]
pub fn dark_rules() -> String {
    let mut rules = String::new();
    for pen in [Pen::Thick, Pen::Thin, Pen::Centre, Pen::Gone] {
        let _ = writeln!(rules, ".{} {{ stroke: {INK_DARK}; }}", pen.class());
    }
    let _ = writeln!(rules, ".sk-text {{ fill: {INK_DARK}; }}");
    for tone in Tone::all() {
        let _ = writeln!(rules, ".{} {{ fill: {}; }}", tone.class(), tone.dark());
    }
    rules
}

#[cfg(test)]
mod tests {
    use super::*;
    use palette::Srgb;
    use palette::color_difference::Wcag21RelativeContrast;

    fn contrast(one: &str, other: &str) -> f32 {
        let colour = |hex: &str| hex.parse::<Srgb<u8>>().unwrap().into_format::<f32>();
        colour(one).relative_contrast(colour(other))
    }

    /// WCAG 2.2, 1.4.3: 4.5:1.
    #[test]
    fn lines_and_texts_stand_out_from_every_tone() {
        for tone in Tone::all().into_iter().filter(|tone| !matches!(tone, Tone::Ink | Tone::Signal)) {
            assert!(contrast(INK, tone.light()) >= 4.5, "{tone:?} on light paper");
            assert!(contrast(INK_DARK, tone.dark()) >= 4.5, "{tone:?} on a dark screen");
        }
    }

    /// WCAG 2.2, 1.4.11: 3:1 for what must be seen of a graphic.
    #[test]
    fn slip_marks_stand_out_from_wires_and_paper() {
        let wires = Tone::all().into_iter().filter(|tone| matches!(tone, Tone::Metal(..) | Tone::Paper));
        for tone in wires {
            assert!(contrast(Tone::Signal.light(), tone.light()) >= 3.0, "{tone:?} on light paper");
            assert!(contrast(Tone::Signal.dark(), tone.dark()) >= 3.0, "{tone:?} on a dark screen");
        }
    }

    #[test]
    fn shades_of_one_material_differ_in_grey() {
        for (group, light, dark) in GROUPS {
            for shades in [light, dark] {
                assert!(contrast(shades[0], shades[1]) >= 1.15, "{group:?}");
                assert!(contrast(shades[1], shades[2]) >= 1.25, "{group:?}");
            }
        }
    }
}
