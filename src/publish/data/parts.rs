//! Parts, their marks and their geometry as JSON.

use super::object::{Object, min_max};
use super::uses::Uses;
use crate::catalogue::{Mark, Part, Proof, Reuse};
use crate::grip::{
    BearsOn, Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody,
};
use crate::units::{Length, Range};
use serde_json::Value;

pub(super) fn object(part: &Part, uses: &Uses<'_>) -> Value {
    let mut object = Object::new();
    object.put("number", part.number.as_str());
    object.put("name", part.name.as_str());
    object.put("role", part.role.word());
    object.put("material", part.material.id.as_str());
    object.text("drawing", &part.drawing);
    object.text("stamp", &part.stamp);
    object.known("mark", part.mark.as_ref().map(mark));
    object.known("mark_seen_after_assembly", part.mark_seen_after_assembly);
    object.known("reuse", part.reuse.map(Reuse::word));
    object.put("status", part.status.word());
    object.text("interface", &part.interface);
    object.list("proven_on", part.proven_on.iter().map(proof));
    if let Some((kind, measurements)) = part.geometry.as_ref().map(geometry) {
        let mut named = Object::new();
        named.part(kind, measurements);
        object.part("geometry", named);
    }
    object.list("fittings", uses.get(part.number.as_str()).into_iter().flatten().copied());
    object.into()
}

pub(super) fn mark(mark: &Mark) -> Value {
    let mut object = Object::new();
    object.put("colour", mark.colour.letters());
    object.text("text", &mark.text);
    object.put("notches", mark.notches);
    object.into()
}

fn proof(proof: &Proof) -> Value {
    let mut object = Object::new();
    object.put("conductor", proof.conductor.id.as_str());
    object.kn("holding_load_kN", proof.holding_load);
    object.text("report", &proof.report);
    object.date("date", proof.date);
    object.into()
}

fn geometry(geometry: &Geometry) -> (&'static str, Object) {
    match geometry {
        Geometry::Collet(collet) => ("collet", self::collet(collet)),
        Geometry::SpreadingCone(cone) => ("spreading_cone", spreading_cone(cone)),
        Geometry::Socket(socket) => ("socket", self::socket(socket)),
        Geometry::Body(body) => ("body", self::body(body)),
        Geometry::Wedge(wedge) => ("wedge", self::wedge(wedge)),
        Geometry::WedgeBody(body) => ("wedge_body", wedge_body(body)),
        Geometry::Thimble(thimble) => ("thimble", self::thimble(thimble)),
        Geometry::Ferrule(ferrule) => ("ferrule", self::ferrule(ferrule)),
        Geometry::Sleeve(sleeve) => ("sleeve", ferrule(sleeve)),
        Geometry::RopeGrip(grip) => ("rope_grip", rope_grip(grip)),
    }
}

fn collet(collet: &Collet) -> Object {
    let mut object = Object::new();
    object.mm("bore_mm", collet.bore);
    object.mm("bore_tolerance_mm", collet.bore_tolerance);
    object.known("pieces", collet.pieces);
    object.known("slits", collet.slits);
    object.mm("slit_width_mm", collet.slit_width);
    object.degrees("half_angle_deg", collet.half_angle);
    object.mm("length_mm", collet.length);
    object.mm("stand_out_at_bore_mm", collet.stand_out_at_bore);
    object
}

fn spreading_cone(cone: &SpreadingCone) -> Object {
    let mut object = Object::new();
    object.mm("large_diameter_mm", cone.large_diameter);
    object.degrees("half_angle_deg", cone.half_angle);
    object.mm("length_mm", cone.length);
    object.mm("hole_diameter_mm", cone.hole_diameter);
    object.known("wires_through_hole", cone.wires_through_hole);
    object.known("slits", cone.slits);
    object.mm("slit_width_mm", cone.slit_width);
    object
}

fn socket(socket: &Socket) -> Object {
    let mut object = Object::new();
    object.mm("large_diameter_mm", socket.large_diameter);
    object.degrees("half_angle_deg", socket.half_angle);
    object.mm("length_mm", socket.length);
    object.mm("throat_diameter_mm", socket.throat_diameter);
    object.mm("travel_mm", socket.travel);
    object
}

fn body(body: &Body) -> Object {
    let mut object = Object::new();
    object.degrees("half_angle_deg", body.half_angle);
    object.mm("large_diameter_mm", body.large_diameter);
    object.mm("length_mm", body.length);
    object.known("eye", body.eye.as_deref());
    object
}

fn wedge(wedge: &Wedge) -> Object {
    let mut object = Object::new();
    object.mm("thickness_mm", wedge.thickness);
    object.degrees("taper_deg", wedge.taper);
    object.mm("length_mm", wedge.length);
    object
}

fn wedge_body(body: &WedgeBody) -> Object {
    let mut object = Object::new();
    object.mm("mouth_mm", body.mouth);
    object.degrees("taper_deg", body.taper);
    object.mm("length_mm", body.length);
    object.mm("travel_mm", body.travel);
    object.known("bears_on", body.bears_on.map(bears_on));
    object
}

fn bears_on(side: BearsOn) -> &'static str {
    match side {
        BearsOn::Width => "width",
        BearsOn::Height => "height",
    }
}

fn thimble(thimble: &Thimble) -> Object {
    let mut object = Object::new();
    object.mm("groove_mm", thimble.groove);
    object.mm("inside_width_mm", thimble.inside_width);
    object.mm("inside_length_mm", thimble.inside_length);
    object
}

fn ferrule(ferrule: &Ferrule) -> Object {
    let mut object = Object::new();
    object.mm("bore_mm", ferrule.bore);
    object.mm("length_mm", ferrule.length);
    object.known("die", ferrule.die.as_deref());
    object.known("pressed_mm", ferrule.pressed.map(range));
    object
}

fn rope_grip(grip: &RopeGrip) -> Object {
    let mut object = Object::new();
    object.known("rope_mm", grip.rope.map(range));
    object.mm("spacing_mm", grip.spacing);
    object
}

fn range(range: Range<Length>) -> Value {
    min_max(range.least().mm(), range.most().mm())
}
