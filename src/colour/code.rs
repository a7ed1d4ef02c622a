//! Colours by their IEC 60757 code.

use super::Srgb;

/// A colour, by the letter code of IEC 60757.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names are the standard's codes")]
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

impl ColourCode {
    /// Every code that a mark may have, in the standard's order: all but green-and-yellow, which is
    /// the protective conductor's alone.
    pub const USABLE: [Self; 14] = [
        Self::BK,
        Self::BN,
        Self::RD,
        Self::OG,
        Self::YE,
        Self::GN,
        Self::BU,
        Self::VT,
        Self::GY,
        Self::WH,
        Self::PK,
        Self::GD,
        Self::TQ,
        Self::SR,
    ];

    /// The colour of a letter code, in capitals.
    ///
    /// ```
    /// use fittingcards::colour::ColourCode;
    /// assert_eq!(ColourCode::from_letters("VT"), Some(ColourCode::VT));
    /// assert_eq!(ColourCode::from_letters("violet"), None);
    /// ```
    #[must_use]
    pub fn from_letters(letters: &str) -> Option<Self> {
        Self::USABLE.into_iter().chain([Self::GNYE]).find(|code| code.letters() == letters)
    }

    /// Its letter code.
    #[must_use]
    pub fn letters(self) -> &'static str {
        match self {
            Self::BK => "BK",
            Self::BN => "BN",
            Self::RD => "RD",
            Self::OG => "OG",
            Self::YE => "YE",
            Self::GN => "GN",
            Self::BU => "BU",
            Self::VT => "VT",
            Self::GY => "GY",
            Self::WH => "WH",
            Self::PK => "PK",
            Self::GD => "GD",
            Self::TQ => "TQ",
            Self::SR => "SR",
            Self::GNYE => "GNYE",
        }
    }

    /// Its name in words, as IEC 60757 has it.
    ///
    /// ```
    /// use fittingcards::colour::ColourCode;
    /// assert_eq!(ColourCode::VT.word(), "violet");
    /// ```
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::BK => "black",
            Self::BN => "brown",
            Self::RD => "red",
            Self::OG => "orange",
            Self::YE => "yellow",
            Self::GN => "green",
            Self::BU => "blue",
            Self::VT => "violet",
            Self::GY => "grey",
            Self::WH => "white",
            Self::PK => "pink",
            Self::GD => "gold",
            Self::TQ => "turquoise",
            Self::SR => "silver",
            Self::GNYE => "green-and-yellow",
        }
    }

    /// The value it is printed with: our own choice, by a rule.
    ///
    /// The standard gives letters and no values. Each value lies in the band of lightness, chroma and
    /// hue at the heart of what people call by that name (bands from memory; the test beside this
    /// function holds them), so that a swatch looks like any paint of that name, and marks that paint
    /// can't tell apart are not told apart by a lucky choice of ink. Within the bands a search took
    /// the set that keeps small differences largest, over normal sight and the three deficiencies.
    /// A swatch is a rectangle with text on it; shapes and colours of ISO 3864 signs are not used.
    #[must_use]
    pub fn printed(self) -> Srgb {
        Srgb::of(match self {
            Self::BK => 0x18_18_18,
            Self::BN => 0x69_3c_0c,
            Self::RD => 0xcc_27_36,
            Self::OG => 0xff_78_03,
            Self::YE => 0xff_e4_0c,
            Self::GN => 0x06_7e_4b,
            Self::BU => 0x03_60_c6,
            Self::VT => 0x5a_39_90,
            Self::GY => 0x7e_7e_7e,
            Self::WH => 0xff_ff_ff,
            Self::PK => 0xf3_96_c0,
            Self::GD => 0xc0_9f_45,
            Self::TQ => 0x03_b4_ab,
            Self::SR => 0xcc_cc_cc,
            Self::GNYE => 0x9a_c4_2a,
        })
    }

    /// Whether earthing uses the colour, so that a mark of it can be taken for an earth.
    #[must_use]
    pub fn is_used_by_earthing(self) -> bool {
        matches!(self, Self::GN | Self::YE | Self::GNYE)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{LEGIBLE_CONTRAST, contrast};
    use ColourCode::*;

    type Band = [f64; 2];

    /// Code, lightness, chroma, hue angle in degrees: what people call by that name. From memory.
    const BANDS: [(ColourCode, Band, Band, Band); 14] = [
        (BK, [8.0, 12.0], [0.0, 2.0], [0.0, 360.0]),
        (BN, [30.0, 36.0], [28.0, 40.0], [52.0, 66.0]),
        (RD, [42.0, 46.0], [70.0, 100.0], [28.0, 36.0]),
        (OG, [62.0, 67.0], [75.0, 100.0], [56.0, 64.0]),
        (YE, [86.0, 91.0], [75.0, 100.0], [88.0, 96.0]),
        (GN, [44.0, 48.0], [45.0, 65.0], [143.0, 155.0]),
        (BU, [36.0, 42.0], [50.0, 80.0], [272.0, 286.0]),
        (VT, [32.0, 40.0], [55.0, 80.0], [308.0, 320.0]),
        (GY, [52.0, 56.0], [0.0, 2.0], [0.0, 360.0]),
        (WH, [97.0, 100.1], [0.0, 3.0], [0.0, 360.0]),
        (PK, [72.0, 78.0], [30.0, 42.0], [350.0, 360.0]),
        (GD, [62.0, 68.0], [50.0, 65.0], [80.0, 88.0]),
        (TQ, [66.0, 74.0], [32.0, 46.0], [185.0, 200.0]),
        (SR, [78.0, 82.5], [0.0, 2.0], [0.0, 360.0]),
    ];

    #[test]
    fn each_printed_value_lies_in_the_band_of_its_name() {
        for (code, lightness, chroma, hue) in BANDS {
            let lab = code.printed().lab();
            let angle = lab.b.atan2(lab.a).to_degrees().rem_euclid(360.0);
            let within = |[least, most]: Band, value: f64| least <= value && value <= most;
            assert!(within(lightness, lab.lightness), "{code:?} {lab:?}");
            assert!(within(chroma, lab.a.hypot(lab.b)), "{code:?} {lab:?}");
            assert!(within(hue, angle), "{code:?} {angle}");
        }
    }

    #[test]
    fn text_reads_on_every_swatch() {
        for code in ColourCode::USABLE {
            let ground = code.printed();
            assert!(contrast(ground, ground.text_on_it()) >= LEGIBLE_CONTRAST, "{code:?}");
        }
    }

    #[test]
    fn letters_lead_back_to_their_code() {
        for code in ColourCode::USABLE {
            assert_eq!(ColourCode::from_letters(code.letters()), Some(code));
        }
    }
}
