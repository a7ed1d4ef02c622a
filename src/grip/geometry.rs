//! The measurements of parts, made from their table; what a record lacks is unknown, not guessed.

use super::measurement::Listed::{As, Each, Tolerance};
use super::measurement::{Adjustment, Measure, Measured, Measurement};
use super::{BearsOn, Bore};
use crate::units::{Angle, Length, Range};

macro_rules! geometry {
    (
        kinds {
            $( $(#[doc = $kind_about:literal])+ $kind:ident($kind_shape:ident, $kind_record:ident) = $kind_key:literal; )+
        }
        $( $(#[doc = $about:literal])+ $shape:ident, $record:ident, $called:literal {
            $(
                $(#[doc = $doc:literal])+
                $field:ident as $key:literal: $stated:ty => $quantity:ty [
                    $listed:expr
                    $(, wanted $wanted:literal)?
                    $(, adjusted $words:literal by $step:literal x $steps:literal $(above $above:literal)?)?
                ];
            )+
        } )+
    ) => {
        /// The geometry of one part, by what it is.
        #[derive(Debug, Clone, PartialEq)]
        pub enum Geometry {
            $( $(#[doc = $kind_about])+ $kind($kind_shape), )+
        }

        impl Geometry {
            /// The key of its kind in records, such as `collet`.
            #[must_use]
            pub fn key(&self) -> &'static str {
                match self { $( Self::$kind(_) => $kind_key, )+ }
            }

            /// What is measured on parts of its kind, stated or not.
            #[must_use]
            pub fn measurements(&self) -> &'static [Measurement] {
                match self { $( Self::$kind(_) => $kind_shape::MEASUREMENTS, )+ }
            }

            /// What the part states of the measurement with a key.
            #[must_use]
            pub fn measured(&self, key: &str) -> Option<Measured> {
                match self { $( Self::$kind(shape) => shape.measured(key), )+ }
            }

            /// The same with another number, in the unit of its key, for the measurement with a key.
            #[must_use]
            pub fn adjusted(&self, key: &str, bare: f64) -> Self {
                let mut adjusted = self.clone();
                match &mut adjusted { $( Self::$kind(shape) => shape.adjust(key, bare), )+ }
                adjusted
            }
        }

        /// The measurement at a path such as `geometry.collet.bore_mm`.
        #[must_use]
        pub fn measurement(path: &str) -> Option<&'static Measurement> {
            let (kind, key) = path.strip_prefix("geometry.")?.split_once('.')?;
            let measurements = match kind {
                $( $kind_key => $kind_shape::MEASUREMENTS, )+
                _ => return None,
            };
            measurements.iter().find(|measurement| measurement.key == key)
        }

        $(
            $(#[doc = $about])+
            #[derive(Debug, Clone, Default, PartialEq)]
            pub struct $shape {
                $( $(#[doc = $doc])+ pub $field: Option<$quantity>, )+
            }

            impl $shape {
                const MEASUREMENTS: &'static [Measurement] = &[$( Measurement {
                    key: $key,
                    listed: $listed,
                    wanted: optional!($($wanted)?),
                    adjustment: optional!($(Adjustment {
                        words: $words,
                        step: $step,
                        steps: $steps,
                        above: or_zero!($($above)?),
                    })?),
                }, )+];

                fn measured(&self, key: &str) -> Option<Measured> {
                    match key {
                        $( $key => self.$field.as_ref().map(Measure::measured), )+
                        _ => None,
                    }
                }

                fn adjust(&mut self, key: &str, bare: f64) {
                    match key {
                        $( $key => self.$field = Measure::from_bare(bare).or_else(|| self.$field.take()), )+
                        _ => {}
                    }
                }
            }
        )+
    };
}

macro_rules! optional {
    () => {
        None
    };
    ($value:expr) => {
        Some($value)
    };
}

macro_rules! or_zero {
    () => {
        0.0
    };
    ($number:literal) => {
        $number
    };
}

crate::measurements::table!(geometry);
