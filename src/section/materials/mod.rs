//! The built-in materials.

mod aluminiums;
mod coppers;
mod fittings;
mod row;
mod steels;

use super::Material;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

static BUILT_IN: LazyLock<BTreeMap<String, Arc<Material>>> = LazyLock::new(|| {
    let all = [coppers::all(), aluminiums::all(), steels::all(), fittings::all()].concat();
    all.into_iter().map(|material| (material.id.clone(), Arc::new(material))).collect()
});

/// Every built-in material by its id.
///
/// Each names its sources; a figure that no source gives is absent, not guessed.
///
/// ```
/// use fittingcards::section::materials;
/// let copper = &materials::built_in()["copper-hard-drawn"];
/// assert_eq!(copper.density.map(|density| density.kg_per_m3()), Some(8890.0));
/// ```
#[must_use]
pub fn built_in() -> &'static BTreeMap<String, Arc<Material>> {
    &BUILT_IN
}

/// The built-in material of an id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Material> {
    BUILT_IN.get(id).map(Arc::as_ref)
}
