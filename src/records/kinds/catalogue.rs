//! `catalogue.yaml` as written.

use crate::records::record::record;
use crate::records::{
    CardSize, Day, DecimalMark, Field, FlipEdge, Identifier, Language, Mm, Name, Orientation, Paragraph,
    Percent, Plain, Pt, SheetSize, Size, SizeOrZero, Truth,
};

record! {
    /// The settings of a whole catalogue.
    CatalogueRecord ("catalogue.yaml") {
        /// Title of the booklet.
        title: Name, Required;
        /// Who answers for it.
        owner: Name, Required;
        /// The edition being prepared.
        edition: Identifier, Required;
        /// Date of this state.
        date: Day, Optional;
        /// BCP 47 language tag.
        language: Language, Optional;
        /// Between whole numbers and decimals.
        decimal_mark: DecimalMark, Optional;
        /// Size and orientation of cards.
        card: CardRecord, Optional;
        /// The sheet that cards are printed on.
        sheet: SheetRecord, Optional;
        /// What the audit measures by.
        limits: LimitsRecord, Optional;
        /// Printed first on every card's back.
        before_work: Vec<Field<Name>>, Optional;
        /// Printed on every card and page.
        caution: Paragraph, Required;
    }
}

record! {
    /// Size and orientation of cards.
    CardRecord ("card") {
        /// Paper size.
        size: CardSize, Optional;
        /// Which way up.
        orientation: Orientation, Optional;
    }
}

record! {
    /// The sheet that cards are printed on.
    SheetRecord ("sheet") {
        /// Paper size.
        size: SheetSize, Optional;
        /// The edge that the printer turns the sheet over.
        flip: FlipEdge, Optional;
        /// Whether crop marks are drawn.
        crop_marks: Truth, Optional;
        /// How far colour runs past the cut.
        bleed as "bleed_mm": SizeOrZero<Mm, 10>, Optional;
    }
}

record! {
    /// What the audit measures by.
    LimitsRecord ("limits") {
        /// Stated section against computed.
        section_tolerance as "section_tolerance_percent": SizeOrZero<Percent, 100>, Optional;
        /// Stated diameter against computed.
        diameter_tolerance as "diameter_tolerance_mm": SizeOrZero<Mm, 10>, Optional;
        /// Nominal size against computed section.
        nominal_tolerance as "nominal_tolerance_percent": SizeOrZero<Percent, 100>, Optional;
        /// Line tension against breaking load, at most; of a contact wire that is worn to its stop height.
        tension as "tension_percent_of_breaking_load": Size<Percent, 100>, Optional;
        /// Friction between gripping part and wire.
        wire_friction: Size<Plain, 2>, Optional;
        /// Friction between gripping part and its greased seat.
        seat_friction: SizeOrZero<Plain, 2>, Optional;
        /// Holding load against breaking load.
        holding as "holding_percent_of_breaking_load": Size<Percent, 100>, Optional;
        /// Of a collet's closure, kept in hand.
        closure_reserve as "closure_reserve_mm": SizeOrZero<Mm, 10>, Optional;
        /// A difference that a gauge or an eye finds on site.
        visible_stand_out as "visible_stand_out_mm": Size<Mm, 100>, Optional;
        /// Smallest type on a card.
        smallest_type as "smallest_type_pt": Size<Pt, 20>, Optional;
        /// Smallest CIEDE2000 between marks of one body.
        mark_difference: Size<Plain, 100>, Optional;
    }
}
