//! The known name that a wrong one was probably meant to be.

/// The nearest of the known names, where one is near: a slip of a letter or two, another case, or the
/// name without its unit.
///
/// ```
/// use fittingcards::diagnostics::nearest;
/// assert_eq!(nearest("messanger-120", ["messenger-95", "messenger-120"]), Some("messenger-120"));
/// assert_eq!(nearest("holding_load", ["holding_load_kN", "name"]), Some("holding_load_kN"));
/// assert_eq!(nearest("colour", ["name", "number"]), None);
/// ```
#[must_use]
pub fn nearest<'a>(wrong: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let wrong = wrong.to_lowercase();
    known
        .into_iter()
        .filter_map(|name| distance(&wrong, &name.to_lowercase()).map(|distance| (distance, name)))
        .min()
        .map(|(_, name)| name)
}

/// How many letters are amiss; `None` where the names are too far apart for a slip.
fn distance(wrong: &str, name: &str) -> Option<usize> {
    let lengths = (wrong.chars().count(), name.chars().count());
    if lengths.0 >= 4 && name.starts_with(wrong) || lengths.1 >= 4 && wrong.starts_with(name) {
        return Some(1);
    }
    let allowed = (lengths.0.max(lengths.1) / 3).min(3);
    if lengths.0.abs_diff(lengths.1) > allowed {
        return None;
    }
    Some(strsim::damerau_levenshtein(wrong, name)).filter(|distance| *distance <= allowed)
}
