//! Sheets as bytes: the same every time, archivable, or refused with a reason.

use super::*;
use crate::cards::{Block, BlockKind, Card, Face, Layer, Side};
use crate::catalogue::{CardFormat, CardSize, FlipEdge, Orientation, SheetFormat, SheetSize};
use crate::source::{FilePath, MemoryWorld, Place, World};
use crate::typeset::Fonts;
use crate::units::Length;
use std::sync::Arc;

const A7: CardFormat = CardFormat { size: CardSize::A7, orientation: Orientation::Portrait };

fn fonts() -> Fonts {
    Fonts::new(&MemoryWorld::new().fonts(), &[]).0
}

fn format(flip: FlipEdge) -> SheetFormat {
    SheetFormat { size: SheetSize::A4, flip, crop_marks: true, bleed: Length::from_mm(2.0) }
}

fn options<'a>(fonts: &'a Fonts, title: &'a str) -> Options<'a> {
    Options {
        title,
        edition: "2026-2",
        date: None,
        language: "en",
        format: format(FlipEdge::LongEdge),
        trim: A7.trim(),
        fonts,
    }
}

fn block(name: &str, kind: BlockKind, body: &str, fonts: &Fonts) -> Block {
    let source = format!(r#"<svg xmlns="http://www.w3.org/2000/svg" width="78" height="109">{body}</svg>"#);
    Block {
        name: name.to_owned(),
        kind,
        alternative: if kind == BlockKind::Drawing { "a square".to_owned() } else { String::new() },
        at: Place::whole(FilePath::layouts("cards/trial.xml")),
        items: Vec::new(),
        layers: vec![Layer {
            source: body.into(),
            tree: Arc::new(usvg::Tree::from_str(&source, &fonts.options()).unwrap()),
            by_syllables: false,
        }],
    }
}

fn face(side: Side, number: &str, fonts: &Fonts) -> Face {
    let heading = format!(r#"<text x="8" y="20" font-size="5">{number} {side:?}</text>"#);
    let blocks = vec![
        block("ground", BlockKind::Ornament, r##"<rect width="78" height="12" fill="#7a3fa0"/>"##, fonts),
        block("heading", BlockKind::Heading, &heading, fonts),
        block("square", BlockKind::Drawing, r#"<rect x="20" y="40" width="20" height="20"/>"#, fonts),
    ];
    Face { side, trim: A7.trim(), bleed: Length::from_mm(2.0), blocks }
}

fn cards(count: usize, fonts: &Fonts) -> Vec<Card> {
    let card = |index: usize| {
        let number = format!("ST-{:04}", 4100 + index);
        Card {
            front: face(Side::Front, &number, fonts),
            back: face(Side::Back, &number, fonts),
            title: "Cone dead-end".to_owned(),
            number,
        }
    };
    (0..count).map(card).collect()
}

#[test]
fn the_same_cards_give_the_same_bytes() {
    let fonts = fonts();
    let options = options(&fonts, "Fittings");
    let (cards, file) = (cards(5, &fonts), &files(PrintKind::Cards, 5)[0]);
    let once = pdf(file, 5, cards.clone(), &options).unwrap();
    assert!(once.starts_with(b"%PDF-1.7"));
    assert!(once == pdf(file, 5, cards, &options).unwrap());
    assert!(proof(&options).unwrap() == proof(&options).unwrap());
}

#[test]
fn a_title_in_letters_that_no_font_has_is_refused() {
    let fonts = fonts();
    let fault =
        pdf(&files(PrintKind::Cards, 1)[0], 1, cards(1, &fonts), &options(&fonts, "架線")).unwrap_err();
    assert!(matches!(&fault, SheetFault::NotArchivable { reason } if reason.contains('架')), "{fault}");
}

#[test]
fn a_drawing_that_can_not_be_archived_is_refused() {
    let fonts = fonts();
    let mut cards = cards(2, &fonts);
    let repeated = r#"<linearGradient id="g" x2="0.1" spreadMethod="repeat"><stop stop-color="red"/><stop
        offset="1"/></linearGradient><rect x="20" y="40" width="20" height="20" fill="url(#g)"/>"#;
    cards[1].back.blocks.push(block("stripes", BlockKind::Ornament, repeated, &fonts));
    let fault = pdf(&files(PrintKind::Cards, 2)[0], 2, cards, &options(&fonts, "Fittings")).unwrap_err();
    assert_eq!(
        fault.to_string(),
        "the sheets can't be made an archivable PDF: a colour gradient of a layout repeats"
    );
}

#[test]
fn a_card_larger_than_the_sheet_is_refused() {
    let fonts = fonts();
    let trim = (Length::from_mm(250.0), Length::from_mm(300.0));
    let fault = proof(&Options { trim, ..options(&fonts, "Fittings") }).unwrap_err();
    assert_eq!(
        fault.to_string(),
        "a card of 250 × 300 mm with its bleed and margins does not fit a sheet of A4"
    );
}

#[test]
fn files_hold_all_cards_once() {
    assert!(files(PrintKind::Cards, 0).is_empty());
    let files = files(PrintKind::Cards, 1000);
    assert_eq!(files.len(), 5);
    assert_eq!(files[4].name, "cards-005.pdf");
    assert!(files.iter().flat_map(|file| file.records.clone()).eq(0..1000));
}
