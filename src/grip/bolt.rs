//! Torque at which a bolt yields.

use crate::units::{Length, Torque};
use std::f64::consts::PI;

/// Nut factor of a lightly greased thread. Common practice, no source.
const USUAL_NUT_FACTOR: f64 = 0.20;
/// Yield of class 12.9 in N/mm², the highest class of ISO 898-1.
const STRONGEST_YIELD: f64 = 1100.0;

/// A metric thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Its nominal diameter.
    pub diameter: Length,
    /// From turn to turn.
    pub pitch: Length,
}

/// Coarse pitches of ISO 261 in mm, by nominal diameter. From memory.
const COARSE: [(f64, f64); 21] = [
    (3.0, 0.5),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
    (42.0, 4.5),
    (48.0, 5.0),
    (56.0, 5.5),
];

impl Thread {
    /// The thread of a designation such as "M12" or "M36x2"; `None` where it is none, or a diameter
    /// without a pitch that is not of the coarse series.
    ///
    /// ```
    /// use fittingcards::grip::Thread;
    /// assert_eq!(Thread::of("M36x2").unwrap().pitch.mm(), 2.0);
    /// assert_eq!(Thread::of("M12").unwrap().pitch.mm(), 1.75);
    /// assert_eq!(Thread::of("G 1/2"), None);
    /// ```
    #[must_use]
    pub fn of(designation: &str) -> Option<Self> {
        let sizes = designation.trim().strip_prefix('M')?;
        let mut sizes = sizes.splitn(2, ['x', 'X', '×']);
        let number =
            |text: &str| text.trim().parse::<f64>().ok().filter(|size| *size > 0.0 && size.is_finite());
        let diameter = number(sizes.next()?)?;
        let pitch = match sizes.next() {
            Some(pitch) => number(pitch)?,
            None => COARSE.iter().find(|(coarse, _)| (coarse - diameter).abs() < 1e-9)?.1,
        };
        Some(Self { diameter: Length::from_mm(diameter), pitch: Length::from_mm(pitch) })
    }

    /// The torque at which a bolt of class 12.9 yields, with a nut factor of 0.20: K·d·A_s·R_p, the
    /// stress area A_s = π/4·(d − 0.9382·P)² to three digits, as ISO 898-1 tables it. With a lightly
    /// greased thread no bolt takes more; a dry one needs up to half as much again.
    ///
    /// ```
    /// use fittingcards::grip::Thread;
    /// assert_eq!(format!("{:.0}", Thread::of("M12").unwrap().yields_at().nm()), "223");
    /// ```
    #[must_use]
    pub fn yields_at(self) -> Torque {
        let core = self.diameter.mm() - 0.9382 * self.pitch.mm();
        let stress_area = three_digits(PI / 4.0 * core * core);
        Torque::from_nm(USUAL_NUT_FACTOR * self.diameter.mm() / 1000.0 * stress_area * STRONGEST_YIELD)
    }
}

fn three_digits(area: f64) -> f64 {
    let unit = 10.0_f64.powf(area.log10().floor() - 2.0);
    (area / unit).round() * unit
}
