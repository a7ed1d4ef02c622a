//! A layout of the user's that tells how far it has come: each pass through a loop, a block, a component and the file
//! itself is counted, and each text that it keeps is measured. The built-in layouts need no counting.

use super::tags::{Tag, tags};

/// Names of the functions that count: a pass, the way into a file, block or component and out of it, a text kept.
pub(super) const STEP: &str = "layout_step";
pub(super) const INTO: &str = "layout_into";
pub(super) const OUT_OF: &str = "layout_out_of";
pub(super) const KEPT: &str = "layout_kept";
/// Name of the function that a value goes through when it is put out, and what stands round its expression.
pub(super) const PUT_OUT: &str = "layout_put_out";
const PUT_OUT_BEGINS: &str = "layout_put_out(of=(";
const PUT_OUT_SAYS: &str = "), said=\"";
const PUT_OUT_ENDS: &str = "\")";
/// So much of an expression is said of a value that is not there.
const LETTERS_SAID: usize = 60;

/// What a pass costs beside the bytes of what is passed through.
const A_PASS: usize = 64;

/// A layout with what counts put in. Lines stay the lines that they were.
pub(super) fn counted(text: &str) -> String {
    let tags = tags(text);
    let is_child = tags.iter().any(|tag| tag.word() == "extends");
    let mut out = String::with_capacity(text.len() * 2);
    if !is_child {
        out.push_str(&put_in(&pass(INTO, text.len()), false, false));
    }
    let mut written = 0;
    for (index, tag) in tags.iter().enumerate() {
        out.push_str(&text[written..tag.start]);
        if matches!(tag.word(), "endblock" | "endcomponent") {
            out.push_str(&put_in(&format!("{OUT_OF}()"), tag.trims_before, false));
        }
        out.push_str(&measured(text, tag));
        written = tag.end;
        if let Some(call) = behind(tag, &tags[..index], &tags[index + 1..]) {
            out.push_str(&put_in(&call, false, tag.trims));
        }
    }
    out.push_str(&text[written..]);
    if is_child { out } else { out + &put_in(&format!("{OUT_OF}()"), false, false) }
}

/// What counts behind a tag.
fn behind(tag: &Tag<'_>, earlier: &[Tag<'_>], later: &[Tag<'_>]) -> Option<String> {
    match tag.word() {
        "for" => Some(pass(STEP, length(tag, "for", later))),
        word @ ("block" | "component") => Some(pass(INTO, length(tag, word, later))),
        "set" | "set_global" if !keeps_a_block(tag) => Some(kept(tag.name().0)),
        "endset" => name_of_set(earlier).map(kept),
        _ => None,
    }
}

/// A tag as it is filled. A value that it puts out goes through what measures it: into a text that is kept, the library
/// writes it past all that counts. What a component or the block above puts out is counted where it does so.
fn measured(text: &str, tag: &Tag<'_>) -> String {
    let expression = tag.inside.trim();
    let written = &text[tag.start..tag.end];
    if tag.acts || expression.starts_with('<') || expression.starts_with("super") {
        return written.to_owned();
    }
    let (before, behind) = written.split_once(expression).unwrap_or((written, ""));
    let plain = |letter: &char| letter.is_alphanumeric() || " ._|()=,~+-*/[]".contains(*letter);
    let said: String = expression.chars().filter(plain).take(LETTERS_SAID).collect();
    format!("{before}{PUT_OUT_BEGINS}{expression}{PUT_OUT_SAYS}{said}{PUT_OUT_ENDS}{behind}")
}

/// How many bytes a tag goes round.
fn length(tag: &Tag<'_>, word: &str, later: &[Tag<'_>]) -> usize {
    let (end, mut open) = (format!("end{word}"), 1);
    for other in later {
        open += usize::from(other.word() == word);
        open -= usize::from(other.word() == end);
        if open == 0 {
            return other.start - tag.end;
        }
    }
    0
}

/// Whether a `set` keeps what stands between it and its end.
fn keeps_a_block(tag: &Tag<'_>) -> bool {
    !tag.name().1.starts_with('=')
}

