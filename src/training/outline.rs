//! The outlines of gauges in millimetres, y upward, as they are cut: every size is that of the finished edge.

/// A corner of an outline, or the place of a text: x to the right, y upward.
pub(super) type Point = (f64, f64);

/// Width of a stand-out gauge, and of the foot in its middle that stands on the body's face.
const WIDTH: f64 = 84.0;
const FOOT: f64 = 28.0;
/// An inside corner beside the foot is cut back so far, so that no burr or radius lifts the gauge.
const RELIEF: (f64, f64) = (2.0, 1.0);
/// A pin that reaches down to a sunk part: its width, how far it stands off the foot, how far what is beside it is
/// cut back.
const PIN: f64 = 6.0;
const OFF_FOOT: f64 = 3.0;
const CUT_BACK: f64 = 3.0;
/// Between the two edges that measure, for what is engraved.
const MIDDLE: f64 = 20.0;
/// Beside slots and tongues.
const WALL: f64 = 6.0;
/// The least width of a plate, for what is engraved.
const LEAST_WIDTH: f64 = 56.0;
/// How much deeper a slot is than it is wide, and how long a tongue is.
const DEEPER: f64 = 3.0;
const TONGUE: f64 = 15.0;

/// A window whose ends were rounded inward to what can be made, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Window {
    pub least: f64,
    pub most: f64,
}

/// A hundredth of a millimetre: what can be made, and what drawings are written to.
const STEP: f64 = 100.0;
/// A window narrower than this can't be told apart with what is cut.
const LEAST_WINDOW: f64 = 0.1;
/// What rounding of binary fractions may take.
const NOISE: f64 = 1e-6;

impl Window {
    /// The window rounded inward; none where too little of it is left.
    pub fn inward(least: f64, most: f64) -> Option<Self> {
        let least = (least * STEP - NOISE).ceil() / STEP;
        let most = (most * STEP + NOISE).floor() / STEP;
        (most - least >= LEAST_WINDOW - NOISE).then_some(Self { least, most })
    }
}

/// A plate to be cut, with what is engraved on it.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Plate {
    /// Its corners in order; the last is joined to the first.
    pub corners: Vec<Point>,
    pub texts: Vec<Engraved>,
}

/// A text that is engraved, its middle at x, its base line at y.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Engraved {
    pub text: String,
    pub at: Point,
    pub bold: bool,
}

impl Plate {
    /// Left, lower, right and upper ends.
    pub fn ends(&self) -> (f64, f64, f64, f64) {
        let start = (f64::MAX, f64::MAX, f64::MIN, f64::MIN);
        self.corners.iter().fold(start, |(left, low, right, high), (x, y)| {
            (left.min(*x), low.min(*y), right.max(*x), high.max(*y))
        })
    }

    fn engrave(&mut self, text: impl Into<String>, at: Point, bold: bool) {
        self.texts.push(Engraved { text: text.into(), at, bold });
    }
}

/// An edge of a stand-out gauge: what is measured, its window, and the words for either end of it.
pub(super) struct Edge<'a> {
    pub reading: &'a str,
    pub window: Window,
    pub ends: [String; 2],
}

/// A gauge whose foot stands on the body's face, with a step at either side: one at the upper end of the window, over
/// which the part must not reach, one at the lower end, which it must reach. Where an end of the window lies below the
/// face, its step is a pin. The first reading is on the lower edge, the other, turned round, on the upper one.
pub(super) fn stand_out(lower: &Edge<'_>, upper: Option<&Edge<'_>>, engraved: &[String]) -> Plate {
    let rise = |edge: &Edge<'_>| edge.window.most.max(0.0).max(edge.window.least) + RELIEF.1.max(CUT_BACK);
    let bottom = rise(lower);
    let height = bottom + MIDDLE + upper.map_or(0.0, rise);
    let mut plate = Plate { corners: profile(lower.window), texts: Vec::new() };
    match upper {
        Some(edge) => {
            plate.corners.extend(profile(edge.window).into_iter().map(|(x, y)| (WIDTH - x, height - y)))
        }
        None => plate.corners.extend([(WIDTH, height), (0.0, height)]),
    }
    label(&mut plate, lower, bottom + 1.2, false);
    if let Some(edge) = upper {
        label(&mut plate, edge, bottom + MIDDLE - 3.4, true);
    }
    in_the_middle(&mut plate, engraved, WIDTH / 2.0, bottom);
    plate
}

/// The lower edge from left to right: the step at the lower end of the window, the foot, the step at the upper end.
fn profile(window: Window) -> Vec<Point> {
    let left = step(window.least);
    let right = step(window.most).into_iter().rev().map(|(x, y)| (WIDTH - x, y));
    left.into_iter().chain(right).collect()
}

/// From the left end of the plate to the foot: a step at a level, or a pin that reaches below the face.
fn step(level: f64) -> Vec<Point> {
    let foot = (WIDTH - FOOT) / 2.0;
    if level < 0.0 {
        let (near, far) = (foot - OFF_FOOT, foot - OFF_FOOT - PIN);
        return vec![
            (0.0, CUT_BACK),
            (far, CUT_BACK),
            (far, level),
            (near, level),
            (near, CUT_BACK),
            (foot, CUT_BACK),
            (foot, 0.0),
        ];
    }
    let (relief, deep) = (foot - RELIEF.0, level + RELIEF.1);
    vec![(0.0, level), (relief, level), (relief, deep), (foot, deep), (foot, 0.0)]
}

