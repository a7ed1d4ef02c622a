//! What the card of a fitting must not lack, by its family.

use super::words;
use crate::catalogue::{CardKey, Catalogue, Family, Fitting, Item, Limits, Part, Role, StandOutFrom};
use crate::grip::{Geometry, rope_grips};
use crate::mixups::{Mixups, proven_in};

/// What a fitting's record lacks that its card must not lack, but for what it says that it has no need of; each
/// by the record key that would state it. Nothing of a fitting that is not built any more.
#[must_use]
pub fn lacking(fitting: &Fitting, catalogue: &Catalogue, mixups: &Mixups) -> Vec<CardKey> {
    let mut keys = unstated(fitting, catalogue, mixups);
    keys.retain(|key| !fitting.complete_without.keys.contains(key));
    keys
}

/// The same, whatever the record says that it has no need of.
#[must_use]
pub fn unstated(fitting: &Fitting, catalogue: &Catalogue, mixups: &Mixups) -> Vec<CardKey> {
    if fitting.status.is_out_of_use() {
        return Vec::new();
    }
    let look = Look { fitting, catalogue, mixups };
    CardKey::ALL.iter().copied().filter(|key| look.lacks(*key)).collect()
}

/// What is looked at.
struct Look<'a> {
    fitting: &'a Fitting,
    catalogue: &'a Catalogue,
    mixups: &'a Mixups,
}

impl Look<'_> {
    fn lacks(&self, key: CardKey) -> bool {
        let fitting = self.fitting;
        let seats = matches!(fitting.family, Family::ConeDeadEnd | Family::WedgeDeadEnd);
        let (sleeve, eye) = (fitting.family == Family::Sleeve, fitting.family == Family::RopeThimble);
        match key {
            CardKey::Steps => fitting.steps.is_empty(),
            CardKey::RejectIf => fitting.reject_if.is_empty(),
            CardKey::LineTensionMax => fitting.line_tension_max.is_none(),
            CardKey::HoldingLoad => fitting.holding_load.is_none(),
            CardKey::Proof => !self.is_proven(),
            CardKey::Witness => fitting.witness.is_none() && self.has_hidden_mix_up(),
            CardKey::Stamp => seats && fitting.gripping().all(|item| item.part.stamp.is_empty()),
            CardKey::Mark => seats && fitting.mark.is_none() && self.is_shared(),
            CardKey::Insertion => (seats || sleeve) && fitting.insertion.is_none(),
            CardKey::Tail => seats && fitting.tail.is_none() && !self.spreads(),
            CardKey::StandOut => seats && !self.is_measured(),
            CardKey::Tightening => self.is_tightened() && fitting.tightening.is_empty(),
            CardKey::Torque => {
                self.is_tightened() && fitting.tightening.iter().any(|line| line.torque.is_none())
            }
            CardKey::Thimble => eye && !self.has(Role::Thimble),
            CardKey::Ferrule => eye && !self.has(Role::Ferrule) && !self.has(Role::RopeGrip),
            CardKey::RopeGrip => eye && self.has(Role::RopeGrip) && self.lacks_grips(),
            CardKey::Die => self.pressed().any(|part| pressed(part).is_none_or(|(die, _)| !die)),
            CardKey::Pressed => self.pressed().any(|part| pressed(part).is_none_or(|(_, size)| !size)),
        }
    }

    fn has(&self, role: Role) -> bool {
        self.fitting.items.iter().any(|item| item.part.role == role)
    }

    /// Whether a screw, nut or bolt closes it, or its family is closed by nothing else.
    fn is_tightened(&self) -> bool {
        match self.fitting.family {
            Family::ConeDeadEnd | Family::WedgeDeadEnd => {
                [Role::Screw, Role::Nut, Role::Bolt].into_iter().any(|role| self.has(role))
            }
            Family::RopeThimble => self.has(Role::RopeGrip),
            Family::ParallelGroove => true,
            Family::Sleeve | Family::Other => false,
        }
    }

    fn is_measured(&self) -> bool {
        self.fitting.stand_out.as_ref().is_some_and(|stated| match stated.from {
            StandOutFrom::None => !self.fitting.reject_if.is_empty(),
            _ => stated.seated.is_some(),
        })
    }

    fn spreads(&self) -> bool {
        self.fitting.gripping().any(|item| matches!(item.part.geometry, Some(Geometry::SpreadingCone(_))))
    }

    fn is_shared(&self) -> bool {
        self.fitting
            .bodies()
            .filter_map(|item| self.mixups.body(&item.part.number))
            .any(|body| body.parts.iter().filter(|part| part.role.grips()).count() > 1)
    }

    fn has_hidden_mix_up(&self) -> bool {
        self.mixups.wrong_parts(self.fitting).iter().any(|case| case.comes.hidden)
            || self.mixups.wrong_kits(self.fitting).iter().any(|kit| kit.comes.hidden)
    }

    fn grips(&self) -> u32 {
        let grips = self.fitting.items.iter().filter(|item| item.part.role == Role::RopeGrip);
        grips.map(|item| item.quantity).sum()
    }

    /// Whether there are fewer grips than the standard asks for; a rope beyond its table is not judged by it.
    fn lacks_grips(&self) -> bool {
        rope_grips(self.fitting.conductor().section.overall_diameter)
            .is_some_and(|asked| self.grips() < asked.number)
    }

    fn pressed(&self) -> impl Iterator<Item = &Part> {
        let of_family = match self.fitting.family {
            Family::Sleeve => Some(Role::Sleeve),
            Family::RopeThimble => Some(Role::Ferrule),
            _ => None,
        };
        let parts = self.fitting.items.iter().map(|item| &*item.part);
        parts.filter(move |part| Some(part.role) == of_family)
    }

    /// Whether each gripping part has a proof on each conductor that counts.
    fn is_proven(&self) -> bool {
        let fitting = self.fitting;
        let proven = |item: &Item| {
            fitting.conductors.iter().all(|held| proven_in(fitting, &item.part, held, self.limits()))
        };
        fitting.gripping().all(proven)
    }

    fn limits(&self) -> &Limits {
        &self.catalogue.settings.limits
    }
}

/// Whether a pressed part states its die, and its size after pressing.
fn pressed(part: &Part) -> Option<(bool, bool)> {
    match &part.geometry {
        Some(Geometry::Sleeve(tube) | Geometry::Ferrule(tube)) => {
            Some((tube.die.as_ref().is_some_and(|die| !die.is_empty()), tube.pressed.is_some()))
        }
        _ => None,
    }
}

/// What is lacking, in the words of a card.
pub(super) fn in_words(keys: &[CardKey]) -> String {
    let words: Vec<&str> = keys.iter().map(|key| words::card_key(*key)).collect();
    if words.is_empty() { String::new() } else { format!("Incomplete: no {}", words.join(", ")) }
}
