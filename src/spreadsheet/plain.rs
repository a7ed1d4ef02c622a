//! How a single value is written in YAML: plainly where every reader reads the same, else in quotes.

use crate::records::{Content, Quoting, ScalarKind, nodes};

/// How long a line of a paragraph may be.
const WIDTH: usize = 100;

/// A text as YAML, written like the one that it replaces as far as it can be. `in_brackets` says whether it stands in a
/// list or mapping that is written in brackets.
pub(super) fn scalar(text: &str, like: Quoting, in_brackets: bool) -> String {
    let is_line = !text.contains('\n');
    match like {
        Quoting::Single if is_line => format!("'{}'", text.replace('\'', "''")),
        Quoting::Plain | Quoting::Block if is_line && is_plain(text, in_brackets) => text.to_owned(),
        _ => quoted(text),
    }
}

/// A paragraph below a `>-`, its lines indented by so many spaces.
pub(super) fn paragraph(text: &str, indent: usize, line_end: &str) -> String {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let last = lines.last_mut().map(|line| (line.chars().count(), line));
        match last {
            Some((0, line)) => line.push_str(word),
            Some((length, line)) if indent + length + 1 + word.chars().count() <= WIDTH => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    let space = " ".repeat(indent);
    let lines: Vec<String> = lines.iter().map(|line| format!("{line_end}{space}{line}")).collect();
    format!(">-{}", lines.concat())
}

/// In double quotes, with JSON's escapes, which are YAML's too.
fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// Whether a text stands for itself without quotes.
fn is_plain(text: &str, in_brackets: bool) -> bool {
    let yaml = if in_brackets { format!("[{text}]\n") } else { format!("k: {text}\n") };
    let read = nodes(&yaml);
    let [node] = read.as_slice() else { return false };
    let value = match &node.content {
        Content::List(items) if in_brackets && items.len() == 1 => &items[0],
        Content::Map(entries) if !in_brackets && entries.len() == 1 => &entries[0].value,
        _ => return false,
    };
    match &value.content {
        Content::Scalar(scalar) => {
            scalar.written == text && !scalar.quoted && scalar.kind != ScalarKind::Empty
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // By the YAML specification's rules for plain scalars, from memory.
    #[test]
    fn only_what_every_reader_takes_for_itself_goes_without_quotes() {
        let plain = |text, brackets| scalar(text, Quoting::Plain, brackets);
        for text in ["14.0", "Dead-end 95", "it's", "a:b", "2026-02-10", "öl", "true"] {
            assert_eq!(plain(text, false), text);
        }
        for text in
            ["", "~", "null", "a: b", "a #b", "- a", "[a", "{a", "&a", "*a", "!a", "\"a", "a\nb", "% a", "@a"]
        {
            assert_eq!(plain(text, false), serde_json::to_string(text).unwrap());
        }
        assert_eq!((plain("a, b", false), plain("a, b", true)), ("a, b".to_owned(), "\"a, b\"".to_owned()));
        assert_eq!(scalar("it's", Quoting::Single, false), "'it''s'");
        assert_eq!(scalar("a", Quoting::Double, false), "\"a\"");
    }

    #[test]
    fn a_paragraph_breaks_between_words_and_says_the_same() {
        let text = "word ".repeat(60);
        let written = paragraph(text.trim(), 2, "\n");
        assert!(written.lines().all(|line| line.chars().count() <= WIDTH));
        assert_eq!(nodes(&format!("k: {written}\n"))[0].get("k").unwrap().written(), Some(text.trim()));
    }
}
