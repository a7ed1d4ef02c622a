//! A conductor as written.

use crate::records::kinds::material::SourceRecord;
use crate::records::record::{one_of, record};
use crate::records::{
    Count, Deg, Duty, Field, Identifier, KgPerKm, Kn, Mm, Mm2, NPerMm2, Name, OhmPerKm, Percent, Plain,
    Prose, RopeCoreWord, Size, SizeOrZero, Text, WearBasis,
};

record! {
    /// What fittings hold.
    ConductorRecord ("a conductor") {
        /// Its id.
        id: Identifier, Required;
        /// Its name.
        name: Name, Required;
        /// What it is for.
        duty: Duty, Required;
        /// What it is made of; of a composite, the outer group.
        material: Name, Required;
        /// Nominal size, a name rather than a measurement.
        nominal_size as "nominal_size_mm2": Size<Mm2, 10_000>, Optional;
        /// How it is built.
        construction: ConstructionRecord, Required;
        /// Tolerances.
        tolerance: ToleranceRecord, Optional;
        /// What the specification prints.
        stated: StatedRecord, Optional;
        /// What separates it where a caliper can't.
        identity: IdentityRecord, Optional;
        /// Where its figures come from.
        source: SourceRecord, Optional;
        /// What must be known before it is handled.
        caution: Prose, Optional;
    }
}

record! {
    /// Tolerances of a conductor.
    ToleranceRecord ("a tolerance") {
        /// On the overall diameter.
        overall_diameter as "overall_diameter_mm": SizeOrZero<Mm, 20>, Optional;
        /// On the wire diameter.
        wire_diameter as "wire_diameter_mm": SizeOrZero<Mm, 5>, Optional;
    }
}

record! {
    /// What a specification prints of a conductor.
    StatedRecord ("what is stated") {
        /// Metal section.
        section as "section_mm2": Size<Mm2, 20_000>, Optional;
        /// Overall diameter.
        overall_diameter as "overall_diameter_mm": Size<Mm, 500>, Optional;
        /// Mass.
        mass as "mass_kg_per_km": Size<KgPerKm, 200_000>, Optional;
        /// Breaking load.
        breaking_load as "breaking_load_kN": Size<Kn, 10_000>, Optional;
        /// Resistance at 20 °C.
        resistance as "resistance_20c_ohm_per_km": Size<OhmPerKm, 10_000>, Optional;
    }
}

record! {
    /// What separates a conductor where a caliper can't.
    IdentityRecord ("an identity") {
        /// Text on the drum tag.
        drum_tag: Text, Optional;
        /// Tracer thread or wire.
        tracer: Text, Optional;
        /// Identification grooves of a contact wire.
        grooves: Text, Optional;
    }
}

one_of! {
    /// How a conductor is built.
    ConstructionRecord ("a construction") {
        /// One round wire.
        Solid = "solid": SolidRecord;
        /// Round wires of one size in layers.
        Stranded = "stranded": GroupRecord;
        /// A core with layers of another material round it.
        Composite = "composite": CompositeRecord;
        /// A wire rope.
        Rope = "rope": RopeRecord;
        /// Grooved contact wire.
        Grooved = "grooved": GroovedRecord;
        /// A round tube.
        Tube = "tube": TubeRecord;
        /// A rectangular bar.
        Bar = "bar": BarRecord;
    }
}

record! {
    /// One round wire.
    SolidRecord ("a solid conductor") {
        /// Its diameter.
        diameter as "diameter_mm": Size<Mm, 100>, Required;
    }
}

record! {
    /// Wires of one diameter: how many, or layer by layer.
    GroupRecord ("a group of wires") {
        /// How many wires, in their usual arrangement.
        wires: Count<1, 1000>, Optional;
        /// Wires layer by layer, innermost first.
        layers: Vec<Field<Count<1, 200>>>, Optional;
        /// Diameter of one wire.
        wire_diameter as "wire_diameter_mm": Size<Mm, 20>, Required;
        /// Lay ratios of the layers round the centre, innermost first.
        lay_ratios: Vec<Field<Size<Plain, 200>>>, Optional;
    }
}

