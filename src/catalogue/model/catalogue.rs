//! A whole catalogue.

use super::{
    Conductor, Edition, Fitting, FontFile, Gaps, Holder, InstalledFile, Note, Notice, Part, Procedure,
    Settings,
};
use crate::section::Material;
use std::collections::{BTreeMap, BTreeSet};
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
    /// Procedures by id.
    pub procedures: BTreeMap<String, Arc<Procedure>>,
    /// Notices by number.
    pub notices: BTreeMap<String, Arc<Notice>>,
    /// Holders by id.
    pub holders: BTreeMap<String, Arc<Holder>>,
    /// Editions on the register, the first one first.
    pub editions: Vec<Arc<Edition>>,
    /// Markdown of records and chapters, in order of file name.
    pub notes: Vec<Note>,
    /// Fonts beside the built-in ones, in order of file name.
    pub fonts: Vec<FontFile>,
    /// Lists of installed fittings, in order of file name; read by whoever asks for what they hold.
    pub installed: Vec<InstalledFile>,
    /// Ids and numbers of records that are left out, because they or what they need are faulty. Whatever
    /// names one of them is not wrong.
    pub left_out: BTreeSet<String>,
    /// How many that are, with those whose ids are not known.
    pub gaps: Gaps,
}
