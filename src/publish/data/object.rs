//! JSON objects that leave out what is not known.

use crate::units::{Angle, Area, Force, Length, Range, Torque};
use jiff::civil::Date;
use serde_json::{Map, Value};

/// A JSON object in the making.
pub(super) struct Object(Map<String, Value>);

impl From<Object> for Value {
    fn from(object: Object) -> Self {
        Self::Object(object.0)
    }
}

impl Object {
    pub(super) fn new() -> Self {
        Self(Map::new())
    }

    pub(super) fn put(&mut self, key: &str, value: impl Into<Value>) {
        self.0.insert(key.to_owned(), value.into());
    }

    /// A value that may not be known.
    pub(super) fn known<T: Into<Value>>(&mut self, key: &str, value: Option<T>) {
        if let Some(value) = value {
            self.put(key, value);
        }
    }

    /// A text that may be empty.
    pub(super) fn text(&mut self, key: &str, text: &str) {
        self.known(key, (!text.is_empty()).then_some(text));
    }

    /// A list, empty or not.
    pub(super) fn list<T: Into<Value>>(&mut self, key: &str, values: impl IntoIterator<Item = T>) {
        self.put(key, values.into_iter().map(Into::into).collect::<Vec<Value>>());
    }

    /// An object that may have nothing in it.
    pub(super) fn part(&mut self, key: &str, object: Self) {
        self.known(key, (!object.0.is_empty()).then_some(object.0));
    }

    pub(super) fn number(&mut self, key: &str, value: impl Into<Option<f64>>) {
        self.known(key, value.into().map(clean));
    }

    pub(super) fn mm(&mut self, key: &str, length: impl Into<Option<Length>>) {
        self.number(key, length.into().map(Length::mm));
    }

    pub(super) fn mm2(&mut self, key: &str, area: impl Into<Option<Area>>) {
        self.number(key, area.into().map(Area::mm2));
    }

    pub(super) fn kn(&mut self, key: &str, force: Option<Force>) {
        self.number(key, force.map(Force::kn));
    }

    pub(super) fn degrees(&mut self, key: &str, angle: Option<Angle>) {
        self.number(key, angle.map(Angle::degrees));
    }

    pub(super) fn date(&mut self, key: &str, date: Option<Date>) {
        self.known(key, date.map(|date| date.to_string()));
    }

    pub(super) fn mm_window(&mut self, key: &str, window: Option<Range<Length>>) {
        self.known(key, window.map(|window| min_max(window.least().mm(), window.most().mm())));
    }

    pub(super) fn nm_window(&mut self, key: &str, window: Option<Range<Torque>>) {
        self.known(key, window.map(|window| min_max(window.least().nm(), window.most().nm())));
    }
}

/// Least and most.
pub(super) fn min_max(min: f64, max: f64) -> Value {
    let mut object = Object::new();
    object.number("min", min);
    object.number("max", max);
    object.into()
}

/// A number without the noise of binary fractions: twelve digits after the first, and no negative zero.
fn clean(value: f64) -> f64 {
    format!("{value:.12e}").parse().unwrap_or(value) + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_twelve_digits_and_lose_the_noise() {
        assert_eq!(clean(0.1 + 0.2), 0.3);
        assert_eq!(clean(116.992_928_561_4), 116.992_928_561_4);
        assert!(clean(-0.0).is_sign_positive());
    }

    #[test]
    fn what_is_not_known_is_absent() {
        let mut object = Object::new();
        object.mm("length_mm", None);
        object.text("name", "");
        object.part("inner", Object::new());
        object.list("steps", Vec::<String>::new());
        assert_eq!(Value::from(object).to_string(), r#"{"steps":[]}"#);
    }
}
