#![doc = include_str!("../explain/codes/text-contradicts-record.md")]

use super::Context;
use super::figures_of_text::{Figures, figures};
use super::fitting_texts::{Text, notes_of_records, texts};
use super::known_names::{Known, known};
use super::units_of_text::Unit;
use super::words_of_text::{Word, are_all_of, named, spells, words};
use crate::catalogue::Fitting;
use crate::diagnostics::{Finding, Findings, Place, Severity};
use crate::mixups::marks;
use crate::units::{Force, Torque};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let (marks, notes) = (marks(context.catalogue), notes_of_records(context.catalogue));
    for fitting in context.catalogue.fittings.values() {
        let known = known(fitting, context, &marks);
        for text in texts(fitting, &notes) {
            for (at, stretch) in text.stretches() {
                let look = Look { fitting, known: &known, text: &text, at, words: words(stretch) };
                look.figures(&figures(stretch), findings);
                look.names(findings);
            }
        }
    }
}

/// A stretch of a text that names no value.
struct Look<'a> {
    fitting: &'a Fitting,
    known: &'a Known,
    text: &'a Text<'a>,
    at: usize,
    words: Vec<Word<'a>>,
}

/// What work is done with, besides the fitting.
const GEAR: [&str; 5] = ["puller", "pullers", "hoist", "sling", "winch"];

impl Look<'_> {
    fn figures(&self, all: &[Figures], findings: &mut Findings) {
        for stated in all {
            match stated.unit {
                Unit::Torque if !self.is_torque(stated) => {
                    let (place, is) = self.torque();
                    let message = message(stated, "torque");
                    findings.push(self.found(
                        Severity::Error,
                        stated.at,
                        &message,
                        &stated.written,
                        place,
                        is,
                        "torque",
                    ));
                }
                Unit::Load if !self.is_load(stated) => {
                    let severity = if self.is_of_gear(stated) { Severity::Note } else { Severity::Error };
                    let place = self.fitting.place_of("line_tension_max_kN");
                    let message = message(stated, "load");
                    findings.push(self.found(
                        severity,
                        stated.at,
                        &message,
                        &stated.written,
                        place,
                        "its line tension",
                        "tension_max",
                    ));
                }
                _ => {}
            }
        }
    }

    /// Whether figures are those of a window, or one of its ends.
    fn is_torque(&self, stated: &Figures) -> bool {
        self.fitting.tightening.iter().filter_map(|line| line.torque).any(|window| {
            let ends = [window.least(), window.most()].map(Torque::nm);
            match stated.values[..] {
                [one] => ends.iter().any(|end| same(*end, one)),
                [least, most] => same(ends[0], least) && same(ends[1], most),
                _ => false,
            }
        })
    }

    fn torque(&self) -> (Place, &'static str) {
        let stated = self.fitting.tightening.iter().position(|line| line.torque.is_some());
        let field = stated.map_or("tightening".to_owned(), |nth| format!("tightening.{nth}.torque_Nm"));
        (self.fitting.place_of(&field), if stated.is_some() { "its torque" } else { "it has no torque" })
    }

    fn is_load(&self, stated: &Figures) -> bool {
        let fitting = self.fitting;
        let own = [fitting.line_tension_max, fitting.holding_load].into_iter().flatten();
        let preloads = fitting.tightening.iter().filter_map(|line| line.preload);
        let breaking = fitting
            .conductors
            .iter()
            .flat_map(|held| [held.stated.breaking_load, held.section.breaking_load]);
        let proofs =
            fitting.items.iter().flat_map(|item| &item.part.proven_on).filter_map(|proof| proof.holding_load);
        let loads: Vec<f64> =
            own.chain(preloads).chain(breaking.flatten()).chain(proofs).map(Force::kn).collect();
        !stated.values.is_empty()
            && stated.values.iter().all(|value| loads.iter().any(|load| same(*load, *value)))
    }

    /// Whether a load is said of what the work is done with: such a word stands close before it, or behind its unit.
    fn is_of_gear(&self, stated: &Figures) -> bool {
        let word = self.words.partition_point(|word| word.at <= stated.at).saturating_sub(1);
        let from = word.saturating_sub(3);
        let near = self.words[from..].iter().take(word - from + 3);
        near.into_iter().any(|word| GEAR.contains(&word.text.to_lowercase().as_str()))
    }

    fn names(&self, findings: &mut Findings) {
        let mut index = 0;
        while index < self.words.len() {
            index += self.name_at(index, findings);
        }
    }

    /// Looks at the word at an index; gives how many words that settles.
    fn name_at(&self, index: usize, findings: &mut Findings) -> usize {
        if let Some((name, count)) = named(&self.words, index) {
            let head = self.words[index].text.to_lowercase();
            let allowed = if head == "stamp" { &self.known.stamps } else { &self.known.marks };
            let is_other =
                |phrase: &str| spells(&self.words, index + 1, phrase).is_some_and(|long| long >= count);
            let another = self.known.others.iter().find(|other| is_other(&other.name));
            let right = are_all_of(&self.words, index + 1, count, allowed)
                || another.is_some() && self.text.tells_of_others();
            if !right {
                let (place, is) = another.map_or_else(
                    || {
                        if head == "stamp" {
                            self.known.stamp_place.clone()
                        } else {
                            self.known.mark_place.clone()
                        }
                    },
                    |other| (other.place.clone(), "it is that of another part"),
                );
                let message = format!("the fitting has no such {head}");
                let at = self.words[index + 1].at;
                findings.push(self.found(Severity::Error, at, &message, &name, place, is, &head));
            }
            return 1 + count;
        }
        let longest = |phrases: &mut dyn Iterator<Item = &str>| {
            phrases.filter_map(|phrase| spells(&self.words, index, phrase)).max()
        };
        let own = longest(&mut self.known.own.iter().map(String::as_str)).unwrap_or(0);
        let others = self
            .known
            .others
            .iter()
            .filter_map(|other| Some((spells(&self.words, index, &other.name)?, other)));
        let other = others.max_by_key(|(count, _)| *count).filter(|(count, _)| *count > own);
        let Some((count, other)) = other.filter(|_| !self.text.tells_of_others()) else { return own.max(1) };
        let message = format!("this is the {} of another part that goes into the body", other.kind);
        let at = self.words[index].at;
        findings.push(self.found(
            Severity::Error,
            at,
            &message,
            &other.name,
            other.place.clone(),
            "the other part",
            other.kind,
        ));
        count
    }

    #[expect(clippy::too_many_arguments, reason = "each is a part of one finding")]
    fn found(
        &self,
        severity: Severity,
        at: usize,
        message: &str,
        found: &str,
        place: Place,
        is: &str,
        value: &str,
    ) -> Finding {
        self.text
            .finding(severity, "text-contradicts-record", self.at + at, message)
            .found(found)
            .help(format!("write the name of the value in braces, such as `{{{value}}}`, or correct the text or the record"))
            .related(place, is)
    }
}

fn message(stated: &Figures, what: &str) -> String {
    match stated.values[..] {
        [] => format!("the figure of this {what} can't be read"),
        _ => format!("the fitting has no such {what}"),
    }
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}
