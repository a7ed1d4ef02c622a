//! From numbers as written to quantities and to the words of other modules.

use crate::colour::{ColourCode, Mark};
use crate::grip::{BearsOn, Bore};
use crate::records::{
    BearsOnWord, BoreRecord, ColourWord, Count, Deg, Field, KgPerKm, KgPerM3, Kn, MagneticWord, MarkRecord,
    MaterialGroupWord, Mm, Mm2, NPerMm2, Nm, NohmM, Number, OhmPerKm, Prose, Pt, RopeCoreWord, SourceRecord,
    Text,
};
use crate::section::{Citation, Magnetic, MaterialGroup, RopeCore};
use crate::units::{
    Angle, Area, Density, Force, Length, LinearMass, LinearResistance, Range, Resistivity, Stress, Torque,
};

macro_rules! quantities {
    ($($unit:ident => $quantity:ident::$from:ident;)+) => {
        $(
            impl<S, const MOST: u32> From<Number<$unit, S, MOST>> for $quantity {
                fn from(number: Number<$unit, S, MOST>) -> Self {
                    Self::$from(number.bare())
                }
            }
        )+
    };
}

quantities! {
    Mm => Length::from_mm;
    Pt => Length::from_pt;
    Mm2 => Area::from_mm2;
    Deg => Angle::from_degrees;
    Kn => Force::from_kn;
    Nm => Torque::from_nm;
    NPerMm2 => Stress::from_n_per_mm2;
    KgPerM3 => Density::from_kg_per_m3;
    KgPerKm => LinearMass::from_kg_per_km;
    NohmM => Resistivity::from_nohm_m;
    OhmPerKm => LinearResistance::from_ohm_per_km;
}

macro_rules! same_words {
    ($($word:ident => $meaning:ident { $($from:ident = $to:ident),+ $(,)? })+) => {
        $(
            impl From<$word> for $meaning {
                fn from(word: $word) -> Self {
                    match word { $($word::$from => Self::$to,)+ }
                }
            }
        )+
    };
}

same_words! {
    MaterialGroupWord => MaterialGroup {
        Copper = Copper, Bronze = Bronze, Aluminium = Aluminium, Steel = Steel, Stainless = Stainless,
        Iron = Iron, Zinc = Zinc, Polymer = Polymer,
    }
    MagneticWord => Magnetic { No = No, Slight = Slight, Yes = Yes }
    RopeCoreWord => RopeCore { Wsc = Wsc, Iwrc = Iwrc, Fibre = Fibre }
    BearsOnWord => BearsOn { Width = Width, Height = Height }
    ColourWord => ColourCode {
        Bk = BK, Bn = BN, Rd = RD, Og = OG, Ye = YE, Gn = GN, Bu = BU, Vt = VT, Gy = GY, Wh = WH, Pk = PK,
        Gd = GD, Tq = TQ, Sr = SR, Gnye = GNYE,
    }
}

/// The quantity of a field, where the record has it.
pub(super) fn quantity<W: Copy, Q: From<W>>(field: Option<&Field<W>>) -> Option<Q> {
    field.map(|field| field.value.into())
}

/// Least and most of a field, where the record has it.
pub(super) fn range<W, Q>(field: Option<&Field<Range<W>>>) -> Option<Range<Q>>
where
    W: Copy + PartialOrd,
    Q: Copy + PartialOrd + From<W>,
{
    field.map(|field| field.value.map(Q::from))
}

/// What a measurement is once its record is linked; nothing where its text is empty.
pub(super) trait Stated<Q> {
    fn stated(&self) -> Option<Q>;
}

impl<U, S, Q: From<Self>, const MOST: u32> Stated<Q> for Number<U, S, MOST>
where
    Self: Copy,
{
    fn stated(&self) -> Option<Q> {
        Some((*self).into())
    }
}

impl<const LEAST: u32, const MOST: u32> Stated<u32> for Count<LEAST, MOST> {
    fn stated(&self) -> Option<u32> {
        Some(self.bare())
    }
}

impl Stated<BearsOn> for BearsOnWord {
    fn stated(&self) -> Option<BearsOn> {
        Some((*self).into())
    }
}

impl Stated<Bore> for BoreRecord {
    fn stated(&self) -> Option<Bore> {
        Some(match *self {
            Self::Round(across) => Bore::Round(across.into()),
            Self::Oval { width, height } => Bore::Oval { width: width.into(), height: height.into() },
        })
    }
}

impl Stated<String> for Text {
    fn stated(&self) -> Option<String> {
        Some(self.0.clone()).filter(|text| !text.is_empty())
    }
}

impl<W, Q> Stated<Range<Q>> for Range<W>
where
    W: Copy + PartialOrd,
    Q: Copy + PartialOrd + From<W>,
{
    fn stated(&self) -> Option<Range<Q>> {
        Some(self.map(Q::from))
    }
}

/// The measurement of a field, where the record has it.
pub(super) fn stated<W: Stated<Q>, Q>(field: Option<&Field<W>>) -> Option<Q> {
    field.and_then(|field| field.value.stated())
}

/// The text of a field; empty where the record lacks it.
pub(super) fn text(field: Option<&Field<Text>>) -> String {
    field.map(|field| field.value.0.clone()).unwrap_or_default()
}

/// The paragraph of a field; empty where the record lacks it.
pub(super) fn prose(field: Option<&Field<Prose>>) -> String {
    field.map(|field| field.value.0.clone()).unwrap_or_default()
}

/// The value of a field that is a word, where the record has it.
pub(super) fn word<T: Copy>(field: Option<&Field<T>>) -> Option<T> {
    field.map(|field| field.value)
}

/// Where figures come from.
pub(super) fn citation(source: Option<&Field<SourceRecord>>) -> Citation {
    let Some(Field { value: source, .. }) = source else { return Citation::default() };
    Citation {
        standard: text(source.standard.as_ref()),
        edition: text(source.edition.as_ref()),
        table: text(source.table.as_ref()),
        note: text(source.note.as_ref()),
    }
}

/// A mark, and whether it can be seen after assembly where that is stated.
pub(super) fn mark(mark: Option<&Field<MarkRecord>>) -> (Option<Mark>, Option<bool>) {
    let Some(Field { value: mark, .. }) = mark else { return (None, None) };
    let seen = mark.seen_after_assembly.as_ref().map(|field| field.value.0);
    let whole = mark.colour.as_ref().map(|colour| Mark {
        colour: colour.value.into(),
        text: text(mark.text.as_ref()),
        notches: mark.notches.as_ref().map_or(0, |notches| notches.value.bare()),
    });
    (whole, seen)
}
