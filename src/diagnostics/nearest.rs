//! The known name that a wrong one was probably meant to be.

/// The nearest of the known names, where one is near: a slip of a letter or two, another case, or the
/// name without its unit.
///
/// ```
/// use fittingcards::diagnostics::nearest;
/// assert_eq!(nearest("messanger-120", ["messenger-95", "messenger-120"]), Some("messenger-120"));
/// assert_eq!(nearest("holding_load", ["holding_load_kN", "name"]), Some("holding_load_kN"));
/// assert_eq!(nearest("st-4111", ["ST-4101", "ST-4111"]), Some("ST-4111"));
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

/// Names that are known, put in order once: so that thousands of wrong names can be asked for among thousands
/// of known ones.
///
/// ```
/// use fittingcards::diagnostics::KnownNames;
/// let known = KnownNames::new(["messenger-95", "messenger-120"]);
/// assert_eq!(known.nearest("messanger-120"), Some("messenger-120"));
/// ```
#[derive(Debug, Clone, Default)]
pub struct KnownNames {
    names: Vec<String>,
    /// Names in lower case, in order, each with its place in `names`.
    forward: Vec<(String, usize)>,
    /// The same read from their ends.
    backward: Vec<(String, usize)>,
}

impl KnownNames {
    /// Up to this number of names, each is looked at.
    const FEW: usize = 200;
    /// How many neighbours are looked at among more: a slip leaves the start or the end of a name as it was.
    const NEIGHBOURS: usize = 50;

    /// These names.
    #[must_use]
    pub fn new<'a>(names: impl IntoIterator<Item = &'a str>) -> Self {
        let names: Vec<String> = names.into_iter().map(str::to_owned).collect();
        if names.len() <= Self::FEW {
            return Self { names, ..Self::default() };
        }
        let lower = |name: &String| name.to_lowercase();
        let ordered = |name: &dyn Fn(&String) -> String| {
            let mut ordered: Vec<_> =
                names.iter().enumerate().map(|(index, known)| (name(known), index)).collect();
            ordered.sort();
            ordered
        };
        let (forward, backward) = (ordered(&lower), ordered(&|name| reversed(&lower(name))));
        Self { names, forward, backward }
    }

    /// The nearest of them, as [`nearest`] finds it.
    #[must_use]
    pub fn nearest(&self, wrong: &str) -> Option<&str> {
        if self.forward.is_empty() {
            return nearest(wrong, self.names.iter().map(String::as_str));
        }
        let lower = wrong.to_lowercase();
        let near = around(&self.forward, &lower).iter().chain(around(&self.backward, &reversed(&lower)));
        nearest(wrong, near.map(|(_, index)| self.names[*index].as_str()))
    }
}

/// The neighbours of the place that a name has, or would have, among names in order.
fn around<'a>(ordered: &'a [(String, usize)], name: &str) -> &'a [(String, usize)] {
    let place = ordered.partition_point(|(known, _)| known.as_str() < name);
    let end = (place + KnownNames::NEIGHBOURS).min(ordered.len());
    &ordered[place.saturating_sub(KnownNames::NEIGHBOURS)..end]
}

fn reversed(name: &str) -> String {
    name.chars().rev().collect()
}

/// How many letters are amiss; `None` where the names are too far apart for a slip.
fn distance(wrong: &str, name: &str) -> Option<usize> {
    if wrong == name {
        return Some(0);
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    /// A name in another case is that name, however near another one is and whatever comes first.
    #[test]
    fn only_another_case_is_nearest_of_all() {
        let few = ["ST-4101", "ST-4111", "ST-41110", "messenger-120", "messenger-150", "messenger-1500"];
        let filled = (0..300).map(|number| format!("ST-4{number:03}0"));
        let many: Vec<String> = few.iter().map(|name| (*name).to_owned()).chain(filled).collect();
        let known = KnownNames::new(many.iter().map(String::as_str));
        for (wrong, meant) in
            [("st-4111", "ST-4111"), ("Messenger-150", "messenger-150"), ("MESSENGER-120", few[3])]
        {
            assert_eq!(nearest(wrong, few), Some(meant));
            assert_eq!(nearest(wrong, few.iter().rev().copied()), Some(meant));
            assert_eq!(known.nearest(wrong), Some(meant));
        }
    }

    /// Against the search that looks at every name, wherever it finds a single slip.
    #[test]
    fn among_many_names_a_slip_is_found_as_among_few() {
        let names: Vec<String> = (0..2000).map(|number| format!("ST-{}", 10_000 + number * 7)).collect();
        let known = KnownNames::new(names.iter().map(String::as_str));
        for wrong in ["SR-10070", "ST-1007", "st-13500x", "T-10700", "ST10007"] {
            let near = known.nearest(wrong).expect("a name that is near");
            let all = nearest(wrong, names.iter().map(String::as_str)).expect("a name that is near");
            let far = |name: &str| distance(&wrong.to_lowercase(), &name.to_lowercase());
            assert_eq!(far(near), far(all), "{wrong}: {near} {all}");
        }
        assert_eq!(known.nearest("messenger-95"), None);
    }
}
