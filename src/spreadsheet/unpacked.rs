//! How much a packed file unpacks to, before any of it is read: what it states of that is not to be believed.

use std::io::{Cursor, Read};
use zip::ZipArchive;

/// Bytes that are unpacked at a time, and forgotten.
const PIECE: usize = 64 * 1024;

/// Whether all that is packed in a file comes to more bytes than this. Each packed file is unpacked piece by piece and
/// counted, until there are too many. What can't be unpacked counts as far as it goes, for no reader gets further.
pub(super) fn unpacks_to_more_than(bytes: &[u8], most: u64) -> bool {
    let Ok(mut archive) = ZipArchive::new(Cursor::new(bytes)) else { return false };
    let (mut piece, mut count) = (vec![0; PIECE], 0);
    for index in 0..archive.len() {
        let Ok(mut packed) = archive.by_index(index) else { continue };
        while let Ok(read @ 1..) = packed.read(&mut piece) {
            count += read as u64;
            if count > most {
                return true;
            }
        }
    }
    false
}
