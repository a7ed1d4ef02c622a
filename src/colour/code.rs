//! Colours by their IEC 60757 code.

/// A colour, by the letter code of IEC 60757.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "the names are the standard's codes")]
pub enum ColourCode {
    BK,
    BN,
    RD,
    OG,
    YE,
    GN,
    BU,
    VT,
    GY,
    WH,
    PK,
    GD,
    TQ,
    SR,
    GNYE,
}
