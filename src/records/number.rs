//! Numbers of records: a unit, a sign and a bound each.

use super::correction::correction;
use super::field::{Read, Reader};
use super::node::{Content, Node, Scalar, ScalarKind};
use super::schema::{schema, taking};
use crate::diagnostics::shortened;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::json;
use std::borrow::Cow;
use std::marker::PhantomData;

/// The unit that a key names.
pub trait Unit {
    /// Its symbol; empty for a plain number.
    const SYMBOL: &'static str;
    /// The smallest size that anything on a fitting has, measured in it.
    const LEAST: f64;
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident = $symbol:literal from $least:literal;)+) => {
        $(
            $(#[$doc])*
            #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
            pub struct $name;

            impl Unit for $name {
                const SYMBOL: &'static str = $symbol;
                const LEAST: f64 = $least;
            }
        )+
    };
}

units! {
    /// Millimetres.
    Mm = "mm" from 0.01;
    /// Square millimetres.
    Mm2 = "mm²" from 0.01;
    /// Degrees of angle.
    Deg = "°" from 0.5;
    /// Kilonewtons.
    Kn = "kN" from 0.001;
    /// Newton metres.
    Nm = "N·m" from 0.01;
    /// Newtons per square millimetre.
    NPerMm2 = "N/mm²" from 1.0;
    /// Kilograms per cubic metre.
    KgPerM3 = "kg/m³" from 10.0;
    /// Kilograms per kilometre.
    KgPerKm = "kg/km" from 0.01;
    /// Nanoohm metres.
    NohmM = "nΩ·m" from 1.0;
    /// Ohms per kilometre.
    OhmPerKm = "Ω/km" from 0.0001;
    /// Per kelvin.
    PerKelvin = "1/K" from 0.00001;
    /// Percent.
    Percent = "%" from 0.001;
    /// Typographic points.
    Pt = "pt" from 1.0;
    /// No unit.
    Plain = "" from 0.001;
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

/// A finite number of a unit, of a magnitude of at most `MOST`. A size is at least as large as the unit's
/// smallest; what may be zero or negative is, where it is not zero, at least a billionth of `MOST`.
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
            (false, false) => format!("a number from {} to {most}", U::LEAST),
        }
    }

    /// What the size of a number that is not zero must reach.
    fn least() -> f64 {
        if S::ZERO { f64::from(MOST) * 1e-9 } else { U::LEAST }
    }

    /// Code, message and help of what is amiss with a number.
    fn amiss(value: f64) -> Option<(&'static str, &'static str, &'static str)> {
        let most = f64::from(MOST);
        if value.is_nan() {
            return Some(("nan", "this is not a number", "write the number, or leave the key out"));
        }
        if value.is_infinite() {
            return Some(("infinite", "this number is infinite", "write the number, or leave the key out"));
        }
        if value == 0.0 {
            let help = "leave the key out if the size is not known; a size is never zero";
            return (!S::ZERO).then_some(("zero", "this can't be zero", help));
        }
        if value < 0.0 && !S::NEGATIVE {
            return Some((
                "negative",
                "this can't be negative",
                "delete the minus sign, or correct the number",
            ));
        }
        let help = "check the decimal point, and the unit that the key names";
        match value.abs() {
            size if size > most => Some(("absurd", "this number is too large", help)),
            size if size < Self::least() => Some(("absurd", "this number is too small", help)),
            _ => None,
        }
    }
}

impl<U: Unit, S: Sign, const MOST: u32> Read for Number<U, S, MOST> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let value = bare_number(node, reader, U::SYMBOL, Self::expected)?;
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
            (false, false) => json!({ "minimum": U::LEAST }),
        };
        let mut object = schema(least);
        object.insert("type".into(), "number".into());
        object.insert("maximum".into(), MOST.into());
        taking(object, Self::expected())
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

    fn expected() -> String {
        format!("a whole number from {LEAST} to {MOST}")
    }
}

impl<const LEAST: u32, const MOST: u32> Read for Count<LEAST, MOST> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let value = bare_number(node, reader, "", Self::expected)?;
        let (code, message) = match value {
            value if value.is_nan() => ("nan", "this is not a number"),
            value if value.is_infinite() => ("infinite", "this number is infinite"),
            value if value < 0.0 => ("negative", "this can't be negative"),
            0.0 if LEAST > 0 => ("zero", "this can't be zero"),
            value if value > f64::from(MOST) => ("absurd", "this number is too large"),
            value if value.fract() != 0.0 => ("not-whole", "this must be a whole number"),
            value => return Some(Self(value as u32)),
        };
        let found = shortened(node.written().unwrap_or_default());
        reader.fault(code, node, message, |finding| finding.found(found).expected(Self::expected()));
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
        let whole = schema(json!({ "type": "integer", "minimum": LEAST, "maximum": MOST }));
        taking(whole, Self::expected())
    }
}

/// The number in a node, whatever its size; what is no number is told with the likeliest correction.
fn bare_number(
    node: &Node,
    reader: &mut Reader<'_>,
    unit: &str,
    expected: impl Fn() -> String,
) -> Option<f64> {
    match &node.content {
        Content::Scalar(Scalar { kind: ScalarKind::Number(value), written, .. })
            if !value.is_finite() || is_decimal(written) =>
        {
            return Some(*value);
        }
        Content::Scalar(scalar) if looks_like_nan(scalar) => return Some(f64::NAN),
        Content::Scalar(scalar) if looks_infinite(scalar) => return Some(f64::INFINITY),
        Content::Scalar(scalar) if !scalar.quoted && is_huge(&scalar.written) => return Some(f64::MAX),
        _ => {}
    }
    reader.fault("wrong-type", node, "a number is expected here", |finding| {
        let finding = finding.found(node.described()).expected(expected());
        match correction(node, unit) {
            Some(help) => finding.help(help),
            None => finding,
        }
    });
    None
}

fn looks_like_nan(scalar: &Scalar) -> bool {
    ["nan", ".nan"].contains(&scalar.written.to_lowercase().as_str())
}

fn looks_infinite(scalar: &Scalar) -> bool {
    let written = scalar.written.to_lowercase();
    ["inf", ".inf", "infinity", "∞"].contains(&written.trim_start_matches(['-', '+']))
}

/// A number past what a double holds, which YAML leaves as text.
fn is_huge(written: &str) -> bool {
    written.starts_with(|first: char| first.is_ascii_digit() || first == '-')
        && written.parse::<f64>().is_ok_and(f64::is_infinite)
}

/// Whether a number is written as everybody reads it. YAML also takes 0x10 for 16 and 0o17 for 15.
fn is_decimal(written: &str) -> bool {
    written.chars().all(|letter| letter.is_ascii_digit() || "+-.eE".contains(letter))
}
