//! Leaving nothing behind when somebody ends the program.

use super::outcome::Fault;

/// From here on an interrupt (Ctrl-C) or a request to end clears what the run has made so far, then ends the
/// process as the signal does without us. Files that are being put in place get there first.
#[cfg(unix)]
pub(super) fn heed() -> Result<(), Fault> {
    use signal_hook::consts::{SIGINT, SIGTERM};
    let mut signals = signal_hook::iterator::Signals::new([SIGINT, SIGTERM])?;
    std::thread::spawn(move || {
        if let Some(signal) = signals.forever().next() {
            let _nothing_is_written = crate::publish::stop_writing();
            let _ = signal_hook::low_level::emulate_default_handler(signal);
        }
    });
    Ok(())
}

/// Elsewhere the next run clears what is left.
#[cfg(not(unix))]
pub(super) fn heed() -> Result<(), Fault> {
    Ok(())
}
