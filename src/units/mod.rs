//! Quantities: a type per quantity, a method per unit, so that millimetres never meet kilonewtons.
//!
//! Each type holds a plain `f64` in one base unit. Constructors name the unit they take, methods
//! name the unit they give. Nothing here checks a sign: whether a size must be positive is known
//! where it is used.

mod numerals;
mod range;

pub use numerals::{Numerals, UNIT_SPACE};
pub use range::Range;

use std::iter::Sum;
use std::ops::{Add, Div, Mul, Neg, Sub};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $($(#[$unit_doc:meta])* $from:ident / $to:ident = $factor:expr),+ $(,)?) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            $(
                $(#[$unit_doc])*
                #[must_use]
                pub const fn $from(value: f64) -> Self {
                    Self(value * $factor)
                }

                $(#[$unit_doc])*
                #[must_use]
                pub fn $to(self) -> f64 {
                    self.0 / $factor
                }
            )+

            /// The value without its sign.
            #[must_use]
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The smaller of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// Whether it is a number at all: neither NaN nor infinite.
            #[must_use]
            pub fn is_finite(self) -> bool {
                self.0.is_finite()
            }

            /// Whether it is a finite number above zero.
            #[must_use]
            pub fn is_positive(self) -> bool {
                self.0.is_finite() && self.0 > 0.0
            }

            /// Smaller, equal or larger; a total order, for sorting.
            #[must_use]
            pub fn total_cmp(&self, other: &Self) -> std::cmp::Ordering {
                self.0.total_cmp(&other.0)
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
                Self(values.map(|value| value.0).sum())
            }
        }
    };
}

quantity! {
    /// A length.
    ///
    /// ```
    /// use fittingcards::units::Length;
    /// assert!((Length::from_inches(1.0).mm() - 25.4).abs() < 1e-12);
    /// ```
    Length,
    /// Millimetres.
    from_mm / mm = 1.0,
    /// Inches of 25.4 mm.
    from_inches / inches = 25.4,
    /// Typographic points of 1/72 inch.
    from_pt / pt = 25.4 / 72.0,
}

quantity! {
    /// An area.
    Area,
    /// Square millimetres.
    from_mm2 / mm2 = 1.0,
}

quantity! {
    /// A plane angle.
    Angle,
    /// Radians.
    from_radians / radians = 1.0,
    /// Degrees.
    from_degrees / degrees = std::f64::consts::PI / 180.0,
}

quantity! {
    /// A force.
    Force,
    /// Newtons.
    from_newtons / newtons = 1.0,
    /// Kilonewtons.
    from_kn / kn = 1000.0,
    /// Kilograms-force (standard gravity).
    from_kgf / kgf = 9.80665,
}

quantity! {
    /// A mechanical stress or strength.
    Stress,
    /// Newtons per square millimetre.
    from_n_per_mm2 / n_per_mm2 = 1.0,
}

quantity! {
    /// A torque.
    Torque,
    /// Newton metres.
    from_nm / nm = 1.0,
}

quantity! {
    /// A mass per volume.
    Density,
    /// Kilograms per cubic metre.
    from_kg_per_m3 / kg_per_m3 = 1.0,
}

quantity! {
    /// A mass per length.
    LinearMass,
    /// Kilograms per kilometre.
    from_kg_per_km / kg_per_km = 1.0,
    /// Kilograms per hundred metres.
    from_kg_per_100m / kg_per_100m = 10.0,
    /// Pounds per thousand feet.
    from_lb_per_1000ft / lb_per_1000ft = 1.488_163_943_569_553_7,
}

quantity! {
    /// A resistivity.
    Resistivity,
    /// Nanoohm metres.
    from_nohm_m / nohm_m = 1.0,
}

quantity! {
    /// A resistance per length.
    LinearResistance,
    /// Ohms per kilometre.
    from_ohm_per_km / ohm_per_km = 1.0,
}

quantity! {
    /// A temperature on the Celsius scale.
    Temperature,
    /// Degrees Celsius.
    from_celsius / celsius = 1.0,
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::from_mm2(self.mm() * other.mm())
    }
}

impl Div<Length> for Area {
    type Output = Length;
    fn div(self, width: Length) -> Length {
        Length::from_mm(self.mm2() / width.mm())
    }
}

impl Mul<Stress> for Area {
    type Output = Force;
    fn mul(self, stress: Stress) -> Force {
        Force::from_newtons(self.mm2() * stress.n_per_mm2())
    }
}

impl Div<Area> for Force {
    type Output = Stress;
    fn div(self, area: Area) -> Stress {
        Stress::from_n_per_mm2(self.newtons() / area.mm2())
    }
}

impl Mul<Density> for Area {
    type Output = LinearMass;
    fn mul(self, density: Density) -> LinearMass {
        LinearMass::from_kg_per_km(self.mm2() * density.kg_per_m3() / 1000.0)
    }
}

impl Div<Area> for Resistivity {
    type Output = LinearResistance;
    fn div(self, area: Area) -> LinearResistance {
        LinearResistance::from_ohm_per_km(self.nohm_m() / area.mm2())
    }
}

impl Length {
    /// The area of the circle of this diameter, πd²/4.
    ///
    /// ```
    /// use fittingcards::units::Length;
    /// assert!((Length::from_mm(14.0).circle_area().mm2() - 153.938).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn circle_area(self) -> Area {
        self * self * std::f64::consts::FRAC_PI_4
    }
}

impl Area {
    /// The diameter of the circle of this area, √(4S/π).
    ///
    /// ```
    /// use fittingcards::units::Area;
    /// assert!((Area::from_mm2(153.938).circle_diameter().mm() - 14.0).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn circle_diameter(self) -> Length {
        Length::from_mm((self.mm2() * 4.0 / std::f64::consts::PI).sqrt())
    }
}

impl Angle {
    /// Its tangent.
    #[must_use]
    pub fn tan(self) -> f64 {
        self.radians().tan()
    }

    /// Its cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        self.radians().cos()
    }

    /// Its sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        self.radians().sin()
    }
}
