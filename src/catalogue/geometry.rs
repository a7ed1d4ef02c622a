//! The measurements of parts as quantities, made from their table.

use super::quantities::stated;
use crate::grip::{
    Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody,
};
use crate::records::{
    BodyRecord, ColletRecord, FerruleRecord, GeometryRecord, RopeGripRecord, SocketRecord,
    SpreadingConeRecord, ThimbleRecord, WedgeBodyRecord, WedgeRecord,
};

macro_rules! geometry_of_records {
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
        impl From<&GeometryRecord> for Geometry {
            fn from(record: &GeometryRecord) -> Self {
                match record { $( GeometryRecord::$kind(field) => Self::$kind((&field.value).into()), )+ }
            }
        }

        $(
            impl From<&$record> for $shape {
                fn from(record: &$record) -> Self {
                    Self { $( $field: stated(record.$field.as_ref()), )+ }
                }
            }
        )+
    };
}

crate::measurements::table!(geometry_of_records);
