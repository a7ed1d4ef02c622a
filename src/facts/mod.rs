//! What a card prints, in words and dimensions, before it has a look.

mod card;
mod check_code;
mod pairs;
pub mod words;

pub use card::{
    BodyFacts, BodyPart, BodyRow, CardFacts, Cell, CheckFacts, ConductorFacts, Content, FittingFacts,
    MarkFacts, NotThis, NoticeFacts, PartLine, TighteningFacts, WearFacts, WearRow,
};
pub use check_code::CheckCode;
pub use pairs::Pair;
