//! What lies in a folder and is not read.

use super::FilePath;

/// Something in a folder that can't be read as a file, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unread {
    /// Its path; what is not UTF-8 in it is written out byte by byte, such as `\xFF`.
    pub file: FilePath,
    /// Why.
    pub why: WhyUnread,
}

/// Why something in a folder can't be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyUnread {
    /// It is a link; these are not followed, so that a catalogue is whole in itself.
    Link,
    /// It is neither a file nor a folder.
    NoFile,
    /// Its name is not UTF-8.
    Name,
}
