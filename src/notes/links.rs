//! What a link in a note leads to.

use super::address::{self, Address};
use super::index::Notes;
use crate::catalogue::Note;
use crate::diagnostics::{Finding, shortened};
use crate::source::Place;

/// What becomes of a link.
pub(super) enum Target {
    /// A page of the booklet, or a heading on one.
    Page(Address),
    /// The page that the link is on, or a heading on it.
    ThisPage(Address),
    /// An address that a person may look up elsewhere: shown as text, never followed.
    Shown(String),
    /// Nothing: the text alone stays.
    Nothing,
}

/// A link as it is written.
pub(super) struct Link<'a, 'c> {
    /// What it names.
    pub destination: &'a str,
    /// The note that it stands in.
    pub note: &'a Note,
    /// The page that shows the note.
    pub page: &'a Address,
    /// Its place, looked up only for what is found in it.
    pub place: &'a dyn Fn() -> Place,
    /// What it may lead to.
    pub notes: &'a Notes<'c>,
}

/// Where a link leads, or the finding that says why it leads nowhere.
pub(super) fn resolve(link: &Link<'_, '_>) -> Result<Target, Box<Finding>> {
    let destination = link.destination.trim();
    if destination.starts_with("//") {
        return Ok(Target::Shown(destination.to_owned()));
    }
    if let Some(scheme) = scheme(destination) {
        return by_scheme(&scheme, destination, link);
    }
    let (name, words) = destination.split_once('#').unwrap_or((destination, ""));
    if link.notes.catalogue.left_out.contains(name) {
        return Ok(Target::Nothing);
    }
    if name.is_empty() {
        return heading(words, link.page.clone(), Some(link.note), link).map(Target::ThisPage);
    }
    let (page, note) = find(name, link)?;
    heading(words, page, note, link).map(Target::Page)
}

/// The heading on a page that a link's words mean; the page itself where it has no words.
fn heading(
    words: &str,
    page: Address,
    note: Option<&Note>,
    link: &Link<'_, '_>,
) -> Result<Address, Box<Finding>> {
    if words.is_empty() {
        return Ok(page);
    }
    note.and_then(|note| link.notes.heading(note, &page, words)).ok_or_else(|| {
        let message = "this link names a heading that isn't there";
        let finding = Finding::error("note-heading-unknown", (link.place)(), message)
            .found(link.destination.trim())
            .help("write the heading's words in lower case, joined by hyphens");
        Box::new(finding)
    })
}

/// The scheme of an address such as `https:`, in lower case without its colon.
fn scheme(destination: &str) -> Option<String> {
    let (scheme, _) = destination.split_once(':')?;
    let mut characters = scheme.chars().filter(|character| !character.is_control());
    let first = characters.next()?;
    let plain = first.is_ascii_alphabetic()
        && characters.all(|character| character.is_ascii_alphanumeric() || "+-.".contains(character));
    plain
        .then(|| scheme.chars().filter(|character| !character.is_control()).collect())
        .map(|scheme: String| scheme.to_ascii_lowercase())
}

fn by_scheme(scheme: &str, destination: &str, link: &Link<'_, '_>) -> Result<Target, Box<Finding>> {
    match scheme {
        "http" | "https" | "mailto" | "tel" => Ok(Target::Shown(destination.to_owned())),
        _ => {
            let finding = Finding::error(
                "note-link-refused",
                (link.place)(),
                format!("links to `{scheme}:` are refused"),
            )
            .found(destination)
            .help("link to a record by its id or number, or to a chapter by its file");
            Err(Box::new(finding))
        }
    }
}

/// The page of a record or note by its name, and the note on it.
fn find<'c>(name: &str, link: &Link<'_, 'c>) -> Result<(Address, Option<&'c Note>), Box<Finding>> {
    let notes = link.notes;
    if let Some(page) = address::of_record(notes.catalogue, name) {
        return Ok((page, notes.about(name)));
    }
    let path = path_from(&link.note.place.file.path, name).ok_or_else(|| {
        let finding = Finding::error("note-path-outside", (link.place)(), "this link leaves the catalogue")
            .found(name)
            .help("notes can link to records and chapters of their own catalogue only");
        Box::new(finding)
    })?;
    notes
        .in_file(&path, name.strip_suffix(".md").unwrap_or(name))
        .and_then(|note| Some((address::of_note(notes.catalogue, &note.about)?, Some(note))))
        .ok_or_else(|| Box::new(unknown(name, (link.place)(), notes)))
}

fn unknown(name: &str, place: Place, notes: &Notes<'_>) -> Finding {
    Finding::error(
        "note-link-unknown",
        place,
        format!("there is no record or chapter `{}` to link to", shortened(name)),
    )
    .help(match notes.nearest(name) {
        Some(known) => format!("did you mean `{known}`?"),
        None => "link to a record by its id or number, or to a chapter by its file".to_owned(),
    })
}

/// The path that `name` means in a file at `from`; `None` where it leaves the catalogue.
fn path_from(from: &str, name: &str) -> Option<String> {
    if name.starts_with(['/', '\\']) {
        return None;
    }
    let mut path: Vec<&str> = from.split('/').collect();
    path.pop();
    for step in name.split(['/', '\\']) {
        match step {
            "" | "." => {}
            ".." => drop(path.pop()?),
            step => path.push(step),
        }
    }
    Some(path.join("/"))
}
