//! Layouts that a printer would send back, each found by its check alone; and sound ones beside them.

use crate::cards::tests::{codes, made, text, with_face, with_front};
use crate::diagnostics::Finding;
use crate::source::{FilePath, MemoryWorld};

const SANS: &str = "DejaVu Sans";

fn findings(world: &MemoryWorld) -> Vec<Finding> {
    made(world).1.sorted().into_iter().cloned().collect()
}

/// What is found on a front with this in its only block.
fn found(body: &str) -> Vec<&'static str> {
    codes(&made(&with_front(body)).1)
}

/// The finding of a front that has one.
fn only(body: &str) -> Finding {
    let mut findings = findings(&with_front(body));
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

fn sound() -> String {
    text(10.0, 40.0, 3.0, SANS, "sound")
}

/// A character that the layout writes is told at its line, one of a record's text at the record.
#[test]
fn a_character_without_a_font_is_told_where_it_was_written() {
    let finding = only(&text(10.0, 40.0, 3.0, SANS, "錐"));
    assert_eq!((&*finding.place.file.path, finding.place.line), ("cards/fitting-front.xml", 3));
}

#[test]
fn a_sound_face_has_no_findings() {
    assert_eq!(found(&sound()), Vec::<&str>::new());
}

#[test]
fn texts_are_seen_where_they_must_not_be() {
    let faults = [
        ("text-unsafe", text(1.0, 40.0, 3.0, SANS, "out")),
        ("text-punched", text(63.0, 9.0, 3.0, SANS, "hole")),
        ("text-overlap", text(10.0, 40.0, 3.0, SANS, "one") + &text(11.0, 41.0, 3.0, SANS, "two")),
        ("type-too-small", text(10.0, 40.0, 2.0, SANS, "small")),
        ("glyph-missing", text(10.0, 40.0, 3.0, SANS, "錐")),
        ("font-missing", text(10.0, 40.0, 3.0, "No Such Font", "lost")),
    ];
    for (code, body) in faults {
        assert_eq!(found(&body), [code]);
    }
}

#[test]
fn every_finding_says_card_face_block_and_record_and_how_to_mend_it() {
    let finding = only("<path d=\"M10 40H30\" stroke=\"#000\" stroke-width=\"0.05\"/>");
    assert!(finding.message.contains("the front of card F-1: "));
    assert_eq!((finding.record.as_deref(), finding.field.as_deref()), (Some("F-1"), Some("a")));
    assert_eq!((&*finding.place.file.path, finding.place.line), ("cards/fitting-front.xml", 2));
    assert_eq!(finding.found.as_deref(), Some("0.05 mm"));
    assert_eq!(finding.expected.as_deref(), Some("at least 0.13 mm"));
    assert!(!finding.help.is_empty());
}

#[test]
fn lines_are_measured_as_they_are_printed() {
    let line = |width: &str, transform: &str| {
        let line = format!("<path d=\"M10 20H30\" stroke=\"#000\" stroke-width=\"{width}\"/>");
        format!("<g transform=\"{transform}\">{line}</g>")
    };
    let thin = [
        line("0.1", ""),
        line("0.2", "scale(0.5)"),
        line("0.2", "scale(2 0.5)"),
        line("0.15", "translate(9 9) rotate(5) skewX(40)"),
        line("0", ""),
        "<g stroke=\"#000\"><path d=\"M10 20H30\" style=\"stroke-width: 0mm\"/></g>".to_owned(),
        "<rect x=\"10\" y=\"20\" width=\"30\" height=\"0.1\"/>".to_owned(),
    ];
    for body in thin {
        assert_eq!(found(&body), ["line-too-thin"], "{body}");
    }
    let wide = [
        line("0.13", ""),
        line("0.07", "scale(2)"),
        line("0.13", "rotate(30 20 20)"),
        "<path d=\"M10 20H30\" stroke=\"none\" stroke-width=\"0\"/>".to_owned(),
        "<rect x=\"10\" y=\"20\" width=\"0.1\" height=\"0.1\"/>".to_owned(),
    ];
    for body in wide {
        assert_eq!(found(&body), Vec::<&str>::new(), "{body}");
    }
}

fn coloured(size: f64, looks: &str, text: &str) -> String {
    format!("<text x=\"12\" y=\"40\" font-size=\"{size}\" font-family=\"{SANS}\" {looks}>{text}</text>")
}

fn ground(fill: &str) -> String {
    format!("<rect x=\"10\" y=\"30\" width=\"50\" height=\"15\" fill=\"{fill}\"/>")
}

/// Thresholds of WCAG 2.2, success criterion 1.4.3. #767676 is the palest grey that reaches 4.5:1 on white
/// (4.54), #777777 falls short (4.48); #949494 reaches 3:1 (3.03), #959595 falls short (2.99).
#[test]
fn texts_stand_out_from_what_is_drawn_under_them() {
    let (small, large, bold) = (3.0, 18.0 * 25.4 / 72.0, 14.0 * 25.4 / 72.0);
    let low = [
        coloured(small, "fill=\"#777777\"", "grey"),
        coloured(large, "fill=\"#959595\"", "grey"),
        coloured(bold, "fill=\"#777777\"", "not bold"),
        coloured(small, "fill=\"#ffffff\"", "white on white"),
        coloured(small, "fill=\"none\"", "no ink"),
        coloured(small, "opacity=\"0.4\"", "faint"),
        ground("#111111") + &coloured(small, "", "black on black"),
        ground("#111111") + &ground("#ffffff") + &coloured(small, "fill=\"#ffffff\"", "white"),
    ];
    for body in low {
        assert_eq!(found(&body), ["text-contrast-low"], "{body}");
    }
    let enough = [
        coloured(small, "fill=\"#767676\"", "grey"),
        coloured(large, "fill=\"#949494\"", "grey"),
        coloured(bold, "fill=\"#949494\" font-weight=\"700\"", "bold"),
        ground("#111111") + &coloured(small, "fill=\"#ffffff\"", "white on black"),
        ground("#111111") + &ground("#ffffff") + &coloured(small, "", "black on white"),
    ];
    for body in enough {
        assert_eq!(found(&body), Vec::<&str>::new(), "{body}");
    }
}

#[test]
fn every_colour_under_a_text_counts() {
    let half = "<path d=\"M10 30H22V45H10Z\" fill=\"#222222\"/>";
    let halves = format!("{}{half}{}", ground("#ffe40c"), coloured(3.0, "", "over both halves"));
    assert_eq!(found(&halves), ["text-contrast-low"]);
    let beside = format!("{}{half}{}", ground("#ffe40c"), text(24.0, 40.0, 3.0, SANS, "over one"));
    assert_eq!(found(&beside), Vec::<&str>::new());
    let hole = "<path fill-rule=\"evenodd\" d=\"M10 30H60V45H10ZM11 35H59V42H11Z\" fill=\"#222222\"/>";
    assert_eq!(found(&(hole.to_owned() + &coloured(3.0, "", "through a hole"))), Vec::<&str>::new());
    let round = "<circle cx=\"20\" cy=\"39\" r=\"12\" fill=\"#222222\"/>";
    assert_eq!(found(&(round.to_owned() + &text(12.0, 29.0, 3.0, SANS, "x"))), Vec::<&str>::new());
    assert_eq!(found(&(round.to_owned() + &text(19.0, 29.5, 3.0, SANS, "x"))), ["text-contrast-low"]);
    let fade = "<linearGradient id=\"f\"><stop stop-color=\"#fff\"/><stop offset=\"1\" stop-color=\"#000\"/></linearGradient>";
    assert_eq!(
        found(&format!("{fade}{}{}", ground("url(#f)"), coloured(3.0, "", "fades"))),
        ["text-contrast-low"]
    );
}

#[test]
fn a_text_that_is_painted_over_is_found() {
    assert_eq!(found(&(coloured(3.0, "", "under") + &ground("#dddddd"))), ["text-covered"]);
    let outline = "<rect x=\"10\" y=\"30\" width=\"50\" height=\"15\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.2\"/>";
    assert_eq!(found(&(coloured(3.0, "", "framed") + outline)), Vec::<&str>::new());
}

#[test]
fn a_line_through_a_text_is_found() {
    let line =
        |data: &str| format!("<path d=\"{data}\" fill=\"none\" stroke=\"#111111\" stroke-width=\"0.3\"/>");
    let words = coloured(4.0, "", "Kegel 14,0");
    for crossing in ["M5 38.5H60", "M20 30V50", "M10 30L40 50", "M5 30Q25 50 60 30", "M10 30H60V38.6H10Z"] {
        assert_eq!(found(&(words.clone() + &line(crossing))), ["text-crossed"], "{crossing}");
        assert_eq!(found(&(line(crossing) + &words)), ["text-crossed"], "{crossing}");
    }
    for beside in ["M5 42H60", "M10 34H60V43H10Z", "M5 40.8H60"] {
        assert_eq!(found(&(words.clone() + &line(beside))), Vec::<&str>::new(), "{beside}");
    }
    let hidden = line("M5 38.5H60") + &ground("#ffffff") + &words;
    assert_eq!(found(&hidden), Vec::<&str>::new(), "under a ground");
}

/// A PNG of 2 × 2 black pixels.
fn picture() -> String {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, 2, 2);
    encoder.set_color(png::ColorType::Grayscale);
    let mut writer = encoder.write_header().expect("a header");
    writer.write_image_data(&[0; 4]).expect("pixels");
    writer.finish().expect("an end");
    let percent: String = bytes.iter().map(|byte| format!("%{byte:02X}")).collect();
    format!("data:image/png,{percent}")
}

