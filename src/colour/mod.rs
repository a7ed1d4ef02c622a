//! Marks: colours, differences as eyes see them, contrast, texts that can be taken for another.

mod code;
mod compare;
mod dichromat;
mod drawn_alike;
mod mark;
mod marking;
mod propose;
mod sight;
mod srgb;
mod text;

pub use code::ColourCode;
pub use compare::{Comparison, GREY_LIGHTNESS, GREY_TEXT, Likeness, MarkLimits, compare};
pub use drawn_alike::as_drawn;
pub use mark::Mark;
pub use marking::{Marking, common_marking};
pub use propose::{propose_mark, propose_set};
pub use sight::{Model, Sight, difference, simulate};
pub use srgb::{LEGIBLE_CONTRAST, Lab, Srgb, ciede2000, contrast};
pub use text::{Confusion, confusion, reads_as, reads_as_name, reads_worn};
