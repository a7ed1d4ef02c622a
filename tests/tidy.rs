//! The layer table of DEVELOPERS.md, held against every `crate::name` in the sources; and house rules
//! that no lint holds. Unit tests may build the world that they need from any module.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// The most lines that a source file may have.
const MOST_LINES: usize = 400;

type Layers = BTreeMap<String, BTreeSet<String>>;

#[test]
fn modules_see_only_what_the_layer_table_lists() {
    let layers = layer_table();
    let mut forbidden = Vec::new();
    for file in sources().into_iter().filter(|file| !is_test(file)) {
        let module = module_of(&file);
        let Some(may_see) = layers.get(&module) else { continue };
        let text = std::fs::read_to_string(&file).unwrap();
        for (line, seen) in seen_modules(&text) {
            if seen != module && !may_see.contains(&seen) {
                forbidden.push(format!("{}:{line}: {module} may not see {seen}", file.display()));
            }
        }
    }
    assert!(forbidden.is_empty(), "arrows that the layer table forbids:\n{}", forbidden.join("\n"));
}

#[test]
fn layer_table_names_every_module_and_no_other() {
    let listed: BTreeSet<String> = layer_table().into_keys().collect();
    let there: BTreeSet<String> = sources()
        .iter()
        .map(|file| module_of(file))
        .filter(|module| module != "lib" && module != "main")
        .collect();
    assert_eq!(listed, there);
}

#[test]
fn layer_table_has_no_circle() {
    let layers = layer_table();
    let mut settled: BTreeSet<String> = BTreeSet::new();
    while settled.len() < layers.len() {
        let next: Vec<String> = layers
            .iter()
            .filter(|(name, sees)| !settled.contains(*name) && sees.is_subset(&settled))
            .map(|(name, _)| name.clone())
            .collect();
        assert!(!next.is_empty(), "modules in a circle: {:?}", layers.keys().collect::<Vec<_>>());
        settled.extend(next);
    }
}

#[test]
fn sources_open_with_one_line_of_purpose_and_stay_small() {
    let mut faults = Vec::new();
    for file in sources() {
        let text = std::fs::read_to_string(&file).unwrap();
        if !text.starts_with("//! ") {
            faults.push(format!("{}: does not open with a //! line", file.display()));
        }
        let lines = text.lines().count();
        if lines > MOST_LINES && !file.ends_with("catalogue/model.rs") {
            faults.push(format!("{}: {lines} lines", file.display()));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn only_the_command_line_prints_or_exits() {
    let mut faults = Vec::new();
    for file in sources() {
        if matches!(module_of(&file).as_str(), "cli" | "main") {
            continue;
        }
        let text = std::fs::read_to_string(&file).unwrap();
        for (number, line) in text.lines().enumerate() {
            let code = line.trim_start();
            let prints =
                ["println!", "eprintln!", "print!(", "process::exit"].iter().any(|call| code.contains(call));
            if prints && !code.starts_with("//") {
                faults.push(format!("{}:{}: {code}", file.display(), number + 1));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn modules_seen_are_found_in_every_form() {
    let text = "use crate::units::Length;\nuse crate::{grip::Verdict, section::{self, Section}};\nlet x = crate::sketch::number(1.0);\n// crate::cards\n";
    let seen: Vec<String> = seen_modules(text).into_iter().map(|(_, name)| name).collect();
    assert_eq!(seen, ["units", "grip", "section", "sketch"]);
}

/// Rows `| module | knows | may see |` of the table under "Layers" in DEVELOPERS.md.
fn layer_table() -> Layers {
    let text = std::fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let section =
        text.split("\n## ").find(|section| section.starts_with("Layers")).expect("a section on layers");
    let rows: Vec<(String, String)> = section.lines().filter_map(row).collect();
    let all: Vec<String> = rows.iter().map(|(name, _)| name.clone()).collect();
    let mut layers = Layers::new();
    for (index, (name, sees)) in rows.iter().enumerate() {
        let sees = match sees.as_str() {
            "–" => BTreeSet::new(),
            "all above" => all[..index].iter().cloned().collect(),
            list => list.split(',').map(|name| name.trim().to_owned()).collect(),
        };
        layers.insert(name.clone(), sees);
    }
    layers
}

fn row(line: &str) -> Option<(String, String)> {
    let cells: Vec<&str> = line.split('|').map(str::trim).collect();
    let name = cells.get(1)?.strip_prefix('`')?.strip_suffix('`')?;
    Some((name.to_owned(), cells.get(3)?.to_string()))
}

fn sources() -> Vec<PathBuf> {
    walkdir::WalkDir::new(root().join("src"))
        .sort_by_file_name()
        .into_iter()
        .map(|entry| entry.unwrap().into_path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "rs"))
        .collect()
}

/// Whether a file holds unit tests alone: `tests.rs`, `x_tests.rs`, or below a folder `tests`.
fn is_test(file: &Path) -> bool {
    let stem = file.file_stem().unwrap().to_str().unwrap();
    stem == "tests" || stem.ends_with("_tests") || file.components().any(|part| part.as_os_str() == "tests")
}

/// The first name below `src`.
fn module_of(file: &Path) -> String {
    let below = file.strip_prefix(root().join("src")).unwrap();
    let first = below.components().next().unwrap().as_os_str().to_str().unwrap();
    first.trim_end_matches(".rs").to_owned()
}

/// Every module named after `crate::`, also within braces, with its line; comments and examples are passed over.
fn seen_modules(text: &str) -> Vec<(usize, String)> {
    let mut seen = Vec::new();
    for (number, line) in text.lines().enumerate() {
        if line.trim_start().starts_with("//") {
            continue;
        }
        for (at, _) in line.match_indices("crate::") {
            let rest = &text[offset(text, number) + at + "crate::".len()..];
            seen.extend(names(rest).into_iter().map(|name| (number + 1, name)));
        }
    }
    seen
}

fn offset(text: &str, line: usize) -> usize {
    text.split_inclusive('\n').take(line).map(str::len).sum()
}

fn names(rest: &str) -> Vec<String> {
    let Some(inside) = rest.strip_prefix('{') else { return vec![word(rest)] };
    let mut names = Vec::new();
    let mut depth = 0;
    let mut at_name = true;
    for (at, letter) in inside.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => at_name = true,
            letter if at_name && letter.is_alphabetic() => {
                names.push(word(&inside[at..]));
                at_name = false;
            }
            _ => {}
        }
    }
    names
}

fn word(text: &str) -> String {
    text.chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect()
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}
