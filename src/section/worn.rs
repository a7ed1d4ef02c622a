//! What wear leaves of a contact wire, and the height or flat width that a loss shows.

use super::outline::{self, Segment};
use super::{Profile, SectionError};
use crate::units::{Area, Length};

/// A contact wire worn down to a height.
#[derive(Debug, Clone, PartialEq)]
pub struct Worn {
    /// Remaining height.
    pub height: Length,
    /// Area of metal that is left.
    pub section: Area,
    /// Area of metal that is gone.
    pub removed: Area,
    /// Width of the flat that wear has made.
    pub flat_width: Length,
    /// The outline of what is left, closed, counterclockwise.
    pub segments: Vec<Segment>,
}

impl Worn {
    /// What is gone, in percent of a section: the nominal or the computed one.
    ///
    /// ```
    /// use fittingcards::section::{round_profile, worn};
    /// use fittingcards::units::Length;
    /// let profile = round_profile(Length::from_mm(12.0))?;
    /// let half = worn(&profile, Length::from_mm(6.0))?;
    /// assert!((half.percent_of(profile.area) - 50.0).abs() < 1e-9);
    /// # Ok::<(), fittingcards::section::SectionError>(())
    /// ```
    #[must_use]
    pub fn percent_of(&self, basis: Area) -> f64 {
        100.0 * (self.removed / basis)
    }
}

/// What is left of a wire at a remaining height, on its true profile: below the grooves' lower lip as above it.
///
/// # Errors
/// Where the height is not above zero or more than the new wire's.
///
/// # Examples
/// ```
/// use fittingcards::section::{round_profile, worn};
/// use fittingcards::units::Length;
///
/// let left = worn(&round_profile(Length::from_mm(12.0))?, Length::from_mm(10.0))?;
/// assert_eq!(format!("{:.3} mm²", left.section.mm2()), "100.707 mm²");
/// assert_eq!(format!("{:.3} mm", left.flat_width.mm()), "8.944 mm");
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn worn(profile: &Profile, height: Length) -> Result<Worn, SectionError> {
    if !(height > Length::ZERO && height <= profile.height) {
        return Err(SectionError::new("worn.height_mm", "the wire can't have this remaining height")
            .found(format!("{} mm", height.mm()))
            .expected(format!(
                "above 0 and at most {} mm, the height of the new wire",
                profile.height.mm()
            )));
    }
    Ok(cut(profile, height))
}

fn cut(profile: &Profile, height: Length) -> Worn {
    let level = profile.height / 2.0 - height;
    let segments = outline::above(&profile.segments, level);
    let section = outline::area(&segments).max(Area::ZERO).min(profile.area);
    let flat_width = segments.iter().filter_map(|segment| flat(segment, level)).sum();
    Worn { height, section, removed: profile.area - section, flat_width, segments }
}

fn flat(segment: &Segment, level: Length) -> Option<Length> {
    let on_level = |y: Length| (y - level).abs() < Length::from_mm(1e-9);
    match segment {
        Segment::Line { start, end } if on_level(start.y) && on_level(end.y) => Some((end.x - start.x).abs()),
        _ => None,
    }
}

/// The remaining height at which an area of metal is gone.
///
/// # Errors
/// Where the area is negative, or the wire does not have so much metal.
///
/// # Examples
/// ```
/// use fittingcards::section::{height_at_loss, round_profile};
/// use fittingcards::units::Length;
///
/// let profile = round_profile(Length::from_mm(12.0))?;
/// let height = height_at_loss(&profile, profile.area * 0.5)?;
/// assert!((height.mm() - 6.0).abs() < 1e-9);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn height_at_loss(profile: &Profile, removed: Area) -> Result<Length, SectionError> {
    if !(removed >= Area::ZERO && removed < profile.area) {
        return Err(SectionError::new("worn.removed_mm2", "the wire can't lose so much metal")
            .found(format!("{} mm²", removed.mm2()))
            .expected(format!("0 to {:.2} mm²", profile.area.mm2())));
    }
    // The loss falls steadily with the height, so halving the interval always closes in on it.
    let (mut low, mut high) = (Length::ZERO, profile.height);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if cut(profile, middle).removed > removed {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(high)
}

/// The remaining height that a measured flat width shows, while the wear is below the middle of the wire.
///
/// # Errors
/// Where the width is negative, or wider than the wire is.
///
/// # Examples
/// ```
/// use fittingcards::section::{height_at_flat_width, round_profile};
/// use fittingcards::units::Length;
///
/// let height = height_at_flat_width(&round_profile(Length::from_mm(10.6))?, Length::from_mm(9.0))?;
/// assert!((height.mm() - 8.1).abs() < 0.001);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn height_at_flat_width(profile: &Profile, flat_width: Length) -> Result<Length, SectionError> {
    let widest = widest_flat(profile);
    if !(flat_width >= Length::ZERO && flat_width <= widest) {
        return Err(SectionError::new("worn.flat_width_mm", "the wire can't have a flat of this width")
            .found(format!("{} mm", flat_width.mm()))
            .expected(format!("0 to {:.2} mm", widest.mm())));
    }
    let (radius, half) = (profile.height.mm() / 2.0, flat_width.mm() / 2.0);
    Ok(Length::from_mm(radius + (radius * radius - half * half).max(0.0).sqrt()))
}

/// How far height and flat width may disagree before the flat must be taken as tilted.
const TILT: Length = Length::from_mm(0.3);

/// A measured height and a measured flat width that do not belong to one level flat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tilt {
    /// The remaining height that the flat width shows.
    pub height_by_flat: Length,
    /// That height less the measured one.
    pub difference: Length,
}

/// Whether a measured height and flat width disagree by more than 0.3 mm of height: the wire has worn at a slant,
/// or one of the two was misread, and neither may be trusted alone.
///
/// # Errors
/// As [`worn`] and [`height_at_flat_width`].
///
/// # Examples
/// ```
/// use fittingcards::section::{round_profile, tilt};
/// use fittingcards::units::Length;
///
/// let profile = round_profile(Length::from_mm(12.0))?;
/// let flat = Length::from_mm(8.94);
/// assert!(tilt(&profile, Length::from_mm(10.0), flat)?.is_none());
/// assert!(tilt(&profile, Length::from_mm(9.5), flat)?.is_some());
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn tilt(profile: &Profile, height: Length, flat_width: Length) -> Result<Option<Tilt>, SectionError> {
    worn(profile, height)?;
    let height_by_flat = height_at_flat_width(profile, flat_width)?;
    let difference = height_by_flat - height;
    Ok((difference.abs() > TILT).then_some(Tilt { height_by_flat, difference }))
}

/// The widest flat that shows one height only: at the middle, or at the lower lip where that lies below it.
fn widest_flat(profile: &Profile) -> Length {
    let lip = profile.groove.map(|groove| groove.lower_lip).filter(|lip| lip.y < Length::ZERO);
    lip.map_or(profile.height, |lip| lip.x * 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::section::round_profile;

    #[test]
    fn a_new_wire_has_lost_nothing_whatever_its_height() {
        for hundredths in 500..1500 {
            let profile = round_profile(Length::from_mm(f64::from(hundredths) / 100.0)).unwrap();
            let new = worn(&profile, profile.height).unwrap();
            assert_eq!(new.removed, Area::ZERO, "{hundredths}");
            assert_eq!(new.flat_width, Length::ZERO, "{hundredths}");
        }
    }
}
