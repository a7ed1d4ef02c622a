//! Making items, and meanwhile the sheets that they are printed on.

use super::clock::Waiting;
use super::in_order::in_order;
use super::made::{Making, path};
use super::options::RenderError;
use crate::diagnostics::{Finding, Findings};
use crate::sheets::{self, PrintItem, SheetFile};
use std::iter;
use std::panic::resume_unwind;
use std::sync::mpsc::sync_channel;
use std::thread::{self, Scope, ScopedJoinHandle};

/// Items that wait for the sheets at most; what is made faster than it is printed waits no longer than that.
const WAITING: usize = 32;

/// What makes one item, with what is found in it.
pub(super) type Make<'a, T, P> = dyn Fn(&T) -> Result<(Option<P>, Findings), RenderError> + Sync + 'a;

/// A file of sheets whose items are made, and whose last sheets may still be in hand.
pub(super) struct Begun<'scope> {
    findings: Findings,
    in_hand: Option<ScopedJoinHandle<'scope, Result<Option<Finding>, RenderError>>>,
}

impl Begun<'_> {
    /// Waits for the sheets; gives all that was found.
    pub(super) fn finish(self) -> Result<Findings, RenderError> {
        let mut findings = self.findings;
        if let Some(sheets) = self.in_hand {
            findings.extend(sheets.join().unwrap_or_else(|panic| resume_unwind(panic))?);
        }
        Ok(findings)
    }
}

impl Making<'_> {
    /// Makes an item from each of these and a file of sheets of them.
    pub(super) fn with_sheets<T: Sync, P: Into<PrintItem> + Send>(
        &self,
        file: &SheetFile,
        from: &[T],
        make: &Make<'_, T, P>,
    ) -> Result<Findings, RenderError> {
        thread::scope(|scope| self.begin_sheets(scope, file, from, make)?.finish())
    }

    /// Makes an item from each of these, and meanwhile a file of sheets of them. With one job all is done by one thread;
    /// with more, the file may be brought to its end while the next one is begun.
    pub(super) fn begin_sheets<'scope, 'env, T: Sync, P: Into<PrintItem> + Send + 'env>(
        &'env self,
        scope: &'scope Scope<'scope, 'env>,
        file: &'env SheetFile,
        from: &[T],
        make: &Make<'_, T, P>,
    ) -> Result<Begun<'scope>, RenderError> {
        if rayon::current_num_threads() == 1 {
            return self.by_one_thread(file, from, make);
        }
        let (sender, receiver) = sync_channel(WAITING);
        let count = from.len();
        let sheets = scope.spawn(move || self.sheets(file, count, receiver.into_iter()));
        let findings = self.side_by_side(from, make, |item| {
            // Where the sheets have stopped, their own fault says why.
            let _ = sender.send(item);
        })?;
        Ok(Begun { findings, in_hand: Some(sheets) })
    }

    /// Makes an item from each of these side by side and hands them on in order, until something stops the run.
    pub(super) fn side_by_side<T: Sync, P: Send>(
        &self,
        from: &[T],
        make: &Make<'_, T, P>,
        mut hand_on: impl FnMut(P) + Send,
    ) -> Result<Findings, RenderError> {
        let mut findings = Findings::new();
        let take = |made| self.taken(made, &mut findings).into_iter().for_each(&mut hand_on);
        in_order(from, make, take)?;
        Ok(findings)
    }

    fn by_one_thread<'scope, T, P: Into<PrintItem>>(
        &self,
        file: &SheetFile,
        from: &[T],
        make: &Make<'_, T, P>,
    ) -> Result<Begun<'scope>, RenderError> {
        let (mut findings, mut fault, mut from_each) = (Findings::new(), None, from.iter());
        let mut next = || {
            from_each.by_ref().find_map(|from| match make(from) {
                Ok(made) => self.taken(made, &mut findings).map(Some),
                Err(failed) => {
                    fault = Some(failed);
                    Some(None)
                }
            })
        };
        let mut items = iter::from_fn(|| next().flatten()).fuse();
        let found = self.sheets(file, from.len(), &mut items);
        // What no sheet has room for is looked over too.
        items.for_each(drop);
        fault.map_or(Ok(()), Err)?;
        findings.extend(found?);
        Ok(Begun { findings, in_hand: None })
    }

    /// What was made, where nothing stops the run; what was found goes to the findings.
    fn taken<P>(&self, (item, found): (Option<P>, Findings), findings: &mut Findings) -> Option<P> {
        findings.extend(found.into_iter().filter(|finding| self.prepared.is_news(finding)));
        item.filter(|_| !self.stopped())
    }

    fn sheets<P: Into<PrintItem>>(
        &self,
        file: &SheetFile,
        count: usize,
        items: impl Iterator<Item = P>,
    ) -> Result<Option<Finding>, RenderError> {
        let mut items = Waiting::new(items);
        let options = self.prepared.sheets(file.kind);
        let pdf = self.clock.pdf(&mut items, |items| sheets::pdf(file, count, items, &options));
        self.sheet(&path(file), pdf)
    }
}
