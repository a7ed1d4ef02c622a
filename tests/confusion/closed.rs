//! From a closed fitting to the gripping parts that can be in it.

use super::demo;
use fittingcards::mixups::{Closed, find, inside, inside_to_json};
use fittingcards::units::Length;

fn closed(stand_out: f64) -> Closed<'static> {
    let (body, conductor) = ("ST-4101", "messenger-95");
    Closed { body, conductor, stand_out: Length::from_mm(stand_out), tolerance: Length::from_mm(0.5) }
}

#[test]
fn a_low_stand_out_points_at_the_wrong_cone() {
    let mixups = find(demo());
    let found = inside(&mixups, &closed(0.5)).unwrap();
    assert!(found[0].fits_reading && !found[0].right);
    let right = found.iter().find(|part| part.right).unwrap();
    assert_eq!((right.part.number.as_str(), right.fits_reading), ("ST-4111", false));
}

#[test]
fn a_right_stand_out_does_not_rule_out_the_hidden_one() {
    let mixups = find(demo());
    let found = inside(&mixups, &closed(4.2)).unwrap();
    let fits: Vec<&str> =
        found.iter().filter(|part| part.fits_reading).map(|part| part.part.number.as_str()).collect();
    assert!(fits.contains(&"ST-4111") && fits.contains(&"ST-4131"), "{fits:?}");
    let json = inside_to_json(&found);
    let interval = json["inside"][0]["interval_mm"].as_array().unwrap();
    assert!(interval[0].as_f64() <= interval[1].as_f64());
}

#[test]
fn what_can_not_be_answered_says_what_there_is() {
    let mixups = find(demo());
    let no_body = Closed { body: "X-1", ..closed(1.0) };
    assert!(inside(&mixups, &no_body).unwrap_err().to_string().contains("X-1"));
    let no_wire = Closed { conductor: "rope-8", ..closed(1.0) };
    assert!(inside(&mixups, &no_wire).unwrap_err().to_string().contains("messenger-95"));
    assert!(inside(&mixups, &closed(f64::NAN)).is_err());
}
