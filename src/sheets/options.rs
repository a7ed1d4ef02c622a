//! What all sheets of a catalogue have in common.

use crate::catalogue::SheetFormat;
use crate::typeset::Fonts;
use crate::units::Length;
use jiff::civil::Date;

/// What sheets have in common.
#[derive(Debug, Clone, Copy)]
pub struct Options<'a> {
    /// Title of the catalogue.
    pub title: &'a str,
    /// The edition in the margin.
    pub edition: &'a str,
    /// The date in the margin and in the file; 2000-01-01 in the file where there is none.
    pub date: Option<Date>,
    /// BCP 47 tag of the language that cards are written in.
    pub language: &'a str,
    /// Paper, flip edge, crop marks and bleed.
    pub format: SheetFormat,
    /// Width and height of what is cut out: its trim box.
    pub trim: (Length, Length),
    /// What the margins are set in.
    pub fonts: &'a Fonts,
}
