#![doc = include_str!("../explain/codes/name-contradicts-record.md")]

use super::Context;
use super::inspected::{built, on_fitting, on_part};
use crate::catalogue::{Conductor, Fitting, Part};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::section::{Construction, MaterialGroup};

const CODE: &str = "name-contradicts-record";
/// Whole figures below this count things or sorts ("line 2") as often as they give a size.
const LEAST_SIZE: f64 = 10.0;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let catalogue = context.catalogue;
    for fitting in built(context) {
        findings.extend(of_fitting(fitting, catalogue.conductors.values().map(AsRef::as_ref)));
    }
    for conductor in catalogue.conductors.values() {
        findings.extend(of_conductor(conductor, "name", &conductor.name));
        findings.extend(of_metal(conductor));
        findings.extend(of_conductor(conductor, "identity.drum_tag", &conductor.identity.drum_tag));
    }
    for part in catalogue.parts.values() {
        findings.extend(of_part(part));
    }
}

fn of_fitting<'a>(fitting: &Fitting, mut all: impl Iterator<Item = &'a Conductor>) -> Option<Finding> {
    let named = figures(&fitting.name);
    let has = |known: &[f64]| named.iter().any(|figure| known.contains(figure));
    if named.is_empty() || fitting.conductors.iter().any(|conductor| has(&sizes(conductor))) {
        return None;
    }
    let other = all.find(|conductor| has(&names(conductor)))?;
    let own = fitting.conductors.iter().map(|conductor| conductor.name.as_str());
    let message = format!("\"{}\" has the figure of another conductor", fitting.name);
    let finding = on_fitting(Severity::Warning, CODE, fitting, "name", message)
        .found(format!("a figure of \"{}\"", other.name))
        .expected(format!("a figure of \"{}\", or none", own.collect::<Vec<_>>().join("\" or \"")))
        .related(fitting.origin.of("conductor"), "its conductor");
    Some(finding.help("check `name` and `conductor` against the specification"))
}

fn of_conductor(conductor: &Conductor, field: &str, text: &str) -> Option<Finding> {
    let stated: Vec<f64> = figures(text).into_iter().filter(|figure| is_size(*figure)).collect();
    let mut known = recorded(conductor);
    known.extend(figures(&conductor.id));
    if stated.is_empty() || stated.iter().any(|figure| known.contains(figure)) {
        return None;
    }
    let message = format!("\"{text}\" has a figure that stands nowhere else in the record");
    let finding =
        Finding::warning(CODE, conductor.origin.of(field), message).field(field).record(&conductor.id);
    Some(finding.help("check it against nominal size, diameter and the specification"))
}

/// Metals as names have them, with the families of material that may be called so.
const METALS: [(&str, &[MaterialGroup]); 6] = [
    ("copper", &[MaterialGroup::Copper]),
    ("bronze", &[MaterialGroup::Bronze]),
    ("aluminium", &[MaterialGroup::Aluminium]),
    ("aluminum", &[MaterialGroup::Aluminium]),
    ("steel", &[MaterialGroup::Steel, MaterialGroup::Stainless]),
    ("stainless", &[MaterialGroup::Stainless]),
];

/// A conductor that is called by a metal that is not in it.
fn of_metal(conductor: &Conductor) -> Option<Finding> {
    let name = conductor.name.to_lowercase();
    let words: Vec<&str> = name.split(|letter: char| !letter.is_alphabetic()).collect();
    let mut named = METALS.iter().filter(|(metal, _)| words.contains(metal)).peekable();
    let (first, _) = *named.peek()?;
    let core = match &conductor.construction {
        Construction::Composite(composite) => composite.core_material.as_ref().map(|core| core.group),
        _ => None,
    };
    let has = |groups: &[MaterialGroup]| {
        groups.contains(&conductor.material.group) || core.is_some_and(|core| groups.contains(&core))
    };
    if named.any(|(_, groups)| has(groups)) {
        return None;
    }
    let message = format!("\"{}\" is called by a metal that is not in it", conductor.name);
    let finding =
        Finding::warning(CODE, conductor.origin.of("name"), message).field("name").record(&conductor.id);
    Some(
        finding
            .found(*first)
            .expected(format!("{}, as its material is, or none", conductor.material.group.word()))
            .related(conductor.origin.of("material"), "its material")
            .help("copper and bronze look the same: the name on the card decides; check both"),
    )
}

fn of_part(part: &Part) -> Option<Finding> {
    let (named, stamped) = (decimals(&part.name), decimals(&part.stamp));
    if named.is_empty() || stamped.is_empty() || named.iter().any(|figure| stamped.contains(figure)) {
        return None;
    }
    let message = format!("the stamp \"{}\" has another figure than the name \"{}\"", part.stamp, part.name);
    let finding = on_part(Severity::Warning, CODE, part, "stamp", message);
    Some(
        finding
            .related(part.origin.of("name"), "the name")
            .help("check both against the part and its drawing"),
    )
}

/// What a fitting's name may say of its conductor.
fn sizes(conductor: &Conductor) -> Vec<f64> {
    [recorded(conductor), names(conductor), figures(&conductor.identity.drum_tag)].concat()
}

/// By what a conductor is called.
fn names(conductor: &Conductor) -> Vec<f64> {
    let nominal = conductor.nominal_size.map(|size| size.mm2());
    [figures(&conductor.name), figures(&conductor.id), nominal.into_iter().collect()].concat()
}

/// The numbers of its record, and its diameter to a tenth.
fn recorded(conductor: &Conductor) -> Vec<f64> {
    let diameter = (conductor.section.overall_diameter.mm() * 10.0).round() / 10.0;
    conductor.origin.numbers.values().map(|number| number.value).chain([diameter]).collect()
}

fn is_size(figure: f64) -> bool {
    figure >= LEAST_SIZE || figure.fract() != 0.0
}

/// Figures that stand by themselves: not the 2 of "BZ2", not "10x45".
fn figures(text: &str) -> Vec<f64> {
    let words = text.split(|letter: char| !letter.is_alphanumeric() && !matches!(letter, '.' | ','));
    words.filter_map(|word| number(word.trim_end_matches(['.', ',']))).collect()
}

/// Figures with a decimal mark, letters before them or not.
fn decimals(text: &str) -> Vec<f64> {
    let words = text.split(|letter: char| !letter.is_ascii_digit() && !matches!(letter, '.' | ','));
    let words = words.map(|word| word.trim_matches(['.', ',']));
    words.filter(|word| word.contains(['.', ','])).filter_map(number).collect()
}

fn number(word: &str) -> Option<f64> {
    let plain = word.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b','));
    plain.then(|| word.replace(',', ".").parse().ok()).flatten()
}
