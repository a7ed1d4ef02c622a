//! What the faces of a card must show, whatever a layout leaves out: the check code says that a copy is good, and stands for
//! all of it.

use super::face::{Card, Face, ItemMark};
use super::input::Input;
use super::preflight;
use super::values;
use crate::catalogue::{CardSize, Status};
use crate::facts::{BodyFacts, CardFacts, Content, FittingFacts, MarkFacts, TagFacts};
use crate::register::Standing;

/// A text that must stand on a face, with what it is called.
pub(super) type Needed = (&'static str, String);

/// What says whether a copy is the one in force.
pub(super) fn in_force(input: Input<'_>, standing: &Standing) -> Vec<Needed> {
    let edition = ("the edition", input.catalogue.settings.edition.clone());
    match standing {
        Standing::Draft => vec![("that it is a draft", "draft, not issued".to_owned()), edition],
        Standing::Issued(issued) => vec![
            ("the issue", format!("issue {}", issued.issue)),
            ("the edition", issued.edition.clone()),
            ("the check code", issued.check_code.clone()),
        ],
    }
}

/// Something that must be shown, with what it is called.
pub(super) struct Must {
    what: &'static str,
    text: String,
    how: How,
}

/// How a text must be shown.
#[derive(Clone, Copy, PartialEq, Eq)]
enum How {
    /// In a line of its own.
    Alone,
    /// In one line, with no letter or figure that touches it.
    Word,
    /// In one block, whatever lines it is broken into.
    Text,
}

impl Must {
    fn new(how: How, what: &'static str, text: &str) -> Self {
        // What is longer than any stamp that is struck may be broken as texts are.
        let how = if values::is_kept_whole(text) { how } else { How::Text };
        Self { what, text: text.to_owned(), how }
    }

    /// A text that stands in one block.
    pub fn text((what, text): &Needed) -> Self {
        Self::new(How::Text, what, text)
    }
}

/// What the front must show: which card it is, and which part is right.
pub(super) fn on_front(input: Input<'_>, facts: &CardFacts, standing: &Standing) -> Vec<Must> {
    let mut musts = of_every_face(facts);
    musts.extend(in_force(input, standing).iter().map(Must::text));
    match &facts.content {
        Content::Fitting(fitting) => {
            musts.push(Must::new(How::Alone, "the gripping part's stamp", &fitting.gripping_stamp));
            musts.extend(fitting.mark.iter().flat_map(mark));
            let held = fitting.conductors.iter();
            musts.extend(held.map(|held| Must::new(How::Text, "the conductor", &held.name)));
            musts.extend(held_apart(fitting));
            // Of what must not be built the wrong parts may be left to the body's card.
            if facts.status == Status::Current {
                musts.extend(fitting.not_these.iter().map(|wrong| {
                    let called = if wrong.stamp.is_empty() { &wrong.number } else { &wrong.stamp };
                    Must::new(How::Word, "the wrong parts that go in", called)
                }));
            }
        }
        Content::Body(body) => musts.extend(of_body(body)),
    }
    musts
}

/// What conductors are warned of: what they look like, and their cautions.
fn held_apart(fitting: &FittingFacts) -> impl Iterator<Item = Must> + '_ {
    fitting.conductors.iter().flat_map(|held| {
        let alike = Must::new(How::Text, "what looks like the conductor", &held.alike);
        [alike, Must::new(How::Text, "the conductor's caution", &held.caution)]
    })
}

fn mark(mark: &MarkFacts) -> [Must; 2] {
    let text = Must::new(How::Word, "the mark", &mark.text);
    [text, Must::new(How::Text, "the mark's colour in words", &mark.colour)]
}

fn of_body(body: &BodyFacts) -> impl Iterator<Item = Must> + '_ {
    body.parts.iter().flat_map(|part| {
        let stamp = Must::new(How::Word, "the stamp of each gripping part", &part.stamp);
        let mark = part.mark.as_ref().map(|mark| Must::new(How::Word, "the mark of each part", &mark.text));
        [stamp].into_iter().chain(mark)
    })
}

fn of_every_face(facts: &CardFacts) -> Vec<Must> {
    vec![
        Must::new(How::Word, "the number", &facts.number),
        Must::new(How::Text, "the status", &facts.status_words),
    ]
}

/// What the back must show.
pub(super) fn on_back(facts: &CardFacts) -> Vec<Must> {
    let mut musts = of_every_face(facts);
    musts.push(Must::new(How::Text, "the caution", &facts.caution));
    musts
}

/// What a kit tag must show.
pub(super) fn on_tag(input: Input<'_>, facts: &TagFacts, standing: &Standing) -> Vec<Must> {
    let mut musts = vec![
        Must::new(How::Word, "the number", &facts.number),
        Must::new(How::Text, "the status", &facts.status_words),
        Must::new(How::Text, "the caution", &facts.caution),
    ];
    let stamps = facts.gripping_stamps.iter();
    musts.extend(stamps.map(|stamp| Must::new(How::Word, "the gripping part's stamp", stamp)));
    musts.extend(in_force(input, standing).iter().map(Must::text));
    musts
}

