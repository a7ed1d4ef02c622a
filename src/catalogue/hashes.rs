//! What records hold, as hashes: to know whether something that is made from them has changed.

use super::{AssemblyStage, Catalogue, Conductor, Fitting, Item, Part};
use blake3::Hash;
use std::collections::BTreeMap;
use std::fmt::Debug;
use std::ptr;
use std::sync::{Arc, OnceLock};

/// The hash of each record with all that it refers to, as `Debug` shows it, so that no field is forgotten. Places in
/// files are left out, and of fittings what only texts come from. Each is worked out once, when it is first asked for,
/// and stands in those of the records that refer to it.
#[derive(Debug, Default)]
pub struct RecordHashes {
    fittings: Known<Fitting>,
    parts: Known<Part>,
    conductors: Known<Conductor>,
}

impl RecordHashes {
    /// Those of the records of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Self {
        Self {
            fittings: Known::of(&catalogue.fittings),
            parts: Known::of(&catalogue.parts),
            conductors: Known::of(&catalogue.conductors),
        }
    }

    /// The hash of a fitting as drawings show it: without its wordings and notices, of steps the stages alone. Whatever
    /// prints the words is made from them too.
    #[must_use]
    pub fn fitting_as_drawn(&self, fitting: &Fitting) -> Hash {
        self.fittings.hash(&fitting.number, fitting, || self.drawn(fitting))
    }

    fn drawn(&self, fitting: &Fitting) -> Hash {
        // Every field is named: a new one does not compile before it is settled whether drawings have it.
        let Fitting {
            number,
            name,
            family,
            conductors,
            items,
            mark,
            mark_seen_after_assembly,
            stamp,
            stand_out,
            insertion,
            tail,
            holding_load,
            line_tension_max,
            procedure,
            tightening,
            witness: _,
            steps,
            slip_mark,
            reject_if: _,
            if_wrong: _,
            complete_without,
            notices: _,
            status,
            superseded_by,
            use_instead,
            in_service,
            origin,
        } = fitting;
        let part = |Item { part, quantity }: &Item| (self.part(part), *quantity);
        let items: Vec<(Hash, u32)> = items.iter().map(part).collect();
        let conductors: Vec<Hash> = conductors.iter().map(|one| self.conductor(one)).collect();
        let stages: Vec<Option<AssemblyStage>> = steps.iter().map(|step| step.stage).collect();
        let seen = (mark, mark_seen_after_assembly, stamp, slip_mark, stages, tightening);
        let sizes = (stand_out, insertion, tail, holding_load, line_tension_max);
        let stands = (status, superseded_by, use_instead, in_service, complete_without);
        // How numbers are written decides how dimensions are.
        let written = (&origin.numbers, procedure.as_ref().map(|procedure| &procedure.origin.numbers));
        of_debug(&(number, name, family, items, conductors, seen, sizes, stands, written))
    }

    /// The hash of a part.
    #[must_use]
    pub fn part(&self, part: &Part) -> Hash {
        self.parts.hash(&part.number, part, || of_debug(part))
    }

    /// The hash of a conductor.
    #[must_use]
    pub fn conductor(&self, conductor: &Conductor) -> Hash {
        self.conductors.hash(&conductor.id, conductor, || of_debug(conductor))
    }
}

/// Records of a kind by number or id, with the hashes that were asked for.
#[derive(Debug)]
struct Known<T>(BTreeMap<String, (Arc<T>, OnceLock<Hash>)>);

impl<T> Default for Known<T> {
    fn default() -> Self {
        Self(BTreeMap::new())
    }
}

impl<T> Known<T> {
    fn of(records: &BTreeMap<String, Arc<T>>) -> Self {
        let entry = |(id, record): (&String, &Arc<T>)| (id.clone(), (Arc::clone(record), OnceLock::new()));
        Self(records.iter().map(entry).collect())
    }

    /// That of a record which is no other than the one of that id; what is like it in its id alone is looked at anew.
    fn hash(&self, id: &str, record: &T, hash: impl FnOnce() -> Hash) -> Hash {
        match self.0.get(id) {
            Some((known, once)) if ptr::eq(&**known, record) => *once.get_or_init(hash),
            _ => hash(),
        }
    }
}

