//! Values that are one word of a list.

use super::field::{Reader, listed};
use super::node::{Content, Node, ScalarKind};
use crate::diagnostics::{nearest, shortened};

/// Declares an enum whose values are words of records, with its reader and its JSON Schema.
macro_rules! words {
    ($(#[doc = $about:literal])+ $name:ident { $( $(#[doc = $doc:literal])* $variant:ident = $word:literal ),+ $(,)? }) => {
        $(#[doc = $about])+
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[allow(missing_docs, reason = "some lists say more of each word, some let the words say it")]
        pub enum $name { $( $(#[doc = $doc])* $variant, )+ }

        impl $name {
            /// Every value, in the order of the list.
            pub const ALL: &[Self] = &[$(Self::$variant),+];

            /// The word that records, tables and JSON carry.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self { $(Self::$variant => $word,)+ }
            }
        }

        impl $crate::records::Read for $name {
            fn read(
                node: &$crate::records::Node,
                reader: &mut $crate::records::Reader<'_>,
            ) -> Option<Self> {
                $crate::records::words::one_word(node, reader, &[$($word),+])
                    .map(|index| Self::ALL[index])
            }
        }

        impl schemars::JsonSchema for $name {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let words = [$($word),+];
                let schema = $crate::records::schema::schema(serde_json::json!({ "enum": words }));
                let listed = $crate::records::field::listed(&words);
                $crate::records::schema::taking(schema, format!("one of {listed}"))
            }
        }
    };
}

/// Which of the words a node holds.
pub(super) fn one_word(node: &Node, reader: &mut Reader<'_>, words: &[&str]) -> Option<usize> {
    let Content::Scalar(scalar) = &node.content else {
        reader.fault("wrong-type", node, "one word is expected here", |finding| {
            finding.found(node.described()).expected(format!("one of {}", listed(words)))
        });
        return None;
    };
    let written = match scalar.kind {
        ScalarKind::Truth(true) => "yes",
        ScalarKind::Truth(false) => "no",
        _ => &scalar.written,
    };
    let index = words.iter().position(|word| *word == written);
    if index.is_none() {
        let message = format!("`{}` is not one of the words allowed here", shortened(&scalar.written));
        reader.fault("unknown-word", node, message, |finding| {
            let finding = finding.expected(format!("one of {}", listed(words)));
            let meant = code_of_colour(&scalar.written).filter(|code| words.contains(code));
            match meant.or_else(|| nearest(&scalar.written, words.iter().copied())) {
                Some(word) => finding.help(format!("did you mean `{word}`?")),
                None => finding,
            }
        });
    }
    index
}

/// The IEC 60757 code of a colour that is written out.
fn code_of_colour(name: &str) -> Option<&'static str> {
    Some(match name.to_lowercase().as_str() {
        "black" => "BK",
        "brown" => "BN",
        "red" => "RD",
        "orange" => "OG",
        "yellow" => "YE",
        "green" => "GN",
        "blue" => "BU",
        "violet" | "purple" => "VT",
        "grey" | "gray" => "GY",
        "white" => "WH",
        "pink" => "PK",
        "gold" => "GD",
        "turquoise" => "TQ",
        "silver" => "SR",
        _ => return None,
    })
}

words! {
    /// What a conductor is for.
    Duty {
        Messenger = "messenger", Contact = "contact", Feeder = "feeder", Earth = "earth", Stay = "stay",
        TensioningRope = "tensioning-rope", Dropper = "dropper", Other = "other",
    }
}
words! {
    /// The section that wear percentages are of.
    WearBasis { Nominal = "nominal", Computed = "computed" }
}
words! {
    /// What a part does in its fitting.
    Role {
        Body = "body", Socket = "socket", Cone = "cone", Wedge = "wedge", Thimble = "thimble",
        Sleeve = "sleeve", Ferrule = "ferrule", RopeGrip = "rope-grip", Screw = "screw", Nut = "nut",
        Lock = "lock", Pin = "pin", Keeper = "keeper", Bolt = "bolt", Other = "other",
    }
}
words! {
    /// Whether a part may be used again.
    Reuse { Never = "never", IfUndamaged = "if-undamaged" }
}
words! {
    /// Whether a record may be used.
    Status { Current = "current", OnHold = "on-hold", Withdrawn = "withdrawn", Superseded = "superseded" }
}

impl Status {
    /// Whether nobody may use the record any more, now or later: what is on hold may come back.
    #[must_use]
    pub fn is_out_of_use(self) -> bool {
        matches!(self, Self::Withdrawn | Self::Superseded)
    }
}

words! {
    /// How a fitting works.
    Family {
        ConeDeadEnd = "cone-dead-end", WedgeDeadEnd = "wedge-dead-end", RopeThimble = "rope-thimble",
        Sleeve = "sleeve", ParallelGroove = "parallel-groove", Other = "other",
    }
}
words! {
    /// Where stand-out is measured.
    StandOutFrom {
        /// From the body's face to the cone's.
        ConeFace = "cone-face",
        /// From the body's face to the wedge's end.
        WedgeEnd = "wedge-end",
        /// The gap under the closing screw.
        ScrewGap = "screw-gap",
        /// It can't be seen on this fitting.
        None = "none",
    }
}
words! {
    /// What becomes of fittings already in the line.
    InServiceWord {
        MayStay = "may-stay", Inspect = "inspect", ReplaceBy = "replace-by", StopNow = "stop-now",
    }
}
words! {
    /// Sizes of cards: ISO 216 and ISO/IEC 7810.
    CardSize {
        /// 74 × 105 mm.
        A7 = "A7",
        /// 105 × 148 mm.
        A6 = "A6",
        /// 53.98 × 85.60 mm.
        Id1 = "ID-1",
    }
}
words! {
    /// Which way up.
    Orientation { Portrait = "portrait", Landscape = "landscape" }
}
words! {
    /// Paper sizes of sheets.
    SheetSize { A4 = "A4", A3 = "A3", Letter = "Letter" }
}
words! {
    /// The edge that the printer turns the sheet over.
    FlipEdge { LongEdge = "long-edge", ShortEdge = "short-edge" }
}
words! {
    /// Between whole numbers and decimals.
    DecimalMark { Point = ".", Comma = "," }
}
words! {
    /// The family of a material.
    MaterialGroupWord {
        Copper = "copper", Bronze = "bronze", Aluminium = "aluminium", Steel = "steel",
        Stainless = "stainless", Iron = "iron", Zinc = "zinc", Polymer = "polymer",
    }
}
words! {
    /// How a magnet takes to a material.
    MagneticWord { No = "no", Slight = "slight", Yes = "yes" }
}
words! {
    /// The core of a rope.
    RopeCoreWord { Wsc = "wsc", Iwrc = "iwrc", Fibre = "fibre" }
}
words! {
    /// The side of a grooved wire that lies across a wedge.
    BearsOnWord { Width = "width", Height = "height" }
}
words! {
    /// Colours by their IEC 60757 code.
    ColourWord {
        Bk = "BK", Bn = "BN", Rd = "RD", Og = "OG", Ye = "YE", Gn = "GN", Bu = "BU", Vt = "VT", Gy = "GY",
        Wh = "WH", Pk = "PK", Gd = "GD", Tq = "TQ", Sr = "SR", Gnye = "GNYE",
    }
}
words! {
    /// What a fitting's card must not lack, by the record key that states it.
    CardKey {
        Steps = "steps", RejectIf = "reject_if", LineTensionMax = "line_tension_max_kN",
        HoldingLoad = "holding_load_kN", Proof = "proven_on", Stamp = "stamp", Mark = "mark",
        Insertion = "insertion_mm", Tail = "tail_mm", StandOut = "stand_out", Tightening = "tightening",
        Torque = "torque_Nm", Thimble = "thimble", Ferrule = "ferrule", RopeGrip = "rope_grip", Die = "die",
        Pressed = "pressed_mm", Witness = "witness",
    }
}
words! {
    /// How far a fitting is together.
    AssemblyStage {
        /// Its parts lie beside each other.
        Apart = "apart",
        /// The gripping part is in its place, nothing is tightened.
        Entered = "entered",
        /// Closed, as it is measured.
        Seated = "seated",
    }
}
words! {
    /// Where the stamp of a gripping part stands.
    StampPlace {
        /// On its thick end, which is looked at before the fitting is closed.
        ThickEnd = "thick-end",
        /// On its outside, which the body covers.
        Outside = "outside",
    }
}
words! {
    /// How much a change of a printed text weighs.
    Grade {
        /// It says which part, whether it holds, how it is closed and checked.
        Safety = "safety",
        /// Anything else.
        Text = "text",
    }
}
words! {
    /// What became of printed copies.
    ReceiptWord {
        /// Given back.
        Returned = "returned",
        /// Destroyed where they were.
        Destroyed = "destroyed",
        /// Not to be found.
        Lost = "lost",
    }
}
