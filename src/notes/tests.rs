//! What notes may show, and what they may not.

use super::address::Form;
use super::{Html, Notes, check, to_html};
use crate::catalogue::{
    CardFormat, CardSize, Catalogue, FlipEdge, Gaps, Limits, Note, NoteAbout, Notice, Orientation, Origin,
    Settings, SheetFormat, SheetSize,
};
use crate::diagnostics::{Finding, Findings};
use crate::source::{FilePath, Place};
use crate::units::Length;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

fn origin(path: &str) -> Origin {
    Origin {
        place: Place::whole(FilePath::catalogue(path)),
        fields: BTreeMap::new(),
        numbers: BTreeMap::new(),
    }
}

fn note(about: NoteAbout, path: &str, markdown: &str) -> Note {
    Note { about, markdown: markdown.into(), place: Place::whole(FilePath::catalogue(path)) }
}

fn about_notice(markdown: &str) -> Note {
    note(NoteAbout::Record("N-1".to_owned()), "notes/N-1.md", markdown)
}

fn chapter(markdown: &str) -> Note {
    note(NoteAbout::Chapter("01-first".to_owned()), "notes/chapters/01-first.md", markdown)
}

fn catalogue(notes: Vec<Note>) -> Catalogue {
    let notice = Notice {
        number: "N-1".to_owned(),
        date: jiff::civil::date(2026, 9, 14),
        effective: None,
        action_by: None,
        title: "A notice".to_owned(),
        reference: String::new(),
        summary: String::new(),
        origin: origin("notices/n-1.yaml"),
    };
    Catalogue {
        procedures: BTreeMap::new(),
        settings: settings(),
        materials: BTreeMap::new(),
        conductors: BTreeMap::new(),
        parts: BTreeMap::new(),
        fittings: BTreeMap::new(),
        notices: BTreeMap::from([("N-1".to_owned(), Arc::new(notice))]),
        holders: BTreeMap::new(),
        editions: Vec::new(),
        notes,
        fonts: Vec::new(),
        installed: Vec::new(),
        left_out: BTreeSet::new(),
        gaps: Gaps::default(),
    }
}

fn settings() -> Settings {
    let none = Length::ZERO;
    Settings {
        title: String::new(),
        owner: String::new(),
        edition: "1".to_owned(),
        date: None,
        language: "en".to_owned(),
        decimal_mark: '.',
        card: CardFormat { size: CardSize::A7, orientation: Orientation::Portrait },
        sheet: SheetFormat { size: SheetSize::A4, flip: FlipEdge::LongEdge, crop_marks: true, bleed: none },
        limits: Limits {
            section_tolerance_percent: 0.5,
            diameter_tolerance: none,
            nominal_tolerance_percent: 7.0,
            holding_percent_of_breaking_load: 95.0,
            tension_percent_of_breaking_load: 65.0,
            wire_friction: 0.30,
            seat_friction: 0.12,
            closure_reserve: none,
            visible_stand_out: none,
            smallest_type: none,
            mark_difference: 12.0,
        },
        before_work: Vec::new(),
        caution: String::new(),
        training: None,
        origin: origin("catalogue.yaml"),
    }
}

fn shown(markdown: &str) -> (Html, Vec<Finding>) {
    let note = about_notice(markdown);
    let chapter = chapter("# First things\n\n## What to do\n");
    let (html, findings) = of(&note, vec![note.clone(), chapter], Form::Folder);
    (html, findings.into_iter().collect())
}

/// One of these notes as HTML.
fn of(note: &Note, notes: Vec<Note>, form: Form) -> (Html, Findings) {
    to_html(note, &Notes::new(&catalogue(notes)), form)
}

fn codes(markdown: &str) -> Vec<(&'static str, u32, u32)> {
    shown(markdown).1.iter().map(|finding| (finding.code, finding.place.line, finding.place.column)).collect()
}

#[test]
fn raw_html_is_text() {
    let (html, findings) = shown("Look: <b onclick=\"x()\">here</b>\n\n<script>alert(1)</script>\n");
    assert!(html.body.contains("&lt;b onclick=\"x()\"&gt;here&lt;/b&gt;"), "{}", html.body);
    assert!(html.body.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), "{}", html.body);
    assert!(!html.body.contains("<script") && !html.body.contains("<b "));
    assert_eq!(findings.len(), 3);
}

