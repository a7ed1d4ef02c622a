//! Whether a text says to open what may be under tension. English words alone are known. What is in doubt counts as said:
//! a text can be worded otherwise.

use super::clauses_of_text::{ClauseWord, clauses, sentences};
use super::load_orders::{is_otherwise, puts_load_on};
use super::load_words::{
    is_negating, is_only_where_possible, names_load_on, states_load_on, takes_load_away,
};
use super::opening_verbs::opens;
use super::orders_of_text::{is_order, lines_joined};

/// Words that say to open something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Opening {
    /// Letters of the text before them.
    pub(super) at: usize,
    /// The words in small letters.
    pub(super) words: String,
}

/// How much of a text tells somebody what to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Telling {
    /// All of it, as in a step.
    All,
    /// What begins with a verb, as in a chapter, which also tells what happens to people.
    Orders,
}

/// Where the line's load is, as far as texts have said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Load {
    /// It was put on.
    is_on: bool,
    /// It was taken away since.
    is_away: bool,
}

impl Load {
    /// What a text is about that tells what to do under tension.
    pub(super) const ON: Load = Load { is_on: true, is_away: false };

    fn is_felt(self) -> bool {
        self.is_on && !self.is_away
    }
}

/// Words between "not" and what must not be done.
const BETWEEN: [&str; 18] = [
    "to",
    "try",
    "ever",
    "even",
    "be",
    "is",
    "are",
    "one",
    "may",
    "must",
    "anyone",
    "anybody",
    "let",
    "attempt",
    "safe",
    "allowed",
    "permitted",
    "right",
];

/// The words that say to open something, one of each sentence that says so of what is under tension.
pub(super) fn openings_under_load(text: &str, telling: Telling) -> Vec<Opening> {
    openings_with(text, &mut Load::default(), telling)
}

/// The same, of a text that follows on others: they say where the load is, and this one where it is then.
pub(super) fn openings_with(text: &str, load: &mut Load, telling: Telling) -> Vec<Opening> {
    let text = lines_joined(text);
    let letters: Vec<char> = text.chars().collect();
    let mut reader = Reader { load: *load, list: Load::default(), chapter: Load::default(), telling };
    let mut found = Vec::new();
    for (from, sentence) in sentences(&text) {
        reader.begin_line(&letters, from, &sentence);
        let is_asked = letters.get(from + sentence.chars().count()) == Some(&'?');
        let opening = reader.read(&sentence, is_asked);
        found.extend(opening.map(|opening| Opening { at: from + opening.at, ..opening }));
    }
    *load = reader.load;
    found
}

/// Reads sentence by sentence, and keeps in mind where the load is.
struct Reader {
    load: Load,
    /// Where it is in a list that is about what is under tension.
    list: Load,
    /// Where it is below a heading that says so.
    chapter: Load,
    telling: Telling,
}

impl Reader {
    /// A list that "under tension:" begins ends where a line is no item of it.
    fn begin_line(&mut self, letters: &[char], from: usize, sentence: &str) {
        let begins = from == 0 || letters[from - 1] == '\n';
        let line = sentence.trim();
        let is_item = line.starts_with(['-', '*', '+', '|']) || line.chars().all(char::is_numeric);
        if begins && !line.is_empty() && !is_item {
            self.list = Load::default();
        }
        if begins && line.starts_with('#') {
            self.chapter = Load::default();
        }
    }

    /// The first words of a sentence that say to open something under tension.
    fn read(&mut self, sentence: &str, is_asked: bool) -> Option<Opening> {
        let (clauses, letters) = (clauses(sentence), sentence.chars().collect::<Vec<char>>());
        let names_load = clauses.iter().any(|clause| names_load_on(clause));
        let is_sure = !is_asked && !clauses.iter().any(|clause| is_only_where_possible(clause));
        let before = self.load;
        let (mut is_away, mut is_condition, mut found) = (false, false, None);
        let mut listing = Listing::default();
        for clause in &clauses {
            if is_otherwise(clause) {
                is_away = self.set_away(false);
            }
            let opening = listing.opening(&letters, clause);
            let is_felt = names_load && !is_away || self.is_felt();
            let is_told = |opening: &Opening| self.telling == Telling::All || is_order(clause, opening.at);
            found = found.or_else(|| opening.filter(|opening| is_felt && is_told(opening)));
            if puts_load_on(clause) {
                is_away = false;
                let is_on = self.load.is_on || self.telling == Telling::All;
                self.load = Load { is_on, is_away: false };
            } else if is_sure && takes_load_away(clause) {
                is_away = self.set_away(true);
            }
            is_condition |= clause[0].text == "if";
        }
        // What is done on a condition may not have been done.
        if is_condition && !before.is_away {
            self.load.is_away = false;
        }
        if names_load && sentence.trim_end().ends_with(':')
            || clauses.iter().any(|clause| states_load_on(clause))
        {
            self.list = Load::ON;
        }
        if names_load && sentence.trim().starts_with('#') {
            self.chapter = Load::ON;
        }
        found
    }

    fn is_felt(&self) -> bool {
        [self.load, self.list, self.chapter].into_iter().any(Load::is_felt)
    }

    fn set_away(&mut self, is_away: bool) -> bool {
        [&mut self.load, &mut self.list, &mut self.chapter]
            .into_iter()
            .for_each(|load| load.is_away = is_away);
        is_away
    }
}

/// How many letters of what else must not be done are read for the "or" before its last.
const LISTED: usize = 200;

/// What a sentence has forbidden so far.
#[derive(Default)]
struct Listing {
    /// Letters before the end of a forbidden verb, where nothing but a comma may follow.
    forbidden_until: Option<usize>,
}

impl Listing {
    /// The first words of a clause that say to open something and are not forbidden.
    fn opening(&mut self, sentence: &[char], clause: &[ClauseWord]) -> Option<Opening> {
        let goes_on = self.goes_on(sentence, clause);
        self.forbidden_until = None;
        let mut is_forbidden_before = false;
        for nth in 0..clause.len() {
            let Some(last) = opens(clause, nth) else { continue };
            let is_another = nth > 0 && matches!(clause[nth - 1].text.as_str(), "or" | "nor");
            is_forbidden_before =
                is_negated(clause, nth) || nth == 0 && goes_on || is_another && is_forbidden_before;
            if !is_forbidden_before {
                let words: Vec<&str> = clause[nth..=last].iter().map(|word| word.text.as_str()).collect();
                return Some(Opening { at: clause[nth].at, words: words.join(" ") });
            }
            let is_last = nth + 1 == clause.len();
            self.forbidden_until = is_last.then(|| clause[nth].at + clause[nth].text.chars().count());
        }
        None
    }

    /// Whether a clause goes on with what must not be done: "do not undo, unscrew or cut anything".
    fn goes_on(&self, sentence: &[char], clause: &[ClauseWord]) -> bool {
        let Some(until) = self.forbidden_until else { return false };
        let between = sentence[until..clause[0].at].iter();
        let is_comma = between.filter(|letter| !letter.is_whitespace()).eq([&',']);
        let behind: String = sentence[clause[0].at..].iter().take(LISTED).collect();
        is_comma && clauses(&behind).iter().flatten().any(|word| matches!(word.text.as_str(), "or" | "nor"))
    }
}

/// Whether "not" or the like stands close before a word.
fn is_negated(clause: &[ClauseWord], nth: usize) -> bool {
    let before = clause[..nth].iter().rev().find(|word| !BETWEEN.contains(&word.text.as_str()));
    before.is_some_and(|word| is_negating(&word.text))
}
