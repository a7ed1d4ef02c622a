//! The room of faces: large cards are filled before they stand blank, full ones hold what a contact wire's back and a long
//! stamp ask of them.

use super::made;
use fittingcards::cards::{Face, ItemMark};
use fittingcards::source::{FilePath, MemoryWorld};

/// The sizes in points that classes of type have on an A6 card where there is room (layouts/cards/style.yaml).
const WANTED: [(&str, f64); 3] = [("check", 14.5), ("step", 13.5), ("body", 13.5)];

/// A face of a large card stands a third blank only where its texts are as large as they are wanted.
#[test]
fn large_cards_grow_before_a_third_of_them_is_blank() {
    let mut blank = Vec::new();
    for row in ["A6,portrait", "A6,landscape"] {
        for card in &made::once("content", row).cards {
            for face in [&card.front, &card.back] {
                let share = blank_share(face);
                if share > 1.0 / 3.0 && !is_as_large_as_wanted(face) {
                    blank.push(format!("{row}: {} {}: {share:.2}", card.number, face.side.word()));
                }
            }
        }
    }
    assert!(blank.is_empty(), "{blank:?}");
}

/// What parts the ink of two lines of a text is not blank, in millimetres.
const LINES_APART: f64 = 1.5;

/// How much of the height inside the margins of 3 mm nothing stands in.
fn blank_share(face: &Face) -> f64 {
    let items = face.blocks.iter().flat_map(|block| &block.items);
    let counted = items.filter(|item| !matches!(item.mark, ItemMark::Strike | ItemMark::ChangeBar));
    let mut spans: Vec<(f64, f64)> = counted.map(|item| (item.bounds.y0, item.bounds.y1)).collect();
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (top, foot) = (3.0, face.trim.1.mm() - 3.0);
    let (mut reached, mut blank) = (top, 0.0);
    for (from, to) in spans {
        let gap = from.min(foot) - reached;
        blank += if gap > LINES_APART { gap } else { 0.0 };
        reached = reached.max(to);
    }
    (blank + (foot - reached).max(0.0)) / (foot - top)
}

/// Step stands as far below step as line below line: on an upright card and on every A6 of the demo 1.15 type sizes from one
/// number to the next at least (leading that a finger follows: common practice, no source).
#[test]
fn steps_keep_their_leading_from_one_to_the_next() {
    let (mut near, mut seen) = (Vec::new(), 0);
    for row in ["A7,portrait", "A6,portrait", "A6,landscape"] {
        for card in &made::once("content", row).cards {
            let numbers = step_numbers(&card.back);
            for ((from, size), (to, _)) in numbers.iter().zip(numbers.iter().skip(1)) {
                seen += 1;
                // The foot of a 3 or a 6 lies a little below the base line.
                if to - from < 1.15 * size - 0.05 {
                    near.push(format!("{row}: {}: {:.2} type sizes", card.number, (to - from) / size));
                }
            }
        }
    }
    assert!(near.is_empty() && seen > 150, "{seen} seen: {near:#?}");
}

/// Where the numbers of the steps stand, and their type size, in millimetres.
fn step_numbers(face: &Face) -> Vec<(f64, f64)> {
    let steps = face.blocks.iter().filter(|block| block.name == "steps").flat_map(|block| &block.items);
    let numbers = steps.filter_map(|item| match &item.mark {
        ItemMark::Line { words, size, .. } if words.chars().all(|letter| letter.is_ascii_digit()) => {
            Some((item.bounds.y1, size.mm()))
        }
        _ => None,
    });
    numbers.collect()
}

fn is_as_large_as_wanted(face: &Face) -> bool {
    face.blocks.iter().flat_map(|block| &block.items).all(|item| match &item.mark {
        ItemMark::Line { class, size, .. } => {
            let wanted = WANTED.iter().find(|(name, _)| *name == class.word());
            wanted.is_none_or(|(_, wanted)| size.pt() >= wanted - 0.05)
        }
        _ => true,
    })
}

/// The stamp stands clear of the line round it, half of which lies inside its box: by its own width at least, in every size
/// (common practice, no source). Would miss a plate that is drawn elsewhere than the face's items say; tests/print measures.
#[test]
fn a_stamp_touches_no_line_of_its_plate() {
    let (mut near, mut seen) = (Vec::new(), 0);
    for row in made::sizes() {
        for card in &made::once("content", row).cards {
            for block in card.front.blocks.iter().filter(|block| block.name == "stamp") {
                let Some(plate) = block.items.iter().find(|item| is_plate(&item.mark)) else { continue };
                for text in block.items.iter().filter(|item| matches!(item.mark, ItemMark::Line { .. })) {
                    seen += 1;
                    let free = (text.bounds.x0 - plate.bounds.x0).min(plate.bounds.x1 - text.bounds.x1);
                    if free < 0.7 {
                        near.push(format!("{row}: {}: {free:.2} mm", card.number));
                    }
                }
            }
        }
    }
    assert!(near.is_empty() && seen > 150, "{seen} seen: {near:#?}");
}