fn of_debug(record: &impl Debug) -> Hash {
    // At once: a hash of many small pieces takes longer than the pieces.
    blake3::hash(format!("{record:-?}").as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::load;
    use crate::source::{FilePath, MemoryWorld};

    const FITTING: &str =
        "number: F-1\nname: End\nfamily: wedge-dead-end\nconductor: rope\nparts: [P-1, P-2]\n";
    const PARTS: &str = "number: P-1\nname: Body\nrole: body\nmaterial: brass\n---\n\
                         number: P-2\nname: Wedge\nrole: wedge\nmaterial: brass\n";
    const ROPE: &str = "id: rope\nname: Rope\nduty: stay\nmaterial: steel-st1a\n\
                        construction: { solid: { diameter_mm: 8 } }\n";

    fn catalogue(fitting: &str, parts: &str, rope: &str) -> Catalogue {
        let settings = "title: Ends\nowner: Tarn Light Railway\nedition: \"1\"\ncaution: Demo.\n";
        let world = MemoryWorld::new()
            .with(FilePath::catalogue("catalogue.yaml"), settings)
            .with(FilePath::catalogue("conductors/rope.yaml"), rope)
            .with(FilePath::catalogue("parts/all.yaml"), parts)
            .with(FilePath::catalogue("fittings/all.yaml"), fitting);
        load(&world).unwrap().catalogue
    }

    fn of(fitting: &str, parts: &str, rope: &str) -> Hash {
        let catalogue = catalogue(fitting, parts, rope);
        RecordHashes::of(&catalogue).fitting_as_drawn(&catalogue.fittings["F-1"])
    }

    #[test]
    fn a_fitting_has_another_hash_where_anything_that_it_refers_to_has_changed() {
        let first = of(FITTING, PARTS, ROPE);
        assert_eq!(first, of(&format!("# The same further down.\n{FITTING}"), PARTS, ROPE));
        let others = [
            of(&FITTING.replace("End", "Anchor"), PARTS, ROPE),
            of(&FITTING.replace("[P-1, P-2]", "[P-2, P-1]"), PARTS, ROPE),
            of(&FITTING.replace("P-2]", "{ part: P-2, quantity: 2 }]"), PARTS, ROPE),
            of(FITTING, &PARTS.replace("Wedge", "Key"), ROPE),
            of(FITTING, PARTS, &ROPE.replace("mm: 8", "mm: 9")),
            of(FITTING, PARTS, &ROPE.replace("Rope", "Stay")),
        ];
        for (nth, other) in others.iter().enumerate() {
            assert_ne!(first, *other, "change {nth}");
        }
    }

    #[test]
    fn the_words_of_a_fitting_are_no_drawing_and_the_stages_of_its_steps_are() {
        let with = |more: &str| of(&format!("{FITTING}{more}"), PARTS, ROPE);
        let steps = |first: &str| with(&format!("steps: [{{ text: {first}, stage: apart }}, Drive it]\n"));
        assert_eq!(steps("Wipe it"), steps("Wipe it dry"));
        assert_eq!(with("witness: Read the stamp\n"), with("witness: Read the mark\n"));
        assert_eq!(with("reject_if: [A crack]\n"), with("reject_if: [A burr]\n"));
        let staged = |stage: &str| with(&format!("steps: [{{ text: Wipe it, stage: {stage} }}, Drive it]\n"));
        assert_ne!(staged("apart"), staged("entered"));
    }

    #[test]
    fn a_record_is_not_taken_for_another_of_its_number() {
        let catalogue = catalogue(FITTING, PARTS, ROPE);
        let hashes = RecordHashes::of(&catalogue);
        let known = &catalogue.fittings["F-1"];
        let other = Fitting { name: "Anchor".to_owned(), ..(**known).clone() };
        assert_ne!(hashes.fitting_as_drawn(known), hashes.fitting_as_drawn(&other));
        assert_eq!(hashes.fitting_as_drawn(known), hashes.fitting_as_drawn(&(**known).clone()));
        let part = Part { stamp: "X".to_owned(), ..(*catalogue.parts["P-2"]).clone() };
        assert_ne!(hashes.part(&catalogue.parts["P-2"]), hashes.part(&part));
    }
}
