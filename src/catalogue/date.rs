//! The date of a catalogue's state: never the clock's.

use super::model::Notice;
use crate::source::{World, WorldError};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::sync::Arc;

/// The date of this state: stated, else SOURCE_DATE_EPOCH, else the newest register or notice date.
///
/// # Errors
/// Where SOURCE_DATE_EPOCH counts and is not a number of seconds since 1970; an empty one is as none.
pub(super) fn date<'a>(
    world: &dyn World,
    stated: Option<Date>,
    newest: Option<Date>,
    notices: impl Iterator<Item = &'a Arc<Notice>>,
) -> Result<Option<Date>, WorldError> {
    if stated.is_some() {
        return Ok(stated);
    }
    if let Some(seconds) = world.source_date_epoch().filter(|seconds| !seconds.trim().is_empty()) {
        return since_1970(seconds).map(Some);
    }
    Ok(newest.into_iter().chain(notices.map(|notice| notice.date)).max())
}

fn since_1970(seconds: &str) -> Result<Date, WorldError> {
    let timestamp = seconds.trim().parse().ok().and_then(|seconds| Timestamp::from_second(seconds).ok());
    timestamp.map(|timestamp| TimeZone::UTC.to_datetime(timestamp).date()).ok_or_else(|| WorldError {
        path: "SOURCE_DATE_EPOCH".to_owned(),
        reason: format!("\"{seconds}\" is not a number of seconds since 1970"),
    })
}
