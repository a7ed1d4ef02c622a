//! What lies in a folder and is not read, as findings.

use super::Finding;
use crate::source::{FilePath, Place, Unread, WhyUnread, WorldError};

impl Finding {
    /// The finding for something in a folder that is not read (`file-unreadable`).
    #[must_use]
    pub fn of_unread(unread: &Unread) -> Self {
        let (message, help) = match &unread.why {
            WhyUnread::Link => ("this is a link, and links are not followed", "put the file itself here"),
            WhyUnread::NoFile => ("this is neither a file nor a folder", "take it out of the folder"),
            WhyUnread::Name => ("the name of this file is not UTF-8", "rename it, with plain letters"),
        };
        Self::error("file-unreadable", Place::whole(unread.file.clone()), message).help(help)
    }

    /// The finding for a file that the machine can't give.
    #[must_use]
    pub fn of_world_error(file: &FilePath, error: &WorldError) -> Self {
        Self::error("file-unreadable", Place::whole(file.clone()), "this can't be read")
            .found(&error.reason)
            .help("see that you may read it, or take it out of the folder")
    }
}
