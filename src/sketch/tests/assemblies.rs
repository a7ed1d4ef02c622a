//! Assemblies: parts lie, touch and stand out as computed, also of 200 fittings at random.

use super::chance::fitting_at_random;
use super::checks::{card, distance, faults, page, scene_of};
use super::sample::{
    collet, collet_body, collet_dead_end, fonts, limits, limits_of, mm, part, socket_dead_end,
};
use crate::catalogue::{Family, Fitting, Role, StampPlace, StandOutFrom};
use crate::grip::Verdict;
use crate::sketch::assembly::collet::ColletSeat;
use crate::sketch::assembly::setup::Setup;
use crate::sketch::assembly::spreading::SpreadingSeat;
use crate::sketch::assembly::wedge::WedgeSeat;
use crate::sketch::assembly::{Pose, drafted, figure};
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::at;
use crate::sketch::scene::Purpose;
use crate::sketch::{assembly, is_refused, line_up, stages};
use std::sync::Arc;

/// Millimetres of the object within which touching parts touch.
const TOUCH: f64 = 0.01;

fn all() -> impl Iterator<Item = Fitting> {
    [collet_dead_end(), socket_dead_end()].into_iter().chain((0..200).map(fitting_at_random))
}

#[test]
fn nothing_overlaps_crosses_or_strays() {
    let fonts = fonts();
    let mut silent = 0;
    for fitting in all() {
        for options in [page(&fonts), card(&fonts)] {
            let (scene, whole) = scene_of(&fitting, &options);
            if whole {
                assert_eq!(faults(&scene), Vec::<String>::new(), "{}", fitting.name);
            }
            silent += usize::from(!whole);
        }
    }
    assert!(silent <= 12, "{silent} of 404 drawings had to leave something out");
}

/// Rooms that the layouts of cards want for an assembly: A7 and A6 (layouts/cards).
const ROOMS: [(f64, f64); 2] = [(66.0, 26.0), (97.0, 40.0)];

#[test]
fn a_numbered_list_has_its_balloons_and_a_check_its_dimension() {
    let fonts = fonts();
    let mut lacking = Vec::new();
    for fitting in all().take(100) {
        let setup = Setup::of(&fitting, &limits());
        let figure = figure(&setup, Pose::default());
        for (width, height) in ROOMS {
            let options = Options { detail: Detail::Items, ..Options::new(&fonts, mm(width), mm(height)) };
            let Some((_, draft)) = drafted(&setup, &*figure, Pose::default(), &options, 0.2) else {
                lacking.push(format!("{} in {width} × {height}", fitting.name));
                continue;
            };
            let balloons = draft.scene.elements.iter().filter(|e| matches!(e.purpose, Purpose::Balloon(_)));
            assert_eq!(balloons.count(), fitting.items.len(), "{} in {width} × {height}", fitting.name);
            let checked =
                setup.fitting.stand_out.as_ref().is_some_and(|out| out.from == StandOutFrom::ConeFace);
            let printed = draft.dimensions.iter().any(|dimension| dimension.name == "seated");
            assert!(printed || !checked, "{} in {width} × {height}: {:#?}", fitting.name, setup.fitting);
        }
    }
    // One in fifty has more small parts in a row than a pocket card has room for.
    assert!(lacking.len() <= 2, "{lacking:?}");
}

#[test]
fn drawings_keep_to_their_room_and_size() {
    let fonts = fonts();
    for fitting in all().take(60) {
        for options in [page(&fonts), card(&fonts)] {
            let drawing = assembly(&fitting, &limits(), &options);
            assert!(drawing.width <= options.width && drawing.height <= options.height, "{}", fitting.name);
            assert!(drawing.to_svg().len() < 60_000);
            assert!(!is_refused(&drawing.body), "{}", fitting.name);
        }
    }
}

#[test]
fn a_size_that_is_not_finite_is_not_drawn() {
    let fonts = fonts();
    for (size, options) in [(f64::NAN, page(&fonts)), (f64::NAN, card(&fonts)), (f64::INFINITY, page(&fonts))]
    {
        let mut fitting = collet_dead_end();
        fitting.insertion = Some(mm(size));
        let drawing = assembly(&fitting, &limits(), &options);
        assert!(is_refused(&drawing.body) && drawing.body.contains("not drawn"), "{}", drawing.body);
        assert!(!drawing.body.contains("<path") && drawing.dimensions.is_empty());
        let size = (drawing.width, drawing.height);
        assert!(size.0.is_positive() && size.1.is_positive() && size.0 <= options.width, "{size:?}");
    }
}