#[test]
fn pictures_are_fine_enough_or_found() {
    let image = |href: &str, width: f64| {
        format!("<image x=\"20\" y=\"40\" width=\"{width}\" height=\"{width}\" href=\"{href}\"/>{}", sound())
    };
    assert_eq!(found(&image(&picture(), 0.25)), Vec::<&str>::new(), "203 dots per inch");
    let coarse = only(&image(&picture(), 0.26));
    assert_eq!(
        (coarse.code, coarse.found.as_deref()),
        ("picture-coarse", Some("195 dpi at its printed size"))
    );
    let manifest = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/pictures/card.png");
    for lost in [manifest, "https://example.org/a.png", "data:image/svg+xml,%3Csvg/%3E"] {
        assert_eq!(found(&image(lost, 10.0)), ["picture-lost"], "{lost}");
    }
}

#[test]
fn type_is_held_to_what_it_is_for() {
    let svg = |class: &str, size: f64| {
        let text = coloured(size, "", "7.9 pt");
        made(&with_face(&format!(
            "<space height=\"12\"/><svg id=\"a\" class=\"{class}\" width=\"60\" height=\"60\">{text}</svg>"
        )))
    };
    assert_eq!(codes(&svg("body", 2.8).1), ["type-below-class"]);
    assert_eq!(codes(&svg("foot", 2.8).1), Vec::<&str>::new());
    assert_eq!(codes(&svg("check", 3.5).1), ["type-below-class"]);
    assert_eq!(codes(&svg("check", 3.54).1), Vec::<&str>::new());
    let stamp = |class: &str| {
        let stamp =
            format!("<space height=\"12\"/><block id=\"a\"><text class=\"{class}\">C 8.0</text></block>");
        codes(&made(&with_face(&stamp)).1)
    };
    assert_eq!(stamp("title"), ["type-below-class"], "the stamp of the gripping part");
    assert_eq!(stamp("stamp"), Vec::<&str>::new());
}