#[test]
fn braces_of_notes_about_no_fitting_are_signs_but_for_names() {
    let (html, findings) = shown("A {{ and a }, {{torque}, { torque is }, {}, {1, 2}, `{{x}}` and {{{{.");
    assert_eq!(
        html.body.trim(),
        "<p>A { and a }, {torque}, { torque is }, {}, {1, 2}, <code>{{x}}</code> and {{.</p>"
    );
    assert!(findings.is_empty(), "{findings:?}");
    let found = codes("One\n\né **{drum_tagg}**, {torqe.2} and `{x}`, {{ {spanr}");
    assert_eq!(found, [("unknown-value", 3, 5), ("unknown-value", 3, 20), ("unknown-value", 3, 44)]);
    assert_eq!(codes("{{torqe} {torqe} { é } {torqe}"), [("unknown-value", 1, 10), ("unknown-value", 1, 24)]);
    assert_eq!(codes("{torque}, { torque }"), [("value-absent", 1, 1), ("value-absent", 1, 11)]);
}

#[test]
fn links_lead_to_pages() {
    let links = "[a](N-1) [[N-1]] [[N-1|words]] [b](chapters/01-first.md) [c](01-first#What-to-do)";
    let (html, findings) = shown(links);
    assert!(findings.is_empty(), "{findings:?}");
    for link in [
        "<a href=\"notice-N-1.html\">a</a>",
        "<a href=\"notice-N-1.html\">N-1</a>",
        "<a href=\"notice-N-1.html\">words</a>",
        "<a href=\"chapter-01-first.html\">b</a>",
        "<a href=\"chapter-01-first.html#note-what-to-do\">c</a>",
    ] {
        assert!(html.body.contains(link), "{link} in {}", html.body);
    }
}

#[test]
fn addresses_outside_are_printed() {
    let (html, findings) = shown("See [the makers](https://example.org/a?b=1&c) or <https://example.org>.");
    assert_eq!(
        html.body.trim(),
        "<p>See the makers (https://example.org/a?b=1&amp;c) or https://example.org.</p>"
    );
    assert!(findings.is_empty());
}

#[test]
fn wrong_links_are_found_where_they_stand() {
    assert_eq!(codes("One\n\né [a](N-2)"), [("note-link-unknown", 3, 3)]);
    assert_eq!(codes("[a](javascript:alert(1))"), [("note-link-refused", 1, 1)]);
    assert_eq!(codes("[a](JaVa&#10;Script:alert(1))"), [("note-link-refused", 1, 1)]);
    assert_eq!(codes("[a](data:text/html,x)"), [("note-link-refused", 1, 1)]);
    assert_eq!(codes("[a](../../secret.md)"), [("note-path-outside", 1, 1)]);
    assert_eq!(codes("[a](/etc/hosts)"), [("note-path-outside", 1, 1)]);
    assert_eq!(codes("[a](01-first#nowhere)"), [("note-heading-unknown", 1, 1)]);
    assert_eq!(codes("![a](x.png)"), [("note-image", 1, 1)]);
    assert!(!shown("[a](javascript:alert(1))").0.body.contains("href"));
}

#[test]
fn the_nearest_name_is_offered() {
    assert_eq!(shown("[a](N-2)").1[0].help, "did you mean `N-1`?");
}

#[test]
fn headings_follow_on_and_have_anchors() {
    let (html, _) = shown("## Care\n\n#### Grease & paint\n\n## Care\n");
    let found: Vec<(u8, &str)> =
        html.headings.iter().map(|heading| (heading.level, heading.id.as_str())).collect();
    assert_eq!(found, [(3, "note-care"), (4, "note-grease-paint"), (3, "note-care-2")]);
    assert!(html.body.contains("<h4 id=\"note-grease-paint\">Grease &amp; paint</h4>"), "{}", html.body);
}

#[test]
fn a_chapter_gives_its_title_up() {
    let note = chapter("# First *things*\n\nText.\n\n## More\n");
    let (html, _) = of(&note, vec![note.clone()], Form::Folder);
    assert_eq!(html.title.as_deref(), Some("First things"));
    assert_eq!(html.body.trim(), "<p>Text.</p>\n<h2 id=\"note-more\">More</h2>");
}

#[test]
fn text_from_right_to_left_runs_as_it_does_paragraph_by_paragraph() {
    let (html, _) = shown("نص أول.\n\nPlain.\n\n- بند\n\n### عنوان\n");
    let pieces = [
        "<p dir=\"auto\">نص أول.</p>",
        "<p dir=\"auto\">Plain.</p>",
        "<li dir=\"auto\">",
        "dir=\"auto\">عنوان<",
    ];
    for piece in pieces {
        assert!(html.body.contains(piece), "{piece} in {}", html.body);
    }
    assert!(!shown("Plain.").0.body.contains("dir="));
}

