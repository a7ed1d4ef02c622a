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
        /// The id that records name the conductor by.
        /// Example: `messenger-120`
        id: Identifier, Required;
        /// Its name as crews know it.
        /// Example: `Messenger wire 120`
        name: Name, Required;
        /// What it is for.
        /// Example: `messenger`
        duty: Duty, Required;
        /// Id of its material. Of a composite, that of the outer wires.
        /// Example: `copper-hard-drawn`
        material: Name, Required;
        /// Nominal size: what it is called by, not what it measures.
        /// Example: `120`
        nominal_size as "nominal_size_mm2": Size<Mm2, 10_000>, Optional;
        /// How it is built, by exactly one of its keys.
        /// Example: `{ stranded: { wires: 19, wire_diameter_mm: 2.80 } }`
        construction: ConstructionRecord, Required;
        /// How far its diameters may be from the nominal ones.
        /// Default: tolerances of zero
        /// Example: `{ overall_diameter_mm: 0.1, wire_diameter_mm: 0.03 }`
        tolerance: ToleranceRecord, Optional;
        /// What the specification prints. It is compared with what is computed, and never replaced.
        /// Example: `{ section_mm2: 116.99, overall_diameter_mm: 14.0 }`
        stated: StatedRecord, Optional;
        /// What tells it from others where a caliper can't.
        /// Example: `{ drum_tag: BZ2 120 }`
        identity: IdentityRecord, Optional;
        /// Where its figures come from.
        /// Example: `{ standard: DIN 48201-2, note: from memory }`
        source: SourceRecord, Optional;
        /// What must be known before it is handled.
        /// Example: `Keep away from fresh concrete.`
        caution: Prose, Optional;
    }
}

record! {
    /// Tolerances of a conductor.
    ToleranceRecord ("a tolerance") {
        /// Half-width of the tolerance on the overall diameter.
        /// Default: `0`
        /// Example: `0.1`
        overall_diameter as "overall_diameter_mm": SizeOrZero<Mm, 20>, Optional;
        /// Half-width of the tolerance on the diameter of a wire.
        /// Default: `0`
        /// Example: `0.03`
        wire_diameter as "wire_diameter_mm": SizeOrZero<Mm, 5>, Optional;
    }
}

record! {
    /// What a specification prints of a conductor.
    StatedRecord ("what is stated") {
        /// Metal section: the area of metal, never that of the circle round it.
        /// Default: the computed one is printed
        /// Example: `116.99`
        section as "section_mm2": Size<Mm2, 20_000>, Optional;
        /// Diameter of the circle round the conductor, as a caliper measures it.
        /// Default: the computed one is printed
        /// Example: `14.0`
        overall_diameter as "overall_diameter_mm": Size<Mm, 500>, Optional;
        /// Mass.
        /// Default: the computed one is printed
        /// Example: `1060`
        mass as "mass_kg_per_km": Size<KgPerKm, 200_000>, Optional;
        /// Rated breaking load.
        /// Default: the computed one is printed
        /// Example: `67.6`
        breaking_load as "breaking_load_kN": Size<Kn, 10_000>, Optional;
        /// Resistance at 20 °C.
        /// Default: the computed one is printed
        /// Example: `0.2414`
        resistance as "resistance_20c_ohm_per_km": Size<OhmPerKm, 10_000>, Optional;
    }
}

record! {
    /// What separates a conductor where a caliper can't.
    IdentityRecord ("an identity") {
        /// Text on the tag of the drum.
        /// Example: `BZ2 120`
        drum_tag: Text, Optional;
        /// Colour of the thread or wire that tells it from others.
        /// Example: `red thread`
        tracer: Text, Optional;
        /// Identification grooves of a contact wire.
        /// Example: `two on the top`
        grooves: Text, Optional;
    }
}

one_of! {
    /// How a conductor is built.
    ConstructionRecord ("a construction") {
        /// One round wire.
        /// Example: `{ diameter_mm: 8.0 }`
        Solid = "solid": SolidRecord;
        /// Round wires of one size in layers.
        /// Example: `{ wires: 19, wire_diameter_mm: 2.80 }`
        Stranded = "stranded": GroupRecord;
        /// A core with layers of another material round it.
        /// Example: `{ core: { wires: 7, wire_diameter_mm: 2.68, material: steel-st1a }, outer: { wires: 26, wire_diameter_mm: 3.45 } }`
        Composite = "composite": CompositeRecord;
        /// A wire rope.
        /// Example: `{ construction: 7x19, core: wsc, diameter_mm: 8.0 }`
        Rope = "rope": RopeRecord;
        /// Grooved contact wire.
        /// Example: `{ height_mm: 12.34, width_mm: 12.34, apex_width_mm: 6.80, apex_depth_mm: 4.47, fillet_mm: 0.40, lower_flank_deg: 27, upper_flank_deg: 51 }`
        Grooved = "grooved": GroovedRecord;
        /// A round tube.
        /// Example: `{ outside_diameter_mm: 100, wall_mm: 5 }`
        Tube = "tube": TubeRecord;
        /// A rectangular bar.
        /// Example: `{ width_mm: 40, thickness_mm: 10 }`
        Bar = "bar": BarRecord;
    }
}

record! {
    /// One round wire.
    SolidRecord ("a solid conductor") {
        /// Its diameter.
        /// Example: `8.0`
        diameter as "diameter_mm": Size<Mm, 100>, Required;
    }
}

