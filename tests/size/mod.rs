//! A catalogue of a large network loads and is audited without an error.

mod booklet;
mod catalogue;
mod made;

use catalogue::{FITTINGS_OF_A_BODY, write_catalogue};
use fittingcards::audit::{self, Context};
use fittingcards::catalogue::load;
use fittingcards::diagnostics::Severity;
use fittingcards::grip::Verdict;
use fittingcards::mixups;
use fittingcards::source::DiskWorld;

const FITTINGS: usize = 1000;

#[test]
fn a_thousand_fittings_over_many_bodies_are_sound() {
    let folder = tempfile::tempdir().expect("a folder for the catalogue");
    write_catalogue(folder.path(), FITTINGS).expect("the catalogue is written");
    let world = DiskWorld::new(folder.path(), folder.path().join("layouts"));

    let loaded = load(&world).expect("the folder is read");
    let mixups = mixups::find(&loaded.catalogue);
    let mut findings = loaded.findings;
    findings.extend(audit::check(Context { catalogue: &loaded.catalogue, mixups: &mixups }));

    let errors = findings.sorted().into_iter().filter(|finding| finding.severity == Severity::Error);
    assert_eq!(errors.map(|finding| &finding.message).next(), None);
    assert_eq!(loaded.catalogue.fittings.len(), FITTINGS);
    assert_eq!(mixups.bodies.len(), FITTINGS / FITTINGS_OF_A_BODY);
    assert_eq!(mixups.cases().count(), FITTINGS * FITTINGS_OF_A_BODY);
    assert!(mixups.cases().filter(|case| case.right).all(|case| case.outcome.verdict == Verdict::Grips));
    assert!(mixups.cases().any(|case| case.danger));
}
