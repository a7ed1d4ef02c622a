//! The rest of a training cell's work from the same records: assembly slips, gauges, bin labels, quizzes, assessment
//! sheets.

mod dxf;
mod gauges;
mod input;
mod labels;
mod neighbours;
mod outline;
mod plate;
mod slips;
mod texts;

pub use gauges::{GAUGE, Gauge, gauges};
pub use input::Input;
pub use labels::{LABEL, labels};
pub use slips::slips;
use texts::{joined, object};
