//! Plausible fittings at random, the same ones in every run.

use super::sample::{
    collet, collet_body, conductor, contact_wire, deg, fitting, mm, part, pressed, rope, rope_grip, seen,
    socket, spreading_cone, stranded, thimble, wedge, wedge_body,
};
use crate::catalogue::{Family, Fitting, Part, Role, StampPlace, StandOutFrom};
use crate::colour::{ColourCode, Mark};
use crate::grip::Geometry;
use crate::section::RopeCore;
use std::sync::Arc;

/// A small generator: xorshift, so that every run draws the same fittings.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * ((self.next() >> 11) as f64 / (1_u64 << 53) as f64)
    }

    fn one_in(&mut self, count: u64) -> bool {
        self.next().is_multiple_of(count)
    }

    fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[(self.next() % from.len() as u64) as usize]
    }
}

/// The fitting with this number.
pub fn fitting_at_random(number: u64) -> Fitting {
    let mut chance = Chance::new(number + 1);
    let mut made = match number % 7 {
        0 | 1 => collet_fitting(&mut chance),
        2 | 3 => socket_fitting(&mut chance),
        4 => wedge_fitting(&mut chance),
        5 => rope_fitting(&mut chance),
        _ => other_fitting(&mut chance),
    };
    if chance.one_in(3) {
        made.insertion = None;
    }
    if chance.one_in(3) {
        made.tail = None;
    }
    made.slip_mark = Some(number.is_multiple_of(2));
    if number.is_multiple_of(3) {
        stamped(&mut made);
    }
    if number % 4 == 1 {
        painted(&mut made);
    }
    made
}

/// A mark on the gripping part.
fn painted(fitting: &mut Fitting) {
    if let Some(item) = fitting.items.iter_mut().find(|item| item.part.role.grips()) {
        let mark = Mark { colour: ColourCode::BU, text: "KA".to_owned(), notches: 1 };
        item.part = Arc::new(Part { mark: Some(mark), ..(*item.part).clone() });
    }
}

/// A stamp on the thick end of the gripping part.
fn stamped(fitting: &mut Fitting) {
    if let Some(item) = fitting.items.iter_mut().find(|item| item.part.role.grips()) {
        let stamp = "BZ2 14.0".to_owned();
        item.part = Arc::new(Part { stamp, stamp_on: Some(StampPlace::ThickEnd), ..(*item.part).clone() });
    }
}

fn extras(chance: &mut Chance, parts: &mut Vec<Arc<Part>>) {
    for role in [Role::Pin, Role::Keeper, Role::Lock, Role::Other] {
        if chance.one_in(4) {
            parts.push(part(&format!("X{}", parts.len()), role, "stainless-1.4401", None));
        }
    }
}

fn sometimes(chance: &mut Chance, geometry: Geometry) -> Option<Geometry> {
    (!chance.one_in(6)).then_some(geometry)
}

fn collet_fitting(chance: &mut Chance) -> Fitting {
    let wires = chance.pick(&[7, 19, 37]);
    let across = if wires == 7 {
        3.0
    } else if wires == 19 {
        5.0
    } else {
        7.0
    };
    let diameter = chance.between(8.0, 19.0);
    let (angle, length) = (chance.between(5.0, 8.0), chance.between(24.0, 60.0));
    let large = diameter * 1.5 + 2.0 * length * deg(angle).tan() + chance.between(0.0, 8.0);
    let body = collet_body(angle, large, length + chance.between(2.0, 16.0));
    let bore = diameter + chance.between(0.0, 0.8);
    let cone = collet(bore, angle, length, chance.between(2.0, 8.0));
    let mut parts = vec![
        part("1", Role::Body, "aluminium-bronze", sometimes(chance, body)),
        part("2", chance.pick(&[Role::Screw, Role::Screw, Role::Nut]), "aluminium-bronze", None),
        part("3", Role::Cone, "bronze-soft", Some(cone)),
    ];
    if chance.one_in(4) {
        parts.swap(0, 2);
    }
    extras(chance, &mut parts);
    let wire = conductor("Messenger", "bronze-2", stranded(wires, diameter / across));
    let mut made = fitting("Collet dead-end", Family::ConeDeadEnd, vec![wire], parts);
    made.stand_out = seen(chance.pick(&[StandOutFrom::ConeFace, StandOutFrom::ScrewGap]), 3.0, 5.5);
    made.insertion = Some(mm(length + chance.between(15.0, 30.0)));
    made.tail = Some(mm(chance.between(8.0, 20.0)));
    made
}

