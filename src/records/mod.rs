//! The YAML as written: every value with its place, every fault of every record gathered.

mod document;
mod events;
mod field;
mod folder;
mod kinds;
mod nearest;
mod node;
mod number;
mod range;
mod raw;
mod record;
mod scalar;
mod schema;
mod schemas;
mod sort;
mod text;
mod words;

pub use document::{Document, Salvaged};
pub use field::{Field, Key, Need, Read, Reader};
pub use folder::{Records, TextFile, read};
pub use kinds::*;
pub use nearest::nearest;
pub use node::{Content, Entry, Node, Scalar, ScalarKind};
pub use number::{
    AboveZero, AnySign, Count, Deg, FromZero, KgPerKm, KgPerM3, Kn, Mm, Mm2, NPerMm2, Nm, NohmM, Number,
    OhmPerKm, PerKelvin, Percent, Plain, Position, Pt, Sign, Size, SizeOrZero, Unit,
};
pub use range::Range;
pub use scalar::{Day, Identifier, Language, Name, Prose, Text, Truth};
pub use schemas::schemas;
pub use text::decode;
pub use words::{
    BearsOnWord, CardSize, ColourWord, DecimalMark, Duty, Family, FlipEdge, InServiceWord, MagneticWord,
    MaterialGroupWord, Orientation, Reuse, Role, RopeCoreWord, SheetSize, StandOutFrom, Status, WearBasis,
};
