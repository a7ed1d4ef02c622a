//! Figures that a text states: those before a unit, whatever stands round them. A figure of a torque or load that can't
//! be read is found too: it must not pass in silence.

use super::other_units_of_text::other_unit_at;
use super::units_of_text::{LONGEST_NAME, Spelled, Unit, entity, unit_at};

/// Figures before a unit: one, or least and most.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Figures {
    /// Letters of the text before it.
    pub(super) at: usize,
    /// In the unit, torques in N·m; empty where they can't be read.
    pub(super) values: Vec<f64>,
    /// What they are of.
    pub(super) unit: Unit,
    /// As written, with the unit.
    pub(super) written: String,
}

/// Signs between least and most. Dots in a row are one too.
const RANGE: [char; 13] = ['–', '-', '—', '‑', '‒', '−', '…', '/', '÷', '~', '∼', '〜', '～'];
/// Those of them that are a minus before a figure.
const DASHES: [char; 6] = ['–', '-', '—', '‑', '‒', '−'];
/// Words between least and most.
const TO: [&str; 3] = ["to", "bis", "à"];
/// Words that may stand between one of those and the most.
const MOST: [&str; 3] = ["max", "maximum", "most"];
/// Words between figures that are each stated by itself.
const ALSO: [&str; 2] = ["and", "or"];
/// Brackets, and signs of Markdown, that may stand between a figure and its unit or before a figure.
const ROUND: [char; 12] = ['*', '_', '`', '|', '(', ')', '[', ']', '"', '“', '”', '\''];
/// The zeros of the digits that texts are written with: Latin, Arabic, Persian, Devanagari, full width.
const ZEROS: [char; 5] = ['0', '٠', '۰', '०', '０'];

/// The figures of a text. What is part of a word, such as the 2 of "M36x2", is none.
pub(super) fn figures(text: &str) -> Vec<Figures> {
    let letters: Vec<char> = text.chars().collect();
    let reader = Reader { letters: &letters };
    let mut found = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        let Some(unit) = unit_at(&letters, at).or_else(|| other_unit_at(&letters, at)) else {
            at += 1;
            continue;
        };
        let before = reader.before(at, unit);
        if before.is_empty() {
            found.extend(reader.behind(at, unit));
        }
        found.extend(before);
        at += unit.length;
    }
    found
}

#[derive(Clone, Copy)]
struct Reader<'a> {
    letters: &'a [char],
}

#[derive(Clone, Copy)]
struct Number {
    from: usize,
    value: Option<f64>,
}

/// What joins a figure to the one before it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Joint {
    Range,
    Also,
}

/// What stands close before a figure.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Close {
    Nothing,
    Minus,
    /// A letter: the figure is part of a word.
    Word,
    /// Another figure, with a sign between that says nothing known.
    Figure,
}

