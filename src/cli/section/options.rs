//! What `section` can be told on the command line.

use super::parse;
use crate::section::RopeCore;
use crate::units::Length;
use clap::ValueEnum;
use std::path::PathBuf;

/// What has neither core nor grade of a rope. `requires` would pass over them: of the constructions, which are one group,
/// it lets any stand for the one that is named.
const NO_ROPES: [&str; 5] = ["stranded", "solid", "tube", "bar", "conductor"];

/// Options of `section`: exactly one construction or record, and what is to be known of it.
#[derive(Debug, clap::Args)]
#[command(group(clap::ArgGroup::new("conductor_given").required(true)))]
pub struct Options {
    /// Wires and their diameter, 19/2.80; outer group and core, 26/3.45+7/2.68; layers, 3,9/2.80
    #[arg(long, value_name = "N/D", group = "conductor_given")]
    pub(super) stranded: Option<String>,
    /// Diameter of a solid wire
    #[arg(long, value_name = "D", group = "conductor_given", allow_hyphen_values = true)]
    pub(super) solid: Option<String>,
    /// Outside diameter and wall of a tube, 100x5
    #[arg(long, value_name = "DxW", group = "conductor_given")]
    pub(super) tube: Option<String>,
    /// Width and thickness of a bar, 40x10
    #[arg(long, value_name = "WxT", group = "conductor_given")]
    pub(super) bar: Option<String>,
    /// Class and diameter of a rope, 7x19/8.0
    #[arg(long, value_name = "CLASS/D", group = "conductor_given")]
    pub(super) rope: Option<String>,
    /// A conductor of the catalogue
    #[arg(long, value_name = "ID", group = "conductor_given")]
    pub(super) conductor: Option<String>,
    /// Material, by id
    #[arg(long, value_name = "ID", conflicts_with_all = ["conductor"])]
    pub(super) material: Option<String>,
    /// Material of the core, by id
    #[arg(long, value_name = "ID", conflicts_with_all = ["solid", "tube", "bar", "rope", "conductor"])]
    pub(super) core_material: Option<String>,
    /// Core of the rope
    #[arg(long, value_enum, default_value = None, conflicts_with_all = NO_ROPES)]
    pub(super) core: Option<Core>,
    /// Grade of the rope in N/mm²
    #[arg(long, value_name = "N/MM2", value_parser = parse::positive, conflicts_with_all = NO_ROPES)]
    pub(super) grade: Option<f64>,
    /// Remaining height of a worn contact wire or solid wire in mm
    #[arg(long, value_name = "MM", value_parser = parse::length, conflicts_with = "flat_width")]
    pub(super) worn_height: Option<Length>,
    /// Width of the worn flat in mm
    #[arg(long, value_name = "MM", value_parser = parse::length)]
    pub(super) flat_width: Option<Length>,
    /// Temperature of the conductor in °C, for its resistance
    #[arg(long, value_name = "CELSIUS", value_parser = parse::temperature, allow_hyphen_values = true)]
    pub(super) temperature: Option<f64>,
    /// Also write the sketch to this file
    #[arg(long, value_name = "FILE")]
    pub(super) svg: Option<PathBuf>,
}

/// The core of a rope.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Core {
    /// A strand of wires
    Wsc,
    /// An independent wire rope
    Iwrc,
    /// Fibre
    Fibre,
}

impl From<Core> for RopeCore {
    fn from(core: Core) -> Self {
        match core {
            Core::Wsc => Self::Wsc,
            Core::Iwrc => Self::Iwrc,
            Core::Fibre => Self::Fibre,
        }
    }
}
