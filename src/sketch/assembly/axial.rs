//! What every axial dead-end has: a body with arms to its eye, a closing part, the conductor's ends.

use super::dead_end::Measures;
use super::scaled_draft::{Look, ScaledDraft, upper};
use super::setup::Setup;
use crate::catalogue::Role;
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Point, at, within};
use std::f64::consts::FRAC_PI_2;

/// How far a chord may lie off its arc, in millimetres of the object.
pub(crate) const SAG: f64 = 0.05;

/// The sizes that body, closing part and anchor share, in millimetres. x = 0 is the face that the
/// gripping part's stand-out is measured from; the line lies at negative x.
#[derive(Debug, Clone)]
pub(crate) struct Axial {
    /// x of the face that the conductor comes in at.
    pub entry: f64,
    /// x of the body's rear face, where the closing part is: 0 but where the body goes on behind the seat.
    pub face: f64,
    /// Bore of the body from the entry to its rear face: (x, radius) in rising x.
    pub bore: Vec<(f64, f64)>,
    /// Radius of the body.
    pub outer: f64,
    /// Where the closing part bears on the seated gripping part, and the radius of that face.
    pub push: (f64, f64),
    /// Radius of the hole that the conductor's end goes through.
    pub hole: f64,
    /// Radius that a closing screw's thread must leave free.
    pub free: f64,
    /// x of the conductor's end.
    pub end: f64,
    /// How far the closing part is drawn back.
    pub drawn_back: f64,
}

/// The closing part's shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Closing {
    /// A hollow screw in a ring behind the window.
    Screw,
    /// A cap nut over the body's rear end.
    Nut,
    None,
}

impl Axial {
    fn closing(setup: &Setup) -> (Closing, Option<Look>) {
        match setup.first(&[Role::Screw, Role::Nut]) {
            Some((look, part)) if part.role == Role::Nut => (Closing::Nut, Some(look)),
            Some((look, _)) => (Closing::Screw, Some(look)),
            None => (Closing::None, None),
        }
    }

    /// Radius of the thread.
    fn thread(&self, setup: &Setup) -> f64 {
        let stated = setup.thread().map(|diameter| diameter / 2.0);
        match Self::closing(setup).0 {
            Closing::Nut => within(stated.unwrap_or(self.outer - 1.5), self.free, self.outer),
            _ => stated.unwrap_or(self.free).max(self.free),
        }
    }

    /// Radius of the body where a closing screw has its ring round it.
    fn shell(&self, setup: &Setup) -> f64 {
        match Self::closing(setup).0 {
            Closing::Screw => self.outer.max(self.thread(setup) + 0.16 * self.outer),
            _ => self.outer,
        }
    }

    /// The window behind the body's face, and the ring behind the window.
    fn ring(&self, setup: &Setup) -> (f64, f64) {
        let shell = self.shell(setup);
        let window = self.push.0.max(self.face) + 0.3 * shell;
        (window, window + 0.42 * shell)
    }

    /// x of the closing part's head: where it starts and ends.
    fn head(&self, setup: &Setup) -> (f64, f64) {
        let shell = self.shell(setup);
        match Self::closing(setup).0 {
            Closing::Screw => {
                let gap = screw_gap(setup) + self.lock_width(setup);
                let start = self.ring(setup).1 + gap + self.drawn_back;
                (start, start + 0.38 * shell)
            }
            Closing::Nut => {
                let start = self.push.0.max(self.face) + 0.1 * shell + self.drawn_back;
                (start, start + 0.22 * shell)
            }
            Closing::None => (self.push.0.max(self.face), self.push.0.max(self.face)),
        }
    }

    /// The ring's face and the screw's head, above the axis: where the gap under a screw is measured.
    pub fn gap(&self, setup: &Setup) -> Option<(Point, Point)> {
        if Self::closing(setup).0 != Closing::Screw {
            return None;
        }
        let from = self.ring(setup).1 + self.lock_width(setup);
        let start = self.head(setup).0;
        Some((at(from, -self.shell(setup)), at(start, -self.head_radius(setup))))
    }

    fn lock_width(&self, setup: &Setup) -> f64 {
        if setup.first(&[Role::Lock]).is_some() { 0.12 * self.outer } else { 0.0 }
    }

    /// Radius of the closing part's head.
    fn head_radius(&self, setup: &Setup) -> f64 {
        let spanner = setup.spanner().map_or(0.0, |size| size / 2.0);
        within(spanner, self.thread(setup) + 0.12 * self.outer, self.shell(setup) * 1.5)
    }

    /// Half the width of the arms.
    fn arm(&self, setup: &Setup) -> f64 {
        (0.45 * self.shell(setup)).max(self.hole + 1.0)
    }

