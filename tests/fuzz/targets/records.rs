//! A file of records, read, checked and linked beside the demo's settings.

use super::{file, findings};
use fittingcards::catalogue::load;
use fittingcards::register::Register;
use fittingcards::source::{FilePath, MemoryWorld};
use std::sync::LazyLock;

const PATHS: [&str; 9] = [
    "parts/x.yaml",
    "catalogue.yaml",
    "conductors/x.yaml",
    "fittings/x.yaml",
    "holders/x.yaml",
    "materials/x.yaml",
    "notices/x.yaml",
    "procedures/x.yaml",
    "register/2025-2.yaml",
];

static SETTINGS: LazyLock<Vec<u8>> =
    LazyLock::new(|| std::fs::read(file::root().join("content/catalogue.yaml")).unwrap());

pub fn run(input: &[u8]) {
    let (path, text) = file::taken(input, &PATHS);
    let world = MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), &*SETTINGS)
        .with(FilePath::catalogue(path), text);
    let loaded = load(&world).expect("what lies in memory is read");
    findings::sound(&loaded.findings, &world);
    for issue in Register::of(&loaded.catalogue).editions().iter().flat_map(|edition| edition.cards.values())
    {
        assert!(issue.issue > 0, "{issue:?}");
    }
    for conductor in loaded.catalogue.conductors.values() {
        let section = &conductor.section;
        assert!(section.metal.is_positive() && section.overall_diameter.is_positive(), "{section:?}");
        assert!(section.mass.is_none_or(|mass| mass.is_positive()), "{section:?}");
        assert!(section.breaking_load.is_none_or(|load| load.is_positive()), "{section:?}");
        assert!(section.resistance_20c.is_none_or(|resistance| resistance.is_positive()), "{section:?}");
    }
}

/// Each document of the demo and of the cases by itself.
pub fn seeds() -> Vec<Vec<u8>> {
    let folders =
        ["content", "tests/cases/constructions/in", "tests/cases/statuses/in", "tests/cases/gaps/in"];
    let files = folders.into_iter().flat_map(file::below).filter(|(path, _)| path.ends_with(".yaml"));
    let documents = files.flat_map(|(path, bytes)| {
        let folder = path.split('/').next().unwrap_or_default();
        let known = PATHS.iter().find(|known| known.starts_with(folder));
        let path = known.unwrap_or_else(|| panic!("{path} is of a kind that is not tried"));
        let text = String::from_utf8(bytes).unwrap();
        text.split("\n---\n").map(|document| file::given(path, document.as_bytes())).collect::<Vec<_>>()
    });
    documents.collect()
}
