//! Every verdict on sizes by chance: no length that is no number, and what is less sure is never safer.

use arbitrary::{Result, Unstructured};
use fittingcards::grip::{
    BearsOn, Body, Bore, Collet, Ferrule, Geometry, GripLimits, HeldConductor, HeldConstruction, Outcome,
    RopeGrip, Socket, SpreadingCone, Thimble, Verdict, Wedge, WedgeBody, judge,
};
use fittingcards::section::{Layer, LayerRole};
use fittingcards::units::{Angle, Length, Range};

pub fn run(input: &[u8]) {
    // Too few bytes are no case.
    let _ = tried(&mut Unstructured::new(input));
}

fn tried(bytes: &mut Unstructured<'_>) -> Result<()> {
    let (part, mate) = pair(bytes)?;
    let held = held(bytes)?;
    let limits = GripLimits { closure_reserve: Length::from_mm(from_zero(bytes, 10.0)?) };
    let outcome = judge(Some(&part), &[&mate], &held, limits);
    numbers(&outcome);
    named(&outcome, &part, &held);
    let less_sure = HeldConductor {
        diameter_tolerance: held.diameter_tolerance + Length::from_mm(from_zero(bytes, 10.0)?),
        ..held.clone()
    };
    let more =
        GripLimits { closure_reserve: limits.closure_reserve + Length::from_mm(from_zero(bytes, 10.0)?) };
    for (held, limits) in [(&less_sure, limits), (&held, more)] {
        let other = judge(Some(&part), &[&mate], held, limits);
        numbers(&other);
        let safer = other.verdict == Verdict::Grips && outcome.verdict != Verdict::Grips;
        assert!(!safer, "less sure, and grips: {outcome:?} {other:?} {part:?} {mate:?} {held:?}");
    }
    numbers(&judge(Some(&part), &[], &held, limits));
    if let Some(worn) = held.worn_to(Length::from_mm(from_zero(bytes, 30.0)?)) {
        assert!(worn.overall_diameter.is_positive(), "{worn:?}");
        numbers(&judge(Some(&part), &[&mate], &worn, limits));
    }
    Ok(())
}

/// Every length is a number, and the stand-out lies in its interval.
fn numbers(outcome: &Outcome) {
    let lengths = [outcome.clearance, outcome.closure, outcome.stand_out, outcome.depth];
    for length in lengths.into_iter().flatten() {
        assert!(length.is_finite(), "{outcome:?}");
    }
    if let (Some(stand_out), Some(interval)) = (outcome.stand_out, outcome.stand_out_interval) {
        assert!(interval.least().is_finite() && interval.most().is_finite(), "{outcome:?}");
        assert!(interval.contains(stand_out), "{outcome:?}");
    }
}

/// What is unknown says what it lacks, if the conductor is one that the part can be for; what is known lacks nothing.
fn named(outcome: &Outcome, part: &Geometry, held: &HeldConductor) {
    if outcome.verdict == Verdict::Unknown {
        let layers = matches!(part, Geometry::SpreadingCone(_));
        // How a bar lies in a wedge no measurement of the parts says.
        let lies = matches!(part, Geometry::Wedge(_)) && held.construction == HeldConstruction::Bar;
        assert!(layers || lies || !outcome.missing.is_empty(), "{outcome:?} {part:?}");
    } else {
        assert!(outcome.missing.is_empty(), "{outcome:?}");
    }
}

