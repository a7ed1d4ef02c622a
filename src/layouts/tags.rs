//! The tags of the template library in a layout, found without compiling it.

/// A tag such as `{% for part in parts -%}` or `{{ number }}`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Tag<'t> {
    /// Where it begins and ends, in bytes.
    pub start: usize,
    pub end: usize,
    /// What stands between its marks, without the signs that trim space.
    pub inside: &'t str,
    /// Whether it does something, `{% %}`, or puts out a value, `{{ }}`.
    pub acts: bool,
    /// Whether it trims the space before it, and behind it.
    pub trims_before: bool,
    pub trims: bool,
}

impl<'t> Tag<'t> {
    /// Its first word, which says what it does; empty for one that puts out a value.
    pub fn word(&self) -> &'t str {
        if self.acts { word(self.inside) } else { "" }
    }

    /// The word after the first, and what stands behind that.
    pub fn name(&self) -> (&'t str, &'t str) {
        let behind = |text: &'t str| {
            let (text, word) = (text.trim_start(), word(text));
            (word, text[word.len()..].trim_start())
        };
        behind(behind(self.inside).1)
    }

    /// Whether it makes a list within an expression, such as `[x for x in all]`.
    pub fn makes_a_list(&self) -> bool {
        let words = words(self.inside);
        let mut behind = words.into_iter().skip(usize::from(self.word() == "for"));
        behind.any(|(at, word)| {
            let before = self.inside[..at].trim_end();
            let after = self.inside[at + word.len()..].trim_start();
            word == "for" && !before.ends_with('.') && !after.starts_with('=')
        })
    }
}

/// The tags of a layout in their order; comments and raw text have none.
pub(super) fn tags(text: &str) -> Vec<Tag<'_>> {
    let (mut tags, mut at) = (Vec::new(), 0);
    while let Some((start, kind)) = next(text, at) {
        let inside = start + 2;
        let Some(end) = end(text, inside, kind) else { break };
        at = end;
        if kind == '#' {
            continue;
        }
        let whole = &text[inside..end - 2];
        let trims = whole.ends_with('-');
        let whole = whole.strip_suffix('-').unwrap_or(whole);
        let tag = Tag {
            start,
            end,
            inside: whole.strip_prefix('-').unwrap_or(whole),
            acts: kind == '%',
            trims_before: whole.starts_with('-'),
            trims,
        };
        if tag.word() == "raw" {
            at = end_of_raw(text, end);
        } else {
            tags.push(tag);
        }
    }
    tags
}

/// Where the next tag or comment begins, and its second letter.
fn next(text: &str, from: usize) -> Option<(usize, char)> {
    let opened = text[from..].match_indices('{').map(|(at, _)| from + at);
    let mut kinds = opened.filter_map(|at| text[at + 1..].chars().next().map(|kind| (at, kind)));
    kinds.find(|(_, kind)| matches!(kind, '{' | '%' | '#'))
}

/// Where a tag or comment ends; what stands in quotes ends no tag.
fn end(text: &str, from: usize, kind: char) -> Option<usize> {
    let closing = match kind {
        '{' => "}}",
        '%' => "%}",
        _ => return text[from..].find("#}").map(|at| from + at + 2),
    };
    let (mut quote, mut escaped) = (None, false);
    for (at, letter) in text[from..].char_indices() {
        match quote {
            Some(_) if escaped => escaped = false,
            Some(_) if letter == '\\' => escaped = true,
            Some(opened) if letter == opened => quote = None,
            Some(_) => {}
            None if matches!(letter, '"' | '\'' | '`') => quote = Some(letter),
            None if text[from + at..].starts_with(closing) => return Some(from + at + 2),
            None => {}
        }
    }
    None
}

fn end_of_raw(text: &str, from: usize) -> usize {
    let mut ends = text[from..].match_indices("{%").map(|(at, _)| from + at);
    let end = ends.find_map(|at| {
        let inside = text[at + 2..].strip_prefix('-').unwrap_or(&text[at + 2..]);
        (word(inside) == "endraw").then(|| end(text, at + 2, '%'))?
    });
    end.unwrap_or(text.len())
}

fn word(text: &str) -> &str {
    let text = text.trim_start();
    &text[..text.find(|letter| !is_of_word(letter)).unwrap_or(text.len())]
}

fn is_of_word(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// The words outside quotes, each with its place.
fn words(inside: &str) -> Vec<(usize, &str)> {
    let (mut words, mut quote, mut begun) = (Vec::new(), None, None);
    for (at, letter) in inside.char_indices().chain([(inside.len(), ' ')]) {
        let in_word = quote.is_none() && is_of_word(letter);
        match (begun, in_word) {
            (None, true) => begun = Some(at),
            (Some(start), false) => {
                words.push((start, &inside[start..at]));
                begun = None;
            }
            _ => {}
        }
        match quote {
            Some(opened) if letter == opened => quote = None,
            None if matches!(letter, '"' | '\'' | '`') => quote = Some(letter),
            _ => {}
        }
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_are_found_and_comments_raw_text_and_quotes_left_alone() {
        let layout = "a {{ x }}{# {% if %} #}{%- set y = \"%}\" -%}{% raw %}{{ z }}{% endraw %}{% endfor %}";
        let found: Vec<(&str, &str, bool)> =
            tags(layout).iter().map(|tag| (tag.word(), tag.inside.trim(), tag.trims)).collect();
        assert_eq!(found, [("", "x", false), ("set", "set y = \"%}\"", true), ("endfor", "endfor", false)]);
        assert_eq!(tags(layout)[1].name(), ("y", "= \"%}\" "));
    }

    #[test]
    fn a_list_made_in_an_expression_is_told_from_a_loop() {
        let makes = |layout| tags(layout)[0].makes_a_list();
        assert!(makes("{{ [x for x in y] }}") && makes("{% for a in [x for x in y] %}"));
        assert!(!makes("{% for a in b %}") && !makes("{{ a.for }}") && !makes("{{ \"x for y\" }}"));
        assert!(!makes("{{ <label for={a}/> }}"));
    }
}
