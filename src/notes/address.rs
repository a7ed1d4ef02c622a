//! Where the booklet keeps the page of a record, and how links and ids are written.

use crate::catalogue::{Catalogue, NoteAbout};

/// How a booklet is handed on; its links and ids are written for that.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A file for each page, all in one folder.
    Folder,
    /// All pages in one file, each in an element whose id is the page's name.
    SingleFile,
}

/// A page of the booklet, or a place on one.
///
/// ```
/// use fittingcards::notes::address::{self, Form};
/// let steps = address::fitting("F-1").at("steps");
/// assert_eq!(Form::Folder.link(&steps), "fitting-F-1.html#steps");
/// assert_eq!(Form::SingleFile.link(&steps), "#fitting-F-1/steps");
/// assert_eq!(Form::Folder.id(&steps, "steps"), "steps");
/// assert_eq!(Form::SingleFile.id(&steps, "steps"), "fitting-F-1/steps");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Address {
    page: String,
    place: Option<String>,
}

impl Form {
    /// What a link to an address holds.
    #[must_use]
    pub fn link(self, to: &Address) -> String {
        match (self, &to.place) {
            (Self::Folder, None) => to.file(),
            (Self::Folder, Some(id)) => format!("{}#{id}", to.file()),
            (Self::SingleFile, None) => format!("#{}", to.page),
            (Self::SingleFile, Some(id)) => format!("#{}", self.id(to, id)),
        }
    }

    /// What a link to an address holds on the page that the address is of.
    #[must_use]
    pub fn link_within(self, to: &Address) -> String {
        match (self, &to.place) {
            (Self::Folder, None) => String::new(),
            (Self::Folder, Some(id)) => format!("#{id}"),
            (Self::SingleFile, _) => self.link(to),
        }
    }

    /// The id of an element of a page. No name of a page holds a `/`, so no two pages share one.
    #[must_use]
    pub fn id(self, page: &Address, id: &str) -> String {
        match self {
            Self::Folder => id.to_owned(),
            Self::SingleFile => format!("{}/{id}", page.page),
        }
    }
}

impl Address {
    /// A page, by the name of its file without `.html`.
    #[must_use]
    pub fn page(name: impl Into<String>) -> Self {
        Self { page: name.into(), place: None }
    }

    /// The element with this id on the same page.
    #[must_use]
    pub fn at(&self, id: impl Into<String>) -> Self {
        Self { page: self.page.clone(), place: Some(id.into()) }
    }

    /// The page's name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.page
    }

    /// The name of the page's file.
    #[must_use]
    pub fn file(&self) -> String {
        format!("{}.html", self.page)
    }

    /// Whether it is a page as a whole.
    #[must_use]
    pub fn is_page(&self) -> bool {
        self.place.is_none()
    }
}

/// The page of a fitting.
#[must_use]
pub fn fitting(number: &str) -> Address {
    Address::page(format!("fitting-{number}"))
}

/// The page of a conductor.
#[must_use]
pub fn conductor(id: &str) -> Address {
    Address::page(format!("conductor-{id}"))
}

/// The page of a part.
#[must_use]
pub fn part(number: &str) -> Address {
    Address::page(format!("part-{number}"))
}

/// The page of a body with all that goes into it.
#[must_use]
pub fn body(number: &str) -> Address {
    Address::page(format!("body-{number}"))
}

/// The page of a notice.
#[must_use]
pub fn notice(number: &str) -> Address {
    Address::page(format!("notice-{number}"))
}

/// The page of a chapter, by its file name without `.md`.
#[must_use]
pub fn chapter(stem: &str) -> Address {
    Address::page(format!("chapter-{}", slug(stem)))
}

/// The page that explains materials and line types.
#[must_use]
pub fn key() -> Address {
    Address::page("key")
}

/// The entry of a material on the key page.
#[must_use]
pub fn material(id: &str) -> Address {
    key().at(format!("material-{id}"))
}

/// The page of the record with this id or number, where there is one that has a page.
///
/// Materials have an entry on the key page; holders have none.
#[must_use]
pub fn of_record(catalogue: &Catalogue, id: &str) -> Option<Address> {
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
pub fn of_note(catalogue: &Catalogue, about: &NoteAbout) -> Option<Address> {
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
