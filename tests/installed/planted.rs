//! Contradictions planted among sound rows: all are found, and nothing else is.

use super::{Line, kinds};
use crate::fixtures::root;
use serde_yaml::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

/// Where a fitting's own part stands out, in millimetres, worked out here from the records as they are written and the
/// geometry alone: never by the code that is tried.
#[derive(Debug, Clone, Copy)]
struct Own {
    least: f64,
    most: f64,
    deepest: f64,
}

/// By hand from the statement of the geometry, with the measurements of the demo's records. Collets: bore and its
/// tolerance, wire and its tolerance, slits, half-angle, stand-out at bore. Wedges: mouth, wedge, wire, taper, travel.
fn own(fitting: &str, records: &Records) -> Own {
    match fitting {
        "ST-4100" => records.collet("ST-4103", "messenger-120"),
        "ST-4110" => records.collet("ST-4111", "messenger-95"),
        "ST-4120" => records.collet("ST-4121", "messenger-cu-120"),
        "ST-4130" => records.collet("ST-4131", "messenger-150"),
        "ST-4200" => records.wedge("ST-4201", "ST-4203", "contact-120"),
        "ST-4210" => records.wedge("ST-4201", "ST-4213", "contact-100"),
        _ => records.wedge("ST-4231", "ST-4233", "stay-50"),
    }
}

const FITTINGS: [&str; 7] = ["ST-4100", "ST-4110", "ST-4120", "ST-4130", "ST-4200", "ST-4210", "ST-4230"];

/// Records by id or number, as another YAML reader gives them.
struct Records(BTreeMap<String, Value>);

impl Records {
    fn read() -> Self {
        let mut records = BTreeMap::new();
        for folder in ["content/parts", "content/conductors"] {
            for file in std::fs::read_dir(root().join(folder)).unwrap() {
                let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
                for document in serde_yaml::Deserializer::from_str(&text) {
                    let record: Value = serde::Deserialize::deserialize(document).unwrap();
                    let name =
                        record.get("number").or(record.get("id")).unwrap().as_str().unwrap().to_owned();
                    records.insert(name, record);
                }
            }
        }
        Self(records)
    }

    fn number(&self, record: &str, path: &[&str]) -> f64 {
        let found = path.iter().try_fold(&self.0[record], |value, key| value.get(key));
        found.and_then(Value::as_f64).unwrap_or(0.0)
    }

    /// Overall diameter of a strand of equal wires in full layers, or the width of a grooved wire.
    fn across(&self, wire: &str) -> f64 {
        let stranded = ["construction", "stranded"];
        let wires = self.number(wire, &[stranded[0], stranded[1], "wires"]);
        let diameter = self.number(wire, &[stranded[0], stranded[1], "wire_diameter_mm"]);
        let layers = [(7.0, 3.0), (19.0, 5.0), (37.0, 7.0)];
        match layers.iter().find(|(count, _)| *count == wires) {
            Some((_, across)) => across * diameter,
            None => self.number(wire, &["construction", "grooved", "width_mm"]),
        }
    }

    fn tolerance(&self, wire: &str) -> f64 {
        self.number(wire, &["tolerance", "overall_diameter_mm"])
    }

    fn collet(&self, cone: &str, wire: &str) -> Own {
        let of = |key: &str| self.number(cone, &["geometry", "collet", key]);
        let clearance = of("bore_mm") - self.across(wire);
        let shut = of("slits") * of("slit_width_mm") / std::f64::consts::PI;
        let off = of("bore_tolerance_mm") + self.tolerance(wire);
        let out = |clearance: f64| {
            of("stand_out_at_bore_mm") - clearance.min(shut) / (2.0 * of("half_angle_deg").to_radians().tan())
        };
        Own { least: out(clearance + off), most: out(clearance - off), deepest: out(shut) }
    }

    fn wedge(&self, body: &str, wedge: &str, wire: &str) -> Own {
        let of = |key: &str| self.number(body, &["geometry", "wedge_body", key]);
        let thickness = self.number(wedge, &["geometry", "wedge", "thickness_mm"]);
        let slope = of("taper_deg").to_radians().tan();
        let depth = (of("mouth_mm") - thickness - self.across(wire)) / slope;
        let off = self.tolerance(wire) / slope;
        let travel = of("travel_mm");
        Own { least: -(depth + off).min(travel), most: -(depth - off).min(travel), deepest: -travel }
    }
}

/// A row of a list and whether its readings contradict.
fn row(nth: usize, is_planted: bool, records: &Records, random: &mut fastrand::Rng) -> String {
    let fitting = FITTINGS[nth % FITTINGS.len()];
    let own = own(fitting, records);
    let between = |random: &mut fastrand::Rng, least: f64, most: f64| least + random.f64() * (most - least);
    // The part stands somewhere in its interval, and the reading is off by less than half a millimetre.
    let stands = between(random, own.least, own.most);
    let seated = stands + between(random, -0.49, 0.49);
    // Line tension draws it in by 1 mm, and no further than it goes: within the windows of all these fittings.
    let tensioned = (stands - 1.0).max(own.deepest) + between(random, -0.49, 0.49);
    let reading = match (is_planted, nth % 2) {
        (false, _) => seated,
        (true, 0) => own.most + between(random, 0.52, 3.0),
        (true, _) => own.least - between(random, 0.52, 3.0),
    };
    let tensioned = if nth.is_multiple_of(3) { format!("{tensioned:.3}") } else { String::new() };
    format!("Mast {nth},{fitting},{reading:.3},{tensioned},2026-09-01")
}

#[test]
fn twenty_contradictions_among_five_hundred_sound_rows_are_found_and_no_other() {
    let records = Records::read();
    for seed in 0..8 {
        let mut random = fastrand::Rng::with_seed(seed);
        let mut planted = BTreeSet::new();
        while planted.len() < 20 {
            planted.insert(random.usize(..520));
        }
        let mut list = "place,fitting,seated_mm,tensioned_mm,built\n".to_owned();
        for nth in 0..520 {
            let _ = writeln!(list, "{}", row(nth, planted.contains(&nth), &records, &mut random));
        }
        let line = Line::with_list(&list);
        assert_eq!((line.found(), line.installed.len()), (vec![], 520));
        let contradicts = |(_, reasons): &(String, Vec<String>)| reasons.iter().any(|kind| kind == "reading");
        let found: BTreeSet<String> =
            kinds(&line.follow_up(None)).into_iter().filter(contradicts).map(|(place, _)| place).collect();
        let expected: BTreeSet<String> = planted.iter().map(|nth| format!("Mast {nth}")).collect();
        assert_eq!(found, expected, "seed {seed}");
    }
}
