//! Every code that a finding can have is shown by a folder, or is listed here with the reason why not.

use super::folders;
use std::collections::BTreeSet;
use std::path::Path;

/// Codes without a folder.
const WITHOUT_FOLDER: [(&str, &str); 16] = [
    ("drawing-refused", "no records come to a size that is not finite; tested in `publish` and `sketch`"),
    ("card-larger-than-sheet", "at the most bleed that records take, every card fits every sheet"),
    ("layout-missing", "every face and page has a built-in layout"),
    ("file-unreadable", "links and files that no repository keeps; made in `command_line`"),
    ("safety-change-unexplained", "told by `issue` alone; tested in `register`"),
    ("card-not-issued", "told by `render --deny-drafts` alone; tested in `command_line`"),
    ("issued-otherwise", "told by `issue` alone; tested in `command_line`"),
    ("notices-of-different-days", "told by `issue` alone; tested in `register`"),
    ("not-a-spreadsheet", "told by `import` alone; tested in `spreadsheet`"),
    ("changed-since-export", "told by `import` alone; tested in `spreadsheet`"),
    ("letters-changed", "told by `import` alone; tested in `spreadsheet`"),
    ("comment-left", "told by `import` alone; tested in `spreadsheet`"),
    ("record-not-editable", "told by `import` alone; tested in `spreadsheet`"),
    ("too-many-alike", "thousands of records; made in `bounds`"),
    ("too-many-records", "thousands of records; made in `bounds`"),
    ("too-large", "a file of more than 1 MiB; made in `generated`"),
];

/// What takes a code as its first or second argument.
const CALLS: [&str; 16] = [
    "Self::new",
    "Finding::error",
    "Finding::warning",
    "Finding::note",
    "Trouble::new",
    "error",
    "fault",
    "finding",
    "found",
    "misplaced",
    "on_fitting",
    "on_part",
    "on_wording",
    "report",
    "warning",
    "whole",
];

#[test]
fn every_code_has_a_folder_or_a_reason() {
    let shown: BTreeSet<String> =
        folders().iter().map(|folder| folder.file_name().unwrap().to_string_lossy().into_owned()).collect();
    let excused: BTreeSet<&str> = WITHOUT_FOLDER.iter().map(|(code, _)| *code).collect();
    let codes = codes();
    assert!(codes.len() > 100, "{} codes are seen in the sources", codes.len());
    let missing: Vec<&String> =
        codes.iter().filter(|code| !shown.contains(*code) && !excused.contains(code.as_str())).collect();
    assert!(missing.is_empty(), "no folder shows {missing:?}");
    let needless: Vec<&&str> =
        excused.iter().filter(|code| shown.contains(**code) || !codes.contains(**code)).collect();
    assert!(needless.is_empty(), "no reason is needed for {needless:?}");
}

/// Every code in the sources; the command line makes no findings.
pub fn codes() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let commands = root.join("cli");
    let files = walkdir::WalkDir::new(&root).into_iter().map(|entry| entry.unwrap().into_path());
    let sources = files.filter(|path| {
        path.extension().is_some_and(|end| end == "rs")
            && !path.ends_with("tests.rs")
            && !path.starts_with(&commands)
            && !path.strip_prefix(&root).unwrap().components().any(|part| part.as_os_str() == "tests")
    });
    sources.flat_map(|path| in_source(&super::read(&path))).collect()
}

/// The codes of one source: string literals that are handed to what makes findings, chosen between in a
/// `let code`, or given by a `match` that tells why a number is refused.
fn in_source(source: &str) -> Vec<String> {
    let text = source.split("\nmod tests {").next().unwrap_or_default();
    let lines = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    let text = lines.collect::<Vec<_>>().join("\n").replace("\\\"", "").replace("'\"'", "");
    let mut codes = Vec::new();
    let pieces: Vec<&str> = text.split('"').collect();
    for pair in pieces.windows(2).step_by(2) {
        let (before, literal) = (pair[0], pair[1]);
        let line = before.rsplit('\n').next().unwrap_or_default();
        let chosen = line.contains("let code =");
        let refused = line.trim_end().ends_with("Some((") || line.trim_end().ends_with("=> (");
        if is_code(literal) && (chosen || is_handed_on(before) || refused && text.contains("\"nan\"")) {
            codes.push(literal.to_owned());
        }
    }
    codes
}

fn is_code(literal: &str) -> bool {
    let word = |word: &str| {
        !word.is_empty() && word.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit())
    };
    literal.starts_with(|letter: char| letter.is_ascii_lowercase()) && literal.split('-').all(word)
}

/// Whether what stands before a literal is a call that takes a code there.
fn is_handed_on(before: &str) -> bool {
    let Some((head, arguments)) = before.rsplit_once('(') else { return false };
    let earlier: Vec<&str> = arguments.split(',').map(str::trim).collect();
    let names = earlier.split_last().is_some_and(|(last, earlier)| {
        last.is_empty()
            && earlier
                .iter()
                .all(|name| name.chars().all(|letter| letter.is_alphanumeric() || ".&_:".contains(letter)))
    });
    names
        && earlier.len() <= 2
        && CALLS.iter().any(|call| {
            head.strip_suffix(call)
                .is_some_and(|rest| !rest.ends_with(|letter: char| letter.is_alphanumeric() || letter == '_'))
        })
}
