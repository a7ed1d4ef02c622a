//! How long it takes to draw one assembly or section of the demo: printed, never asserted.

use fittingcards::catalogue::load;
use fittingcards::sketch::{Detail, Drawing, Options, assembly, conductor_section, stages};
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

const ROUNDS: u32 = 50;

fn time(name: &str, work: impl Fn() -> Drawing) {
    black_box(work());
    let start = Instant::now();
    for _ in 0..ROUNDS {
        black_box(work());
    }
    println!("{name:<60} {:>9.3} ms", start.elapsed().as_secs_f64() * 1000.0 / f64::from(ROUNDS));
}

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let world = DiskWorld::new(root.join("content"), root.join("layouts"));
    let catalogue = load(&world).expect("the demo is read").catalogue;
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let page = Options::new(&fonts, Length::from_mm(170.0), Length::from_mm(90.0));
    let card = Options {
        detail: Detail::Card,
        ..Options::new(&fonts, Length::from_mm(66.0), Length::from_mm(28.0))
    };
    let limits = &catalogue.settings.limits;
    for fitting in catalogue.fittings.values() {
        time(&format!("{} on a card", fitting.name), || assembly(fitting, limits, &card));
        time(&format!("{} on a page", fitting.name), || assembly(fitting, limits, &page));
    }
    for fitting in catalogue.fittings.values().take(1) {
        time(&format!("{} in stages", fitting.name), || stages(fitting, limits, &page)[0].clone());
    }
    for conductor in catalogue.conductors.values() {
        time(&format!("{}, section", conductor.name), || conductor_section(conductor, &page));
    }
}
