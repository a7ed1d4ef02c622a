//! The domain model: every link resolved, every size positive, every number a quantity.

mod catalogue;
mod conductor;
mod edition;
mod fitting;
mod gaps;
mod note;
mod notice;
mod origin;
mod part;
mod procedure;
mod settings;
mod wording;

pub use crate::records::{
    AssemblyStage, CardKey, CardSize, Duty, Family, FlipEdge, Grade, Orientation, ReceiptWord, Reuse, Role,
    SheetSize, StampPlace, StandOutFrom, Status, WearBasis,
};
pub use catalogue::Catalogue;
pub use conductor::{Conductor, Identity, Stated, WearLimits};
pub use edition::{CardIssue, Edition, IssuedText};
pub use fitting::{CompleteWithout, Fitting, InService, Item, StandOut};
pub use gaps::Gaps;
pub use note::{FontFile, InstalledFile, Note, NoteAbout};
pub use notice::{Holder, Notice, Receipt};
pub use origin::Origin;
pub use part::{Part, Proof};
pub use procedure::{IfWrong, Procedure, Step, Tightening};
pub use settings::{CardFormat, Limits, Settings, SheetFormat, TaughtGroup, Training};
pub use wording::{Piece, PieceKind, Wording, pieces};
