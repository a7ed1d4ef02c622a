//! Go and no-go gauges at true size, from the windows of the records: of the stand-out of each fitting, and of the wires
//! and bores of a body that several conductors share.

use super::dxf::dxf;
use super::outline::{Edge, Plate, Window, stand_out, wire_and_bore};
use super::plate::{bar, drawing};
use super::{Input, object};
use crate::cards::{Form, Shape, form_standing};
use crate::catalogue::{Conductor, Fitting, Orientation, Part, StandOutFrom, Status};
use crate::diagnostics::{Finding, Findings};
use crate::facts::CardFacts;
use crate::grip::{BearsOn, Geometry, WedgeBody, bearing_size};
use crate::mixups::{BodyMixups, held};
use crate::register::Standing;
use crate::section::Construction;
use crate::units::{Length, Range};
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What a gauge is printed on: A6 (ISO 216), upright.
pub const GAUGE: Shape = Shape {
    size: "A6",
    orientation: Orientation::Portrait,
    trim: (Length::from_mm(105.0), Length::from_mm(148.0)),
};
/// The most room for a plate on it, beside its margins, texts and bar.
const ROOM: (f64, f64) = (97.0, 78.0);

/// A gauge.
#[derive(Debug, Clone)]
pub struct Gauge {
    /// What its files are called, without ending.
    pub name: String,
    /// What it is for, in words.
    pub about: String,
    /// How it is printed.
    pub form: Form,
    /// How it is cut, as DXF.
    pub dxf: String,
}

/// Every gauge that the records settle, and which they don't.
#[must_use]
pub fn gauges(input: Input<'_>) -> (Vec<Gauge>, Findings) {
    let (mut gauges, mut findings) = (Vec::new(), Findings::new());
    let mut add = |made: Result<Option<Gauge>, Box<Finding>>| match made {
        Ok(gauge) => gauges.extend(gauge),
        Err(finding) => findings.push(*finding),
    };
    for (fitting, card, _) in input.built() {
        add(of_stand_out(input, fitting, card));
    }
    let usable = input.cards.mixups.bodies.iter().filter(|body| body.body.status == Status::Current);
    for body in usable {
        for size in sizes(input, body) {
            add(of_wire(input, body, &size));
        }
    }
    (gauges, findings)
}

/// The gauge of a fitting's stand-out; none where its record states no window that is measured on its gripping part.
fn of_stand_out(
    input: Input<'_>,
    fitting: &Fitting,
    card: &CardFacts,
) -> Result<Option<Gauge>, Box<Finding>> {
    let Some(stated) = &fitting.stand_out else { return Ok(None) };
    let windows = [("seated", stated.seated), ("tensioned", stated.tensioned)];
    let windows: Vec<_> = windows.into_iter().filter_map(|(name, window)| Some((name, window?))).collect();
    match stated.from {
        _ if windows.is_empty() => return Ok(None),
        StandOutFrom::None => return Ok(None),
        StandOutFrom::ScrewGap => {
            let said = "a gap under a screw has no gauge of its own: it is measured with feelers";
            return Err(not_made(fitting, "stand_out.from", said));
        }
        StandOutFrom::ConeFace | StandOutFrom::WedgeEnd => {}
    }
    let numerals = input.numerals();
    let edge = |(name, window): &(&'static str, Range<Length>)| {
        let field = format!("stand_out.{name}_mm");
        let said = format!("the {name} window is too narrow for a gauge: less than 0.1 mm of it is left");
        let window = Window::inward(window.least().mm(), window.most().mm())
            .ok_or_else(|| not_made(fitting, &field, &said))?;
        let ends = [("NO GO", window.least), ("GO", window.most)]
            .map(|(word, end)| format!("{word} {}", level(&numerals.fixed(end.abs(), 2), end)));
        Ok::<_, Box<Finding>>(Edge { reading: name, window, ends })
    };
    let edges = windows.iter().map(edge).collect::<Result<Vec<_>, _>>()?;
    let standing = input.standing(&card.number);
    let plate = stand_out(&edges[0], edges.get(1), &engraved(&card.number, &standing));
    let how = [
        "Stand the foot on the body's face, a step over the gripping part. GO: the foot must sit flat. NO GO: the \
         foot must not sit, for the step meets the part first.",
        "A step marked “sunk” is a pin that reaches into the mouth, clear of the wire.",
    ];
    let sunk = edges.iter().any(|edge| edge.window.least < 0.0);
    let about = About {
        card,
        title: format!("Stand-out gauge {}", card.number),
        of: card.title.clone(),
        how: how[..1 + usize::from(sunk)].to_vec(),
    };
    let name = format!("stand-out-{}", card.number);
    gauge(input, about, name, &plate).map(Some).ok_or_else(|| {
        not_made(fitting, "stand_out", "the gauge is larger than the A6 page that gauges are printed on")
    })
}

