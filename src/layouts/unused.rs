//! Files of the user's layouts that nothing takes in: their names are mistyped, or those of an earlier layout.

use super::built_in;
use super::tags::tags;
use crate::diagnostics::{FilePath, Finding, Findings, Place, nearest};
use crate::source::{Folder, World, WorldError};
use std::collections::BTreeSet;
use std::sync::Arc;

/// What stands in for the layout of a face on cards of one size and orientation begins so.
const FORMATS: [&str; 6] =
    ["a6-landscape", "a6-portrait", "a7-landscape", "a7-portrait", "id-1-landscape", "id-1-portrait"];
/// The layouts of faces.
const FACES: [&str; 5] = ["body-back", "body-front", "fitting-back", "fitting-front", "tag"];
/// Endings of files that tell something about the layouts.
const ABOUT: [&str; 2] = [".md", ".txt"];

/// A warning for each file that has no effect.
///
/// # Errors
/// Where the user's layouts can't be read.
pub fn unused(world: &dyn World) -> Result<Findings, WorldError> {
    let files = world.files(Folder::Layouts)?;
    let files: Vec<(FilePath, Arc<[u8]>)> = files
        .into_iter()
        .map(|file| world.read(&file).map(|bytes| (file, bytes)))
        .collect::<Result<_, _>>()?;
    let known = known();
    let texts: Vec<&str> = files.iter().filter_map(|(_, bytes)| std::str::from_utf8(bytes).ok()).collect();
    let taken_in: BTreeSet<&str> = texts.iter().flat_map(|text| taken_in(text)).collect();
    let is_unused = |file: &FilePath, bytes: &[u8]| {
        let path = &*file.path;
        let is_used = known.contains(path) || taken_in.contains(path) || is_given_out(path) || is_about(path);
        !is_used && !has_components(bytes)
    };
    let unused = files.iter().filter(|(file, bytes)| is_unused(file, bytes));
    let mut findings = Findings::new();
    findings.extend(unused.map(|(file, _)| finding(file, &known)));
    Ok(findings)
}

fn known() -> BTreeSet<String> {
    let own = FORMATS.iter().flat_map(|format| FACES.map(|face| format!("cards/{format}-{face}.xml")));
    built_in::all().map(|(path, _)| path.to_owned()).chain(own).collect()
}

/// The files that a layout names: in quotes behind `include` or `extends`.
fn taken_in(text: &str) -> Vec<&str> {
    let naming = tags(text).into_iter().filter(|tag| matches!(tag.word(), "include" | "extends"));
    naming.filter_map(|tag| tag.inside.split(['"', '\'', '`']).nth(1)).collect()
}

/// Whether a file is put beside the pages as it is: style sheets and scripts, but in the place of the index, which is made.
///
/// ```
/// use fittingcards::layouts::is_given_out;
/// assert!(is_given_out("booklet/ours.js") && is_given_out("booklet/booklet.css"));
/// assert!(!is_given_out("booklet/index.js") && !is_given_out("booklet/more/ours.js"));
/// ```
#[must_use]
pub fn is_given_out(path: &str) -> bool {
    let name = path.strip_prefix("booklet/").unwrap_or_default();
    [".css", ".js"].iter().any(|ending| name.ends_with(ending)) && !name.contains('/') && name != "index.js"
}

/// What tells something about layouts, and what editors and version control keep beside them.
fn is_about(path: &str) -> bool {
    ABOUT.iter().any(|ending| path.ends_with(ending)) || path.split('/').any(|name| name.starts_with('.'))
}

/// Components are there for all layouts without being taken in.
fn has_components(bytes: &[u8]) -> bool {
    let text = std::str::from_utf8(bytes).unwrap_or_default();
    tags(text).iter().any(|tag| tag.word() == "component")
}

fn finding(file: &FilePath, known: &BTreeSet<String>) -> Finding {
    let path = &*file.path;
    let name = |path: &str| path.rsplit('/').next().unwrap_or_default().to_owned();
    let by_name = || known.iter().find(|known| nearest(&name(path), [&*name(known)]).is_some());
    let near = nearest(path, known.iter().map(String::as_str)).or_else(|| by_name().map(String::as_str));
    let help = if path == "booklet/index.js" {
        "the program makes this file itself: give yours another name".to_owned()
    } else {
        near_help(near)
    };
    let said = "no layout uses this file: the built-in layouts are used without it";
    Finding::warning("layout-unused", Place::whole(file.clone()), said)
        .found(path)
        .expected("the name of a layout, as DEVELOPERS.md lists them")
        .help(help)
}

fn near_help(near: Option<&str>) -> String {
    near.map_or_else(
        || "include it with {% include %}, or give it the name of the layout that it replaces".to_owned(),
        |near| format!("did you mean {near}?"),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::MemoryWorld;

    fn found(files: &[(&str, &str)]) -> Vec<(String, String)> {
        let world = files
            .iter()
            .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::layouts(path), text));
        let findings = unused(&world).expect("a readable world");
        findings
            .sorted()
            .into_iter()
            .map(|finding| (finding.place.file.path.to_string(), finding.help.clone()))
            .collect()
    }

    #[test]
    fn a_mistyped_name_is_told_with_the_nearest_that_there_is() {
        let near = [
            ("cards/fitting-fornt.xml", "cards/fitting-front.xml"),
            ("cards/fitting-front.svg", "cards/fitting-front.xml"),
            ("cards/a7-landscap-tag.xml", "cards/a7-landscape-tag.xml"),
            ("fitting-back.xml", "cards/fitting-back.xml"),
            ("booklet/fiting.html", "booklet/fitting.html"),
            ("card/style.yaml", "cards/style.yaml"),
        ];
        for (path, known) in near {
            assert_eq!(found(&[(path, "")]), [(path.to_owned(), format!("did you mean {known}?"))]);
        }
        assert!(found(&[("cards/logo-of-ours.xml", "")])[0].1.starts_with("include it"));
        assert!(found(&[("booklet/index.js", "")])[0].1.starts_with("the program makes this file"));
    }

    #[test]
    fn files_that_have_an_effect_are_not_told() {
        let files = [
            ("cards/fitting-front.xml", "{% include \"cards/our-head.xml\" %}"),
            ("cards/our-head.xml", ""),
            ("cards/a6-portrait-fitting-front.xml", ""),
            ("cards/our-pieces.xml", "{% component ours() %}{% endcomponent ours %}"),
            ("booklet/booklet.css", ""),
            ("booklet/ours.js", ""),
            ("README.md", ""),
            (".git/config", ""),
        ];
        assert_eq!(found(&files), []);
    }
}
