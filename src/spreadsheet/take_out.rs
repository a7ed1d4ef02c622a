//! Taking values out of a text with their comments: one at the line that goes, goes with it, all others stay with theirs.

use super::lines::{Edit, behind_line, comment_above, comment_behind, line_start};
use std::ops::Range;

/// What takes values out.
#[derive(Debug, Default)]
pub(super) struct TakenOut {
    /// The edits.
    pub(super) edits: Vec<Edit>,
    /// The comments that stay, of which nobody can tell whether they were about what goes.
    pub(super) comments: Vec<String>,
}

impl TakenOut {
    fn take(&mut self, range: Range<usize>) {
        self.edits.push((range, String::new()));
    }

    fn keep(&mut self, comment: Option<&str>) {
        self.comments.extend(comment.map(str::to_owned));
    }
}

/// Takes out whole lines.
pub(super) fn lines_out(text: &str, of: Range<usize>) -> TakenOut {
    let mut out = TakenOut::default();
    let lines = line_start(text, of.start)..behind_line(text, of.end);
    out.keep(comment_above(text, lines.start));
    out.take(lines);
    out
}

/// Takes entries out of a list or mapping in brackets; `whole` is where it stands, `entries` where they do.
pub(super) fn entries_out(
    text: &str,
    whole: Range<usize>,
    entries: &[Range<usize>],
    gone: Range<usize>,
) -> TakenOut {
    let mut out = TakenOut::default();
    let Some(last) = entries.get(gone.clone()).and_then(<[Range<usize>]>::last) else { return out };
    let (first, next) = (&entries[gone.start], entries.get(gone.end));
    let before = gone.start.checked_sub(1).map(|nth| entries[nth].end);
    if !has_comments(text, whole) {
        out.take(match (next, before) {
            (Some(next), _) => first.start..next.start,
            (None, Some(before)) => before..last.end,
            (None, None) => first.start..last.end,
        });
        return out;
    }
    let mut from = gone.start;
    while from < gone.end {
        let in_line = |nth: &usize| !text[entries[*nth - 1].end..entries[*nth].start].contains('\n');
        let to = from + 1 + (from + 1..gone.end).take_while(in_line).count();
        of_one_line(text, entries, from..to, &mut out);
        from = to;
    }
    // No comma stays behind what is last now, unless that comma went already.
    if let (None, Some(before)) = (next, before) {
        let comma = before + text[before..].len() - text[before..].trim_start().len();
        if text[comma..].starts_with(',') && out.edits.iter().all(|(range, _)| !range.contains(&comma)) {
            out.take(comma..comma + 1);
        }
    }
    out
}

/// Takes entries out that begin in one line.
fn of_one_line(text: &str, entries: &[Range<usize>], gone: Range<usize>, out: &mut TakenOut) {
    let (start, end) = (entries[gone.start].start, entries[gone.end - 1].end);
    let is_line = |from: usize, to: usize| !text[from..to].contains('\n');
    let before = gone.start.checked_sub(1).map(|nth| entries[nth].end);
    if let Some(before) = before.filter(|before| is_line(*before, start)) {
        return out.take(before..end);
    }
    if let Some(next) = entries.get(gone.end).filter(|next| is_line(end, next.start)) {
        return out.take(start..next.start);
    }
    let line = line_start(text, start);
    let behind = text[end..].lines().next().unwrap_or_default().trim_start_matches(',').trim();
    if text[line..start].trim().is_empty() && (behind.is_empty() || behind.starts_with('#')) {
        out.keep(comment_above(text, line));
        return out.take(line..behind_line(text, end));
    }
    // A bracket stands in the line too, and stays there with its comment.
    out.keep(comment_behind(text, end));
    let comma = usize::from(text[end..].starts_with(','));
    out.take(start..end + comma);
}

/// Whether a comment may stand in a piece of several lines, or at the end of its last.
fn has_comments(text: &str, of: Range<usize>) -> bool {
    text[of.clone()].contains('\n') && text[of.start..behind_line(text, of.end)].contains('#')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::records::{LaidShape, laid};
    use crate::spreadsheet::lines::edited;

    /// A list in brackets without some of its entries, and the comments that are told.
    fn without(text: &str, gone: Range<usize>) -> (String, Vec<String>) {
        let list = &laid(text).unwrap()[0];
        let LaidShape::List(items) = &list.shape else { panic!("no list") };
        let entries: Vec<Range<usize>> = items.iter().map(|item| item.start..item.end).collect();
        let out = entries_out(text, list.start..list.end, &entries, gone);
        (edited(text, out.edits), out.comments)
    }

    // Each expected text is written by hand.
    #[test]
    fn comments_stay_with_their_values() {
        let lines = "[\n  a, # of a\n  b, # of b\n  c # of c\n]\n";
        for (gone, expected) in [
            (0..1, "[\n  b, # of b\n  c # of c\n]\n"),
            (1..2, "[\n  a, # of a\n  c # of c\n]\n"),
            (2..3, "[\n  a, # of a\n  b # of b\n]\n"),
            (1..3, "[\n  a # of a\n]\n"),
        ] {
            assert_eq!(without(lines, gone), (expected.to_owned(), vec![]));
        }
        let pairs = "[a, b, # of both\n  c, d] # of all\n";
        for (gone, expected) in [
            (0..1, "[b, # of both\n  c, d] # of all\n"),
            (1..2, "[a, # of both\n  c, d] # of all\n"),
            (3..4, "[a, b, # of both\n  c] # of all\n"),
            (1..3, "[a, # of both\n  d] # of all\n"),
        ] {
            assert_eq!(without(pairs, gone), (expected.to_owned(), vec![]));
        }
    }

    #[test]
    fn a_comment_that_may_be_of_what_goes_stays_by_itself_and_is_told() {
        let (is, told) = without("[a,\n  b, # not the old one\n  c] # cone\n", 2..3);
        assert_eq!(
            (is.as_str(), told),
            ("[a,\n  b # not the old one\n  ] # cone\n", vec!["# cone".to_owned()])
        );
        let (is, told) = without("[a, # first\n  b\n]\n", 0..1);
        assert_eq!((is.as_str(), told), ("[ # first\n  b\n]\n", vec!["# first".to_owned()]));
        let (is, told) = without("[\n  a,\n  # next\n  b,\n  c\n]\n", 1..2);
        assert_eq!((is.as_str(), told), ("[\n  a,\n  # next\n  c\n]\n", vec!["# next".to_owned()]));
    }

    #[test]
    fn a_list_without_comments_stays_in_its_lines() {
        assert_eq!(without("[a, b, c] # all\n", 2..3).0, "[a, b] # all\n");
        assert_eq!(without("[a, b, c] # all\n", 0..2).0, "[c] # all\n");
        assert_eq!(without("[a,\n  b]\n", 1..2).0, "[a]\n");
    }
}
