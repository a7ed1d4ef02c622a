//! Which gauges there are, and what the index says of what has none, against the records as they are written.

use super::made::{DEMO, Made};
use super::records::{is_current, records};
use crate::fixtures::disk;
use fittingcards::source::{FilePath, Folder, World, WorldError};
use fittingcards::training::{self, Beside, Gauge};
use serde_json::Value;
use std::sync::Arc;

/// The demo, in which each spreading cone states the tolerance of its hole.
struct WithTolerances;

impl World for WithTolerances {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        disk("content").files(folder)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        let bytes = disk("content").read(file)?;
        match std::str::from_utf8(&bytes) {
            Ok(text) => {
                let stated = "wires_through_hole:";
                Ok(text
                    .replace(stated, &format!("hole_diameter_tolerance_mm: 0.1, {stated}"))
                    .as_bytes()
                    .into())
            }
            Err(_) => Ok(bytes),
        }
    }

    fn source_date_epoch(&self) -> Option<&str> {
        None
    }

    fn display(&self, file: &FilePath) -> String {
        file.path.to_string()
    }
}

/// What the index says of what has no gauge.
fn ungauged(made: &Made, gauges: &[Gauge]) -> Vec<Value> {
    let plates = gauges.iter().map(|gauge| (gauge.name.clone(), gauge.about.clone())).collect();
    let (pages, _) = training::pages(made.input(), &Beside { plates, ..Beside::default() });
    let index = pages.into_iter().find(|page| page.name == "index.html").unwrap();
    let text = made.design.layouts.fill(index.layout, &index.values).unwrap();
    for gauge in gauges {
        assert!(text.contains(&format!("gauges/{}.dxf", gauge.name)), "{}", gauge.name);
    }
    index.values["ungauged"].as_array().unwrap().clone()
}

fn names<'a>(line: &'a Value, of: &str) -> Vec<&'a str> {
    let numbers = line["numbers"].as_str().filter(|_| line["of"] == of);
    numbers.map(|numbers| numbers.split(", ").collect()).unwrap_or_default()
}

#[test]
fn each_fitting_has_a_gauge_of_its_stand_out_or_the_index_says_why_not() {
    let (gauges, findings) = training::gauges(DEMO.input());
    assert!(findings.is_empty(), "{:?}", findings.sorted());
    let lines = ungauged(&DEMO, &gauges);
    let (mut made, mut without) = (0, 0);
    for (number, fitting) in records("fittings").into_iter().filter(|(_, fitting)| is_current(fitting)) {
        let has = gauges.iter().any(|gauge| gauge.name == format!("stand-out-{number}"));
        let stated = &fitting["stand_out"];
        let is_measured = stated["from"] != "none" && !stated["seated_mm"].is_null();
        let said: Vec<&Value> =
            lines.iter().filter(|line| names(line, "Stand-out of").contains(&&*number)).collect();
        assert_eq!((has, said.len()), (is_measured, usize::from(!is_measured)), "{number}: {said:?}");
        made += usize::from(has);
        without += usize::from(!has);
    }
    assert!(made > 5 && without > 5, "{made} with a gauge, {without} without");
}

/// ST-4144 has a hole of 6.95 mm by its record: with 0.1 mm either way, 6.85 goes in and 7.05 does not.
#[test]
fn the_hole_of_a_spreading_cone_has_a_gauge_where_its_tolerance_is_stated() {
    let cones = |lines: &[Value]| -> usize { lines.iter().map(|line| names(line, "Bore of").len()).sum() };
    let of_hole = |gauges: &[Gauge]| {
        let texts = ["GO 6.85", "NO GO 7.05", "ST-4141"];
        gauges.iter().filter(|gauge| texts.iter().all(|text| gauge.dxf.contains(text))).count()
    };
    let (gauges, _) = training::gauges(DEMO.input());
    assert_eq!((cones(&ungauged(&DEMO, &gauges)), of_hole(&gauges)), (4, 0), "the demo states no tolerance");
    let stated = Made::of(&WithTolerances);
    let (gauges, _) = training::gauges(stated.input());
    assert_eq!((cones(&ungauged(&stated, &gauges)), of_hole(&gauges)), (0, 1));
}

/// The running face of contact wire wears and its width does not; ST-4201 bears on the width by its record. Gauged over its
/// height, a worn wire would pass as a smaller one.
#[test]
fn a_gauge_of_contact_wire_says_which_way_it_is_held() {
    let (gauges, _) = training::gauges(DEMO.input());
    let of_wire: Vec<String> = gauges
        .iter()
        .filter(|gauge| gauge.name.starts_with("wire-"))
        .map(|gauge| gauge.form.values["how"].to_string())
        .collect();
    let held = of_wire.iter().filter(|how| how.contains("Upper edge, across the width: "));
    assert_eq!(held.count(), of_wire.iter().filter(|how| how.contains("Contact wire")).count());
    assert!(of_wire.iter().any(|how| how.contains("Contact wire") && how.contains("NO GO")), "{of_wire:?}");
}
