//! Lines of a text, and pieces of it that others stand for.

use std::ops::Range;

/// A piece of a text and what stands for it.
pub(super) type Edit = (Range<usize>, String);

/// A text with all edits made. What goes in at one place goes in by the order of the edits.
pub(super) fn edited(text: &str, mut edits: Vec<Edit>) -> String {
    edits.sort_by_key(|(range, _)| (range.start, range.end));
    let mut done = String::with_capacity(text.len() + 64);
    let mut from = 0;
    for (range, new) in edits {
        done.push_str(text.get(from..range.start).unwrap_or_default());
        done.push_str(&new);
        from = from.max(range.end);
    }
    done.push_str(text.get(from..).unwrap_or_default());
    done
}

/// Where the line begins that a place stands in.
pub(super) fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(0, |end| end + 1)
}

/// Where the line after it begins.
pub(super) fn behind_line(text: &str, at: usize) -> usize {
    text[at..].find('\n').map_or(text.len(), |end| at + end + 1)
}

/// The comment that stands in a line by itself above another.
pub(super) fn comment_above(text: &str, line: usize) -> Option<&str> {
    let above = text[..line].lines().next_back()?.trim();
    above.starts_with('#').then_some(above)
}

/// The comment at the end of a line, from a place in it on; none where a comma or bracket alone stands there.
pub(super) fn comment_behind(text: &str, at: usize) -> Option<&str> {
    let rest = text[at..].lines().next()?;
    let comment = rest.trim_start_matches([',', ']', '}', ' ', '\t']).trim_end();
    comment.starts_with('#').then_some(comment)
}
