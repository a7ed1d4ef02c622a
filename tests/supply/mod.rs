//! Where dependencies come from and on which terms: every crate that is built into the program or its tests.

use serde_json::Value;
use std::process::Command;

/// Licences that ask for no more than their text to be passed on; all are approved by the OSI or the FSF, by the lists of
/// SPDX. Anything else is for a person to read first.
const ALLOWED: [&str; 8] =
    ["0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "MIT", "Unicode-3.0", "Unlicense", "Zlib"];

const CRATES_IO: &str = "registry+https://github.com/rust-lang/crates.io-index";

#[test]
fn every_crate_has_a_licence_that_is_allowed() {
    let refused: Vec<String> = packages().iter().filter_map(refused).collect();
    assert!(refused.is_empty(), "licences to be read by a person first:\n{}", refused.join("\n"));
}

#[test]
fn every_crate_comes_from_the_registry() {
    let packages = packages();
    let others: Vec<&Value> = packages.iter().filter(|package| package["source"] != CRATES_IO).collect();
    let names: Vec<&str> = others.iter().filter_map(|package| package["name"].as_str()).collect();
    assert_eq!(names, ["fittingcards"], "crates that no lock file can hold to a checksum");
}

#[test]
fn licences_are_judged_by_what_one_may_choose() {
    let judged = |licence: &str| refused(&serde_json::json!({ "name": "x", "license": licence })).is_none();
    assert!(judged("GPL-3.0-only OR MIT"));
    assert!(!judged("GPL-3.0-only AND MIT"));
    assert!(judged("MIT/Apache-2.0"), "the form that crates had before SPDX expressions");
    assert!(!judged("MIT WITH Font-exception-2.0"));
    assert!(refused(&serde_json::json!({ "name": "x", "license": null })).is_some());
}

/// Name and licence of a crate that may not be used as it is.
fn refused(package: &Value) -> Option<String> {
    let licence = package["license"].as_str().unwrap_or_default();
    let good = spdx::Expression::parse_mode(licence, spdx::ParseMode::LAX).is_ok_and(|expression| {
        expression.evaluate(|wanted| is_allowed(&wanted.license, wanted.addition.is_some()))
    });
    (!good).then(|| format!("{} {}: {licence:?}", package["name"], package["version"]))
}

fn is_allowed(licence: &spdx::LicenseItem, with_more: bool) -> bool {
    !with_more && licence.id().is_some_and(|id| ALLOWED.contains(&id.name))
}

/// What is built on this machine, the project itself included. Crates of other systems need not be downloaded here.
fn packages() -> Vec<Value> {
    let cargo = std::env::var("CARGO").unwrap();
    let version = Command::new(&cargo).arg("-vV").output().unwrap();
    let version = String::from_utf8(version.stdout).unwrap();
    let host = version.lines().find_map(|line| line.strip_prefix("host: ")).unwrap();
    let listed = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked", "--offline", "--filter-platform", host])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    assert!(listed.status.success(), "{}", String::from_utf8_lossy(&listed.stderr));
    let listed: Value = serde_json::from_slice(&listed.stdout).unwrap();
    listed["packages"].as_array().unwrap().clone()
}
