//! The PDF that cards and tags are printed from: PDF/A-2b, tagged, at true size.

use super::fault::SheetFault;
use super::impose::{SheetPlan, Slot, capacity, impose, whole_pages};
use super::margin::Margin;
use super::options::Options;
use super::page::{ItemTags, Printer};
use super::print_item::{PrintItem, PrintKind};
use crate::cards::Side;
use jiff::civil::Date;
use krilla::Document;
use krilla::SerializeSettings;
use krilla::configure::{Archival, ConfigurationBuilder, PdfVersion};
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::Outline;
use krilla::tagging::TagTree;
use std::ops::Range;

/// The most records whose cards or tags go into one file.
const MOST_IN_ONE: usize = 400;
/// Records in each file where one is not enough.
const IN_EACH: usize = 200;
/// PDF/A needs a date; this one stands in a catalogue that has none.
const NO_DATE: Date = Date::constant(2000, 1, 1);

/// One PDF among those that all cards or all tags go into.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetFile {
    /// What is cut from its sheets.
    pub kind: PrintKind,
    /// Its name, such as "cards.pdf" or "cards-001.pdf".
    pub name: String,
    /// The records that it is for, counted from 0.
    pub records: Range<usize>,
    /// Which of the files it is, counted from 1.
    pub number: usize,
    /// How many files there are.
    pub of: usize,
}

/// The files that cards or tags of so many records go into: one up to 400 records, above that one for every
/// 200; none for none. All that is cut for a record is in one file.
///
/// ```
/// use fittingcards::sheets::{PrintKind, files};
/// let names: Vec<String> = files(PrintKind::Cards, 401).into_iter().map(|file| file.name).collect();
/// assert_eq!(names, ["cards-001.pdf", "cards-002.pdf", "cards-003.pdf"]);
/// assert_eq!(files(PrintKind::Tags, 400)[0].name, "tags.pdf");
/// ```
#[must_use]
pub fn files(kind: PrintKind, records: usize) -> Vec<SheetFile> {
    let in_each = if records > MOST_IN_ONE { IN_EACH } else { MOST_IN_ONE };
    let of = records.div_ceil(in_each);
    let stem = kind.stem();
    let file = |index: usize| SheetFile {
        kind,
        name: if of > 1 { format!("{stem}-{:03}.pdf", index + 1) } else { format!("{stem}.pdf") },
        records: index * in_each..records.min((index + 1) * in_each),
        number: index + 1,
        of,
    };
    (0..of).map(file).collect()
}

/// One file of sheets: where the items have backs, fronts and backs by turns; each item's blocks tagged in
/// reading order, an outline by number. There are `count` items. They are taken one sheet at a time, so that
/// they need not all be held at once.
///
/// # Errors
/// Where an item does not fit the sheet, or what was drawn can't be archived as PDF/A-2b.
pub fn pdf<P: Into<PrintItem>>(
    file: &SheetFile,
    count: usize,
    items: impl IntoIterator<Item = P>,
    options: &Options<'_>,
) -> Result<Vec<u8>, SheetFault> {
    let (plans, room) = if file.kind.fills_its_page() {
        (whole_pages(options.trim, count), 1)
    } else {
        let plans = impose(options.trim, count, &options.format);
        let plans = plans.ok_or_else(|| SheetFault::does_not_fit(file.kind, options))?;
        (plans, capacity(options.trim, &options.format).unwrap_or(1))
    };
    let mut items = items.into_iter();
    let mut writer = Writer::new(options, file, plans.len());
    for plan in &plans {
        let on_sheet: Vec<PrintItem> = items.by_ref().take(room).map(Into::into).collect();
        writer.sheet(plan, &on_sheet);
    }
    writer.finish()
}

/// A document that grows sheet by sheet.
struct Writer<'a> {
    options: &'a Options<'a>,
    file: &'a SheetFile,
    sheets: usize,
    document: Document,
    printer: Printer,
    outline: Outline,
    tags: TagTree,
}

impl<'a> Writer<'a> {
    fn new(options: &'a Options<'a>, file: &'a SheetFile, sheets: usize) -> Self {
        Self {
            options,
            file,
            sheets,
            document: new_document(),
            printer: Printer::default(),
            outline: Outline::new(),
            tags: TagTree::new().with_lang(Some(options.language.to_owned())),
        }
    }

    fn sheet(&mut self, plan: &SheetPlan, items: &[PrintItem]) {
        let mut tags: Vec<ItemTags> = items.iter().map(|item| ItemTags::new(&item.title)).collect();
        for &side in self.file.kind.sides() {
            let slots = plan.slots(side);
            let margin = self.margin(plan, side, slots);
            let faces = slots.iter().zip(items).zip(&mut tags);
            let margin = (!self.file.kind.fills_its_page()).then_some(&margin);
            self.printer.print(&mut self.document, plan.size, margin, self.options, |page| {
                for ((slot, item), tags) in faces {
                    for face in item.faces.iter().filter(|face| face.side == side) {
                        page.face(*slot, face, tags);
                    }
                }
            });
        }
        for tags in tags {
            let (entry, group) = tags.finish();
            self.outline.push_child(entry);
            self.tags.push(group);
        }
    }

    fn margin(&self, plan: &SheetPlan, side: Side, slots: &[Slot]) -> Margin {
        let file = if self.file.of > 1 {
            format!("file {} of {} · ", self.file.number, self.file.of)
        } else {
            String::new()
        };
        Margin {
            trim_bounds: SheetPlan::trim_bounds(slots),
            trims: slots.iter().map(|slot| slot.trim).collect(),
            left: heading(self.options),
            right: format!("{file}sheet {} of {} · {}", plan.number, self.sheets, self.file.kind.page(side)),
            kind: self.file.kind,
        }
    }

    fn finish(mut self) -> Result<Vec<u8>, SheetFault> {
        self.document.set_metadata(metadata(self.options, self.file));
        self.document.set_outline(self.outline);
        self.document.set_tag_tree(self.tags);
        finish(self.document)
    }
}

/// Title, edition and date, as they stand in the margin.
pub(super) fn heading(options: &Options<'_>) -> String {
    let date = options.date.map(|date| format!(" · {date}")).unwrap_or_default();
    format!("{} · edition {}{date}", options.title, options.edition)
}

pub(super) fn new_document() -> Document {
    let configuration = ConfigurationBuilder::new()
        .with_archival_validator(Archival::A2_B)
        .with_version(PdfVersion::Pdf17)
        .finish()
        .unwrap_or_default();
    Document::new_with(SerializeSettings {
        configuration,
        enable_tagging: true,
        ..SerializeSettings::default()
    })
}

fn metadata(options: &Options<'_>, file: &SheetFile) -> Metadata {
    let part = if file.of > 1 { format!(", file {} of {}", file.number, file.of) } else { String::new() };
    let kind = file.kind.word();
    described(options, format!("{}: {kind}, edition {}{part}", options.title, options.edition))
}

pub(super) fn described(options: &Options<'_>, title: String) -> Metadata {
    Metadata::new()
        .title(title)
        .language(options.language.to_owned())
        .creator("fittingcards".to_owned())
        .creation_date(midnight(options.date.unwrap_or(NO_DATE)))
}

fn midnight(date: Date) -> DateTime {
    DateTime::new(date.year().unsigned_abs())
        .month(date.month().unsigned_abs())
        .day(date.day().unsigned_abs())
        .hour(0)
        .minute(0)
        .second(0)
        .utc_offset_hour(0)
}

pub(super) fn finish(document: Document) -> Result<Vec<u8>, SheetFault> {
    document.finish().map_err(|error| SheetFault::from_library(&error))
}
