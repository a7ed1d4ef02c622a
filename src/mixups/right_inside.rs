//! What is to be thought of where the right part agrees with a reading: that the reading is no go, or that its fitting is
//! not to be used. The right part alone settles neither.

use super::acceptance::{Need, Reading, Test, Way};
use crate::catalogue::{Fitting, InService, Status};
use crate::units::{Length, Range};

const NO_GO: &str = "the reading is outside the window that the fitting states: no go. Stop, do not loosen, keep clear; take \
                     the load on a puller first";
const ON_HOLD: &str = "its fitting is on hold: stop until told";
const WITHDRAWN: &str = "its fitting is withdrawn: do not use";
const SUPERSEDED: &str = "its fitting is superseded: build no more of it";
const STOP_NOW: &str = "fittings of this kind in the line are to be stopped now: report it";
const REPLACED: &str =
    "fittings of this kind in the line are to be inspected or replaced: see the page of the fitting";

/// Tests that are always passed, in a way that has a remark where there is something to think of. A window holds as it is
/// stated: what a reading may be off by makes no go of go, and never the other way.
pub(super) fn tests(fitting: &Fitting) -> Vec<Test> {
    let always = |words| Way { remark: Some(words), ..Way::new(Vec::new()) };
    let told = |words| Test { of: Reading::StandOut, ways: vec![always(words)], otherwise: String::new() };
    let go = Test {
        of: Reading::StandOut,
        ways: windows(fitting).into_iter().chain([always(NO_GO)]).collect(),
        otherwise: String::new(),
    };
    let said = [status(fitting.status), in_the_line(fitting.in_service)];
    [go].into_iter().chain(said.into_iter().flatten().map(told)).collect()
}

/// The ways in which a reading is go: in the window of its state, or in a state without one.
fn windows(fitting: &Fitting) -> [Way; 2] {
    let stated = fitting.stand_out.as_ref();
    let way = |state, window: Option<Range<Length>>| {
        let words = vec![state, "unknown"];
        let within =
            window.map(|window| Need::within(Reading::StandOut, window.least().mm(), window.most().mm()));
        let state = Need::Among { of: Reading::State, words };
        Way::new([state].into_iter().chain(within).collect())
    };
    [
        way("seated", stated.and_then(|stated| stated.seated)),
        way("tensioned", stated.and_then(|stated| stated.tensioned)),
    ]
}

fn status(status: Status) -> Option<&'static str> {
    match status {
        Status::Current => None,
        Status::OnHold => Some(ON_HOLD),
        Status::Withdrawn => Some(WITHDRAWN),
        Status::Superseded => Some(SUPERSEDED),
    }
}

fn in_the_line(word: Option<InService>) -> Option<&'static str> {
    match word? {
        InService::MayStay => None,
        InService::StopNow => Some(STOP_NOW),
        InService::Inspect | InService::ReplaceBy(_) => Some(REPLACED),
    }
}
