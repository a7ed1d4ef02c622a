//! What layouts are filled with, made ready once for many fillings.

use serde_json::{Map, Value};
use tera::Context;

/// Named values, cheap to copy.
///
/// ```
/// use fittingcards::layouts::{Layouts, Values};
/// use fittingcards::source::{FilePath, MemoryWorld};
/// let world = MemoryWorld::new().with(FilePath::layouts("trial/a.svg"), "{{ name }}, {{ size }}");
/// let (layouts, _) = Layouts::load(&world, "trial", &[])?;
/// let values = Values::from_iter([("name".to_owned(), "Cone".into())]);
/// let larger = values.clone().with("size", 18.into());
/// assert_eq!(layouts.fill_ready("trial/a.svg", &larger).expect("filled"), "Cone, 18");
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Values(Context);

impl Values {
    /// The same values, one of them set anew.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.0.insert(name, &value);
        self
    }

    pub(super) fn context(&self) -> &Context {
        &self.0
    }
}

impl FromIterator<(String, Value)> for Values {
    fn from_iter<I: IntoIterator<Item = (String, Value)>>(values: I) -> Self {
        let mut context = Context::new();
        for (name, value) in values {
            context.insert(name, &value);
        }
        Self(context)
    }
}

impl From<Map<String, Value>> for Values {
    fn from(values: Map<String, Value>) -> Self {
        values.into_iter().collect()
    }
}
