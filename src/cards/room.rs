//! How a layout is filled so that everything has room: the first of its forms, as loosely as it goes.

use super::compose::{Frame, Sitting, Trouble, fill};
use super::face::BlockKind;
use super::plan::{Placing, Plan, Planned};
use super::type_class::Fit;
use std::collections::BTreeMap;

/// How a layout is filled: how tightly, in which of its forms, with how wide a first column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Setting {
    pub fit: Fit,
    pub form: u32,
    pub share: f64,
}

/// A setting that holds everything.
#[derive(Debug, Clone)]
pub(super) struct Fitted {
    pub setting: Setting,
    pub plan: Plan,
    /// The height of the drawing that takes the room left over.
    pub elastic: f64,
}

/// How much of the way from the least to the wanted height a drawing is given, in the order tried.
const SHARES: [f64; 5] = [1.0, 0.75, 0.5, 0.25, 0.0];
/// From one width of the first column to the next that is tried, as a part of the whole width.
const COLUMN_STEP: f64 = 0.02;

/// The first form of the layout that holds everything; what the last one lacks room for is said.
pub(super) fn fit(frame: Frame<'_>, sitting: Sitting<'_>) -> Result<Fitted, Trouble> {
    let mut form = 0;
    loop {
        let (fitted, forms) = fit_form(frame, sitting, form)?;
        form += 1;
        match fitted {
            Err(trouble) if form >= forms => return Err(trouble),
            Err(_) => {}
            Ok(fitted) => return Ok(fitted),
        }
    }
}

/// The loosest fit that has room for the drawing as large as wanted; where none has, texts close up and
/// shrink before the drawing does. Also how many forms the layout has.
fn fit_form(
    frame: Frame<'_>,
    sitting: Sitting<'_>,
    form: u32,
) -> Result<(Result<Fitted, Trouble>, u32), Trouble> {
    let (mut plans, mut forms): (Vec<(Setting, Plan)>, u32) = (Vec::new(), 1);
    let widths = widths(frame, sitting, form)?;
    let shares = promising(frame, sitting, form, &widths)?;
    for fit in Fit::all(frame.smallest) {
        let (setting, plan) = balanced(frame, sitting, Setting { fit, form, share: EVEN }, &shares)?;
        forms = plan.forms;
        let holds = room(&plan, fit, SHARES[0]).is_some();
        plans.push((setting, plan));
        if holds {
            break;
        }
    }
    let loosest = |share| {
        let held = plans.iter().find(|(setting, plan)| room(plan, setting.fit, share).is_some());
        held.map(|(setting, plan)| (*setting, plan, share))
    };
    let fitted = match (SHARES.into_iter().find_map(loosest), plans.last()) {
        (Some((setting, plan, share)), _) => {
            let (setting, plan) = match widths.as_slice() {
                [] => (setting, plan.clone()),
                all => balanced(frame, sitting, setting, all)?,
            };
            let elastic = room(&plan, setting.fit, share).unwrap_or_default();
            Ok(Fitted { setting, plan, elastic })
        }
        (None, tightest) => {
            Err(tightest.map_or_else(nothing_tried, |(setting, plan)| too_full(setting.fit, plan)))
        }
    };
    Ok((fitted, forms))
}

/// The widths of the first column that the layout leaves open.
fn widths(frame: Frame<'_>, sitting: Sitting<'_>, form: u32) -> Result<Vec<f64>, Trouble> {
    let Some(fit) = Fit::all(frame.smallest).last() else { return Ok(Vec::new()) };
    let setting = Setting { fit, form, share: EVEN };
    let Some((least, most)) = fill(frame, sitting, setting, None)?.shares else { return Ok(Vec::new()) };
    let mut all = vec![least];
    while all.last().is_some_and(|last| last + COLUMN_STEP <= most) {
        all.extend(all.last().map(|last| last + COLUMN_STEP));
    }
    Ok(all)
}

/// Those of these widths that are worth trying at every fit: about the best one of the tightest.
fn promising(frame: Frame<'_>, sitting: Sitting<'_>, form: u32, widths: &[f64]) -> Result<Vec<f64>, Trouble> {
    let Some(fit) = Fit::all(frame.smallest).last().filter(|_| !widths.is_empty()) else {
        return Ok(Vec::new());
    };
    let (best, _) = balanced(frame, sitting, Setting { fit, form, share: EVEN }, widths)?;
    let near = |share: &f64| (share - best.share).abs() < COLUMN_STEP * 1.5;
    Ok(widths.iter().copied().filter(near).collect())
}

