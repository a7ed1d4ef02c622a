//! From a file's bytes to its text.

use super::syntax::{self, Fault};
use crate::diagnostics::{Finding, shortened};
use crate::source::{FilePath, Place};

/// How large a file of the catalogue may be, fonts excepted.
const LARGEST: usize = 1024 * 1024;

/// What keeps a file from being read, at a line and column of it.
#[derive(Debug, Clone)]
pub(super) struct Trouble {
    code: &'static str,
    line: u32,
    column: u32,
    message: String,
    found: Option<String>,
    help: String,
}

impl Trouble {
    pub(super) fn new(code: &'static str, line: u32, column: u32, message: impl Into<String>) -> Self {
        Self { code, line, column, message: message.into(), found: None, help: String::new() }
    }

    /// The text is not YAML, in a parser's words.
    pub(super) fn syntax(line: u32, column: u32, words: &str, text: &str) -> Self {
        let Fault { line, column, message, help } = syntax::fault((line, column), words, text);
        let found = text.lines().nth((line as usize).saturating_sub(1)).map(|found| shortened(found.trim()));
        let mut trouble =
            Self::new("not-yaml", line, column, format!("this is not YAML: {message}")).help(help);
        trouble.found = found;
        trouble
    }

    pub(super) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = help.into();
        self
    }

    pub(super) fn finding(self, file: &FilePath) -> Finding {
        let place = Place::at(file.clone(), self.line, self.column);
        let mut finding = Finding::error(self.code, place, self.message).help(self.help);
        finding.found = self.found;
        finding
    }
}

/// The text of a file: UTF-8, without a byte order mark.
///
/// # Errors
/// `too-large` and `not-utf8`, with the place of the first byte that is no UTF-8.
pub fn decode<'a>(file: &FilePath, bytes: &'a [u8]) -> Result<&'a str, Box<Finding>> {
    if bytes.len() > LARGEST {
        let finding = Finding::error("too-large", Place::whole(file.clone()), "this file is too large")
            .found(format!("{} bytes", bytes.len()))
            .expected(format!("at most {LARGEST} bytes (1 MiB)"))
            .help("split it into several files of the same folder");
        return Err(Box::new(finding));
    }
    utf8(file, bytes)
}

/// The text of a file of any size that a world reads: UTF-8, without a byte order mark.
///
/// # Errors
/// `not-utf8`, with the place of the first byte that is no UTF-8.
pub fn utf8<'a>(file: &FilePath, bytes: &'a [u8]) -> Result<&'a str, Box<Finding>> {
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(text.strip_prefix('\u{feff}').unwrap_or(text)),
        Err(error) => Err(Box::new(not_utf8(file, bytes, error.valid_up_to()))),
    }
}

/// The characters of a YAML file that YAML forbids and nobody sees, the first of each line (`bad-text`).
pub(super) fn forbidden(file: &FilePath, text: &str) -> Vec<Finding> {
    let hidden = |letter: char| letter.is_control() && !matches!(letter, '\t' | '\r');
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    let lines = text.split('\n').enumerate();
    let found = lines.filter_map(|(line, text)| {
        let (column, letter) = text.chars().enumerate().find(|(_, letter)| hidden(*letter))?;
        let place = Place::at(file.clone(), count(line + 1), count(column + 1));
        Some(
            Finding::error("bad-text", place, "this line has a character that can't be seen")
                .found(format!("U+{:04X}", u32::from(letter)))
                .help("delete the line and type it again: it may have been copied from another document"),
        )
    });
    found.collect()
}

fn not_utf8(file: &FilePath, bytes: &[u8], good: usize) -> Finding {
    let before = String::from_utf8_lossy(&bytes[..good]);
    let line = before.matches('\n').count() + 1;
    let column = before.chars().rev().take_while(|letter| *letter != '\n').count() + 1;
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    let help = match bytes {
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => "the file is saved as UTF-16: save it as UTF-8",
        _ => "save the file as UTF-8; it may have been saved in a Windows code page",
    };
    Finding::error("not-utf8", Place::at(file.clone(), count(line), count(column)), "this is not UTF-8")
        .found(format!("the byte 0x{:02X}", bytes[good]))
        .help(help)
}
