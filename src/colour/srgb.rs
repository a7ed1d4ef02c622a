//! Colours as they are printed, and how they measure: lightness, difference, contrast.

use palette::color_difference::{Ciede2000, Wcag21RelativeContrast};
use palette::white_point::D65;
use palette::{FromColor, LinSrgb};

/// Least contrast of text on its ground (WCAG 2, success criterion 1.4.3).
pub const LEGIBLE_CONTRAST: f64 = 4.5;

/// A colour of the sRGB space (IEC 61966-2-1), eight bits a channel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
pub struct Srgb {
    pub red: u8,
    pub green: u8,
    pub blue: u8,
}

/// A colour of the CIELAB space under D65 (ISO/CIE 11664-4).
#[derive(Debug, Clone, Copy, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub struct Lab {
    pub lightness: f64,
    pub a: f64,
    pub b: f64,
}

impl Srgb {
    /// Black ink.
    pub const BLACK: Self = Self::of(0x00_00_00);
    /// Bare paper.
    pub const WHITE: Self = Self::of(0xff_ff_ff);

    /// A colour by its hexadecimal number.
    #[must_use]
    pub(super) const fn of(hex: u32) -> Self {
        let [_, red, green, blue] = hex.to_be_bytes();
        Self { red, green, blue }
    }

    /// A colour as written in SVG and CSS: `#` and six hexadecimal digits.
    ///
    /// ```
    /// use fittingcards::colour::Srgb;
    /// assert_eq!(Srgb::from_hex("#ff7803"), Some(Srgb { red: 255, green: 120, blue: 3 }));
    /// assert_eq!(Srgb::from_hex("#f73"), None);
    /// ```
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6)?;
        let digits = digits.bytes().all(|digit| digit.is_ascii_hexdigit()).then_some(digits)?;
        u32::from_str_radix(digits, 16).ok().map(Self::of)
    }

    /// As written in SVG and CSS.
    ///
    /// ```
    /// use fittingcards::colour::Srgb;
    /// assert_eq!(Srgb { red: 255, green: 120, blue: 3 }.hex(), "#ff7803");
    /// ```
    #[must_use]
    pub fn hex(self) -> String {
        format!("#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }

    /// The same colour in CIELAB; its lightness is what a grey copy shows.
    ///
    /// ```
    /// use fittingcards::colour::Srgb;
    /// assert!((Srgb::WHITE.lab().lightness - 100.0).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn lab(self) -> Lab {
        Lab::of(self.linear())
    }

    /// Black or white, whichever reads better on this ground; never under 4.5:1.
    ///
    /// ```
    /// use fittingcards::colour::{LEGIBLE_CONTRAST, Srgb, contrast};
    /// let ground = Srgb { red: 255, green: 228, blue: 12 };
    /// assert_eq!(ground.text_on_it(), Srgb::BLACK);
    /// assert!(contrast(ground, ground.text_on_it()) >= LEGIBLE_CONTRAST);
    /// ```
    #[must_use]
    pub fn text_on_it(self) -> Self {
        if contrast(self, Self::BLACK) >= contrast(self, Self::WHITE) { Self::BLACK } else { Self::WHITE }
    }

    pub(super) fn linear(self) -> LinSrgb<f64> {
        palette::Srgb::new(self.red, self.green, self.blue).into_format::<f64>().into_linear()
    }

    pub(super) fn from_linear(linear: LinSrgb<f64>) -> Self {
        let encoded = palette::Srgb::<f64>::from_linear(linear).into_format::<u8>();
        Self { red: encoded.red, green: encoded.green, blue: encoded.blue }
    }
}

impl Lab {
    pub(super) fn of(linear: LinSrgb<f64>) -> Self {
        let lab = palette::Lab::<D65, f64>::from_color(linear);
        Self { lightness: lab.l, a: lab.a, b: lab.b }
    }
}

/// The colour difference CIEDE2000 (ISO/CIE 11664-6).
///
/// ```
/// use fittingcards::colour::{Lab, ciede2000};
/// // Sharma, Wu, Dalal 2005, pair 1.
/// let one = Lab { lightness: 50.0, a: 2.6772, b: -79.7751 };
/// let two = Lab { lightness: 50.0, a: 0.0, b: -82.7485 };
/// assert!((ciede2000(one, two) - 2.0425).abs() < 0.00005);
/// ```
#[must_use]
pub fn ciede2000(one: Lab, two: Lab) -> f64 {
    let lab = |lab: Lab| palette::Lab::<D65, f64>::new(lab.lightness, lab.a, lab.b);
    lab(one).difference(lab(two))
}

/// Contrast of two colours, 1 to 21 (WCAG 2).
///
/// ```
/// use fittingcards::colour::{Srgb, contrast};
/// assert!((contrast(Srgb::BLACK, Srgb::WHITE) - 21.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn contrast(one: Srgb, two: Srgb) -> f64 {
    one.linear().relative_contrast(two.linear())
}
