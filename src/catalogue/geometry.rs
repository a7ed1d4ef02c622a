//! The measurements of parts as quantities.

use super::quantities::{quantity, range, word};
use crate::grip::{
    Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody,
};
use crate::records::{
    BodyRecord, ColletRecord, Count, FerruleRecord, Field, GeometryRecord, RopeGripRecord, SocketRecord,
    SpreadingConeRecord, Text, ThimbleRecord, WedgeBodyRecord, WedgeRecord,
};

/// The measurements that a record states.
pub(super) fn geometry(record: &GeometryRecord) -> Geometry {
    match record {
        GeometryRecord::Collet(field) => Geometry::Collet(collet(&field.value)),
        GeometryRecord::SpreadingCone(field) => Geometry::SpreadingCone(spreading_cone(&field.value)),
        GeometryRecord::Socket(field) => Geometry::Socket(socket(&field.value)),
        GeometryRecord::Body(field) => Geometry::Body(body(&field.value)),
        GeometryRecord::Wedge(field) => Geometry::Wedge(wedge(&field.value)),
        GeometryRecord::WedgeBody(field) => Geometry::WedgeBody(wedge_body(&field.value)),
        GeometryRecord::Thimble(field) => Geometry::Thimble(thimble(&field.value)),
        GeometryRecord::Ferrule(field) => Geometry::Ferrule(ferrule(&field.value)),
        GeometryRecord::Sleeve(field) => Geometry::Sleeve(ferrule(&field.value)),
        GeometryRecord::RopeGrip(field) => Geometry::RopeGrip(rope_grip(&field.value)),
    }
}

fn collet(record: &ColletRecord) -> Collet {
    Collet {
        bore: quantity(record.bore.as_ref()),
        bore_tolerance: quantity(record.bore_tolerance.as_ref()),
        pieces: count(record.pieces.as_ref()),
        slits: count(record.slits.as_ref()),
        slit_width: quantity(record.slit_width.as_ref()),
        half_angle: quantity(record.half_angle.as_ref()),
        length: quantity(record.length.as_ref()),
        stand_out_at_bore: quantity(record.stand_out_at_bore.as_ref()),
    }
}

fn spreading_cone(record: &SpreadingConeRecord) -> SpreadingCone {
    SpreadingCone {
        large_diameter: quantity(record.large_diameter.as_ref()),
        half_angle: quantity(record.half_angle.as_ref()),
        length: quantity(record.length.as_ref()),
        hole_diameter: quantity(record.hole_diameter.as_ref()),
        wires_through_hole: count(record.wires_through_hole.as_ref()),
        slits: count(record.slits.as_ref()),
        slit_width: quantity(record.slit_width.as_ref()),
    }
}

fn socket(record: &SocketRecord) -> Socket {
    Socket {
        large_diameter: quantity(record.large_diameter.as_ref()),
        half_angle: quantity(record.half_angle.as_ref()),
        length: quantity(record.length.as_ref()),
        throat_diameter: quantity(record.throat_diameter.as_ref()),
        travel: quantity(record.travel.as_ref()),
    }
}

fn body(record: &BodyRecord) -> Body {
    Body {
        half_angle: quantity(record.half_angle.as_ref()),
        large_diameter: quantity(record.large_diameter.as_ref()),
        length: quantity(record.length.as_ref()),
        eye: stated(record.eye.as_ref()),
    }
}

fn wedge(record: &WedgeRecord) -> Wedge {
    Wedge {
        thickness: quantity(record.thickness.as_ref()),
        taper: quantity(record.taper.as_ref()),
        length: quantity(record.length.as_ref()),
    }
}

fn wedge_body(record: &WedgeBodyRecord) -> WedgeBody {
    WedgeBody {
        mouth: quantity(record.mouth.as_ref()),
        taper: quantity(record.taper.as_ref()),
        length: quantity(record.length.as_ref()),
        travel: quantity(record.travel.as_ref()),
        bears_on: quantity(record.bears_on.as_ref()),
    }
}

fn thimble(record: &ThimbleRecord) -> Thimble {
    Thimble {
        groove: quantity(record.groove.as_ref()),
        inside_width: quantity(record.inside_width.as_ref()),
        inside_length: quantity(record.inside_length.as_ref()),
    }
}

fn ferrule(record: &FerruleRecord) -> Ferrule {
    Ferrule {
        bore: quantity(record.bore.as_ref()),
        length: quantity(record.length.as_ref()),
        die: stated(record.die.as_ref()),
        pressed: range(record.pressed.as_ref()),
    }
}

fn rope_grip(record: &RopeGripRecord) -> RopeGrip {
    RopeGrip { rope: range(record.rope.as_ref()), spacing: quantity(record.spacing.as_ref()) }
}

fn count<const LEAST: u32, const MOST: u32>(field: Option<&Field<Count<LEAST, MOST>>>) -> Option<u32> {
    word(field).map(|count| count.bare())
}

fn stated(field: Option<&Field<Text>>) -> Option<String> {
    field.map(|field| field.value.0.clone()).filter(|text| !text.is_empty())
}
