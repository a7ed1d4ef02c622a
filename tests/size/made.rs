//! The booklet of a catalogue on a disk, for tests and benches of its size.

use fittingcards::booklet::{Booklet, Input};
use fittingcards::layouts::Layouts;
use fittingcards::register::Register;
use fittingcards::sketch::Options;
use fittingcards::source::World;
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use fittingcards::{catalogue, facts, mixups};
use std::collections::BTreeMap;

/// Hands a booklet on: without cards to show, and all of it a draft.
pub fn with_booklet<T>(world: &dyn World, then: impl FnOnce(&Booklet<'_>) -> T) -> T {
    let (layouts, _) = Layouts::load(world, "booklet", &[]).expect("layouts");
    let catalogue = catalogue::load(world).expect("records").catalogue;
    let mixups = mixups::find(&catalogue);
    let (facts, issues) = (facts::of_catalogue(&catalogue, &mixups), BTreeMap::new());
    let facts: BTreeMap<_, _> = facts.into_iter().map(|facts| (facts.number.clone(), facts)).collect();
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    then(&Booklet::new(Input {
        catalogue: &catalogue,
        mixups: &mixups,
        facts: &facts,
        register: &Register::of(&catalogue),
        history: &[],
        layouts: &layouts,
        state: "Draft, not issued",
        issues: &issues,
        drawing: Options::new(&fonts, Length::from_mm(80.0), Length::from_mm(80.0)),
        sheets: &[],
        sheet_of: &BTreeMap::new(),
        tag_sheets: &[],
    }))
}