#[test]
fn nothing_is_cut_away_and_paint_runs_past_the_cut() {
    let rect = |x: f64, width: f64| format!("<rect x=\"{x}\" y=\"50\" width=\"{width}\" height=\"5\"/>");
    assert_eq!(found(&rect(-2.0, 20.0)), Vec::<&str>::new());
    let outside = only(&rect(-20.0, 10.0));
    assert_eq!((outside.code, outside.found.as_deref()), ("ink-clipped", Some("18.0 mm outside")));
    assert_eq!(found(&rect(-3.0, 20.0)), ["ink-clipped"]);
    for short in [rect(0.0, 20.0), rect(-1.0, 20.0), rect(0.2, 20.0), rect(60.0, 14.0)] {
        assert_eq!(found(&short), ["bleed-missing"], "{short}");
    }
    assert_eq!(found(&rect(0.5, 20.0)), Vec::<&str>::new());
    let line = |from: f64| format!("<path d=\"M{from} 50H40\" stroke=\"#111111\" stroke-width=\"0.3\"/>");
    assert_eq!(found(&line(0.0)), ["bleed-missing"], "a line to the cut");
    assert_eq!(found(&line(-2.0)), Vec::<&str>::new(), "a line past the cut");
    let clip = "<clipPath id=\"c\"><rect x=\"10\" y=\"30\" width=\"15\" height=\"20\"/></clipPath>";
    let clipped = |text: &str| format!("{clip}<g clip-path=\"url(#c)\">{}</g>", coloured(3.0, "", text));
    assert_eq!(found(&clipped("a text that goes on")), ["ink-clipped"]);
    assert_eq!(found(&clipped("short")), Vec::<&str>::new());
}

#[test]
fn layouts_of_the_program_pass_with_a_user_s_front() {
    let world = with_front(&sound()).with(FilePath::layouts("cards/unused.xml"), "<face/>");
    assert!(findings(&world).is_empty());
}
