//! Faces of cards and kit tags as readable text, held against `tests/cases/<name>/out`; and the demo's faces in
//! every size that it prints in: no finding of preflight, no ink lost to the clip.
//!
//! With UPDATE=1 in the environment the texts are written anew, and the run fails.

mod chance;
mod changes;
mod complete;
mod difference;
mod from_records;
mod full_bodies;
mod lines;
mod long_stamps;
pub mod made;
mod pictures;
mod printed;
mod readable;
mod room;
mod said;
#[cfg(feature = "debian-fonts")]
mod scripts;

use fittingcards::cards::Card;
use fittingcards::source::{FilePath, MemoryWorld};
use made::Made;
use rayon::prelude::*;
use std::path::{Path, PathBuf};

#[test]
fn faces_are_what_they_were() {
    let golden = |case: &str, name: &str, text: fn(&MemoryWorld) -> String| {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases").join(case);
        (folder.join("out").join(name), text(&made::world(&folder.join("in"))))
    };
    let cards =
        ["gaps", "long-names", "plain", "statuses", "ten-parts"].map(|case| golden(case, "faces.txt", cards));
    let tags = ["gaps", "long-names", "statuses"].map(|case| golden(case, "tags.txt", tags));
    hold(cards.into_iter().chain(tags));
}

/// Each text is what its file holds.
fn hold(texts: impl IntoIterator<Item = (PathBuf, String)>) {
    let update = made::environment("UPDATE").is_some();
    let mut changed = Vec::new();
    for (golden, text) in texts {
        if update {
            std::fs::create_dir_all(golden.parent().unwrap()).unwrap();
            std::fs::write(&golden, text).unwrap();
        } else if let Some(difference) = difference::between(&made::read(&golden), &text) {
            changed.push(format!("{}\n{difference}", golden.display()));
        }
    }
    assert!(!update, "the faces were written anew: read them, and run without UPDATE");
    assert!(changed.is_empty(), "faces have changed (UPDATE=1 writes them anew):\n{}", changed.join("\n"));
}

fn cards(world: &MemoryWorld) -> String {
    readable::cards(&made::cards(world).0)
}

fn tags(world: &MemoryWorld) -> String {
    readable::tags(&made::tags(world))
}

/// Preflight finds nothing, and every face drawn without its clip has no ink outside the bleed.
#[test]
fn the_demo_is_sound_and_loses_nothing_to_the_clip_in_any_size() {
    for row in made::sizes() {
        let Made { cards, findings, .. } = made::once("content", row);
        let found = findings.sorted().into_iter().map(|finding| finding.message.as_str());
        assert_eq!(found.collect::<Vec<_>>(), [""; 0], "{row}");
        assert!(cards.len() >= 12, "{row}");
        loses_nothing(cards, row);
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

fn loses_nothing(cards: &[Card], row: &str) {
    cards.par_iter().for_each(|card| {
        for face in [&card.front, &card.back] {
            assert_eq!(face.lost_to_clip(200.0), Ok(0), "{row}: {} {}", card.number, face.side.word());
        }
    });
}

#[test]
fn ink_beside_the_card_is_lost_to_the_clip() {
    // The <svg> stands at the safe area's edge, 3 mm inside the trim.
    let layout = "<face><block id=\"a\" kind=\"ornament\"><svg width=\"10\" height=\"10\">\
                  <rect x=\"-8\" width=\"10\" height=\"10\"/></svg></block></face>";
    let front = FilePath::layouts("cards/fitting-front.xml");
    let case = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/plain/in");
    let (cards, _) = made::cards(&made::world(&case).with(front, layout));
    // 3 mm of the 10 mm lie outside the bleed of 2 mm.
    let expected = (3.0 * 200.0 / 25.4) * (10.0 * 200.0 / 25.4);
    let lost = cards[0].front.lost_to_clip(200.0).unwrap() as f64;
    assert!((lost - expected).abs() < 200.0, "{lost} pixels, not {expected}");
}
