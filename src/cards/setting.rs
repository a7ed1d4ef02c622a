//! The functions that card layouts call to set text: broken and measured before it is drawn.

use super::type_class::{Fit, TypeClass};
use crate::layouts::Helper;
use crate::sketch::number;
use crate::typeset::{Cut, Fonts, Style};
use crate::units::Length;
use serde::Deserialize;
use serde_json::{Map, Value, json};
use std::fmt::Write;
use std::sync::Arc;

/// The functions for layouts of cards: `text`, `table` and `mm`.
///
/// `text(text, width, …)` sets one text, `table(rows, columns, …)` sets rows of texts side by side;
/// both answer with `height`, `width` of the longest line and `svg`, and a table with the `y` and `height` of each row. Lengths are
/// millimetres. `mm(v)` writes a number as drawings do.
#[must_use]
pub fn helpers(fonts: &Arc<Fonts>) -> Vec<Helper> {
    let (for_text, for_table) = (fonts.clone(), fonts.clone());
    vec![
        Helper::new("text", move |given| text(&for_text, given)).taking(&["fit"]),
        Helper::new("table", move |given| table(&for_table, given)).taking(&["fit"]),
        Helper::new("mm", |given| match given.get("v").and_then(Value::as_f64) {
            Some(length) => Ok(number(length).into()),
            None => Err("mm(v) needs a number".to_owned()),
        }),
    ]
}

/// How tightly the face is set, as its values carry it.
#[derive(Deserialize)]
struct FitGiven {
    close: f64,
    shrink: f64,
    smallest_mm: f64,
}

impl From<FitGiven> for Fit {
    fn from(given: FitGiven) -> Self {
        Self { close: given.close, shrink: given.shrink, smallest: Length::from_mm(given.smallest_mm) }
    }
}

/// A column of a table.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Column {
    /// The key of its texts in the rows.
    key: String,
    #[serde(default)]
    x: f64,
    width: f64,
    #[serde(default = "body")]
    class: String,
    #[serde(default = "condensed")]
    cut: String,
    /// A key of the rows: where it is true, the text is bold.
    #[serde(default)]
    bold_if: String,
    #[serde(default = "start")]
    align: String,
    #[serde(default)]
    fill: String,
    /// A key of the rows whose text is the colour.
    #[serde(default)]
    fill_from: String,
}

fn body() -> String {
    "body".to_owned()
}

fn condensed() -> String {
    "condensed".to_owned()
}

fn start() -> String {
    "start".to_owned()
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableGiven {
    rows: Vec<Map<String, Value>>,
    columns: Vec<Column>,
    #[serde(default)]
    y: f64,
    /// Between rows.
    #[serde(default = "row_gap")]
    gap: f64,
    /// The least height of a row that does not say its own as `least`.
    #[serde(default)]
    least: f64,
    fit: FitGiven,
}

fn row_gap() -> f64 {
    0.7
}

fn table(fonts: &Fonts, given: &Map<String, Value>) -> Result<Value, String> {
    let given: TableGiven =
        serde_json::from_value(Value::Object(given.clone())).map_err(|error| error.to_string())?;
    let fit = Fit::from(given.fit);
    let columns: Vec<Setting> =
        given.columns.iter().map(|column| Setting::of(column, fit)).collect::<Result<_, _>>()?;
    let (mut y, mut width, mut svg, mut rows) = (given.y, 0.0_f64, String::new(), Vec::new());
    for (index, row) in given.rows.iter().enumerate() {
        if index > 0 {
            y += fit.gap(given.gap);
        }
        let (height, reach) = set_row(fonts, &columns, row, y, &mut svg);
        let height = height.max(row.get("least").and_then(Value::as_f64).unwrap_or(given.least));
        width = width.max(reach);
        rows.push(json!({ "y": rounded(y), "height": rounded(height) }));
        y += height;
    }
    Ok(json!({ "height": rounded(y - given.y), "width": rounded(width), "rows": rows, "svg": svg }))
}

fn set_row(
    fonts: &Fonts,
    columns: &[Setting],
    row: &Map<String, Value>,
    y: f64,
    svg: &mut String,
) -> (f64, f64) {
    let cells = columns.iter().map(|column| (column, column.lines(fonts, row)));
    let cells: Vec<(&Setting, Vec<String>, Cut)> =
        cells.map(|(column, (lines, cut))| (column, lines, cut)).collect();
    let line_one = cells.iter().filter(|(_, lines, _)| !lines.is_empty()).map(|(column, _, _)| column.rise());
    let base = y + line_one.fold(0.0, f64::max);
    let (mut height, mut reach) = (0.0_f64, 0.0_f64);
    for (column, lines, cut) in &cells {
        column.write(fonts, lines, &Ink { cut: *cut, fill: column.fill(row) }, base, svg);
        if !lines.is_empty() {
            height = height.max(base - y + column.below(lines.len()));
            reach = reach.max(column.longest(fonts, lines, *cut));
        }
    }
    (height, reach)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TextGiven {
    text: String,
    #[serde(default)]
    x: f64,
    #[serde(default)]
    y: f64,
    width: f64,
    #[serde(default = "body")]
    class: String,
    #[serde(default = "condensed")]
    cut: String,
    #[serde(default = "start")]
    align: String,
    #[serde(default)]
    fill: String,
    fit: Value,
}

fn text(fonts: &Fonts, given: &Map<String, Value>) -> Result<Value, String> {
    let given: TextGiven =
        serde_json::from_value(Value::Object(given.clone())).map_err(|error| error.to_string())?;
    let TextGiven { text, x, y, width, class, cut, align, fill, fit } = given;
    let column = json!({ "key": "t", "x": x, "width": width, "class": class, "cut": cut, "align": align, "fill": fill });
    let whole = json!({ "rows": [{ "t": text }], "columns": [column], "y": y, "fit": fit });
    let Value::Object(whole) = whole else { return Err("text(…) needs named arguments".to_owned()) };
    table(fonts, &whole)
}

/// How a line is inked.
struct Ink<'a> {
    cut: Cut,
    fill: &'a str,
}

/// A column that is ready to set text.
struct Setting<'a> {
    column: &'a Column,
    cut: Cut,
    size: Length,
    leading: f64,
}

