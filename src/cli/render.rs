//! `fittingcards render`: check, compute, draw and write everything under the output folder.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::progress::Bar;
use super::{interrupt, report, watch};
use crate::diagnostics::{Findings, visible};
use crate::publish::{
    self, AuditOptions, BookletForm, Drafts, Extent, PutInPlace, RenderOptions, Report, Strictness, Unchanged,
};
use serde_json::json;

/// Options of `render`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Threads; as many as there are cores where not given
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=1024))]
    jobs: Option<u16>,
    /// Resolution of the pictures of cards
    #[arg(long, value_name = "N", default_value_t = 150.0)]
    preview_dpi: f64,
    /// Only these cards, their kit tags and sheets of them; the rest of the output stays as it is
    #[arg(long, value_name = "NUMBER", num_args = 1..)]
    only: Vec<String>,
    /// Also make the booklet as one HTML file with everything in it, booklet.html
    #[arg(long, conflicts_with_all = ["only"])]
    single_file: bool,
    /// Also make quizzes, assessment sheets, assembly slips, gauges and bin labels, where the catalogue does not choose
    /// them itself
    #[arg(long)]
    training: bool,
    /// Say why a card is made again: what it is made from that is not as it was
    #[arg(long, value_name = "NUMBER")]
    why: Option<String>,
    /// Make everything anew, also what nothing has changed in
    #[arg(long)]
    anew: bool,
    /// Stop for warnings too
    #[arg(long)]
    deny_warnings: bool,
    /// Stop where a card is a draft: not issued, or changed since
    #[arg(long)]
    deny_drafts: bool,
    /// Only sheets of this holder's copies, in their quantities and numbered; the rest of the output stays as it is
    #[arg(long, value_name = "ID", conflicts_with_all = ["single_file"])]
    holder: Option<String>,
    /// Render again whenever a record, note, font or layout changes, until interrupted
    #[arg(long)]
    watch: bool,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    interrupt::heed()?;
    if options.watch {
        watch::again_and_again(globals, || records_first(globals, options));
    }
    once(globals, options)
}

/// Says at once what is found in the records, and renders where that stops nothing.
fn records_first(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world_with_layouts()?;
    let asked = AuditOptions { extent: Extent::Records, ..AuditOptions::default() };
    let found = publish::check(&world, &asked, &|_| {})?;
    report::said(&found, &world, globals, strictness(options.deny_warnings));
    if strictness(options.deny_warnings).refuses(&found) {
        nothing_written(globals);
        return Ok(Outcome::Refused);
    }
    rendered(globals, options, &found)
}

fn once(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    rendered(globals, options, &Findings::new())
}

/// Renders, and says what is found beside that which was said before.
fn rendered(globals: &Globals, options: &Options, said: &Findings) -> Result<Outcome, Fault> {
    let world = globals.world_with_layouts()?;
    let bar = Bar::new(globals);
    let made = publish::render(&world, &asked(globals, options), &|progress| bar.show(progress));
    bar.clear();
    let made = made?;
    let found = made.findings.without(said);
    if said.is_empty() || !found.is_empty() {
        report::said(&found, &world, globals, strictness(options.deny_warnings));
    }
    say(globals, options, &made)?;
    say_why(globals, options, &made)?;
    Ok(if made.put.is_some() { Outcome::Done } else { Outcome::Refused })
}

fn asked(globals: &Globals, options: &Options) -> RenderOptions {
    RenderOptions {
        jobs: options.jobs.map(usize::from),
        preview_dpi: options.preview_dpi,
        only: options.only.clone(),
        booklet: if options.single_file { BookletForm::PagesAndSingleFile } else { BookletForm::Pages },
        strictness: strictness(options.deny_warnings),
        unchanged: if options.anew { Unchanged::MadeAgain } else { Unchanged::Kept },
        why: options.why.clone(),
        drafts: if options.deny_drafts { Drafts::Denied } else { Drafts::Printed },
        training: options.training,
        holder: options.holder.clone(),
        read: vec![globals.catalogue.clone(), globals.layouts_folder()],
        ..RenderOptions::into_folder(globals.output_folder())
    }
}

/// What stops a run, by the flag that says so.
pub(super) fn strictness(deny_warnings: bool) -> Strictness {
    if deny_warnings { Strictness::Warnings } else { Strictness::Errors }
}

fn say(globals: &Globals, options: &Options, made: &Report) -> Result<(), Fault> {
    let folder = globals.output_folder().display().to_string();
    let folder = visible(&folder);
    match (&made.put, globals.format) {
        (Some(put), Format::Json) => report::result(
            &json!({ "cards": made.cards, "files": put.written, "bytes": put.bytes, "left_alone": put.left_alone })
                .to_string(),
            Format::Json,
        ),
        (Some(put), Format::Text) if !globals.quiet => {
            for path in &put.left_alone {
                let message = format!("{folder}/{path} no longer belongs, but was changed by hand: left alone");
                report::result(&message, Format::Text)?;
            }
            report::result(&done(made.cards, put, &folder, options), Format::Text)
        }
        (None, Format::Text) => {
            nothing_written(globals);
            Ok(())
        }
        _ => Ok(()),
    }
}

/// Why the card that was asked for was made again.
fn say_why(globals: &Globals, options: &Options, made: &Report) -> Result<(), Fault> {
    let Some(number) = options.why.as_ref().filter(|_| globals.format == Format::Text) else { return Ok(()) };
    if made.why.is_empty() {
        return report::result(
            &format!("card {number}: nothing has changed that it is made from"),
            Format::Text,
        );
    }
    for why in &made.why {
        for changed in &why.changed {
            report::result(&format!("{}: {changed}", why.output), Format::Text)?;
        }
    }
    Ok(())
}

fn nothing_written(globals: &Globals) {
    if globals.format == Format::Text {
        let folder = globals.output_folder().display().to_string();
        report::remark(&format!("nothing was written; {} is as it was", visible(&folder)));
    }
}

/// What was made, and where to look at it.
fn done(cards: usize, put: &PutInPlace, folder: &str, options: &Options) -> String {
    if let Some(holder) = &options.holder {
        let copies = if cards == 1 { "1 copy".to_owned() } else { format!("{cards} copies") };
        return format!("{copies} for {holder}; print {folder}/sheets/holder-{holder}.pdf");
    }
    let cards = if cards == 1 { "1 card".to_owned() } else { format!("{cards} cards") };
    let made = match put.written - put.kept {
        _ if put.kept == 0 => String::new(),
        0 => ", none of them made again".to_owned(),
        made => format!(", {made} of them made again"),
    };
    let booklet =
        if options.only.is_empty() { format!("open {folder}/booklet/index.html, ") } else { String::new() };
    format!("{cards}, {} files in {folder}{made}; {booklet}print the sheets in {folder}/sheets", put.written)
}
