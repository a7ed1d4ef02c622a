//! Places in files.

use std::fmt;
use std::sync::Arc;

/// A folder that a run reads from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Folder {
    /// The catalogue: records, notes, fonts.
    Catalogue,
    /// The user's own layouts.
    Layouts,
}

/// A file by its folder and the path below it, with `/` between the parts whatever the machine.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FilePath {
    /// The folder it lies in.
    pub folder: Folder,
    /// The path below that folder.
    pub path: Arc<str>,
}

impl FilePath {
    /// A file of the catalogue.
    #[must_use]
    pub fn catalogue(path: &str) -> Self {
        Self { folder: Folder::Catalogue, path: path.into() }
    }

    /// A file of the user's layouts.
    #[must_use]
    pub fn layouts(path: &str) -> Self {
        Self { folder: Folder::Layouts, path: path.into() }
    }

    /// What a layout is called that the user does not bring.
    pub(super) fn built_in(&self) -> String {
        format!("built-in layouts/{}", self.path)
    }
}

/// A place in a file: the whole file, or a line and column in it.
///
/// `{:-?}` does not say where: what is drawn from a record does not change where the record moves.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file.
    pub file: FilePath,
    /// Line, counted from 1; 0 where the whole file is meant.
    pub line: u32,
    /// Column in characters, counted from 1; 0 where the whole line or file is meant.
    pub column: u32,
}

impl fmt::Debug for Place {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match out.sign_minus() {
            true => out.write_str("Place"),
            false => write!(
                out,
                "Place({:?} {:?}, {}:{})",
                self.file.folder, self.file.path, self.line, self.column
            ),
        }
    }
}

impl Place {
    /// A whole file.
    #[must_use]
    pub fn whole(file: FilePath) -> Self {
        Self { file, line: 0, column: 0 }
    }

    /// A line and column, both counted from 1.
    #[must_use]
    pub fn at(file: FilePath, line: u32, column: u32) -> Self {
        Self { file, line, column }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_left_out_where_that_is_asked_for() {
        let at = |line| Some(vec![Place::at(FilePath::catalogue("parts/a.yaml"), line, 1)]);
        assert_eq!(format!("{:-?}", at(1)), format!("{:-?}", at(7)));
        assert_ne!(format!("{:?}", at(1)), format!("{:?}", at(7)));
    }
}
