//! `catalogue.yaml` as written.

use crate::records::record::record;
use crate::records::{
    CardSize, Count, Day, DecimalMark, Field, FlipEdge, Identifier, Language, Mm, Name, Orientation,
    Paragraph, Percent, Plain, Pt, SheetSize, Size, SizeOrZero, Truth,
};

/// How many lines before work the back of a card can carry.
pub const MOST_LINES_BEFORE_WORK: usize = 3;

record! {
    /// The settings of a whole catalogue.
    CatalogueRecord ("catalogue.yaml") {
        /// Title of the booklet.
        /// Example: `Overhead-line fittings`
        title: Name, Required;
        /// Who answers for the catalogue: the railway or its training cell.
        /// Example: `Selbrook & Tarn Light Railway`
        owner: Name, Required;
        /// The edition that is being prepared.
        /// Example: `"2026-2"`
        edition: Identifier, Required;
        /// Date of this state. Pages and sheets print it.
        /// Default: the day in SOURCE_DATE_EPOCH, else the newest date of the register and the notices
        /// Example: `2026-11-25`
        date: Day, Optional;
        /// The language that the records are written in, as a tag of BCP 47.
        /// Default: `en`
        /// Example: `en`
        language: Language, Optional;
        /// What stands between whole numbers and decimals in print. Records always have a point.
        /// Default: `"."`
        /// Example: `","`
        decimal_mark: DecimalMark, Optional;
        /// Size and orientation of cards.
        /// Default: `{ size: A7, orientation: portrait }`
        /// Example: `{ size: A6, orientation: portrait }`
        card: CardRecord, Optional;
        /// The sheet that cards are printed on.
        /// Default: `{ size: A4, flip: long-edge, crop_marks: true, bleed_mm: 2 }`
        /// Example: `{ size: A4, flip: short-edge }`
        sheet: SheetRecord, Optional;
        /// What the audit measures by.
        /// Default: the defaults of its keys
        /// Example: `{ visible_stand_out_mm: 2.0, mark_difference: 12 }`
        limits: LimitsRecord, Optional;
        /// Two or three short lines that are printed first on the back of every card: what comes before any work.
        /// Example: `["Isolated, earthed", Load on puller]`
        before_work: Vec<Field<Name>>, Optional, 0..=MOST_LINES_BEFORE_WORK;
        /// Printed on every card and page.
        /// Example: `Cards never authorise work. Local rules come first.`
        caution: Paragraph, Required;
        /// What is also made for the training cell and its stores, below `training/`: quizzes, assessment sheets,
        /// assembly slips, gauges, bin labels. Where the key is left out they are made with `render --training` only,
        /// with the defaults of its keys.
        /// Default: not made
        /// Example: `{ groups: [{ id: spring, name: Spring course }], questions: 12 }`
        training: TrainingRecord, Optional;
    }
}

record! {
    /// What is made for the training cell.
    TrainingRecord ("training") {
        /// Groups that are taught: each gets a quiz of its own.
        /// Default: one group, `all`
        /// Example: `[{ id: spring, name: Spring course }, { id: autumn, name: Autumn course }]`
        groups: Vec<Field<TaughtGroupRecord>>, Optional;
        /// How many questions a quiz has, as far as the records settle so many.
        /// Default: `12`
        /// Example: `20`
        questions: Count<1, 60>, Optional;
        /// How many of the questions, or of the items of an assessment that safety does not hang on, must be right.
        /// Every item that safety hangs on must be right besides.
        /// Default: `80`
        /// Example: `75`
        pass as "pass_percent": Size<Percent, 100>, Optional;
        /// How many months an assessment that was passed is valid.
        /// Default: `24`
        /// Example: `12`
        valid_months: Count<1, 120>, Optional;
    }
}

record! {
    /// A group that is taught.
    TaughtGroupRecord ("a group") {
        /// The id of the group; its quiz is named after it.
        /// Example: `spring`
        id: Identifier, Required;
        /// Its name.
        /// Example: `Spring course`
        name: Name, Required;
    }
}

record! {
    /// Size and orientation of cards.
    CardRecord ("card") {
        /// Size of a card, before it is laminated.
        /// Default: `A7`
        /// Example: `A6`
        size: CardSize, Optional;
        /// Which way up the card is read.
        /// Default: `portrait`
        /// Example: `landscape`
        orientation: Orientation, Optional;
    }
}

record! {
    /// The sheet that cards are printed on.
    SheetRecord ("sheet") {
        /// Paper size of the sheet.
        /// Default: `A4`
        /// Example: `A3`
        size: SheetSize, Optional;
        /// The edge that the printer turns the sheet over for its back.
        /// Default: `long-edge`
        /// Example: `short-edge`
        flip: FlipEdge, Optional;
        /// Whether the sheet has marks that show where to cut.
        /// Default: `true`
        /// Example: `false`
        crop_marks: Truth, Optional;
        /// How far colour runs past the cut.
        /// Default: `2`
        /// Example: `3`
        bleed as "bleed_mm": SizeOrZero<Mm, 10>, Optional;
    }
}

record! {
    /// What the audit measures by.
    LimitsRecord ("limits") {
        /// How far a stated section may be from the computed one.
        /// Default: `0.5`
        /// Example: `1`
        section_tolerance as "section_tolerance_percent": SizeOrZero<Percent, 100>, Optional;
        /// How far a stated diameter may be from the computed one.
        /// Default: `0.1`
        /// Example: `0.2`
        diameter_tolerance as "diameter_tolerance_mm": SizeOrZero<Mm, 10>, Optional;
        /// How far the nominal size may be from the computed section.
        /// Default: `7`
        /// Example: `5`
        nominal_tolerance as "nominal_tolerance_percent": SizeOrZero<Percent, 100>, Optional;
        /// The most that line tension may be, as a part of the breaking load. Of a contact wire, that of the
        /// wire worn to its stop height counts.
        /// Default: `65`
        /// Example: `60`
        tension as "tension_percent_of_breaking_load": Size<Percent, 100>, Optional;
        /// Friction between the gripping part and the wire, as a factor.
        /// Default: `0.30`
        /// Example: `0.25`
        wire_friction: Size<Plain, 2>, Optional;
        /// Friction between the gripping part and its greased seat, as a factor.
        /// Default: `0.12`
        /// Example: `0.15`
        seat_friction: SizeOrZero<Plain, 2>, Optional;
        /// What a tension fitting must hold, as a part of the conductor's breaking load.
        /// Default: `95`
        /// Example: `90`
        holding as "holding_percent_of_breaking_load": Size<Percent, 100>, Optional;
        /// How much of a collet's closure is never counted on.
        /// Default: `0.3`
        /// Example: `0.5`
        closure_reserve as "closure_reserve_mm": SizeOrZero<Mm, 10>, Optional;
        /// The smallest difference of stand-out that a gauge or an eye finds on site.
        /// Default: `2.0`
        /// Example: `1.5`
        visible_stand_out as "visible_stand_out_mm": Size<Mm, 100>, Optional;
        /// The smallest type on a card.
        /// Default: `7`
        /// Example: `8`
        smallest_type as "smallest_type_pt": Size<Pt, 20>, Optional;
        /// The smallest colour difference (CIEDE2000) between two marks of one body.
        /// Default: `12`
        /// Example: `15`
        mark_difference: Size<Plain, 100>, Optional;
    }
}
