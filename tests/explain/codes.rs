//! Every code in the sources has its text, and no text is left over.

use crate::findings::codes::codes as codes_in_sources;
use fittingcards::explain::{answer, codes};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

#[test]
fn every_code_in_the_sources_has_a_text_and_none_is_left_over() {
    let explained: BTreeSet<String> = codes().iter().map(|code| code.code.to_owned()).collect();
    // What the search in the sources overlooks has a folder, which proves that it is found.
    let folders = files("tests/findings").into_iter().filter(|path| path.is_dir());
    let shown = folders.map(|folder| stem(&folder));
    assert_eq!(explained, codes_in_sources().into_iter().chain(shown).collect());
    let files = files("src/explain/codes").into_iter();
    assert_eq!(explained, files.map(|file| stem(&file)).collect());
}

#[test]
fn every_text_says_what_is_found_why_and_how_to_put_it_right() {
    for code in codes() {
        for part in [&code.finds, &code.why, &code.help] {
            let words = part.split_whitespace().count();
            assert!(words > 1 && part.ends_with('.'), "{}: \"{part}\"", code.code);
            assert!(!part.contains("Why:") && !part.contains("put it right:"), "{}: {part}", code.code);
        }
        let text =
            std::fs::read_to_string(root().join("src/explain/codes").join(format!("{}.md", code.code)));
        assert!(text.unwrap().starts_with(&format!("`{}`: ", code.code)));
    }
}

/// A rule takes in the text of the code that its file is named after, and makes findings with it.
#[test]
fn every_rule_takes_in_the_text_of_its_own_code() {
    let mut rules = 0;
    for file in files("src/audit") {
        let source = std::fs::read_to_string(&file).unwrap();
        let code = stem(&file).replace('_', "-");
        if codes().iter().any(|known| known.code == code) {
            rules += 1;
            let first = format!("#![doc = include_str!(\"../explain/codes/{code}.md\")]");
            assert_eq!(source.lines().next(), Some(first.as_str()));
            assert!(source.contains(&format!("\"{code}\"")), "{code}");
        }
    }
    assert!(rules > 70, "{rules} rules");
}

/// What texts name between backquotes as a key is a key.
#[test]
fn keys_that_texts_name_are_there() {
    let mut named = 0;
    for code in codes() {
        let text = format!("{} {} {}", code.finds, code.why, code.help);
        let quoted = text.split('`').skip(1).step_by(2).map(|quoted| quoted.split(':').next().unwrap());
        let key = |name: &&str| {
            name.len() > 1
                && name.contains('_')
                && name.chars().all(|letter| letter.is_ascii_alphanumeric() || "_.".contains(letter))
        };
        for name in quoted.filter(key) {
            named += 1;
            assert!(answer(name).is_ok(), "{}: {name}", code.code);
        }
    }
    assert!(named > 10, "{named} keys are named");
}

fn files(folder: &str) -> Vec<PathBuf> {
    std::fs::read_dir(root().join(folder)).unwrap().map(|entry| entry.unwrap().path()).collect()
}

fn stem(file: &Path) -> String {
    file.file_stem().unwrap().to_string_lossy().into_owned()
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}
