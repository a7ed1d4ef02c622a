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
    /// can't tell apart are not told apart by a lucky choice of ink: red and green stay too close for a
    /// red-blind eye, whatever the ink. Within the bands a search took the set that keeps all other
    /// small differences largest, over normal sight and the three deficiencies by both models; green
    /// beside blue and orange beside pink counted most, which a blue-blind eye confuses.
    /// A swatch is a rectangle with text on it; shapes and colours of ISO 3864 signs are not used.
    #[must_use]
    pub fn printed(self) -> Srgb {
        Srgb::of(match self {
            Self::BK => 0x19_19_19,
            Self::BN => 0x69_34_0c,
            Self::RD => 0xcc_35_42,
            Self::OG => 0xfe_80_00,
            Self::YE => 0xff_ea_42,
            Self::GN => 0x4e_86_46,
            Self::BU => 0x0b_57_bc,
            Self::VT => 0x5b_2d_7a,
            Self::GY => 0x77_77_77,
            Self::WH => 0xff_ff_ff,
            Self::PK => 0xff_aa_d2,
            Self::GD => 0xc0_a4_53,
            Self::TQ => 0x02_b4_a4,
            Self::SR => 0xce_ce_ce,
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
    use crate::colour::{LEGIBLE_CONTRAST, Sight, contrast, difference};
    use ColourCode::*;

    type Band = [f64; 2];

    /// Code, lightness, chroma, hue angle in degrees: what people call by that name. From memory.
    const BANDS: [(ColourCode, Band, Band, Band); 14] = [
        (BK, [8.0, 12.0], [0.0, 2.0], [0.0, 360.0]),
        (BN, [28.0, 36.0], [28.0, 40.0], [50.0, 66.0]),
        (RD, [40.0, 47.0], [65.0, 100.0], [26.0, 35.0]),
        (OG, [60.0, 68.0], [75.0, 100.0], [54.0, 66.0]),
        (YE, [86.0, 92.5], [75.0, 100.0], [88.0, 98.0]),
        (GN, [44.0, 51.0], [42.0, 70.0], [138.0, 155.0]),
        (BU, [32.0, 42.0], [45.0, 85.0], [268.0, 288.0]),
        (VT, [28.0, 40.0], [50.0, 85.0], [306.0, 322.0]),
        (GY, [50.0, 57.0], [0.0, 2.0], [0.0, 360.0]),
        (WH, [97.0, 100.1], [0.0, 3.0], [0.0, 360.0]),
        (PK, [72.0, 80.0], [28.0, 44.0], [348.0, 362.0]),
        (GD, [60.0, 70.0], [45.0, 66.0], [80.0, 90.0]),
        (TQ, [66.0, 78.0], [32.0, 48.0], [182.0, 200.0]),
        (SR, [76.0, 83.0], [0.0, 2.0], [0.0, 360.0]),
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

    /// A blue-blind eye takes green for blue and orange for pink where their lightness is the same.
    #[test]
    fn what_a_blue_blind_eye_confuses_differs_in_lightness() {
        for (one, two) in [(GN, BU), (OG, PK)] {
            let difference = difference(one.printed(), two.printed(), Sight::Tritan);
            assert!(difference >= 12.0, "{one:?} {two:?}: {difference}");
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
