//! A procedure as written.

use crate::records::kinds::fitting::{IfWrongRecord, TighteningRecord};
use crate::records::kinds::step::MOST_STEPS;
use crate::records::record::record;
use crate::records::{Field, Identifier, Name, Prose, StepRecord, Truth, Worded};

record! {
    /// How fittings that go together alike are put together.
    ProcedureRecord ("a procedure") {
        /// The id that fittings name the procedure by.
        /// Example: `collet-41`
        id: Identifier, Required;
        /// Its name.
        /// Example: `Closing collet body ST 41`
        name: Name, Required;
        /// What is tightened, and how.
        /// Example: `[{ item: closing screw, torque_Nm: { min: 80, max: 90 } }]`
        tightening: Vec<Field<TighteningRecord>>, Optional;
        /// What a second person checks before the fitting is closed.
        /// Example: `A second person reads stamp {stamp}.`
        witness: Worded<Prose>, Optional;
        /// Assembly steps, at most seven short lines: texts, or texts with the stage that they belong to.
        /// Example: `["Push the wire in: {insertion} inside, tail {tail}."]`
        steps: Vec<Field<StepRecord>>, Optional, 0..=MOST_STEPS;
        /// Whether a slip mark is painted on the conductor, where it goes in, once the fitting is closed.
        /// Default: as no: drawings show none
        /// Example: `true`
        slip_mark: Truth, Optional;
        /// What makes a fitting unfit for use.
        /// Example: `[Stand-out outside its window]`
        reject_if: Vec<Field<Worded<Name>>>, Optional;
        /// What to do where a check fails.
        /// Default: the words of the fitting's family
        /// Example: `{ before_load: Open it and begin again. }`
        if_wrong: IfWrongRecord, Optional;
    }
}
