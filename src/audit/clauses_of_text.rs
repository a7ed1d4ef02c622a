//! The sentences and clauses of a text, as words in small letters.

/// A word of a clause.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ClauseWord {
    /// Letters of the text before it.
    pub(super) at: usize,
    /// The word in small letters, with a plain apostrophe.
    pub(super) text: String,
}

/// Words that begin another clause.
const JOINING: [&str; 3] = ["and", "then", "but"];
/// Signs that end a clause, and a sentence too where nothing small follows a point.
const ENDING: [char; 5] = ['.', ';', '!', '?', '\n'];
/// Signs that end a clause alone.
const PARTING: [char; 11] = [',', ':', '(', ')', '[', ']', '/', '|', '–', '—', '…'];

/// The clauses of a text: what stands between signs, or before "and", "then" and "but".
pub(super) fn clauses(text: &str) -> Vec<Vec<ClauseWord>> {
    let letters: Vec<char> = text.chars().collect();
    let mut clauses = vec![Vec::new()];
    let mut at = 0;
    while at < letters.len() {
        let length = letters[at..].iter().take_while(|letter| is_in_word(**letter)).count();
        if length == 0 {
            if ENDING.contains(&letters[at]) || PARTING.contains(&letters[at]) || is_dash(&letters, at) {
                clauses.push(Vec::new());
            }
            at += 1;
            continue;
        }
        let text = letters[at..at + length].iter().collect::<String>().to_lowercase().replace('’', "'");
        if JOINING.contains(&text.as_str()) {
            clauses.push(Vec::new());
        } else if let Some(last) = clauses.last_mut() {
            last.push(ClauseWord { at, text });
        }
        at += length;
    }
    clauses.retain(|clause| !clause.is_empty());
    clauses
}

/// The sentences of a text, each with how many letters stand before it.
pub(super) fn sentences(text: &str) -> Vec<(usize, String)> {
    let letters: Vec<char> = text.chars().collect();
    let ends = (0..letters.len()).filter(|at| ends_sentence(&letters, *at)).chain([letters.len()]);
    let mut from = 0;
    let all = ends.map(|end| {
        let sentence = (from, letters[from..end].iter().collect());
        from = (end + 1).min(letters.len());
        sentence
    });
    all.collect()
}

/// The words of the sentence that has a letter of a text.
pub(super) fn sentence(text: &str, letter: usize) -> Vec<String> {
    let mut all = sentences(text).into_iter().rev();
    let sentence = all.find(|(from, _)| *from <= letter).map(|(_, sentence)| sentence).unwrap_or_default();
    clauses(&sentence).into_iter().flatten().map(|word| word.text).collect()
}

fn is_in_word(letter: char) -> bool {
    letter.is_alphanumeric() || matches!(letter, '\'' | '’')
}

/// A hyphen with blanks round it stands for a dash.
fn is_dash(letters: &[char], at: usize) -> bool {
    let is_blank = |letter: Option<&char>| letter.is_some_and(|letter| letter.is_whitespace());
    letters[at] == '-' && is_blank(letters[..at].last()) && is_blank(letters.get(at + 1))
}

/// The point of a figure or of "max." ends no sentence.
fn ends_sentence(letters: &[char], at: usize) -> bool {
    let behind = &letters[at + 1..];
    let next = behind.iter().find(|letter| !letter.is_whitespace());
    let is_apart = behind.first().is_none_or(|letter| letter.is_whitespace());
    match letters[at] {
        '.' => is_apart && next.is_none_or(|letter| !letter.is_lowercase()),
        sign => ENDING.contains(&sign),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clauses_end_at_signs_and_joining_words() {
        let found = |text: &str| -> Vec<String> {
            let words = |clause: Vec<ClauseWord>| clause.into_iter().map(|word| word.text);
            clauses(text).into_iter().map(|clause| words(clause).collect::<Vec<_>>().join(" ")).collect()
        };
        assert_eq!(found("Stop, DON’T loosen; wait and look."), ["stop", "don't loosen", "wait", "look"]);
        assert_eq!(found("Stop - then look"), ["stop", "look"]);
        assert_eq!(found("a *re-open* b"), ["a re open b"]);
        assert_eq!(clauses("Ab, cd")[1][0].at, 4);
    }

    #[test]
    fn a_sentence_is_found_by_a_letter_of_it() {
        let text = "Breaks at 67.6 kN. Load of approx. that many kN; wait.";
        assert_eq!(sentence(text, 10), ["breaks", "at", "67", "6", "kn"]);
        assert_eq!(sentence(text, 40), ["load", "of", "approx", "that", "many", "kn"]);
        assert_eq!(sentence(text, 49), ["wait"]);
    }
}
