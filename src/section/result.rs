//! What was computed of a conductor.

use crate::units::{Area, Force, Length, LinearMass, LinearResistance, Range, Temperature};

/// Everything computed of one conductor; what does not apply or lacks a figure is `None`.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Area of metal.
    pub metal: Area,
    /// Area of metal with every wire at its least and at its greatest diameter, to first order, where their tolerance is
    /// known.
    pub band: Option<Range<Area>>,
    /// Diameter of the circle round the conductor (height of a grooved wire, diagonal of a bar).
    pub overall_diameter: Length,
    /// Area of the circle on the overall diameter; never called section.
    pub circle: Area,
    /// Metal section / circle area.
    pub fill_ratio: f64,
    /// Metal of a composite's outer group.
    pub outer: Option<Area>,
    /// Metal of a composite's core.
    pub core: Option<Area>,
    /// Mass per length.
    pub mass: Option<LinearMass>,
    /// Resistance at 20 °C; of a grooved wire of EN 50149 the most it may be.
    pub resistance_20c: Option<LinearResistance>,
    /// Temperature coefficient of that resistance at 20 °C, per kelvin.
    pub temperature_coefficient_per_k: Option<f64>,
    /// Rated tensile strength; of a grooved wire of EN 50149 the least it must be.
    pub breaking_load: Option<Force>,
    /// Layers from the centre out; empty where the conductor has none.
    pub layers: Vec<Layer>,
    /// Width of metal between the rounded roots of a grooved wire.
    pub neck: Option<Length>,
    /// The formulas and standards used, in words.
    pub sources: Vec<String>,
}

/// One ring of wires.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// How many wires lie in it.
    pub wires: u32,
    /// Radius of the circle through their centres.
    pub pitch_radius: Length,
    /// Diameter of one wire.
    pub wire_diameter: Length,
    /// Which group it belongs to.
    pub role: LayerRole,
}

/// The group that a layer belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LayerRole {
    /// The core of a composite.
    Core,
    /// The conductor itself, or the outer group of a composite.
    Outer,
}

impl Section {
    /// Resistance at a temperature, R(T) = R20·(1 + α20·(T − 20)).
    ///
    /// `None` where the resistance or its coefficient is not known, and where the straight line has left
    /// the range it holds in: below −100 °C or above 300 °C.
    ///
    /// ```
    /// use fittingcards::section::{Construction, compute, materials};
    /// use fittingcards::units::{Length, Temperature};
    /// let wire = Construction::Solid { diameter: Length::from_mm(8.0) };
    /// let section = compute(&wire, materials::find("copper-annealed"))?;
    /// let (cold, warm) = (section.resistance_20c, section.resistance_at(Temperature::from_celsius(80.0)));
    /// let ratio = warm.expect("known").ohm_per_km() / cold.expect("known").ohm_per_km();
    /// assert!((ratio - (1.0 + 0.00393 * 60.0)).abs() < 1e-9);
    /// # Ok::<(), fittingcards::section::SectionError>(())
    /// ```
    #[must_use]
    pub fn resistance_at(&self, temperature: Temperature) -> Option<LinearResistance> {
        at_temperature(self.resistance_20c?, self.temperature_coefficient_per_k?, temperature)
    }
}

/// Temperatures in degrees Celsius between which resistance rises in a straight line: common practice, no source.
pub const STRAIGHT: std::ops::RangeInclusive<f64> = -100.0..=300.0;

/// R(T) = R20·(1 + α20·(T − 20)), in the range that the straight line holds in.
pub(super) fn at_temperature(
    at_20: LinearResistance,
    coefficient_per_k: f64,
    temperature: Temperature,
) -> Option<LinearResistance> {
    let celsius = temperature.celsius();
    STRAIGHT.contains(&celsius).then(|| at_20 * (1.0 + coefficient_per_k * (celsius - 20.0)))
}

/// A section with its geometry only.
pub(super) fn plain(metal: Area, overall_diameter: Length) -> Section {
    let circle = overall_diameter.circle_area();
    Section {
        metal,
        band: None,
        overall_diameter,
        circle,
        fill_ratio: metal / circle,
        outer: None,
        core: None,
        mass: None,
        resistance_20c: None,
        temperature_coefficient_per_k: None,
        breaking_load: None,
        layers: Vec::new(),
        neck: None,
        sources: Vec::new(),
    }
}
