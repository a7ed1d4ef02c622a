//! Marks: colours, differences as eyes see them, contrast, texts that can be taken for another.

mod code;
mod mark;

pub use code::ColourCode;
pub use mark::Mark;
