//! Constructions as the command line writes them.

use crate::section::{Construction, Group, Strands};
use crate::units::Length;

/// A number of wires and their diameter: `19/2.80`; layer by layer, `3+9/2.80` would be two groups, so
/// layers are written with commas: `3,9/2.80`.
pub(super) fn group(text: &str) -> Result<Group, String> {
    let (strands, diameter) =
        text.split_once('/').ok_or_else(|| expected(text, "WIRES/DIAMETER, such as 19/2.80"))?;
    let counts = strands
        .split(',')
        .map(|count| count.trim().parse::<u32>().map_err(|_| expected(count, "a whole number of wires")))
        .collect::<Result<Vec<u32>, String>>()?;
    let strands = match counts.as_slice() {
        [wires] => Strands::Wires(*wires),
        _ => Strands::Layers(counts),
    };
    Ok(Group { strands, wire_diameter: length(diameter)?, lay_ratios: Vec::new() })
}

/// One group, or outer group + core: `26/3.45+7/2.68`.
pub(super) fn stranded(text: &str) -> Result<(Group, Option<Group>), String> {
    match text.split_once('+') {
        Some((outer, core)) => Ok((group(outer)?, Some(group(core)?))),
        None => Ok((group(text)?, None)),
    }
}

/// Outside diameter and wall: `100x5`.
pub(super) fn tube(text: &str) -> Result<Construction, String> {
    let (outside_diameter, wall) = pair(text, "DIAMETERxWALL, such as 100x5")?;
    Ok(Construction::Tube { outside_diameter, wall })
}

/// Width and thickness: `40x10`.
pub(super) fn bar(text: &str) -> Result<Construction, String> {
    let (width, thickness) = pair(text, "WIDTHxTHICKNESS, such as 40x10")?;
    Ok(Construction::Bar { width, thickness, corner_radius: Length::ZERO })
}

/// One diameter: `8.0`.
pub(super) fn solid(text: &str) -> Result<Construction, String> {
    Ok(Construction::Solid { diameter: length(text)? })
}

/// Class and diameter: `7x19/8.0`.
pub(super) fn rope(text: &str) -> Result<(String, Length), String> {
    let (class, diameter) =
        text.split_once('/').ok_or_else(|| expected(text, "CLASS/DIAMETER, such as 7x19/8.0"))?;
    Ok((class.trim().to_owned(), length(diameter)?))
}

/// A length in millimetres: finite and above zero.
pub(super) fn length(text: &str) -> Result<Length, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if value.is_finite() && value > 0.0 => Ok(Length::from_mm(value)),
        _ => Err(expected(text, "a length in millimetres above zero")),
    }
}

/// A finite number above zero.
pub(super) fn positive(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if value.is_finite() && value > 0.0 => Ok(value),
        _ => Err(expected(text, "a number above zero")),
    }
}

/// A temperature that a conductor can have, in °C.
pub(super) fn temperature(text: &str) -> Result<f64, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if (-273.15..=1000.0).contains(&value) => Ok(value),
        _ => Err(expected(text, "a temperature from -273.15 to 1000 °C")),
    }
}

fn pair(text: &str, form: &str) -> Result<(Length, Length), String> {
    let (first, second) = text.split_once(['x', '×']).ok_or_else(|| expected(text, form))?;
    Ok((length(first)?, length(second)?))
}

fn expected(found: &str, form: &str) -> String {
    format!("found '{found}', expected {form}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wires_by_number_or_layer() {
        assert_eq!(group("19/2.80").unwrap().strands, Strands::Wires(19));
        assert_eq!(group("3,9/2.5").unwrap().strands, Strands::Layers(vec![3, 9]));
        assert_eq!(group("19/2.80").unwrap().wire_diameter, Length::from_mm(2.80));
    }

    #[test]
    fn outer_group_comes_first() {
        let (outer, core) = stranded("26/3.45+7/2.68").unwrap();
        assert_eq!(outer.strands, Strands::Wires(26));
        assert_eq!(core.unwrap().strands, Strands::Wires(7));
    }

    #[test]
    fn what_is_not_a_size_is_refused() {
        for text in ["19", "19/", "19/-2", "19/nan", "19/inf", "0.5/2", "/2", "19/0"] {
            assert!(group(text).is_err(), "{text}");
        }
        assert!(tube("100").is_err());
        assert!(bar("40x-1").is_err());
        assert!(rope("7x19").is_err());
    }
}