    /// x of the eye's middle, and the radius of its hole.
    fn eye(&self, setup: &Setup) -> (f64, f64) {
        let hole = 0.55 * self.arm(setup);
        ((self.head(setup).1 - self.drawn_back).max(self.end) + hole + 0.22 * self.shell(setup), hole)
    }

    /// The rearmost point of the fitting. Where a cap nut closes it, records do not say how the eye goes on: it is left out.
    pub fn rear(&self, setup: &Setup) -> f64 {
        match Self::closing(setup).0 {
            Closing::Nut => self.head(setup).1.max(self.end),
            _ => self.eye(setup).0 + self.arm(setup),
        }
    }

    /// Half the height of the fitting.
    pub fn reach(&self, setup: &Setup) -> f64 {
        self.shell(setup).max(self.head_radius(setup))
    }

    /// Where the lengths of a dead-end lie that are measured on it; `face` is the gripping part's.
    pub fn measures(&self, setup: &Setup, face: (f64, f64)) -> Measures {
        let reach = self.reach(setup);
        Measures {
            faces: Some((at(0.0, -self.outer), at(face.0, -face.1))),
            insertion: Some((self.entry, self.end)),
            tail: Measures::tail_before(setup, self.end),
            gap: self.gap(setup),
            edges: (-reach, reach),
        }
    }

    /// Behind everything: the far arm; then the body cut open above the axis.
    pub fn draw_behind(&self, scaled: &mut ScaledDraft, setup: &Setup, body: Look) {
        self.arms(scaled, setup, body, -1.0);
        let shell = self.shell(setup);
        let (nose, shoulder) = self.nose(shell);
        let mut points = vec![(self.entry, nose), (shoulder, shell)];
        if Self::closing(setup).0 == Closing::Nut {
            let thread = self.thread(setup);
            let threaded = self.face - 0.45 * shell;
            points.extend([(threaded, shell), (threaded, thread), (self.face, thread)]);
        } else {
            points.push((self.face, shell));
        }
        points.extend(self.bore.iter().rev());
        let mut cavity = vec![(self.entry, 0.0)];
        cavity.extend(&self.bore);
        cavity.push((self.face, 0.0));
        scaled.empty(&upper(&cavity));
        scaled
            .edge(&[at(self.entry, -self.bore.first().map_or(0.0, |corner| corner.1)), at(self.entry, 0.0)]);
        scaled.cut(body, &upper(&points));
        if Self::closing(setup).0 == Closing::Screw {
            let ((window, end), thread) = (self.ring(setup), self.thread(setup));
            scaled.cut(body, &upper(&[(window, thread), (window, shell), (end, shell), (end, thread)]));
        }
    }

    /// Radius of the body at the entry, and where it has widened to its full radius.
    fn nose(&self, shell: f64) -> (f64, f64) {
        let narrow = self.bore.first().map_or(shell, |corner| corner.1) + 0.22 * shell;
        let nose = narrow.min(shell);
        (nose, self.entry + (-self.entry * 0.3).max(1.2 * (shell - nose)).min(-self.entry * 0.55))
    }

    /// The closing part: cut above the axis, seen from outside below it.
    pub fn draw_closing(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        let (closing, Some(look)) = Self::closing(setup) else { return };
        let (push, face) = (self.push.0 + self.drawn_back, self.push.1);
        let ((start, end), head, thread) = (self.head(setup), self.head_radius(setup), self.thread(setup));
        let shape: Vec<(f64, f64)> = match closing {
            Closing::Screw => {
                let window = self.ring(setup).0 + self.drawn_back;
                vec![
                    (push, face),
                    (window, face),
                    (window, thread),
                    (start, thread),
                    (start, head),
                    (end, head),
                    (end, self.hole),
                    (push, self.hole),
                ]
            }
            _ => {
                let skirt = self.skirt(setup);
                vec![
                    (push, face),
                    (start, face),
                    (start, thread),
                    (skirt, thread),
                    (skirt, head),
                    (end, head),
                    (end, self.hole),
                    (push, self.hole),
                ]
            }
        };
        let reach = if closing == Closing::Nut {
            (self.face, thread.min(self.shell(setup)))
        } else {
            (push, self.hole)
        };
        scaled.empty(&upper(&[
            (reach.0, 0.0),
            (reach.0, reach.1),
            (start, reach.1),
            (start, self.hole),
            (end, self.hole),
            (end, 0.0),
        ]));
        scaled.edge(&[at(end, -self.hole), at(end, 0.0)]);
        scaled.cut(look, &upper(&shape));
        self.draw_closing_from_outside(scaled, setup, look, closing);
        if let Some((lock, _)) = setup.first(&[Role::Lock])
            && closing == Closing::Screw
        {
            let from = self.ring(setup).1;
            let to = from + self.lock_width(setup);
            let outer = self.shell(setup) * 0.96;
            scaled.cut(lock, &upper(&[(from, thread), (from, outer), (to, outer), (to, thread)]));
            scaled.outside(lock, &[(from, 0.0), (from, outer), (to, outer), (to, 0.0)]);
        }
    }

