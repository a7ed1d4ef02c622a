//! Whether a figure is that of a tool or a drum, and not of the fitting. English words alone.

use super::figures_of_text::Figures;
use super::words_of_text::Word;

/// What work is done with, besides the fitting, and words that are said of it alone.
const GEAR: [&str; 11] = [
    "puller",
    "pullers",
    "hoist",
    "sling",
    "winch",
    "safety",
    "dynamometer",
    "shackle",
    "shackles",
    "rated",
    "capacity",
];
/// Words that tell what a wrench is made for, and not what is done with it.
const MADE_FOR: [&str; 6] = ["range", "calibrated", "rated", "capacity", "scale", "covers"];
/// How words begin that are about the line's load.
const OF_LOAD: [&str; 4] = ["tension", "load", "pull", "kn"];
/// Words of what has a mass.
const HEAVY: [&str; 16] = [
    "drum", "drums", "reel", "reels", "tool", "tools", "mass", "weight", "weights", "weighs", "weigh",
    "heavy", "ladder", "lift", "carry", "pallet",
];

/// What a mass is said of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum MassOf {
    /// The line: it is a load.
    Line,
    /// A drum, a tool, a weight.
    Gear,
    /// Its sentence doesn't say.
    Unknown,
}

/// What a mass is said of: a drum or a tool stands close before it, or behind its unit; else its sentence tells.
pub(super) fn mass_of(words: &[Word<'_>], stated: &Figures, sentence: &[String]) -> MassOf {
    let is_heavy = |word: &Word<'_>| HEAVY.contains(&word.text.to_lowercase().as_str());
    let is_load =
        |word: &String| OF_LOAD.iter().any(|start| word.starts_with(start)) && !word.starts_with("puller");
    if is_of_gear(words, stated) || near(words, stated).any(is_heavy) {
        MassOf::Gear
    } else if sentence.iter().any(is_load) {
        MassOf::Line
    } else {
        MassOf::Unknown
    }
}

/// The three words before a figure, itself, and the two behind it.
fn near<'a, 'b>(words: &'a [Word<'b>], stated: &Figures) -> impl Iterator<Item = &'a Word<'b>> {
    let word = words.partition_point(|word| word.at <= stated.at).saturating_sub(1);
    let from = word.saturating_sub(3);
    words[from..].iter().take(word - from + 3)
}

/// Whether a load is said of what the work is done with: such a word stands close before it, or behind its unit.
pub(super) fn is_of_gear(words: &[Word<'_>], stated: &Figures) -> bool {
    near(words, stated).any(|word| GEAR.contains(&word.text.to_lowercase().as_str()))
}

/// Whether a torque is the range of a wrench: it stands close before, and what is said is what it is made for.
pub(super) fn is_of_wrench(words: &[Word<'_>], stated: &Figures) -> bool {
    let word = words.partition_point(|word| word.at <= stated.at).saturating_sub(1);
    let from = word.saturating_sub(4);
    let is_one = |word: &Word<'_>, known: &[&str]| known.contains(&word.text.to_lowercase().as_str());
    let is_near = words[from..word].iter().any(|word| is_one(word, &["wrench", "wrenches"]));
    let near = words[from..].iter().take(word - from + 5);
    is_near && near.into_iter().any(|word| is_one(word, &MADE_FOR))
}

#[cfg(test)]
mod tests {
    use super::super::figures_of_text::figures;
    use super::super::words_of_text::words;
    use super::*;

    #[test]
    fn loads_and_torques_of_tools_are_told_from_those_of_fittings() {
        let gear = |text: &str| is_of_gear(&words(text), &figures(text)[0]);
        assert!(
            gear("Safety line rated 40 kN") && gear("Dynamometer range 50 kN.") && gear("an 18-kN puller")
        );
        assert!(!gear("Tension to 40 kN"));
        let wrench = |text: &str| is_of_wrench(&words(text), &figures(text)[0]);
        assert!(wrench("Torque wrench 20–100 N·m, calibrated.") && wrench("Wrench, range 20–100 N·m"));
        assert!(!wrench("Torque wrench to 120 N·m.") && !wrench("Calibrated: 120 N·m"));
    }

    #[test]
    fn a_mass_is_a_load_where_its_sentence_is_about_one() {
        let of = |text: &str| {
            let sentence: Vec<String> = text.split(' ').map(str::to_lowercase).collect();
            mass_of(&words(text), figures(text).last().unwrap(), &sentence)
        };
        assert_eq!(of("Tension to 2200 kg"), MassOf::Line);
        assert_eq!(of("Pull it off a drum of 500 kg with 2200 kg"), MassOf::Line);
        assert_eq!(of("Load a drum of 500 kg"), MassOf::Gear);
        assert_eq!(of("The load of the drum is 500 kg"), MassOf::Gear);
        assert_eq!(of("wait with 500 kg"), MassOf::Unknown);
    }
}
