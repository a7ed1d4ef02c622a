//! Several runs at once into one output.

use super::{Shown, Site, said};
use std::process::Stdio;

/// Each run either is done or says that another one is writing.
fn at_once(site: &Site, runs: usize) {
    let begin = |_| site.rendering().stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let children: Vec<_> = (0..runs).map(begin).collect();
    let ended: Vec<_> = children.into_iter().map(|child| child.wait_with_output().unwrap()).collect();
    for output in &ended {
        let kept_out = output.status.code() == Some(2) && said(output).contains("another run is writing");
        assert!(output.status.success() || kept_out, "{}", said(output));
    }
    assert!(ended.iter().any(|output| output.status.success()), "one of them gets through");
    assert!(matches!(site.shown(), Shown::Whole(_)), "{:?}", site.shown());
    site.assert_holds(&["output"]);
}

#[test]
fn two_and_four_runs_leave_one_whole_output() {
    for others in [None, Some("output/mine.txt")] {
        let site = Site::rendered();
        others.inspect(|path| site.write(path, "mine"));
        for runs in [2, 4] {
            site.change_hands(runs);
            at_once(&site, runs);
        }
        others.inspect(|path| assert_eq!(site.read(path), "mine"));
    }
}

#[test]
fn two_first_runs_leave_one_whole_output() {
    let site = Site::new();
    at_once(&site, 2);
}
