//! Fonts that are damaged or made to do harm, from sound ones: the built-in fonts and those of Debian packages.

use super::*;
use crate::source::{FilePath, MemoryWorld, Place, World};

/// What came of a font file.
#[derive(Debug, PartialEq)]
enum Came {
    Found(String),
    Sound,
}

/// Texts that the fonts have to set: Latin, Devanagari, Arabic.
const TEXTS: [&str; 3] =
    ["Tighten M36x2 to 80…90 N·m", "दूसरा व्यक्ति निशान KA पढ़े। र्कीं कार्ड", "شد البرغي حتى ٨٠ سلك"];

fn tried(bytes: &[u8]) -> Came {
    let place = Place::whole(FilePath::catalogue("fonts/tried.ttf"));
    let font = FontSource { bytes: bytes.into(), place };
    let (fonts, findings) = Fonts::new(&MemoryWorld::new().fonts(), &[font]);
    for text in TEXTS {
        for style in [FontStyle::Regular, FontStyle::CondensedBold] {
            assert!(fonts.width(text, Style::points(style, 10.0)).mm().is_finite());
        }
    }
    match findings.sorted().first() {
        Some(finding) => {
            assert_eq!((finding.code, findings.sorted().len()), ("font-unreadable", 1));
            Came::Found(format!("{}: {}", finding.message, finding.found.clone().unwrap_or_default()))
        }
        None => Came::Sound,
    }
}

fn sound_fonts() -> Vec<Vec<u8>> {
    let built_in = MemoryWorld::new().fonts().into_iter().take(1).map(<[u8]>::to_vec);
    let of_packages: &[&str] = if cfg!(feature = "debian-fonts") {
        &[
            "/usr/share/fonts/truetype/lohit-devanagari/Lohit-Devanagari.ttf",
            "/usr/share/fonts/opentype/fonts-hosny-amiri/Amiri-Regular.ttf",
        ]
    } else {
        &[]
    };
    let of_packages = of_packages.iter().map(|path| {
        std::fs::read(path).unwrap_or_else(|_| panic!("{path} is not there: install its package"))
    });
    built_in.chain(of_packages).collect()
}

/// Numbers by a linear congruence (the multiplier is Knuth's MMIX one): the same at each run.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % most
    }
}

#[test]
fn sound_fonts_are_sound() {
    for font in sound_fonts() {
        assert_eq!(tried(&font), Came::Sound);
    }
}

#[test]
fn a_font_that_is_cut_off_is_found() {
    for font in sound_fonts() {
        for part in 0..40 {
            let end = font.len() * part / 40;
            assert!(matches!(tried(&font[..end]), Came::Found(_)), "cut off at {end} of {}", font.len());
        }
    }
}

#[test]
fn a_font_with_one_wrong_byte_is_found() {
    let mut chance = Chance(1);
    for font in sound_fonts() {
        for _ in 0..100 {
            let (at, bit) = (chance.below(font.len()), chance.below(8));
            let mut damaged = font.clone();
            damaged[at] ^= 1 << bit;
            assert!(matches!(tried(&damaged), Came::Found(_)), "bit {bit} of byte {at}");
        }
    }
}

/// A font that says it is whole, though its bytes are wrong: as a maker of fonts would leave a mistake.
fn signed_anew(font: &mut [u8]) {
    let long = |font: &[u8], at: usize| u32::from_be_bytes(font[at..at + 4].try_into().unwrap());
    let sum = |bytes: &[u8]| {
        bytes.chunks(4).fold(0_u32, |sum, word| {
            let mut whole = [0; 4];
            whole[..word.len()].copy_from_slice(word);
            sum.wrapping_add(u32::from_be_bytes(whole))
        })
    };
    let tables = usize::from(u16::from_be_bytes([font[4], font[5]]));
    let mut head = 0;
    for record in (0..tables).map(|table| 12 + 16 * table) {
        let (start, length) = (long(font, record + 8) as usize, long(font, record + 12) as usize);
        if &font[record..record + 4] == b"head" {
            head = start;
            font[start + 8..start + 12].fill(0);
        }
        let sum = sum(&font[start..start + length]);
        font[record + 4..record + 8].copy_from_slice(&sum.to_be_bytes());
    }
    let adjustment = 0xB1B0_AFBA_u32.wrapping_sub(sum(font));
    font[head + 8..head + 12].copy_from_slice(&adjustment.to_be_bytes());
}

/// Where a table lies in a font.
fn table(font: &[u8], tag: &[u8; 4]) -> Option<std::ops::Range<usize>> {
    let long = |at: usize| u32::from_be_bytes(font[at..at + 4].try_into().unwrap()) as usize;
    let tables = usize::from(u16::from_be_bytes([font[4], font[5]]));
    let record =
        (0..tables).map(|table| 12 + 16 * table).find(|record| &font[*record..*record + 4] == tag)?;
    Some(long(record + 8)..long(record + 8) + long(record + 12))
}

#[test]
fn a_font_that_is_made_badly_is_found_or_sets_texts() {
    let mut chance = Chance(2);
    for font in sound_fonts() {
        for tag in [b"GSUB", b"GPOS", b"GDEF", b"cmap", b"glyf", b"loca", b"hmtx", b"maxp", b"name"] {
            let Some(table) = table(&font, tag) else { continue };
            let mut damaged = font.clone();
            for _ in 0..8 {
                let near_start = chance.below(2) == 0;
                let reach = if near_start { table.len().min(200) } else { table.len() };
                damaged[table.start + chance.below(reach)] = [0, 1, 0x7f, 0x80, 0xff][chance.below(5)];
            }
            signed_anew(&mut damaged);
            tried(&damaged);
        }
    }
}

/// A header that promises four billion fonts; the libraries would make room for all of them.
#[test]
fn a_collection_is_found_whatever_it_promises() {
    let header = [b't', b't', b'c', b'f', 0, 1, 0, 0, 0xff, 0xff, 0xff, 0xff, 0, 0, 0, 0];
    assert_eq!(tried(&header), Came::Found("this file is a collection of fonts: ".to_owned()));
}

/// Format 13 of `cmap` (OpenType specification): one glyph for all of four billion characters, many times over.
#[test]
fn a_table_of_characters_without_end_is_found() {
    let mut font = MemoryWorld::new().fonts()[0].to_vec();
    let cmap = table(&font, b"cmap").unwrap();
    let mut subtable = vec![0, 13, 0, 0];
    let groups = 20_u32;
    subtable.extend((16 + 12 * groups).to_be_bytes());
    subtable.extend([0; 4]);
    subtable.extend(groups.to_be_bytes());
    for _ in 0..groups {
        subtable.extend([0_u32, u32::MAX, 1].map(u32::to_be_bytes).concat());
    }
    let mut bytes = vec![0, 0, 0, 1, 0, 3, 0, 10, 0, 0, 0, 12];
    bytes.extend(subtable);
    font[cmap.start..cmap.start + bytes.len()].copy_from_slice(&bytes);
    signed_anew(&mut font);
    assert!(matches!(tried(&font), Came::Found(_)));
}
