//! Numbers of records: a unit, a sign and a bound each.

use super::field::{Read, Reader};
use super::node::{Content, Node, Scalar, ScalarKind};
use super::schema::schema;
use super::text::shortened;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::json;
use std::borrow::Cow;
use std::marker::PhantomData;

/// The unit that a key names.
pub trait Unit {
    /// Its symbol; empty for a plain number.
    const SYMBOL: &'static str;
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident = $symbol:literal;)+) => {
        $(
            $(#[$doc])*
            #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
            pub struct $name;

            impl Unit for $name {
                const SYMBOL: &'static str = $symbol;
            }
        )+
    };
}

units! {
    /// Millimetres.
    Mm = "mm";
    /// Square millimetres.
    Mm2 = "mm²";
    /// Degrees of angle.
    Deg = "°";
    /// Kilonewtons.
    Kn = "kN";
    /// Newton metres.
    Nm = "N·m";
    /// Newtons per square millimetre.
    NPerMm2 = "N/mm²";
    /// Kilograms per cubic metre.
    KgPerM3 = "kg/m³";
    /// Kilograms per kilometre.
    KgPerKm = "kg/km";
    /// Nanoohm metres.
    NohmM = "nΩ·m";
    /// Ohms per kilometre.
    OhmPerKm = "Ω/km";
    /// Per kelvin.
    PerKelvin = "1/K";
    /// Percent.
    Percent = "%";
    /// Typographic points.
    Pt = "pt";
    /// No unit.
    Plain = "";
}

/// Which signs a number may have.
pub trait Sign {
    /// Whether zero will do.
    const ZERO: bool;
    /// Whether numbers below zero will do.
    const NEGATIVE: bool;
}

/// More than zero.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct AboveZero;
/// Zero or more.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct FromZero;
/// Either side of zero.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct AnySign;

impl Sign for AboveZero {
    const ZERO: bool = false;
    const NEGATIVE: bool = false;
}
impl Sign for FromZero {
    const ZERO: bool = true;
    const NEGATIVE: bool = false;
}
impl Sign for AnySign {
    const ZERO: bool = true;
    const NEGATIVE: bool = true;
}

/// A finite number of a unit, of a magnitude of at most `MOST`; what is not zero is at least a
/// billionth of that.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Number<U, S, const MOST: u32> {
    value: f64,
    unit: PhantomData<(U, S)>,
}

/// A number above zero.
pub type Size<U, const MOST: u32> = Number<U, AboveZero, MOST>;
/// A number from zero up.
pub type SizeOrZero<U, const MOST: u32> = Number<U, FromZero, MOST>;
/// A number on either side of zero.
pub type Position<U, const MOST: u32> = Number<U, AnySign, MOST>;

impl<U, S, const MOST: u32> Number<U, S, MOST> {
    /// The bare number, in the unit of its type.
    #[must_use]
    pub fn bare(self) -> f64 {
        self.value
    }
}

impl<U: Unit, S: Sign, const MOST: u32> Number<U, S, MOST> {
    fn expected() -> String {
        let most = format!("{MOST} {}", U::SYMBOL);
        let most = most.trim_end();
        match (S::NEGATIVE, S::ZERO) {
            (true, _) => format!("a number from -{most} to {most}"),
            (false, true) => format!("a number from 0 to {most}"),
            (false, false) => format!("a number above 0, at most {most}"),
        }
    }

    /// Code, message and help of what is amiss with a number.
    fn amiss(value: f64) -> Option<(&'static str, &'static str, &'static str)> {
        let most = f64::from(MOST);
        if value.is_nan() {
            return Some(("nan", "this is not a number", "write the figure, or leave the key out"));
        }
        if value.is_infinite() {
            return Some(("infinite", "this number is infinite", "write the figure, or leave the key out"));
        }
        if value == 0.0 {
            let help = "what is not known is left out; zero is not a size";
            return (!S::ZERO).then_some(("zero", "this can't be zero", help));
        }
        if value < 0.0 && !S::NEGATIVE {
            return Some(("negative", "this can't be negative", "take the sign away, or correct the figure"));
        }
        let help = "look at the decimal mark and at the unit that the key names";
        match value.abs() {
            size if size > most => Some(("absurd", "this is too large to be true", help)),
            size if size < most * 1e-9 => Some(("absurd", "this is too small to be true", help)),
            _ => None,
        }
    }
}

