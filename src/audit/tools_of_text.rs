//! Tools and threads that a text names by a size that has no unit: "die 26", "spanner 65", "M48x2".

use super::words_of_text::Word;

/// A tool or a thread with its size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SizedTool {
    /// What has the size.
    pub(super) what: Tool,
    /// Which of the words is the size.
    pub(super) index: usize,
    /// As written, with the tool before it.
    pub(super) written: String,
}

/// What a text names by a size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tool {
    Die,
    Spanner,
    Thread,
}

/// Words between a tool and its size.
const BETWEEN: [&str; 5] = ["no", "number", "size", "set", "of"];
/// Words behind a number that is no size: "with the die 2 times".
const COUNTED: [&str; 5] = ["times", "passes", "presses", "strokes", "turns"];

/// The tools and threads that a text names, in its order.
pub(super) fn tools(words: &[Word<'_>]) -> Vec<SizedTool> {
    (0..words.len()).flat_map(|index| tool(words, index)).collect()
}

/// The tool that stands at a word, once for each of its sizes; "26/34" are two.
fn tool(words: &[Word<'_>], index: usize) -> Vec<SizedTool> {
    let word = words[index];
    if is_thread(word.text) {
        return vec![SizedTool { what: Tool::Thread, index, written: word.text.to_owned() }];
    }
    let what = match word.text.to_lowercase().as_str() {
        "die" | "dies" => Tool::Die,
        "spanner" | "spanners" | "wrench" => Tool::Spanner,
        _ => return Vec::new(),
    };
    if word.ends && !word.tells {
        return Vec::new();
    }
    let behind = words[index + 1..].iter();
    let from =
        index + 1 + behind.take_while(|word| BETWEEN.contains(&word.text.to_lowercase().as_str())).count();
    let is_size = |at: usize| {
        words.get(at).is_some_and(|word| word.text.contains(|letter: char| letter.is_ascii_digit()))
    };
    let is_counted =
        words.get(from + 1).is_some_and(|next| COUNTED.contains(&next.text.to_lowercase().as_str()));
    if !is_size(from) || is_counted {
        return Vec::new();
    }
    let more = (from + 1..words.len()).take_while(|at| words[*at].attached && is_size(*at));
    let sized =
        |at: usize| SizedTool { what, index: at, written: format!("{} {}", word.text, words[at].text) };
    std::iter::once(from).chain(more).map(sized).collect()
}

/// Whether a word is a metric thread of ISO 965-1, with its pitch or without: "M12", "M48x2".
fn is_thread(word: &str) -> bool {
    let Some(size) = word.strip_prefix('M') else { return false };
    let (diameter, pitch) =
        size.split_once(['x', '×']).map_or((size, None), |(size, pitch)| (size, Some(pitch)));
    let is_number =
        |text: &str| text.parse::<f64>().is_ok() && text.starts_with(|first: char| first.is_ascii_digit());
    is_number(diameter) && pitch.is_none_or(is_number)
}

#[cfg(test)]
mod tests {
    use super::super::words_of_text::words;
    use super::*;

    fn found(text: &str) -> Vec<String> {
        tools(&words(text)).into_iter().map(|tool| tool.written).collect()
    }

    #[test]
    fn dies_spanners_and_threads_are_found_by_their_sizes() {
        assert_eq!(found("Press outward, die 26, turn 90°."), ["die 26"]);
        assert_eq!(
            found("Die: K26. Spanner 65 mm, M48x2 and M12."),
            ["Die K26", "Spanner 65", "M48x2", "M12"]
        );
        assert_eq!(found("die no. 26, dies 26/34"), ["die 26", "dies 26", "dies 34"]);
        assert_eq!(found("Screw M48×1.5"), ["M48×1.5"]);
    }

    #[test]
    fn what_is_no_size_is_not_found() {
        for text in [
            "Wipe the die. 26 wires",
            "with the die 2 times",
            "Mark it",
            "MA 12",
            "M",
            "the die is clean",
            "Mx2",
        ] {
            assert_eq!(found(text), [""; 0], "{text}");
        }
    }
}