impl Reader<'_> {
    /// What stands before a unit, in the order of the text.
    fn before(self, unit_at: usize, unit: Spelled) -> Vec<Figures> {
        let end = unit_at + unit.length;
        let mut groups = Vec::new();
        let Some(mut number) = self.number(self.end_of_figure(unit_at)) else { return groups };
        let mut values = vec![number.value];
        while let Some((joint, next)) = self.joined(number.from) {
            if joint == Joint::Also {
                groups.push(self.group(number.from, end, unit, &values));
                values.clear();
            }
            values.insert(0, next.value);
            number = next;
        }
        let close = self.close(number.from);
        if close == Close::Figure {
            values = vec![None];
        }
        if let (Close::Minus, Some(first)) = (close, values.first_mut()) {
            *first = first.map(|value| -value);
            number.from -= 1;
        }
        groups.push(self.group(number.from, end, unit, &values));
        groups.reverse();
        if matches!(unit.unit, Unit::Other(_)) {
            groups.retain(|group| close != Close::Word && !group.values.is_empty());
        }
        groups
    }

    /// The figure that stands behind a unit: "Nm 120", "(kN): 22". What is no torque or load is read before its unit alone.
    fn behind(self, unit_at: usize, unit: Spelled) -> Option<Figures> {
        let from = unit_at + unit.length;
        let is_between =
            |letter: &&char| matches!(letter, ' ' | '\u{a0}' | ':' | '=') || ROUND.contains(letter);
        let from = from + self.letters[from..].iter().take_while(is_between).count();
        let digits = self.letters[from..].iter().take_while(|letter| letter.is_numeric()).count();
        let is_one_of_word = self.letters.get(from + digits).is_some_and(|next| next.is_alphabetic());
        let is_judged = matches!(unit.unit, Unit::Torque | Unit::Load) && unit.length > 1;
        if digits == 0 || is_one_of_word || !is_judged {
            return None;
        }
        let is_in_figure =
            |letter: &&char| letter.is_numeric() || matches!(letter, '.' | ',' | '–' | '-' | '…');
        let length = self.letters[from..].iter().take_while(is_in_figure).count();
        let end = self.back(from + length, |letter| !letter.is_numeric());
        let number = self.number(end)?;
        let mut values = vec![number.value];
        if let Some((Joint::Range, least)) = self.joined(number.from).filter(|(_, least)| least.from >= from)
        {
            values.insert(0, least.value);
        }
        Some(self.group(unit_at, end, unit, &values))
    }

    fn group(self, from: usize, end: usize, unit: Spelled, values: &[Option<f64>]) -> Figures {
        let values: Option<Vec<f64>> = values.iter().map(|value| Some((*value)? * unit.factor)).collect();
        let written: String = self.letters[from..end].iter().collect();
        let written = written.split_whitespace().collect::<Vec<_>>().join(" ");
        Figures { at: from, values: values.unwrap_or_default(), unit: unit.unit, written }
    }

    /// Where the figure ends that stands before a unit: blanks, brackets or one hyphen may stand between.
    fn end_of_figure(self, unit_at: usize) -> usize {
        let is_between = |letter: char| letter.is_whitespace() || ROUND.contains(&letter);
        let mut end = self.back(unit_at, is_between);
        while let Some(name) = self.name_before(end) {
            end = self.back(end - name, is_between);
        }
        match self.letters[..end] {
            [.., figure, '-' | '‑' | '.'] if end == unit_at && figure.is_numeric() => end - 1,
            _ => end,
        }
    }

    /// How long the name of a letter is, such as "&nbsp;", that ends before a letter.
    fn name_before(self, end: usize) -> Option<usize> {
        let before = self.letters[..end].strip_suffix(&[';'])?;
        let far = before.iter().rev().take(LONGEST_NAME).position(|letter| *letter == '&')?;
        let from = before.len() - 1 - far;
        let name = entity(&self.letters[from..])?.chars().count();
        (from + name == end).then_some(name)
    }

    /// The number that ends before a letter.
    fn number(self, end: usize) -> Option<Number> {
        let mut from = end;
        loop {
            match self.letters[..from] {
                [.., last] if last.is_numeric() => from -= 1,
                [.., figure, '.' | ',' | '٫' | '⁄'] if from < end && figure.is_numeric() => from -= 1,
                _ => break,
            }
        }
        (from < end).then(|| Number { from, value: value(&self.letters[from..end]) })
    }

    /// The number before the one that begins at a letter, where something joins the two.
    fn joined(self, from: usize) -> Option<(Joint, Number)> {
        let limited = || self.sign(self.most(from)?).or_else(|| self.word(self.most(from)?));
        let (joint, start) = self.sign(from).or_else(|| self.word(from)).or_else(limited)?;
        let end = self.back(start, is_blank);
        let number = self.number(end)?;
        let is_close = end == start && start + 1 == from;
        (is_close || self.close(number.from) != Close::Word).then_some((joint, number))
    }

    /// Where a sign of a range begins that stands before a letter.
    fn sign(self, from: usize) -> Option<(Joint, usize)> {
        let end = self.back(from, is_blank);
        let dots = end - self.back(end, |letter| letter == '.');
        let last = *self.letters[..end].last()?;
        let start = if dots >= 2 { end - dots } else { RANGE.contains(&last).then(|| end - 1)? };
        let before = self.back(start, is_blank);
        let is_point_of_list = self.letters[before..start].contains(&'\n');
        let is_about = last == '~' && before < start && end == from;
        (!is_point_of_list && !is_about).then_some((Joint::Range, start))
    }

    /// Where a word begins that joins the number at a letter to the one before it.
    fn word(self, from: usize) -> Option<(Joint, usize)> {
        let (start, word) = self.last_word(from)?;
        if ALSO.contains(&word.as_str()) {
            return Some((Joint::Also, start));
        }
        let up = self.last_word(start).filter(|(_, before)| before == "up");
        TO.contains(&word.as_str()).then(|| (Joint::Range, up.map_or(start, |(start, _)| start)))
    }

    /// Where "max." or "at most" begins that stands before a letter.
    fn most(self, from: usize) -> Option<usize> {
        let end = self.back(from, is_blank);
        let point = usize::from(self.letters[..end].ends_with(&['.']));
        let start = self.back(end - point, char::is_alphabetic);
        let word: String = self.letters[start..end - point].iter().collect();
        let at = self.last_word(start).filter(|(_, before)| before == "at");
        MOST.contains(&word.to_lowercase().as_str()).then(|| at.map_or(start, |(start, _)| start))
    }

    /// The word that stands before a letter, with blanks round it.
    fn last_word(self, from: usize) -> Option<(usize, String)> {
        let end = self.back(from, is_blank);
        let start = self.back(end, char::is_alphabetic);
        let is_apart = end < from && self.letters[..start].last()?.is_whitespace();
        is_apart.then(|| (start, self.letters[start..end].iter().collect::<String>().to_lowercase()))
    }

    fn close(self, from: usize) -> Close {
        let (before, earlier) = match self.letters[..from] {
            [.., earlier, before] => (before, Some(earlier)),
            [before] => (before, None),
            [] => return Close::Nothing,
        };
        let is_figure = earlier.is_some_and(char::is_numeric);
        match before {
            _ if before.is_whitespace() || ROUND.contains(&before) || before == '×' => Close::Nothing,
            _ if before.is_alphabetic() => Close::Word,
            _ if DASHES.contains(&before) && earlier.is_some_and(char::is_alphanumeric) => Close::Word,
            _ if DASHES.contains(&before) => Close::Minus,
            '.' | ',' if !earlier.is_some_and(char::is_alphabetic) => Close::Figure,
            _ if is_figure => Close::Figure,
            _ => Close::Nothing,
        }
    }

    /// Where letters of a kind begin that stand before a letter.
    fn back(self, from: usize, is_one: impl Fn(char) -> bool) -> usize {
        from - self.letters[..from].iter().rev().take_while(|letter| is_one(**letter)).count()
    }
}

