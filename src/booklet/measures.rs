//! The measures of a part, as its page lists them.

use super::view::{fact, facts};
use crate::catalogue::Part;
use crate::grip::{
    BearsOn, Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody,
};
use crate::units::{Angle, Length, Numerals, Range};
use serde_json::Value;

/// Names and texts of what the record measures; what it lacks is left out.
pub(super) fn of(part: &Part, numerals: Numerals) -> Vec<Value> {
    let write = Write(numerals);
    match &part.geometry {
        None => Vec::new(),
        Some(Geometry::Collet(collet)) => write.collet(collet),
        Some(Geometry::SpreadingCone(cone)) => write.spreading_cone(cone),
        Some(Geometry::Socket(socket)) => write.socket(socket),
        Some(Geometry::Body(body)) => write.body(body),
        Some(Geometry::Wedge(wedge)) => write.wedge(wedge),
        Some(Geometry::WedgeBody(body)) => write.wedge_body(body),
        Some(Geometry::Thimble(thimble)) => write.thimble(thimble),
        Some(Geometry::Ferrule(tube) | Geometry::Sleeve(tube)) => write.pressed(tube),
        Some(Geometry::RopeGrip(grip)) => write.rope_grip(grip),
    }
}

struct Write(Numerals);

impl Write {
    fn mm(&self, length: Option<Length>) -> String {
        length.map_or_else(String::new, |length| format!("{}\u{a0}mm", self.0.shortest(length.mm(), 2)))
    }

    fn within(&self, length: Option<Length>, tolerance: Option<Length>) -> String {
        match (length, tolerance) {
            (Some(length), Some(tolerance)) => format!(
                "{}\u{a0}±\u{a0}{}\u{a0}mm",
                self.0.shortest(length.mm(), 2),
                self.0.shortest(tolerance.mm(), 2)
            ),
            (length, _) => self.mm(length),
        }
    }

    fn range(&self, range: Option<Range<Length>>) -> String {
        range.map_or_else(String::new, |range| self.0.window(range.least().mm(), range.most().mm(), 1, "mm"))
    }

    fn degrees(&self, angle: Option<Angle>) -> String {
        angle.map_or_else(String::new, |angle| format!("{}°", self.0.shortest(angle.degrees(), 2)))
    }

    fn slits(&self, count: Option<u32>, width: Option<Length>) -> String {
        match (count, width) {
            (Some(count), Some(_)) => format!("{count}, each {}", self.mm(width)),
            (Some(count), None) => count.to_string(),
            (None, width) => self.mm(width),
        }
    }

    fn collet(&self, collet: &Collet) -> Vec<Value> {
        facts([
            fact("Bore", self.within(collet.bore, collet.bore_tolerance)),
            fact("Pieces", count(collet.pieces)),
            fact("Slits", self.slits(collet.slits, collet.slit_width)),
            fact("Half-angle", self.degrees(collet.half_angle)),
            fact("Length", self.mm(collet.length)),
            fact("Stand-out where the conductor just fills the bore", self.mm(collet.stand_out_at_bore)),
        ])
    }

    fn spreading_cone(&self, cone: &SpreadingCone) -> Vec<Value> {
        facts([
            fact("Large diameter", self.mm(cone.large_diameter)),
            fact("Half-angle", self.degrees(cone.half_angle)),
            fact("Length", self.mm(cone.length)),
            fact("Hole", self.mm(cone.hole_diameter)),
            fact("Wires through the hole", count(cone.wires_through_hole)),
            fact("Slits", self.slits(cone.slits, cone.slit_width)),
        ])
    }

    fn socket(&self, socket: &Socket) -> Vec<Value> {
        facts([
            fact("Large diameter", self.mm(socket.large_diameter)),
            fact("Half-angle", self.degrees(socket.half_angle)),
            fact("Length of the taper", self.mm(socket.length)),
            fact("Throat", self.mm(socket.throat_diameter)),
            fact("Travel", self.mm(socket.travel)),
        ])
    }

    fn body(&self, body: &Body) -> Vec<Value> {
        facts([
            fact("Half-angle of the seat", self.degrees(body.half_angle)),
            fact("Large diameter of the seat", self.mm(body.large_diameter)),
            fact("Length", self.mm(body.length)),
            fact("Anchored by", body.eye.clone().unwrap_or_default()),
        ])
    }

    fn wedge(&self, wedge: &Wedge) -> Vec<Value> {
        facts([
            fact("Thickness at the large end", self.mm(wedge.thickness)),
            fact("Taper", self.degrees(wedge.taper)),
            fact("Length", self.mm(wedge.length)),
        ])
    }

    fn wedge_body(&self, body: &WedgeBody) -> Vec<Value> {
        let side = body.bears_on.map_or("", |side| match side {
            BearsOn::Width => "width",
            BearsOn::Height => "height",
        });
        facts([
            fact("Mouth", self.mm(body.mouth)),
            fact("Taper", self.degrees(body.taper)),
            fact("Length", self.mm(body.length)),
            fact("Travel", self.mm(body.travel)),
            fact("The wedge bears on the wire's", side),
        ])
    }

    fn thimble(&self, thimble: &Thimble) -> Vec<Value> {
        facts([
            fact("Groove", self.mm(thimble.groove)),
            fact("Inside width", self.mm(thimble.inside_width)),
            fact("Inside length", self.mm(thimble.inside_length)),
        ])
    }

    fn pressed(&self, tube: &Ferrule) -> Vec<Value> {
        facts([
            fact("Bore before pressing", self.mm(tube.bore)),
            fact("Length before pressing", self.mm(tube.length)),
            fact("Die", tube.die.clone().unwrap_or_default()),
            fact("Size after pressing", self.range(tube.pressed)),
        ])
    }

    fn rope_grip(&self, grip: &RopeGrip) -> Vec<Value> {
        facts([
            fact("Rope diameter", self.range(grip.rope)),
            fact("Distance from grip to grip", self.mm(grip.spacing)),
        ])
    }
}

fn count(count: Option<u32>) -> String {
    count.map_or_else(String::new, |count| count.to_string())
}
