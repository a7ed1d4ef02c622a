//! Kit tags: what one carries, how parts go on over several, and what can't be printed.

use super::tests::{PARTS, SETTINGS, WIRE, codes, issued, world};
use super::{Design, Face, Input, Tag, plan_tags};
use crate::diagnostics::Findings;
use crate::register::{Register, Standing};
use crate::source::{FilePath, MemoryWorld, World};
use crate::typeset::Fonts;
use crate::{catalogue, facts, mixups};
use std::fmt::Write;

/// The tags of every fitting, where the card's standing is this.
fn made_as(world: &MemoryWorld, standing: &Standing) -> (Vec<Tag>, Findings) {
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let loaded = catalogue::load(world).expect("a readable world");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted());
    let (design, mut findings) = Design::load(world, &[]).expect("a readable world");
    let mixups = mixups::find(&loaded.catalogue);
    let (register, catalogue) = (Register::default(), &loaded.catalogue);
    let input = Input { catalogue, mixups: &mixups, register: &register, design: &design, fonts: &fonts };
    let mut tags = Vec::new();
    for facts in facts::tags(catalogue) {
        match plan_tags(input, &facts, standing) {
            Ok(plans) => {
                for (tag, found) in plans.iter().map(|plan| plan.draw(input)) {
                    tags.extend(tag);
                    findings.extend(found);
                }
            }
            Err(found) => findings.extend(found),
        }
    }
    (tags, findings)
}

fn made(world: &MemoryWorld) -> (Vec<Tag>, Findings) {
    made_as(world, &Standing::Draft)
}

/// A fitting of a body and so many more parts, whose names are this and the number of each.
fn kit(more: usize, name: &str) -> MemoryWorld {
    let (mut parts, mut numbers) = (PARTS.to_owned(), "P-1, P-2".to_owned());
    for number in 0..more {
        let _ =
            write!(parts, "---\nnumber: X-{number}\nname: {name} {number}\nrole: other\nmaterial: polymer\n");
        let _ = write!(numbers, ", {{ part: X-{number}, quantity: 100 }}");
    }
    let fitting = format!(
        "number: F-1\nname: Dead-end\nfamily: cone-dead-end\nconductor: wire-8\nparts: [{numbers}]\n"
    );
    let files = [("conductors/a.yaml", WIRE), ("parts/a.yaml", &parts), ("fittings/a.yaml", &fitting)];
    let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), SETTINGS);
    files.into_iter().fold(world, |world, (path, text)| world.with(FilePath::catalogue(path), text))
}

/// The texts of a face with their sizes in millimetres.
fn texts(face: &Face) -> Vec<(String, f64)> {
    let svg = face.svg();
    let document = usvg::roxmltree::Document::parse(&svg).expect("sound XML");
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let size = |node: usvg::roxmltree::Node<'_, '_>| node.attribute("font-size")?.parse().ok();
    texts.map(|node| (node.text().unwrap_or_default().to_owned(), size(node).expect("a size"))).collect()
}

fn words(tag: &Tag) -> String {
    texts(&tag.face).into_iter().map(|(text, _)| text).collect::<Vec<_>>().join("|")
}

#[test]
fn a_tag_is_whole_and_says_what_it_must() {
    let (tags, findings) = made(&world("Look."));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    let words = words(&tags[0]);
    assert_eq!(
        words,
        "KA|blue|2 notches|stamp of the gripping part|C 8.0|F-1 Dead-end|for Earth wire 8|2 pieces in all|\
         1 ×|item 1|P-1|Body|Hot-dip galvanised steel|P1|1 ×|item 2|P-2|Cone 8|Hard-drawn copper|C 8.0|\
         Cards never authorise work.|F-1|draft, not issued · edition 1",
        "in reading order, with no sign of what the records lack"
    );
    assert_eq!((tags.len(), tags[0].face.lost_to_clip(300.0)), (1, Ok(0)));
}

#[test]
fn the_gripping_parts_stamp_is_the_largest_text() {
    let (tags, _) = made(&world("Look."));
    let texts = texts(&tags[0].face);
    let stamp = texts.iter().find(|(text, _)| text == "C 8.0").expect("the stamp").1;
    assert!(stamp >= 6.35, "at least 18 pt");
    assert!(texts.iter().all(|(_, size)| *size <= stamp));
}

#[test]
fn an_issued_card_lends_its_tag_issue_and_check_code() {
    let standing = Standing::Issued(Box::new(issued(3, "2026-2")));
    let (tags, findings) = made_as(&world("Look."), &standing);
    assert_eq!(codes(&findings), Vec::<&str>::new());
    assert!(words(&tags[0]).ends_with("F-1|card issue 3 · edition 2026-2|check 7K3M9Q"));
}

#[test]
fn parts_go_on_over_several_tags_and_each_carries_the_whole_head() {
    let (tags, findings) = made(&kit(10, "Isolatorenverbindungsschäkel mit Sicherung und Splint Nr."));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    assert!(tags.len() > 1);
    let mut parts = Vec::new();
    for (tag, number) in tags.iter().zip(1..) {
        let words = words(tag);
        for head in ["KA", "C 8.0", "F-1 Dead-end", "Earth wire 8", "1002 pieces in all"] {
            assert!(words.contains(head), "{head} in {words}");
        }
        assert!(words.contains(&format!("|tag {number} of {}|", tags.len())), "{words}");
        assert!(words.contains("Cards never authorise work.") && words.contains("draft, not issued"));
        parts.extend(words.split('|').filter_map(|word| word.strip_prefix("item ")?.parse::<usize>().ok()));
        assert_eq!(tag.face.lost_to_clip(150.0), Ok(0));
    }
    assert_eq!(parts, (1..=12).collect::<Vec<_>>(), "every part once, in item order");
}

#[test]
fn parts_are_spread_evenly() {
    let (tags, _) = made(&kit(5, "Schäkel"));
    let parts = |tag: &Tag| words(tag).matches("|item ").count();
    let shares: Vec<usize> = tags.iter().map(parts).collect();
    assert_eq!(shares.iter().sum::<usize>(), 7);
    assert!(shares.windows(2).all(|pair| pair[0] >= pair[1]), "{shares:?}");
}

#[test]
fn a_part_that_does_not_fit_a_tag_alone_stops_at_its_line() {
    let (tags, findings) = made(&kit(1, &"Seilspannvorrichtung".repeat(4)));
    let sorted = findings.sorted();
    assert!(tags.is_empty());
    assert_eq!((sorted[0].code, sorted[0].field.as_deref()), ("tag-too-full", Some("parts.2")));
    assert!(sorted[0].message.starts_with("tag 3 of 3 of F-1: "), "{}", sorted[0].message);
    assert_eq!((&*sorted[0].place.file.path, sorted[0].place.line), ("fittings/a.yaml", 5));
}

#[test]
fn a_head_that_leaves_no_room_for_a_part_stops() {
    let caution = SETTINGS.replace("Cards never", &"Cards never authorise work. ".repeat(80));
    let (tags, findings) = made(&world("Look.").with(FilePath::catalogue("catalogue.yaml"), caution));
    assert!(tags.is_empty());
    assert_eq!(codes(&findings), ["tag-too-full"]);
}

#[test]
fn a_users_layout_can_draw_the_assembly() {
    let layout = "<face><space height=\"12\"/><block id=\"a\" kind=\"drawing\">\
                  <drawing of=\"assembly\" least=\"10\" most=\"40\"/></block></face>";
    let (tags, findings) = made(&world("Look.").with(FilePath::layouts("cards/tag.xml"), layout));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    assert!(tags[0].face.svg().contains("<path"));
}
