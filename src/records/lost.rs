//! What of a catalogue's files can't be read as records.

use super::node::Node;
use crate::source::FilePath;

/// An id or number seen in a file that can't be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Salvaged {
    /// The id or number.
    pub id: String,
    /// The file that it was seen in.
    pub file: FilePath,
}

/// What of a catalogue's files can't be read as records.
#[derive(Debug, Clone, Default)]
pub struct Lost {
    /// Whatever looks like the id or number of a record, so that what names it is not called wrong.
    pub salvaged: Vec<Salvaged>,
    /// Files and folders of which not even that is known.
    pub files: Vec<FilePath>,
}

impl Lost {
    /// Notes a text that can't be read: the ids in it or, where there are none, the file.
    pub(super) fn put_text(&mut self, file: &FilePath, text: &str) {
        let ids = text.lines().filter_map(|line| line.strip_prefix("id:").or(line.strip_prefix("number:")));
        let words = ids.filter_map(|rest| rest.split_whitespace().next());
        let before = self.salvaged.len();
        for word in words {
            self.put_id(file, word.trim_matches(['"', '\'', ':', ',', '[']));
        }
        if self.salvaged.len() == before {
            self.put_file(file);
        }
    }

    /// Notes the records that stand below another without `---` between.
    pub(super) fn put_unseparated(&mut self, file: &FilePath, node: &Node) {
        let ids = node.entries().iter().filter(|entry| ["id", "number"].contains(&entry.key.as_str()));
        for id in ids.skip(1).filter_map(|entry| entry.value.written()) {
            self.put_id(file, id);
        }
    }

    /// Notes a file or folder of which nothing can be read.
    pub(super) fn put_file(&mut self, file: &FilePath) {
        self.files.push(file.clone());
    }

    /// Adds what others have lost.
    pub(super) fn add(&mut self, other: Self) {
        self.salvaged.extend(other.salvaged);
        self.files.extend(other.files);
    }

    fn put_id(&mut self, file: &FilePath, id: &str) {
        self.salvaged.push(Salvaged { id: id.to_owned(), file: file.clone() });
    }
}
