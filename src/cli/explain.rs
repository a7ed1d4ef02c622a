//! `fittingcards explain`: what a key of the records or the code of a finding means.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::explain::{Answer, Code, Key, answer, codes, everything, to_json};
use crate::facts::NAMED_VALUES;
use crate::section::materials;
use serde_json::json;
use std::fmt::Write;

/// Options of `explain`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// A kind of record, a key, or the code of a finding; `codes` for a list of all codes
    name: Option<String>,
}

/// How wide lines may be.
const WIDTH: usize = 100;

/// What asks for the list of all codes.
const ALL_CODES: &str = "codes";
/// What asks for the names that texts may use.
const ALL_VALUES: &str = "values";

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    if options.name.as_deref() == Some(ALL_VALUES) {
        report::result(&values(globals.format), globals.format)?;
        return Ok(Outcome::Done);
    }
    let found = found(options.name.as_deref())?;
    let text = match (globals.format, options.name.as_deref()) {
        (Format::Json, _) => to_json(&found).to_string(),
        (Format::Text, None) => how_to_ask(&found),
        (Format::Text, Some(ALL_CODES)) => list_of_codes(&found.codes),
        (Format::Text, Some(_)) => explained(&found),
    };
    report::result(&text, globals.format)?;
    Ok(Outcome::Done)
}

fn found(name: Option<&str>) -> Result<Answer, Fault> {
    match name {
        None => Ok(everything()),
        Some(ALL_CODES) => Ok(Answer { codes: codes(), ..Answer::default() }),
        Some(name) => answer(name).map_err(|near| unknown(name, &near)),
    }
}

fn unknown(name: &str, near: &[String]) -> Fault {
    let help = match near {
        [] => "`fittingcards explain` lists the kinds of record and says how to ask".to_owned(),
        _ => format!("did you mean {}?", near.join(" or ")),
    };
    Fault::new(format!("there is no key, code or kind of record called {name}")).with("help", help)
}

fn how_to_ask(all: &Answer) -> String {
    let mut text = "kinds of record\n".to_owned();
    for kind in &all.kinds {
        let _ = writeln!(text, "  {:<12} {}", kind.kind, kind.meaning);
    }
    text.push_str("\nhow to ask\n");
    let ways = [
        ("parts", "the keys of a kind of record"),
        ("parts.geometry.collet", "a key, and the keys below it"),
        ("bore_mm", "a key wherever it stands"),
        ("unknown-key", "the code of a finding"),
        (ALL_CODES, "a list of all codes"),
        (ALL_VALUES, "the values that texts may name in braces"),
    ];
    for (name, what) in ways {
        let _ = writeln!(text, "  {:<44} {what}", format!("fittingcards explain {name}"));
    }
    text
}

/// What steps, witness, reject_if, if_wrong, captions and notes may name.
fn values(format: Format) -> String {
    if format == Format::Json {
        let value = |(name, meaning): &(&str, &str)| json!({ "name": name, "meaning": meaning });
        return json!({ "values": NAMED_VALUES.iter().map(value).collect::<Vec<_>>() }).to_string();
    }
    let line = |(name, meaning): &(&str, &str)| format!("  {:<18} {meaning}\n", format!("{{{name}}}"));
    let lines: String = NAMED_VALUES.iter().map(line).collect();
    format!(
        "steps, witness, reject_if, if_wrong, captions and notes may name values of their fitting\n{lines}\
             the second of several: {{torque.2}}; a brace: {{{{\n"
    )
}

fn list_of_codes(codes: &[Code]) -> String {
    let line = |code: &Code| paragraph(&format!("{:<33}", code.code), 33, &code.finds);
    codes.iter().map(line).collect()
}

/// Kinds with the tree of their keys, keys with all that is known of them, codes.
fn explained(found: &Answer) -> String {
    let kinds = found.kinds.iter().map(|kind| {
        let path = format!("{}.", kind.kind);
        let keys: Vec<&Key> = found.keys.iter().filter(|key| key.path.starts_with(&path)).collect();
        let built_in = if kind.kind == "materials" {
            let ids: Vec<&str> = materials::built_in().keys().map(String::as_str).collect();
            paragraph("\nbuilt in  ", 10, &ids.join(", "))
        } else {
            String::new()
        };
        format!("{}: {}\n\n{}{built_in}", kind.kind, kind.meaning, tree(&keys))
    });
    let asked =
        found.keys.iter().filter(|key| !is_below_another(key, found)).map(|key| explained_key(key, found));
    let codes = found.codes.iter().map(explained_code);
    kinds.chain(asked).chain(codes).collect::<Vec<_>>().join("\n")
}

/// Whether a key is told of with what it stands below.
fn is_below_another(key: &Key, found: &Answer) -> bool {
    let below = |top: &str| key.path.strip_prefix(top).is_some_and(|rest| rest.starts_with('.'));
    found.kinds.iter().any(|kind| below(kind.kind)) || found.keys.iter().any(|other| below(&other.path))
}

fn explained_key(key: &Key, found: &Answer) -> String {
    let mut text = format!("{}\n", key.path);
    text.push_str(&paragraph("  ", 2, &key.meaning));
    let needed = if key.needed { "yes" } else { "no" };
    let mut lines = vec![("takes", key.takes.as_str()), ("needed", needed)];
    if !key.needed {
        lines.push(("default", key.default.as_ref().map_or("nothing", |default| default.text())));
    }
    let example = format!("{}: {}", key.name(), key.example);
    lines.push(("example", &example));
    if let Some(unit) = key.unit {
        lines.insert(1, ("unit", unit));
    }
    for (name, value) in lines {
        text.push_str(&paragraph(&format!("  {name:<9}"), 11, value));
    }
    let path = format!("{}.", key.path);
    let below: Vec<&Key> = found.keys.iter().filter(|other| other.path.starts_with(&path)).collect();
    if !below.is_empty() {
        let _ = write!(text, "\n{}", tree(&below));
    }
    text
}

/// Keys below each other, a line each.
fn tree(keys: &[&Key]) -> String {
    let least = keys.iter().map(|key| key.depth()).min().unwrap_or_default();
    let named = |key: &Key| format!("{:1$}{2}", "", 2 * (key.depth() - least), key.name());
    let width = keys.iter().map(|key| named(key).len()).max().unwrap_or_default();
    let unit = |key: &Key| key.unit.unwrap_or_default();
    let units = keys.iter().map(|key| unit(key).chars().count()).max().unwrap_or_default();
    let line = |key: &&Key| {
        let needed = if key.needed { "needed" } else { "" };
        let start = format!("  {:<width$}  {:<units$}  {needed:<6}  ", named(key), unit(key));
        paragraph(&start, start.chars().count(), &key.meaning)
    };
    keys.iter().map(line).collect()
}

fn explained_code(code: &Code) -> String {
    let mut text = format!("{}\n", code.code);
    text.push_str(&paragraph("  finds    ", 11, &code.finds));
    text.push_str(&paragraph("  why      ", 11, &code.why));
    text.push_str(&paragraph("  help     ", 11, &code.help));
    text
}

/// A text of as many lines as it needs, behind a start, the further lines indented.
fn paragraph(start: &str, indent: usize, text: &str) -> String {
    let space = " ".repeat(indent);
    let options = textwrap::Options::new(WIDTH.max(indent + 40))
        .initial_indent(start)
        .subsequent_indent(&space)
        .break_words(false)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    textwrap::fill(text, options) + "\n"
}
