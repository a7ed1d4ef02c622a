//! The measurements of a part as written, made from their table.

use crate::records::record::{one_of, record};
use crate::records::{BearsOnWord, BoreRecord, Count, Deg, Mm, Position, Size, SizeOrZero, Text};
use crate::units::Range;

macro_rules! geometry_records {
    (
        kinds {
            $( $(#[doc = $kind_about:literal])+ $kind:ident($kind_shape:ident, $kind_record:ident) = $kind_key:literal; )+
        }
        $( $(#[doc = $about:literal])+ $shape:ident, $record:ident, $called:literal {
            $(
                $(#[doc = $doc:literal])+
                $field:ident as $key:literal: $stated:ty => $quantity:ty [$($told:tt)+];
            )+
        } )+
    ) => {
        one_of! {
            /// The measurements of a part, by what it is.
            GeometryRecord ("a geometry") {
                $( $(#[doc = $kind_about])+ $kind = $kind_key: $kind_record; )+
            }
        }

        $(
            record! {
                $(#[doc = $about])+
                $record ($called) {
                    $( $(#[doc = $doc])+ $field as $key: $stated, Optional; )+
                }
            }
        )+
    };
}

crate::measurements::table!(geometry_records);
