//! Which torque a fitting is closed with, against those of other fittings.

use crate::facts::TighteningFacts;
use crate::notes::address;
use crate::training::Input;
use crate::training::question::{About, Answer, Kind, Question};
use crate::units::{Range, Torque};

/// A torque that some fitting is tightened to.
struct Stated {
    window: Range<Torque>,
    text: String,
    fitting: String,
}

/// Each torque of each fitting. Windows that overlap are never offered against each other.
pub(in crate::training) fn which_torque(input: Input<'_>) -> Vec<Question> {
    let stated: Vec<(Stated, TighteningFacts)> = input
        .built()
        .flat_map(|(fitting, _, facts)| {
            let lines = fitting.tightening.iter().zip(&facts.tightening);
            lines.filter_map(|(line, facts)| {
                let (text, number) = (facts.torque.clone(), fitting.number.clone());
                Some((Stated { window: line.torque?, text, fitting: number }, facts.clone()))
            })
        })
        .collect();
    let question = |(own, line): &(Stated, TighteningFacts)| {
        let mut wrong: Vec<&Stated> = Vec::new();
        for (other, _) in &stated {
            let is_clear = |one: &Stated| {
                one.window.least() >= other.window.most() || one.window.most() <= other.window.least()
            };
            let is_other = |one: &Stated| one.window != other.window && is_clear(one);
            if is_other(own) && wrong.iter().all(|one| is_other(one)) {
                wrong.push(other);
            }
        }
        let far = |other: &&Stated| (other.window.least().nm() - own.window.least().nm()).abs();
        wrong.sort_by(|one, other| far(one).total_cmp(&far(other)));
        let name = input.catalogue().fittings.get(&own.fitting).map_or("", |fitting| fitting.name.as_str());
        Question {
            kind: Kind::Torque,
            about: About { fitting: own.fitting.clone(), ..About::default() },
            asks: format!("{} {name}: which torque for the {}?", own.fitting, line.item),
            picture: None,
            right: Answer::new(
                &own.text,
                &own.text,
                "Torque does not prove grip: stamp, mark and stand-out do.",
            ),
            wrong: wrong
                .into_iter()
                .map(|other| Answer::new(&other.text, &other.text, format!("That of {}.", other.fitting)))
                .collect(),
            card: own.fitting.clone(),
            page: address::fitting(&own.fitting).file(),
        }
    };
    stated.iter().map(question).collect()
}