fn pair(bytes: &mut Unstructured<'_>) -> Result<(Geometry, Geometry)> {
    let body = Geometry::Body(Body { half_angle: angle(bytes)?, ..Body::default() });
    Ok(match bytes.int_in_range(0..=6)? {
        0 => (Geometry::Collet(collet(bytes)?), body),
        1 => (Geometry::SpreadingCone(cone(bytes)?), Geometry::Socket(socket(bytes)?)),
        2 => {
            let wedge = Wedge {
                thickness: size(bytes, 300.0)?,
                thickness_tolerance: size(bytes, 10.0)?,
                taper: angle(bytes)?,
                length: size(bytes, 1000.0)?,
                length_tolerance: size(bytes, 10.0)?,
            };
            (Geometry::Wedge(wedge), Geometry::WedgeBody(wedge_body(bytes)?))
        }
        3 => (Geometry::Thimble(Thimble { groove: size(bytes, 200.0)?, ..Thimble::default() }), body),
        4 => (Geometry::Ferrule(ferrule(bytes)?), body),
        5 => (Geometry::Sleeve(ferrule(bytes)?), body),
        _ => (Geometry::RopeGrip(RopeGrip { rope: range(bytes)?, ..RopeGrip::default() }), body),
    })
}

fn collet(bytes: &mut Unstructured<'_>) -> Result<Collet> {
    Ok(Collet {
        bore: size(bytes, 200.0)?,
        bore_tolerance: size(bytes, 10.0)?,
        pieces: count(bytes, 1, 12)?,
        slits: count(bytes, 0, 24)?,
        slit_width: size(bytes, 50.0)?,
        slit_width_tolerance: size(bytes, 10.0)?,
        half_angle: angle(bytes)?,
        stand_out_at_bore: size(bytes, 500.0)?,
        stand_out_at_bore_tolerance: size(bytes, 10.0)?,
        ..Collet::default()
    })
}

fn cone(bytes: &mut Unstructured<'_>) -> Result<SpreadingCone> {
    Ok(SpreadingCone {
        large_diameter: size(bytes, 200.0)?,
        large_diameter_tolerance: size(bytes, 10.0)?,
        half_angle: angle(bytes)?,
        length: size(bytes, 1000.0)?,
        length_tolerance: size(bytes, 10.0)?,
        hole_diameter: size(bytes, 200.0)?,
        hole_diameter_tolerance: size(bytes, 10.0)?,
        wires_through_hole: count(bytes, 1, 1000)?,
        slits: count(bytes, 0, 24)?,
        slit_width: size(bytes, 50.0)?,
        slit_width_tolerance: size(bytes, 10.0)?,
    })
}

fn socket(bytes: &mut Unstructured<'_>) -> Result<Socket> {
    Ok(Socket {
        large_diameter: size(bytes, 300.0)?,
        large_diameter_tolerance: size(bytes, 10.0)?,
        half_angle: angle(bytes)?,
        length: size(bytes, 1000.0)?,
        length_tolerance: size(bytes, 10.0)?,
        throat_diameter: size(bytes, 300.0)?,
        throat_diameter_tolerance: size(bytes, 10.0)?,
        travel: size(bytes, 500.0)?,
        travel_tolerance: size(bytes, 10.0)?,
    })
}

fn wedge_body(bytes: &mut Unstructured<'_>) -> Result<WedgeBody> {
    Ok(WedgeBody {
        mouth: size(bytes, 500.0)?,
        mouth_tolerance: size(bytes, 10.0)?,
        taper: angle(bytes)?,
        length: size(bytes, 2000.0)?,
        length_tolerance: size(bytes, 10.0)?,
        travel: size(bytes, 500.0)?,
        travel_tolerance: size(bytes, 10.0)?,
        bears_on: *bytes.choose(&[None, Some(BearsOn::Width), Some(BearsOn::Height)])?,
    })
}

fn ferrule(bytes: &mut Unstructured<'_>) -> Result<Ferrule> {
    let die = bytes.arbitrary::<bool>()?.then(|| "8".to_owned());
    Ok(Ferrule {
        bore: bore(bytes)?,
        bore_tolerance: size(bytes, 10.0)?,
        die,
        pressed: range(bytes)?,
        outside: size(bytes, 300.0)?,
        outside_tolerance: size(bytes, 10.0)?,
        legs: count(bytes, 1, 2)?,
        ..Ferrule::default()
    })
}

