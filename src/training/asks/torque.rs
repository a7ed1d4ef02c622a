//! Which torque a fitting is closed with, against those of other fittings.

use crate::notes::address;
use crate::training::Input;
use crate::training::question::{About, Answer, Kind, Question};
use crate::units::{Range, Torque};

/// So many windows are known at most: more than any railway has.
const MOST: usize = 200;

/// A torque that some fitting is tightened to.
struct Stated {
    window: Range<Torque>,
    /// The window in words.
    text: String,
    /// What is tightened.
    item: String,
    fitting: String,
    name: String,
}

impl Stated {
    /// Whether another window has no torque in common with this one, but for an end.
    fn is_clear_of(&self, other: &Self) -> bool {
        self.window.least() >= other.window.most() || self.window.most() <= other.window.least()
    }

    /// Whether both are torques of one item of one fitting.
    fn is_of_the_item_of(&self, other: &Self) -> bool {
        (&self.fitting, &self.item) == (&other.fitting, &other.item)
    }

    fn how_far(&self, other: &Self) -> f64 {
        (other.window.least().nm() - self.window.least().nm()).abs()
    }
}

/// Each torque of each fitting, but for what is tightened to several. Windows that overlap are never offered against each
/// other.
pub(in crate::training) fn which_torque(input: Input<'_>) -> Vec<Question> {
    let stated = stated(input);
    let mut windows: Vec<&Stated> = Vec::new();
    for one in &stated {
        if windows.len() < MOST && windows.iter().all(|known| known.window != one.window) {
            windows.push(one);
        }
    }
    let asked =
        stated.iter().filter(|own| stated.iter().filter(|other| own.is_of_the_item_of(other)).count() == 1);
    asked.map(|own| question(own, &windows)).collect()
}

fn stated(input: Input<'_>) -> Vec<Stated> {
    let of_fitting = input.built().flat_map(|(fitting, _, facts)| {
        fitting.tightening.iter().zip(&facts.tightening).filter_map(|(line, words)| {
            Some(Stated {
                window: line.torque?,
                text: words.torque.clone(),
                item: words.item.clone(),
                fitting: fitting.number.clone(),
                name: fitting.name.clone(),
            })
        })
    });
    of_fitting.collect()
}

/// Where another torque is right.
fn whose(other: &Stated, own: &Stated) -> String {
    if other.fitting == own.fitting {
        format!("That of its {}.", other.item)
    } else {
        format!("That of {}.", other.fitting)
    }
}

fn question(own: &Stated, windows: &[&Stated]) -> Question {
    let mut clear: Vec<&Stated> = windows
        .iter()
        .copied()
        .filter(|other| own.window != other.window && own.is_clear_of(other))
        .collect();
    clear.sort_by(|one, other| own.how_far(one).total_cmp(&own.how_far(other)));
    let mut wrong: Vec<&Stated> = Vec::new();
    for other in clear {
        if wrong.iter().all(|one| one.is_clear_of(other)) {
            wrong.push(other);
        }
    }
    let why = "As the card states. Torque does not prove grip.";
    let answer = |other: &Stated, why: String| Answer::new(&other.text, &other.text, why);
    Question {
        kind: Kind::Torque,
        about: About { fitting: own.fitting.clone(), ..About::default() },
        asks: format!("{} {}: which torque for the {}?", own.fitting, own.name, own.item),
        picture: None,
        right: answer(own, why.to_owned()),
        wrong: wrong.into_iter().map(|other| answer(other, whose(other, own))).collect(),
        card: own.fitting.clone(),
        page: address::fitting(&own.fitting).file(),
    }
}
