//! What status, service and notices ask of fittings in the line.

use super::{Installed, Reason, ReasonKind};
use crate::catalogue::{Fitting, InService, Notice, Part, Status};
use crate::facts::words;

/// What the record of a fitting says of those in the line, where it is not simply current.
pub(super) fn by_status(fitting: &Fitting) -> Option<Reason> {
    let status = match (fitting.status, &fitting.use_instead) {
        (Status::Current, _) => None,
        (Status::Superseded, Some(by)) => Some(format!("superseded by {by}")),
        (status, _) => Some(status_words(status).to_owned()),
    };
    let kind = match fitting.in_service {
        Some(InService::StopNow) => ReasonKind::StopNow,
        Some(InService::MayStay) if status.is_some() && fitting.status != Status::OnHold => {
            ReasonKind::MayStay
        }
        Some(InService::MayStay) if status.is_none() => return None,
        None if status.is_none() => return None,
        _ => ReasonKind::Status,
    };
    let line = match fitting.in_service {
        Some(in_service) => words::in_service(in_service),
        None => "what becomes of those in the line is not stated: ask".to_owned(),
    };
    let due = match fitting.in_service {
        Some(InService::ReplaceBy(day)) => Some(day),
        _ => None,
    };
    let words = status.into_iter().chain([line]).collect::<Vec<_>>().join("; ");
    Some(Reason::new(kind, words).due(due))
}

fn status_words(status: Status) -> &'static str {
    match status {
        Status::Current => "current",
        Status::OnHold => "on hold: stop until told",
        Status::Withdrawn => "withdrawn",
        Status::Superseded => "superseded",
    }
}

/// Parts of a fitting that is current itself and which must not be used; of the gripping part, the one that was written
/// down. A withdrawn one that was is told as a wrong part.
pub(super) fn by_parts(installed: &Installed) -> Vec<Reason> {
    if installed.fitting.status != Status::Current {
        return Vec::new();
    }
    let written = installed.gripping_part.as_deref();
    let is_built_in =
        |part: &&Part| !part.role.grips() || written.is_none_or(|written| written.number == part.number);
    let own = || installed.fitting.items.iter().map(|item| &*item.part);
    let other = written.filter(|part| !own().any(|own| own.number == part.number));
    let parts = own().filter(is_built_in).chain(other.filter(|part| part.status == Status::OnHold));
    let unusable = parts.filter(|part| part.status != Status::Current);
    let words = |part: &Part| format!("part {} is {}", part.number, status_words(part.status));
    unusable.map(|part| Reason::new(ReasonKind::Status, words(part))).collect()
}

/// The notices that a fitting was built before: those that set a day, and all where it may not simply be used any more.
/// One that is asked for is told in any case.
pub(super) fn by_notices(installed: &Installed, asked: Option<&str>) -> Vec<Reason> {
    let notices = installed.fitting.notices.iter();
    notices.filter_map(|notice| by_notice(installed, notice, asked == Some(notice.number.as_str()))).collect()
}

fn by_notice(installed: &Installed, notice: &Notice, is_asked: bool) -> Option<Reason> {
    let from = notice.effective.unwrap_or(notice.date);
    let when = match installed.built {
        Some(built) if built >= from => "built after it came into force",
        Some(_) => "built before it came into force",
        None => "not known whether it was built before",
    };
    let is_later = installed.built.is_some_and(|built| built >= from);
    let Fitting { status, in_service, .. } = &*installed.fitting;
    let must_go = *status != Status::Current && *in_service != Some(InService::MayStay);
    let asks = notice.action_by.is_some() || must_go;
    if !is_asked && (is_later || !asks) {
        return None;
    }
    let due = notice.action_by.filter(|_| !is_later);
    let by = due.map(|day| format!("; to be done by {day}")).unwrap_or_default();
    let words = format!("notice {}, {}: {when}{by}", notice.number, notice.title);
    Some(Reason::new(ReasonKind::Notice, words).due(due))
}
