//! The domain model: every link resolved, every size positive, every number a quantity.

use crate::colour::Mark;
use crate::grip::Geometry;
pub use crate::records::{
    CardSize, Duty, Family, FlipEdge, Orientation, Reuse, Role, SheetSize, StandOutFrom, Status, WearBasis,
};
use crate::section::{Citation, Construction, Material, Section};
use crate::source::Place;
use crate::units::{Area, Force, Length, LinearMass, LinearResistance, Torque};
use jiff::civil::Date;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A whole catalogue: settings, and the records that are sound, each sorted by id or number.
#[derive(Debug, Clone)]
pub struct Catalogue {
    /// Title, owner, edition, sizes, limits, caution.
    pub settings: Settings,
    /// Materials by id, built-in ones among them.
    pub materials: BTreeMap<String, Arc<Material>>,
    /// Conductors by id.
    pub conductors: BTreeMap<String, Arc<Conductor>>,
    /// Parts by number.
    pub parts: BTreeMap<String, Arc<Part>>,
    /// Fittings by number.
    pub fittings: BTreeMap<String, Arc<Fitting>>,
    /// Notices by number.
    pub notices: BTreeMap<String, Arc<Notice>>,
    /// Holders by id.
    pub holders: BTreeMap<String, Arc<Holder>>,
    /// Markdown of records and chapters, in order of file name.
    pub notes: Vec<Note>,
    /// Fonts beside the built-in ones, in order of file name.
    pub fonts: Vec<FontFile>,
}

/// A record's own place and the places of its fields, for findings that come later.
#[derive(Debug, Clone)]
pub struct Origin {
    /// Where the record starts.
    pub place: Place,
    /// Where each field's value stands, by dotted path such as `stated.section_mm2` or `parts.2`.
    pub fields: BTreeMap<String, Place>,
}

impl Origin {
    /// The place of a field's value; of the nearest field around it, else of the record, where the
    /// record does not have it.
    #[must_use]
    pub fn of(&self, field: &str) -> Place {
        let mut path = field;
        loop {
            if let Some(place) = self.fields.get(path) {
                return place.clone();
            }
            match path.rfind('.') {
                Some(dot) => path = &path[..dot],
                None => return self.place.clone(),
            }
        }
    }
}

/// What `catalogue.yaml` settles.
#[derive(Debug, Clone)]
pub struct Settings {
    /// Title of the booklet.
    pub title: String,
    /// Who answers for it.
    pub owner: String,
    /// The edition being prepared.
    pub edition: String,
    /// Date of this state: SOURCE_DATE_EPOCH, else stated, else the newest notice or register date.
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
    /// Printed on every card and page.
    pub caution: String,
    /// Where it stands.
    pub origin: Origin,
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
    /// Width and height of the cut card.
    #[must_use]
    pub fn cut(self) -> (Length, Length) {
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
    /// Of a collet's closure, kept in hand.
    pub closure_reserve: Length,
    /// A difference that a gauge or an eye finds on site.
    pub visible_stand_out: Length,
    /// Smallest type on a card.
    pub smallest_type: Length,
    /// Smallest CIEDE2000 between marks of one body.
    pub mark_difference: f64,
}

/// What fittings hold.
#[derive(Debug, Clone)]
pub struct Conductor {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What it is for.
    pub duty: Duty,
    /// What it is made of (a composite's outer group).
    pub material: Arc<Material>,
    /// Nominal size in mm², a name rather than a measurement.
    pub nominal_size: Option<Area>,
    /// How it is built.
    pub construction: Construction,
    /// Wear limits of a grooved wire.
    pub wear: Option<WearLimits>,
    /// Tolerance on the overall diameter.
    pub diameter_tolerance: Option<Length>,
    /// Tolerance on the wire diameter.
    pub wire_diameter_tolerance: Option<Length>,
    /// What the specification prints.
    pub stated: Stated,
    /// What separates it where a caliper can't.
    pub identity: Identity,
    /// Where its figures come from.
    pub source: Citation,
    /// What must be known before it is handled.
    pub caution: String,
    /// Everything computed of it.
    pub section: Section,
    /// Where it stands.
    pub origin: Origin,
}

/// What a specification prints of a conductor; audited, never silently replaced.
#[derive(Debug, Clone, Default, PartialEq)]
#[allow(missing_docs, reason = "the names say it")]
pub struct Stated {
    pub section: Option<Area>,
    pub overall_diameter: Option<Length>,
    pub mass: Option<LinearMass>,
    pub breaking_load: Option<Force>,
    pub resistance_20c: Option<LinearResistance>,
}

/// What separates a conductor where a caliper can't; empty where nothing is known.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Identity {
    /// Text on the drum tag.
    pub drum_tag: String,
    /// Tracer thread or wire.
    pub tracer: String,
    /// Identification grooves of a contact wire.
    pub grooves: String,
}

