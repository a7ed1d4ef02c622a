//! The layouts that come with the program, by their path below the layouts folder.

macro_rules! built_in {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/layouts/", $name)))),*]
    };
}

/// Path and text of the layouts of pages, sorted by path.
const BOOKLET: &[(&str, &str)] = built_in![
    "booklet/base.html",
    "booklet/body.html",
    "booklet/booklet.css",
    "booklet/booklet.js",
    "booklet/chapter.html",
    "booklet/closed.html",
    "booklet/conductor.html",
    "booklet/fitting.html",
    "booklet/footer.html",
    "booklet/glossary.html",
    "booklet/hand.html",
    "booklet/header.html",
    "booklet/key.html",
    "booklet/look-alikes.html",
    "booklet/notice.html",
    "booklet/numbers.html",
    "booklet/part.html",
    "booklet/pieces.html",
    "booklet/single.html",
    "booklet/start.html",
    "booklet/tools.js",
    "booklet/wear.html",
];

/// Path and text of the layouts of cards, sorted by path.
const CARDS: &[(&str, &str)] = built_in![
    "cards/a6-landscape-body-back.svg",
    "cards/a6-landscape-body-front.svg",
    "cards/a6-landscape-fitting-back.svg",
    "cards/a6-landscape-fitting-front.svg",
    "cards/a6-portrait-body-back.svg",
    "cards/a6-portrait-body-front.svg",
    "cards/a6-portrait-fitting-back.svg",
    "cards/a6-portrait-fitting-front.svg",
    "cards/a7-landscape-body-back.svg",
    "cards/a7-landscape-body-front.svg",
    "cards/a7-landscape-fitting-back.svg",
    "cards/a7-landscape-fitting-front.svg",
    "cards/a7-portrait-body-back.svg",
    "cards/a7-portrait-body-front.svg",
    "cards/a7-portrait-fitting-back.svg",
    "cards/a7-portrait-fitting-front.svg",
    "cards/block-assembly.svg",
    "cards/block-back-foot.svg",
    "cards/block-checks-across.svg",
    "cards/block-checks.svg",
    "cards/block-chip.svg",
    "cards/block-conductors.svg",
    "cards/block-front-foot.svg",
    "cards/block-mark.svg",
    "cards/block-matrix.svg",
    "cards/block-not-these.svg",
    "cards/block-parts.svg",
    "cards/block-section.svg",
    "cards/block-signs-across.svg",
    "cards/block-signs-down.svg",
    "cards/block-signs-key.svg",
    "cards/block-stamp.svg",
    "cards/block-status.svg",
    "cards/block-steps.svg",
    "cards/block-stop.svg",
    "cards/block-tightening.svg",
    "cards/block-wear.svg",
    "cards/block-witness.svg",
    "cards/body-back.svg",
    "cards/body-front.svg",
    "cards/id1-landscape-body-back.svg",
    "cards/id1-landscape-body-front.svg",
    "cards/id1-landscape-fitting-back.svg",
    "cards/id1-landscape-fitting-front.svg",
    "cards/id1-portrait-body-back.svg",
    "cards/id1-portrait-body-front.svg",
    "cards/id1-portrait-fitting-back.svg",
    "cards/id1-portrait-fitting-front.svg",
    "cards/landscape-fitting-back.svg",
    "cards/landscape-fitting-front.svg",
    "cards/pieces.svg",
    "cards/portrait-fitting-back.svg",
    "cards/portrait-fitting-front.svg",
    "cards/small-fitting-back.svg",
    "cards/small-landscape-fitting-front.svg",
    "cards/small-portrait-fitting-front.svg",
    "cards/tag.svg",
];

/// Path and text of every built-in layout, sorted by path.
pub(super) fn all() -> impl Iterator<Item = (&'static str, &'static str)> {
    BOOKLET.iter().chain(CARDS).copied()
}
