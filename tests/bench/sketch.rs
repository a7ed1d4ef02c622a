//! How long it takes to draw each drawing of the demo, and which is the slowest: printed, never asserted.

use fittingcards::cards::wrong_part;
use fittingcards::catalogue::{Catalogue, Fitting, load};
use fittingcards::mixups;
use fittingcards::sketch::{
    Detail, Options, assembly, conductor_section, end_views, line_up, side_by_side, stages,
};
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

const ROUNDS: u32 = 20;

/// What each drawing takes, in milliseconds.
#[derive(Default)]
struct Times(Vec<(f64, String)>);

impl Times {
    fn time<T>(&mut self, name: String, work: impl Fn() -> T) {
        black_box(work());
        let start = Instant::now();
        for _ in 0..ROUNDS {
            black_box(work());
        }
        self.0.push((start.elapsed().as_secs_f64() * 1000.0 / f64::from(ROUNDS), name));
    }

    fn print(mut self) {
        for (ms, name) in &self.0 {
            println!("{name:<60} {ms:>9.3} ms");
        }
        self.0.sort_by(|a, b| b.0.total_cmp(&a.0));
        let (count, mean) =
            (self.0.len(), self.0.iter().map(|(ms, _)| ms).sum::<f64>() / self.0.len() as f64);
        println!("\n{count} drawings, {mean:.3} ms in the mean; the slowest:");
        for (ms, name) in self.0.iter().take(5) {
            println!("{name:<60} {ms:>9.3} ms");
        }
    }
}

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let world = DiskWorld::new(root.join("content"), root.join("layouts"));
    let catalogue = load(&world).expect("the demo is read").catalogue;
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let page = room(&fonts, 170.0, 90.0);
    let mut times = Times::default();
    for fitting in catalogue.fittings.values() {
        of_fitting(fitting, &catalogue, &fonts, &mut times);
    }
    for conductor in catalogue.conductors.values() {
        times.time(format!("{}, section", conductor.name), || conductor_section(conductor, &page));
    }
    let mixups = mixups::find(&catalogue);
    for body in &mixups.bodies {
        times.time(format!("{}, parts side by side", body.body.name), || {
            line_up(&body.body, &body.parts, &page)
        });
        times.time(format!("{}, ends", body.body.name), || end_views(&body.body, &body.parts, &page));
        let beside = room(&fonts, 91.0, 44.0);
        for case in body.cases.iter().filter(|case| case.danger) {
            let limits = &catalogue.settings.limits;
            times.time(format!("{} with {}", case.fitting.number, case.part.number), || {
                side_by_side(&case.fitting, limits, &wrong_part(case), &beside)
            });
        }
    }
    times.print();
}

fn of_fitting(fitting: &Fitting, catalogue: &Catalogue, fonts: &Fonts, times: &mut Times) {
    let limits = &catalogue.settings.limits;
    for (name, options) in [
        ("on a card", Options { detail: Detail::Card, ..room(fonts, 66.0, 28.0) }),
        ("on a large card", Options { detail: Detail::Card, ..room(fonts, 97.0, 50.0) }),
        ("on a page", room(fonts, 170.0, 90.0)),
    ] {
        times.time(format!("{} {name}", fitting.name), || assembly(fitting, limits, &options));
    }
    // Three drawings at once.
    let stage = room(fonts, 78.0, 56.0);
    times.time(format!("{} in three stages", fitting.name), || stages(fitting, limits, &stage));
}

fn room(fonts: &Fonts, width: f64, height: f64) -> Options<'_> {
    Options::new(fonts, Length::from_mm(width), Length::from_mm(height))
}
