//! A measurement as data: what it is called, what a part states of it, and how it can be changed.

use super::{BearsOn, Bore};
use crate::units::{Angle, Length, Range};

/// A line of the table of measurements.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measurement {
    /// Its key in records, such as `bore_mm`.
    pub key: &'static str,
    /// How a part's page lists it.
    pub listed: Listed,
    /// What it is called where a verdict waits for it.
    pub wanted: Option<&'static str>,
    /// How a drawing office could change it.
    pub adjustment: Option<Adjustment>,
}

/// How a part's page lists a measurement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Listed {
    /// Under words of its own.
    As(&'static str),
    /// As the tolerance of the measurement above it.
    Tolerance,
    /// As the size of each of what is counted above it.
    Each,
}

/// How a drawing office could change a measurement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adjustment {
    /// What it is called there.
    pub words: &'static str,
    /// One step of change, in the unit of its key.
    pub step: f64,
    /// How many steps up or down make sense.
    pub steps: u32,
    /// What it stays above, in the unit of its key.
    pub above: f64,
}

/// What a part states of a measurement.
#[derive(Debug, Clone, PartialEq)]
pub enum Measured {
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// A number of things.
    Count(u32),
    /// A least and a most.
    Range(Range<Length>),
    /// Width and height of an oval.
    Oval(Length, Length),
    /// A word or another text.
    Text(String),
}

impl Measured {
    /// In the unit of its key: millimetres, degrees or a number; `None` where it is no single number.
    #[must_use]
    pub fn bare(&self) -> Option<f64> {
        match self {
            Self::Length(length) => Some(length.mm()),
            Self::Angle(angle) => Some(angle.degrees()),
            Self::Count(count) => Some(f64::from(*count)),
            Self::Range(_) | Self::Oval(..) | Self::Text(_) => None,
        }
    }
}

/// A kind of value that a measurement can have.
pub(super) trait Measure: Sized {
    /// The value as data.
    fn measured(&self) -> Measured;

    /// The value of a number in the unit of its key; `None` where it is no single number.
    fn from_bare(_: f64) -> Option<Self> {
        None
    }
}

impl Measure for Length {
    fn measured(&self) -> Measured {
        Measured::Length(*self)
    }

    fn from_bare(mm: f64) -> Option<Self> {
        Some(Self::from_mm(mm))
    }
}

impl Measure for Angle {
    fn measured(&self) -> Measured {
        Measured::Angle(*self)
    }

    fn from_bare(degrees: f64) -> Option<Self> {
        Some(Self::from_degrees(degrees))
    }
}

impl Measure for u32 {
    fn measured(&self) -> Measured {
        Measured::Count(*self)
    }

    fn from_bare(number: f64) -> Option<Self> {
        Some(number.round() as Self)
    }
}

impl Measure for Range<Length> {
    fn measured(&self) -> Measured {
        Measured::Range(*self)
    }
}

impl Measure for Bore {
    fn measured(&self) -> Measured {
        match *self {
            Self::Round(across) => Measured::Length(across),
            Self::Oval { width, height } => Measured::Oval(width, height),
        }
    }

    fn from_bare(mm: f64) -> Option<Self> {
        Some(Self::Round(Length::from_mm(mm)))
    }
}

impl Measure for String {
    fn measured(&self) -> Measured {
        Measured::Text(self.clone())
    }
}

impl Measure for BearsOn {
    fn measured(&self) -> Measured {
        Measured::Text(self.word().to_owned())
    }
}
