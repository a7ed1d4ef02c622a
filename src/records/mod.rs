//! The YAML as written: every value with its place, every fault of every record gathered.
//!
//! What a file gets that can't be read:
//!
//! | code | why |
//! | --- | --- |
//! | `file-unreadable` | a link, an odd name, or the machine refuses |
//! | `too-large` | over 1 MiB: no record needs it, and nobody reviews it |
//! | `not-utf8` | the bytes are no text |
//! | `not-yaml` | the text is no YAML, or two parsers read it differently |
//! | `yaml-tag` | a tag such as `!x` would change what a value is |
//! | `too-deep`, `alias-bomb` | nesting or repeating without end |
//! | `empty-document` | a warning: nothing stands there |
//! | `missing-file` | there is no `catalogue.yaml` |
//! | `second-document` | `catalogue.yaml` holds more than one |
//! | `import-cut-off` | `import` was killed while its files took their places |
//! | `unknown-file`, `file-ending` | it would not be read where it lies, or as it is called |
//!
//! What a value gets:
//!
//! | code | why |
//! | --- | --- |
//! | `duplicate-key`, `unknown-key`, `missing-key` | the keys of a mapping |
//! | `not-exactly-one` | a mapping that has one key of several |
//! | `wrong-type` | text for a number, one value for a list, and the like |
//! | `unknown-word` | not one of the words for this |
//! | `nan`, `infinite`, `negative`, `zero`, `absurd`, `not-whole` | numbers that are no size or count; each key has its own bound |
//! | `window-upside-down` | least above most |
//! | `list-too-long` | more entries than anybody reads |
//! | `edition-unreadable` | a file of the register that is not as `issue` writes it |
//! | `wrong-number-of-cells`, `quote-not-closed` | a list of installed fittings that is no table |
//! | `bad-id`, `bad-text`, `bad-language`, `not-a-date` | names, texts, tags, dates |

mod bore;
mod cell;
mod correction;
mod document;
mod events;
mod field;
mod file_kind;
mod folder;
mod key_doc;
mod kinds;
mod laid;
mod lost;
mod node;
mod number;
mod range;
mod raw;
mod record;
mod scalar;
mod schema;
mod schemas;
mod syntax;
mod table;
#[cfg(test)]
mod tests;
mod text;
mod wording;
mod words;
mod written_table;

pub use bore::BoreRecord;
pub use cell::{as_it_was, harmless};
pub use document::{Document, Seen};
pub use field::{Field, Key, Need, Read, Reader};
pub use file_kind::{CUT_OFF, holds_records};
pub use folder::{Records, TextFile, read, read_seen};
pub use kinds::*;
pub use laid::{Laid, LaidShape, Quoting, laid};
pub use lost::{Lost, Salvaged};
pub use node::{Content, Entry, Node, Scalar, ScalarKind, Written, nodes};
pub use number::{
    AboveZero, AnySign, Count, Deg, FromZero, KgPerKm, KgPerM3, Kn, Mm, Mm2, NPerMm2, Nm, NohmM, Number,
    OhmPerKm, PerKelvin, Percent, Plain, Position, Pt, Sign, Size, SizeOrZero, Unit,
};
pub use scalar::{Day, Identifier, Language, Name, Paragraph, Prose, Text, Truth, amiss_in_identifier, day};
pub use schemas::{explained_schemas, schemas};
pub use table::{Cell, MOST_ROWS, Table, table};
pub use text::{decode, utf8};
pub use wording::{Letters, Worded};
pub use words::{
    AssemblyStage, BearsOnWord, CardKey, CardSize, ColourWord, DecimalMark, Duty, Family, FlipEdge, Grade,
    InServiceWord, MagneticWord, MaterialGroupWord, Orientation, ReceiptWord, Reuse, Role, RopeCoreWord,
    SheetSize, StampPlace, StandOutFrom, Status, WearBasis,
};
pub use written_table::written_table;
