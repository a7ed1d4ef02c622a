//! The layouts that come with the program, by their path below the layouts folder.

macro_rules! built_in {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/layouts/", $name)))),*]
    };
}

/// Path and text of the layouts of pages, sorted by path.
const BOOKLET: &[(&str, &str)] = built_in![
    "booklet/asks.js",
    "booklet/base.html",
    "booklet/body.html",
    "booklet/booklet.css",
    "booklet/booklet.js",
    "booklet/chapter.html",
    "booklet/closed.html",
    "booklet/closed.js",
    "booklet/conductor.html",
    "booklet/current.html",
    "booklet/find.js",
    "booklet/fitting.html",
    "booklet/footer.html",
    "booklet/glossary.html",
    "booklet/hand.html",
    "booklet/hand.js",
    "booklet/header.html",
    "booklet/key.html",
    "booklet/look-alikes.html",
    "booklet/lookup.js",
    "booklet/narrow.css",
    "booklet/notice.html",
    "booklet/numbers.html",
    "booklet/part.html",
    "booklet/pieces.html",
    "booklet/print.css",
    "booklet/single.html",
    "booklet/start.html",
    "booklet/tables.css",
    "booklet/teaching.html",
    "booklet/tools.css",
    "booklet/tools.js",
    "booklet/wear.html",
];

/// Path and text of the layouts of cards, sorted by path.
const CARDS: &[(&str, &str)] = built_in![
    "cards/assembly.xml",
    "cards/back-foot.xml",
    "cards/back-landscape.xml",
    "cards/before-work.xml",
    "cards/beside-wear.xml",
    "cards/body-back.xml",
    "cards/body-front.xml",
    "cards/checks-across.xml",
    "cards/checks.xml",
    "cards/conductors.xml",
    "cards/elsewhere.xml",
    "cards/fitting-back.xml",
    "cards/fitting-front.xml",
    "cards/front-foot.xml",
    "cards/front-landscape.xml",
    "cards/front-small.xml",
    "cards/if-wrong.xml",
    "cards/line-up.xml",
    "cards/mark.xml",
    "cards/not-these.xml",
    "cards/parts.xml",
    "cards/pieces.xml",
    "cards/section.xml",
    "cards/signs-down.xml",
    "cards/signs-key.xml",
    "cards/signs-listed.xml",
    "cards/signs-rows.xml",
    "cards/stamp.xml",
    "cards/status.xml",
    "cards/steps.xml",
    "cards/stop.xml",
    "cards/style.yaml",
    "cards/tag.xml",
    "cards/tightening.xml",
    "cards/title.xml",
    "cards/wear.xml",
    "cards/witness.xml",
    "cards/words-down.xml",
];

/// Path and text of the layouts of the register's pages, and of the frame that those for training have too, sorted by path.
const REGISTER: &[(&str, &str)] = built_in![
    "paper/base.html",
    "register/approval.html",
    "register/call-in.html",
    "register/current-cards.html",
    "register/follow-up.html",
    "register/notice-to-crews.html",
    "register/what-changed.html",
];

/// Path and text of the layouts of what is made for training, sorted by path.
const TRAINING: &[(&str, &str)] = built_in![
    "training/assessment.html",
    "training/base.html",
    "training/gauge.xml",
    "training/index.html",
    "training/key.html",
    "training/label.xml",
    "training/quiz.html",
    "training/slip.xml",
];

/// Path and text of every built-in layout, sorted by path.
pub(super) fn all() -> impl Iterator<Item = (&'static str, &'static str)> {
    BOOKLET.iter().chain(CARDS).chain(REGISTER).chain(TRAINING).copied()
}
