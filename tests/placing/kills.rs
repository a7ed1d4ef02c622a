//! Runs that are killed at any moment. KILLS=200 kills more often than the usual 20 times.

use super::{Chance, Shown, Site};
use std::path::PathBuf;
use std::process::Child;
use std::thread::sleep;
use std::time::{Duration, Instant};

fn count() -> usize {
    std::env::var("KILLS").map_or(20, |count| count.parse().unwrap())
}

/// Waits for something that a run does, or for its end.
fn wait_for(child: &mut Child, done: impl Fn() -> bool) {
    while !done() && child.try_wait().unwrap().is_none() {}
}

/// Half of the kills come at any moment of a run; half when it begins to put files in place, or soon after.
fn kill(site: &Site, turn: usize, chance: &mut Chance, whole_run: Duration, placing: &dyn Fn() -> bool) {
    let mut child = site.begin();
    if turn.is_multiple_of(2) {
        sleep(whole_run.mul_f64(chance.next()));
    } else {
        wait_for(&mut child, placing);
        let soon = if turn % 4 == 1 { Duration::ZERO } else { Duration::from_millis(3) };
        sleep(soon.mul_f64(chance.next()));
    }
    child.kill().unwrap();
    child.wait().unwrap();
}

fn duration(site: &Site) -> Duration {
    let start = Instant::now();
    site.render();
    start.elapsed()
}

#[test]
fn an_output_is_the_earlier_or_the_new_one_at_every_moment() {
    let site = Site::rendered();
    let (whole_run, mut chance) = (duration(&site), Chance(1));
    let staged: PathBuf = site.path(".output.fittingcards/new/manifest.json");
    for turn in 0..count() {
        site.change_hands(turn);
        kill(&site, turn, &mut chance, whole_run, &|| staged.exists());
        assert!(matches!(site.shown(), Shown::Whole(_)), "{turn}: {:?}", site.shown());
    }
    site.render();
    site.assert_holds(&["output"]);
}

#[test]
fn an_output_that_others_use_too_is_whole_or_says_that_it_is_being_replaced() {
    let site = Site::rendered();
    site.write("output/mine/notes.txt", "mine");
    let (whole_run, mut chance) = (duration(&site), Chance(2));
    let manifest = site.output().join("manifest.json");
    let mut replaced = 0;
    for turn in 0..count() {
        site.change_hands(turn);
        kill(&site, turn, &mut chance, whole_run, &|| !manifest.exists());
        match site.shown() {
            Shown::Whole(_) => {}
            Shown::BeingReplaced => replaced += 1,
            other => panic!("{turn}: {other:?}"),
        }
        if turn % 4 == 3 {
            site.render();
            assert!(matches!(site.shown(), Shown::Whole(_)), "{turn}: {:?}", site.shown());
            site.assert_holds(&["output"]);
            assert!(!site.output().join("manifest.being-replaced.json").exists());
        }
    }
    assert!(replaced > 0, "no kill came while files were replaced: nothing was tried");
    assert_eq!(site.read("output/mine/notes.txt"), "mine");
}

#[test]
fn a_first_output_is_there_whole_or_not_at_all() {
    let (site, mut chance) = (Site::new(), Chance(3));
    let whole_run = duration(&site);
    let staged = site.path(".output.fittingcards/new/manifest.json");
    for turn in 0..count() / 2 {
        std::fs::remove_dir_all(site.output()).unwrap_or_default();
        kill(&site, turn, &mut chance, whole_run, &|| staged.exists());
        assert!(matches!(site.shown(), Shown::Nothing | Shown::Whole(_)), "{turn}: {:?}", site.shown());
    }
    site.render();
    site.assert_holds(&["output"]);
}
