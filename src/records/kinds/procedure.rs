//! A procedure as written.

use crate::records::kinds::fitting::{IfWrongRecord, TighteningRecord};
use crate::records::record::record;
use crate::records::{Field, Identifier, Name, Prose, Worded};

record! {
    /// How fittings that go together alike are put together.
    ProcedureRecord ("a procedure") {
        /// Its id.
        id: Identifier, Required;
        /// Its name.
        name: Name, Required;
        /// What is tightened and how.
        tightening: Vec<Field<TighteningRecord>>, Optional;
        /// What a second person checks before the fitting is closed.
        witness: Worded<Prose>, Optional;
        /// Assembly steps, at most seven.
        steps: Vec<Field<Worded<Name>>>, Optional;
        /// What makes a fitting unfit.
        reject_if: Vec<Field<Worded<Name>>>, Optional;
        /// What a check that fails calls for.
        if_wrong: IfWrongRecord, Optional;
    }
}
