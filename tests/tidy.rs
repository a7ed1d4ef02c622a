//! The layer table of DEVELOPERS.md, held against every `crate::name` in the sources; and house rules
//! that no lint holds. Unit tests may build the world that they need from any module.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// The most lines that a source file may have.
const MOST_LINES: usize = 400;

/// Modules whose files still use each other in a circle; none of another module may.
const CIRCLES: [&str; 1] = ["typeset"];

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
fn files_of_a_module_use_each_other_in_no_circle() {
    let sources = Sources::read();
    let circles = sources.circles();
    let unlisted: Vec<_> = circles.iter().filter(|(module, _)| !CIRCLES.contains(&module.as_str())).collect();
    assert!(unlisted.is_empty(), "files that use each other in a circle: {unlisted:#?}");
    let needless: Vec<_> = CIRCLES.iter().filter(|module| !circles.contains_key(**module)).collect();
    assert!(needless.is_empty(), "modules without a circle that are listed: {needless:?}");
}

#[test]
fn sources_open_with_one_line_of_purpose_and_stay_small() {
    let mut faults = Vec::new();
    for file in sources() {
        let text = std::fs::read_to_string(&file).unwrap();
        let of_a_code = text.starts_with("#![doc = include_str!(\"../explain/codes/");
        if !text.starts_with("//! ") && !of_a_code {
            faults.push(format!("{}: does not open with a //! line", file.display()));
        }
        let lines = text.lines().count();
        if lines > MOST_LINES {
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

#[test]
fn circles_are_found_through_re_exports_and_paths() {
    let file =
        |path: &[&str], text: &str| (path.iter().map(|name| (*name).to_owned()).collect(), Source::of(text));
    let sources = Sources(BTreeMap::from([
        file(&["a"], "mod b;\nmod c;\nmod d;\npub use b::{One, Two as Three};\npub(super) use c::f;"),
        file(&["a", "b"], "// super::d\nuse super::c;\nfn g() { super::f() }"),
        file(&["a", "c"], "use super::{Three, d::{self, Four}};"),
        file(&["a", "d"], "fn h() {}\n#[cfg(test)]\nmod tests {\n    use super::super::b;\n}"),
        file(&["e"], "use crate::a::One;\nuse crate::e::f::g;"),
        file(&["e", "f"], "use crate::a::b;"),
    ]));
    let circles = sources.circles();
    assert_eq!(circles, BTreeMap::from([("a".to_owned(), vec!["a/b".to_owned(), "a/c".to_owned()])]));
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
    let below = file.strip_prefix(root().join("src")).unwrap();
    stem == "tests" || stem.ends_with("_tests") || below.components().any(|part| part.as_os_str() == "tests")
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

/// What one file uses.
struct Source {
    /// What `use` brings in: whether it is handed on, its path, the name that it has here.
    imports: Vec<(bool, Vec<String>, String)>,
    /// Paths within the code.
    paths: Vec<Vec<String>>,
}

impl Source {
    fn of(text: &str) -> Self {
        let code: Vec<&str> = text
            .lines()
            .map(|line| line.split("//").next().unwrap())
            .take_while(|line| *line != "mod tests {")
            .collect();
        let (mut imports, mut paths) = (Vec::new(), Vec::new());
        for statement in code.join("\n").split_inclusive(';') {
            let (before, tree) = match statement.rfind("use ") {
                Some(at) if starts_word(statement, at) => (&statement[..at], &statement[at + "use ".len()..]),
                _ => (statement, ""),
            };
            let handed_on = before.trim_end().ends_with(")") || before.trim_end().ends_with("pub");
            let leaves = leaves(tree.trim_end_matches(';'), &[]);
            imports.extend(leaves.into_iter().map(|(path, name)| (handed_on, path, name)));
            paths.extend(paths_in(before));
        }
        Self { imports, paths }
    }
}

fn starts_word(text: &str, at: usize) -> bool {
    !text[..at].ends_with(|letter: char| letter.is_alphanumeric() || letter == '_')
}

/// The paths that a tree of `use` brings in, each with its name.
fn leaves(tree: &str, above: &[String]) -> Vec<(Vec<String>, String)> {
    let tree = tree.trim();
    let (path, inside) =
        tree.split_once('{').map_or((tree, None), |(path, rest)| (path, rest.strip_suffix('}')));
    let (path, name) = path.split_once(" as ").map_or((path, None), |(path, name)| (path, Some(name.trim())));
    let steps = path.split("::").map(str::trim).filter(|step| !step.is_empty() && *step != "self");
    let path: Vec<String> = above.iter().cloned().chain(steps.map(str::to_owned)).collect();
    if let Some(inside) = inside {
        return split_at_commas(inside).into_iter().flat_map(|tree| leaves(tree, &path)).collect();
    }
    let last = path.last().cloned().into_iter();
    last.map(|last| (path.clone(), name.map_or(last, str::to_owned))).collect()
}

fn split_at_commas(list: &str) -> Vec<&str> {
    let mut depth = 0;
    let at_comma = |letter: char| {
        depth += i32::from(letter == '{') - i32::from(letter == '}');
        letter == ',' && depth == 0
    };
    list.split(at_comma).filter(|tree| !tree.trim().is_empty()).collect()
}

/// Names joined by `::`, such as `super::wear::facts`.
fn paths_in(code: &str) -> Vec<Vec<String>> {
    code.split(|letter: char| !letter.is_alphanumeric() && letter != '_' && letter != ':')
        .filter(|word| word.contains("::"))
        .map(|word| word.split("::").map(str::to_owned).collect())
        .collect()
}

/// Every file that holds more than unit tests, by its place below `src` without `mod`.
struct Sources(BTreeMap<Vec<String>, Source>);

impl Sources {
    fn read() -> Self {
        let files = sources().into_iter().filter(|file| !is_test(file) && !file.ends_with("main.rs"));
        let source = |file: PathBuf| {
            let below = file.strip_prefix(root().join("src")).unwrap().with_extension("");
            let names = below.iter().map(|name| name.to_str().unwrap().to_owned());
            let path: Vec<String> = names.filter(|name| name != "mod" && name != "lib").collect();
            (path, Source::of(&std::fs::read_to_string(file).unwrap()))
        };
        Self(files.map(source).collect())
    }

    /// Modules in which files use each other in a circle, with these files.
    fn circles(&self) -> BTreeMap<String, Vec<String>> {
        let uses: BTreeMap<&[String], BTreeSet<&[String]>> =
            self.0.keys().map(|file| (file.as_slice(), self.used_by(file))).collect();
        let mut circles: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for file in uses.keys() {
            let mut reached = BTreeSet::new();
            let mut next: Vec<&[String]> = uses[file].iter().copied().collect();
            while let Some(other) = next.pop() {
                if reached.insert(other) {
                    next.extend(&uses[other]);
                }
            }
            if reached.contains(file) {
                circles.entry(file[0].clone()).or_default().push(file.join("/"));
            }
        }
        circles
    }

    /// The other files of its module that a file uses; what it only hands on, it does not use.
    fn used_by(&self, file: &[String]) -> BTreeSet<&[String]> {
        let source = &self.0[file];
        let imports = source.imports.iter().filter(|(handed_on, ..)| !handed_on).map(|(_, path, _)| path);
        imports
            .chain(&source.paths)
            .filter_map(|path| self.home(file, path, 0))
            .filter(|home| *home != file && !file.is_empty() && home.first() == file.first())
            .collect()
    }

    /// The file that holds what a path names, seen from a file; re-exports are followed.
    fn home(&self, from: &[String], path: &[String], followed: usize) -> Option<&[String]> {
        let up = path.iter().take_while(|step| *step == "super").count();
        let (mut place, rest) = match path.first().map(String::as_str) {
            Some("crate") => (Vec::new(), &path[1..]),
            _ => (from[..from.len().checked_sub(up)?].to_vec(), &path[up..]),
        };
        for step in rest {
            let child: Vec<String> = place.iter().chain([step]).cloned().collect();
            if self.0.contains_key(&child) {
                place = child;
                continue;
            }
            let import = self.0.get(&place)?.imports.iter().find(|(_, _, name)| name == step);
            if up == 0 && place == from {
                return None;
            }
            if let Some((_, path, _)) = import.filter(|_| followed < 8) {
                return self.home(&place, path, followed + 1).or(self.key(&place));
            }
            break;
        }
        self.key(&place)
    }

    fn key(&self, place: &[String]) -> Option<&[String]> {
        self.0.get_key_value(place).map(|(key, _)| key.as_slice())
    }
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}
