//! What comes from outside, as it reaches the terminal: names, keys, links, arguments.

use super::Run;
use std::ffi::OsString;
use std::path::Path;

/// A small catalogue, and a place in it to put files.
fn started() -> Run {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    run
}

fn put(run: &Run, path: &str, text: &str) {
    let file = run.folder.path().join(path);
    std::fs::create_dir_all(file.parent().unwrap()).unwrap();
    std::fs::write(file, text).unwrap();
}

/// Whether a terminal would do nothing but show it: no controls but line breaks, and none that turn text.
fn is_shown(text: &str) -> bool {
    let turns = |letter: char| matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{200e}' | '\u{200f}');
    !text.chars().any(|letter| letter.is_control() && letter != '\n' || turns(letter))
}

#[test]
fn keys_values_ids_and_links_reach_the_terminal_in_visible_form() {
    let run = started();
    let part = "\"number\": \"A\\e[2J\"\nname: \"two\\nlines\"\nrole: \"\\e[31mcone\"\nmaterial: \"brass\\u202E\"\n\"k\\e]0;x\\a\\n\": 1\n";
    put(&run, "content/parts/wrong.yaml", part);
    put(&run, "content/notes/chapters/09-odd.md", "# T\n\n[x](<no\u{1b}[5m>) and [y](no\u{9b}31m)\n");
    let stderr = run.stderr(&["audit"], 1);
    assert!(is_shown(&stderr), "{stderr:?}");
    for shown in ["\\u{1b}[31mcone", "k\\u{1b}]0;x\\u{7}\\n", "no\\u{1b}[5m"] {
        assert!(stderr.contains(shown), "{shown} in {stderr}");
    }
    let json = run.command(&["audit", "--format", "json"]).output().unwrap();
    let text = String::from_utf8(json.stdout).unwrap();
    assert!(is_shown(&text), "{text:?}");
    let findings: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert!(findings.to_string().contains('\u{9b}'), "an escape in JSON means the character itself");
}

#[cfg(unix)]
#[test]
fn names_of_files_reach_the_terminal_in_visible_form() {
    let run = started();
    put(&run, "content/parts/a\u{1b}[2J\nb\u{202e}.txt", "");
    let stderr = run.stderr(&["audit"], 0);
    assert!(is_shown(&stderr), "{stderr:?}");
    assert!(stderr.contains("a\\u{1b}[2J\\nb\\u{202e}.txt"), "{stderr}");
}

#[cfg(unix)]
#[test]
fn links_and_odd_names_are_all_told_in_one_run_with_the_rest() {
    use std::os::unix::ffi::OsStringExt as _;
    let run = started();
    let content = run.folder.path().join("content");
    let link = |to: &str| std::os::unix::fs::symlink("collet-body.yaml", content.join(to)).unwrap();
    link("parts/again.yaml");
    link("parts/third.yaml");
    link("parts/.lock");
    let odd = OsString::from_vec(b"parts/odd-\xff.yaml".to_vec());
    std::fs::write(content.join(odd), "number: P\n").unwrap();
    let _socket = std::os::unix::net::UnixListener::bind(content.join("parts/socket.yaml")).unwrap();
    std::fs::File::create(content.join("parts/huge.yaml")).unwrap().set_len(100 << 20).unwrap();
    put(&run, "content/parts/wrong.yaml", "number: X-1\nname: Odd\nrole: con\nmaterial: brass\n");
    let stderr = run.stderr(&["audit"], 1);
    for told in [
        "content/parts/again.yaml: error[file-unreadable]: this is a link",
        "content/parts/third.yaml: error[file-unreadable]: this is a link",
        "content/parts/odd-\\xff.yaml: error[file-unreadable]: the name of this file is not UTF-8",
        "content/parts/socket.yaml: error[file-unreadable]: this is neither a file nor a folder",
        "content/parts/huge.yaml: error[file-unreadable]: this can't be read",
        "content/parts/wrong.yaml:3:7: error[unknown-word]",
    ] {
        assert!(stderr.contains(told), "{told} in {stderr}");
    }
    assert!(!stderr.contains(".lock"), "{stderr}");
}

#[cfg(unix)]
#[test]
fn a_link_among_layouts_is_told() {
    let run = started();
    std::fs::create_dir(run.folder.path().join("layouts")).unwrap();
    std::os::unix::fs::symlink("/etc/passwd", run.folder.path().join("layouts/style.yaml")).unwrap();
    let stderr = run.stderr(&["audit"], 1);
    assert!(stderr.contains("layouts/style.yaml: error[file-unreadable]: this is a link"), "{stderr}");
}

