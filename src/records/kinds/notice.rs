//! A notice as written.

use crate::records::record::record;
use crate::records::{Day, Identifier, Name, Prose, Text};

record! {
    /// A circular or change note.
    NoticeRecord ("a notice") {
        /// Its number.
        number: Identifier, Required;
        /// When it was written.
        date: Day, Required;
        /// From when it holds.
        effective: Day, Optional;
        /// By when it is carried out.
        action_by: Day, Optional;
        /// Its title.
        title: Name, Required;
        /// The owner's own reference.
        reference: Text, Optional;
        /// What it says.
        summary: Prose, Optional;
    }
}
