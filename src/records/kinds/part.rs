//! A part as written.

use crate::records::kinds::geometry::GeometryRecord;
use crate::records::record::record;
use crate::records::{
    ColourWord, Count, Day, Field, Identifier, Kn, Name, Reuse, Role, Size, Status, Text, Truth,
};

record! {
    /// One piece of a fitting.
    PartRecord ("a part") {
        /// Its number.
        number: Identifier, Required;
        /// Its name.
        name: Name, Required;
        /// What it does in its fitting.
        role: Role, Required;
        /// What it is made of.
        material: Name, Required;
        /// Drawing number with revision.
        drawing: Text, Optional;
        /// Characters found on it.
        stamp: Text, Optional;
        /// Its mark.
        mark: MarkRecord, Optional;
        /// Whether it may be used again.
        reuse: Reuse, Optional;
        /// Whether it may be used at all.
        status: Status, Optional;
        /// Parts of the same role and interface go into the same place.
        interface: Text, Optional;
        /// Conductors it has been tested on, beside its own.
        proven_on: Vec<Field<ProofRecord>>, Optional;
        /// Its measurements.
        geometry: GeometryRecord, Optional;
    }
}

record! {
    /// Paint, text and notches that tell look-alikes apart.
    MarkRecord ("a mark") {
        /// The paint, by the letter code of IEC 60757.
        colour: ColourWord, Required;
        /// The text on it.
        text: Text, Optional;
        /// Number of notches.
        notches: Count<0, 12>, Optional;
        /// Whether it can be seen on the assembled fitting.
        seen_after_assembly: Truth, Optional;
    }
}

record! {
    /// A test of a part on a conductor.
    ProofRecord ("a proof") {
        /// The conductor it was tested on.
        conductor: Name, Required;
        /// The body that it was tested in.
        body: Name, Optional;
        /// What it held.
        holding_load as "holding_load_kN": Size<Kn, 10_000>, Optional;
        /// The report.
        report: Text, Optional;
        /// When.
        date: Day, Optional;
    }
}
