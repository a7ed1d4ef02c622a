//! The codes of findings: what each finds, why, and how to put it right.

use super::names::TEXTS;

/// A code of findings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    /// The code, such as `unknown-key`.
    pub code: &'static str,
    /// What it finds.
    pub finds: String,
    /// Why it is told.
    pub why: String,
    /// How to put it right.
    pub help: String,
}

/// Every code, in the order of the alphabet.
///
/// ```
/// let codes = fittingcards::explain::codes();
/// let zero = codes.iter().find(|code| code.code == "zero").expect("a code");
/// assert!(zero.finds.starts_with("a zero"));
/// ```
#[must_use]
pub fn codes() -> Vec<Code> {
    TEXTS.iter().map(|(code, text)| taken_apart(code, text)).collect()
}

/// A text of three paragraphs: "`code`: what it finds", "Why: …", "To put it right: …". A paragraph between
/// them belongs to the one before.
fn taken_apart(code: &'static str, text: &str) -> Code {
    let mut parts = [String::new(), String::new(), String::new()];
    let mut at = 0;
    let first = format!("`{code}`: ");
    for paragraph in text.split("\n\n") {
        let paragraph = paragraph.split_whitespace().collect::<Vec<_>>().join(" ");
        let starts = [first.as_str(), "Why: ", "To put it right: "];
        let start = (at..3).find_map(|part| Some((part, paragraph.strip_prefix(starts[part])?)));
        match start {
            Some((part, rest)) => {
                at = part;
                parts[part].push_str(rest);
            }
            None => {
                parts[at].push(' ');
                parts[at].push_str(&paragraph);
            }
        }
    }
    let [finds, why, help] = parts;
    Code { code, finds, why, help }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_paragraph_between_belongs_to_the_one_before() {
        let code = taken_apart(
            "odd",
            "`odd`: something\nodd.\n\nWhy: so.\n\nAnd so.\n\nTo put it right: mend it.\n",
        );
        let expected = ("something odd.", "so. And so.", "mend it.");
        assert_eq!((code.finds.as_str(), code.why.as_str(), code.help.as_str()), expected);
    }
}
