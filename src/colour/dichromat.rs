//! How an eye without one kind of cone sees a colour (Brettel, Viénot, Mollon 1997).
//!
//! Such an eye can't tell colours apart that differ in the response of the missing cone alone. All colours of one such
//! line are shown as the one where it meets what the eye sees as a normal one does: two half-planes, hinged on the
//! line from black to white, each through a light of one wavelength that looks the same to both kinds of eye.

use palette::convert::FromColorUnclamped;
use palette::white_point::D65;
use palette::{LinSrgb, Xyz};

/// A kind of cone, by the waves that it answers most to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Cone {
    Long,
    Middle,
    Short,
}

/// Responses of the long, middle and short cones.
type Cones = [f64; 3];

/// CIE 1931 colour matching functions at lights of one wavelength.
const AT_475_NM: [f64; 3] = [0.1421, 0.1126, 1.0419];
const AT_485_NM: [f64; 3] = [0.057_95, 0.1693, 0.6162];
const AT_575_NM: [f64; 3] = [0.8425, 0.9154, 0.0018];
const AT_660_NM: [f64; 3] = [0.1649, 0.0610, 0.0];

/// A colour as an eye without that cone sees it; it may lie outside what sRGB holds.
///
/// White stays white: the display's white is the hinge, as in Viénot, Brettel, Mollon 1999.
pub(super) fn dichromat(linear: LinSrgb<f64>, missing: Cone) -> LinSrgb<f64> {
    let (colour, white) = (cones_of(linear), cones_of(LinSrgb::new(1.0, 1.0, 1.0)));
    let plane = normal(white, cones(light(colour, white, missing)));
    let mut seen = colour;
    let at = missing as usize;
    let kept: f64 = (0..3).filter(|cone| *cone != at).map(|cone| plane[cone] * colour[cone]).sum();
    seen[at] = -kept / plane[at];
    of_cones(seen)
}

/// The light on the colour's side of the hinge.
fn light(colour: Cones, white: Cones, missing: Cone) -> [f64; 3] {
    let [long, middle, short] = [0, 1, 2];
    let (above, below, by_second, by_first) = match missing {
        Cone::Long => (short, middle, AT_475_NM, AT_575_NM),
        Cone::Middle => (short, long, AT_475_NM, AT_575_NM),
        Cone::Short => (middle, long, AT_485_NM, AT_660_NM),
    };
    if colour[above] * white[below] < white[above] * colour[below] { by_first } else { by_second }
}

/// Normal of the plane through black and two colours.
fn normal(one: Cones, two: Cones) -> Cones {
    [one[1] * two[2] - one[2] * two[1], one[2] * two[0] - one[0] * two[2], one[0] * two[1] - one[1] * two[0]]
}

/// Cone responses of Smith and Pokorny 1975 to CIE XYZ.
fn cones([x, y, z]: [f64; 3]) -> Cones {
    [0.155_14 * x + 0.543_12 * y - 0.032_86 * z, -0.155_14 * x + 0.456_84 * y + 0.032_86 * z, 0.016_08 * z]
}

fn cones_of(linear: LinSrgb<f64>) -> Cones {
    let xyz = Xyz::<D65, f64>::from_color_unclamped(linear);
    cones([xyz.x, xyz.y, xyz.z])
}

/// The inverse of [`cones`]: long and middle together are the luminance.
fn of_cones([long, middle, short]: Cones) -> LinSrgb<f64> {
    let y = (long + middle) / (0.543_12 + 0.456_84);
    let z = short / 0.016_08;
    let x = (long - 0.543_12 * y + 0.032_86 * z) / 0.155_14;
    LinSrgb::from_color_unclamped(Xyz::<D65, f64>::new(x, y, z))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn apart(one: LinSrgb<f64>, two: LinSrgb<f64>) -> f64 {
        (one.red - two.red).abs().max((one.green - two.green).abs()).max((one.blue - two.blue).abs())
    }

    /// First principles: what is grey stays, what is seen is seen again as it is, and colours that differ in the
    /// missing cone alone are seen alike.
    #[test]
    fn the_missing_cone_takes_one_dimension_away_and_no_more() {
        for missing in [Cone::Long, Cone::Middle, Cone::Short] {
            for grey in [0.1, 0.5, 1.0] {
                let grey = LinSrgb::new(grey, grey, grey);
                assert!(apart(dichromat(grey, missing), grey) < 1e-6, "{missing:?}");
            }
            for (red, green, blue) in [(0.8, 0.1, 0.2), (0.1, 0.5, 0.3), (0.2, 0.3, 0.9)] {
                let colour = LinSrgb::new(red, green, blue);
                let seen = dichromat(colour, missing);
                assert!(apart(dichromat(seen, missing), seen) < 1e-6, "{missing:?} {colour:?}");
                let mut other = cones_of(colour);
                other[missing as usize] *= 1.1;
                assert!(apart(dichromat(of_cones(other), missing), seen) < 1e-6, "{missing:?} {colour:?}");
            }
        }
    }
}
