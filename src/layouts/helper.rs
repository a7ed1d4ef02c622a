//! Functions that a layout can call.

use serde_json::{Map, Value};
use std::sync::Arc;
use tera::{Error, Kwargs, State, Tera, TeraResult};

/// What a helper does: named arguments in, a value or a reason out.
pub type HelperFn = dyn Fn(Map<String, Value>) -> Result<Value, String> + Send + Sync;

/// A function that layouts call by name with named arguments.
///
/// ```
/// use fittingcards::layouts::{Helper, Layouts};
/// use fittingcards::source::{FilePath, MemoryWorld};
/// let double = Helper::new("double", |given| given["of"].as_i64().map(|n| (2 * n).into()).ok_or("no `of`".into()));
/// let world = MemoryWorld::new().with(FilePath::layouts("trial/a.svg"), "{{ double(of=21) }}");
/// let (layouts, findings) = Layouts::load(&world, "trial", &[double])?;
/// assert!(!findings.has_errors());
/// assert_eq!(layouts.fill("trial/a.svg", &serde_json::json!({})).expect("filled"), "42");
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
#[derive(Clone)]
pub struct Helper {
    name: &'static str,
    from_values: &'static [&'static str],
    call: Arc<HelperFn>,
}

impl Helper {
    /// A helper with its name.
    #[must_use]
    pub fn new(
        name: &'static str,
        call: impl Fn(Map<String, Value>) -> Result<Value, String> + Send + Sync + 'static,
    ) -> Self {
        Self { name, from_values: &[], call: Arc::new(call) }
    }

    /// The same helper, which also gets these of the values that the layout is filled with, where the
    /// layout does not give them as arguments.
    #[must_use]
    pub fn taking(mut self, from_values: &'static [&'static str]) -> Self {
        self.from_values = from_values;
        self
    }

    pub(super) fn register(&self, tera: &mut Tera) {
        let helper = self.clone();
        tera.register_function(self.name, move |given: Kwargs, state: &State| helper.answer(&given, state));
    }

    fn answer(&self, given: &Kwargs, state: &State) -> TeraResult<tera::Value> {
        let mut given: Map<String, Value> = given.deserialize()?;
        for name in self.from_values {
            if let Some(value) = state.get::<tera::Value>(name)? {
                let value = serde_json::to_value(&value).map_err(Error::message)?;
                given.entry(*name).or_insert(value);
            }
        }
        let answer = (self.call)(given).map_err(Error::message)?;
        tera::Value::try_from_serializable(&answer)
    }
}

impl std::fmt::Debug for Helper {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "Helper({})", self.name)
    }
}