/// The layout filled with that of these widths of its first column which leaves most room; the widest, where
/// several do.
fn balanced(
    frame: Frame<'_>,
    sitting: Sitting<'_>,
    setting: Setting,
    shares: &[f64],
) -> Result<(Setting, Plan), Trouble> {
    let share = shares.first().copied().unwrap_or(EVEN);
    let first = Setting { share, ..setting };
    let mut best = (first, fill(frame, sitting, first, None)?);
    for share in shares.iter().skip(1) {
        let setting = Setting { share: *share, ..setting };
        let plan = fill(frame, sitting, setting, None)?;
        if crowding(&plan, setting.fit) <= crowding(&best.1, best.0.fit) {
            best = (setting, plan);
        }
    }
    Ok(best)
}

/// What a layout is filled with before the best width of its first column is known.
const EVEN: f64 = 0.5;

/// Sorts fillings by what is too much: texts that are longer than their lines, then height, then lines that
/// texts break into in a column which is not the highest.
fn crowding(plan: &Plan, fit: Fit) -> (f64, f64, f64) {
    let over = plan.too_long.iter().map(|(_, over)| over).sum();
    let least = plan.elastic().map_or(0.0, |elastic| elastic.least);
    let excess = (plan.placed(fit, least, 0.0).excess / SLACK).round();
    (over, excess, plan.blocks.iter().map(|block| block.height).sum())
}

/// The height of the elastic drawing where everything fits.
fn room(plan: &Plan, fit: Fit, share: f64) -> Option<f64> {
    if !plan.too_long.is_empty() {
        return None;
    }
    let Some(elastic) = plan.elastic() else {
        return (plan.placed(fit, 0.0, 0.0).excess <= SLACK).then_some(0.0);
    };
    let least = elastic.least + share * (elastic.wanted - elastic.least);
    if plan.placed(fit, least, 0.0).excess > SLACK {
        return None;
    }
    let over = plan.placed(fit, elastic.most, 0.0).excess.max(0.0);
    let largest = (elastic.most - over).max(least);
    Some(largest)
}

/// Lengths are rounded to a thousandth; sums of them may be off by a few.
pub(super) const SLACK: f64 = 0.01;

fn too_full(fit: Fit, plan: &Plan) -> Trouble {
    if let Some((text, over)) = plan.too_long.first() {
        let block = plan.blocks.iter().find(|block| block.body.contains("data-over"));
        let field = block.map_or_else(String::new, |block| block.field.clone());
        let excess = tenths(*over);
        let said = format!("“{text}” is {excess} mm too long for its line");
        return Trouble::TooFull { field, excess, said };
    }
    let least = plan.elastic().map_or(0.0, |elastic| elastic.least);
    let excess = tenths(plan.placed(fit, least, 0.0).excess);
    let heights = heights(plan);
    let field = heights.first().map_or_else(String::new, |(field, _)| (*field).to_owned());
    let named = heights.iter().take(MOST_NAMED).map(|(field, high)| format!("{field} {} mm", tenths(*high)));
    let named: Vec<String> = named.collect();
    let said = format!("its texts are {excess} mm too long together: {}", named.join(", "));
    Trouble::TooFull { field, excess, said }
}

/// How many of the fields that fill a face are named: those that shortening helps most.
const MOST_NAMED: usize = 3;

/// The fields whose texts fill a face, with the height of each in the column where it takes most.
fn heights(plan: &Plan) -> Vec<(&str, f64)> {
    let mut columns: BTreeMap<(&str, &str), f64> = BTreeMap::new();
    let flows = |block: &&Planned| {
        block.kind != BlockKind::Drawing && !matches!(block.place, Placing::At(_)) && block.height > 0.0
    };
    for block in plan.blocks.iter().filter(flows) {
        *columns.entry((block.field.as_str(), block.column.as_str())).or_default() += block.height;
    }
    let mut fields: BTreeMap<&str, f64> = BTreeMap::new();
    for ((field, _), height) in columns {
        let most = fields.entry(field).or_default();
        *most = most.max(height);
    }
    let mut fields: Vec<(&str, f64)> = fields.into_iter().collect();
    fields.sort_by(|a, b| b.1.total_cmp(&a.1));
    fields
}

fn nothing_tried() -> Trouble {
    Trouble::TooFull { field: String::new(), excess: "0".to_owned(), said: "no fit was tried".to_owned() }
}

/// Rounded up, so that nothing is said to be less than it is.
fn tenths(mm: f64) -> String {
    format!("{:.1}", (mm * 10.0).ceil() / 10.0)
}
