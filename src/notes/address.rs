//! Where the booklet keeps the page of a record: flat file names, all relative.

use crate::catalogue::{Catalogue, Note, NoteAbout};

/// The page that explains materials and line types.
pub const KEY: &str = "key.html";

/// The page of a fitting.
#[must_use]
pub fn fitting(number: &str) -> String {
    format!("fitting-{number}.html")
}

/// The page of a conductor.
#[must_use]
pub fn conductor(id: &str) -> String {
    format!("conductor-{id}.html")
}

/// The page of a part.
#[must_use]
pub fn part(number: &str) -> String {
    format!("part-{number}.html")
}

/// The page of a body with all that goes into it.
#[must_use]
pub fn body(number: &str) -> String {
    format!("body-{number}.html")
}

/// The page of a notice.
#[must_use]
pub fn notice(number: &str) -> String {
    format!("notice-{number}.html")
}

/// The page of a chapter, by its file name without `.md`.
#[must_use]
pub fn chapter(stem: &str) -> String {
    format!("chapter-{}.html", slug(stem))
}

/// The entry of a material on the key page.
#[must_use]
pub fn material(id: &str) -> String {
    format!("{KEY}#material-{id}")
}

/// The file name, without `.md`, of a note that is a chapter.
pub(super) fn chapter_of(note: &Note) -> Option<&str> {
    match &note.about {
        NoteAbout::Chapter(stem) => Some(stem),
        NoteAbout::Record(_) => None,
    }
}

/// The page of the record with this id or number, where there is one that has a page.
///
/// Materials have an entry on the key page; holders have none.
#[must_use]
pub fn of_record(catalogue: &Catalogue, id: &str) -> Option<String> {
    if catalogue.fittings.contains_key(id) {
        Some(fitting(id))
    } else if catalogue.conductors.contains_key(id) {
        Some(conductor(id))
    } else if catalogue.parts.contains_key(id) {
        Some(part(id))
    } else if catalogue.notices.contains_key(id) {
        Some(notice(id))
    } else if catalogue.materials.contains_key(id) {
        Some(material(id))
    } else {
        None
    }
}

/// The page that shows a note.
#[must_use]
pub fn of_note(catalogue: &Catalogue, about: &NoteAbout) -> Option<String> {
    match about {
        NoteAbout::Record(id) => of_record(catalogue, id),
        NoteAbout::Chapter(stem) => Some(chapter(stem)),
    }
}

/// Text as an anchor or file name: letters and digits in lower case, joined by single hyphens.
///
/// ```
/// use fittingcards::notes::address::slug;
/// assert_eq!(slug("01 Before you start!"), "01-before-you-start");
/// ```
#[must_use]
pub fn slug(text: &str) -> String {
    let mut slug = String::with_capacity(text.len());
    for character in text.chars().flat_map(char::to_lowercase) {
        if character.is_alphanumeric() {
            slug.push(character);
        } else if !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
    }
    slug.trim_end_matches('-').to_owned()
}
