//! What is known under a name: a kind of record, a key, a code.

use super::code::{Code, codes};
use super::key::{Key, keys};
use crate::diagnostics::nearest;
use crate::records::schemas;
use std::collections::BTreeSet;

/// What is known under a name.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    /// The kinds of record that have the name; their keys are among `keys`.
    pub kinds: Vec<Kind>,
    /// Keys that have it, each followed by those below it.
    pub keys: Vec<Key>,
    /// The code that has it.
    pub codes: Vec<Code>,
}

/// A kind of record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kind {
    /// The folder that it lies in; `catalogue` for `catalogue.yaml`.
    pub kind: &'static str,
    /// What it is.
    pub meaning: String,
}

/// Everything that is known.
#[must_use]
pub fn everything() -> Answer {
    Answer { kinds: kinds(), keys: keys(), codes: codes() }
}

/// What is known under the name of a kind, the path of a key or its end, or a code. Numbers of list entries in a
/// path are passed over, so that the field of a finding will do. An end of a value, such as `min` of a window, stands for
/// the keys that have it.
///
/// # Errors
/// The known names that are nearest, where there is none of this name.
///
/// ```
/// use fittingcards::explain::answer;
/// let bores = answer("bore_mm").expect("a key");
/// assert_eq!(bores.keys[0].path, "parts.geometry.collet.bore_mm");
/// assert_eq!(answer("bore_m").unwrap_err()[0], "bore_mm");
/// assert_eq!(answer("rope_mm.min").expect("a window").keys[0].path, "parts.geometry.rope_grip.rope_mm");
/// ```
pub fn answer(name: &str) -> Result<Answer, Vec<String>> {
    let name = plain(name);
    let mut found = everything();
    found.kinds.retain(|kind| kind.kind == name);
    found.codes.retain(|code| code.code == name);
    let (all, end) = (std::mem::take(&mut found.keys), format!(".{name}"));
    let is_asked = |path: &str| path == name || path.ends_with(&end);
    let has_end = |key: &Key| key.ends.iter().any(|last| is_asked(&format!("{}.{last}", key.path)));
    let asked = all.iter().filter(|key| is_asked(&key.path) || has_end(key)).map(|key| key.path.as_str());
    let tops: Vec<&str> = found.kinds.iter().map(|kind| kind.kind).chain(asked).collect();
    found.keys = all.iter().filter(|key| tops.iter().any(|top| is_within(&key.path, top))).cloned().collect();
    if found == Answer::default() { Err(near(&name)) } else { Ok(found) }
}

/// A name without what a message writes round it.
fn plain(name: &str) -> String {
    let name = name.trim_matches(|letter: char| letter.is_whitespace() || "`\"':[]".contains(letter));
    let steps = name.split('.').filter(|step| step.parse::<usize>().is_err());
    match name {
        "catalogue.yaml" => "catalogue".to_owned(),
        _ => steps.collect::<Vec<_>>().join("."),
    }
}

fn is_within(path: &str, top: &str) -> bool {
    path.strip_prefix(top).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

fn kinds() -> Vec<Kind> {
    let meaning = |schema: schemars::Schema| {
        schema.get("description").and_then(|text| text.as_str()).map(str::to_owned)
    };
    schemas()
        .into_iter()
        .map(|(kind, schema)| Kind { kind, meaning: meaning(schema).unwrap_or_default() })
        .collect()
}

/// The nearest name of each sort: of paths, of keys and kinds alone, of codes.
fn near(name: &str) -> Vec<String> {
    let all = everything();
    let steps = name.matches('.').count() + 1;
    let ends = all.keys.iter().filter_map(|key| end_of(&key.path, steps));
    let kinds = all.kinds.iter().map(|kind| kind.kind).filter(|_| steps == 1);
    let keys: BTreeSet<&str> = ends.chain(kinds).collect();
    let key = nearest(name, keys.iter().copied());
    let last = name.rsplit('.').next().unwrap_or(name);
    let alone = || nearest(last, all.keys.iter().map(Key::name));
    let code = nearest(name, all.codes.iter().map(|code| code.code));
    key.or_else(alone).into_iter().chain(code).map(str::to_owned).collect()
}

/// The last steps of a path; `None` where it has fewer.
fn end_of(path: &str, steps: usize) -> Option<&str> {
    let dots: Vec<usize> = path.match_indices('.').map(|(at, _)| at).collect();
    match (dots.len() + 1).checked_sub(steps)? {
        0 => Some(path),
        before => Some(&path[dots[before - 1] + 1..]),
    }
}