fn socket_fitting(chance: &mut Chance) -> Fitting {
    let wire = chance.between(2.0, 2.8);
    let (angle, length) = (chance.between(6.0, 8.0), chance.between(22.0, 30.0));
    let cone =
        spreading_cone(3.0 * wire + 1.2 + 2.0 * length * deg(angle).tan(), angle, length, 3.0 * wire + 0.2);
    let Geometry::SpreadingCone(sizes) = &cone else { unreachable!("a spreading cone") };
    let large = sizes.large_diameter.expect("given").mm();
    let mouth = large + 2.0 * wire / deg(angle).cos() + 2.0 * chance.between(1.0, 4.0) * deg(angle).tan();
    let seat = socket(mouth, angle, length + 12.0, 5.0 * wire + 0.5, 8.0);
    let closing = chance.pick(&[Role::Nut, Role::Screw]);
    let mut parts = vec![part("1", Role::Body, "aluminium-bronze", None), part("2", closing, "brass", None)];
    parts.push(part("3", Role::Socket, "aluminium-bronze", Some(seat)));
    parts.push(part("4", Role::Cone, "brass", Some(cone)));
    extras(chance, &mut parts);
    let held = conductor("Earth wire", "copper-hard-drawn", stranded(19, wire));
    let mut made = fitting("Socket dead-end", Family::ConeDeadEnd, vec![held], parts);
    made.insertion = Some(mm(length + chance.between(36.0, 50.0)));
    made
}

fn wedge_fitting(chance: &mut Chance) -> Fitting {
    let held = if chance.one_in(2) {
        conductor("Contact wire", "copper-silver-0.1", contact_wire())
    } else {
        conductor("Stay", "steel-st1a", stranded(7, chance.between(2.7, 4.0)))
    };
    let (taper, length) = (chance.between(5.0, 8.0), chance.between(50.0, 90.0));
    let thick = length * deg(taper).tan() + chance.between(1.0, 5.0);
    let across = held.section.overall_diameter.mm();
    let mouth = thick + across + chance.between(-2.0, 8.0) * deg(taper).tan();
    let body = wedge_body(mouth, taper, length + chance.between(5.0, 20.0));
    let mut parts = vec![
        part("1", Role::Body, "ductile-iron", Some(body)),
        part("2", Role::Wedge, "bronze-soft", sometimes(chance, wedge(thick, taper, length))),
    ];
    if chance.one_in(2) {
        parts.push(part("3", Role::Bolt, "stainless-1.4401", None));
    }
    extras(chance, &mut parts);
    let mut made = fitting("Wedge dead-end", Family::WedgeDeadEnd, vec![held], parts);
    made.insertion = Some(mm(length + chance.between(20.0, 40.0)));
    made.tail = Some(mm(chance.between(15.0, 40.0)));
    made
}

fn rope_fitting(chance: &mut Chance) -> Fitting {
    let held = conductor("Rope", "stainless-1.4401", rope("7x19", RopeCore::Wsc, chance.between(6.0, 12.0)));
    let mut parts = vec![part("1", Role::Thimble, "stainless-1.4401", sometimes(chance, thimble()))];
    if chance.one_in(2) {
        let ferrule = Geometry::Ferrule(pressed(8.4, chance.between(25.0, 50.0)));
        parts.push(part("2", Role::Ferrule, "aluminium-al3", Some(ferrule)));
    } else {
        parts.push(part("2", Role::RopeGrip, "stainless-1.4401", Some(rope_grip())));
    }
    let mut made = fitting("Rope eye", Family::RopeThimble, vec![held], parts);
    made.items[1].quantity = chance.pick(&[1, 3, 4]);
    made.tail = Some(mm(chance.between(10.0, 150.0)));
    made
}

fn other_fitting(chance: &mut Chance) -> Fitting {
    let wire = |chance: &mut Chance| {
        conductor("Feeder", "copper-hard-drawn", stranded(37, chance.between(1.5, 2.7)))
    };
    let (one, other) = (wire(chance), wire(chance));
    if chance.one_in(2) {
        let sleeve = pressed(one.section.overall_diameter.mm() + 0.5, chance.between(80.0, 260.0));
        let sleeve = part("1", Role::Sleeve, "copper-annealed", Some(Geometry::Sleeve(sleeve)));
        return fitting("Joint sleeve", Family::Sleeve, vec![one], vec![sleeve]);
    }
    let parts = [Role::Body, Role::Keeper, Role::Bolt].map(|role| part("1", role, "aluminium-bronze", None));
    let family = chance.pick(&[Family::ParallelGroove, Family::Other]);
    fitting("Clamp", family, vec![one, other], parts.to_vec())
}