#[test]
fn a_part_with_a_size_that_is_not_finite_is_not_drawn() {
    let (fonts, nan) = (fonts(), f64::NAN);
    let sound = collet_dead_end();
    let cones = [collet(nan, 5.0, 60.0, 6.0), collet(14.3, nan, 60.0, 6.0), collet(14.3, 5.0, nan, 6.0)];
    let bodies = [collet_body(5.0, nan, 70.0), collet_body(5.0, 40.0, nan)];
    let roles = cones.map(|cone| (Role::Cone, cone)).into_iter().chain(bodies.map(|body| (Role::Body, body)));
    for (role, geometry) in roles {
        let mut fitting = sound.clone();
        let item = fitting.items.iter_mut().find(|item| item.part.role == role).unwrap();
        item.part = part("9", role, "brass", Some(geometry.clone()));
        let drawing = assembly(&fitting, &limits(), &page(&fonts));
        assert!(is_refused(&drawing.body), "{geometry:?}");
        let drawings = stages(&fitting, &limits(), &page(&fonts));
        assert!(drawings.iter().all(|drawing| is_refused(&drawing.body)), "{geometry:?} in stages");
        if role == Role::Cone {
            let drawing = line_up(&fitting.items[0].part, &[fitting.items[2].part.clone()], &page(&fonts));
            assert!(is_refused(&drawing.body), "{geometry:?} side by side");
        }
    }
}

#[test]
fn collets_sit_as_computed_and_touch_their_seat() {
    for fitting in all() {
        let setup = Setup::of(&fitting, &limits());
        let Some(seat) = ColletSeat::of(&setup, Pose::default()) else { continue };
        let computed = setup.outcome.as_ref().and_then(|outcome| outcome.stand_out).expect("a stand-out");
        assert!((seat.flank[1].0 - computed.mm()).abs() < TOUCH, "{}", fitting.name);
        assert!(seat.bore >= setup.diameter() / 2.0 - TOUCH);
        let [small, large] = seat.flank;
        let touching = at(small.0.max(-1.0), 0.0).x;
        let flank = small.1 + (large.1 - small.1) * (touching - small.0) / (large.0 - small.0);
        let bore = radius_at(&seat.axial.bore, touching);
        assert!((flank - bore).abs() < TOUCH, "{} cone {flank} seat {bore}", fitting.name);
    }
}

#[test]
fn fittings_are_judged_by_the_limits_of_their_catalogue() {
    let fitting = collet_dead_end();
    let verdict = |reserve: &str| {
        let limits = limits_of(&format!("limits: {{ closure_reserve_mm: {reserve} }}"));
        Setup::of(&fitting, &limits).outcome.map(|outcome| outcome.verdict)
    };
    assert_eq!(verdict("0.3"), Some(Verdict::Grips));
    assert_eq!(verdict("0.8"), Some(Verdict::Marginal));
}

#[test]
fn wires_spread_between_cone_and_socket() {
    for fitting in all() {
        let setup = Setup::of(&fitting, &limits());
        let Some(seat) = SpreadingSeat::of(&setup, Pose::default()) else { continue };
        let depth = setup.outcome.as_ref().and_then(|outcome| outcome.depth).expect("a depth");
        assert!((seat.flank[1].0 + depth.mm()).abs() < TOUCH, "{}", fitting.name);
        let (mouth, slope) = seat.taper;
        let bands = seat.bands();
        let (first, last) = (&bands[0], &bands[bands.len() - 1]);
        let [small, large] = seat.flank;
        let middle = at((small.0 + large.0) / 2.0, (small.1 + large.1) / 2.0);
        assert!(distance(first, middle) < TOUCH, "the inner wires leave the cone");
        let wall = at(large.0, mouth + large.0 * slope);
        assert!(distance(last, wall) < TOUCH, "the outer wires leave the socket");
        for point in last.sides().map(|side| side.p0).filter(|point| point.x < 0.0 && point.x > large.0 - 1.0)
        {
            assert!(point.y <= mouth + point.x * slope + TOUCH, "a wire runs through the socket");
        }
    }
}

