//! How long a face takes, step by step, and beside it the bare calls of the drawing libraries on the same faces: the
//! mean of all faces, of each the shortest of several times, so that a busy machine shows little. Prints, and asserts
//! nothing.

use fittingcards::cards::{Card, Design, Face, FaceJob, Input, check, jobs};
use fittingcards::facts::CardFacts;
use fittingcards::register::Register;
use fittingcards::sheets::{self, Options, PrintKind};
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::{catalogue, facts, mixups};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// How often each face is made.
const ROUNDS: u32 = 20;
const DPI: f64 = 300.0;

fn main() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/content");
    let world = DiskWorld::new(root, "no layouts of our own");
    let catalogue = catalogue::load(&world).expect("the demo").catalogue;
    let fonts = Fonts::new(&world.fonts(), &[]).0;
    let (design, _) = Design::load(&world, &[]).expect("layouts");
    let mixups = mixups::find(&catalogue);
    let register = Register::default();
    let input =
        Input { catalogue: &catalogue, mixups: &mixups, register: &register, design: &design, fonts: &fonts };
    let facts = facts::of_catalogue(&catalogue, &mixups);
    let jobs: Vec<(&CardFacts, FaceJob<'_>)> =
        facts.iter().flat_map(|facts| jobs(input, facts).map(|job| (facts, job))).collect();
    println!("{} faces, each {ROUNDS} times; milliseconds a face", jobs.len());
    let filled = timed("fill the layout", &jobs, |(_, job)| job.fill().expect("filled"));
    let with_filled: Vec<_> = jobs.iter().zip(&filled).collect();
    let fitted = timed("read and fit", &with_filled, |((_, job), filled)| job.fit(filled).expect("fitted"));
    let with_fitted: Vec<_> = jobs.iter().zip(&fitted).collect();
    let faces = timed("draw and parse", &with_fitted, |((_, job), fitted)| job.draw(fitted).expect("drawn"));
    let with_faces: Vec<_> = jobs.iter().zip(&faces).collect();
    timed("all of these", &jobs, |(_, job)| job.face().expect("a face"));
    timed("preflight", &with_faces, |((facts, _), face)| check(input, facts, face));
    timed("PNG at 300 dpi", &faces, |face| face.png(DPI).expect("a picture"));
    let options = fonts.options();
    let sources: Vec<Vec<String>> = faces.iter().map(sources).collect();
    timed("  bare parsing", &sources, |sources| {
        sources.iter().map(|svg| usvg::Tree::from_str(svg, &options).expect("sound")).collect::<Vec<_>>()
    });
    timed("  bare pixels", &faces, pixels);
    let cards: Vec<Card> =
        faces.chunks_exact(2).zip(&facts).map(|(sides, facts)| card(sides, facts)).collect();
    let settings = &catalogue.settings;
    let sheet = Options {
        title: &settings.title,
        edition: &settings.edition,
        date: settings.date,
        language: &settings.language,
        format: settings.sheet,
        trim: settings.card.trim(),
        fonts: &fonts,
    };
    let file = &sheets::files(PrintKind::Cards, cards.len())[0];
    let (_, time) =
        shortest(|| sheets::pdf(file, cards.len(), cards.iter().cloned(), &sheet).expect("a PDF"));
    told("PDF", time, faces.len());
}

/// Works on everything, and tells how long one takes.
fn timed<T, R>(step: &str, all: &[T], work: impl Fn(&T) -> R) -> Vec<R> {
    let (made, times): (Vec<R>, Vec<Duration>) = all.iter().map(|one| shortest(|| work(one))).unzip();
    told(step, times.iter().sum(), all.len());
    made
}

/// What comes out of a piece of work, and how long it takes at best.
fn shortest<R>(work: impl Fn() -> R) -> (R, Duration) {
    let once = || {
        let start = Instant::now();
        let made = black_box(work());
        (made, start.elapsed())
    };
    (1..ROUNDS).map(|_| once()).fold(once(), |best, next| if next.1 < best.1 { next } else { best })
}

#[expect(clippy::cast_precision_loss, reason = "some dozens of faces")]
fn told(step: &str, time: Duration, count: usize) {
    println!("{step:<18} {:>8.3}", time.as_secs_f64() * 1.0e3 / count as f64);
}

fn card(sides: &[Face], facts: &CardFacts) -> Card {
    let (number, title) = (facts.number.clone(), facts.title.clone());
    Card { number, title, front: sides[0].clone(), back: sides[1].clone() }
}

/// The SVG that each layer of a face is parsed from.
fn sources(face: &Face) -> Vec<String> {
    let layers = face.blocks.iter().flat_map(|block| &block.layers);
    let whole = |layer: &fittingcards::cards::Layer| {
        let size = layer.tree.size();
        let (width, height) = (size.width(), size.height());
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\">{}</svg>",
            layer.source
        )
    };
    layers.map(whole).collect()
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the size of a picture")]
fn pixels(face: &Face) -> resvg::tiny_skia::Pixmap {
    let scale = DPI / 25.4;
    let side = |mm: f64| (mm * scale).ceil() as u32;
    let mut pixmap =
        resvg::tiny_skia::Pixmap::new(side(face.trim.0.mm()), side(face.trim.1.mm())).expect("pixels");
    let transform = resvg::tiny_skia::Transform::from_scale(scale as f32, scale as f32);
    for layer in face.blocks.iter().flat_map(|block| &block.layers) {
        resvg::render(&layer.tree, transform, &mut pixmap.as_mut());
    }
    pixmap
}