    /// Where a cap nut's skirt ends, over the body's thread.
    fn skirt(&self, setup: &Setup) -> f64 {
        self.face - 0.34 * self.shell(setup) + self.drawn_back
    }

    fn draw_closing_from_outside(
        &self,
        scaled: &mut ScaledDraft,
        setup: &Setup,
        look: Look,
        closing: Closing,
    ) {
        let (push, face) = (self.push.0 + self.drawn_back, self.push.1);
        let ((start, end), head, thread) = (self.head(setup), self.head_radius(setup), self.thread(setup));
        let chamfer = 0.12 * head;
        let hexagon =
            |from: f64| [(from, 0.0), (from, head), (end - chamfer, head), (end, head - chamfer), (end, 0.0)];
        if closing == Closing::Screw {
            let from = push.max(self.face);
            let window = self.ring(setup).0 + self.drawn_back;
            scaled.outside(look, &[(from, 0.0), (from, face), (window, face), (window, 0.0)]);
            scaled.outside(look, &[(window, 0.0), (window, thread), (start, thread), (start, 0.0)]);
            scaled.outside(look, &hexagon(start));
        } else {
            scaled.outside(look, &hexagon(self.skirt(setup)));
        }
    }

    /// The body from outside, below the axis, but for its arm.
    pub fn draw_body_outside(&self, scaled: &mut ScaledDraft, setup: &Setup, body: Look) {
        let shell = self.shell(setup);
        let (nose, shoulder) = self.nose(shell);
        scaled.outside(
            body,
            &[(self.entry, 0.0), (self.entry, nose), (shoulder, shell), (self.face, shell), (self.face, 0.0)],
        );
        scaled.edge(&[at(shoulder, 0.0), at(shoulder, shell)]);
    }

    /// The ring of the body from outside, in front of the screw that goes through it.
    pub fn draw_ring_outside(&self, scaled: &mut ScaledDraft, setup: &Setup, body: Look) {
        if Self::closing(setup).0 == Closing::Screw {
            let ((window, end), shell) = (self.ring(setup), self.shell(setup));
            scaled.outside(body, &[(window, 0.0), (window, shell), (end, shell), (end, 0.0)]);
        }
    }

    /// In front of everything: the near arm with its eye, and the pin in it.
    pub fn draw_in_front(&self, scaled: &mut ScaledDraft, setup: &Setup, body: Look) {
        if Self::closing(setup).0 == Closing::Nut {
            return;
        }
        self.arms(scaled, setup, body, 1.0);
        let (x, hole) = self.eye(setup);
        match setup.first(&[Role::Pin]) {
            Some((pin, _)) => scaled.disc(pin, at(x, 0.0), hole),
            None => scaled.hole(at(x, 0.0), hole),
        }
        if let Some((keeper, _)) = setup.first(&[Role::Keeper, Role::Bolt]) {
            let (w, h) = (0.75 * hole, 0.28 * hole);
            scaled.view(keeper, &Outline::of(&[(x - w, -h), (x + w, -h), (x + w, h), (x - w, h)]));
        }
    }

    /// One arm: the half above (−1) or below (+1) the axis, with its half of the rounded eye.
    fn arms(&self, scaled: &mut ScaledDraft, setup: &Setup, body: Look, side: f64) {
        if Self::closing(setup).0 == Closing::Nut {
            return;
        }
        let (arm, (x, _)) = (self.arm(setup), self.eye(setup));
        let from = if side < 0.0 { self.face - 0.5 } else { self.seam(setup) };
        let rounded = arc(at(x, 0.0), arm, side * FRAC_PI_2, 0.0, SAG);
        let mut points = vec![at(from, 0.0), at(from, side * arm)];
        points.extend(rounded);
        scaled.fill(body, &Outline::new(points.clone()));
        // The arm grows out of the body's face.
        points[1].x = points[1].x.max(self.face);
        scaled.edge(&points[1..]);
    }

    /// Where the near arm leaves the body: behind the face of a body with a window.
    fn seam(&self, setup: &Setup) -> f64 {
        self.face - 0.06 * self.shell(setup)
    }
}

/// The gap under a closing screw's head where that is what is measured, else a small one.
fn screw_gap(setup: &Setup) -> f64 {
    use crate::catalogue::StandOutFrom;
    let stand_out = setup.fitting.stand_out.as_ref();
    let window = stand_out.filter(|out| out.from == StandOutFrom::ScrewGap).and_then(|out| out.seated);
    window.map_or(3.0, |window| (window.least() + window.most()).mm() / 2.0)
}