#[test]
fn a_file_in_place_of_a_folder_is_told() {
    let run = started();
    let stderr = run.stderr(&["audit", "--catalogue", "content/catalogue.yaml"], 2);
    let expected = "error: content/catalogue.yaml: this is a file, not a folder; \
                    --catalogue expects the folder that holds catalogue.yaml\n";
    assert_eq!(stderr, expected);
    let stderr = run.stderr(&["audit", "--layouts", "content/catalogue.yaml"], 2);
    assert!(stderr.contains("--layouts expects a folder of layouts"), "{stderr}");
    let stderr = run.stderr(&["audit", "--catalogue", "no\u{1b}[2Jwhere"], 2);
    assert!(stderr.starts_with("error: no\\u{1b}[2Jwhere: there is no such folder"), "{stderr}");
}

#[test]
fn arguments_reach_the_terminal_in_visible_form() {
    let run = started();
    for arguments in [
        &["section", "--solid", "8\u{1b}[31m"][..],
        &["section", "--conductor", "a\u{1b}[31m\nb"],
        &["audit", "--format", "\u{1b}[31mred"],
        &["audit", "--\u{1b}[31mred"],
        &["identify", "--diameter", "1\u{9b}31m"],
        &["render", "--only", "F\u{1b}[31m"],
    ] {
        let stderr = run.stderr(arguments, 2);
        assert!(is_shown(&stderr) && stderr.starts_with("error"), "{arguments:?}: {stderr:?}");
    }
}

#[cfg(unix)]
#[test]
fn arguments_that_are_not_utf_8_are_told_or_followed() {
    use std::os::unix::ffi::OsStringExt as _;
    let run = started();
    let odd = OsString::from_vec(b"odd-\xff".to_vec());
    let output = run.command(&["section", "--solid"]).arg(&odd).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    std::fs::rename(run.folder.path().join("content"), run.folder.path().join(Path::new(&odd))).unwrap();
    run.command(&["audit", "--catalogue"]).arg(&odd).assert().success();
}

#[test]
fn the_narrowest_terminal_and_no_colour_are_borne() {
    let run = started();
    put(&run, "content/parts/wrong.yaml", "number: X-1\nname: Odd\nrole: con\nmaterial: brass\n");
    for columns in ["0", "1", "-5", "99999999999999999999"] {
        let output = run.command(&["--help"]).env("COLUMNS", columns).output().unwrap();
        assert!(output.status.success() && !output.stdout.is_empty(), "{columns}");
        let output = run.command(&["audit"]).env("COLUMNS", columns).output().unwrap();
        assert_eq!(output.status.code(), Some(1), "{columns}");
    }
    let coloured = |arguments: &[&str], name: &str, value: &str| {
        let output = run.command(arguments).env(name, value).output().unwrap();
        String::from_utf8(output.stderr).unwrap().contains('\u{1b}')
    };
    assert!(coloured(&["audit", "--colour", "always"], "COLUMNS", "80"));
    assert!(!coloured(&["audit"], "NO_COLOR", "1"));
    assert!(!coloured(&["audit", "--colour", "never"], "CLICOLOR_FORCE", "1"));
}

#[test]
fn a_title_that_a_spreadsheet_would_run_is_written_as_text() {
    let run = started();
    let path = run.folder.path().join("content/fittings/collet-dead-ends.yaml");
    let text = std::fs::read_to_string(&path).unwrap();
    let name = text.lines().find(|line| line.starts_with("name:")).unwrap().to_owned();
    std::fs::write(&path, text.replacen(&name, "name: \"=1+1\"", 1)).unwrap();
    run.command(&["render"]).assert().success();
    let list = std::fs::read_to_string(run.folder.path().join("output/data/cards.csv")).unwrap();
    assert!(list.contains(",'=1+1,"), "{list}");
}

#[test]
fn a_strand_has_no_worn_height() {
    let run = started();
    let id = std::fs::read_to_string(run.folder.path().join("content/conductors/messengers.yaml")).unwrap();
    let id = id.lines().find_map(|line| line.strip_prefix("id: ")).unwrap().to_owned();
    let stderr = run.stderr(&["section", "--conductor", &id, "--worn-height", "9"], 2);
    assert!(stderr.contains("is not one solid wire, so it has no worn height"), "{stderr}");
    assert!(stderr.contains("\n    help      leave out --worn-height"), "{stderr}");
}