record! {
    /// Wires of one diameter: how many, or layer by layer.
    GroupRecord ("a group of wires") {
        /// How many wires, in their usual arrangement. A group has either this key or `layers`.
        /// Example: `19`
        wires: Count<1, 1000>, Optional;
        /// Wires layer by layer, innermost first. A group has either this key or `wires`.
        /// Example: `[1, 6, 12]`
        layers: Vec<Field<Count<1, 200>>>, Optional;
        /// Diameter of one wire.
        /// Example: `2.80`
        wire_diameter as "wire_diameter_mm": Size<Mm, 20>, Required;
        /// Lay ratios of the layers round the centre, innermost first.
        /// Default: the usual ones
        /// Example: `[13, 12]`
        lay_ratios: Vec<Field<Size<Plain, 200>>>, Optional;
    }
}

record! {
    /// A core with an outer group round it.
    CompositeRecord ("a composite conductor") {
        /// The wires inside.
        /// Example: `{ wires: 7, wire_diameter_mm: 2.68, material: steel-st1a }`
        core: CoreRecord, Required;
        /// The wires round the core, of the conductor's own material.
        /// Example: `{ wires: 26, wire_diameter_mm: 3.45 }`
        outer: GroupRecord, Required;
    }
}

record! {
    /// The core of a composite.
    CoreRecord ("a core") {
        /// How many wires, in their usual arrangement. A core has either this key or `layers`.
        /// Example: `7`
        wires: Count<1, 1000>, Optional;
        /// Wires layer by layer, innermost first. A core has either this key or `wires`.
        /// Example: `[1, 6]`
        layers: Vec<Field<Count<1, 200>>>, Optional;
        /// Diameter of one wire.
        /// Example: `2.68`
        wire_diameter as "wire_diameter_mm": Size<Mm, 20>, Required;
        /// Lay ratios of the layers round the centre, innermost first.
        /// Default: the usual ones
        /// Example: `[18]`
        lay_ratios: Vec<Field<Size<Plain, 200>>>, Optional;
        /// Id of the core's material.
        /// Example: `steel-st1a`
        material: Name, Optional;
    }
}

record! {
    /// A wire rope by class and core (EN 12385).
    RopeRecord ("a rope") {
        /// The class of the rope: strands x wires.
        /// Example: `7x19`
        construction: Name, Required;
        /// What lies in the middle of the rope.
        /// Example: `wsc`
        core: RopeCoreWord, Required;
        /// Nominal diameter.
        /// Example: `8.0`
        diameter as "diameter_mm": Size<Mm, 200>, Required;
        /// Rope grade.
        /// Example: `1570`
        grade as "grade_N_per_mm2": Size<NPerMm2, 3000>, Optional;
    }
}

record! {
    /// Profile of a grooved contact wire; the letters are those of EN 50149.
    GroovedRecord ("a grooved wire") {
        /// Height of the new wire, letter A of EN 50149.
        /// Example: `12.34`
        height as "height_mm": Size<Mm, 50>, Required;
        /// Width, letter B.
        /// Example: `12.34`
        width as "width_mm": Size<Mm, 50>, Required;
        /// Distance between the points of the two grooves, letter E.
        /// Example: `6.80`
        apex_width as "apex_width_mm": Size<Mm, 50>, Required;
        /// How far these points lie under the top, letter K.
        /// Example: `4.47`
        apex_depth as "apex_depth_mm": Size<Mm, 50>, Required;
        /// Radius at the root of the groove, letter R.
        /// Example: `0.40`
        fillet as "fillet_mm": SizeOrZero<Mm, 10>, Required;
        /// Slope of the lower flank below the horizontal, letter G.
        /// Example: `27`
        lower_flank as "lower_flank_deg": Size<Deg, 90>, Required;
        /// Slope of the upper flank above the horizontal, letter H.
        /// Example: `51`
        upper_flank as "upper_flank_deg": Size<Deg, 90>, Required;
        /// How far it may wear.
        /// Example: `{ limit_percent: 20, stop_height_mm: 8.9 }`
        wear: WearRecord, Optional;
    }
}

record! {
    /// How far a contact wire may wear.
    WearRecord ("wear") {
        /// Loss of section at which the wire must go.
        /// Example: `20`
        limit as "limit_percent": Size<Percent, 100>, Optional;
        /// The section that this percentage is taken of: `nominal` is that of `nominal_size_mm2`.
        /// Default: nominal where the conductor has a nominal size, else computed
        /// Example: `computed`
        basis: WearBasis, Optional;
        /// Height that is left when replacement is planned.
        /// Example: `10.0`
        plan_height as "plan_height_mm": Size<Mm, 50>, Optional;
        /// Height that is left when it is replaced.
        /// Example: `9.4`
        replace_height as "replace_height_mm": Size<Mm, 50>, Optional;
        /// Height that is left when traffic stops.
        /// Example: `8.9`
        stop_height as "stop_height_mm": Size<Mm, 50>, Optional;
    }
}

record! {
    /// A round tube.
    TubeRecord ("a tube") {
        /// Outside diameter.
        /// Example: `100`
        outside_diameter as "outside_diameter_mm": Size<Mm, 500>, Required;
        /// Thickness of the wall.
        /// Example: `5`
        wall as "wall_mm": Size<Mm, 100>, Required;
    }
}

record! {
    /// A rectangular bar.
    BarRecord ("a bar") {
        /// The longer side.
        /// Example: `40`
        width as "width_mm": Size<Mm, 500>, Required;
        /// The shorter side.
        /// Example: `10`
        thickness as "thickness_mm": Size<Mm, 200>, Required;
        /// Radius of the four corners.
        /// Default: `0`
        /// Example: `1`
        corner_radius as "corner_radius_mm": SizeOrZero<Mm, 100>, Optional;
    }
}
