//! Where the time goes, added up over all threads.

use super::options::Timings;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// Adds up the time of each kind of work.
#[derive(Debug)]
pub(super) struct Clock {
    start: Instant,
    records: AtomicU64,
    drawing: AtomicU64,
    pictures: AtomicU64,
    pdf: AtomicU64,
    booklet: AtomicU64,
    output: AtomicU64,
}

impl Clock {
    pub(super) fn start() -> Self {
        let zero = || AtomicU64::new(0);
        Self {
            start: Instant::now(),
            records: zero(),
            drawing: zero(),
            pictures: zero(),
            pdf: zero(),
            booklet: zero(),
            output: zero(),
        }
    }

    pub(super) fn records<T>(&self, work: impl FnOnce() -> T) -> T {
        timed(&self.records, work)
    }

    pub(super) fn drawing<T>(&self, work: impl FnOnce() -> T) -> T {
        timed(&self.drawing, work)
    }

    pub(super) fn pictures<T>(&self, work: impl FnOnce() -> T) -> T {
        timed(&self.pictures, work)
    }

    pub(super) fn booklet<T>(&self, work: impl FnOnce() -> T) -> T {
        timed(&self.booklet, work)
    }

    pub(super) fn output<T>(&self, work: impl FnOnce() -> T) -> T {
        timed(&self.output, work)
    }

    /// Time on sheets, less the time that their cards were waited for.
    pub(super) fn pdf<I, T>(&self, cards: &mut Waiting<I>, work: impl FnOnce(&mut Waiting<I>) -> T) -> T {
        let start = Instant::now();
        let made = work(cards);
        add(&self.pdf, start.elapsed().saturating_sub(cards.waited));
        made
    }

    pub(super) fn timings(&self) -> Timings {
        let read = |sum: &AtomicU64| Duration::from_nanos(sum.load(Ordering::Relaxed));
        Timings {
            records: read(&self.records),
            drawing: read(&self.drawing),
            pictures: read(&self.pictures),
            pdf: read(&self.pdf),
            booklet: read(&self.booklet),
            output: read(&self.output),
            whole: self.start.elapsed(),
        }
    }
}

fn timed<T>(sum: &AtomicU64, work: impl FnOnce() -> T) -> T {
    let start = Instant::now();
    let made = work();
    add(sum, start.elapsed());
    made
}

fn add(sum: &AtomicU64, time: Duration) {
    sum.fetch_add(u64::try_from(time.as_nanos()).unwrap_or(u64::MAX), Ordering::Relaxed);
}

/// Items that may have to be waited for, and how long they were.
#[derive(Debug)]
pub(super) struct Waiting<I> {
    items: I,
    waited: Duration,
}

impl<I> Waiting<I> {
    pub(super) fn new(items: I) -> Self {
        Self { items, waited: Duration::ZERO }
    }
}

impl<I: Iterator> Iterator for Waiting<I> {
    type Item = I::Item;

    fn next(&mut self) -> Option<I::Item> {
        let start = Instant::now();
        let item = self.items.next();
        self.waited += start.elapsed();
        item
    }
}
