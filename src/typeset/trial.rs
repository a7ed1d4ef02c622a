//! A trial of a font file before cards and pages are set in it: guarded, and bounded in time.
//!
//! The libraries that read fonts take most of what a file says at its word: one that is made badly can end
//! the program, or keep it busy for ever.

use super::coverage::Coverage;
use super::drawing_options::drawing_options;
use super::font_fault::FontFault;
use super::sfnt;
use super::trial_texts::{Sample, texts};
use krilla_svg::{SurfaceExt as _, SvgSettings};
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::sync::{Arc, Once, mpsc};
use std::time::Duration;
use usvg::fontdb::{Database, Source};

/// The name of the threads that try fonts.
const NAME: &str = "font trial";

/// How long a trial may take. A sound font takes less than a second, but must not be called unusable on a
/// machine that has fifty other things to do.
const LONGEST: Duration = Duration::from_secs(30);

/// The most characters that the tables of a font may list together, many of them several times.
const MOST_CHARACTERS: usize = 4 * 0x11_0000;

/// The most corners and curves that the glyphs of the trial may have together.
const MOST_SEGMENTS: usize = 2_000_000;

/// Tries a font file.
///
/// # Errors
/// Why texts can't be set in it.
pub(super) fn try_font(bytes: &Arc<[u8]>) -> Result<(), FontFault> {
    sfnt::check(bytes)?;
    break_off_silently();
    let (done, outcome) = mpsc::channel();
    let bytes = bytes.clone();
    let trial =
        move || {
            let outcome = catch_unwind(AssertUnwindSafe(|| set_texts(&bytes)));
            // Nobody listens where the time was up.
            drop(done.send(
                outcome.unwrap_or_else(|_| Err(FontFault::unusable("the library that draws broke off"))),
            ));
        };
    if std::thread::Builder::new().name(NAME.to_owned()).spawn(trial).is_err() {
        return Err(FontFault::unusable("no thread could be started for the trial"));
    }
    outcome.recv_timeout(LONGEST).unwrap_or_else(|_| {
        Err(FontFault::unusable(&format!(
            "drawing a few texts takes more than {} seconds",
            LONGEST.as_secs()
        )))
    })
}

/// Has nothing printed where a trial breaks off: a finding tells it.
fn break_off_silently() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let usual = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |panic| {
            if std::thread::current().name() != Some(NAME) {
                usual(panic);
            }
        }));
    });
}

/// Shapes texts of every script that the font has, and puts them into a picture and a PDF.
fn set_texts(bytes: &Arc<[u8]>) -> Result<(), FontFault> {
    let mut database = Database::new();
    let ids = database.load_font_source(Source::Binary(Arc::new(bytes.clone())));
    let face = ids.first().and_then(|id| database.face(*id));
    let family = face.and_then(|face| face.families.first()).map(|family| family.0.clone());
    count_characters(bytes);
    let (Some(family), Some(coverage)) = (family, Coverage::of(bytes, 0)) else {
        return Err(FontFault::no_font());
    };
    let texts = texts(&coverage);
    if texts.is_empty() {
        return Err(FontFault::unusable("no characters"));
    }
    shape(bytes, &texts)?;
    print(&texts, &family, database)
}

/// Breaks off where a table of characters lists more than there are, again and again.
fn count_characters(bytes: &[u8]) {
    let Ok(face) = rustybuzz::ttf_parser::Face::parse(bytes, 0) else { return };
    let mut count = 0;
    for table in face.tables().cmap.iter().flat_map(|cmap| cmap.subtables) {
        table.codepoints(|_| {
            count += 1;
            if count > MOST_CHARACTERS {
                resume_unwind(Box::new("characters without end"));
            }
        });
    }
}

fn shape(bytes: &[u8], texts: &[Sample]) -> Result<(), FontFault> {
    let face = rustybuzz::Face::from_slice(bytes, 0).ok_or_else(FontFault::no_font)?;
    let mut segments = Segments(0);
    for text in texts {
        for direction in [rustybuzz::Direction::LeftToRight, rustybuzz::Direction::RightToLeft] {
            let mut buffer = rustybuzz::UnicodeBuffer::new();
            buffer.push_str(text);
            buffer.set_direction(direction);
            for info in rustybuzz::shape(&face, &[], buffer).glyph_infos() {
                let Ok(glyph) = u16::try_from(info.glyph_id) else { continue };
                face.outline_glyph(GlyphId(glyph), &mut segments);
            }
        }
    }
    Ok(())
}

/// As cards are: an SVG with these texts, parsed once, put into a PDF.
fn print(texts: &[Sample], family: &str, database: Database) -> Result<(), FontFault> {
    let refused = || FontFault::unusable("the library that draws refused it");
    let lines: String = texts.iter().map(|text| format!("<text y='20'>{text}</text>")).collect();
    let svg = format!("<svg xmlns='http://www.w3.org/2000/svg' width='100' height='30'>{lines}</svg>");
    let tree =
        usvg::Tree::from_str(&svg, &drawing_options(Arc::new(database), family)).map_err(|_| refused())?;
    let mut document = krilla::Document::new();
    let mut page = document.start_page();
    let mut surface = page.surface();
    let size = krilla::geom::Size::from_wh(100.0, 30.0).ok_or_else(refused)?;
    surface.draw_svg(&tree, size, SvgSettings::default()).ok_or_else(refused)?;
    surface.finish();
    page.finish();
    document.finish().map(drop).map_err(|_| refused())
}

/// Counts what outlines are made of, and breaks off where there is no end to it.
struct Segments(usize);

impl Segments {
    fn count(&mut self) {
        self.0 += 1;
        if self.0 > MOST_SEGMENTS {
            resume_unwind(Box::new("outlines without end"));
        }
    }
}

impl OutlineBuilder for Segments {
    fn move_to(&mut self, _: f32, _: f32) {
        self.count();
    }

    fn line_to(&mut self, _: f32, _: f32) {
        self.count();
    }

    fn quad_to(&mut self, _: f32, _: f32, _: f32, _: f32) {
        self.count();
    }

    fn curve_to(&mut self, _: f32, _: f32, _: f32, _: f32, _: f32, _: f32) {
        self.count();
    }

    fn close(&mut self) {
        self.count();
    }
}
