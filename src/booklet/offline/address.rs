//! Addresses that lead nowhere but into the output.

use crate::notes::address::Form;

/// The folders of the output beside the booklet's, that its pages lead to.
const BESIDE: [&str; 4] = ["../cards/", "../data/", "../sheets/", "../training/"];

/// What an address is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Use {
    /// A link that a person follows.
    Link,
    /// A picture that is shown.
    Picture,
}

/// Whether an address stays in the output, or, of a single file, in that file. It is read as browsers do (WHATWG URL):
/// without control characters, and with `\` for `/`.
pub(super) fn stays(address: &str, form: Form, purpose: Use) -> bool {
    let address: String = address.chars().filter(|letter| !letter.is_ascii_control()).collect();
    let address = address.trim();
    if address.starts_with('#') {
        return true;
    }
    if purpose == Use::Picture && is_picture(address) {
        return true;
    }
    form == Form::Folder && is_file(address)
}

fn is_picture(address: &str) -> bool {
    let kinds = ["data:image/png", "data:image/jpeg", "data:image/svg+xml"];
    kinds.iter().filter_map(|kind| address.strip_prefix(kind)).any(|rest| rest.starts_with([',', ';']))
}

/// Whether it is a file of the booklet's folder, or of one beside it.
fn is_file(address: &str) -> bool {
    let path = address.split(['#', '?']).next().unwrap_or_default();
    let inside = BESIDE.iter().find_map(|folder| path.strip_prefix(folder)).unwrap_or(path);
    let inside = inside.to_ascii_lowercase().replace("%2e", ".");
    !inside.is_empty()
        && !inside.starts_with('/')
        && !inside.contains([':', '\\'])
        && inside.split('/').all(|step| step != "..")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By the parsing of addresses that browsers share (WHATWG URL, from memory).
    #[test]
    fn addresses_stay_in_the_output_or_are_refused() {
        let of_folder = |address, purpose| stays(address, Form::Folder, purpose);
        for good in
            ["#a", "fitting-ST-1.html", "a.html#b", "../cards/a.svg", "../sheets/x%20y.pdf", "x/y.css"]
        {
            assert!(of_folder(good, Use::Link) && of_folder(good, Use::Picture), "{good}");
        }
        for bad in [
            "https://example.org",
            "HTTP:example.org",
            "//example.org",
            "\\\\example.org",
            "/\\example.org",
            " \u{1}//example.org",
            "ht\ntps://example.org",
            "javascript:go()",
            "java\tscript:go()",
            "mailto:a@example.org",
            "data:text/html,x",
            "file:///etc/passwd",
            "/etc/passwd",
            "../../x",
            "../cards/../../x",
            "../cards/%2e%2E/x",
            "",
        ] {
            assert!(!of_folder(bad, Use::Link), "{bad}");
        }
        let picture = "data:image/png;base64,AA";
        assert!(of_folder(picture, Use::Picture) && !of_folder(picture, Use::Link));
        assert!(!of_folder("data:image/pnghtml,x", Use::Picture));
        assert!(!stays("a.html", Form::SingleFile, Use::Link) && stays("#a", Form::SingleFile, Use::Link));
    }
}
