//! A notice as written.

use crate::records::record::record;
use crate::records::{Day, Identifier, Name, Prose, Text};

record! {
    /// A circular or change note.
    NoticeRecord ("a notice") {
        /// Its number.
        /// Example: `N-2026-04`
        number: Identifier, Required;
        /// When it was written.
        /// Example: `2026-09-14`
        date: Day, Required;
        /// The day from which it holds.
        /// Example: `2026-10-01`
        effective: Day, Optional;
        /// The day by which it is carried out.
        /// Example: `2027-01-31`
        action_by: Day, Optional;
        /// Its title.
        /// Example: `New cones for 120 mm² messenger wire`
        title: Name, Required;
        /// The owner's own reference.
        /// Example: `ST-TC-118`
        reference: Text, Optional;
        /// What it says, in a few sentences.
        /// Example: `Cones of the old bore let the wire go. Replace them.`
        summary: Prose, Optional;
    }
}
