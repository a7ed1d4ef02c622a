//! Pictures as addresses that hold them (RFC 2397), for a page that may fetch nothing.

use std::fmt::Write;

/// The address that holds an SVG.
pub(super) fn of_svg(svg: &str) -> String {
    format!("data:image/svg+xml,{}", percent(svg))
}

/// Percent-encodes what a data address can't hold as it is (RFC 3986).
fn percent(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 5 / 4);
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~/:=;,()* ".contains(&byte) {
            out.push(char::from(byte));
        } else {
            let _ = write!(out, "%{byte:02X}");
        }
    }
    out
}

#[cfg(test)]
mod tests {
    #[test]
    fn what_an_address_cannot_hold_is_encoded() {
        assert_eq!(super::of_svg("<svg id=\"é'\"/>"), "data:image/svg+xml,%3Csvg id=%22%C3%A9%27%22/%3E");
    }
}
