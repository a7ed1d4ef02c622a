//! `fittingcards start`: a small working catalogue to begin from.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::{file, report, schema};
use crate::diagnostics::visible;
use serde_json::json;
use std::path::{Path, PathBuf};

/// Options of `start`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Folder to write to; the catalogue folder where not given
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
}

/// The files of the small catalogue, by their path below its folder.
const FILES: &[(&str, &str)] = &[
    ("catalogue.yaml", include_str!("starter/catalogue.yaml")),
    ("conductors/messengers.yaml", include_str!("starter/conductors/messengers.yaml")),
    ("fittings/collet-dead-ends.yaml", include_str!("starter/fittings/collet-dead-ends.yaml")),
    ("holders/holders.yaml", include_str!("starter/holders/holders.yaml")),
    ("notes/F-201.md", include_str!("starter/notes/F-201.md")),
    ("notes/chapters/01-before-you-start.md", include_str!("starter/notes/chapters/01-before-you-start.md")),
    ("notices/1.yaml", include_str!("starter/notices/1.yaml")),
    ("parts/collet-body.yaml", include_str!("starter/parts/collet-body.yaml")),
    ("procedures/collet.yaml", include_str!("starter/procedures/collet.yaml")),
];

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let folder = options.folder.as_ref().unwrap_or(&globals.catalogue);
    if !is_empty(folder) {
        return Err(Fault::new(format!("{}: not an empty folder; nothing was written", folder.display())));
    }
    let schemas = schema::files();
    for (path, text) in FILES {
        file::write(&folder.join(path), text)?;
    }
    for (name, text) in &schemas {
        file::write(&folder.join("schemas").join(name), text)?;
    }
    let (count, folder) = (FILES.len() + schemas.len(), folder.display().to_string());
    let answer = match globals.format {
        Format::Json => json!({ "folder": folder, "files": count }).to_string(),
        Format::Text => {
            let folder = visible(&folder);
            format!("{count} files in {folder}; now run: fittingcards render --catalogue {folder}")
        }
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::Done)
}

/// Whether there is nothing at this path, or a folder with nothing in it.
fn is_empty(folder: &Path) -> bool {
    !folder.exists()
        || folder.is_dir() && walkdir::WalkDir::new(folder).min_depth(1).into_iter().next().is_none()
}
