//! What a fitting is drawn from: its parts by role, its conductor, the computed seat.

use super::scaled_draft::Look;
use crate::catalogue::{Conductor, Fitting, Limits, Part, Role};
use crate::grip::{Geometry, GripLimits, HeldConductor, Outcome, judge};
use crate::units::{Angle, Length};

/// A fitting with one gripping part in it, its own or another.
#[derive(Debug, Clone)]
pub(crate) struct Setup<'a> {
    pub fitting: &'a Fitting,
    pub conductor: &'a Conductor,
    /// Items with their index: the gripping part that is drawn stands in place of the fitting's own.
    pub parts: Vec<&'a Part>,
    /// What the gripping part does there; nothing where the fitting has no gripping part.
    pub outcome: Option<Outcome>,
    /// The height to which a contact wire is worn; `None` where it is new.
    pub worn_to: Option<Length>,
}

impl<'a> Setup<'a> {
    /// The fitting as recorded, judged by the limits of its catalogue.
    pub fn of(fitting: &'a Fitting, limits: &Limits) -> Self {
        Self::on(fitting.conductor(), None, fitting, limits)
    }

    /// The same on one of its conductors, where that is said worn to a height.
    pub fn on(
        conductor: &'a Conductor,
        worn_to: Option<Length>,
        fitting: &'a Fitting,
        limits: &Limits,
    ) -> Self {
        let mut setup = Self { conductor, worn_to, ..Self::unjudged(fitting) };
        let gripping = setup.parts.iter().find(|part| part.role.grips());
        setup.outcome = gripping.map(|part| judged(part, &setup, limits.grip()));
        setup
    }

    /// The fitting with another part in place of its own.
    pub fn with(fitting: &'a Fitting, wrong: &'a Part, outcome: &Outcome) -> Self {
        let mut setup = Self::unjudged(fitting);
        let own = setup.parts.iter().position(|part| part.role == wrong.role);
        let gripping = || setup.parts.iter().position(|part| wrong.role.grips() && part.role.grips());
        match own.or_else(gripping) {
            Some(index) => setup.parts[index] = wrong,
            None => setup.parts.push(wrong),
        }
        setup.outcome = Some(outcome.clone());
        setup
    }

    fn unjudged(fitting: &'a Fitting) -> Self {
        let parts = fitting.items.iter().map(|item| &*item.part).collect();
        Self { fitting, conductor: fitting.conductor(), parts, outcome: None, worn_to: None }
    }

    /// The first part of one of some roles, with its looks.
    pub fn first(&self, roles: &[Role]) -> Option<(Look, &'a Part)> {
        let index = self.parts.iter().position(|part| roles.contains(&part.role))?;
        Some((Look::of(index, self.parts[index]), self.parts[index]))
    }

    /// The first part whose geometry `pick` takes.
    pub fn geometry<T>(&self, pick: impl Fn(&'a Geometry) -> Option<&'a T>) -> Option<(Look, &'a T)> {
        self.parts.iter().enumerate().find_map(|(index, &part)| {
            let geometry = pick(part.geometry.as_ref()?)?;
            Some((Look::of(index, part), geometry))
        })
    }

    /// The conductor as gripping parts meet it.
    pub fn held(&self) -> HeldConductor {
        let conductor = self.conductor;
        let new = HeldConductor::new(&conductor.construction, &conductor.section)
            .with_tolerances(conductor.diameter_tolerance, conductor.wire_diameter_tolerance);
        self.worn_to.and_then(|height| new.worn_to(height)).unwrap_or(new)
    }

    /// Overall diameter of the conductor.
    pub fn diameter(&self) -> f64 {
        self.conductor.section.overall_diameter.mm()
    }

    /// Nominal diameter of the closing part's thread, from a designation such as "M36x2".
    pub fn thread(&self) -> Option<f64> {
        self.fitting.tightening.iter().find_map(|tightening| {
            let digits: String = tightening
                .thread
                .strip_prefix('M')?
                .chars()
                .take_while(|c| c.is_ascii_digit() || *c == '.')
                .collect();
            digits.parse().ok().filter(|diameter| (2.0..=150.0).contains(diameter))
        })
    }

    /// Spanner size of the closing part.
    pub fn spanner(&self) -> Option<f64> {
        self.fitting.tightening.iter().find_map(|tightening| tightening.spanner).map(Length::mm)
    }
}

fn judged(gripping: &Part, setup: &Setup<'_>, limits: GripLimits) -> Outcome {
    let mating: Vec<&Geometry> = setup.parts.iter().filter_map(|part| part.geometry.as_ref()).collect();
    judge(gripping.geometry.as_ref(), &mating, &setup.held(), limits)
}

/// Measures taken from records: whether one of them had to come from the family's proportions, and whether one
/// is not finite. The larger or smaller of two numbers passes over one that is none, so it is seen here or not
/// at all.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Proportions {
    pub assumed: bool,
    pub unsound: bool,
}

impl Proportions {
    /// A recorded length in millimetres.
    pub fn recorded(&mut self, recorded: Option<Length>) -> Option<f64> {
        self.unsound |= recorded.is_some_and(|length| !length.is_finite());
        recorded.map(Length::mm)
    }

    /// A recorded length in millimetres, else the family's proportion.
    pub fn length(&mut self, recorded: Option<Length>, proportion: f64) -> f64 {
        self.assumed |= recorded.is_none();
        self.recorded(recorded).unwrap_or(proportion)
    }

    /// The slope of a recorded angle, else the family's.
    pub fn slope(&mut self, recorded: Option<Angle>, proportion: f64) -> f64 {
        self.assumed |= recorded.is_none();
        self.unsound |= recorded.is_some_and(|angle| !angle.is_finite());
        recorded.map_or(proportion, Angle::tan)
    }
}
