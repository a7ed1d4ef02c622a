//! `fittingcards render`.

use super::{Run, demo, root};
use std::path::Path;

/// The faces that README shows.
const SHOWN: [&str; 2] = ["ST-4100-front.png", "ST-4100-back.png"];

fn manifest(run: &Run, folder: &str) -> String {
    std::fs::read_to_string(run.folder.path().join(folder).join("manifest.json")).unwrap()
}

#[test]
fn the_demo_comes_out_whole_and_the_same_twice() {
    let (run, catalogue) = (Run::new(), demo());
    let arguments = ["render", "--catalogue", &catalogue];
    run.command(&[&arguments[..], &["--output", "one", "--jobs", "1"]].concat()).assert().success();
    run.command(&[&arguments[..], &["--output", "two", "--jobs", "3"]].concat()).assert().success();
    assert_eq!(manifest(&run, "one"), manifest(&run, "two"));
    for path in [
        "sheets/cards.pdf",
        "booklet/index.html",
        "data/catalogue.json",
        "data/findings.json",
        "data/cards.csv",
    ] {
        assert!(run.folder.path().join("one").join(path).is_file(), "{path}");
    }
    let cards = std::fs::read_dir(run.folder.path().join("one/cards")).unwrap().count();
    let fittings = 18;
    let shared_bodies = 3;
    assert_eq!(cards, 4 * (fittings + shared_bodies), "two faces of each, as SVG and PNG");
    pictures_of_readme_are_today_s(&run.folder.path().join("one/cards"));
}

/// README shows cards as the program makes them now; UPDATE=1 takes new pictures, and fails.
fn pictures_of_readme_are_today_s(cards: &Path) {
    let update = std::env::var_os("UPDATE").is_some();
    for name in SHOWN {
        let (made, kept) = (cards.join(name), root().join("tests/pictures").join(name));
        if update {
            std::fs::copy(&made, &kept).unwrap();
        }
        let same = std::fs::read(&made).unwrap() == std::fs::read(&kept).unwrap_or_default();
        assert!(
            same,
            "tests/pictures/{name} is not what the program makes: look at it, then run with UPDATE=1"
        );
    }
    assert!(!update, "new pictures were taken: look at them, and run without UPDATE");
}

#[test]
fn an_error_leaves_the_output_as_it_was() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    run.command(&["render"]).assert().success();
    let before = manifest(&run, "output");
    let broken = run.folder.path().join("content/fittings/broken.yaml");
    std::fs::write(
        &broken,
        "number: F-999\nname: Broken\nfamily: cone-dead-end\nconductor: none\nparts: [F-1]\n",
    )
    .unwrap();
    let stderr = run.stderr(&["render"], 1);
    assert!(stderr.contains("content/fittings/broken.yaml:4:12"), "{stderr}");
    assert!(stderr.contains("content/fittings/broken.yaml:5:9"), "{stderr}");
    assert_eq!(before, manifest(&run, "output"));
}

#[test]
fn a_layout_of_the_user_that_asks_for_what_is_not_there_stops_with_file_and_line() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let layouts = run.folder.path().join("layouts/booklet");
    std::fs::create_dir_all(&layouts).unwrap();
    std::fs::write(layouts.join("glossary.html"), "<p>\n{{ no_such_value }}\n</p>\n").unwrap();
    let stderr = run.stderr(&["render"], 1);
    assert!(stderr.contains("layouts/booklet/glossary.html:2"), "{stderr}");
    assert!(!run.folder.path().join("output").exists());
}

#[test]
fn the_date_comes_from_the_environment_where_the_catalogue_states_none() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let settings = run.folder.path().join("content/catalogue.yaml");
    let stated = std::fs::read_to_string(&settings).unwrap();
    let page_says = |seconds: &str, date: &str| {
        run.command(&["render"]).env("SOURCE_DATE_EPOCH", seconds).assert().success();
        let page = std::fs::read_to_string(run.folder.path().join("output/booklet/index.html")).unwrap();
        assert!(page.contains(date), "SOURCE_DATE_EPOCH={seconds} gives no {date}");
    };
    page_says("1893456000", "2026-11-25");
    std::fs::write(&settings, stated.replace("\ndate: ", "\n# date: ")).unwrap();
    page_says("1893456000", "2030-01-01");
    page_says("", "2026-11-02");
}

