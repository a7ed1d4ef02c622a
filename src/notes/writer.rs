//! From what the Markdown parser reads to what may be shown.

use super::address::{self, Address, Form};
use super::headings::Heading;
use super::index::Notes;
use super::letters::hidden_by_name;
use super::links::{self, Link, Target};
use super::positions::Positions;
use crate::catalogue::{Note, NoteAbout};
use crate::diagnostics::{Finding, Findings};
use crate::source::Place;
use crate::typeset::isolated;
use pulldown_cmark::{Alignment, CodeBlockKind, CowStr, Event, HeadingLevel, LinkType, Tag, TagEnd};
use std::cell::OnceCell;
use std::ops::Range;
use unicode_bidi::{BidiClass, bidi_class};

/// Turns what the parser reads into what may be shown.
pub(super) struct Writer<'a> {
    note: &'a Note,
    notes: &'a Notes<'a>,
    form: Form,
    /// The page that shows the note.
    page: Address,
    /// Made when the first place is asked for: a sound note needs none.
    positions: OnceCell<Positions>,
    /// What may be shown.
    pub(super) out: Vec<Event<'a>>,
    /// What is wrong with links and pictures.
    pub(super) findings: Findings,
    /// The words without markup.
    pub(super) text: String,
    /// Open links, innermost last.
    links: Vec<Target>,
    /// Level of the open heading.
    level: HeadingLevel,
    alignments: Vec<Alignment>,
    column: usize,
    in_head: bool,
    /// What has each paragraph run as its own first strong character does; empty in a note that holds no
    /// text from right to left.
    direction: &'static str,
}

impl<'a> Writer<'a> {
    pub(super) fn new(note: &'a Note, notes: &'a Notes<'a>, form: Form) -> Self {
        // The note of a record without a page is shown nowhere.
        let page = address::of_note(notes.catalogue, &note.about).unwrap_or_else(|| Address::page(""));
        Self {
            note,
            notes,
            form,
            page,
            positions: OnceCell::new(),
            out: Vec::new(),
            findings: Findings::new(),
            text: String::new(),
            links: Vec::new(),
            level: HeadingLevel::H2,
            alignments: Vec::new(),
            column: 0,
            in_head: false,
            direction: if note.markdown.chars().any(runs_left) { " dir=\"auto\"" } else { "" },
        }
    }

