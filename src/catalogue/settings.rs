//! Settings: what `catalogue.yaml` states, and what holds where it is silent.

use super::check::origin;
use super::model::{
    CardFormat, CardSize, FlipEdge, Limits, Orientation, Origin, Settings, SheetFormat, SheetSize,
    TaughtGroup, Training,
};
use super::quantities::{quantity, word};
use crate::diagnostics::{Finding, Findings};
use crate::records::{
    CardRecord, CatalogueRecord, DecimalMark, Document, Field, LimitsRecord, MOST_LINES_BEFORE_WORK,
    SheetRecord, TaughtGroupRecord, TrainingRecord,
};
use crate::source::{FilePath, Place};
use crate::units::Length;
use std::collections::BTreeMap;

/// Every card's back has room for so many lines before work and no more.
pub(super) fn check_before_work(document: Option<&Document<CatalogueRecord>>, findings: &mut Findings) {
    let lines = document.and_then(|document| document.record.as_ref()?.before_work.as_ref());
    let Some(lines) = lines else { return };
    let Some(first_too_many) = lines.value.get(MOST_LINES_BEFORE_WORK) else { return };
    let message = "a card has room for three lines before work";
    findings.push(
        Finding::error("too-many-lines", first_too_many.place.clone(), message)
            .field(&first_too_many.path)
            .found(format!("{} lines", lines.value.len()))
            .expected(format!("at most {MOST_LINES_BEFORE_WORK}"))
            .help("join short lines; what does not concern every card goes into procedures or notes"),
    );
}

/// A limit of one percent or less is a fraction that somebody took for percent: it would switch its rule off.
pub(super) fn check_fractions(document: Option<&Document<CatalogueRecord>>, findings: &mut Findings) {
    let limits = document.and_then(|document| document.record.as_ref()?.limits.as_ref());
    let Some(limits) = limits else { return };
    let LimitsRecord { holding, tension, .. } = &limits.value;
    for field in [holding, tension].into_iter().flatten().filter(|field| field.value.bare() <= 1.0) {
        let message = "this looks like a fraction, and the key is in percent";
        let finding = Finding::error("fraction-for-percent", field.place.clone(), message).field(&field.path);
        let percent = field.value.bare() * 100.0;
        findings.push(
            finding
                .found(format!("{} %", field.value.bare()))
                .help(format!("write it in percent, such as `{}`", (percent * 10.0).round() / 10.0)),
        );
    }
}

/// The settings that a document states; defaults for whatever it lacks or has wrong.
pub(super) fn settings(document: Option<&Document<CatalogueRecord>>) -> Settings {
    let mut settings = defaults();
    let Some(document) = document else { return settings };
    settings.origin = origin(document);
    if let Some(record) = &document.record {
        state(record, &mut settings);
    }
    settings
}

fn defaults() -> Settings {
    Settings {
        title: String::new(),
        owner: String::new(),
        edition: String::new(),
        date: None,
        language: "en".to_owned(),
        decimal_mark: '.',
        card: CardFormat { size: CardSize::A7, orientation: Orientation::Portrait },
        sheet: SheetFormat {
            size: SheetSize::A4,
            flip: FlipEdge::LongEdge,
            crop_marks: true,
            bleed: Length::from_mm(2.0),
        },
        limits: Limits::default(),
        before_work: Vec::new(),
        caution: String::new(),
        training: None,
        origin: Origin {
            place: Place::whole(FilePath::catalogue("catalogue.yaml")),
            fields: BTreeMap::new(),
            numbers: BTreeMap::new(),
        },
    }
}

fn state(record: &CatalogueRecord, settings: &mut Settings) {
    if let Some(title) = &record.title {
        settings.title.clone_from(&title.value.0);
    }
    if let Some(owner) = &record.owner {
        settings.owner.clone_from(&owner.value.0);
    }
    if let Some(edition) = &record.edition {
        settings.edition.clone_from(&edition.value.0);
    }
    if let Some(caution) = &record.caution {
        settings.caution.clone_from(&caution.value.0);
    }
    settings.before_work =
        record.before_work.iter().flat_map(|lines| &lines.value).map(|line| line.value.0.clone()).collect();
    if let Some(language) = &record.language {
        settings.language.clone_from(&language.value.0);
    }
    settings.date = record.date.as_ref().map(|date| date.value.0);
    settings.decimal_mark = match word(record.decimal_mark.as_ref()) {
        Some(DecimalMark::Comma) => ',',
        Some(DecimalMark::Point) | None => '.',
    };
    state_card(record.card.as_ref(), &mut settings.card);
    state_sheet(record.sheet.as_ref(), &mut settings.sheet);
    state_limits(record.limits.as_ref(), &mut settings.limits);
    settings.training = record.training.as_ref().map(|training| training_of(&training.value));
}