/// How far a contact wire may wear.
#[derive(Debug, Clone, PartialEq)]
pub struct WearLimits {
    /// Loss of section at which it must go, percent.
    pub limit_percent: Option<f64>,
    /// The section that percent is of.
    pub basis: WearBasis,
    /// Remaining height at which replacement is planned.
    pub plan_height: Option<Length>,
    /// Remaining height at which it is replaced.
    pub replace_height: Option<Length>,
    /// Remaining height at which traffic stops.
    pub stop_height: Option<Length>,
}

/// One piece of a fitting.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// What it does in its fitting.
    pub role: Role,
    /// What it is made of.
    pub material: Arc<Material>,
    /// Drawing number with revision; empty where not stated.
    pub drawing: String,
    /// Characters found on it; empty where not stated.
    pub stamp: String,
    /// The mark stated on it.
    pub mark: Option<Mark>,
    /// Whether the mark can be seen on the assembled fitting, where stated.
    pub mark_seen_after_assembly: Option<bool>,
    /// Whether it may be used again, where stated.
    pub reuse: Option<Reuse>,
    /// Whether it may be used at all.
    pub status: Status,
    /// Parts of the same role and interface go into the same place; empty where not stated.
    pub interface: String,
    /// Conductors it has been tested on, beside its own.
    pub proven_on: Vec<Proof>,
    /// Its measurements.
    pub geometry: Option<Geometry>,
    /// Where it stands.
    pub origin: Origin,
}

impl Role {
    /// Whether parts of this role hold the conductor; a thimble only guides.
    #[must_use]
    pub fn grips(self) -> bool {
        matches!(self, Self::Cone | Self::Wedge | Self::Sleeve | Self::Ferrule | Self::RopeGrip)
    }
}

/// A test of a part on a conductor.
#[derive(Debug, Clone)]
pub struct Proof {
    /// The conductor it was tested on.
    pub conductor: Arc<Conductor>,
    /// What it held.
    pub holding_load: Option<Force>,
    /// The report; empty where not stated.
    pub report: String,
    /// When.
    pub date: Option<Date>,
}

/// An assembly of parts that ends, anchors or joins a conductor.
#[derive(Debug, Clone)]
pub struct Fitting {
    /// Its number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// How it works.
    pub family: Family,
    /// The conductor, or the two of a joint.
    pub conductors: Vec<Arc<Conductor>>,
    /// Parts in item order.
    pub items: Vec<Item>,
    /// Its mark: stated on it, else its gripping part's.
    pub mark: Option<Mark>,
    /// Whether the mark can be seen on the assembled fitting, where stated on it or on its gripping part.
    pub mark_seen_after_assembly: Option<bool>,
    /// What must be readable on the assembled fitting; empty where not stated.
    pub stamp: String,
    /// Stand-out to be measured.
    pub stand_out: Option<StandOut>,
    /// How far the conductor goes in.
    pub insertion: Option<Length>,
    /// How much of it sticks out behind.
    pub tail: Option<Length>,
    /// Proven without slip.
    pub holding_load: Option<Force>,
    /// What it may be used at.
    pub line_tension_max: Option<Force>,
    /// What is tightened and how.
    pub tightening: Vec<Tightening>,
    /// What a second person checks before it is closed; empty where not stated.
    pub witness: String,
    /// Assembly steps.
    pub steps: Vec<String>,
    /// What makes it unfit.
    pub reject_if: Vec<String>,
    /// Notices that concern it.
    pub notices: Vec<Arc<Notice>>,
    /// Whether it may be used.
    pub status: Status,
    /// What replaces it.
    pub superseded_by: Option<String>,
    /// What becomes of fittings already in the line, where stated.
    pub in_service: Option<InService>,
    /// Where it stands.
    pub origin: Origin,
}