/// A level in words: a minus is overlooked.
fn level(size: &str, level: f64) -> String {
    if level < 0.0 { format!("sunk {size}") } else { size.to_owned() }
}

fn not_made(fitting: &Fitting, field: &str, said: &str) -> Box<Finding> {
    let finding = Finding::note("gauge-not-made", fitting.place_of(field), said);
    Box::new(
        finding.record(&fitting.number).field(field).help("measure it by rule and caliper, as the card says"),
    )
}

/// Conductors of a body that one gauge is for: a gauge tells sizes apart, not metals.
struct Size<'a> {
    wires: Vec<&'a Arc<Conductor>>,
    window: Range<Length>,
    /// The parts whose bore is gauged on the same plate, and that bore.
    parts: Vec<&'a Arc<Part>>,
    bore: Option<Range<Length>>,
}

/// Windows in hundredths of a millimetre: of the wire, and of the bore.
type Place = ((i64, i64), Option<(i64, i64)>);

/// The sizes of the conductors that a shared body's fittings hold, smallest first; none where there is one conductor.
fn sizes<'a>(input: Input<'_>, body: &'a BodyMixups) -> Vec<Size<'a>> {
    let spare = input.settings().limits.diameter_tolerance;
    let mut sizes: BTreeMap<Place, Size<'a>> = BTreeMap::new();
    for fitting in body.fittings.iter().filter(|fitting| fitting.status == Status::Current) {
        let part = fitting.gripping().map(|item| &item.part).find(|part| bore(part).is_some());
        let bore = part.and_then(|part| bore(part));
        for wire in &fitting.conductors {
            let Some(window) = window(&body.body, wire, spare) else { continue };
            let size = sizes.entry((hundredths(window), bore.map(hundredths)));
            let size = size.or_insert(Size { wires: Vec::new(), window, parts: Vec::new(), bore });
            if !size.wires.iter().any(|known| known.id == wire.id) {
                size.wires.push(wire);
            }
            if let Some(part) =
                part.filter(|part| !size.parts.iter().any(|known| known.number == part.number))
            {
                size.parts.push(part);
            }
        }
    }
    let wires: BTreeSet<&str> =
        sizes.values().flat_map(|size| &size.wires).map(|wire| wire.id.as_str()).collect();
    if wires.len() < 2 { Vec::new() } else { sizes.into_values().collect() }
}

fn hundredths(window: Range<Length>) -> (i64, i64) {
    let hundredths = |length: Length| (length.mm() * 100.0).round() as i64;
    (hundredths(window.least()), hundredths(window.most()))
}

/// The diameters that a wire may have, or the sizes of the side that a wedge body bears on.
fn window(body: &Part, wire: &Conductor, spare: Length) -> Option<Range<Length>> {
    let bears_on = match &body.geometry {
        Some(Geometry::WedgeBody(body)) => body.bears_on,
        _ => None,
    };
    let size = bearing_size(&held(wire), bears_on)?;
    Some(Range::around(size, wire.diameter_tolerance.unwrap_or(spare)))
}

/// How a grooved wire is held into its gauge; nothing for a round one. Worn wire keeps its width.
fn side(body: &BodyMixups, wire: &Conductor) -> Option<&'static str> {
    let Construction::Grooved(_) = wire.construction else { return None };
    match &body.body.geometry {
        Some(Geometry::WedgeBody(WedgeBody { bears_on: Some(BearsOn::Width), .. })) => {
            Some("across the width")
        }
        _ => Some("over the height, of new wire alone"),
    }
}

/// The bore of a part with its tolerance, where both are stated.
fn bore(part: &Part) -> Option<Range<Length>> {
    match part.geometry.as_ref()? {
        Geometry::Collet(collet) => Some(Range::around(collet.bore?, collet.bore_tolerance?)),
        Geometry::SpreadingCone(cone) => {
            Some(Range::around(cone.hole_diameter?, cone.hole_diameter_tolerance?))
        }
        _ => None,
    }
}

