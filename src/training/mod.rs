//! The rest of a training cell's work from the same records: assembly slips, gauges, bin labels, quizzes, assessment
//! sheets.

mod input;
mod slips;

pub use input::Input;
pub use slips::slips;
