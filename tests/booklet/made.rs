//! The demo's booklet, made once for all tests.

use fittingcards::booklet::{Input, Page, make, single_file};
use fittingcards::catalogue::{self, Catalogue};
use fittingcards::diagnostics::Findings;
use fittingcards::facts::{self, CardFacts};
use fittingcards::layouts::Layouts;
use fittingcards::mixups;
use fittingcards::register::{Register, Reissue, history};
use fittingcards::sketch::Options;
use fittingcards::source::{DiskWorld, Folder, MemoryWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::LazyLock;

/// Every file of the demo's booklet.
pub static PAGES: LazyLock<Vec<Page>> = LazyLock::new(|| of_folder("content"));

/// The booklet of a catalogue folder below the project's.
pub fn of_folder(folder: &str) -> Vec<Page> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    Made::of(&DiskWorld::new(root.join(folder), root.join("layouts"))).pages
}

/// The demo's records, to be added to.
pub fn content() -> MemoryWorld {
    records("content")
}

/// The records of a folder below the project's, to be added to.
pub fn records(folder: &str) -> MemoryWorld {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let disk = DiskWorld::new(root.join(folder), root.join("layouts"));
    let files = disk.files(Folder::Catalogue).unwrap();
    files.into_iter().fold(MemoryWorld::new(), |world, file| {
        let bytes = disk.read(&file).unwrap();
        world.with(file, bytes)
    })
}

/// A booklet in both forms.
pub struct Made {
    pub pages: Vec<Page>,
    pub single: String,
}

impl Made {
    pub fn of(world: &dyn World) -> Self {
        Self::or_findings(world).unwrap_or_else(|findings| panic!("{:#?}", findings.sorted()))
    }

    /// A booklet in both forms, or what is wrong with it.
    pub fn or_findings(world: &dyn World) -> Result<Self, Findings> {
        let (layouts, faults) = Layouts::load(world, "booklet", &[]).unwrap();
        assert!(!faults.has_errors(), "{:?}", faults.sorted());
        let catalogue: Catalogue = catalogue::load(world).unwrap().catalogue;
        let mixups = mixups::find(&catalogue);
        let facts: BTreeMap<String, CardFacts> = facts::of_catalogue(&catalogue, &mixups)
            .into_iter()
            .map(|facts| (facts.number.clone(), facts))
            .collect();
        let (fonts, _) = Fonts::new(&world.fonts(), &[]);
        let register = Register::of(&catalogue);
        let present = register.next(&catalogue, facts.values(), "", Reissue::default());
        let input = Input {
            catalogue: &catalogue,
            mixups: &mixups,
            facts: &facts,
            register: &register,
            history: &history(&register, &present),
            layouts: &layouts,
            state: "Draft, not issued",
            issues: &BTreeMap::new(),
            drawing: Options::new(&fonts, Length::from_mm(80.0), Length::from_mm(80.0)),
            sheets: &["cards.pdf".to_owned()],
            sheet_of: &facts.keys().map(|number| (number.clone(), "cards.pdf".to_owned())).collect(),
            tag_sheets: &["tags.pdf".to_owned()],
        };
        let face =
            |number: &String, side| (format!("{number}-{side}.svg"), format!("<svg id=\"{number}\"/>"));
        let faces = facts.keys().flat_map(|number| [face(number, "front"), face(number, "back")]).collect();
        let pages = make(input);
        match single_file(input, &faces) {
            Ok(single) => Ok(Self { pages: pages?, single }),
            Err(mut findings) => {
                findings.extend(pages.err().into_iter().flatten());
                Err(findings)
            }
        }
    }
}

/// The pages among the files.
pub fn html() -> impl Iterator<Item = &'static Page> {
    PAGES.iter().filter(|page| page.path.ends_with(".html"))
}
