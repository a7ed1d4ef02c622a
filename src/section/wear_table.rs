//! The wear table of a contact wire: what a height on a caliper means.

use super::worn::{height_at_loss, worn};
use super::{Profile, SectionError};
use crate::units::{Area, Length};

/// What a wear table is made for.
#[derive(Debug, Clone, PartialEq)]
pub struct WearHeights {
    /// The section that percentages are of: nominal or computed.
    pub basis: Area,
    /// Remaining height at which replacement is planned.
    pub plan: Option<Length>,
    /// Remaining height at which the wire is replaced.
    pub replace: Option<Length>,
    /// Remaining height at which traffic stops.
    pub stop: Option<Length>,
    /// Loss of section at which the wire must go, percent of the basis.
    pub limit_percent: Option<f64>,
    /// How many rows there is room for; the coarsest step is taken where even it makes more.
    pub most_rows: usize,
}

/// Rows from the new wire to two past the last mark.
#[derive(Debug, Clone, PartialEq)]
pub struct WearTable {
    /// The step between rows that carry no mark.
    pub step: Length,
    /// The rows, the new wire first.
    pub rows: Vec<WearRow>,
}

/// What one remaining height means.
#[derive(Debug, Clone, PartialEq)]
pub struct WearRow {
    /// Remaining height.
    pub height: Length,
    /// Metal left.
    pub section: Area,
    /// Metal gone, in percent of the basis.
    pub percent: f64,
    /// Width of the flat.
    pub flat_width: Length,
    /// What is to be done at this height; the most urgent where several fall together.
    pub stage: Option<WearStage>,
}

/// What is to be done when wear reaches a height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WearStage {
    /// The wire as delivered.
    New,
    /// Plan its replacement.
    Plan,
    /// Replace it.
    Replace,
    /// The loss of section that is allowed is reached.
    Limit,
    /// Stop traffic.
    Stop,
}

/// Steps that a caliper reads, the finest first.
const STEPS: [f64; 4] = [0.1, 0.2, 0.5, 1.0];
/// How far a table runs where nothing is known of limits: percent of the new section.
const WITHOUT_LIMITS: f64 = 30.0;
/// Rows past the last mark.
const ROWS_PAST: usize = 2;

/// The wear table of a profile: rows in the finest step of 0.1, 0.2, 0.5 or 1.0 mm that keeps to the rows there is room
/// for, with a row of its own for every mark down to the stop height, from the new wire to two rows past the stop height
/// (past the last mark where there is no stop height; to a loss of 30 % of the section where there is none at all).
///
/// # Errors
/// Where a mark is not a height of this wire, or the limit not a loss that it can have.
///
/// # Examples
/// ```
/// use fittingcards::section::{WearHeights, round_profile, wear_table};
/// use fittingcards::units::Length;
///
/// let profile = round_profile(Length::from_mm(12.0))?;
/// let marks = WearHeights {
///     basis: profile.area,
///     plan: None,
///     replace: Some(Length::from_mm(9.5)),
///     stop: Some(Length::from_mm(9.0)),
///     limit_percent: None,
///     most_rows: 14,
/// };
/// let table = wear_table(&profile, &marks)?;
/// let heights: Vec<f64> = table.rows.iter().map(|row| row.height.mm()).collect();
/// assert_eq!(heights, [12.0, 11.5, 11.0, 10.5, 10.0, 9.5, 9.0, 8.5, 8.0]);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn wear_table(profile: &Profile, marks: &WearHeights) -> Result<WearTable, SectionError> {
    let stages = stages(profile, marks)?;
    let last = match marks.stop {
        Some(stop) => stop,
        None => stages
            .iter()
            .map(|(height, _)| *height)
            .skip(1)
            .reduce(Length::min)
            .map_or_else(|| height_at_loss(profile, profile.area * (WITHOUT_LIMITS / 100.0)), Ok)?,
    };
    // Near the end of a thin wire a coarse step has no two rows left past the stop height.
    let reaches = |heights: &[Length]| {
        heights.iter().filter(|height| **height < last && !same(**height, last)).count() >= ROWS_PAST
    };
    let all = STEPS.map(|step| (step, heights(profile, &stages, last, step)));
    let grids: Vec<&(f64, Vec<Length>)> = all
        .iter()
        .enumerate()
        .filter(|(index, grid)| *index == 0 || reaches(&grid.1))
        .map(|(_, grid)| grid)
        .collect();
    let coarsest = grids[grids.len() - 1];
    let fitting = grids.into_iter().find(|(_, heights)| heights.len() <= marks.most_rows).unwrap_or(coarsest);
    let rows: Result<Vec<WearRow>, SectionError> =
        fitting.1.iter().map(|height| row(profile, *height, marks.basis, &stages)).collect();
    Ok(WearTable { step: Length::from_mm(fitting.0), rows: rows? })
}

/// The heights that carry a mark, the new wire first.
fn stages(profile: &Profile, marks: &WearHeights) -> Result<Vec<(Length, WearStage)>, SectionError> {
    let mut stages = vec![(profile.height, WearStage::New)];
    let heights = [
        (marks.plan, WearStage::Plan, "construction.grooved.wear.plan_height_mm"),
        (marks.replace, WearStage::Replace, "construction.grooved.wear.replace_height_mm"),
        (marks.stop, WearStage::Stop, "construction.grooved.wear.stop_height_mm"),
    ];
    for (height, stage, field) in heights {
        let Some(height) = height else { continue };
        worn(profile, height).map_err(|error| SectionError { field: field.into(), ..error })?;
        stages.push((height, stage));
    }
    if let Some(percent) = marks.limit_percent {
        let height = height_at_loss(profile, marks.basis * (percent / 100.0)).map_err(|error| {
            SectionError { field: "construction.grooved.wear.limit_percent".into(), ..error }
        })?;
        stages.push((on_a_caliper(height).min(profile.height), WearStage::Limit));
    }
    Ok(stages)
}

