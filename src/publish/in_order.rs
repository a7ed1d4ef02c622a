//! Work on many items side by side, whose results come one after the other.

use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

/// Does `work` on each item, on all threads, and gives what comes of it to `hand_on` in the order of the items.
///
/// Items are begun in their order, so that few results wait for an earlier one, and a thread is only idle where there is
/// no item left.
///
/// # Errors
/// The first in the order of the items; none is begun after it is known.
pub(super) fn in_order<T: Sync, R: Send, E: Send>(
    items: &[T],
    work: &(impl Fn(&T) -> Result<R, E> + Sync + ?Sized),
    hand_on: impl FnMut(R) + Send,
) -> Result<(), E> {
    let begun = AtomicUsize::new(0);
    let line = Mutex::new(Line { next: 0, early: BTreeMap::new(), hand_on, failed: None });
    let until_none_is_left = || {
        while let Some((index, item)) = next(items, &begun) {
            let done = work(item);
            let mut line = line.lock().unwrap_or_else(PoisonError::into_inner);
            line.take(index, done);
            if line.failed.is_some() {
                break;
            }
        }
    };
    (0..rayon::current_num_threads()).into_par_iter().with_max_len(1).for_each(|_| until_none_is_left());
    let line = line.into_inner().unwrap_or_else(PoisonError::into_inner);
    line.failed.map_or(Ok(()), |(_, error)| Err(error))
}

fn next<'a, T>(items: &'a [T], begun: &AtomicUsize) -> Option<(usize, &'a T)> {
    let index = begun.fetch_add(1, Ordering::Relaxed);
    items.get(index).map(|item| (index, item))
}

/// What is done and can't be handed on yet.
struct Line<R, E, H> {
    /// Whose turn it is.
    next: usize,
    early: BTreeMap<usize, R>,
    hand_on: H,
    failed: Option<(usize, E)>,
}

impl<R, E, H: FnMut(R)> Line<R, E, H> {
    fn take(&mut self, index: usize, done: Result<R, E>) {
        match done {
            Ok(result) => drop(self.early.insert(index, result)),
            Err(_) if self.failed.as_ref().is_some_and(|(first, _)| *first < index) => {}
            Err(error) => self.failed = Some((index, error)),
        }
        while let Some(result) = self.early.remove(&self.next) {
            (self.hand_on)(result);
            self.next += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::in_order;
    use std::thread::sleep;
    use std::time::Duration;

    /// Earlier items take longer, so that results come in the wrong order where nothing puts them right.
    fn with_threads(
        threads: usize,
        work: impl Fn(&u64) -> Result<u64, u64> + Sync,
    ) -> (Result<(), u64>, Vec<u64>) {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        let items: Vec<u64> = (0..40).collect();
        let mut handed_on = Vec::new();
        let slow = |item: &u64| {
            sleep(Duration::from_millis(3 - item % 4));
            work(item)
        };
        let done = pool.install(|| in_order(&items, &slow, |result| handed_on.push(result)));
        (done, handed_on)
    }

    #[test]
    fn results_come_in_the_order_of_the_items() {
        for threads in [1, 2, 7] {
            let (done, handed_on) = with_threads(threads, |item| Ok(item * 10));
            assert_eq!(done, Ok(()));
            assert_eq!(handed_on, (0..40).map(|item| item * 10).collect::<Vec<_>>(), "{threads} threads");
        }
    }

    #[test]
    fn the_first_failure_is_told_and_nothing_after_it_handed_on() {
        for threads in [1, 2, 7] {
            let (done, handed_on) =
                with_threads(threads, |&item| if item < 6 { Ok(item) } else { Err(item) });
            assert_eq!(done, Err(6), "{threads} threads");
            assert_eq!(handed_on, [0, 1, 2, 3, 4, 5]);
        }
    }
}
