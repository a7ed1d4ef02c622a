//! Names in other scripts, and names that are too long: a card prints whole, or stops with the right finding.

use super::loses_nothing;
use super::made::{self, Made};
use super::readable::texts;
use fittingcards::cards::{Card, Face};
use usvg::Text;

#[test]
fn devanagari_and_arabic_print_in_every_size_and_lose_nothing() {
    for row in made::sizes() {
        let (cards, findings) = made::cards(&made::in_size("tests/cases/scripts/in", row));
        assert_eq!(findings.sorted().iter().map(|error| &error.message).next(), None, "{row}");
        loses_nothing(&cards, row);
    }
}

/// Ten wrong gripping parts fill a body's card; every other card prints.
#[test]
fn long_names_print_whole_or_stop_with_the_card_the_field_and_the_excess() {
    for row in made::sizes() {
        let Made { cards, findings, .. } = made::once("tests/cases/long-names/in", row);
        loses_nothing(cards, row);
        for error in findings.sorted() {
            assert_eq!(error.code, "card-too-full", "{row}: {}", error.message);
            let record = error.record.as_deref().unwrap_or_default();
            assert!(cards.iter().all(|card| card.number != record), "{row}: {record} is there");
            assert!(error.message.contains(&format!("of card {record}: ")), "{row}: {}", error.message);
            assert!(
                error.field.is_some() && error.message.contains(" mm too long"),
                "{row}: {}",
                error.message
            );
        }
    }
}

/// A line as it lies: each chunk with where it begins.
fn chunks(face: &Face, holding: &str) -> Vec<(f32, String)> {
    let mut found = Vec::new();
    for block in &face.blocks {
        texts(block.tree.root(), &mut |text: &Text| {
            let words: String = text.chunks().iter().map(usvg::TextChunk::text).collect();
            if words.contains(holding) {
                let place =
                    |chunk: &usvg::TextChunk| (chunk.x().unwrap_or_default(), chunk.text().to_owned());
                found = text.chunks().iter().map(place).collect();
            }
        });
    }
    found
}

#[test]
fn an_arabic_title_begins_on_the_right() {
    let world = made::in_size("tests/cases/scripts/in", "A7,portrait");
    let (cards, _) = made::cards(&world);
    let card: &Card = cards.iter().find(|card| card.number == "F-2").unwrap();
    let title = chunks(&card.front, "نهاية");
    assert_eq!(title.iter().map(|(_, text)| text.trim()).collect::<Vec<_>>().len(), 3, "{title:?}");
    assert!(title.windows(2).all(|pair| pair[0].0 > pair[1].0), "{title:?}");
    assert!(title[0].1.contains("F-2") && title[2].1.contains("70"), "{title:?}");
}