/// The name that the block before an `endset` is kept by.
fn name_of_set<'t>(before: &[Tag<'t>]) -> Option<&'t str> {
    let mut open = 1;
    for tag in before.iter().rev() {
        match tag.word() {
            "endset" => open += 1,
            "set" | "set_global" if keeps_a_block(tag) => open -= 1,
            _ => {}
        }
        if open == 0 {
            return Some(tag.name().0);
        }
    }
    None
}

fn pass(function: &str, bytes: usize) -> String {
    format!("{function}(cost={})", bytes + A_PASS)
}

fn kept(name: &str) -> String {
    format!("{KEPT}(of={name})")
}

fn put_in(call: &str, trims_before: bool, trims: bool) -> String {
    let sign = |trims| if trims { "-" } else { "" };
    format!("{{%{} if {call} %}}{{% endif {}%}}", sign(trims_before), sign(trims))
}

const CLOSING: &str = "%}";

/// Where what was put in at the beginning of this text ends; none where it begins with nothing of that.
pub(super) fn put_in_before(text: &str) -> Option<usize> {
    if text.starts_with(PUT_OUT_BEGINS) {
        return Some(PUT_OUT_BEGINS.len());
    }
    if let Some(said) = text.strip_prefix(PUT_OUT_SAYS) {
        return Some(PUT_OUT_SAYS.len() + said.find(PUT_OUT_ENDS)? + PUT_OUT_ENDS.len());
    }
    let call = ["{% if ", "{%- if "].iter().find_map(|opening| text.strip_prefix(opening))?;
    if ![STEP, INTO, OUT_OF, KEPT].iter().any(|name| call.starts_with(name)) {
        return None;
    }
    let ends: Vec<usize> = text.match_indices(CLOSING).map(|(at, _)| at + CLOSING.len()).take(2).collect();
    Some(ends.get(1).copied().unwrap_or(text.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Expected by hand.
    #[test]
    fn passes_are_counted_with_what_they_go_through_and_kept_texts_measured() {
        let layout = "{% for a in b -%}x{% for c in d %}y{% endfor %}{% endfor %}";
        assert_eq!(
            counted(layout),
            "{% if layout_into(cost=123) %}{% endif %}{% for a in b -%}{% if layout_step(cost=94) %}{% endif -%}x\
             {% for c in d %}{% if layout_step(cost=65) %}{% endif %}y{% endfor %}{% endfor %}\
             {% if layout_out_of() %}{% endif %}"
        );
    }

    #[test]
    fn kept_texts_are_measured_by_their_names() {
        let layout = "{% extends \"a\" %}{% set t = a %}{% set f %}{% set g = 1 %}z{% endset -%} h";
        assert_eq!(
            counted(layout),
            "{% extends \"a\" %}{% set t = a %}{% if layout_kept(of=t) %}{% endif %}{% set f %}{% set g = 1 %}\
             {% if layout_kept(of=g) %}{% endif %}z{% endset -%}{% if layout_kept(of=f) %}{% endif -%} h"
        );
    }

    #[test]
    fn values_put_out_are_measured_but_for_what_is_counted_elsewhere() {
        let layout = "{% extends \"a\" %}{{ a ~ \"%}\"\n| safe -}} {{- b(c=1)}}{{ <c/> }}{{ super() }}";
        assert_eq!(
            counted(layout),
            "{% extends \"a\" %}{{ layout_put_out(of=(a ~ \"%}\"\n| safe), said=\"a ~ | safe\") -}} \
             {{- layout_put_out(of=(b(c=1)), said=\"b(c=1)\")}}{{ <c/> }}{{ super() }}"
        );
    }

    #[test]
    fn a_layout_that_extends_another_is_counted_in_its_blocks() {
        let layout = "{% extends \"a\" %}{% block b %}x {%- endblock b %}";
        assert_eq!(
            counted(layout),
            "{% extends \"a\" %}{% block b %}{% if layout_into(cost=66) %}{% endif %}x {%- if layout_out_of() %}\
             {% endif %}{%- endblock b %}"
        );
    }
}
