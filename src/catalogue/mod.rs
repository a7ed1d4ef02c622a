//! Records that are checked and linked: the domain model.
//!
//! What a record gets that is well written and yet can't be used:
//!
//! | code | why |
//! | --- | --- |
//! | `duplicate-id` | ids and numbers are given once over all kinds, whatever the case |
//! | `unknown-material`, `unknown-conductor`, `unknown-part`, `unknown-notice`, `unknown-procedure` | a name without a record |
//! | `unknown-card`, `unknown-note` | copies of, or a note about, what there isn't |
//! | `wires-do-not-fit`, `impossible-construction` | a conductor that can't be computed |
//! | `heights-not-falling`, `rows-not-rising` | wear heights and strength rows out of order |
//! | `geometry-of-another-role` | measurements that nobody would look at |
//! | `too-many-lines` | lines before work |
//! | `group-listed-twice` | groups that are taught |
//! | `part-listed-twice`, `empty-list`, `too-many-steps`, `wrong-number-of-conductors` | lists of a fitting |
//! | `edition-edited`, `edition-out-of-line` | a register that is not as `issue` left it |
//! | `supersession-circle`, `supersession-to-nothing`, `status-contradiction` | what replaces what |

mod check;
mod conductors;
mod crowding;
mod date;
mod editions;
mod fittings;
mod gaps;
mod geometry;
mod hashes;
mod load;
mod materials;
mod model;
mod names;
mod notes;
mod notices;
mod parts;
mod procedures;
mod quantities;
mod record_index;
mod record_kind;
mod settings;
mod supersession;
#[cfg(test)]
mod tests;
mod wordings;

pub use crate::colour::Mark;
pub use hashes::RecordHashes;
pub use load::{Loaded, load, load_seen};
pub use model::*;
