//! The measurements of a part that a drawing office can change, one at a time.

use crate::grip::Geometry;
use crate::units::{Angle, Length};

/// A measurement that can be changed in steps.
pub(super) struct Knob {
    /// Its record key.
    pub(super) key: &'static str,
    /// What it is in words.
    pub(super) words: &'static str,
    /// Its value.
    pub(super) size: Size,
    /// One step of change.
    step: f64,
    /// How many steps either way make sense.
    pub(super) steps: u32,
    set: fn(&mut Geometry, f64),
}

/// The size of a measurement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Size {
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// A number of things.
    Count(u32),
}

impl Size {
    /// In its record's unit: millimetres, degrees or a number.
    fn bare(self) -> f64 {
        match self {
            Self::Length(length) => length.mm(),
            Self::Angle(angle) => angle.degrees(),
            Self::Count(count) => f64::from(count),
        }
    }

    fn with(self, bare: f64) -> Self {
        match self {
            Self::Length(_) => Self::Length(Length::from_mm(bare)),
            Self::Angle(_) => Self::Angle(Angle::from_degrees(bare)),
            Self::Count(_) => Self::Count(count(bare)),
        }
    }
}

impl Knob {
    /// The geometry and the size after a number of steps; `None` where nothing would be left of it.
    pub(super) fn turned(&self, geometry: &Geometry, steps: i32) -> Option<(Geometry, Size)> {
        let bare = ((self.size.bare() + self.step * f64::from(steps)) * 1e6).round() / 1e6;
        let may_be_negative = self.key.ends_with("stand_out_at_bore_mm");
        if bare <= 0.0 && !may_be_negative {
            return None;
        }
        let mut changed = geometry.clone();
        (self.set)(&mut changed, bare);
        Some((changed, self.size.with(bare)))
    }
}

macro_rules! knob {
    ($kind:ident, $part:ident . $field:ident, $key:literal, $words:literal, $size:ident($from:expr), $step:literal x $steps:literal) => {
        $part.$field.map(|size| Knob {
            key: $key,
            words: $words,
            size: Size::$size(size),
            step: $step,
            steps: $steps,
            set: |geometry, bare| {
                if let Geometry::$kind(part) = geometry {
                    part.$field = Some($from(bare));
                }
            },
        })
    };
}

fn count(bare: f64) -> u32 {
    bare.round() as u32
}

/// What can be changed on a part.
pub(super) fn knobs(geometry: &Geometry) -> Vec<Knob> {
    let knobs = match geometry {
        Geometry::Collet(cone) => vec![
            knob!(Collet, cone.bore, "geometry.collet.bore_mm", "bore", Length(Length::from_mm), 0.05 x 60),
            knob!(Collet, cone.slits, "geometry.collet.slits", "slits", Count(count), 1.0 x 6),
            knob!(Collet, cone.slit_width, "geometry.collet.slit_width_mm", "slit width", Length(Length::from_mm), 0.1 x 20),
            knob!(Collet, cone.half_angle, "geometry.collet.half_angle_deg", "half-angle", Angle(Angle::from_degrees), 0.5 x 10),
            knob!(
                Collet,
                cone.stand_out_at_bore,
                "geometry.collet.stand_out_at_bore_mm",
                "stand-out at bore (a longer or shorter large end)",
                Length(Length::from_mm),
                0.5 x 30
            ),
        ],
        Geometry::SpreadingCone(cone) => vec![
            knob!(SpreadingCone, cone.hole_diameter, "geometry.spreading_cone.hole_diameter_mm", "hole", Length(Length::from_mm), 0.1 x 60),
            knob!(
                SpreadingCone,
                cone.large_diameter,
                "geometry.spreading_cone.large_diameter_mm",
                "large end",
                Length(Length::from_mm),
                0.1 x 60
            ),
        ],
        Geometry::Socket(socket) => vec![
            knob!(Socket, socket.throat_diameter, "geometry.socket.throat_diameter_mm", "throat", Length(Length::from_mm), 0.1 x 30),
            knob!(Socket, socket.travel, "geometry.socket.travel_mm", "travel", Length(Length::from_mm), 0.5 x 30),
        ],
        Geometry::Wedge(wedge) => vec![
            knob!(Wedge, wedge.thickness, "geometry.wedge.thickness_mm", "thickness", Length(Length::from_mm), 0.1 x 60),
            knob!(Wedge, wedge.length, "geometry.wedge.length_mm", "length", Length(Length::from_mm), 1.0 x 60),
        ],
        Geometry::WedgeBody(body) => {
            vec![
                knob!(WedgeBody, body.travel, "geometry.wedge_body.travel_mm", "travel", Length(Length::from_mm), 0.5 x 30),
            ]
        }
        Geometry::Ferrule(part) => {
            vec![
                knob!(Ferrule, part.bore, "geometry.ferrule.bore_mm", "bore", Length(Length::from_mm), 0.05 x 40),
            ]
        }
        Geometry::Sleeve(part) => {
            vec![
                knob!(Sleeve, part.bore, "geometry.sleeve.bore_mm", "bore", Length(Length::from_mm), 0.05 x 40),
            ]
        }
        Geometry::Body(_) | Geometry::Thimble(_) | Geometry::RopeGrip(_) => Vec::new(),
    };
    knobs.into_iter().flatten().collect()
}