/// Height of the tallest letters above the base line and of the deepest below it, in type sizes.
const RISE: f64 = 0.76;
const FALL: f64 = 0.24;

impl<'a> Setting<'a> {
    fn of(column: &'a Column, fit: Fit) -> Result<Self, String> {
        let class = TypeClass::from_word(&column.class)
            .ok_or_else(|| format!("there is no class of type “{}”", column.class))?;
        let cut =
            Cut::from_word(&column.cut).ok_or_else(|| format!("there is no cut of type “{}”", column.cut))?;
        Ok(Self { column, cut, size: fit.size(class), leading: fit.leading() })
    }

    fn rise(&self) -> f64 {
        self.size.mm() * RISE
    }

    fn below(&self, lines: usize) -> f64 {
        let further = u32::try_from(lines.saturating_sub(1)).unwrap_or(u32::MAX);
        self.size.mm() * (f64::from(further) * self.leading + FALL)
    }

    fn lines(&self, fonts: &Fonts, row: &Map<String, Value>) -> (Vec<String>, Cut) {
        let text = match row.get(&self.column.key) {
            Some(Value::String(text)) => text.clone(),
            Some(Value::Number(number)) => number.to_string(),
            _ => String::new(),
        };
        let emphatic = row.get(&self.column.bold_if).and_then(Value::as_bool).unwrap_or_default();
        let cut = if emphatic { bolder(self.cut) } else { self.cut };
        (fonts.lines(&text, Style { cut, size: self.size }, Length::from_mm(self.column.width)), cut)
    }

    /// Length of the longest line.
    fn longest(&self, fonts: &Fonts, lines: &[String], cut: Cut) -> f64 {
        lines.iter().map(|line| fonts.width(line, Style { cut, size: self.size }).mm()).fold(0.0, f64::max)
    }

    fn fill<'b>(&'b self, row: &'b Map<String, Value>) -> &'b str {
        row.get(&self.column.fill_from).and_then(Value::as_str).unwrap_or(&self.column.fill)
    }

    fn write(&self, fonts: &Fonts, lines: &[String], ink: &Ink<'_>, base: f64, svg: &mut String) {
        let mut y = base;
        for line in lines {
            self.write_line(fonts, line, ink, y, svg);
            y += self.size.mm() * self.leading;
        }
    }

    /// One element a font run, each at its measured place, so that no font shapes another's characters.
    fn write_line(&self, fonts: &Fonts, line: &str, ink: &Ink<'_>, y: f64, svg: &mut String) {
        let style = Style { cut: ink.cut, size: self.size };
        let width = fonts.width(line, style).mm();
        let over = width - self.column.width;
        let mut x = match self.column.align.as_str() {
            "end" => self.column.x + self.column.width - width,
            "middle" => self.column.x + (self.column.width - width) / 2.0,
            _ => self.column.x,
        };
        for run in fonts.runs(line, ink.cut) {
            let length = fonts.width(&run.text, style).mm();
            let _ = write!(
                svg,
                "<text x=\"{}\" y=\"{}\" font-family=\"{}, sans-serif\"",
                number(x),
                number(y),
                escaped(&run.family)
            );
            let _ = write!(
                svg,
                " font-weight=\"{}\" font-size=\"{}\" data-length=\"{}\" data-class=\"{}\"",
                run.weight,
                number(self.size.mm()),
                number(length),
                escaped(&self.column.class)
            );
            if !ink.fill.is_empty() {
                let _ = write!(svg, " fill=\"{}\"", escaped(ink.fill));
            }
            if over > 0.005 {
                let _ = write!(svg, " data-over=\"{}\"", number(over));
            }
            if run.text.starts_with(' ') || run.text.ends_with(' ') {
                svg.push_str(" xml:space=\"preserve\"");
            }
            let _ = write!(svg, ">{}</text>", escaped(&run.text));
            x += length;
        }
    }
}

fn bolder(cut: Cut) -> Cut {
    match cut {
        Cut::Regular | Cut::Bold => Cut::Bold,
        Cut::Condensed | Cut::CondensedBold => Cut::CondensedBold,
    }
}

fn rounded(mm: f64) -> f64 {
    (mm * 1000.0).round() / 1000.0
}

/// A text as XML carries it.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
