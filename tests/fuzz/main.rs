//! The short run: every input that once failed, then seeds with chance changes, the same each time. Each target runs in
//! a process of its own, which may take 1 GiB, and 10 s for an input.

mod limits;
mod mutate;
mod regressions;
mod targets;

use libtest_mimic::{Arguments, Failed, Trial};
use mutate::Pool;
use std::path::{Path, PathBuf};
use targets::{TARGETS, Target};

/// What a process is told that is to try a target.
const TRY: &str = "FITTINGCARDS_FUZZ";

fn main() {
    if let Ok(name) = std::env::var(TRY) {
        return attempt(targets::named(&name).expect("a target of this name"));
    }
    let trials = TARGETS.iter().map(|target| Trial::test(format!("fuzz::{}", target.name), || apart(target)));
    libtest_mimic::run(&Arguments::from_args(), trials.collect()).exit();
}

/// Tries a target in a process of its own.
fn apart(target: &'static Target) -> Result<(), Failed> {
    let output = limits::command().env(TRY, target.name).output()?;
    if output.status.success() {
        return Ok(());
    }
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    Err(format!("{}, at the input {}\n{said}", output.status, input_of(target).display()).into())
}

fn attempt(target: &Target) {
    let mut attempts = limits::Attempts::new(&input_of(target));
    for input in regressions::of(target) {
        attempts.one(target, &input);
    }
    let seeds = (target.seeds)();
    let pool = Pool::new(seeds);
    let mut dice = fastrand::Rng::with_seed(0);
    for _ in 0..target.short {
        let input = pool.changed(&pool.seed(&mut dice), &mut dice);
        attempts.one(target, &input);
    }
}

/// Where the input that is being tried lies.
fn input_of(target: &Target) -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{}.input", target.name))
}