fn of_wire(input: Input<'_>, body: &BodyMixups, size: &Size<'_>) -> Result<Option<Gauge>, Box<Finding>> {
    let number = &body.body.number;
    let Some(card) = input.facts.get(number) else { return Ok(None) };
    let names: Vec<&str> = size.wires.iter().map(|wire| wire.name.as_str()).collect();
    let names = names.join(", ");
    let lacking = |said: String| {
        let finding = Finding::note("gauge-not-made", body.body.origin.place.clone(), said);
        Box::new(finding.record(number).help("measure it by caliper, as the card says"))
    };
    let inward = |window: Range<Length>| Window::inward(window.least().mm(), window.most().mm());
    let Some(wire) = inward(size.window) else {
        return Err(lacking(format!("the tolerance of {names} is too small for a gauge")));
    };
    let bore = size.bore.and_then(inward);
    let standing = input.standing(number);
    let words = |length: f64| input.numerals().fixed(length, 2);
    let plate = wire_and_bore(wire, bore, &words, &engraved(number, &standing));
    let side = side(body, size.wires[0]).map_or_else(String::new, |side| format!(", {side}"));
    let mut how = vec![format!("Upper edge{side}: {names} must go into GO and must not go into NO GO.")];
    if bore.is_some() {
        let parts = size.parts.iter().map(|part| format!("{} {}", part.number, part.stamp));
        let parts = parts.collect::<Vec<_>>().join(", ");
        how.push(format!("Lower edge: bore of {parts}. GO must go in, NO GO must not."));
    }
    if size.wires.len() > 1 {
        how.push("These wires have one size: no gauge tells them apart. Read the drum tag.".to_owned());
    }
    let how: Vec<&str> = how.iter().map(String::as_str).collect();
    let about = About { card, title: format!("Wire gauge {number}"), of: names.clone(), how };
    let ids = size.wires.iter().take(1).map(|wire| wire.id.as_str());
    let ids = ids.chain(size.parts.iter().take(1).map(|part| part.number.as_str()));
    let name = ids.fold(format!("wire-{number}"), |name, id| format!("{name}-{id}"));
    gauge(input, about, name, &plate).map(Some).ok_or_else(|| {
        lacking(format!("the gauge of {names} is larger than the A6 page that gauges are printed on"))
    })
}

/// What is engraved beside the sizes.
fn engraved(number: &str, standing: &Standing) -> Vec<String> {
    let state = match standing {
        Standing::Issued(issued) => format!("issue {}, check {}", issued.issue, issued.check_code),
        Standing::Draft => "draft, not issued".to_owned(),
    };
    vec![number.to_owned(), state]
}

/// What a gauge is about.
struct About<'a> {
    card: &'a CardFacts,
    title: String,
    /// What it is of, in words.
    of: String,
    /// How it is used.
    how: Vec<&'a str>,
}

/// The gauge of a plate; none where that is larger than its page.
fn gauge(input: Input<'_>, about: About<'_>, name: String, plate: &Plate) -> Option<Gauge> {
    let drawing = drawing(input.cards.fonts, &about.title, plate);
    if drawing.width.mm() > ROOM.0 || drawing.height.mm() > ROOM.1 {
        return None;
    }
    let About { card, title, of, how } = about;
    let standing = input.standing(&card.number);
    let values = json!({
        "number": card.number, "title": title, "of": card.title, "status": card.status_words, "barred": false,
        "how": how, "caution": card.caution, "owner": input.settings().owner,
        "foot": form_standing(&standing, input.settings()),
    });
    let shows = vec![
        ("the number", card.number.clone()),
        ("the status", card.status_words.clone()),
        ("the caution", card.caution.clone()),
    ];
    let form = Form {
        layout: "training/gauge.xml",
        style: "gauge",
        shape: GAUGE,
        number: card.number.clone(),
        called: format!("the gauge {name}"),
        title: title.clone(),
        values: object(values),
        shows,
        stamps: Vec::new(),
        drawings: vec![drawing, bar(input.cards.fonts)],
    };
    let notes = notes(input, &name);
    let about = format!("{title}, {of}");
    Some(Gauge { name, about, form: form.in_force(input.cards, &standing), dxf: dxf(plate, &notes) })
}

/// What stands beside a plate that is cut from a file alone.
fn notes(input: Input<'_>, name: &str) -> Vec<String> {
    let settings = input.settings();
    let date = settings.date.map(|date| format!(", {date}")).unwrap_or_default();
    vec![
        format!("{name}, {}, edition {}{date}. Check the register.", settings.owner, settings.edition),
        "Outline: finished edge. Ends rounded inward to 0.01 mm. Measure after cutting.".to_owned(),
        settings.caution.clone(),
    ]
}