/// The height that a caliper shows before a limit is passed: to the hundredth, and never less.
fn on_a_caliper(height: Length) -> Length {
    Length::from_mm((height.mm() * 100.0 - 1e-6).ceil() / 100.0)
}

/// Multiples of a step from the new wire to two past `last`, and the marked heights among them.
fn heights(profile: &Profile, stages: &[(Length, WearStage)], last: Length, step: f64) -> Vec<Length> {
    let multiple = |index: f64| Length::from_mm((index * step * 10.0).round() / 10.0);
    let top = (profile.height.mm() / step).ceil();
    let on_grid =
        (0..).map(|index| multiple(top - f64::from(index))).take_while(|height| height.is_positive());
    let past = last - Length::from_mm(1e-6);
    let on_grid: Vec<Length> = on_grid.filter(|height| *height < profile.height).collect();
    let within = on_grid.iter().filter(|height| **height >= past).count();
    let marked = stages.iter().map(|(height, _)| *height).filter(|height| *height >= past);
    let mut all: Vec<Length> = on_grid.into_iter().take(within + ROWS_PAST).chain(marked).collect();
    all.sort_by(|a, b| b.total_cmp(a));
    all.dedup_by(|a, b| same(*a, *b));
    all
}

fn same(a: Length, b: Length) -> bool {
    (a - b).abs() < Length::from_mm(1e-6)
}

fn row(
    profile: &Profile,
    height: Length,
    basis: Area,
    stages: &[(Length, WearStage)],
) -> Result<WearRow, SectionError> {
    let left = worn(profile, height)?;
    let stage = stages.iter().filter(|(at, _)| same(*at, height)).map(|(_, stage)| *stage).max();
    Ok(WearRow {
        height,
        section: left.section,
        percent: left.percent_of(basis),
        flat_width: left.flat_width,
        stage,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::section::round_profile;

    fn marks(profile: &Profile) -> WearHeights {
        WearHeights {
            basis: profile.area,
            plan: None,
            replace: None,
            stop: None,
            limit_percent: None,
            most_rows: 14,
        }
    }

    #[test]
    fn marks_off_the_grid_get_rows_of_their_own() {
        let profile = round_profile(Length::from_mm(12.34)).unwrap();
        let marks = WearHeights {
            plan: Some(Length::from_mm(10.0)),
            replace: Some(Length::from_mm(9.4)),
            stop: Some(Length::from_mm(8.9)),
            ..marks(&profile)
        };
        let table = wear_table(&profile, &marks).unwrap();
        let heights: Vec<f64> = table.rows.iter().map(|row| row.height.mm()).collect();
        assert_eq!(heights, [12.34, 12.0, 11.5, 11.0, 10.5, 10.0, 9.5, 9.4, 9.0, 8.9, 8.5, 8.0]);
        assert_eq!(table.rows[9].stage, Some(WearStage::Stop));
        assert_eq!(table.rows[0].percent, 0.0);
    }

    #[test]
    fn the_step_is_the_finest_that_there_is_room_for() {
        let profile = round_profile(Length::from_mm(8.25)).unwrap();
        let stop = |height: f64| WearHeights { stop: Some(Length::from_mm(height)), ..marks(&profile) };
        assert_eq!(wear_table(&profile, &stop(7.5)).unwrap().step.mm(), 0.1);
        assert_eq!(wear_table(&profile, &stop(6.5)).unwrap().step.mm(), 0.2);
        assert_eq!(wear_table(&profile, &stop(5.0)).unwrap().step.mm(), 0.5);
        assert_eq!(wear_table(&profile, &stop(2.5)).unwrap().step.mm(), 1.0);
    }

    #[test]
    fn without_a_stop_height_the_loss_limit_ends_the_table() {
        let profile = round_profile(Length::from_mm(12.0)).unwrap();
        let table =
            wear_table(&profile, &WearHeights { limit_percent: Some(20.0), ..marks(&profile) }).unwrap();
        let limit = table.rows.iter().position(|row| row.stage == Some(WearStage::Limit)).unwrap();
        // A hundredth of a millimetre is 0.1 % of this wire there: the height is one that a caliper shows, and no loss
        // beyond the limit.
        let row = &table.rows[limit];
        assert!(row.percent <= 20.0 && row.percent > 19.85, "{}", row.percent);
        assert!((row.height.mm() * 100.0 - (row.height.mm() * 100.0).round()).abs() < 1e-9);
        assert_eq!(table.rows.len(), limit + 3);
        assert!(wear_table(&profile, &marks(&profile)).unwrap().rows.len() > 5);
    }

    #[test]
    fn a_mark_that_is_no_height_of_the_wire_is_refused_by_its_key() {
        let profile = round_profile(Length::from_mm(12.0)).unwrap();
        let error =
            wear_table(&profile, &WearHeights { stop: Some(Length::from_mm(12.5)), ..marks(&profile) })
                .unwrap_err();
        assert_eq!(error.field, "construction.grooved.wear.stop_height_mm");
    }
}
