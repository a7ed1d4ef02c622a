//! The profile of a contact wire: a circle with two grooves, in exact arcs and lines.

use super::error::check_size;
use super::outline::{self, Point, Segment};
use super::{Grooved, SectionError};
use crate::units::{Angle, Area, Length};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// A contact wire's outline with what follows from it. The origin is the circle's centre; the running
/// surface is at the bottom, y = −height/2.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Height when new.
    pub height: Length,
    /// The outline, closed, counterclockwise.
    pub segments: Vec<Segment>,
    /// Area of metal when new.
    pub area: Area,
    /// Centroid of the metal when new.
    pub centroid: Point,
    /// The grooves; a round wire has none.
    pub groove: Option<Groove>,
}

/// The right one of two grooves; the left one mirrors it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Groove {
    /// Least width of metal between the two rounded roots.
    pub neck: Length,
    /// Where the flanks would meet without the fillet.
    pub apex: Point,
    /// Centre of the fillet.
    pub root_centre: Point,
    /// Where the lower flank meets the circle.
    pub lower_lip: Point,
    /// Where the upper flank meets the circle.
    pub upper_lip: Point,
    /// Remaining height at which wear reaches the lower lip.
    pub lower_lip_height: Length,
    /// Remaining height at which wear reaches the upper lip.
    pub upper_lip_height: Length,
}

/// The profile of a grooved contact wire.
///
/// The wire is the circle on its height. From the apex, E/2 from the axis and K below the top, the upper flank
/// rises outward at H and the lower flank falls outward at G from the horizontal; the root is rounded by R,
/// tangent to both. The meaning of the letters was found by fitting the sections and necks that TB/T 2810 prints.
///
/// # Errors
/// Where a size is no size, an angle is not between 0° and 90°, or the grooves do not fit the wire.
///
/// # Examples
/// ```
/// use fittingcards::section::{Grooved, profile};
/// use fittingcards::units::{Angle, Length};
///
/// let profile = profile(&Grooved {
///     height: Length::from_mm(12.34),
///     width: Length::from_mm(12.34),
///     apex_width: Length::from_mm(6.80),
///     apex_depth: Length::from_mm(4.47),
///     fillet: Length::from_mm(0.40),
///     lower_flank: Angle::from_degrees(27.0),
///     upper_flank: Angle::from_degrees(51.0),
/// })?;
/// assert_eq!(format!("{:.2}", profile.area.mm2()), "110.86");
/// assert_eq!(format!("{:.3}", profile.groove.expect("grooved").neck.mm()), "7.243");
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn profile(grooved: &Grooved) -> Result<Profile, SectionError> {
    check(grooved)?;
    let flanks = Flanks::of(grooved)?;
    let segments = flanks.segments();
    Ok(Profile {
        height: grooved.height,
        area: outline::area(&segments),
        centroid: outline::centroid(&segments),
        segments,
        groove: Some(flanks.groove()),
    })
}

/// The profile of a plain round wire: one circle.
///
/// # Errors
/// Where the diameter is no size of a conductor.
pub fn round_profile(diameter: Length) -> Result<Profile, SectionError> {
    check_size("construction.solid", "diameter_mm", diameter)?;
    let segments = vec![Segment::arc(Point::default(), diameter / 2.0, -FRAC_PI_2, TAU - FRAC_PI_2)];
    Ok(Profile {
        height: diameter,
        area: diameter.circle_area(),
        centroid: Point::default(),
        segments,
        groove: None,
    })
}

fn key(name: &str) -> String {
    format!("construction.grooved.{name}")
}

fn check(grooved: &Grooved) -> Result<(), SectionError> {
    check_size("construction.grooved", "height_mm", grooved.height)?;
    check_size("construction.grooved", "width_mm", grooved.width)?;
    check_size("construction.grooved", "apex_width_mm", grooved.apex_width)?;
    check_size("construction.grooved", "apex_depth_mm", grooved.apex_depth)?;
    if grooved.fillet != Length::ZERO {
        check_size("construction.grooved", "fillet_mm", grooved.fillet)?;
    }
    check_flank("lower_flank_deg", grooved.lower_flank)?;
    check_flank("upper_flank_deg", grooved.upper_flank)
}

fn check_flank(name: &str, angle: Angle) -> Result<(), SectionError> {
    if (1.0..=89.0).contains(&angle.degrees()) {
        return Ok(());
    }
    Err(SectionError::new(key(name), "this can't be the slope of a groove's flank")
        .found(format!("{}°", angle.degrees()))
        .expected("1° to 89° from the horizontal"))
}

