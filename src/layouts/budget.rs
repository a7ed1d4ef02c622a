//! How far one filling of a layout may go: what it passes through, keeps and puts out is counted in bytes, and once the
//! sum is spent nothing more is put out.

use super::counted::{INTO, KEPT, OUT_OF, PUT_OUT, STEP};
use serde_json::Value as Json;
use std::cell::Cell;
use std::io::{self, Write};
use tera::{Error, Kwargs, State, StringInput, Tera, TeraResult, Value};

/// Bytes that a face and a page may come to, beside what is put into them.
const OF_A_FACE: usize = 16 << 20;
const OF_A_PAGE: usize = 64 << 20;
/// How often what is put into a layout may be put out; a layout of the user's is measured there twice.
const TIMES: usize = 16;
/// The longest text or list that a layout may keep or make of others.
const MOST_KEPT: usize = 4 << 20;
/// How deep lists may stand in lists.
const DEEPEST: usize = 16;
/// The longest list that `range` gives.
const MOST_NUMBERS: i128 = 10_000;

/// How deep files, blocks and components may stand in each other: the library uses up a thread's stack for them.
const MOST_DEEP: usize = 12;

thread_local! {
    /// What is left to the filling that goes on in this thread. A filling stays in its thread.
    static LEFT: Cell<usize> = const { Cell::new(usize::MAX) };
    /// How deep it is in files, blocks and components.
    static DEEP: Cell<usize> = const { Cell::new(0) };
}

/// What a filling begins with; `is_face` says whether it is that of a face of a card.
pub(super) fn begin(values: &Json, is_face: bool) {
    let own = if is_face { OF_A_FACE } else { OF_A_PAGE };
    LEFT.set(own.saturating_add(TIMES.saturating_mul(length(values))));
    DEEP.set(0);
}

/// Whether the filling went too far.
pub(super) fn is_spent() -> bool {
    LEFT.get() == 0
}

fn spend(bytes: usize) {
    LEFT.set(LEFT.get().saturating_sub(bytes));
}

fn length(values: &Json) -> usize {
    match values {
        Json::String(text) => text.len(),
        Json::Array(values) => values.iter().map(length).sum(),
        Json::Object(values) => values.values().map(length).sum(),
        _ => 8,
    }
}

/// A filled layout in the making.
#[derive(Default)]
pub(super) struct Filled(pub Vec<u8>);

