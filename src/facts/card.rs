//! The facts of one card. Every text is finished: rounded, with its unit, ready to be set.

use crate::catalogue::Status;

/// Everything that a card prints but its issue, edition, date and check code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardFacts {
    /// The number of the fitting or body.
    pub number: String,
    /// Its name.
    pub title: String,
    /// Whether it may be used.
    pub status: Status,
    /// The status in words that a crew obeys; empty while it is current.
    pub status_words: String,
    /// What comes before any work, in the catalogue's words.
    pub before_work: Vec<String>,
    /// What else it prints.
    pub content: Content,
    /// The catalogue's caution.
    pub caution: String,
}

/// What a card is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Content {
    /// A fitting.
    Fitting(Box<FittingFacts>),
    /// A body that several fittings share.
    Body(Box<BodyFacts>),
}

/// What a fitting's card prints. What the record lacks is empty or absent.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FittingFacts {
    /// How it works, in words.
    pub family: String,
    /// The mark on its gripping part and on it.
    pub mark: Option<MarkFacts>,
    /// The conductors that it is for.
    pub conductors: Vec<ConductorFacts>,
    /// What the gripping part is called, such as "Gripping cone"; empty where the fitting has none.
    pub gripping_name: String,
    /// The number of the gripping part.
    pub gripping_number: String,
    /// Characters to be read on the gripping part.
    pub gripping_stamp: String,
    /// Characters to be read on the assembled fitting.
    pub stamp: String,
    /// Its parts, in item order.
    pub parts: Vec<PartLine>,
    /// The worst wrong gripping parts, at most three, worst first.
    pub not_these: Vec<NotThis>,
    /// How many more there are on the body's card.
    pub not_these_more: usize,
    /// Whether kits are among these more: the body's card tells of single parts.
    pub more_kits: bool,
    /// The number of the body's card, where there is one.
    pub body_card: Option<String>,
    /// Assembly steps.
    pub steps: Vec<String>,
    /// The values that each step names, as it has them, in order.
    pub step_values: Vec<Vec<String>>,
    /// What is tightened.
    pub tightening: Vec<TighteningFacts>,
    /// Checks as go and no-go.
    pub checks: Vec<CheckFacts>,
    /// What a check that fails calls for.
    pub if_wrong: IfWrongFacts,
    /// What a second person checks.
    pub witness: String,
    /// The most line tension.
    pub line_tension_max: Option<String>,
    /// What makes it unfit.
    pub reject_if: Vec<String>,
    /// Dimensions that the assembly drawing shows: name and text.
    pub dimensions: Vec<(String, String)>,
    /// What the assembly drawing points at: what it is, and where it is.
    pub pointed_at: Vec<(&'static str, &'static str)>,
    /// Notices that concern it.
    pub notices: Vec<NoticeFacts>,
    /// What it replaces.
    pub supersedes: Vec<String>,
    /// What becomes of fittings already in the line.
    pub in_service: Option<String>,
}

impl FittingFacts {
    /// What a check that fails calls for: when, and what is done.
    pub fn if_wrong_items(&self) -> impl Iterator<Item = (&'static str, &str)> {
        let IfWrongFacts { before_load, under_load } = &self.if_wrong;
        let items = [("before load", before_load.as_str()), ("under load", under_load.as_str())];
        items.into_iter().filter(|(_, text)| !text.is_empty())
    }

    /// From when it holds: of several notices, the last settles all; empty where none says.
    #[must_use]
    pub fn in_force_from(&self) -> &str {
        self.notices.iter().map(|notice| notice.in_force_from.as_str()).max().unwrap_or_default()
    }
}

/// A mark in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MarkFacts {
    /// The colour's IEC 60757 code, such as "VT".
    pub code: String,
    /// The colour in words, such as "violet".
    pub colour: String,
    /// The text.
    pub text: String,
    /// Number of notches.
    pub notches: u32,
    /// Notches in words, such as "1 notch"; empty without any.
    pub notches_words: String,
}

/// A conductor in words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ConductorFacts {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What it is made of.
    pub material: String,
    /// How it is built, such as "19 × 2.80 mm".
    pub build: String,
    /// Overall diameter, such as "⌀ 14.0 mm"; height × width of a grooved wire.
    pub diameter: String,
    /// Metal section, such as "117 mm²".
    pub section: String,
    /// Nominal size, where it has one.
    pub nominal: Option<String>,
    /// Neck of a grooved wire.
    pub neck: Option<String>,
    /// What separates it where a caliper can't: name and text.
    pub identity: Vec<(String, String)>,
    /// Its caution, or its material's.
    pub caution: String,
    /// What it can be taken for, and what tells; empty where it can be taken for nothing.
    pub alike: String,
    /// How far it may wear.
    pub wear: Option<WearFacts>,
}