/// The right groove in numbers: millimetres and radians.
struct Flanks {
    radius: f64,
    fillet: f64,
    lower: f64,
    upper: f64,
    apex: (f64, f64),
    root: (f64, f64),
    /// From the apex along either flank to where the fillet begins.
    tangent: f64,
    lower_lip: (f64, f64),
    upper_lip: (f64, f64),
}

impl Flanks {
    fn of(grooved: &Grooved) -> Result<Self, SectionError> {
        let radius = grooved.height.mm() / 2.0;
        let apex = apex(grooved, radius)?;
        let (lower, upper) = (grooved.lower_flank.radians(), grooved.upper_flank.radians());
        let (lower_length, upper_length) = (to_circle(apex, -lower, radius), to_circle(apex, upper, radius));
        let half = f64::midpoint(lower, upper);
        let fillet = grooved.fillet.mm();
        let tangent = fillet / half.tan();
        let shorter = lower_length.min(upper_length);
        if tangent >= shorter {
            return Err(SectionError::new(key("fillet_mm"), "the fillet is larger than the groove")
                .found(format!("{fillet} mm"))
                .expected(format!("less than {:.2} mm", shorter * half.tan())));
        }
        Ok(Self {
            radius,
            fillet,
            lower,
            upper,
            apex,
            root: along(apex, (upper - lower) / 2.0, fillet / half.sin()),
            tangent,
            lower_lip: along(apex, -lower, lower_length),
            upper_lip: along(apex, upper, upper_length),
        })
    }

    fn groove(&self) -> Groove {
        let point = |(x, y): (f64, f64)| Point::from_mm(x, y);
        Groove {
            neck: Length::from_mm(2.0 * (self.root.0 - self.fillet)),
            apex: point(self.apex),
            root_centre: point(self.root),
            lower_lip: point(self.lower_lip),
            upper_lip: point(self.upper_lip),
            lower_lip_height: Length::from_mm(self.radius - self.lower_lip.1),
            upper_lip_height: Length::from_mm(self.radius - self.upper_lip.1),
        }
    }

    /// From the left lower lip round the bottom, up the right groove, over the top, down the left groove.
    fn segments(&self) -> Vec<Segment> {
        let at = |(x, y): (f64, f64), side: f64| Point::from_mm(side * x, y);
        let centre = Point::default();
        let radius = Length::from_mm(self.radius);
        let lower = self.lower_lip.1.atan2(self.lower_lip.0);
        let upper = self.upper_lip.1.atan2(self.upper_lip.0);
        let lower_foot = along(self.apex, -self.lower, self.tangent);
        let upper_foot = along(self.apex, self.upper, self.tangent);
        let fillet = Length::from_mm(self.fillet);
        // The fillet's ends as angles about its centre: square to the flanks, on the metal's side.
        let (from, to) = (PI + FRAC_PI_2 - self.lower, FRAC_PI_2 + self.upper);
        let mut segments = vec![
            Segment::arc(centre, radius, -PI - lower, lower),
            Segment::line(at(self.lower_lip, 1.0), at(lower_foot, 1.0)),
            Segment::arc(at(self.root, 1.0), fillet, from, to),
            Segment::line(at(upper_foot, 1.0), at(self.upper_lip, 1.0)),
            Segment::arc(centre, radius, upper, PI - upper),
            Segment::line(at(self.upper_lip, -1.0), at(upper_foot, -1.0)),
            Segment::arc(at(self.root, -1.0), fillet, PI - to, PI - from),
            Segment::line(at(lower_foot, -1.0), at(self.lower_lip, -1.0)),
        ];
        segments.retain(|segment| !matches!(segment, Segment::Arc { radius, .. } if *radius == Length::ZERO));
        segments
    }
}

/// Where the right groove's flanks would meet.
fn apex(grooved: &Grooved, radius: f64) -> Result<(f64, f64), SectionError> {
    let apex = (grooved.apex_width.mm() / 2.0, radius - grooved.apex_depth.mm());
    if apex.0.hypot(apex.1) < radius {
        return Ok(apex);
    }
    let (width, depth) = (grooved.apex_width.mm(), grooved.apex_depth.mm());
    Err(SectionError::new(key("apex_width_mm"), "the groove's apex lies outside the wire")
        .found(format!("{width} mm wide at {depth} mm below the top"))
        .expected(format!("inside the circle of {} mm", grooved.height.mm())))
}

fn along(from: (f64, f64), angle: f64, length: f64) -> (f64, f64) {
    (from.0 + length * angle.cos(), from.1 + length * angle.sin())
}

/// How far it is from a point inside a circle about the origin to the circle.
fn to_circle(from: (f64, f64), angle: f64, radius: f64) -> f64 {
    let ahead = from.0 * angle.cos() + from.1 * angle.sin();
    let square = radius * radius - from.0 * from.0 - from.1 * from.1;
    (ahead * ahead + square).sqrt() - ahead
}