/// What parts a figure from what joins it to the one before: signs of Markdown too.
fn is_blank(letter: char) -> bool {
    letter.is_whitespace() || matches!(letter, '*' | '_' | '`')
}

/// A number as people write one, with a point or a comma; `None` for thousands, fractions, powers.
fn value(letters: &[char]) -> Option<f64> {
    let plain: String = letters.iter().map(|letter| plain(*letter)).collect::<Option<_>>()?;
    let is_filled = plain.len() > 1 && plain.starts_with('0') && !plain.starts_with("0.");
    if is_filled { None } else { plain.parse().ok() }
}

fn plain(letter: char) -> Option<char> {
    if matches!(letter, '.' | ',' | '٫') {
        return Some('.');
    }
    let digit = |zero: &char| char::from_digit(u32::from(letter).checked_sub(u32::from(*zero))?, 10);
    ZEROS.iter().find_map(digit)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<(Vec<f64>, Unit)> {
        figures(text).into_iter().map(|found| (found.values, found.unit)).collect()
    }

    fn is_torque(text: &str, values: &[f64]) {
        assert_eq!(found(text), [(values.to_vec(), Unit::Torque)], "{text}");
    }

    fn is_load(text: &str, values: &[f64]) {
        assert_eq!(found(text), [(values.to_vec(), Unit::Load)], "{text}");
    }

    #[test]
    fn figures_are_numbers_of_their_own() {
        is_torque("Screw to 80–90 N·m.", &[80.0, 90.0]);
        is_torque("Screw to 80 to 90\u{a0}N·m", &[80.0, 90.0]);
        is_torque("(85Nm)", &[85.0]);
        is_load("2,5 kN at most", &[2.5]);
        assert_eq!(found("a 5 mm hex"), [(vec![5.0], Unit::Other("mm"))]);
        assert_eq!(found("Thread M36x2 mm, rope 7x19, ST-4100 m, A4, 8.8.1"), []);
    }

    /// How ranges are written and mistyped: common practice, no source.
    #[test]
    fn whatever_stands_between_least_and_most_both_are_read() {
        for between in
            ["…", "...", "..", "/", "-", "‑", "—", "−", " – ", " - ", " … ", " ... ", "~", "÷", " up to "]
        {
            is_torque(&format!("Screw 80{between}100 N·m"), &[80.0, 100.0]);
        }
        for between in [" to max. ", " to at most ", "–max.", " – MAX ", " to maximum "] {
            is_torque(&format!("Screw 80{between}100 N·m"), &[80.0, 100.0]);
        }
        is_torque("**80** bis **100** N·m", &[80.0, 100.0]);
        let each = [(vec![80.0], Unit::Torque), (vec![100.0], Unit::Torque)];
        assert_eq!(found("80 or 100 N·m"), each);
        assert_eq!(found("80 N·m to 100 N·m"), each);
    }

    #[test]
    fn whatever_stands_before_a_figure_it_is_read() {
        for before in
            ["max.", "max", "ca.", "~", "≤", "<", "=", "Torque:", "Screw M36x2 – ", "**", "|2|", "1. "]
        {
            is_torque(&format!("{before}100 N·m"), &[100.0]);
        }
        is_load("A puller of 2×18 kN", &[18.0]);
        is_load("an 18-kN puller", &[18.0]);
        is_load("Pull.\n- 18 kN at most", &[18.0]);
        is_load("step 2\n- 18 kN at most", &[18.0]);
        is_torque("0.1 kN·m", &[100.0]);
        is_torque("٨٠ N·m", &[80.0]);
        is_torque("８０ N·m", &[80.0]);
    }

    #[test]
    fn a_minus_counts() {
        is_load("Tension -18 kN", &[-18.0]);
        is_load("−18 kN", &[-18.0]);
    }

    #[test]
    fn what_can_not_be_read_is_found_all_the_same() {
        for text in
            ["18½ kN", "½ kN", "1.000,5 kN", "18² kN", ".5 kN", "18:5 kN", "18'000 kN", "000 kN", "1⁄2 kN"]
        {
            is_load(text, &[]);
        }
        assert_eq!(found("18½ mm"), []);
    }

    #[test]
    fn other_spellings_are_read() {
        for text in
            ["120 newton metres", "120 nm", "(Nm): 120", "Nm 120", "N·m = 120", "120 N x m", "12 daN·m"]
        {
            is_torque(text, &[120.0]);
        }
        is_torque("120&nbsp;N&middot;m", &[120.0]);
        is_torque("torque in Nm: 80–90.", &[80.0, 90.0]);
        is_torque("Screw 0120 N·m", &[]);
        for text in ["22 kn", "22000 N", "22 kilonewtons", "kN: 22"] {
            is_load(text, &[22.0]);
        }
        assert_eq!(found("2200 kg")[0].1, Unit::Mass);
        assert_eq!(found("Screw in kN. 2 passes; type N 12, t 3, kN 2x"), []);
    }

    #[test]
    fn a_figure_stands_where_it_is_found() {
        let of = |text: &str| figures(text).into_iter().map(|found| (found.at, found.written)).next();
        assert_eq!(of("Screw max.100\u{a0}N m."), Some((10, "100 N m".to_owned())));
        assert_eq!(of("Bolts 80 – 90 Nm"), Some((6, "80 – 90 Nm".to_owned())));
    }
}
