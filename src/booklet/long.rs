//! When a list is too long for one page, and how it goes by section then.

use crate::notes::address::Address;

/// The most lines that a page lists; a longer list goes by section, so that a phone opens each at once.
pub(super) const MOST_LINES: usize = 400;

/// Lines in sections of a page's length, in order; one section where they all go on one page.
pub(super) fn sections<T>(lines: &[T]) -> impl Iterator<Item = &[T]> {
    lines.chunks(MOST_LINES)
}

/// The page of a section of a page, from 1.
pub(super) fn section(of: &Address, nth: usize) -> Address {
    Address::page(format!("{}-{nth}", of.name()))
}
