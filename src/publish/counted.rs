//! How much of a stage is done, told as the run goes.

use super::options::{Progress, Stage};
use std::sync::atomic::{AtomicUsize, Ordering};

/// Counts what is done, and tells how far the run has come.
pub(super) struct Counted<'a> {
    progress: &'a (dyn Fn(Progress) + Sync),
    stage: Stage,
    done: AtomicUsize,
    of: usize,
}

impl<'a> Counted<'a> {
    pub(super) fn new(progress: &'a (dyn Fn(Progress) + Sync), stage: Stage, of: usize) -> Self {
        let counted = Self { progress, stage, done: AtomicUsize::new(0), of };
        counted.tell(0);
        counted
    }

    pub(super) fn one_more(&self) {
        self.tell(self.done.fetch_add(1, Ordering::Relaxed) + 1);
    }

    fn tell(&self, done: usize) {
        (self.progress)(Progress { stage: self.stage, done, of: self.of });
    }
}
