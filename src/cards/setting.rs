//! The functions that card layouts call to set text: broken and measured before it is drawn.

use super::preflight::SAFE;
use super::type_class::{Fit, TypeClass};
use crate::layouts::Helper;
use crate::sketch::number;
use crate::typeset::{Cut, Fonts, Line, Run, Style, is_joined};
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
    /// Between rows; closes up, unlike what a row says as `above`.
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

fn table(fonts: &Fonts, given: Map<String, Value>) -> Result<Value, String> {
    let given: TableGiven = serde_json::from_value(given.into()).map_err(|error| error.to_string())?;
    set(fonts, given)
}

fn set(fonts: &Fonts, given: TableGiven) -> Result<Value, String> {
    let fit = Fit::from(given.fit);
    let columns: Vec<Setting> =
        given.columns.iter().map(|column| Setting::of(column, fit)).collect::<Result<_, _>>()?;
    let (mut y, mut width, mut svg, mut rows) = (given.y, 0.0_f64, String::new(), Vec::new());
    for (index, row) in given.rows.iter().enumerate() {
        if index > 0 {
            y += fit.gap(given.gap) + row.get("above").and_then(Value::as_f64).unwrap_or_default();
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
    let cells: Vec<(&Setting, Vec<Line>)> =
        columns.iter().map(|column| (column, column.lines(fonts, row))).collect();
    let base = y + cells.iter().map(|(column, lines)| column.rise(lines)).fold(0.0, f64::max);
    let (mut height, mut reach) = (0.0_f64, 0.0_f64);
    for (column, lines) in &cells {
        let Some(last) = lines.last() else { continue };
        let fall = column.write(lines, column.fill(row), base, svg) + column.fall(last);
        height = height.max(base - y + fall);
        reach = reach.max(lines.iter().map(|line| line.extent().mm()).fold(0.0, f64::max));
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
    fit: FitGiven,
}

/// A table of one text.
fn text(fonts: &Fonts, given: Map<String, Value>) -> Result<Value, String> {
    let given: TextGiven = serde_json::from_value(given.into()).map_err(|error| error.to_string())?;
    let TextGiven { text, x, y, width, class, cut, align, fill, fit } = given;
    let key = "text".to_owned();
    let row = [(key.clone(), text.into())].into_iter().collect();
    let column =
        Column { key, x, width, class, cut, bold_if: String::new(), align, fill, fill_from: String::new() };
    set(fonts, TableGiven { rows: vec![row], columns: vec![column], y, gap: 0.0, least: 0.0, fit })
}

/// A column that is ready to set text.
struct Setting<'a> {
    column: &'a Column,
    cut: Cut,
    size: Length,
    leading: f64,
}

/// Height of the tallest plain letters above the base line and of the deepest below it, in type sizes.
const RISE: f64 = 0.76;
const FALL: f64 = 0.24;

/// Least room between the ink of two lines, in type sizes.
const BETWEEN: f64 = 0.05;

impl<'a> Setting<'a> {
    fn of(column: &'a Column, fit: Fit) -> Result<Self, String> {
        let class = TypeClass::from_word(&column.class)
            .ok_or_else(|| format!("there is no class of type “{}”", column.class))?;
        let cut =
            Cut::from_word(&column.cut).ok_or_else(|| format!("there is no cut of type “{}”", column.cut))?;
        Ok(Self { column, cut, size: fit.size(class), leading: fit.leading() })
    }

    /// From the top down to the first base line: more than plain letters need where accents or another
    /// script rise higher.
    fn rise(&self, lines: &[Line]) -> f64 {
        lines.first().map_or(0.0, |line| (self.size.mm() * RISE).max(line.ink.above.mm()))
    }

    /// From the last base line down to the foot.
    fn fall(&self, line: &Line) -> f64 {
        (self.size.mm() * FALL).max(line.ink.below.mm())
    }

    /// From a base line to the next: the leading, unless ink would come too near to ink.
    fn step(&self, line: &Line, next: &Line) -> f64 {
        let size = self.size.mm();
        (size * self.leading).max(line.ink.below.mm() + next.ink.above.mm() + size * BETWEEN)
    }

    fn lines(&self, fonts: &Fonts, row: &Map<String, Value>) -> Vec<Line> {
        let text = match row.get(&self.column.key) {
            Some(Value::String(text)) => text.clone(),
            Some(Value::Number(number)) => number.to_string(),
            _ => String::new(),
        };
        let emphatic = row.get(&self.column.bold_if).and_then(Value::as_bool).unwrap_or_default();
        let cut = if emphatic { bolder(self.cut) } else { self.cut };
        fonts.lines(&text, Style { cut, size: self.size }, Length::from_mm(self.column.width))
    }

    fn fill<'b>(&'b self, row: &'b Map<String, Value>) -> &'b str {
        row.get(&self.column.fill_from).and_then(Value::as_str).unwrap_or(&self.column.fill)
    }

    /// Writes the lines; answers with how far the last base line lies below the first.
    fn write(&self, lines: &[Line], fill: &str, base: f64, svg: &mut String) -> f64 {
        let mut y = base;
        for (index, line) in lines.iter().enumerate() {
            if index > 0 {
                y += self.step(&lines[index - 1], line);
            }
            self.write_line(line, fill, y, svg);
        }
        y - base
    }

    /// One element a line; where fonts or directions meet in it, one chunk for each at its measured
    /// place, so that no font shapes another's characters and nothing is put in order twice.
    fn write_line(&self, line: &Line, fill: &str, y: f64, svg: &mut String) {
        let start = self.start(line);
        let x = |run: &Run| number(start + run.left.mm());
        let place = |run: &Run| format!(" x=\"{}\" y=\"{}\"", x(run), number(y));
        let size = format!(" font-size=\"{}\"", number(self.size.mm()));
        let rest = self.looks(line, fill);
        match line.runs.as_slice() {
            [run] => {
                let (font, length) = (font(run), length(run));
                let _ = write!(
                    svg,
                    "<text{}{font}{size}{length}{rest}>{}</text>",
                    place(run),
                    escaped(&run.text)
                );
            }
            runs => {
                let _ = write!(svg, "<text{size}{rest}>");
                for run in runs {
                    let (font, length, text) = (font(run), length(run), escaped(&run.text));
                    let _ = write!(svg, "<tspan{}{font}{length}>{text}</tspan>", place(run));
                }
                svg.push_str("</text>");
            }
        }
    }

    /// Where a line begins on the left. Its ink stays in the column on the right; on the left, where
    /// few letters stick out, it may hang out of the column but not of the safe area.
    fn start(&self, line: &Line) -> f64 {
        let (column, width) = (self.column, line.width.mm());
        let left = column.x.max(column.x.min(SAFE) + line.ink.before.mm());
        let right = column.x + column.width - line.ink.after.mm() - width;
        match column.align.as_str() {
            "end" => right,
            "middle" => column.x + (column.width - width) / 2.0,
            _ if line.right_to_left => right,
            _ => left,
        }
    }

    fn looks(&self, line: &Line, fill: &str) -> String {
        let mut looks = format!(" data-class=\"{}\"", escaped(&self.column.class));
        if !fill.is_empty() {
            let _ = write!(looks, " fill=\"{}\"", escaped(fill));
        }
        let over = line.extent().mm() - self.column.width;
        if over > 0.005 {
            let _ = write!(looks, " data-over=\"{}\"", number(over));
        }
        if line.runs.iter().any(|run| run.text.starts_with(' ') || run.text.ends_with(' ')) {
            looks.push_str(" xml:space=\"preserve\"");
        }
        looks
    }
}

fn font(run: &Run) -> String {
    format!(" font-family=\"{}, sans-serif\" font-weight=\"{}\"", escaped(&run.family), run.weight)
}

/// The measured length; in scripts whose letters touch it may be kept only by stretching the letters.
fn length(run: &Run) -> String {
    let mut length = format!(" data-length=\"{}\"", number(run.width.mm()));
    if is_joined(&run.text) {
        length.push_str(" lengthAdjust=\"spacingAndGlyphs\"");
    }
    if !run.shifts.is_empty() {
        let shifts: Vec<String> = run.shifts.iter().map(|shift| number(shift.mm())).collect();
        let _ = write!(length, " data-shifts=\"{}\"", shifts.join(" "));
    }
    length
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