fn is_plate(mark: &ItemMark) -> bool {
    matches!(mark, ItemMark::Frame(name) if name == "plate")
}

/// Six steps, three readings and four lines of what is rejected beside the heights of the worn wire, on a pocket card.
#[test]
fn a_full_contact_wire_back_fits_a_pocket_card() {
    let found = findings(&full_contact_wire("A7,portrait"));
    assert_eq!(found, [""; 0]);
    let made = made::facts_and_cards(&full_contact_wire("A7,portrait"));
    let card = made.cards.iter().find(|card| card.number == "ST-4200").unwrap();
    let lines: Vec<&str> = card.back.lines().collect();
    for text in ["9.2", "sunk 6.0 to 10.5 mm", "0 to 2.0 mm"] {
        assert!(lines.iter().any(|line| line.contains(text)), "{text} in {lines:?}");
    }
}

fn full_contact_wire(row: &str) -> MemoryWorld {
    let read = |file: &str| made::read(&made::folder("content").join(file));
    let (procedures, fittings) = ("procedures/dead-ends.yaml", "fittings/wedge-dead-ends.yaml");
    let fuller = read(procedures)
        .replace(
            "Paint slip mark.\", stage: seated }\n",
            "Paint slip mark.\", stage: seated }\n  - { text: \"Tension, wait 10 min: {tensioned}, {draw_in} in.\", stage: seated }\n",
        )
        .replace(
            "  - Slip mark moved\n  - Kink, notch\n",
            "  - Slip mark moved\n  - Kink or notch in the wire\n  - Wedge used before\n  - Mark or stamp disagrees\n",
        );
    let measured = read(fittings).replace(
        "{ min: -8.5, max: -5.5 } }",
        "{ min: -8.5, max: -5.5 }, tensioned_mm: { min: -10.5, max: -6.0 }, draw_in_max_mm: 2.0 }",
    );
    assert!(fuller.contains("Wedge used before") && fuller.contains("wait 10 min: {tensioned}, "));
    assert!(measured.contains("draw_in_max_mm"));
    let world = made::in_size("content", row).with(FilePath::catalogue(procedures), fuller);
    world.with(FilePath::catalogue(fittings), measured)
}

/// A witness reads mark and stamp, and the stamp has 15 characters.
#[test]
fn an_identity_card_holds_a_long_stamp_in_its_witness_line() {
    let file = "parts/collet-body.yaml";
    let parts = made::read(&made::folder("content").join(file));
    let parts = parts.replace("stamp: \"BZ2 14.0\"", "stamp: \"BZ2 14.0 B 2026\"");
    let world = made::in_size("content", "ID-1,portrait").with(FilePath::catalogue(file), parts);
    assert_eq!(findings(&world), [""; 0]);
}

fn findings(world: &MemoryWorld) -> Vec<String> {
    made::facts_and_cards(world)
        .findings
        .sorted()
        .into_iter()
        .map(|finding| finding.message.clone())
        .collect()
}

/// By the style the outline of a status is 1 mm wide; half of it lies outside the box. What stands beside the box, such as
/// the notches of the mark above it and the name below, keeps clear of it in every size, however tight the face is.
#[test]
fn the_outline_of_a_status_lies_over_nothing_beside_it() {
    let mut held_apart = 0;
    for row in made::sizes() {
        for card in &made::once("content", row).cards {
            for face in [&card.front, &card.back] {
                let items = || face.blocks.iter().flat_map(|block| &block.items);
                let framed =
                    items().find(|item| matches!(&item.mark, ItemMark::Frame(name) if name == "status"));
                let Some(framed) = framed else { continue };
                let outline = framed.bounds.inflate(0.5, 0.5);
                let is_read = |mark: &ItemMark| {
                    matches!(mark, ItemMark::Line { .. } | ItemMark::Swatch { .. } | ItemMark::Drawing(..))
                };
                let beside = items()
                    .filter(|item| is_read(&item.mark) && !framed.bounds.contains(item.bounds.center()));
                for item in beside {
                    let over = outline.intersect(item.bounds).area();
                    assert!(over <= 0.0, "{row}: {} {}: {:?}", card.number, face.side.word(), item.mark);
                    held_apart += 1;
                }
            }
        }
    }
    assert!(held_apart > 0);
}
