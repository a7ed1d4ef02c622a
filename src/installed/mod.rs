//! Fittings that are in the line: which of them a notice, a hold, a withdrawal or their own readings call for.
//!
//! Lists are tables under `installed/` in the catalogue, a row a fitting ([`crate::records::InstalledRecord`]). What
//! is wrong with a row is a finding; the other rows are looked at all the same.
//!
//! | code | why |
//! | --- | --- |
//! | `unknown-fitting`, `unknown-part` | a number without a record |
//! | `not-a-gripping-part` | a part that grips nothing in that fitting |
//! | `unknown-issue` | an issue that the card did not have by then |
//! | `installed-twice` | place, fitting and slip of another row |
//! | `too-many-records` | more rows than are read |

mod asked;
mod card;
mod due;
mod follow_up;
mod json;
mod known;
mod model;
mod read;
mod readings;
mod table;
mod text;

pub use asked::{Affected, FollowUp, Reason, ReasonKind};
pub use follow_up::follow_up;
pub use json::follow_up_json;
pub use model::Installed;
pub use read::installed;
pub use table::{FOLLOW_UP_HEAD, follow_up_rows};
pub use text::{UNDER_TENSION, follow_up_text};
