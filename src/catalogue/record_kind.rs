//! The kinds of record, in the words of messages.

/// A kind of record, for messages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum RecordKind {
    Edition,
    Material,
    Conductor,
    Part,
    Fitting,
    Notice,
    Holder,
    Procedure,
}

impl RecordKind {
    /// The kind in a sentence.
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Edition => "edition",
            Self::Material => "material",
            Self::Conductor => "conductor",
            Self::Part => "part",
            Self::Fitting => "fitting",
            Self::Notice => "notice",
            Self::Holder => "holder",
            Self::Procedure => "procedure",
        }
    }

    /// How many records of the kind a catalogue may have: several times what a large network has, and few
    /// enough that whatever is compared with each other stays within bounds.
    pub(super) fn most(self) -> usize {
        match self {
            Self::Edition => 1,
            Self::Conductor => 300,
            Self::Material => 500,
            Self::Holder | Self::Notice | Self::Procedure => 1_000,
            Self::Fitting => 20_000,
            Self::Part => 50_000,
        }
    }

    /// Whether such records decide what goes into what and holds.
    pub(super) fn decides(self) -> bool {
        matches!(self, Self::Material | Self::Conductor | Self::Part | Self::Fitting)
    }

    /// The kind with its article.
    pub(super) fn with_article(self) -> String {
        let article = if self == Self::Edition { "an" } else { "a" };
        format!("{article} {}", self.word())
    }

    /// The code of a name that no record of this kind has.
    pub(super) fn unknown(self) -> &'static str {
        match self {
            Self::Edition => "unknown-edition",
            Self::Material => "unknown-material",
            Self::Conductor => "unknown-conductor",
            Self::Part => "unknown-part",
            Self::Fitting => "unknown-fitting",
            Self::Notice => "unknown-notice",
            Self::Holder => "unknown-holder",
            Self::Procedure => "unknown-procedure",
        }
    }
}