record! {
    /// A core with an outer group round it.
    CompositeRecord ("a composite conductor") {
        /// The core.
        core: CoreRecord, Required;
        /// The wires round it, of the conductor's own material.
        outer: GroupRecord, Required;
    }
}

record! {
    /// The core of a composite.
    CoreRecord ("a core") {
        /// How many wires, in their usual arrangement.
        wires: Count<1, 1000>, Optional;
        /// Wires layer by layer, innermost first.
        layers: Vec<Field<Count<1, 200>>>, Optional;
        /// Diameter of one wire.
        wire_diameter as "wire_diameter_mm": Size<Mm, 20>, Required;
        /// Lay ratios of the layers round the centre, innermost first.
        lay_ratios: Vec<Field<Size<Plain, 200>>>, Optional;
        /// What it is made of.
        material: Name, Optional;
    }
}

record! {
    /// A wire rope by class and core (EN 12385).
    RopeRecord ("a rope") {
        /// The class, such as 7x19.
        construction: Name, Required;
        /// The core.
        core: RopeCoreWord, Required;
        /// Nominal diameter.
        diameter as "diameter_mm": Size<Mm, 200>, Required;
        /// Rope grade.
        grade as "grade_N_per_mm2": Size<NPerMm2, 3000>, Optional;
    }
}

record! {
    /// Profile of a grooved contact wire; the letters are those of EN 50149.
    GroovedRecord ("a grooved wire") {
        /// Height, A.
        height as "height_mm": Size<Mm, 50>, Required;
        /// Width, B.
        width as "width_mm": Size<Mm, 50>, Required;
        /// Distance between the grooves' apexes, E.
        apex_width as "apex_width_mm": Size<Mm, 50>, Required;
        /// Depth of the apexes under the top, K.
        apex_depth as "apex_depth_mm": Size<Mm, 50>, Required;
        /// Fillet radius at the root of the groove, R.
        fillet as "fillet_mm": SizeOrZero<Mm, 10>, Required;
        /// Slope of the lower flank below the horizontal, G.
        lower_flank as "lower_flank_deg": Size<Deg, 90>, Required;
        /// Slope of the upper flank above the horizontal, H.
        upper_flank as "upper_flank_deg": Size<Deg, 90>, Required;
        /// How far it may wear.
        wear: WearRecord, Optional;
    }
}

record! {
    /// How far a contact wire may wear.
    WearRecord ("wear") {
        /// Loss of section at which it must go.
        limit as "limit_percent": Size<Percent, 100>, Optional;
        /// The section that percent is of.
        basis: WearBasis, Optional;
        /// Remaining height at which replacement is planned.
        plan_height as "plan_height_mm": Size<Mm, 50>, Optional;
        /// Remaining height at which it is replaced.
        replace_height as "replace_height_mm": Size<Mm, 50>, Optional;
        /// Remaining height at which traffic stops.
        stop_height as "stop_height_mm": Size<Mm, 50>, Optional;
    }
}

record! {
    /// A round tube.
    TubeRecord ("a tube") {
        /// Outside diameter.
        outside_diameter as "outside_diameter_mm": Size<Mm, 500>, Required;
        /// Wall thickness.
        wall as "wall_mm": Size<Mm, 100>, Required;
    }
}

record! {
    /// A rectangular bar.
    BarRecord ("a bar") {
        /// The longer side.
        width as "width_mm": Size<Mm, 500>, Required;
        /// The shorter side.
        thickness as "thickness_mm": Size<Mm, 200>, Required;
        /// Radius of the four corners.
        corner_radius as "corner_radius_mm": SizeOrZero<Mm, 100>, Optional;
    }
}
