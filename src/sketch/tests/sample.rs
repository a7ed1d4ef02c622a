//! Conductors, parts and fittings for tests, built without records.

use crate::catalogue::{
    CompleteWithout, Conductor, Duty, Family, Fitting, Identity, IfWrong, Item, Limits, Origin, Part, Role,
    StandOut, StandOutFrom, Stated, Status, Tightening, load,
};
use crate::grip::{
    BearsOn, Body, Bore, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge,
    WedgeBody,
};
use crate::section::{
    Citation, Composite, Construction, Grooved, Group, Material, Rope, RopeCore, Strands, compute, materials,
};
use crate::source::{FilePath, MemoryWorld, Place, World};
use crate::typeset::Fonts;
use crate::units::{Angle, Length, Range};
use std::collections::BTreeMap;
use std::sync::Arc;

pub fn mm(value: f64) -> Length {
    Length::from_mm(value)
}

pub fn deg(value: f64) -> Angle {
    Angle::from_degrees(value)
}

pub fn fonts() -> Fonts {
    Fonts::new(&MemoryWorld::new().fonts(), &[]).0
}

/// The limits of a catalogue that states none.
pub fn limits() -> Limits {
    limits_of("")
}

/// The limits of a catalogue with such a line.
pub fn limits_of(line: &str) -> Limits {
    let settings = format!("title: Ends\n{line}\n");
    let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), settings);
    load(&world).unwrap().catalogue.settings.limits
}

pub fn material(id: &str) -> Arc<Material> {
    Arc::new(materials::find(id).expect("a built-in material").clone())
}

fn origin() -> Origin {
    Origin {
        place: Place::whole(FilePath::catalogue("sample.yaml")),
        fields: BTreeMap::new(),
        numbers: BTreeMap::new(),
    }
}

pub fn conductor(name: &str, material_id: &str, construction: Construction) -> Arc<Conductor> {
    let material = material(material_id);
    let section = compute(&construction, Some(&material)).expect("a sound construction");
    Arc::new(Conductor {
        id: name.to_lowercase().replace(' ', "-"),
        name: name.to_owned(),
        duty: Duty::Messenger,
        material,
        nominal_size: None,
        construction,
        wear: None,
        diameter_tolerance: Some(mm(0.1)),
        wire_diameter_tolerance: Some(mm(0.03)),
        stated: Stated::default(),
        identity: Identity::default(),
        source: Citation::default(),
        caution: String::new(),
        section,
        origin: origin(),
    })
}

fn group(wires: u32, diameter: f64) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: mm(diameter), lay_ratios: Vec::new() }
}

pub fn stranded(wires: u32, diameter: f64) -> Construction {
    Construction::Stranded(group(wires, diameter))
}

pub fn contact_wire() -> Construction {
    Construction::Grooved(Grooved {
        height: mm(12.34),
        width: mm(12.34),
        apex_width: mm(6.80),
        apex_depth: mm(4.47),
        fillet: mm(0.40),
        lower_flank: deg(27.0),
        upper_flank: deg(51.0),
    })
}

pub fn rope(class: &str, core: RopeCore, diameter: f64) -> Construction {
    Construction::Rope(Rope { class: class.into(), core, diameter: mm(diameter), grade: None })
}

/// One of every construction.
pub fn conductors() -> Vec<Arc<Conductor>> {
    let composite = Construction::Composite(Composite {
        core: group(7, 2.68),
        core_material: Some(material("steel-st1a")),
        outer: group(26, 3.45),
    });
    let bar = Construction::Bar { width: mm(40.0), thickness: mm(10.0), corner_radius: mm(1.0) };
    let tube = Construction::Tube { outside_diameter: mm(100.0), wall: mm(5.0) };
    vec![
        conductor("Round wire 8", "copper-hard-drawn", Construction::Solid { diameter: mm(8.0) }),
        conductor("Messenger wire 120", "bronze-2", stranded(19, 2.80)),
        conductor("Feeder 185", "copper-hard-drawn", stranded(37, 2.50)),
        conductor("Stay 50", "steel-st1a", stranded(7, 3.0)),
        conductor("Three-wire strand", "copper-hard-drawn", stranded(12, 2.0)),
        conductor("Aluminium feeder", "aluminium-al1", composite),
        conductor("Rope 7x19", "stainless-1.4401", rope("7x19", RopeCore::Wsc, 8.0)),
        conductor("Rope 6x36WS", "steel-galvanised", rope("6x36WS", RopeCore::Iwrc, 12.0)),
        conductor("Rope 6x19S", "steel-galvanised", rope("6x19S", RopeCore::Fibre, 10.0)),
        conductor("Contact wire 120", "copper-silver-0.1", contact_wire()),
        conductor("Tube", "aluminium-al3", tube),
        conductor("Bar", "copper-hard-drawn", bar),
    ]
}