impl Write for Filled {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        spend(bytes.len());
        if !is_spent() {
            self.0.extend_from_slice(bytes);
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// Gives the library what counts, and filters and functions that go no further than they may.
pub(super) fn register(tera: &mut Tera) {
    tera.register_function(STEP, step);
    tera.register_function(INTO, into);
    tera.register_function(OUT_OF, out_of);
    tera.register_function(KEPT, kept);
    tera.register_function(PUT_OUT, put_out);
    tera.register_function("range", range);
    tera.register_filter("replace", replace);
    tera.register_filter("join", join);
    tera.set_escape_fn(escaped);
}

/// Says false, so that it puts nothing out.
fn step(given: Kwargs, _: &State<'_>) -> TeraResult<bool> {
    spend(given.must_get::<usize>("cost")?);
    if is_spent() { Err(too_far()) } else { Ok(false) }
}

fn into(given: Kwargs, state: &State<'_>) -> TeraResult<bool> {
    DEEP.set(DEEP.get() + 1);
    if DEEP.get() > MOST_DEEP {
        LEFT.set(0);
    }
    step(given, state)
}

fn out_of(_: Kwargs, _: &State<'_>) -> bool {
    DEEP.set(DEEP.get().saturating_sub(1));
    false
}

fn put_out(given: Kwargs, _: &State<'_>) -> TeraResult<Value> {
    let value = given.must_get::<Value>("of")?;
    if value.is_undefined() {
        return Err(Error::message(format!("`{}` is not there", given.must_get::<&str>("said")?)));
    }
    measure(&value)?;
    Ok(value)
}

fn kept(given: Kwargs, _: &State<'_>) -> TeraResult<bool> {
    measure(&given.must_get::<Value>("of")?)?;
    Ok(false)
}

fn measure(value: &Value) -> TeraResult<()> {
    let size = size(value, MOST_KEPT + 1, DEEPEST);
    if value.as_str().is_some() {
        spend(size);
    }
    if size > MOST_KEPT || is_spent() {
        LEFT.set(0);
        return Err(too_far());
    }
    Ok(())
}

fn too_far() -> Error {
    Error::message("the layout does not come to an end")
}

/// How long a value would be if it were put out, counted no further than `most`; one that is nested deeper than
/// `deep` counts as too long.
fn size(value: &Value, most: usize, deep: usize) -> usize {
    let sum = |values: &mut dyn Iterator<Item = &Value>| {
        let mut sum = if deep == 0 { most } else { 1 };
        for value in values {
            if sum >= most {
                break;
            }
            sum += size(value, most - sum, deep - 1);
        }
        sum
    };
    match (value.as_str(), value.as_array(), value.as_map()) {
        (Some(text), ..) => text.len(),
        (_, Some(values), _) => sum(&mut values.iter()),
        (.., Some(values)) => sum(&mut values.values()),
        _ => 1,
    }
}

fn escaped(text: &str, out: &mut dyn Write) -> io::Result<()> {
    spend(text.len());
    if is_spent() { Ok(()) } else { tera::escape_html(text, out) }
}

fn range(given: Kwargs, _: &State<'_>) -> TeraResult<Vec<i128>> {
    let start = given.get::<i128>("start")?.unwrap_or_default();
    let end = given.must_get::<i128>("end")?;
    let step = usize::try_from(given.get::<i128>("step_by")?.unwrap_or(1)).unwrap_or_default();
    let count = end.checked_sub(start).filter(|count| (0..=MOST_NUMBERS).contains(count));
    if count.is_none() || step == 0 {
        return Err(Error::message(format!(
            "`range` counts upward, by 1 or more, and to at most {MOST_NUMBERS} numbers"
        )));
    }
    Ok((start..end).step_by(step).collect())
}

fn replace(text: StringInput<'_>, given: Kwargs, state: &State<'_>) -> TeraResult<Value> {
    let (from, to) = (given.must_get::<&str>("from")?, given.must_get::<StringInput<'_>>("to")?);
    let is_safe = state.autoescaping_enabled() && (text.is_safe() || to.is_safe());
    let longest = text.as_str().matches(from).count().saturating_mul(to.as_str().len());
    short_enough(longest.saturating_add(text.as_str().len()))?;
    if is_safe {
        let replaced = text.rendered(state)?.replace(from, &to.rendered(state)?);
        return Ok(Value::safe_string(&replaced));
    }
    Ok(Value::from(text.as_str().replace(from, to.as_str())))
}

fn join(values: &[Value], given: Kwargs, state: &State<'_>) -> TeraResult<Value> {
    let between = given.get::<StringInput<'_>>("sep")?;
    let is_safe = state.autoescaping_enabled()
        && (values.iter().any(|value| value.as_str().is_some() && value.is_safe())
            || between.as_ref().is_some_and(StringInput::is_safe));
    let each = between.as_ref().map_or(0, |between| between.as_str().len());
    let whole: usize = values.iter().map(|value| size(value, MOST_KEPT + 1, DEEPEST)).sum();
    short_enough(values.len().saturating_mul(each).saturating_add(whole))?;
    if !is_safe {
        let between = between.as_ref().map_or("", StringInput::as_str);
        return Ok(Value::from(values.iter().map(Value::to_string).collect::<Vec<_>>().join(between)));
    }
    let between = between.map(|between| between.rendered(state).map(|text| text.into_owned())).transpose()?;
    let parts = values.iter().map(|value| state.escape_if_needed(value)).collect::<TeraResult<Vec<_>>>()?;
    Ok(Value::safe_string(&parts.join(&between.unwrap_or_default())))
}

fn short_enough(bytes: usize) -> TeraResult<()> {
    if bytes <= MOST_KEPT {
        return Ok(());
    }
    LEFT.set(0);
    Err(too_far())
}
