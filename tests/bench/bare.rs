//! The bare calls of the drawing libraries on faces that the program has laid out: parsing, pixels, PNG and PDF, with
//! nothing of ours in between.

use fittingcards::cards::{Card, Design, Face, Input, Layer, make};
use fittingcards::register::Register;
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::{catalogue, facts, mixups};
use krilla_svg::{SurfaceExt, SvgSettings};
use std::hint::black_box;

/// Cards that stand for all.
const SAMPLE: usize = 60;
/// Resolution of previews, and pixels a millimetre at it.
const PIXELS: f64 = 150.0 / 25.4;

/// What the libraries take for one card on average, in seconds of the processor.
pub fn seconds_a_card(world: &DiskWorld) -> f64 {
    let cards = sample(world);
    let fonts = Fonts::new(&world.fonts(), &[]).0;
    let options = fonts.options();
    let before = super::cpu_seconds();
    let mut document = krilla::Document::new();
    for card in &cards {
        for face in [&card.front, &card.back] {
            let trees: Vec<usvg::Tree> = layers(face).map(|layer| parsed(layer, &options)).collect();
            black_box(png(face, &trees));
            page(&mut document, face, &trees);
        }
    }
    black_box(document.finish().expect("a PDF"));
    (super::cpu_seconds() - before) / cards.len() as f64
}

fn sample(world: &DiskWorld) -> Vec<Card> {
    let catalogue = catalogue::load(world).expect("a catalogue").catalogue;
    let fonts = Fonts::new(&world.fonts(), &[]).0;
    let (design, _) = Design::load(world, &[]).expect("layouts");
    let (mixups, register) = (mixups::find(&catalogue), Register::default());
    let input =
        Input { catalogue: &catalogue, mixups: &mixups, register: &register, design: &design, fonts: &fonts };
    let facts = facts::of_catalogue(&catalogue, &mixups);
    let step = facts.len().div_ceil(SAMPLE).max(1);
    facts.iter().step_by(step).filter_map(|facts| make(input, facts).0).collect()
}

fn layers(face: &Face) -> impl Iterator<Item = &Layer> {
    face.blocks.iter().flat_map(|block| &block.layers)
}

fn parsed(layer: &Layer, options: &usvg::Options<'_>) -> usvg::Tree {
    let (width, height) = (layer.tree.size().width(), layer.tree.size().height());
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\">{}</svg>",
        layer.source
    );
    usvg::Tree::from_str(&svg, options).expect("sound")
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the size of a picture")]
fn png(face: &Face, trees: &[usvg::Tree]) -> Vec<u8> {
    let side = |mm: f64| (mm * PIXELS).ceil() as u32;
    let size = (side(face.trim.0.mm()), side(face.trim.1.mm()));
    let mut pixmap = resvg::tiny_skia::Pixmap::new(size.0, size.1).expect("pixels");
    pixmap.fill(resvg::tiny_skia::Color::WHITE);
    let transform = resvg::tiny_skia::Transform::from_scale(PIXELS as f32, PIXELS as f32);
    for tree in trees {
        resvg::render(tree, transform, &mut pixmap.as_mut());
    }
    let (pixels, _) = pixmap.data().as_chunks::<4>();
    let mut samples = vec![0; 3 * pixels.len()];
    for (sample, &[red, green, blue, _]) in samples.as_chunks_mut().0.iter_mut().zip(pixels) {
        *sample = [red, green, blue];
    }
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, size.0, size.1);
    encoder.set_color(png::ColorType::Rgb);
    let mut writer = encoder.write_header().expect("a head");
    writer.write_image_data(&samples).expect("pixels");
    writer.finish().expect("an end");
    file
}

fn page(document: &mut krilla::Document, face: &Face, trees: &[usvg::Tree]) {
    let (width, height) = (face.trim.0.mm() as f32, face.trim.1.mm() as f32);
    let settings = krilla::page::PageSettings::from_wh(width, height).expect("a page");
    let mut page = document.start_page_with(settings);
    let mut surface = page.surface();
    for tree in trees {
        let size = krilla::geom::Size::from_wh(tree.size().width(), tree.size().height()).expect("a size");
        surface.draw_svg(tree, size, SvgSettings::default());
    }
    surface.finish();
    page.finish();
}
