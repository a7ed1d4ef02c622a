//! Which conductor is asked about: one from the command line, or one of the catalogue.

use super::super::options::Globals;
use super::super::outcome::{Fault, Outcome};
use super::super::report;
use super::{Options, parse};
use crate::catalogue::{self, Catalogue, Conductor, Gaps};
use crate::section::{Composite, Construction, Material, Rope, RopeCore, materials};
use crate::units::Stress;
use std::collections::BTreeMap;
use std::sync::Arc;

type Materials = BTreeMap<String, Arc<Material>>;

/// A conductor to be computed.
pub(super) enum Question {
    /// Built on the command line.
    Built { construction: Construction, material: Option<Arc<Material>> },
    /// A record.
    Recorded(Arc<Conductor>),
}

impl Question {
    pub(super) fn construction(&self) -> &Construction {
        match self {
            Self::Built { construction, .. } => construction,
            Self::Recorded(conductor) => &conductor.construction,
        }
    }

    pub(super) fn material(&self) -> Option<&Material> {
        match self {
            Self::Built { material, .. } => material.as_deref(),
            Self::Recorded(conductor) => Some(&conductor.material),
        }
    }
}

/// The conductor that the options name, and how the run ends: refused where the catalogue that had to
/// be read has errors, even though they don't take the answer away.
pub(super) fn question(globals: &Globals, options: &Options) -> Result<(Question, Outcome), Fault> {
    if let Some(id) = &options.conductor {
        let (catalogue, outcome) = read(globals)?;
        let found = find(&catalogue.conductors, id, "conductor")
            .map_err(|fault| fault.or_of_records(left_out(&catalogue)))?;
        return Ok((Question::Recorded(found), outcome));
    }
    let ids = [&options.material, &options.core_material];
    let unknown = ids.into_iter().flatten().find(|id| !materials::built_in().contains_key(*id));
    let (known, stop, outcome) = match unknown {
        Some(unknown) => materials_of_catalogue(globals, unknown)?,
        None => (materials::built_in().clone(), None, Outcome::Done),
    };
    let named = |id: &str| find(&known, id, "material").map_err(|fault| fault.or_of_records(stop.clone()));
    let material = |id: &Option<String>| id.as_deref().map(&named).transpose();
    let construction = construction(options, material(&options.core_material)?).map_err(Fault::new)?;
    Ok((Question::Built { construction, material: material(&options.material)? }, outcome))
}

/// The materials of the catalogue, which is read because a material is not built in.
fn materials_of_catalogue(
    globals: &Globals,
    unknown: &str,
) -> Result<(Materials, Option<String>, Outcome), Fault> {
    match read(globals) {
        Ok((catalogue, outcome)) => {
            let stop = left_out(&catalogue);
            Ok((catalogue.materials, stop, outcome))
        }
        Err(fault) => {
            let why =
                find(materials::built_in(), unknown, "built-in material").err().unwrap_or(fault.clone());
            Err(Fault::new(format!("{}; no catalogue to find it in: {}", why.message, fault.message)))
        }
    }
}

/// Reads the catalogue as far as it can be read; its findings go to standard error.
fn read(globals: &Globals) -> Result<(Catalogue, Outcome), Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    report::findings(&loaded.findings, &world, globals);
    Ok((loaded.catalogue, Outcome::unless(loaded.findings.has_errors())))
}

/// What is said where what is asked for may be in a record that is left out.
fn left_out(catalogue: &Catalogue) -> Option<String> {
    Gaps::stop(catalogue.gaps.deciding, "it can stand in a record that is left out")
}

fn find<T>(known: &BTreeMap<String, Arc<T>>, id: &str, kind: &str) -> Result<Arc<T>, Fault> {
    if let Some(found) = known.get(id) {
        return Ok(Arc::clone(found));
    }
    let nearest = known
        .keys()
        .map(|name| (strsim::jaro_winkler(&name.to_lowercase(), &id.to_lowercase()), name))
        .filter(|(likeness, _)| *likeness > 0.7)
        .max_by(|(a, _), (b, _)| a.total_cmp(b))
        .map(|(_, name)| format!("; did you mean '{name}'?"))
        .unwrap_or_default();
    Err(Fault::new(format!("there is no {kind} '{id}'{nearest}")))
}

fn construction(options: &Options, core_material: Option<Arc<Material>>) -> Result<Construction, String> {
    if let Some(text) = &options.stranded {
        let (outer, core) = parse::stranded(text)?;
        return match core {
            Some(core) => Ok(Construction::Composite(Composite { core, core_material, outer })),
            None if core_material.is_some() => Err(format!(
                "--core-material: '{text}' has no core; a core is written behind a plus, 26/3.45+7/2.68"
            )),
            None => Ok(Construction::Stranded(outer)),
        };
    }
    if let Some(text) = &options.rope {
        return rope(options, text);
    }
    let forms = [
        (&options.solid, parse::solid as fn(&str) -> Result<Construction, String>),
        (&options.tube, parse::tube),
        (&options.bar, parse::bar),
    ];
    forms
        .into_iter()
        .find_map(|(text, form)| text.as_deref().map(form))
        .unwrap_or_else(|| Err("a construction or --conductor is needed".to_owned()))
}

fn rope(options: &Options, text: &str) -> Result<Construction, String> {
    let (class, diameter) = parse::rope(text)?;
    // A single strand has no core to name; a rope's core decides its factors, so it is never guessed.
    let core = match options.core {
        Some(core) => core.into(),
        None if class.starts_with("1x") => RopeCore::Wsc,
        None => return Err("--rope needs --core wsc, iwrc or fibre: the core decides the factors".to_owned()),
    };
    Ok(Construction::Rope(Rope { class, core, diameter, grade: options.grade.map(Stress::from_n_per_mm2) }))
}