#[test]
fn tables_have_scopes_and_no_inline_styles() {
    let (html, _) = shown("| a | b |\n|---|--:|\n| 1 | 2 |\n");
    assert!(html.body.contains("<th scope=\"col\" class=\"right\">b</th>"), "{}", html.body);
    assert!(html.body.contains("<td>1</td><td class=\"right\">2</td>"), "{}", html.body);
    assert!(!html.body.contains("style="));
    assert_eq!(html.text, "a b 1 2");
}

#[test]
fn a_single_file_has_links_and_ids_of_its_own() {
    let note = about_notice("## Care\n\n[a](#care) [b](N-1) [c](01-first#what-to-do) [d](#)");
    let (html, findings) = of(&note, vec![note.clone(), chapter("## What to do\n")], Form::SingleFile);
    assert!(findings.into_iter().next().is_none());
    for piece in [
        "<h3 id=\"notice-N-1/note-care\">",
        "<a href=\"#notice-N-1/note-care\">a</a>",
        "<a href=\"#notice-N-1\">b</a>",
        "<a href=\"#chapter-01-first/note-what-to-do\">c</a>",
        "<a href=\"#notice-N-1\">d</a>",
    ] {
        assert!(html.body.contains(piece), "{piece} in {}", html.body);
    }
}

#[test]
fn the_title_of_a_chapter_is_its_page() {
    let (html, findings) = shown("[a](01-first#first-things)");
    assert!(findings.is_empty(), "{findings:?}");
    assert!(html.body.contains("<a href=\"chapter-01-first.html\">a</a>"), "{}", html.body);
}

/// Read heading by heading and link by link anew, each of these takes hours.
#[test]
fn a_note_may_hold_a_great_many_headings_and_links() {
    let many = 50_000;
    let headings = format!("{}# Care\n", "# a\n".repeat(many));
    let links = "[a](#care)\n".repeat(many);
    let references = format!("{}\n\n[x]: N-1\n", "[a][x] ".repeat(many));
    let wrong = "[a](#nowhere) ".repeat(many);
    let (html, findings) = shown(&format!("{headings}\n{links}\n{wrong}\n\n{references}"));
    let ids: BTreeSet<&str> = html.headings.iter().map(|heading| heading.id.as_str()).collect();
    assert_eq!((html.headings.len(), ids.len()), (many + 1, many + 1));
    assert!(ids.contains(format!("note-a-{many}").as_str()));
    assert_eq!(html.body.matches("<a href=\"#note-care\">").count(), many);
    assert_eq!(html.body.matches("<a href=\"notice-N-1.html\">").count(), many);
    let last = &findings.last().expect("a finding for each wrong link").place;
    assert_eq!((findings.len(), last.column), (many, u32::try_from((many - 1) * 14 + 1).unwrap()));
}

#[test]
fn an_anchor_that_other_words_have_taken_is_passed_over() {
    let ids: Vec<String> =
        shown("# a 2\n# a\n# a\n# a 3\n# a\n").0.headings.into_iter().map(|heading| heading.id).collect();
    assert_eq!(ids, ["note-a-2", "note-a", "note-a-3", "note-a-3-2", "note-a-4"]);
}

#[test]
fn two_notes_with_one_page_are_found() {
    let named =
        |stem: &str| note(NoteAbout::Chapter(stem.to_owned()), &format!("notes/chapters/{stem}.md"), "");
    let found = |notes: Vec<Note>| -> Vec<(String, String)> {
        let findings =
            check(&catalogue(notes)).into_iter().filter(|finding| finding.code == "note-page-taken");
        findings
            .map(|found| (found.place.file.path.to_string(), found.related[0].place.file.path.to_string()))
            .collect()
    };
    let pair = |later: &str, first: &str| vec![(later.to_owned(), first.to_owned())];
    let chapters = vec![named("10-a b"), named("10-a-b"), named("10-b")];
    assert_eq!(found(chapters), pair("notes/chapters/10-a-b.md", "notes/chapters/10-a b.md"));
    let chapters = vec![named("10-Care"), named("10-care")];
    assert_eq!(found(chapters), pair("notes/chapters/10-care.md", "notes/chapters/10-Care.md"));
    let other_ending = note(NoteAbout::Record("N-1".to_owned()), "notes/N-1.MD", "");
    assert_eq!(found(vec![other_ending, about_notice("")]), pair("notes/N-1.md", "notes/N-1.MD"));
}
