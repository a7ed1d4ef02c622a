//! Every drawing that the program makes of a catalogue, each with what it is of.

use fittingcards::cards::wrong_part;
use fittingcards::catalogue::{Catalogue, Conductor, Fitting, Limits};
use fittingcards::mixups::{self, BodyMixups};
use fittingcards::sketch::{
    Detail, Drawing, Options, assembly, conductor_section, conductor_to_lay_on, end_views, key, line_up,
    side_by_side, stages, worn_section,
};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;

/// A drawing on the sheet.
pub struct Shown {
    /// The number or id of what it shows; empty for the key.
    pub of: String,
    pub drawing: Drawing,
    /// The most that it may measure: width and height.
    pub room: [f64; 2],
}

pub fn all(catalogue: &Catalogue, fonts: &Fonts) -> Vec<Shown> {
    let limits = &catalogue.settings.limits;
    let mut all = Vec::new();
    catalogue.fittings.values().for_each(|fitting| of_fitting(fitting, limits, fonts, &mut all));
    catalogue.conductors.values().for_each(|conductor| of_conductor(conductor, fonts, &mut all));
    mixups::find(catalogue).bodies.iter().for_each(|body| of_body(body, limits, fonts, &mut all));
    let room = room(fonts, 60.0, 40.0);
    all.extend(key(&room).into_iter().map(|drawing| shown("", drawing, &room)));
    all
}

fn of_fitting(fitting: &Fitting, limits: &Limits, fonts: &Fonts, all: &mut Vec<Shown>) {
    for room in [card(fonts), room(fonts, 170.0, 90.0)] {
        all.push(shown(&fitting.number, assembly(fitting, limits, &room), &room));
    }
    let room = room(fonts, 120.0, 60.0);
    all.extend(
        stages(fitting, limits, &room).into_iter().map(|drawing| shown(&fitting.number, drawing, &room)),
    );
}

fn of_conductor(conductor: &Conductor, fonts: &Fonts, all: &mut Vec<Shown>) {
    let card = card(fonts);
    all.push(shown(&conductor.id, conductor_to_lay_on(conductor, &card), &card));
    for room in [room(fonts, 30.0, 30.0), room(fonts, 90.0, 70.0)] {
        all.push(shown(&conductor.id, conductor_section(conductor, &room), &room));
    }
    if let Some(height) = conductor.wear.as_ref().and_then(|wear| wear.stop_height) {
        let room = room(fonts, 60.0, 50.0);
        all.push(shown(&conductor.id, worn_section(conductor, height, &room), &room));
    }
}

fn of_body(body: &BodyMixups, limits: &Limits, fonts: &Fonts, all: &mut Vec<Shown>) {
    let wide = room(fonts, 120.0, 60.0);
    all.push(shown(&body.body.number, line_up(&body.body, &body.parts, &wide), &wide));
    all.extend(end_views(&body.body, &body.parts, &wide).map(|drawing| shown("ends", drawing, &wide)));
    for case in body.cases.iter().filter(|case| !case.right) {
        let of = format!("{} beside {}", case.part.number, case.fitting.number);
        for room in [room(fonts, 90.0, 36.0), room(fonts, 150.0, 60.0)] {
            let drawing = side_by_side(&case.fitting, limits, &wrong_part(case), &room);
            all.push(shown(&of, drawing, &room));
        }
    }
}

fn shown(of: &str, drawing: Drawing, room: &Options) -> Shown {
    Shown { of: of.to_owned(), drawing, room: [room.width.mm(), room.height.mm()] }
}

fn room(fonts: &Fonts, width: f64, height: f64) -> Options<'_> {
    Options::new(fonts, Length::from_mm(width), Length::from_mm(height))
}

fn card(fonts: &Fonts) -> Options<'_> {
    Options { detail: Detail::Card, ..room(fonts, 66.0, 28.0) }
}
