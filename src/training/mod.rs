//! The rest of a training cell's work from the same records: assembly slips, gauges, bin labels, quizzes, assessment
//! sheets.

mod asks;
mod assessments;
mod dice;
mod dxf;
mod gauges;
mod index;
mod input;
mod labels;
mod neighbours;
mod outline;
mod page;
mod pages;
mod plate;
mod question;
mod quiz;
mod quiz_pages;
mod shown;
mod slips;
mod swatch;
mod texts;
mod ungauged;

pub use gauges::{GAUGE, Gauge, gauges};
pub use index::Beside;
pub use input::Input;
pub use labels::{LABEL, labels};
pub use page::Page;
pub use pages::pages;
pub use question::{About, Answer, Kind, Question};
pub use quiz::{Asked, Pool};
pub use shown::lacking;
pub use slips::slips;
use texts::{joined, object};
