//! Whether a font file is as its maker wrote it: every table lies in the file, and all checksums agree.
//!
//! A font of which one byte is wrong may print a 6 where a 9 is meant, and nothing else would tell.

use super::font_fault::FontFault;

/// The most tables that a file may list; usual fonts have ten to thirty.
const MOST_TABLES: usize = 256;
const HEADER: usize = 12;
const RECORD: usize = 16;
/// Where `head` keeps the number that brings the sum of the whole file to `WHOLE`.
const ADJUSTMENT: std::ops::Range<usize> = 8..12;
/// OpenType specification, "head": the sum of a whole font file.
const WHOLE: u32 = 0xB1B0_AFBA;

/// One entry of the list of tables.
struct Table<'a> {
    tag: &'a [u8],
    checksum: u32,
    bytes: &'a [u8],
}

/// Whether the bytes are one whole font.
///
/// # Errors
/// What is wrong with them.
pub(super) fn check(data: &[u8]) -> Result<(), FontFault> {
    match data.get(..4) {
        Some([0, 1, 0, 0] | b"OTTO" | b"true") => {}
        Some(b"ttcf") => return Err(FontFault::collection()),
        _ => return Err(FontFault::no_font()),
    }
    let head = tables(data)?.into_iter().find(|table| table.tag == b"head");
    let adjustment = head
        .and_then(|head| number(head.bytes, ADJUSTMENT.start))
        .ok_or_else(|| FontFault::damaged("no table `head`".to_owned()))?;
    if WHOLE.wrapping_sub(sum(data).wrapping_sub(adjustment)) != adjustment {
        return Err(FontFault::damaged("the whole file does not agree with its checksum".to_owned()));
    }
    Ok(())
}

/// The tables, of which each agrees with its checksum.
fn tables(data: &[u8]) -> Result<Vec<Table<'_>>, FontFault> {
    let cut_off = || FontFault::damaged("the file ends too early".to_owned());
    let count = usize::from(u16::from_be_bytes(data.get(4..6).and_then(two).ok_or_else(cut_off)?));
    if count > MOST_TABLES {
        return Err(FontFault::damaged(format!("{count} tables")));
    }
    let records = data.get(HEADER..HEADER + count * RECORD).ok_or_else(cut_off)?;
    let tables: Vec<Table<'_>> = records
        .chunks_exact(RECORD)
        .map(|record| table(data, record))
        .collect::<Option<_>>()
        .ok_or_else(cut_off)?;
    // Summed up one by one, tables that lie over each other would take time without bound.
    if tables.iter().map(|table| table.bytes.len()).sum::<usize>() > data.len() {
        return Err(FontFault::damaged("tables that lie over each other".to_owned()));
    }
    tables.into_iter().map(Table::checked).collect()
}

fn table<'a>(data: &'a [u8], record: &'a [u8]) -> Option<Table<'a>> {
    let (start, length) = (number(record, 8)? as usize, number(record, 12)? as usize);
    Some(Table {
        tag: &record[..4],
        checksum: number(record, 4)?,
        bytes: data.get(start..start.checked_add(length)?)?,
    })
}

impl Table<'_> {
    fn checked(self) -> Result<Self, FontFault> {
        let adjustment = if self.tag == b"head" { number(self.bytes, ADJUSTMENT.start) } else { None };
        if sum(self.bytes).wrapping_sub(adjustment.unwrap_or_default()) == self.checksum {
            return Ok(self);
        }
        let tag = self.tag.escape_ascii();
        Err(FontFault::damaged(format!("the table `{tag}` does not agree with its checksum")))
    }
}

/// The sum of big-endian words, as if zeros filled up the last.
fn sum(bytes: &[u8]) -> u32 {
    let word = |bytes: &[u8]| {
        let mut word = [0; 4];
        word[..bytes.len()].copy_from_slice(bytes);
        u32::from_be_bytes(word)
    };
    bytes.chunks(4).map(word).fold(0, u32::wrapping_add)
}

fn number(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

fn two(bytes: &[u8]) -> Option<[u8; 2]> {
    bytes.try_into().ok()
}