pub fn part(number: &str, role: Role, material_id: &str, geometry: Option<Geometry>) -> Arc<Part> {
    Arc::new(Part {
        number: number.to_owned(),
        name: format!("{role:?}"),
        role,
        material: material(material_id),
        drawing: String::new(),
        stamp: String::new(),
        stamp_on: None,
        mark: None,
        mark_seen_after_assembly: None,
        reuse: None,
        status: Status::Current,
        interface: String::new(),
        proven_on: Vec::new(),
        geometry,
        origin: origin(),
    })
}

pub fn fitting(
    name: &str,
    family: Family,
    conductors: Vec<Arc<Conductor>>,
    parts: Vec<Arc<Part>>,
) -> Fitting {
    Fitting {
        number: format!("T-{}", parts.first().map_or("0", |part| &part.number)),
        name: name.to_owned(),
        family,
        conductors,
        items: parts.into_iter().map(|part| Item { part, quantity: 1 }).collect(),
        mark: None,
        mark_seen_after_assembly: None,
        stamp: String::new(),
        stand_out: None,
        insertion: None,
        tail: None,
        holding_load: None,
        line_tension_max: None,
        procedure: None,
        tightening: Vec::new(),
        witness: None,
        steps: Vec::new(),
        slip_mark: None,
        reject_if: Vec::new(),
        if_wrong: IfWrong::default(),
        complete_without: CompleteWithout::default(),
        notices: Vec::new(),
        status: Status::Current,
        superseded_by: None,
        use_instead: None,
        in_service: None,
        origin: origin(),
    }
}

pub fn collet(bore: f64, half_angle: f64, length: f64, stand_out: f64) -> Geometry {
    Geometry::Collet(Collet {
        bore: Some(mm(bore)),
        bore_tolerance: Some(mm(0.05)),
        pieces: Some(1),
        slits: Some(3),
        slit_width: Some(mm(1.0)),
        half_angle: Some(deg(half_angle)),
        length: Some(mm(length)),
        stand_out_at_bore: Some(mm(stand_out)),
        ..Collet::default()
    })
}

pub fn collet_body(half_angle: f64, large: f64, length: f64) -> Geometry {
    Geometry::Body(Body {
        half_angle: Some(deg(half_angle)),
        large_diameter: Some(mm(large)),
        length: Some(mm(length)),
        eye: Some("clevis".into()),
        ..Body::default()
    })
}

pub fn spreading_cone(large: f64, half_angle: f64, length: f64, hole: f64) -> Geometry {
    Geometry::SpreadingCone(SpreadingCone {
        large_diameter: Some(mm(large)),
        half_angle: Some(deg(half_angle)),
        length: Some(mm(length)),
        hole_diameter: Some(mm(hole)),
        wires_through_hole: None,
        slits: Some(2),
        slit_width: Some(mm(1.0)),
        ..SpreadingCone::default()
    })
}

pub fn socket(large: f64, half_angle: f64, length: f64, throat: f64, travel: f64) -> Geometry {
    Geometry::Socket(Socket {
        large_diameter: Some(mm(large)),
        half_angle: Some(deg(half_angle)),
        length: Some(mm(length)),
        throat_diameter: Some(mm(throat)),
        travel: Some(mm(travel)),
        ..Socket::default()
    })
}

pub fn seen(from: StandOutFrom, min: f64, max: f64) -> Option<StandOut> {
    Some(StandOut {
        from,
        seated: Some(Range::between(mm(min), mm(max))),
        tensioned: None,
        draw_in_max: None,
    })
}

pub fn wedge(thickness: f64, taper: f64, length: f64) -> Geometry {
    Geometry::Wedge(Wedge {
        thickness: Some(mm(thickness)),
        taper: Some(deg(taper)),
        length: Some(mm(length)),
        ..Wedge::default()
    })
}

