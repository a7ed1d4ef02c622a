//! The bar that shows how far a run has come: on a terminal, and nothing in a pipe.

use super::options::{Format, Globals};
use crate::publish::{Progress, Stage};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::io::IsTerminal;

/// A bar on standard error.
pub(super) struct Bar {
    bar: ProgressBar,
}

impl Bar {
    /// A bar where standard error is a terminal, else one that draws nothing.
    pub(super) fn new(globals: &Globals) -> Self {
        if globals.quiet || globals.format == Format::Json || !std::io::stderr().is_terminal() {
            return Self { bar: ProgressBar::hidden() };
        }
        let bar = ProgressBar::with_draw_target(None, ProgressDrawTarget::stderr());
        if let Ok(style) = ProgressStyle::with_template("{msg:<24} {wide_bar} {pos}/{len}") {
            bar.set_style(style);
        }
        Self { bar }
    }

    /// Shows how far the run has come.
    pub(super) fn show(&self, progress: Progress) {
        self.bar.set_message(words(progress.stage));
        self.bar.set_length(progress.of as u64);
        self.bar.set_position(progress.done as u64);
    }

    /// Takes the bar off the screen.
    pub(super) fn clear(&self) {
        self.bar.finish_and_clear();
    }
}

fn words(stage: Stage) -> &'static str {
    match stage {
        Stage::Records => "reading and checking",
        Stage::Cards => "drawing cards",
        Stage::Tags => "drawing kit tags",
        Stage::Booklet => "writing the booklet",
        Stage::Training => "making training sheets",
        Stage::Output => "putting files in place",
    }
}