impl<U: Unit, S: Sign, const MOST: u32> Read for Number<U, S, MOST> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let value = bare_number(node, reader, Self::expected)?;
        let Some((code, message, help)) = Self::amiss(value) else {
            return Some(Self { value, unit: PhantomData });
        };
        let found = shortened(node.written().unwrap_or_default());
        reader
            .fault(code, node, message, |finding| finding.found(found).expected(Self::expected()).help(help));
        None
    }
}

impl<U: Unit, S: Sign, const MOST: u32> JsonSchema for Number<U, S, MOST> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Number".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let least = match (S::NEGATIVE, S::ZERO) {
            (true, _) => json!({ "minimum": -i64::from(MOST) }),
            (false, true) => json!({ "minimum": 0 }),
            (false, false) => json!({ "exclusiveMinimum": 0 }),
        };
        let mut object = schema(least);
        object.insert("type".into(), "number".into());
        object.insert("maximum".into(), MOST.into());
        object
    }
}

/// A whole number from `LEAST` to `MOST`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Count<const LEAST: u32, const MOST: u32>(u32);

impl<const LEAST: u32, const MOST: u32> Count<LEAST, MOST> {
    /// The number.
    #[must_use]
    pub fn bare(self) -> u32 {
        self.0
    }
}

impl<const LEAST: u32, const MOST: u32> Read for Count<LEAST, MOST> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let expected = || format!("a whole number from {LEAST} to {MOST}");
        let value = bare_number(node, reader, expected)?;
        let (code, message) = match value {
            value if value.is_nan() => ("nan", "this is not a number"),
            value if value.is_infinite() => ("infinite", "this number is infinite"),
            value if value < 0.0 => ("negative", "this can't be negative"),
            0.0 if LEAST > 0 => ("zero", "this can't be zero"),
            value if value > f64::from(MOST) => ("absurd", "there can't be so many"),
            value if value.fract() != 0.0 => ("not-whole", "this is counted, not measured"),
            value => return Some(Self(value as u32)),
        };
        let found = shortened(node.written().unwrap_or_default());
        reader.fault(code, node, message, |finding| finding.found(found).expected(expected()));
        None
    }
}

impl<const LEAST: u32, const MOST: u32> JsonSchema for Count<LEAST, MOST> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Count".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        schema(json!({ "type": "integer", "minimum": LEAST, "maximum": MOST }))
    }
}

/// The number in a node, whatever its size; what is no number is told with the likeliest mend.
fn bare_number(node: &Node, reader: &mut Reader<'_>, expected: impl Fn() -> String) -> Option<f64> {
    match &node.content {
        Content::Scalar(Scalar { kind: ScalarKind::Number(value), .. }) => return Some(*value),
        Content::Scalar(scalar) if looks_like_nan(scalar) => return Some(f64::NAN),
        Content::Scalar(scalar) if !scalar.quoted && is_huge(&scalar.written) => return Some(f64::MAX),
        _ => {}
    }
    reader.fault("wrong-type", node, "a number is expected here", |finding| {
        let finding = finding.found(node.described()).expected(expected());
        match mend(node) {
            Some(help) => finding.help(help),
            None => finding,
        }
    });
    None
}

fn looks_like_nan(scalar: &Scalar) -> bool {
    ["nan", ".nan"].contains(&scalar.written.to_lowercase().as_str())
}

/// A number past what a double holds, which YAML leaves as text.
fn is_huge(written: &str) -> bool {
    written.starts_with(|first: char| first.is_ascii_digit() || first == '-')
        && written.parse::<f64>().is_ok_and(f64::is_infinite)
}

fn mend(node: &Node) -> Option<String> {
    let Content::Scalar(scalar) = &node.content else { return None };
    let written = scalar.written.trim();
    match written.parse::<f64>() {
        Ok(_) if scalar.quoted => return Some(format!("write it without quotes: {written}")),
        Ok(value) => return Some(format!("write it as {value}")),
        Err(_) => {}
    }
    let plain = written.replace('_', "").replace(',', ".");
    if plain.parse::<f64>().is_ok() {
        return Some(format!("write it as {plain}: a point before the decimals, nothing between thousands"));
    }
    let figures = plain.find(|letter: char| !letter.is_ascii_digit() && letter != '.' && letter != '-');
    let (figures, unit) = plain.split_at(figures.unwrap_or(0));
    figures
        .parse::<f64>()
        .is_ok()
        .then(|| format!("write {figures} alone, without \"{}\": the key names the unit", unit.trim()))
}