    pub(super) fn take(&mut self, event: Event<'a>, range: Range<usize>) {
        self.refuse_hidden(&event, &range);
        self.gather_text(&event);
        match event {
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                self.open_link(link_type, &dest_url, range.start)
            }
            Event::End(TagEnd::Link) => self.close_link(),
            Event::Start(Tag::Image { dest_url, .. }) => self.refuse_image(&dest_url, range.start),
            Event::End(TagEnd::Image) => {}
            Event::End(TagEnd::Heading(_)) => self.out.push(Event::End(TagEnd::Heading(self.level))),
            Event::Start(Tag::HtmlBlock) => self.open_raw_html(range.start),
            Event::End(TagEnd::HtmlBlock) => self.out.push(Event::End(TagEnd::CodeBlock)),
            Event::Html(text) => self.out.push(Event::Text(text)),
            Event::InlineHtml(text) => {
                self.note_raw_html(range.start);
                self.out.push(Event::Text(text));
            }
            Event::Start(Tag::Table(alignments)) => self.open_table(alignments),
            Event::Start(Tag::TableHead | Tag::TableRow | Tag::TableCell)
            | Event::End(TagEnd::Table | TagEnd::TableHead | TagEnd::TableRow | TagEnd::TableCell) => {
                self.table_piece(&event);
            }
            Event::Text(text) if !self.direction.is_empty() => {
                self.out.push(Event::Text(isolated(&text).into_owned().into()));
            }
            Event::Start(Tag::Paragraph) if !self.direction.is_empty() => self.open_directed("p"),
            Event::Start(Tag::Item) if !self.direction.is_empty() => self.open_directed("li"),
            event => self.out.push(event),
        }
    }

    fn refuse_hidden(&mut self, event: &Event<'_>, range: &Range<usize>) {
        let came_to = match event {
            Event::Text(text) | Event::Code(text) => text,
            Event::Start(Tag::Link { dest_url, .. } | Tag::Image { dest_url, .. }) => dest_url,
            _ => return,
        };
        let source = self.note.markdown.get(range.clone()).unwrap_or_default();
        let place = || self.place(range.start);
        if let Some(finding) = hidden_by_name(came_to, source, &place) {
            self.find(finding);
        }
    }

    fn open_directed(&mut self, element: &str) {
        self.html(format!("<{element}{}>", self.direction));
    }

    fn place(&self, offset: usize) -> Place {
        let (line, column) = self.positions.get_or_init(|| Positions::of(&self.note.markdown)).at(offset);
        Place::at(self.note.place.file.clone(), line, column)
    }

    pub(super) fn find(&mut self, finding: Finding) {
        let record = match &self.note.about {
            NoteAbout::Record(name) | NoteAbout::Chapter(name) => name.clone(),
        };
        self.findings.push(finding.record(record));
    }

    fn gather_text(&mut self, event: &Event<'_>) {
        match event {
            Event::Text(text) | Event::Code(text) | Event::InlineHtml(text) | Event::Html(text) => {
                self.text.push_str(text);
            }
            Event::SoftBreak | Event::HardBreak | Event::End(TagEnd::TableCell) => self.text.push(' '),
            Event::End(TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::Item | TagEnd::TableRow) => {
                self.text.push('\n');
            }
            _ => {}
        }
    }

    pub(super) fn open_heading(&mut self, heading: Option<&Heading>) {
        let Some(heading) = heading else { return };
        self.level = HeadingLevel::try_from(usize::from(heading.level)).unwrap_or(HeadingLevel::H6);
        let id = Some(CowStr::from(self.form.id(&self.page, &heading.id)));
        self.out.push(Event::Start(Tag::Heading {
            level: self.level,
            id,
            classes: Vec::new(),
            attrs: if self.direction.is_empty() {
                Vec::new()
            } else {
                vec![("dir".into(), Some("auto".into()))]
            },
        }));
    }

    fn open_link(&mut self, link_type: LinkType, destination: &str, offset: usize) {
        let target = match link_type {
            // An address in angle brackets is its own text.
            LinkType::Email => Target::Nothing,
            _ => self.resolve(destination, offset),
        };
        let target = match (link_type, target) {
            (LinkType::Autolink, Target::Shown(_)) => Target::Nothing,
            (_, target) => target,
        };
        match &target {
            Target::Page(address) => self.start_link(self.form.link(address)),
            Target::ThisPage(address) => self.start_link(self.form.link_within(address)),
            Target::Shown(_) | Target::Nothing => {}
        }
        self.links.push(target);
    }

    fn start_link(&mut self, address: String) {
        self.out.push(Event::Start(Tag::Link {
            link_type: LinkType::Inline,
            dest_url: address.into(),
            title: "".into(),
            id: "".into(),
        }));
    }

    fn resolve(&mut self, destination: &str, offset: usize) -> Target {
        let link = Link {
            destination,
            note: self.note,
            page: &self.page,
            place: &|| self.place(offset),
            notes: self.notes,
        };
        match links::resolve(&link) {
            Ok(target) => target,
            Err(finding) => {
                self.find(*finding);
                Target::Nothing
            }
        }
    }

    fn close_link(&mut self) {
        match self.links.pop() {
            Some(Target::Page(_) | Target::ThisPage(_)) => self.out.push(Event::End(TagEnd::Link)),
            Some(Target::Shown(address)) => self.out.push(Event::Text(format!(" ({address})").into())),
            Some(Target::Nothing) | None => {}
        }
    }

    fn refuse_image(&mut self, destination: &str, offset: usize) {
        let finding = Finding::error("note-image", self.place(offset), "notes hold no pictures")
            .found(destination)
            .help("drawings are made from the records; say in words what the picture shows");
        self.find(finding);
    }

    pub(super) fn lose_cell(&mut self, offset: usize, cell: &str) {
        let finding = Finding::error("note-cell-lost", self.place(offset), "this row has more cells than the table's head")
            .found(cell)
            .help("add a column to the head, take a `|` out of the row, or write `\\|` where it is meant to be read");
        self.find(finding);
    }

    fn note_raw_html(&mut self, offset: usize) {
        let finding = Finding::note("note-raw-html", self.place(offset), "HTML in a note is shown as text")
            .help("write Markdown, or put the text between backquotes where it is meant to be read");
        self.find(finding);
    }

    fn open_raw_html(&mut self, offset: usize) {
        self.note_raw_html(offset);
        self.out.push(Event::Start(Tag::CodeBlock(CodeBlockKind::Indented)));
    }

    fn open_table(&mut self, alignments: Vec<Alignment>) {
        self.alignments = alignments;
        self.html("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Table\"><table>");
    }

    /// Tables are written here: the library would align cells by inline styles, which the pages forbid.
    fn table_piece(&mut self, event: &Event<'_>) {
        let piece = match event {
            Event::Start(Tag::TableHead) => {
                (self.in_head, self.column) = (true, 0);
                "<thead><tr>".to_owned()
            }
            Event::End(TagEnd::TableHead) => {
                self.in_head = false;
                "</tr></thead><tbody>".to_owned()
            }
            Event::Start(Tag::TableRow) => {
                self.column = 0;
                "<tr>".to_owned()
            }
            Event::End(TagEnd::TableRow) => "</tr>\n".to_owned(),
            Event::Start(Tag::TableCell) => self.open_cell(),
            Event::End(TagEnd::TableCell) => if self.in_head { "</th>" } else { "</td>" }.to_owned(),
            _ => "</tbody></table></div>\n".to_owned(),
        };
        self.html(piece);
    }

    fn open_cell(&mut self) -> String {
        let class = match self.alignments.get(self.column) {
            Some(Alignment::Right) => " class=\"right\"",
            Some(Alignment::Center) => " class=\"centre\"",
            _ => "",
        };
        self.column += 1;
        let direction = self.direction;
        if self.in_head {
            format!("<th scope=\"col\"{class}{direction}>")
        } else {
            format!("<td{class}{direction}>")
        }
    }

    fn html(&mut self, piece: impl Into<CowStr<'a>>) {
        self.out.push(Event::Html(piece.into()));
    }
}

fn runs_left(c: char) -> bool {
    matches!(bidi_class(c), BidiClass::R | BidiClass::AL)
}
