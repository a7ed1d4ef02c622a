//! A font file with some bytes changed: loaded, texts shaped and broken with it, a card drawn and printed with it.

use super::demo::{Made, world};
use super::findings;
use arbitrary::{Result, Unstructured};
use fittingcards::cards::{self, Design};
use fittingcards::source::{FilePath, Folder, MemoryWorld, Place, World, WorldError};
use fittingcards::typeset::{FontSource, FontStyle, Fonts, Style};
use fittingcards::units::Length;
use std::sync::{Arc, LazyLock};

/// A face of nothing but a name.
const FACE: &str = r#"<face><block id="title" kind="heading"><text class="title">{{ number }} {{ title }}</text>
</block></face>"#;
const NAMES: [&str; 3] = ["Cone KA 14,0 ﬁ", "Ā́ قوس √ Ω", "शंकु क्षत्रज्ञ"];

/// A sound font; those of Debian packages where they are installed.
static FONTS: LazyLock<Vec<Vec<u8>>> = LazyLock::new(|| {
    let installed =
        ["truetype/lohit-devanagari/Lohit-Devanagari.ttf", "opentype/fonts-hosny-amiri/Amiri-Regular.ttf"];
    let installed =
        installed.iter().filter_map(|path| std::fs::read(format!("/usr/share/fonts/{path}")).ok());
    [dejavu::sans::regular().to_vec()].into_iter().chain(installed).collect()
});
static CASE: LazyLock<MemoryWorld> = LazyLock::new(|| {
    let faces = ["fitting-front", "fitting-back", "body-front", "body-back"];
    faces.iter().fold(world("tests/cases/scripts/in"), |world, face| {
        world.with(FilePath::layouts(&format!("cards/{face}.xml")), FACE)
    })
});
static DESIGN: LazyLock<Design> = LazyLock::new(|| Design::load(&*CASE, &[]).unwrap().0);

pub fn run(input: &[u8]) {
    let Ok(font) = changed(&mut Unstructured::new(input)) else { return };
    let place = Place::whole(FilePath::catalogue("fonts/own.ttf"));
    let world = Alone(CASE.clone().with(place.file.clone(), &font));
    let source = FontSource { bytes: font.into(), place };
    let (fonts, found) = Fonts::new(&[], &[source]);
    findings::sound(&found, &world);
    for (name, font_style) in
        NAMES.into_iter().zip([FontStyle::Regular, FontStyle::Condensed, FontStyle::Bold])
    {
        let style = Style::points(font_style, 8.5);
        let line = fonts.line(name, style);
        assert!(line.width.is_finite() && fonts.width(name, style).is_finite(), "{line:?}");
        let broken = fonts.lines(name, style, Length::from_mm(12.0));
        assert!(broken.iter().all(|line| line.width.is_finite()), "{broken:?}");
    }
    if found.has_errors() {
        return;
    }
    let made = Made::of(&world);
    for facts in &made.facts {
        let (card, found) = cards::make(made.cards(&DESIGN), facts);
        findings::sound(&found, &world);
        card.into_iter().for_each(|card| made.printed(card));
    }
}

/// A catalogue without built-in fonts, so that everything is set in its own.
struct Alone(MemoryWorld);

impl World for Alone {
    fn files(&self, folder: Folder) -> std::result::Result<Vec<FilePath>, WorldError> {
        self.0.files(folder)
    }

    fn read(&self, file: &FilePath) -> std::result::Result<Arc<[u8]>, WorldError> {
        self.0.read(file)
    }

    fn source_date_epoch(&self) -> Option<&str> {
        None
    }

    fn display(&self, file: &FilePath) -> String {
        self.0.display(file)
    }

    fn fonts(&self) -> Vec<&'static [u8]> {
        Vec::new()
    }
}

/// A sound font after some changes, mostly near the beginning of a table, where its counts and offsets stand.
fn changed(bytes: &mut Unstructured<'_>) -> Result<Vec<u8>> {
    let mut font = bytes.choose(&FONTS)?.clone();
    let tables = tables(&font);
    for _ in 0..bytes.int_in_range(1..=8)? {
        let (from, length) = *bytes.choose(&tables)?;
        let reach = if bytes.ratio(3, 4)? { length.min(256) } else { length };
        let at = from + bytes.int_in_range(0..=reach.saturating_sub(1))?;
        for place in font.iter_mut().skip(at).take(bytes.int_in_range(1..=4)?) {
            *place = bytes.arbitrary()?;
        }
    }
    if bytes.ratio(1, 16)? {
        font.truncate(bytes.int_in_range(0..=font.len())?);
    }
    Ok(font)
}

/// Where the directory and each table of a font lie, and how long they are (ISO/IEC 14496-22).
fn tables(font: &[u8]) -> Vec<(usize, usize)> {
    let number = |at: usize, length: usize| {
        font[at..at + length].iter().fold(0, |all, byte| all << 8 | usize::from(*byte))
    };
    let count = number(4, 2);
    let table = |nth: usize| (number(12 + 16 * nth + 8, 4), number(12 + 16 * nth + 12, 4));
    [(0, 12 + 16 * count)].into_iter().chain((0..count).map(table)).collect()
}

pub fn seeds() -> Vec<Vec<u8>> {
    let stretch =
        |kind: u8| (0..64_u32).map(move |at| (at * 43 + u32::from(kind) * 71).to_le_bytes()[0]).collect();
    (0..32).map(stretch).collect()
}
