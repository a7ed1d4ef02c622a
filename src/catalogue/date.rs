//! The date of a catalogue's state: never the clock's.

use super::model::Notice;
use crate::source::{World, WorldError};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::sync::Arc;

/// The date of this state: SOURCE_DATE_EPOCH, else stated, else the newest register or notice date.
///
/// # Errors
/// Where SOURCE_DATE_EPOCH is set and is no number of seconds since 1970.
pub(super) fn date<'a>(
    world: &dyn World,
    stated: Option<Date>,
    register: &[Date],
    notices: impl Iterator<Item = &'a Arc<Notice>>,
) -> Result<Option<Date>, WorldError> {
    if let Some(seconds) = world.source_date_epoch() {
        return since_1970(seconds).map(Some);
    }
    let newest = || register.iter().copied().chain(notices.map(|notice| notice.date)).max();
    Ok(stated.or_else(newest))
}

fn since_1970(seconds: &str) -> Result<Date, WorldError> {
    let timestamp = seconds.trim().parse().ok().and_then(|seconds| Timestamp::from_second(seconds).ok());
    timestamp.map(|timestamp| TimeZone::UTC.to_datetime(timestamp).date()).ok_or_else(|| WorldError {
        path: "SOURCE_DATE_EPOCH".to_owned(),
        reason: format!("\"{seconds}\" is no number of seconds since 1970"),
    })
}
