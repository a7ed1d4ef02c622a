//! A contact sheet of every drawing of the demo, light, dark and in grey, for people to look at: it is
//! written to `target/contact_sheet.html` and not shipped.

use fittingcards::catalogue::{Catalogue, load};
use fittingcards::mixups;
use fittingcards::sketch::{
    Detail, Drawing, Options, assembly, conductor_section, conductor_true_size, dark_rules, key, line_up,
    stages, worn_section, wrong_part,
};
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use std::fmt::Write;
use std::path::Path;

const LOOK: &str = "body { font: 12px sans-serif; margin: 0 } section { padding: 12px } \
    figure { display: inline-block; margin: 4px; padding: 2px; border: 1px solid #8884; vertical-align: top } \
    .grey { filter: grayscale(1) } .dark { background: #14171a; color: #f4f5f6 }";

#[test]
fn every_drawing_of_the_demo_is_on_one_sheet() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let world = DiskWorld::new(root.join("content"), root.join("layouts"));
    let catalogue = load(&world).expect("the demo is read").catalogue;
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let drawings = drawings(&catalogue, &fonts);
    let mut page =
        format!("<!doctype html><meta charset=\"utf-8\"><title>Contact sheet</title><style>{LOOK}");
    for rule in dark_rules().lines() {
        let _ = writeln!(page, ".dark {rule}");
    }
    page.push_str("</style>");
    for look in ["light", "dark", "grey"] {
        let _ = write!(page, "<section class=\"{look}\"><h1>{look}</h1>");
        for drawing in &drawings {
            let (svg, scale) = (drawing.to_svg(), &drawing.scale);
            let _ = write!(page, "<figure>{svg}<figcaption>{} {scale}</figcaption></figure>", drawing.title);
        }
        page.push_str("</section>");
    }
    std::fs::write(root.join("target/contact_sheet.html"), page).unwrap();
    let largest = drawings.iter().map(|drawing| drawing.to_svg().len()).max().unwrap();
    assert!(largest < 60_000, "the largest drawing has {largest} bytes");
}

fn drawings(catalogue: &Catalogue, fonts: &Fonts) -> Vec<Drawing> {
    let room = |width: f64, height: f64| Options::new(fonts, Length::from_mm(width), Length::from_mm(height));
    let card = Options { detail: Detail::Card, ..room(66.0, 28.0) };
    let limits = &catalogue.settings.limits;
    let mut all = Vec::new();
    for fitting in catalogue.fittings.values() {
        all.push(assembly(fitting, limits, &card));
        all.push(assembly(fitting, limits, &room(170.0, 90.0)));
    }
    for conductor in catalogue.conductors.values() {
        all.push(conductor_true_size(conductor, &card));
        all.push(conductor_section(conductor, &room(30.0, 30.0)));
        all.push(conductor_section(conductor, &room(90.0, 70.0)));
        if let Some(height) = conductor.wear.as_ref().and_then(|wear| wear.stop_height) {
            all.push(worn_section(conductor, height, &room(60.0, 50.0)));
        }
    }
    for fitting in catalogue.fittings.values() {
        all.extend(stages(fitting, limits, &room(120.0, 60.0)));
    }
    for body in mixups::find(catalogue).bodies {
        all.push(line_up(&body.body, &body.gripping_parts, &room(120.0, 60.0)));
        for case in body.cases.iter().filter(|case| !case.right) {
            all.push(wrong_part(&case.fitting, &case.part, &case.outcome, &room(80.0, 50.0)));
        }
    }
    all.extend(key(&room(60.0, 40.0)));
    all
}
