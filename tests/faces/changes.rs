//! Changes of a layout that maintainers make: a few lines of one file, and the demo and the plain catalogue still print
//! without a finding in every size.

use super::difference;
use super::made::{self, Made};
use fittingcards::cards::{Block, Card, Face, Item, ItemMark, TypeClass};
use fittingcards::layouts::Layouts;
use fittingcards::source::FilePath;
use kurbo::Rect;

const CATALOGUES: [&str; 2] = ["content", "tests/cases/plain/in"];

/// The most lines that such a change may take.
const MOST_LINES: usize = 5;

/// One file of the layouts, changed.
struct Change {
    file: &'static str,
    text: String,
}

/// A card before and after a change.
struct Changed<'a> {
    size: &'a str,
    was: &'a Card,
    is: &'a Card,
}

impl Change {
    /// A built-in file with an edit; a line that is moved counts twice.
    fn edit(file: &'static str, edit: impl Fn(&str) -> String) -> Self {
        let built_in = Layouts::built_in(file).unwrap();
        let text = edit(built_in);
        let difference = difference::between(built_in, &text).unwrap();
        let lines = difference.lines().filter(|line| line.starts_with(['+', '-'])).count();
        assert!(lines <= MOST_LINES, "{lines} lines:\n{difference}");
        Self { file, text }
    }

    /// A file of its own that says what is different.
    fn own(file: &'static str, text: &str) -> Self {
        assert!(text.lines().count() <= MOST_LINES);
        Self { file, text: text.to_owned() }
    }

    /// Makes both catalogues in every size, and looks at each card. All faults are told at once.
    fn holds(&self, effect: impl Fn(&Changed<'_>) -> Result<(), String>) {
        self.holds_in(|_| true, effect);
    }

    /// The same for what is to change in A6 alone: in its sizes and in one other.
    fn holds_for_a6(&self, effect: impl Fn(&Changed<'_>) -> Result<(), String>) {
        self.holds_in(|size| size.starts_with("A6") || size == "A7,portrait", effect);
    }

    fn holds_in(&self, is_asked: impl Fn(&str) -> bool, effect: impl Fn(&Changed<'_>) -> Result<(), String>) {
        let mut faults = Vec::new();
        let sizes: Vec<&'static str> = made::sizes().filter(|size| is_asked(size)).collect();
        assert!(sizes.len() > 2, "{sizes:?}");
        for (catalogue, size) in
            CATALOGUES.iter().flat_map(|name| sizes.iter().map(move |size| (*name, *size)))
        {
            let was = made::once(catalogue, size);
            let world = made::in_size(catalogue, size).with(FilePath::layouts(self.file), self.text.as_str());
            let Made { cards, findings, .. } = made::facts_and_cards(&world);
            let found =
                findings.sorted().into_iter().map(|finding| format!("{}: {}", finding.code, finding.message));
            let pairs = cards.iter().filter_map(|is| {
                let was = was.cards.iter().find(|was| was.number == is.number)?;
                effect(&Changed { size, was, is }).err().map(|fault| format!("{}: {fault}", is.number))
            });
            faults.extend(found.chain(pairs).map(|fault| format!("{catalogue} {size}: {fault}")));
        }
        assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
    }
}

#[test]
fn the_band_of_the_mark_can_stand_at_the_foot() {
    let band = "{%- include \"cards/mark.xml\" %}\n";
    let change = Change::edit("cards/fitting-front.xml", |text| {
        text.replace(band, "").replace("</face>", &format!("{band}</face>"))
    });
    change.holds(|Changed { is, .. }| {
        let face = &is.front;
        let Some(mark) = block(face, "mark") else { return Ok(()) };
        let lowest = mark.items.iter().map(|item| item.bounds.y1).fold(0.0, f64::max);
        let (width, height) = (face.trim.0.mm(), face.trim.1.mm());
        told(lowest > height - 0.01, || format!("the band ends {:.2} mm above the edge", height - lowest))?;
        let corner = Rect::new(width - PUNCHED, 0.0, width, PUNCHED);
        let inside = items(face).find(|item| overlap(item.bounds, corner));
        told(inside.is_none(), || format!("in the punched corner stands {inside:?}"))
    });
}

#[test]
fn a_square_can_be_kept_free_beside_the_section_of_one_size() {
    let square = "{%- if size == \"A6\" %}<space width=\"12\" height=\"12\"/>{% endif %}\n";
    let change = Change::edit("cards/section.xml", |text| text.replace("</row>", &format!("{square}</row>")));
    change.holds_for_a6(|Changed { size, was, is }| {
        if !size.starts_with("A6") {
            return told(is_same(was, is), || "the card has changed".to_owned());
        }
        let face = &is.back;
        let blocks = [block(face, "section"), block(face, "reject")];
        let beside: Vec<Rect> =
            blocks.into_iter().flatten().flat_map(|block| &block.items).map(|item| item.bounds).collect();
        let Some(whole) = beside.iter().copied().reduce(|one, other| one.union(other)) else { return Ok(()) };
        // The row may begin above the ink of its first line by what a capital stands below the line's upper edge.
        let free = Rect::new(whole.x1, whole.y0, whole.x1 + 12.0, whole.y0 + 11.0).inset(-0.1);
        let inside = items(face).find(|item| overlap(item.bounds, free));
        told(inside.is_none(), || format!("where the square was kept free stands {inside:?}"))?;
        told(free.x1 < face.trim.0.mm() - 3.0, || format!("no square is kept free: {free:?}"))
    });
}

#[test]
fn steps_can_be_larger_on_one_size() {
    let style = "sizes:\n  A6:\n    types:\n      step: { size: 10, least: 9.5 }\n";
    Change::own("cards/style.yaml", style).holds_for_a6(|Changed { size, was, is }| {
        if !size.starts_with("A6") {
            return told(is_same(was, is), || "the card has changed".to_owned());
        }
        let (before, after) = (steps(was), steps(is));
        told(before.is_empty() == after.is_empty(), || "steps are lost".to_owned())?;
        told(after.iter().all(|size| (9.48..10.02).contains(size)), || format!("steps of {after:?} pt"))
    });
}

/// What is punched, from the upper right corner of a front.
const PUNCHED: f64 = 12.0;

fn told(holds: bool, fault: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(fault()) }
}

fn block<'a>(face: &'a Face, name: &str) -> Option<&'a Block> {
    face.blocks.iter().find(|block| block.name == name)
}

/// All but the strike, which lies over the whole face.
fn items(face: &Face) -> impl Iterator<Item = &Item> {
    face.blocks.iter().flat_map(|block| &block.items).filter(|item| item.mark != ItemMark::Strike)
}

fn overlap(one: Rect, other: Rect) -> bool {
    let shared = one.intersect(other);
    shared.width() > 0.0 && shared.height() > 0.0
}

/// The sizes of type that a card's steps are set in.
fn steps(card: &Card) -> Vec<f64> {
    let sizes = items(&card.back).filter_map(|item| match &item.mark {
        ItemMark::Line { class: TypeClass::Step, size, .. } => Some(size.pt()),
        _ => None,
    });
    sizes.collect()
}

fn is_same(was: &Card, is: &Card) -> bool {
    let same = |was: &Face, is: &Face| {
        let (was, is) = (was.blocks.iter(), is.blocks.iter());
        was.flat_map(|block| &block.layers)
            .map(|layer| &layer.source)
            .eq(is.flat_map(|block| &block.layers).map(|layer| &layer.source))
    };
    same(&was.front, &is.front) && same(&was.back, &is.back)
}