/// The wear table of a contact wire.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct WearFacts {
    /// What the percentages are of, in words.
    pub basis: String,
    /// Limits in words, such as "stop: 8.9 mm".
    pub limits: Vec<(String, String)>,
    /// From new to two rows past the stop height.
    pub rows: Vec<WearRow>,
}

/// One row of a wear table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct WearRow {
    /// Remaining height.
    pub height: String,
    /// Width of the flat.
    pub flat: String,
    /// Section left.
    pub section: String,
    /// Percent worn.
    pub worn: String,
    /// "plan", "replace" or "stop" where this height has come to that limit; else empty.
    pub action: String,
}

/// One line of the parts list.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PartLine {
    /// Its item number.
    pub item: u32,
    /// What it does, in a word.
    pub role: String,
    /// Its number.
    pub number: String,
    /// Its stamp; empty where it has none.
    pub stamp: String,
    /// How many; 1 mostly.
    pub quantity: u32,
    /// Whether it is the gripping part.
    pub gripping: bool,
    /// Its name.
    pub name: String,
    /// Whether it may be used again, in words; empty where not stated.
    pub reuse: String,
}

/// A wrong gripping part, or the whole kit of another fitting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotThis {
    /// Its number.
    pub number: String,
    /// Its stamp; empty where it has none.
    pub stamp: String,
    /// Of a kit, the stamps of its other parts, in words; empty for a single part.
    pub with: String,
    /// Its mark.
    pub mark: Option<MarkFacts>,
    /// What happens, in words.
    pub happens: String,
    /// How one would notice, in words.
    pub noticed: String,
    /// Whether nobody would see it from outside.
    pub hidden: bool,
    /// What a drawing of the right part and this one says of it, and the text; empty where none is drawn.
    pub drawn: Vec<(&'static str, String)>,
}

/// One tightening in words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TighteningFacts {
    /// What is tightened, with its thread.
    pub item: String,
    /// The torque window.
    pub torque: String,
    /// The spanner.
    pub spanner: String,
    /// What is greased.
    pub grease: String,
    /// How many times round; empty where once or not stated.
    pub passes: String,
}

/// One check, as go and no-go.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct CheckFacts {
    /// When it is made: "Seated", "Tensioned" or empty.
    pub when: String,
    /// What is measured or read.
    pub what: String,
    /// What is right.
    pub go: String,
    /// What is wrong, and what to do.
    pub no_go: String,
}

/// What a check that fails calls for, in words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct IfWrongFacts {
    /// Before the line is tensioned.
    pub before_load: String,
    /// Under line tension; empty for a fitting that never has any.
    pub under_load: String,
}

/// A notice in words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct NoticeFacts {
    /// Its number.
    pub number: String,
    /// Its title.
    pub title: String,
    /// From when it holds, where that day is still to come at the catalogue's date; else empty.
    pub in_force_from: String,
}

/// What a body's card prints.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct BodyFacts {
    /// Characters to be read on the body.
    pub stamp: String,
    /// Every part that decides and goes in, by number.
    pub parts: Vec<BodyPart>,
    /// The fittings that share it, by number, with each of their conductors.
    pub fittings: Vec<BodyColumn>,
    /// The table: a row a part that decides, a cell a fitting on one of its conductors.
    pub rows: Vec<BodyRow>,
}

/// A gripping part on a body's card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BodyPart {
    /// Its number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// Its stamp; empty where it has none.
    pub stamp: String,
    /// Its mark.
    pub mark: Option<MarkFacts>,
    /// Conductors that it is right for.
    pub conductors: Vec<String>,
    /// Its status in words that a crew obeys; empty while it is current.
    pub status_words: String,
}

/// A column of the body's table: a fitting on one of its conductors.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BodyColumn {
    /// The fitting's number.
    pub number: String,
    /// The conductor's name.
    pub conductor: String,
    /// The fitting's status in words that a crew obeys; empty while it is current.
    pub status_words: String,
}

/// A row of the body's table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BodyRow {
    /// The gripping part's number.
    pub part: String,
    /// One cell a fitting, in the order of [`BodyFacts::fittings`].
    pub cells: Vec<Cell>,
}

/// What a gripping part does in one fitting.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Cell {
    /// In words.
    pub text: String,
    /// How somebody would notice a danger that no measurement shows; empty for all else. Cards print a sign for it.
    pub noticed: &'static str,
    /// What a crew makes of it.
    pub kind: CellKind,
}

/// What a crew makes of a gripping part in one fitting, for a table that has no room for words.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CellKind {
    /// The fitting's own.
    Right,
    /// Not its own, but proven on its conductor.
    Proven,
    /// Wrong, and nobody sees it from outside.
    Hidden,
    /// Wrong, and it shows.
    Shows,
    /// Its own or proven, but part or fitting must not be used.
    Barred,
    /// It can't be put together.
    Apart,
    /// Not known: to be taken as holding nothing.
    #[default]
    Unknown,
}