fn training_of(record: &TrainingRecord) -> Training {
    let mut training = Training::default();
    let group = |field: &Field<TaughtGroupRecord>| {
        let (id, name) = (field.value.id.as_ref()?, field.value.name.as_ref()?);
        Some(TaughtGroup { id: id.value.0.clone(), name: name.value.0.clone() })
    };
    set(
        &mut training.groups,
        record.groups.as_ref().map(|groups| groups.value.iter().filter_map(group).collect()),
    );
    set(&mut training.questions, word(record.questions.as_ref()).map(|n| n.bare()));
    set(&mut training.pass_percent, word(record.pass.as_ref()).map(|n| n.bare()));
    set(&mut training.valid_months, word(record.valid_months.as_ref()).map(|n| n.bare()));
    training
}

/// Two groups of one id would have one quiz.
pub(super) fn check_groups(document: Option<&Document<CatalogueRecord>>, findings: &mut Findings) {
    let record = document.and_then(|document| document.record.as_ref()?.training.as_ref());
    let groups = record.and_then(|training| training.value.groups.as_ref());
    let mut seen: BTreeMap<String, Place> = BTreeMap::new();
    for id in groups.iter().flat_map(|groups| &groups.value).filter_map(|group| group.value.id.as_ref()) {
        // Files of some systems have no capitals of their own.
        let key = id.value.0.to_lowercase();
        if let Some(first) = seen.get(&key) {
            let message = format!("`{}` is already the id of a group", id.value.0);
            let finding = Finding::error("group-listed-twice", id.place.clone(), message).field(&id.path);
            findings.push(
                finding
                    .help("give each group an id of its own: its quiz is named after it")
                    .related(first.clone(), "it is already here"),
            );
        } else {
            seen.insert(key, id.place.clone());
        }
    }
}

fn state_card(record: Option<&Field<CardRecord>>, card: &mut CardFormat) {
    let Some(Field { value: record, .. }) = record else { return };
    set(&mut card.size, word(record.size.as_ref()));
    set(&mut card.orientation, word(record.orientation.as_ref()));
}

fn state_sheet(record: Option<&Field<SheetRecord>>, sheet: &mut SheetFormat) {
    let Some(Field { value: record, .. }) = record else { return };
    set(&mut sheet.size, word(record.size.as_ref()));
    set(&mut sheet.flip, word(record.flip.as_ref()));
    set(&mut sheet.crop_marks, record.crop_marks.as_ref().map(|marks| marks.value.0));
    set(&mut sheet.bleed, quantity(record.bleed.as_ref()));
}

fn state_limits(record: Option<&Field<LimitsRecord>>, limits: &mut Limits) {
    let Some(Field { value: record, .. }) = record else { return };
    set(&mut limits.section_tolerance_percent, word(record.section_tolerance.as_ref()).map(|n| n.bare()));
    set(&mut limits.diameter_tolerance, quantity(record.diameter_tolerance.as_ref()));
    set(&mut limits.nominal_tolerance_percent, word(record.nominal_tolerance.as_ref()).map(|n| n.bare()));
    set(&mut limits.holding_percent_of_breaking_load, word(record.holding.as_ref()).map(|n| n.bare()));
    set(&mut limits.tension_percent_of_breaking_load, word(record.tension.as_ref()).map(|n| n.bare()));
    set(&mut limits.wire_friction, word(record.wire_friction.as_ref()).map(|n| n.bare()));
    set(&mut limits.seat_friction, word(record.seat_friction.as_ref()).map(|n| n.bare()));
    set(&mut limits.closure_reserve, quantity(record.closure_reserve.as_ref()));
    set(&mut limits.visible_stand_out, quantity(record.visible_stand_out.as_ref()));
    set(&mut limits.smallest_type, quantity(record.smallest_type.as_ref()));
    set(&mut limits.mark_difference, word(record.mark_difference.as_ref()).map(|n| n.bare()));
}

fn set<T>(place: &mut T, stated: Option<T>) {
    if let Some(stated) = stated {
        *place = stated;
    }
}