#[test]
fn a_folder_of_layouts_that_is_not_there_is_a_fault_that_names_it() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    for command in ["render", "audit"] {
        let stderr = run.stderr(&[command, "--layouts", "nowhere"], 2);
        assert!(stderr.contains("nowhere: there is no such folder; --layouts expects"), "{stderr}");
    }
    run.command(&["audit"]).assert().success();
}

#[test]
fn the_built_in_layouts_stand_in_for_those_that_a_folder_lacks() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let at = |path: &str| run.folder.path().join(path);
    std::fs::create_dir(at("empty")).unwrap();
    std::fs::create_dir(at("foreign")).unwrap();
    std::fs::write(at("foreign/letter.xml"), "<letter/>\n").unwrap();
    run.command(&["render"]).assert().success();
    run.command(&["render", "--layouts", "empty", "--output", "by-empty"]).assert().success();
    let manifest = |output: &str| std::fs::read(at(output).join("manifest.json")).unwrap();
    assert_eq!(manifest("output"), manifest("by-empty"));
    let stderr = run.stderr(&["audit", "--layouts", "foreign"], 0);
    assert!(stderr.contains("letter.xml: warning[layout-unused]"), "{stderr}");
}

#[test]
fn a_fault_in_a_built_in_layout_is_said_to_be_there_and_where_it_is_taken_in() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    std::fs::create_dir_all(run.folder.path().join("ours/cards")).unwrap();
    let front = run.folder.path().join("ours/cards/fitting-front.xml");
    std::fs::write(&front, "<face>\n{% include \"cards/assembly.xml\" %}\n</face>\n").unwrap();
    let stderr = run.stderr(&["audit", "--layouts", "ours"], 1);
    assert!(stderr.contains("built-in layouts/cards/assembly.xml:"), "{stderr}");
    assert!(stderr.contains("ours/cards/fitting-front.xml:2:12: which is taken in here"), "{stderr}");
}

#[test]
fn a_second_run_says_how_much_it_made_and_why() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let said = |arguments: &[&str]| {
        let output = run.command(&[&["render"], arguments].concat()).output().unwrap();
        assert!(output.status.success());
        String::from_utf8(output.stdout).unwrap().replace('\u{a0}', " ")
    };
    let first = said(&[]);
    assert!(!first.contains("made again"), "{first}");
    assert!(said(&[]).contains("none of them made again"));
    let fittings = run.folder.path().join("content/fittings/collet-dead-ends.yaml");
    let text = std::fs::read_to_string(&fittings).unwrap();
    std::fs::write(&fittings, text.replacen("max: 70 }", "max: 71 }", 1)).unwrap();
    let why = said(&["--why", "F-201"]);
    assert!(why.contains("card F-201: tightening torque") && why.contains("is “60 to 71 N·m”"), "{why}");
    assert!(said(&["--why", "F-202"]).contains("card F-202: nothing has changed"));
    assert!(run.stderr(&["render", "--why", "F-999"], 2).contains("there is no card F-999"));
    assert!(!said(&["--anew"]).contains("made again"));
}

#[test]
fn what_training_uses_is_made_where_it_is_asked_for_and_goes_where_it_is_not() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let made = || run.folder.path().join("output/training/index.html").exists();
    run.command(&["render"]).assert().success();
    assert!(!made());
    run.command(&["render", "--training"]).assert().success();
    assert!(made() && run.folder.path().join("output/training/quiz-all.html").exists());
    run.command(&["render"]).assert().success();
    assert!(!made());
}

/// A page that leaves out the caution, or that its card is a draft, is not made.
#[test]
fn a_page_for_training_that_leaves_out_what_it_must_show_stops_the_run() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let layouts = run.folder.path().join("layouts/training");
    std::fs::create_dir_all(&layouts).unwrap();
    std::fs::write(layouts.join("quiz.html"), "<p>Which part is right?</p>\n").unwrap();
    let stderr = run.stderr(&["render", "--training"], 1);
    assert!(stderr.contains("page-incomplete") && stderr.contains("layouts/training/quiz.html"), "{stderr}");
    assert!(stderr.contains("the caution") && stderr.contains("issue and check code"), "{stderr}");
}