fn bore(bytes: &mut Unstructured<'_>) -> Result<Option<Bore>> {
    let width = size(bytes, 200.0)?;
    let height = size(bytes, 200.0)?;
    Ok(match (width, height) {
        (Some(width), Some(height)) => Some(Bore::Oval { width, height }),
        _ => width.map(Bore::Round),
    })
}

fn held(bytes: &mut Unstructured<'_>) -> Result<HeldConductor> {
    let across = Length::from_mm(above_zero(bytes, 100.0)?);
    let construction = match bytes.int_in_range(0..=5)? {
        0 => HeldConstruction::Layers(layers(bytes)?),
        1 => HeldConstruction::StrandedRope,
        2 => HeldConstruction::SingleStrandRope,
        3 => HeldConstruction::Grooved { height: across, width: Length::from_mm(above_zero(bytes, 100.0)?) },
        4 => HeldConstruction::Tube,
        _ => HeldConstruction::Bar,
    };
    Ok(HeldConductor {
        diameter_tolerance: Length::from_mm(from_zero(bytes, 10.0)?),
        wire_diameter_tolerance: Length::from_mm(from_zero(bytes, 10.0)?),
        construction,
        ..HeldConductor::solid(across)
    })
}

fn layers(bytes: &mut Unstructured<'_>) -> Result<Vec<Layer>> {
    let wire = Length::from_mm(above_zero(bytes, 20.0)?);
    let most = bytes.int_in_range(1_u32..=6)?;
    let layer = |nth: u32| Layer {
        wires: if nth == 0 { 1 } else { 6 * nth },
        pitch_radius: wire * f64::from(nth),
        wire_diameter: wire,
        role: LayerRole::Outer,
    };
    Ok((0..most).map(layer).collect())
}

/// A size that a part may state, or nothing.
fn size(bytes: &mut Unstructured<'_>, most: f64) -> Result<Option<Length>> {
    Ok(if bytes.ratio(1, 8)? { None } else { Some(Length::from_mm(above_zero(bytes, most)?)) })
}

fn angle(bytes: &mut Unstructured<'_>) -> Result<Option<Angle>> {
    let wide = bytes.ratio(1, 4)?;
    let near = if wide { above_zero(bytes, 60.0)? } else { 5.0 + from_zero(bytes, 1.0)? };
    Ok(if bytes.ratio(1, 8)? { None } else { Some(Angle::from_degrees(near)) })
}

fn count(bytes: &mut Unstructured<'_>, least: u32, most: u32) -> Result<Option<u32>> {
    Ok(if bytes.ratio(1, 8)? { None } else { Some(bytes.int_in_range(least..=most)?) })
}

fn range(bytes: &mut Unstructured<'_>) -> Result<Option<Range<Length>>> {
    let ends = (above_zero(bytes, 200.0)?, above_zero(bytes, 200.0)?);
    Ok(bytes.arbitrary::<bool>()?.then(|| Range::between(Length::from_mm(ends.0), Length::from_mm(ends.1))))
}

/// Mostly as drawings state it, in hundredths; at times the least or the most that a record may state, which is a
/// billionth of the most.
fn above_zero(bytes: &mut Unstructured<'_>, most: f64) -> Result<f64> {
    Ok(match bytes.int_in_range(0..=15)? {
        0 => most * 1e-9,
        1 => most,
        2 => (f64::from(bytes.arbitrary::<u32>()?) + 1.0) / 4_294_967_296.0 * most,
        _ => ((f64::from(bytes.arbitrary::<u16>()?) + 1.0) / 100.0).min(most),
    })
}

fn from_zero(bytes: &mut Unstructured<'_>, most: f64) -> Result<f64> {
    Ok(if bytes.ratio(1, 3)? { 0.0 } else { above_zero(bytes, most)? })
}

/// Bytes of each kind of part; sizes come by chance.
pub fn seeds() -> Vec<Vec<u8>> {
    let stretch =
        |kind: u8| (0..160_u32).map(move |at| (at * 37 + u32::from(kind) * 101).to_le_bytes()[0]).collect();
    (0..32).map(stretch).collect()
}
