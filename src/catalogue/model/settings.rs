//! What `catalogue.yaml` settles.

use super::Origin;
use crate::grip::GripLimits;
use crate::records::{CardSize, FlipEdge, Orientation, SheetSize};
use crate::units::Length;
use jiff::civil::Date;

/// What `catalogue.yaml` settles.
#[derive(Debug, Clone)]
pub struct Settings {
    /// Title of the booklet.
    pub title: String,
    /// Who answers for it.
    pub owner: String,
    /// The edition being prepared.
    pub edition: String,
    /// Date of this state: stated, else SOURCE_DATE_EPOCH, else the newest notice or register date.
    pub date: Option<Date>,
    /// BCP 47 language tag.
    pub language: String,
    /// Between whole numbers and decimals: `.` or `,`.
    pub decimal_mark: char,
    /// Size and orientation of cards.
    pub card: CardFormat,
    /// Sheet that cards are printed on.
    pub sheet: SheetFormat,
    /// What the audit measures by.
    pub limits: Limits,
    /// Printed first on every card's back.
    pub before_work: Vec<String>,
    /// Printed on every card and page.
    pub caution: String,
    /// What is also made for the training cell; `None` where the catalogue does not choose it.
    pub training: Option<Training>,
    /// Where it stands.
    pub origin: Origin,
}

impl Settings {
    /// The date of this state, where catalogue.yaml states it: what is worked out from editions and notices says nothing of
    /// what came after them.
    #[must_use]
    pub fn stated_date(&self) -> Option<Date> {
        self.date.filter(|_| self.origin.fields.contains_key("date"))
    }
}

/// Size and orientation of a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CardFormat {
    /// Paper size.
    pub size: CardSize,
    /// Which way up.
    pub orientation: Orientation,
}

impl CardFormat {
    /// Width and height of the trimmed card.
    #[must_use]
    pub fn trim(self) -> (Length, Length) {
        let (short, long) = match self.size {
            CardSize::A7 => (74.0, 105.0),
            CardSize::A6 => (105.0, 148.0),
            CardSize::Id1 => (53.98, 85.60),
        };
        let (short, long) = (Length::from_mm(short), Length::from_mm(long));
        match self.orientation {
            Orientation::Portrait => (short, long),
            Orientation::Landscape => (long, short),
        }
    }
}

/// The sheet that cards are printed on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SheetFormat {
    /// Paper size.
    pub size: SheetSize,
    /// The edge that the printer turns the sheet over.
    pub flip: FlipEdge,
    /// Whether crop marks are drawn.
    pub crop_marks: bool,
    /// How far colour runs past the cut.
    pub bleed: Length,
}

/// What the audit measures by.
#[derive(Debug, Clone, PartialEq)]
pub struct Limits {
    /// Stated section against computed, percent.
    pub section_tolerance_percent: f64,
    /// Stated diameter against computed.
    pub diameter_tolerance: Length,
    /// Nominal size against computed section, percent.
    pub nominal_tolerance_percent: f64,
    /// Holding load against breaking load, percent.
    pub holding_percent_of_breaking_load: f64,
    /// Line tension against breaking load, percent at most.
    pub tension_percent_of_breaking_load: f64,
    /// Friction between gripping part and wire.
    pub wire_friction: f64,
    /// Friction between gripping part and its greased seat.
    pub seat_friction: f64,
    /// Of a collet's closure, kept in hand.
    pub closure_reserve: Length,
    /// A difference that a gauge or an eye finds on site.
    pub visible_stand_out: Length,
    /// Smallest type on a card.
    pub smallest_type: Length,
    /// Smallest CIEDE2000 between marks of one body.
    pub mark_difference: f64,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            section_tolerance_percent: 0.5,
            diameter_tolerance: Length::from_mm(0.1),
            nominal_tolerance_percent: 7.0,
            holding_percent_of_breaking_load: 95.0,
            tension_percent_of_breaking_load: 65.0,
            wire_friction: 0.30,
            seat_friction: 0.12,
            closure_reserve: Length::from_mm(0.3),
            visible_stand_out: Length::from_mm(2.0),
            smallest_type: Length::from_pt(7.0),
            mark_difference: 12.0,
        }
    }
}

impl Limits {
    /// What the rules of grip measure by.
    #[must_use]
    pub fn grip(&self) -> GripLimits {
        GripLimits { closure_reserve: self.closure_reserve }
    }
}

/// What is made for the training cell and its stores.
#[derive(Debug, Clone, PartialEq)]
pub struct Training {
    /// Groups that get a quiz each.
    pub groups: Vec<TaughtGroup>,
    /// How many questions a quiz has at most.
    pub questions: u32,
    /// How much of what safety does not hang on must be right, percent.
    pub pass_percent: f64,
    /// How many months an assessment is valid.
    pub valid_months: u32,
}

/// A group that is taught.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaughtGroup {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
}

impl Default for Training {
    fn default() -> Self {
        let all = TaughtGroup { id: "all".to_owned(), name: "All".to_owned() };
        Self { groups: vec![all], questions: 12, pass_percent: 80.0, valid_months: 24 }
    }
}
