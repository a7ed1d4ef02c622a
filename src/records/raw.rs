//! A YAML value without places, doubled keys kept.

use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};

/// What YAML makes of a value.
pub(super) enum Raw {
    Empty,
    Truth(bool),
    Number(f64),
    Text(String),
    List(Vec<Raw>),
    Map(Vec<(Raw, Raw)>),
}

impl<'de> Deserialize<'de> for Raw {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(AnyValue)
    }
}

struct AnyValue;

// Whole numbers become floating ones: no size needs more than 53 bits.
impl<'de> Visitor<'de> for AnyValue {
    type Value = Raw;

    fn expecting(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str("a YAML value")
    }

    fn visit_unit<E: Error>(self) -> Result<Raw, E> {
        Ok(Raw::Empty)
    }

    fn visit_bool<E: Error>(self, truth: bool) -> Result<Raw, E> {
        Ok(Raw::Truth(truth))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Raw, E> {
        Ok(Raw::Number(number as f64))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Raw, E> {
        Ok(Raw::Number(number as f64))
    }

    fn visit_i128<E: Error>(self, number: i128) -> Result<Raw, E> {
        Ok(Raw::Number(number as f64))
    }

    fn visit_u128<E: Error>(self, number: u128) -> Result<Raw, E> {
        Ok(Raw::Number(number as f64))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Raw, E> {
        Ok(Raw::Number(number))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Raw, E> {
        Ok(Raw::Text(text.to_owned()))
    }

    fn visit_string<E: Error>(self, text: String) -> Result<Raw, E> {
        Ok(Raw::Text(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Raw, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Raw::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Raw, A::Error> {
        let mut map = Vec::new();
        while let Some(entry) = entries.next_entry()? {
            map.push(entry);
        }
        Ok(Raw::Map(map))
    }
}