pub fn wedge_body(mouth: f64, taper: f64, length: f64) -> Geometry {
    Geometry::WedgeBody(WedgeBody {
        mouth: Some(mm(mouth)),
        taper: Some(deg(taper)),
        length: Some(mm(length)),
        travel: Some(mm(12.0)),
        bears_on: None,
        ..WedgeBody::default()
    })
}

pub fn thimble() -> Geometry {
    Geometry::Thimble(Thimble {
        groove: Some(mm(8.6)),
        inside_width: Some(mm(25.0)),
        inside_length: Some(mm(45.0)),
        ..Thimble::default()
    })
}

pub fn pressed(bore: f64, length: f64) -> Ferrule {
    let pressed = Some(Range::between(mm(bore * 1.25), mm(bore * 1.28)));
    Ferrule {
        bore: Some(Bore::Round(mm(bore))),
        length: Some(mm(length)),
        die: Some("8".into()),
        pressed,
        ..Ferrule::default()
    }
}

pub fn rope_grip() -> Geometry {
    Geometry::RopeGrip(RopeGrip {
        rope: Some(Range::between(mm(7.5), mm(8.5))),
        spacing: Some(mm(50.0)),
        ..RopeGrip::default()
    })
}

/// The collet dead-end of the documentation's examples.
pub fn collet_dead_end() -> Fitting {
    let mut fitting = fitting(
        "Collet dead-end",
        Family::ConeDeadEnd,
        vec![conductor("Messenger wire 120", "bronze-2", stranded(19, 2.80))],
        vec![
            part("1", Role::Body, "aluminium-bronze", Some(collet_body(5.0, 40.0, 70.0))),
            part("2", Role::Screw, "aluminium-bronze", None),
            part("3", Role::Cone, "bronze-soft", Some(collet(14.3, 5.0, 60.0, 6.0))),
        ],
    );
    fitting.stand_out = seen(StandOutFrom::ConeFace, 3.0, 5.5);
    fitting.insertion = Some(mm(85.0));
    fitting.tail = Some(mm(15.0));
    fitting
}

/// A dead-end with a spreading cone in a socket of its own.
pub fn socket_dead_end() -> Fitting {
    let body = Geometry::Body(Body {
        half_angle: None,
        large_diameter: Some(mm(52.0)),
        length: Some(mm(95.0)),
        eye: Some("clevis".into()),
        ..Body::default()
    });
    let mut fitting = fitting(
        "Socket dead-end",
        Family::ConeDeadEnd,
        vec![conductor("Earth wire 95", "copper-hard-drawn", stranded(19, 2.50))],
        vec![
            part("1", Role::Body, "aluminium-bronze", Some(body)),
            part("2", Role::Nut, "aluminium-bronze", None),
            part("3", Role::Socket, "aluminium-bronze", Some(socket(23.1, 8.0, 36.0, 13.0, 7.0))),
            part("4", Role::Cone, "brass", Some(spreading_cone(16.4, 8.0, 24.0, 7.7))),
        ],
    );
    fitting.insertion = Some(mm(70.0));
    fitting
}

/// A wedge dead-end on contact wire, its wedge 7 mm below the face by its sizes, with a bolt that keeps it.
pub fn wedge_dead_end() -> Fitting {
    let Geometry::WedgeBody(body) = wedge_body(27.0, 6.0, 95.0) else { unreachable!("a wedge body") };
    let body = Geometry::WedgeBody(WedgeBody { bears_on: Some(BearsOn::Width), ..body });
    let mut fitting = fitting(
        "Wedge dead-end",
        Family::WedgeDeadEnd,
        vec![conductor("Contact wire 120", "copper-silver-0.1", contact_wire())],
        vec![
            part("1", Role::Body, "aluminium-bronze", Some(body)),
            part("2", Role::Bolt, "stainless-1.4401", None),
            part("3", Role::Wedge, "bronze-soft", Some(wedge(13.924, 6.0, 80.0))),
        ],
    );
    fitting.stand_out = seen(StandOutFrom::WedgeEnd, -8.5, -5.5);
    fitting.insertion = Some(mm(125.0));
    fitting.tail = Some(mm(30.0));
    fitting.tightening = vec![Tightening {
        item: "keeper bolt".to_owned(),
        thread: "M12".to_owned(),
        spanner: Some(mm(18.0)),
        torque: None,
        preload: None,
        grease: Vec::new(),
        passes: None,
    }];
    fitting
}
