//! Stamps as makers cut them, of some 15 characters, in every size: each card prints, each stamp whole and in one line,
//! as large as the card's width allows.

use super::made::{self, Made};
use fittingcards::cards::{Card, Face, ItemMark};
use fittingcards::facts::Content;
use fittingcards::source::{FilePath, MemoryWorld, World};
use fittingcards::typeset::{FontStyle, Fonts, Style};

/// Stamps of the demo, and long ones in their place: with strokes, hyphens and spaces, at which lines break elsewhere.
const LONGER: [(&str, &str); 4] = [
    ("BZ2 14.0", "BZ2 14.0 B 2026"),
    ("CU 14.0", "CU-240/AL-7 REV"),
    ("AG 12.85", "AG-OX/GRIP REV-B"),
    ("T13.0", "T13.0-LH/REV 26"),
];
const FILES: [&str; 4] = [
    "parts/collet-body.yaml",
    "parts/socket-body.yaml",
    "parts/wedges.yaml",
    "parts/sleeves-and-clamps.yaml",
];

/// The safe area is 3 mm inside the cut on each side; a plate keeps 3.3 mm beside its text in all (own rule).
const BESIDE_MM: f64 = 2.0 * 3.0 + 3.3;
/// The gripping part's stamp where the width allows, and the least otherwise, in points (own rule).
const WANTED_PT: f64 = 18.0;
const LEAST_PT: f64 = 10.0;
/// The height of a lying A7 card.
const LOW_MM: f64 = 74.0;

#[test]
fn long_stamps_print_whole_and_as_large_as_the_card_allows() {
    let fonts = Fonts::new(&MemoryWorld::new().fonts(), &[]).0;
    for row in made::sizes() {
        let Made { cards, facts, findings, .. } = made::facts_and_cards(&world(row));
        let found: Vec<&str> =
            findings.sorted().into_iter().map(|finding| finding.message.as_str()).collect();
        assert_eq!(found, [""; 0], "{row}");
        for card in &cards {
            let facts = facts.iter().find(|facts| facts.number == card.number).unwrap();
            unbroken(card, row);
            if let Content::Fitting(fitting) = &facts.content
                && !fitting.gripping_stamp.is_empty()
            {
                let called = format!("{row}: {}", card.number);
                large_enough(&fonts, card, &fitting.gripping_stamp, &called);
            }
        }
    }
}

/// The demo with long stamps, in another size.
fn world(row: &str) -> MemoryWorld {
    let world = made::in_size("content", row);
    FILES.iter().fold(world, |world, file| {
        let text = made::read(&made::folder("content").join(file));
        let stamped = |text: String, (short, long): &(&str, &str)| {
            text.replace(&format!("stamp: \"{short}\""), &format!("stamp: \"{long}\""))
        };
        world.with(FilePath::catalogue(file), LONGER.iter().fold(text, stamped))
    })
}

/// Where the beginning of a long stamp stands on a line, the whole of it does.
fn unbroken(card: &Card, row: &str) {
    for line in card.front.lines().chain(card.back.lines()) {
        for (_, long) in LONGER {
            let (begins, ends) = (&long[..8], &long[long.len() - 8..]);
            let whole = line.contains(long) || !(line.contains(begins) || line.contains(ends));
            assert!(whole, "{row}: {}: “{line}” has a part of {long}", card.number);
        }
    }
}

fn large_enough(fonts: &Fonts, card: &Card, stamp: &str, called: &str) {
    let largest = sizes_of(&card.front, stamp).fold(0.0, f64::max);
    let wide = fonts.line(stamp, Style::points(FontStyle::Bold, WANTED_PT)).extent().mm();
    let (width, height) = (card.front.trim.0.mm() - BESIDE_MM, card.front.trim.1.mm());
    // A lying pocket card has no height left for a line of the stamp's own beside three wrong parts.
    let least = if wide <= width && height > LOW_MM { WANTED_PT } else { LEAST_PT };
    assert!(largest + 0.01 >= least, "{called}: {stamp} at {largest:.1} pt, {wide:.1} of {width:.1} mm");
}

/// The sizes in which a text stands alone on a line, in points.
fn sizes_of<'a>(face: &'a Face, text: &'a str) -> impl Iterator<Item = f64> + 'a {
    face.blocks.iter().flat_map(|block| &block.items).filter_map(move |item| match &item.mark {
        ItemMark::Line { words, size, .. } if words == text => Some(size.pt()),
        _ => None,
    })
}
