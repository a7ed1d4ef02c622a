//! The kinds of questions, a file each.

mod alike;
mod inside;
mod reading;
mod refuted;
mod torque;

use super::Input;
use super::question::Question;

/// Every question that the records settle, kind by kind.
pub(super) fn all(input: Input<'_>) -> Vec<Question> {
    let kinds: [fn(Input<'_>) -> Vec<Question>; 6] = [
        inside::which_is_right,
        inside::what_comes_of_it,
        inside::by_what_it_is_found,
        reading::what_a_reading_calls_for,
        torque::which_torque,
        alike::what_tells_them_apart,
    ];
    kinds.into_iter().flat_map(|questions| questions(input)).collect()
}
