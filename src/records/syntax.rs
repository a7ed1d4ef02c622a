//! What keeps a text from being YAML, in words for people who keep records.

/// What is wrong, and what puts it right.
pub(super) struct Fault {
    pub(super) line: u32,
    pub(super) column: u32,
    pub(super) message: String,
    pub(super) help: &'static str,
}

/// Part of a parser's words, what they mean here, and what puts it right; the first that fits.
const FAULTS: [(&str, &str, &str); 10] = [
    (
        "mapping values are not allowed",
        "a `:` stands where none may stand",
        "text that has `: ` in it goes into quotes; a space stands behind the `:` of a key; keys of one record start in \
         one column",
    ),
    (
        "simple key expect",
        "a key without its `:`, or text that goes on in a line of its own",
        "write `key: value`; text over several lines goes into quotes",
    ),
    (
        "invalid indentation in quoted scalar",
        "a text in quotes is not closed in its line",
        "close the quotes; where the text goes on in the next line, indent that line",
    ),
    (
        "illegal placement of ':'",
        "a bracket before it is not closed",
        "close `[` by `]`, with commas between; text that has `:` in it goes into quotes",
    ),
    (
        "did not find expected ',' or",
        "a bracket before it is not closed",
        "close `[` by `]` and `{` by `}`, with commas between",
    ),
    (
        "did not find expected key",
        "this line is indented otherwise than the lines that it belongs to",
        "start keys of one record, and dashes of one list, in one column",
    ),
    ("unknown anchor", "the sign `*` has a meaning of its own in YAML", "put the text into quotes"),
    ("unexpected character", "a text can't start with this sign", "put the text into quotes"),
    ("invalid trailing content", "text goes on behind its closing quote", "put the whole text into quotes"),
    (
        "unknown escape character",
        "the sign `\\` has a meaning of its own between double quotes",
        "write it twice, or put the text into single quotes",
    ),
];

/// What a parser found at a line and column of a text.
pub(super) fn fault((line, column): (u32, u32), words: &str, text: &str) -> Fault {
    if let Some((line, column)) = indenting_tab(text, line) {
        let message = "a tab stands where only spaces may stand".to_owned();
        return Fault { line, column, message, help: "indent with spaces: YAML takes no tabs" };
    }
    let known = FAULTS.iter().find(|(part, ..)| words.contains(part));
    let (line, column) = match known {
        Some(("simple key expect", ..)) => without_colon(text, line).unwrap_or((line, column)),
        _ => (line, column),
    };
    let (message, help) = known.map_or_else(
        || {
            (
                words.to_owned(),
                "look here and at the line above: indentation, quotes, `: ` after a key, brackets in pairs",
            )
        },
        |(_, message, help)| ((*message).to_owned(), *help),
    );
    Fault { line, column, message, help }
}

/// The last line before this one that has text and no key: there the parser began to look for one.
fn without_colon(text: &str, line: u32) -> Option<(u32, u32)> {
    let before: Vec<(u32, &str)> = (1..line).zip(text.lines()).collect();
    let is_text = |line: &str| !line.trim().is_empty() && !line.trim_start().starts_with('#');
    let (number, found) = before.into_iter().rev().find(|(_, line)| is_text(line))?;
    let has_key = found.contains(": ") || found.trim_end().ends_with(':');
    let column = found.chars().take_while(|letter| letter.is_whitespace()).count() + 1;
    (!has_key).then(|| (number, u32::try_from(column).unwrap_or(u32::MAX)))
}

/// The first tab that indents a line, where it stands on this line or the next.
fn indenting_tab(text: &str, line: u32) -> Option<(u32, u32)> {
    let lines = (line.max(1)..).zip(text.lines().skip((line as usize).saturating_sub(1))).take(2);
    lines.into_iter().find_map(|(number, line)| {
        let column =
            line.chars().take_while(|letter| letter.is_whitespace()).position(|letter| letter == '\t')?;
        Some((number, u32::try_from(column + 1).unwrap_or(u32::MAX)))
    })
}

#[cfg(test)]
mod tests {
    use crate::records::node::documents;
    use crate::source::FilePath;

    /// Each fault as the parser meets it: the line and column of the finding, and a word of what it says.
    #[test]
    fn common_slips_are_told_in_plain_words() {
        let slips = [
            ("number: F-2\nname Dead-end\nfamily: sleeve\n", (2, 1), "without its `:`"),
            ("steps:\n  - a\n  b\n  - c\n", (3, 3), "goes on in a line of its own"),
            ("number: F-2\n name: Dead-end\n", (2, 6), "stands where none may"),
            ("number: F-2\nname: Dead: end\n", (2, 11), "stands where none may"),
            ("number:F-2\nname: x\n", (2, 5), "stands where none may"),
            ("number: F-2\n\tname: x\n", (2, 1), "a tab"),
            ("number: F-2\nname: \"Dead-end\nfamily: sleeve\n", (2, 7), "not closed in its line"),
            ("parts: [P-1, P-2\nfamily: sleeve\n", (2, 7), "a bracket before it"),
            ("parts: {a: 1, b: 2\nfamily: sleeve\n", (2, 7), "a bracket before it"),
            ("steps:\n- \"a\"\n - \"b\"\n", (3, 2), "indented otherwise"),
            ("name: *x\n", (1, 7), "`*`"),
            ("name: @x\n", (1, 7), "start with this sign"),
            ("name: \"a\" b\n", (1, 11), "behind its closing quote"),
            ("name: \"a\\q\"\n", (1, 7), "`\\`"),
        ];
        for (text, place, word) in slips {
            let (_, trouble) = documents(text);
            let trouble = trouble.unwrap_or_else(|| panic!("{text:?} is read"));
            let finding = trouble.finding(&FilePath::catalogue("fittings/x.yaml"));
            assert!(finding.message.contains(word), "{text:?}: {}", finding.message);
            assert_eq!((finding.place.line, finding.place.column), place, "{text:?}");
        }
    }
}
