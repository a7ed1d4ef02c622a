//! How drawings are parsed: in which fonts, and with nothing from outside.

use std::sync::Arc;
use usvg::fontdb::Database;

/// Options to parse a drawing with: these fonts and no other, and no replacement for a glyph that a font
/// lacks, so that it can be found.
pub(super) fn drawing_options(fonts: Arc<Database>, family: &str) -> usvg::Options<'static> {
    usvg::Options {
        fontdb: fonts,
        font_family: family.to_owned(),
        font_resolver: usvg::FontResolver {
            select_font: usvg::FontResolver::default_font_selector(),
            select_fallback: Box::new(|_, _, _| None),
        },
        image_href_resolver: usvg::ImageHrefResolver {
            resolve_data: Box::new(|mime, data, _| match mime {
                "image/png" => Some(usvg::ImageKind::PNG(data)),
                "image/jpeg" => Some(usvg::ImageKind::JPEG(data)),
                _ => None,
            }),
            resolve_string: Box::new(|_, _| None),
        },
        ..usvg::Options::default()
    }
}
