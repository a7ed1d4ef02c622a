#![doc = include_str!("../explain/codes/torque-unlike-others.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Fitting, Tightening};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::Thread;
use crate::units::{Range, Torque};
use std::collections::{BTreeMap, BTreeSet};

/// How many times as much as all others is not taken for another design. Common practice, no source.
const UNLIKE: f64 = 3.0;

struct Stated<'a> {
    fitting: &'a Fitting,
    nth: usize,
    thread: Thread,
    torque: Range<f64>,
}

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut by_thread: BTreeMap<(u64, u64), Vec<Stated<'_>>> = BTreeMap::new();
    for one in built(context).flat_map(|fitting| stated(fitting)) {
        let key = [one.thread.diameter, one.thread.pitch].map(|length| length.mm().to_bits());
        by_thread.entry(key.into()).or_default().push(one);
    }
    for alike in by_thread.values() {
        let others = Others::of(alike);
        for one in alike {
            findings.extend(others.range(one.fitting).and_then(|range| unlike(one, range, context)));
        }
    }
}

fn unlike(one: &Stated<'_>, others: Range<f64>, context: Context<'_>) -> Option<Finding> {
    if one.torque.least() * UNLIKE >= others.least() && one.torque.most() <= UNLIKE * others.most() {
        return None;
    }
    let field = format!("tightening.{}.torque_Nm", one.nth);
    let message = format!("the torque on {} is far from that of other fittings", one.thread_words());
    let finding = on_fitting(Severity::Warning, "torque-unlike-others", one.fitting, &field, message)
        .found(numerals(context).range(one.torque, 1, "N·m"))
        .expected(format!("such as {}", numerals(context).range(others, 1, "N·m")));
    Some(finding.help("compare it with the specification: a digit or the point may be wrong"))
}

/// The torques of one thread, those with the least and those with the most first.
struct Others<'s, 'a> {
    by_least: Vec<&'s Stated<'a>>,
    by_most: Vec<&'s Stated<'a>>,
    fittings: usize,
}

impl<'s, 'a> Others<'s, 'a> {
    fn of(alike: &'s [Stated<'a>]) -> Self {
        let (mut by_least, mut by_most): (Vec<_>, Vec<_>) = (alike.iter().collect(), alike.iter().collect());
        by_least.sort_by(|one, other| one.torque.least().total_cmp(&other.torque.least()));
        by_most.sort_by(|one, other| other.torque.most().total_cmp(&one.torque.most()));
        let fittings = alike.iter().map(|one| &one.fitting.number).collect::<BTreeSet<_>>().len();
        Self { by_least, by_most, fittings }
    }

    /// From the least to the most of all other fittings; `None` with fewer than two, where any of them can be wrong.
    fn range(&self, fitting: &Fitting) -> Option<Range<f64>> {
        let is_other = |other: &&&Stated<'_>| other.fitting.number != fitting.number;
        let (least, most) = (self.by_least.iter().find(is_other)?, self.by_most.iter().find(is_other)?);
        (self.fittings > 2).then(|| Range::between(least.torque.least(), most.torque.most()))
    }
}

impl Stated<'_> {
    fn thread_words(&self) -> &str {
        self.fitting.tightening[self.nth].thread.trim()
    }
}

fn stated(fitting: &Fitting) -> impl Iterator<Item = Stated<'_>> {
    let all = fitting.tightening.iter().enumerate();
    all.filter_map(move |(nth, Tightening { torque, thread, .. })| {
        let torque = torque.as_ref()?.map(Torque::nm);
        Some(Stated { fitting, nth, thread: Thread::of(thread)?, torque })
    })
}