#[test]
fn wedges_touch_wire_and_wall() {
    for fitting in all() {
        let setup = Setup::of(&fitting, &limits());
        let Some(seat) = WedgeSeat::of(&setup, Pose::default()) else { continue };
        for (x, thickness) in [seat.small, seat.large] {
            let wall = seat.mouth + x * seat.slope;
            assert!((seat.wire + thickness - wall).abs() < TOUCH, "{} at {x}: {wall}", fitting.name);
        }
    }
}

#[test]
fn stages_share_one_frame() {
    let fonts = fonts();
    for fitting in (0..28).map(fitting_at_random) {
        let [apart, entered, seated] = stages(&fitting, &limits(), &page(&fonts));
        assert_eq!((apart.width, apart.height), (seated.width, seated.height));
        assert_eq!((entered.width, entered.height), (seated.width, seated.height));
    }
}

/// What stands where must not jump from stage to stage: balloons, and the body, which nothing moves.
#[test]
fn stages_keep_balloons_and_body_in_their_places() {
    let fonts = fonts();
    let (mut alike, mut all) = (0, 0);
    let dead_ends = [Family::ConeDeadEnd, Family::WedgeDeadEnd];
    let few = |fitting: &Fitting| dead_ends.contains(&fitting.family) && fitting.items.len() <= 4;
    for fitting in self::all().filter(few).take(20) {
        let options = Options::new(&fonts, mm(78.0), mm(56.0));
        let drawings = stages(&fitting, &limits(), &options).map(|drawing| drawing.body);
        let rings = drawings.each_ref().map(|body| rings(body, 0.86 * options.type_size.mm()));
        all += 1;
        alike += usize::from(rings[0].len() == fitting.items.len() && rings.iter().all(|of| *of == rings[0]));
    }
    assert_eq!((alike, all), (20, 20));
}

/// The circles of a radius, as they are written.
fn rings(body: &str, radius: f64) -> Vec<&str> {
    let end = format!(" r=\"{}\"", crate::sketch::number(radius));
    let circles = body.split("<circle").skip(1).filter_map(|rest| rest.split("/>").next());
    let mut rings: Vec<&str> = circles
        .filter(|circle| circle.ends_with(&end))
        .filter_map(|circle| circle.find("cx=").map(|from| &circle[from..]))
        .collect();
    rings.sort_unstable();
    rings
}

#[test]
fn stages_say_what_moves() {
    let fonts = fonts();
    let [apart, entered, seated] = stages(&collet_dead_end(), &limits(), &page(&fonts));
    assert!(!apart.description.contains("Moving"), "{}", apart.description);
    assert!(
        entered.description.ends_with(" Moving: the conductor, item 3, item 2."),
        "{}",
        entered.description
    );
    assert!(seated.description.ends_with(" Moving: item 3, item 2."), "{}", seated.description);
}

#[test]
fn slip_mark_and_stamp_are_drawn_and_named_where_they_are_stated() {
    let fonts = fonts();
    let says = |fitting: &Fitting, word: &str| {
        let drawing = assembly(fitting, &limits(), &page(&fonts));
        drawing.body.contains(&format!(">{word}<"))
    };
    let mut fitting = collet_dead_end();
    let painted = |fitting: &Fitting| assembly(fitting, &limits(), &page(&fonts)).body.contains("sk-signal");
    assert!(!says(&fitting, "slip mark") && !painted(&fitting) && !says(&fitting, "stamp"));
    fitting.slip_mark = Some(true);
    let item = fitting.items.iter_mut().find(|item| item.part.role == Role::Cone).unwrap();
    let mut cone = (*item.part).clone();
    cone.stamp_on = Some(StampPlace::ThickEnd);
    item.part = Arc::new(cone.clone());
    assert!(says(&fitting, "slip mark") && painted(&fitting));
    assert!(!says(&fitting, "stamp"), "there is no stamp to show the place of");
    cone.stamp = "B 14.0".to_owned();
    fitting.items.iter_mut().find(|item| item.part.role == Role::Cone).unwrap().part = Arc::new(cone);
    assert!(says(&fitting, "stamp"));
}

fn radius_at(profile: &[(f64, f64)], x: f64) -> f64 {
    profile
        .windows(2)
        .find(|pair| pair[0].0 <= x && x <= pair[1].0)
        .map(|pair| pair[0].1 + (pair[1].1 - pair[0].1) * (x - pair[0].0) / (pair[1].0 - pair[0].0))
        .expect("within the seat")
}
