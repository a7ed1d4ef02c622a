//! Options that every command takes.

use super::outcome::Fault;
use crate::diagnostics::Colour;
use crate::source::DiskWorld;
use anstream::ColorChoice;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// Options that every command takes.
#[derive(Debug, Args)]
pub(super) struct Globals {
    /// Folder of the records
    #[arg(long, value_name = "DIR", default_value = "content", global = true)]
    pub catalogue: PathBuf,
    /// Folder of layouts, `layouts` where none is given; the built-in ones stand in where a file is missing
    #[arg(long, value_name = "DIR", global = true)]
    pub layouts: Option<PathBuf>,
    /// Folder that is written: by render, `output` where none is given; by schema, none then
    #[arg(long, value_name = "DIR", global = true)]
    pub output: Option<PathBuf>,
    /// How results and findings are given
    #[arg(long, value_enum, default_value_t = Format::Text, global = true)]
    pub format: Format,
    /// Whether messages are coloured; NO_COLOR is honoured
    #[arg(long, value_enum, default_value_t = Colouring::Auto, global = true)]
    pub colour: Colouring,
    /// Say nothing but errors and results
    #[arg(long, global = true)]
    pub quiet: bool,
}

/// How results and findings are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For people
    Text,
    /// For other programs
    Json,
}

/// Whether messages are coloured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Colouring {
    /// On a terminal
    Auto,
    /// Also in a pipe
    Always,
    /// Not at all
    Never,
}

impl Globals {
    pub(super) fn world(&self) -> DiskWorld {
        DiskWorld::new(&self.catalogue, self.layouts_folder())
    }

    /// The folder that `render` writes.
    pub(super) fn output_folder(&self) -> PathBuf {
        self.output.clone().unwrap_or_else(|| PathBuf::from("output"))
    }

    /// The folder of layouts, whether it is there or not.
    pub(super) fn layouts_folder(&self) -> PathBuf {
        self.layouts.clone().unwrap_or_else(|| PathBuf::from("layouts"))
    }

    /// The same, where a folder of layouts that is named is there. It may be empty: the built-in ones stand in.
    ///
    /// # Errors
    /// Where it is not there.
    pub(super) fn world_with_layouts(&self) -> Result<DiskWorld, Fault> {
        match &self.layouts {
            Some(folder) if !folder.exists() => {
                let told = format!(
                    "{}: there is no such folder; --layouts expects a folder of layouts",
                    folder.display()
                );
                Err(Fault::new(told).with("help", "without --layouts the built-in ones are used"))
            }
            _ => Ok(self.world()),
        }
    }

    /// Whether what goes to standard error is coloured.
    pub(super) fn colour(&self) -> Colour {
        let choice = match self.colour {
            Colouring::Always => ColorChoice::Always,
            Colouring::Never => ColorChoice::Never,
            Colouring::Auto => anstream::AutoStream::choice(&std::io::stderr()),
        };
        if choice == ColorChoice::Never { Colour::Without } else { Colour::With }
    }
}