impl Fitting {
    /// The first conductor: the only one, but for joints.
    ///
    /// # Panics
    /// Never: the catalogue keeps no fitting without a conductor.
    #[must_use]
    pub fn conductor(&self) -> &Arc<Conductor> {
        &self.conductors[0]
    }

    /// The items whose parts hold the conductor, in item order.
    pub fn gripping(&self) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(|item| item.part.role.grips())
    }

    /// The items that are bodies, in item order.
    pub fn bodies(&self) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(|item| item.part.role == Role::Body)
    }
}

/// A part in a fitting.
#[derive(Debug, Clone)]
pub struct Item {
    /// The part.
    pub part: Arc<Part>,
    /// How many of it.
    pub quantity: u32,
}

/// The stand-out that is measured on a fitting.
#[derive(Debug, Clone, PartialEq)]
pub struct StandOut {
    /// Between what it is measured.
    pub from: StandOutFrom,
    /// Window after tightening.
    pub seated: Option<Window<Length>>,
    /// Window after line tension has drawn the gripping part in.
    pub tensioned: Option<Window<Length>>,
}

/// Least and most that is right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window<T> {
    /// Least.
    pub min: T,
    /// Most.
    pub max: T,
}

/// One tightening.
#[derive(Debug, Clone, PartialEq)]
pub struct Tightening {
    /// What is tightened.
    pub item: String,
    /// Its thread, such as "M36x2"; empty where not stated.
    pub thread: String,
    /// Spanner size.
    pub spanner: Option<Length>,
    /// Torque window.
    pub torque: Option<Window<Torque>>,
    /// Preload that the torque is meant to give.
    pub preload: Option<Force>,
    /// What is greased, in words.
    pub grease: Vec<String>,
    /// How many times round.
    pub passes: Option<u32>,
}

/// What becomes of fittings already in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names say it")]
pub enum InService {
    MayStay,
    Inspect,
    ReplaceBy(Date),
    StopNow,
}

/// A circular or change note.
#[derive(Debug, Clone)]
pub struct Notice {
    /// Its number.
    pub number: String,
    /// When it was written.
    pub date: Date,
    /// From when it holds.
    pub effective: Option<Date>,
    /// By when it is carried out.
    pub action_by: Option<Date>,
    /// Its title.
    pub title: String,
    /// The owner's own reference; empty where not stated.
    pub reference: String,
    /// What it says; empty where not stated.
    pub summary: String,
    /// Where it stands.
    pub origin: Origin,
}

/// A depot, gang or store that holds numbered copies.
#[derive(Debug, Clone)]
pub struct Holder {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Copies by fitting or body number; `*` for every other card.
    pub copies: BTreeMap<String, u32>,
    /// Where it stands.
    pub origin: Origin,
}

/// Markdown as written.
#[derive(Debug, Clone)]
pub struct Note {
    /// What it is about.
    pub about: NoteAbout,
    /// The text.
    pub markdown: Arc<str>,
    /// Where it stands.
    pub place: Place,
}

/// What a note is about.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum NoteAbout {
    /// The record with this id or number.
    Record(String),
    /// A chapter of the booklet: file name without `.md`, in order.
    Chapter(String),
}

/// A font file of the catalogue.
#[derive(Debug, Clone)]
pub struct FontFile {
    /// The bytes.
    pub bytes: Arc<[u8]>,
    /// Where it stands.
    pub place: Place,
}
