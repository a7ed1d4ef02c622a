//! What a link in a note leads to.

use super::{address, headings, markdown};
use crate::catalogue::{Catalogue, Note, NoteAbout};
use crate::diagnostics::Finding;
use crate::source::Place;

/// What becomes of a link.
pub(super) enum Target {
    /// A page of the booklet, or a heading on one.
    Page(String),
    /// An address that a person may look up elsewhere: shown as text, never followed.
    Shown(String),
    /// Nothing: the text alone stays.
    Nothing,
}

/// Where a link in `note` leads, or the finding that says why it leads nowhere.
pub(super) fn resolve(
    destination: &str,
    place: Place,
    note: &Note,
    catalogue: &Catalogue,
) -> Result<Target, Box<Finding>> {
    let destination = destination.trim();
    if destination.starts_with("//") {
        return Ok(Target::Shown(destination.to_owned()));
    }
    if let Some(scheme) = scheme(destination) {
        return by_scheme(&scheme, destination, place);
    }
    let (name, anchor) = destination.split_once('#').unwrap_or((destination, ""));
    if catalogue.left_out.contains(name) {
        return Ok(Target::Nothing);
    }
    let (page, target) =
        if name.is_empty() { (String::new(), Some(note)) } else { find(name, &place, note, catalogue)? };
    if anchor.is_empty() {
        return Ok(Target::Page(page));
    }
    let id = target.and_then(|target| anchor_in(target, anchor)).ok_or_else(|| {
        let finding =
            Finding::error("note-heading-unknown", place, "this link names a heading that isn't there")
                .found(destination)
                .help("write the heading's words in lower case, joined by hyphens");
        Box::new(finding)
    })?;
    Ok(Target::Page(format!("{page}#{id}")))
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

fn by_scheme(scheme: &str, destination: &str, place: Place) -> Result<Target, Box<Finding>> {
    match scheme {
        "http" | "https" | "mailto" | "tel" => Ok(Target::Shown(destination.to_owned())),
        _ => {
            let finding =
                Finding::error("note-link-refused", place, format!("links to `{scheme}:` are refused"))
                    .found(destination)
                    .help("link to a record by its id or number, or to a chapter by its file");
            Err(Box::new(finding))
        }
    }
}

/// The page of a record or note by its name, and the note on it.
fn find<'a>(
    name: &str,
    place: &Place,
    note: &Note,
    catalogue: &'a Catalogue,
) -> Result<(String, Option<&'a Note>), Box<Finding>> {
    if let Some(page) = address::of_record(catalogue, name) {
        return Ok((page, note_about(catalogue, name)));
    }
    let path = path_from(&note.place.file.path, name).ok_or_else(|| {
        let finding = Finding::error("note-path-outside", place.clone(), "this link leaves the catalogue")
            .found(name)
            .help("notes can link to records and chapters of their own catalogue only");
        Box::new(finding)
    })?;
    let stem = name.strip_suffix(".md").unwrap_or(name);
    catalogue
        .notes
        .iter()
        .find(|other| *other.place.file.path == *path || address::chapter_of(other) == Some(stem))
        .and_then(|other| Some((address::of_note(catalogue, &other.about)?, Some(other))))
        .ok_or_else(|| Box::new(unknown(name, place.clone(), catalogue)))
}

/// The note about a record.
fn note_about<'a>(catalogue: &'a Catalogue, record: &str) -> Option<&'a Note> {
    catalogue.notes.iter().find(|note| matches!(&note.about, NoteAbout::Record(id) if id == record))
}

fn unknown(name: &str, place: Place, catalogue: &Catalogue) -> Finding {
    let known = names(catalogue);
    let nearest = known
        .iter()
        .map(|known| (strsim::damerau_levenshtein(&name.to_lowercase(), &known.to_lowercase()), known))
        .min_by_key(|(distance, known)| (*distance, **known))
        .filter(|(distance, known)| *distance <= known.chars().count().div_ceil(3));
    Finding::error("note-link-unknown", place, format!("there is no record or chapter `{name}` to link to"))
        .help(match nearest {
            Some((_, known)) => format!("did you mean `{known}`?"),
            None => "link to a record by its id or number, or to a chapter by its file".to_owned(),
        })
}

fn names(catalogue: &Catalogue) -> Vec<&str> {
    let chapters = catalogue.notes.iter().filter_map(address::chapter_of);
    let records = [
        catalogue.fittings.keys().collect::<Vec<_>>(),
        catalogue.conductors.keys().collect(),
        catalogue.parts.keys().collect(),
        catalogue.notices.keys().collect(),
        catalogue.materials.keys().collect(),
    ];
    records.into_iter().flatten().map(String::as_str).chain(chapters).collect()
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

/// The id of a heading, from the words that a link uses.
fn anchor_in(note: &Note, anchor: &str) -> Option<String> {
    let wanted = format!("note-{}", address::slug(anchor));
    headings::of(&markdown::events(note), 2)
        .into_iter()
        .find(|heading| heading.id == wanted)
        .map(|heading| heading.id)
}
