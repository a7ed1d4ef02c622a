//! How much of a catalogue is missing, and how an answer says so that can't be whole.

/// How many records are left out, because they or what they need can't be read or is wrong; a file of which no record
/// is known counts as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Gaps {
    /// Of what decides what goes into what and holds: settings, materials, conductors, parts, fittings.
    pub deciding: usize,
    /// Of procedures, notices, holders and the register.
    pub other: usize,
}

impl Gaps {
    /// All of them.
    #[must_use]
    pub fn all(self) -> usize {
        self.deciding + self.other
    }

    /// How an answer begins where so many are left out that it rests on, with what may be otherwise; none where
    /// none is.
    ///
    /// ```
    /// use fittingcards::catalogue::Gaps;
    /// assert_eq!(Gaps::stop(0, "there can be more"), None);
    /// assert!(Gaps::stop(2, "there can be more").unwrap().starts_with("stop: 2 records or files"));
    /// ```
    #[must_use]
    pub fn stop(left_out: usize, otherwise: &str) -> Option<String> {
        let what = match left_out {
            0 => return None,
            1 => "1 record or file of the catalogue can't be read or is wrong".to_owned(),
            count => format!(
                "{count} records or files of the catalogue can't be read or are wrong, or need one that is"
            ),
        };
        Some(format!("stop: {what}. This answer is not complete: {otherwise}"))
    }
}
