#![doc = include_str!("../explain/codes/notice-dates-contradict.md")]

use super::Context;
use crate::catalogue::Notice;
use crate::diagnostics::{Finding, Findings};
use jiff::civil::Date;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for notice in context.catalogue.notices.values() {
        let before = |day: Date| (day < notice.date).then(|| format!("before its own date, {}", notice.date));
        let early =
            notice.effective.and_then(before).map(|words| ("effective", "it holds from a day", words));
        findings.extend(early.map(|said| finding(notice, said)));
        let early = notice.action_by.and_then(|day| {
            let in_force = notice.effective.filter(|from| day < *from);
            let words = in_force.map(|from| format!("before it holds, {from}"));
            words.or_else(|| before(day))
        });
        findings.extend(
            early.map(|words| finding(notice, ("action_by", "it is to be carried out by a day", words))),
        );
    }
}

fn finding(notice: &Notice, (field, what, words): (&str, &str, String)) -> Finding {
    Finding::warning("notice-dates-contradict", notice.origin.of(field), format!("{what} that lies {words}"))
        .record(&notice.number)
        .field(field)
        .help("see which of the days is right")
}
