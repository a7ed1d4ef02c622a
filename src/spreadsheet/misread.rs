//! Texts that some program has read in another code than they were written in, and saved again.

use encoding_rs::WINDOWS_1252;

/// What a text was before its UTF-8 was read as Windows-1252: `für` of `fÃ¼r`. `None` where it was read as it should be.
pub(super) fn as_written(text: &str) -> Option<String> {
    let (mut written, mut run, mut is_other) = (String::new(), String::new(), false);
    for letter in text.chars().map(Some).chain([None]) {
        if let Some(letter) = letter.filter(|letter| !letter.is_ascii()) {
            run.push(letter);
            continue;
        }
        let decoded = decoded(&run);
        is_other |= decoded.is_some();
        written.push_str(decoded.as_deref().unwrap_or(&run));
        run.clear();
        written.extend(letter);
    }
    is_other.then_some(written)
}

/// The letters that a run of letters beyond ASCII stands for, if its bytes are UTF-8.
fn decoded(run: &str) -> Option<String> {
    let (bytes, _, is_lossy) = WINDOWS_1252.encode(run);
    if is_lossy {
        return None;
    }
    // A diameter with a fraction behind it, as in Ø½, has the bytes of a letter too.
    let is_diameter = bytes.len() == 2 && run.starts_with('Ø');
    String::from_utf8(bytes.into_owned()).ok().filter(|text| !text.is_empty() && !is_diameter)
}

/// Whether a text is another whose letters beyond ASCII some program could not keep: `f?r` of `für`.
pub(super) fn has_lost_letters(was: &str, is: &str) -> bool {
    let is_lost = |letter: char| letter == '?' || letter == '\u{fffd}';
    let same = |(was, is): (char, char)| was == is || !was.is_ascii() && is_lost(is);
    was != is && was.chars().count() == is.chars().count() && was.chars().zip(is.chars()).all(same)
}

#[cfg(test)]
mod tests {
    use super::*;

    // The misread texts are what Python makes of them: `text.encode().decode("cp1252")`.
    #[test]
    fn texts_that_were_read_in_another_code_are_known() {
        for (is, was) in [
            ("Bolzen fÃ¼r Ã˜ 14", "Bolzen für Ø 14"),
            ("95 mmÂ²", "95 mm²"),
            ("a â€“ b", "a – b"),
            ("â€žXâ€œ", "„X“"),
        ] {
            assert_eq!(as_written(is).as_deref(), Some(was));
        }
        for sound in ["", "für Ø 14", "Ø½ 14", "95 mm²", "ÄÖÜ ß", "Ñandú", "20 °C ± 1", "„X“ – y", "Ωμ", "çÃ"]
        {
            assert_eq!(as_written(sound), None, "{sound}");
        }
        assert!(has_lost_letters("für Ø", "f?r ?") && !has_lost_letters("für", "fur"));
        assert!(!has_lost_letters("a?", "a?") && !has_lost_letters("für", "für"));
    }
}
