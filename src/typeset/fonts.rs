//! The fonts of a run: the built-in ones and those of the catalogue, and never the system's.

use super::FontStyle;
use super::breaking::Breakable;
use super::coverage::Coverage;
use super::drawing_options::drawing_options;
use super::font_fault::FontFault;
use super::shaping::Shaped;
use super::trial::try_font;
use crate::diagnostics::Findings;
use crate::source::Place;
use rayon::prelude::*;
use std::collections::HashMap;
use std::sync::{Arc, RwLock};
use usvg::fontdb::{Database, FaceInfo, Family, ID, Language, Query, Source, Stretch, Weight};

/// The family of the narrow built-in cuts, which their files list under the wide ones' name.
const CONDENSED: &str = "DejaVu Sans Condensed";

/// A font file of the catalogue.
#[derive(Debug, Clone)]
pub struct FontSource {
    /// The bytes.
    pub bytes: Arc<[u8]>,
    /// Where the file stands, for findings.
    pub place: Place,
}

/// Every font that a run can set text in, and the widths measured so far.
///
/// It can be shared between threads; what has been measured once is not shaped again.
///
/// ```
/// use fittingcards::source::{MemoryWorld, World};
/// use fittingcards::typeset::{FontStyle, Fonts, Style};
/// let (fonts, findings) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
/// assert!(!findings.has_errors());
/// let body = Style::points(FontStyle::Condensed, 8.5);
/// assert!(fonts.width("19 × 2.80 mm", body) < fonts.width("19 × 2.80 mm, bronze", body));
/// ```
#[derive(Debug)]
pub struct Fonts {
    pub(super) database: Arc<Database>,
    pub(super) faces: Vec<FontFace>,
    pub(super) widths: RwLock<HashMap<FontStyle, PerText<f64>>>,
    pub(super) shaped: RwLock<PerFont<Arc<Shaped>>>,
    pub(super) breakable: RwLock<HashMap<FontStyle, PerText<Arc<Breakable>>>>,
}

/// What is known of each text.
type PerText<T> = HashMap<Box<str>, T>;

/// What is known of each text in a font, from right to left or not.
type PerFont<T> = HashMap<(usize, bool), PerText<T>>;

/// One face, as it is asked for in a drawing.
#[derive(Debug, Clone)]
pub(super) struct FontFace {
    pub(super) id: ID,
    pub(super) family: Arc<str>,
    pub(super) weight: u16,
    pub(super) built_in: bool,
    pub(super) coverage: Coverage,
}

impl Fonts {
    /// The built-in fonts, and after them those of the catalogue in their order. Each file of the catalogue is
    /// tried first; one that is no sound font is left out and found (`font-unreadable`).
    #[must_use]
    pub fn new(built_in: &[&'static [u8]], catalogue: &[FontSource]) -> (Self, Findings) {
        let mut database = Database::new();
        let mut findings = Findings::new();
        let mut faces = Vec::new();
        for bytes in built_in {
            faces.extend(load(&mut database, Source::Binary(Arc::new(*bytes)), true));
        }
        let trials: Vec<Result<(), FontFault>> =
            catalogue.par_iter().map(|font| try_font(&font.bytes)).collect();
        for (font, trial) in catalogue.iter().zip(trials) {
            match trial {
                Ok(()) => {
                    faces.extend(load(&mut database, Source::Binary(Arc::new(font.bytes.clone())), false))
                }
                Err(fault) => findings.push(fault.finding(font.place.clone())),
            }
        }
        let (widths, shaped, breakable) = (RwLock::default(), RwLock::default(), RwLock::default());
        faces.retain(|face| askable(&database, face));
        (Self { database: Arc::new(database), faces, widths, shaped, breakable }, findings)
    }

    /// The database that drawings are parsed with.
    #[must_use]
    pub fn database(&self) -> &Arc<Database> {
        &self.database
    }

    /// Options to parse a drawing with: these fonts and no other, and no replacement for a glyph that
    /// a font lacks, so that it can be found.
    #[must_use]
    pub fn options(&self) -> usvg::Options<'static> {
        drawing_options(self.database.clone(), FontStyle::Regular.family())
    }
}

/// Loads a file's faces; the narrow built-in cuts get a family name of their own.
fn load(database: &mut Database, source: Source, built_in: bool) -> Vec<FontFace> {
    let ids = database.load_font_source(source);
    ids.into_iter().filter_map(|id| named(database, id, built_in)).collect()
}

/// Whether a drawing that names the face's family and weight gets this face: not where it is the slanted
/// one of two.
fn askable(database: &Database, face: &FontFace) -> bool {
    let (families, weight) = ([Family::Name(&face.family)], Weight(face.weight));
    database.query(&Query { families: &families, weight, ..Query::default() }) == Some(face.id)
}

fn named(database: &mut Database, id: ID, built_in: bool) -> Option<FontFace> {
    let info = database.face(id)?.clone();
    let condensed = info.post_script_name.starts_with("DejaVuSansCondensed");
    let id = if condensed { rename(database, info) } else { id };
    let info = database.face(id)?;
    let family = info.families.first()?.0.as_str().into();
    let weight = info.weight.0;
    let coverage = database.with_face_data(id, Coverage::of).flatten()?;
    Some(FontFace { id, family, weight, built_in, coverage })
}

fn rename(database: &mut Database, info: FaceInfo) -> ID {
    database.remove_face(info.id);
    let families = vec![(CONDENSED.to_owned(), Language::English_UnitedStates)];
    database.push_face_info(FaceInfo { families, stretch: Stretch::Normal, ..info })
}
