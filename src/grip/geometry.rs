//! The measurements of parts; what a record lacks is unknown, not guessed.

use crate::units::{Angle, Length, Range};

/// The geometry of one part, by role.
#[derive(Debug, Clone, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Geometry {
    Collet(Collet),
    SpreadingCone(SpreadingCone),
    Socket(Socket),
    Body(Body),
    Wedge(Wedge),
    WedgeBody(WedgeBody),
    Thimble(Thimble),
    Ferrule(Ferrule),
    Sleeve(Ferrule),
    RopeGrip(RopeGrip),
}

/// A gripping cone split lengthwise that closes round the conductor.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Collet {
    /// Bore as made, before it closes.
    pub bore: Option<Length>,
    /// Half-width of the bore's tolerance.
    pub bore_tolerance: Option<Length>,
    /// Pieces that the cone is made of; one where absent.
    pub pieces: Option<u32>,
    /// Slits that let it close.
    pub slits: Option<u32>,
    /// Width of one slit.
    pub slit_width: Option<Length>,
    /// Between the axis and the outside taper.
    pub half_angle: Option<Angle>,
    /// Length along the axis.
    pub length: Option<Length>,
    /// Stand-out where the conductor just fills the bore.
    pub stand_out_at_bore: Option<Length>,
}

/// A gripping cone driven between the wires.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SpreadingCone {
    /// Diameter of the large end.
    pub large_diameter: Option<Length>,
    /// Between the axis and the flank.
    pub half_angle: Option<Angle>,
    /// Length along the axis.
    pub length: Option<Length>,
    /// Hole through which the inner wires go.
    pub hole_diameter: Option<Length>,
    /// Wires that go through the hole on the conductor it is made for.
    pub wires_through_hole: Option<u32>,
    /// Slits that let the hole close.
    pub slits: Option<u32>,
    /// Width of one slit.
    pub slit_width: Option<Length>,
}

/// The tapered seat round a spreading cone.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Socket {
    /// Diameter of the large end.
    pub large_diameter: Option<Length>,
    /// Between the axis and the flank.
    pub half_angle: Option<Angle>,
    /// Length of the taper along the axis.
    pub length: Option<Length>,
    /// Hole that the conductor comes through.
    pub throat_diameter: Option<Length>,
    /// How far the closing part can push the cone in.
    pub travel: Option<Length>,
}

/// A body with a conical seat for a collet.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Body {
    /// Between the axis and the seat.
    pub half_angle: Option<Angle>,
    /// Diameter of the seat's large end.
    pub large_diameter: Option<Length>,
    /// Length along the axis.
    pub length: Option<Length>,
    /// What it is anchored by, such as "clevis".
    pub eye: Option<String>,
}

/// A wedge that lies beside the conductor.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Wedge {
    /// Thickness at the large end.
    pub thickness: Option<Length>,
    /// Taper of its one sloping flank.
    pub taper: Option<Angle>,
    /// Length along the conductor.
    pub length: Option<Length>,
}

/// The body that a wedge goes into.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WedgeBody {
    /// Width of the mouth.
    pub mouth: Option<Length>,
    /// Taper of the sloping wall.
    pub taper: Option<Angle>,
    /// Length along the conductor.
    pub length: Option<Length>,
    /// How far the closing part can push the wedge in.
    pub travel: Option<Length>,
    /// Which side of a grooved wire the wedge bears on.
    pub bears_on: Option<BearsOn>,
}

/// The side of a grooved wire that lies across the wedge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
pub enum BearsOn {
    Width,
    Height,
}

/// A grooved eye that a rope lies round.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Thimble {
    /// Width of the groove.
    pub groove: Option<Length>,
    /// Clear width of the eye.
    pub inside_width: Option<Length>,
    /// Clear length of the eye.
    pub inside_length: Option<Length>,
}

/// A pressed tube: a ferrule on a rope, or a sleeve on a conductor.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Ferrule {
    /// Bore before pressing.
    pub bore: Option<Length>,
    /// Length before pressing.
    pub length: Option<Length>,
    /// The die that presses it.
    pub die: Option<String>,
    /// Size after pressing, least and most.
    pub pressed: Option<Range<Length>>,
}

/// A screwed grip on a rope.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct RopeGrip {
    /// Thinnest and thickest rope that it holds.
    pub rope: Option<Range<Length>>,
    /// Distance from grip to grip.
    pub spacing: Option<Length>,
}
