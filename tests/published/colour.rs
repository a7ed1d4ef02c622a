//! Colour differences, colour vision and contrast against published values.

use fittingcards::colour::{Lab, Model, Sight, Srgb, ciede2000, contrast, simulate};

fn rows(table: &'static str) -> Vec<csv::StringRecord> {
    csv::Reader::from_reader(table.as_bytes()).records().map(|row| row.expect("a row")).collect()
}

fn number(row: &csv::StringRecord, column: usize) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("column {column} of {row:?}"))
}

fn colour(hex: &str) -> Srgb {
    let channel = |at: usize| u8::from_str_radix(&hex[at..at + 2], 16).expect("two hexadecimal digits");
    Srgb { red: channel(1), green: channel(3), blue: channel(5) }
}

/// Sharma, Wu, Dalal 2005: "The CIEDE2000 Color-Difference Formula", table 1, to four decimals.
#[test]
fn ciede2000_of_every_published_pair() {
    let rows = rows(include_str!("ciede2000_pairs.csv"));
    assert_eq!(rows.len(), 34);
    for row in &rows {
        let lab =
            |at: usize| Lab { lightness: number(row, at), a: number(row, at + 1), b: number(row, at + 2) };
        let (there, back) = (ciede2000(lab(1), lab(4)), ciede2000(lab(4), lab(1)));
        // DIFFERENCE: pair 14 lies on a jump of the formula; rounding decides between two values.
        let published = if &row[0] == "14" { vec![4.8045, 4.7461] } else { vec![number(row, 7)] };
        for found in [there, back] {
            assert!(published.iter().any(|value| (found - value).abs() < 0.000_05), "{found} {row:?}");
        }
    }
}

/// Machado, Oliveira, Fernandes 2009, severity 1.0 on linear RGB, as another library computes it.
#[test]
fn colours_by_machado_within_one_step_of_a_channel() {
    hold(include_str!("colour_vision_simulated.csv"), Model::Machado2009);
}

/// Brettel, Viénot, Mollon 1997 with the display's white as neutral, as another library computes it.
#[test]
fn colours_by_brettel_within_one_step_of_a_channel() {
    hold(include_str!("colour_vision_brettel.csv"), Model::Brettel1997);
}

fn hold(table: &'static str, model: Model) {
    let rows = rows(table);
    assert!(rows.len() >= 33);
    for row in &rows {
        let sight = match &row[1] {
            "protan" => Sight::Protan,
            "deutan" => Sight::Deutan,
            "tritan" => Sight::Tritan,
            other => panic!("{other}"),
        };
        let seen = simulate(colour(&row[0]), sight, model);
        for (at, channel) in [(2, seen.red), (3, seen.green), (4, seen.blue)] {
            let published = number(row, at).clamp(0.0, 1.0);
            assert!((f64::from(channel) / 255.0 - published).abs() <= 1.0 / 255.0, "{seen:?} {row:?}");
        }
    }
}

/// WCAG 2 contrast, to a hundredth.
#[test]
fn contrast_of_every_published_pair() {
    let rows = rows(include_str!("contrast_ratios.csv"));
    assert_eq!(rows.len(), 25);
    for row in &rows {
        let found = contrast(colour(&row[0]), colour(&row[1]));
        assert!((found - number(row, 2)).abs() <= 0.01, "{found} {row:?}");
    }
}