fn label(plate: &mut Plate, edge: &Edge<'_>, y: f64, turned: bool) {
    let [least, most] = &edge.ends;
    let third = WIDTH / 6.0;
    let (left, right) = if turned { (most, least) } else { (least, most) };
    plate.engrave(left.clone(), (third, y), true);
    plate.engrave(edge.reading, (WIDTH / 2.0, y), true);
    plate.engrave(right.clone(), (WIDTH - third, y), true);
}

fn in_the_middle(plate: &mut Plate, engraved: &[String], x: f64, bottom: f64) {
    for (line, text) in engraved.iter().enumerate() {
        plate.engrave(text.clone(), (x, bottom + 11.6 - 3.6 * line as f64), line == 0);
    }
}

/// A plate with two slots in its upper edge, which a wire must go into and must not, and two tongues on its lower edge,
/// which must go into a bore and must not.
pub(super) fn wire_and_bore(
    wire: Window,
    bore: Option<Window>,
    words: &dyn Fn(f64) -> String,
    engraved: &[String],
) -> Plate {
    let slots = wire.most + WALL + wire.least;
    let tongues = bore.map_or(0.0, |bore| bore.least + WALL + bore.most);
    let width = (slots.max(tongues) + WALL * 2.0).max(LEAST_WIDTH);
    let low = if bore.is_some() { TONGUE } else { 0.0 };
    let (floor, top) = (low + MIDDLE, low + MIDDLE + wire.most + DEEPER);
    let mut plate = Plate::default();
    plate.corners.push((0.0, low));
    if let Some(bore) = bore {
        let left = (width - tongues) / 2.0;
        let other = left + bore.least + WALL;
        for (from, to) in [(left, left + bore.least), (other, other + bore.most)] {
            plate.corners.extend([(from, low), (from, 0.0), (to, 0.0), (to, low)]);
        }
        plate.engrave(format!("GO {}", words(bore.least)), (left + bore.least / 2.0, low + 1.2), true);
        plate.engrave(format!("NO GO {}", words(bore.most)), (other + bore.most / 2.0, low + 1.2), true);
    }
    plate.corners.extend([(width, low), (width, top)]);
    let left = (width - slots) / 2.0;
    let other = left + wire.most + WALL;
    for (from, to) in [(other, other + wire.least), (left, left + wire.most)] {
        plate.corners.extend([(to, top), (to, floor), (from, floor), (from, top)]);
    }
    plate.corners.push((0.0, top));
    plate.engrave(format!("GO {}", words(wire.most)), (left + wire.most / 2.0, floor - 3.4), true);
    plate.engrave(format!("NO GO {}", words(wire.least)), (other + wire.least / 2.0, floor - 3.4), true);
    in_the_middle(&mut plate, engraved, width / 2.0, low);
    plate
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_round_inward_and_a_window_that_is_too_narrow_is_none() {
        assert_eq!(Window::inward(3.004, 5.509), Some(Window { least: 3.01, most: 5.5 }));
        assert_eq!(Window::inward(-8.5, -5.5), Some(Window { least: -8.5, most: -5.5 }));
        assert_eq!(Window::inward(14.25, 14.35), Some(Window { least: 14.25, most: 14.35 }));
        assert_eq!(Window::inward(3.0, 3.05), None);
    }

    /// The area of a polygon by its corners (the surveyor's formula): positive where it turns to the left.
    fn area(corners: &[Point]) -> f64 {
        let next = corners.iter().cycle().skip(1);
        corners.iter().zip(next).map(|((x, y), (u, v))| x * v - u * y).sum::<f64>() / 2.0
    }

    #[test]
    fn outlines_turn_to_the_left_and_have_the_area_of_their_pieces() {
        let edge = |least, most| Edge {
            reading: "seated",
            window: Window { least, most },
            ends: ["a".to_owned(), "b".to_owned()],
        };
        // By hand: 84 wide, 5.5 + 3 + 20 high, less the steps of 26 by 3 and 5.5, and reliefs of 2 by 4 and 6.5.
        let plate = stand_out(&edge(3.0, 5.5), None, &[]);
        assert!((area(&plate.corners) - (84.0 * 28.5 - 26.0 * 8.5 - 2.0 * 10.5)).abs() < 1e-9);
        // Sunk: 23 high, less what is cut back beside the foot, 28 by 3 twice, and with pins of 6 by 8.5 + 3 and 5.5 + 3.
        let plate = stand_out(&edge(-8.5, -5.5), None, &[]);
        assert!((area(&plate.corners) - (84.0 * 23.0 - 2.0 * 28.0 * 3.0 + 6.0 * 20.0)).abs() < 1e-9);
        // 56 by 20 + 17.1, less slots of 14.1 and 13.9 by 17.1, and tongues of 14.25 and 14.35 by 15.
        let wire = Window { least: 13.9, most: 14.1 };
        let bore = Window { least: 14.25, most: 14.35 };
        let plate = wire_and_bore(wire, Some(bore), &|_| String::new(), &[]);
        let expected = 56.0 * 37.1 - 28.0 * 17.1 + 28.6 * 15.0;
        assert!((area(&plate.corners) - expected).abs() < 1e-9, "{} {expected}", area(&plate.corners));
    }
}