/// What one of the two faces must show: how the fitting is closed, and whether it is right. A card of identity size leaves
/// torques and steps to the booklet.
pub(super) fn on_either(input: Input<'_>, facts: &CardFacts) -> Vec<Must> {
    let Content::Fitting(fitting) = &facts.content else { return Vec::new() };
    if facts.status != Status::Current {
        return Vec::new();
    }
    let text = |what, text: &str| Must::new(How::Text, what, text.trim_end_matches('.'));
    let mut musts = vec![text("the witness", &fitting.witness)];
    musts.extend(facts.before_work.iter().map(|line| text("what comes before work", line)));
    musts.extend(fitting.line_tension_max.iter().map(|most| text("the line tension", most)));
    musts.extend(fitting.checks.iter().map(|check| text("what is checked", &check.go)));
    musts.extend(fitting.if_wrong_items().map(|(_, words)| text("what a failed check calls for", words)));
    if input.catalogue.settings.card.size != CardSize::Id1 {
        musts.extend(fitting.steps.iter().map(|step| text("the steps", step)));
        let sentences = fitting.reject_if.iter().flat_map(|line| line.split_inclusive(". "));
        musts.extend(sentences.map(|line| text("what is rejected", line.trim())));
        musts.extend(
            fitting
                .tightening
                .iter()
                .flat_map(|line| [text("the torque", &line.torque), text("what is greased", &line.grease)]),
        );
    }
    musts
}

/// What faces don't show of what they must, each thing once.
pub(super) fn lacking(faces: &[&Face], musts: &[Must]) -> Vec<&'static str> {
    let shown: Vec<Shown> = faces.iter().flat_map(|face| shown(face)).collect();
    let mut lacking: Vec<&'static str> = Vec::new();
    for must in musts {
        let wanted = plain(&must.text);
        if !wanted.is_empty()
            && !lacking.contains(&must.what)
            && !shown.iter().any(|shown| shown.has(&wanted, must.how))
        {
            lacking.push(must.what);
        }
    }
    lacking
}

/// Whether a card of what must not be used has the lines over both faces.
pub(super) fn is_struck_as_it_must(facts: &CardFacts, card: &Card) -> bool {
    facts.status == Status::Current || is_struck(&card.front) && is_struck(&card.back)
}

fn is_struck(face: &Face) -> bool {
    face.blocks.iter().flat_map(|block| &block.items).any(|item| item.mark == ItemMark::Strike)
}

/// What a block shows, without what line breaking puts in and takes out.
struct Shown {
    lines: Vec<String>,
    /// The lines with their spaces.
    words: Vec<String>,
    whole: String,
}

impl Shown {
    fn of(lines: &[&str]) -> Self {
        let words =
            lines.iter().map(|line| line.replace(['\u{ad}', '\u{2060}'], "").to_lowercase()).collect();
        let lines: Vec<String> = lines.iter().map(|line| plain(line)).collect();
        Self { whole: lines.concat(), lines, words }
    }

    fn has(&self, wanted: &str, how: How) -> bool {
        match how {
            How::Alone => self.lines.iter().any(|line| line == wanted),
            How::Word => self.words.iter().any(|line| has_word(line, wanted)),
            How::Text => self.whole.contains(wanted),
        }
    }
}

/// What each block of a face shows, and each text of the layout's own SVG.
fn shown(face: &Face) -> Vec<Shown> {
    let of_block = face.blocks.iter().map(|block| {
        let lines = block.items.iter().filter_map(|item| match &item.mark {
            ItemMark::Line { words, .. } => Some(words.as_str()),
            _ => None,
        });
        Shown::of(&lines.collect::<Vec<_>>())
    });
    let of_svg = preflight::texts_of_svg(face).into_iter().map(|text| Shown::of(&[&text]));
    of_block.chain(of_svg).collect()
}

/// Whether a line has a word, without its spaces and hyphens, that no letter or figure touches.
fn has_word(line: &str, wanted: &str) -> bool {
    let starts = line.char_indices().map(|(at, _)| at);
    let is_free = |letter: Option<char>| letter.is_none_or(|letter| !letter.is_alphanumeric());
    starts.filter(|at| is_free(line[..*at].chars().next_back())).any(|at| {
        let mut rest = line[at..].chars().peekable();
        for letter in wanted.chars() {
            while rest.peek().is_some_and(|next| is_left_out(*next)) {
                rest.next();
            }
            if rest.next() != Some(letter) {
                return false;
            }
        }
        is_free(rest.next())
    })
}

fn is_left_out(letter: char) -> bool {
    letter.is_whitespace() || matches!(letter, '-' | '\u{ad}' | '\u{2060}')
}

/// A text without what line breaking puts in and takes out, in small letters: a sentence may begin with a value.
fn plain(text: &str) -> String {
    text.chars().filter(|letter| !is_left_out(*letter)).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_not_shown_by_a_longer_one() {
        let shown = Shown::of(&["ST-4103 Cone", "⌀ 14.0 mm"]);
        assert!(shown.has(&plain("ST-4103"), How::Word) && !shown.has(&plain("ST-410"), How::Word));
        assert!(shown.has(&plain("14.0"), How::Word) && !shown.has(&plain("14.0"), How::Alone));
        assert!(shown.has(&plain("⌀ 14.0 mm"), How::Alone));
    }

    /// Stamps up to twenty characters are kept in one line; a longer one may be broken, and is shown all the same.
    #[test]
    fn what_is_longer_than_a_stamp_may_be_broken() {
        for (first, second, is_shown) in [("BZ2 14.0 B", "2026 LH REV", true), ("BZ2 14.0", "B 2026", false)]
        {
            let stamp = format!("{first} {second}");
            let how = Must::new(How::Alone, "the stamp", &stamp).how;
            assert_eq!(Shown::of(&[first, second]).has(&plain(&stamp), how), is_shown, "{stamp}");
        }
    }

    #[test]
    fn a_text_is_found_across_its_lines_and_not_across_blocks() {
        let shown = Shown::of(&["Tighten to 80", "to 90 N·m, hy-", "phened"]);
        assert!(shown.has(&plain("tighten to 80 to 90 N·m, hyphened"), How::Text));
        assert!(!shown.has(&plain("90 N·m. Then"), How::Text));
    }
}
