//! The kinds of record, as written.

mod catalogue;
mod conductor;
mod fitting;
mod geometry;
mod holder;
mod installed;
mod material;
mod notice;
mod part;
mod procedure;
mod register;
mod step;

pub use catalogue::{
    CardRecord, CatalogueRecord, LimitsRecord, MOST_LINES_BEFORE_WORK, SheetRecord, TaughtGroupRecord,
    TrainingRecord,
};
pub use conductor::{
    BarRecord, CompositeRecord, ConductorRecord, ConstructionRecord, CoreRecord, GroovedRecord, GroupRecord,
    IdentityRecord, RopeRecord, SolidRecord, StatedRecord, ToleranceRecord, TubeRecord, WearRecord,
};
pub use fitting::{
    CompleteWithoutRecord, FittingRecord, IfWrongRecord, ItemRecord, StandOutRecord, TighteningRecord,
};
pub use geometry::{
    BodyRecord, ColletRecord, FerruleRecord, GeometryRecord, RopeGripRecord, SocketRecord,
    SpreadingConeRecord, ThimbleRecord, WedgeBodyRecord, WedgeRecord,
};
pub use holder::{Copies, HolderRecord, ReceiptRecord};
pub use installed::{InstalledRecord, InstalledRow, read_installed};
pub use material::{MaterialRecord, SourceRecord, StrengthRecord, StrengthStepRecord};
pub use notice::NoticeRecord;
pub use part::{MarkRecord, PartRecord, PartStatus, ProofRecord};
pub use procedure::ProcedureRecord;
pub use register::{
    AfterRecord, CardIssueRecord, EditionRecord, GradeWord, HolderThenRecord, IssuedTextRecord, PrintsRecord,
    read_edition, sealed,
};
pub use step::{MOST_STEPS, StepRecord};
