//! Layouts of a user's that bring what pages must not have: each is refused, at its place.

use super::made::{Made, records};
use fittingcards::diagnostics::Finding;
use fittingcards::layouts::Layouts;
use fittingcards::source::FilePath;
use std::collections::{BTreeMap, BTreeSet};

/// What is found with these layouts: code, file, line.
fn found(layouts: &[(&str, String)]) -> Vec<(&'static str, String, u32)> {
    found_in("tests/cases/plain/in", layouts)
}

fn found_in(folder: &str, layouts: &[(&str, String)]) -> Vec<(&'static str, String, u32)> {
    let findings = findings(folder, layouts).into_iter();
    findings.map(|finding| (finding.code, finding.place.file.path.to_string(), finding.place.line)).collect()
}

/// What is said with these layouts: file, message.
fn said_in(folder: &str, layouts: &[(&str, String)]) -> BTreeSet<(String, String)> {
    let findings = findings(folder, layouts).into_iter();
    findings.map(|finding| (finding.place.file.path.to_string(), finding.message)).collect()
}

fn findings(folder: &str, layouts: &[(&str, String)]) -> Vec<Finding> {
    let records = records(folder);
    let world = layouts.iter().fold(records, |world, (path, text)| world.with(FilePath::layouts(path), text));
    Made::or_findings(&world)
        .err()
        .map_or_else(Vec::new, |found| found.sorted().into_iter().cloned().collect())
}

/// A built-in layout with another text in the place of one.
fn with(path: &'static str, from: &str, to: &str) -> (&'static str, String) {
    let text = Layouts::built_in(path).unwrap();
    assert!(text.contains(from), "{path} has no {from}");
    (path, text.replacen(from, to, 1))
}

/// The glossary's page with an element more in its line 3.
fn glossary(element: &str) -> (&'static str, String) {
    with("booklet/glossary.html", "{% block main %}", &format!("{{% block main %}}\n{element}"))
}

#[test]
fn a_page_that_is_as_the_built_in_one_is_taken() {
    assert_eq!(found(&[]), []);
    let more = "<p class=\"ours\" id=\"{{ ids }}ours\"><a href=\"{{ frame.start.href }}\">Ours</a> &lt;script&gt;</p>\
        <svg viewBox=\"0 0 9 9\"><title>T</title><g transform=\"translate(1 2)\" fill=\"url(#x)\"><path d=\"M0 0\"/></g></svg>";
    assert_eq!(found(&[glossary(more)]), []);
    let sheet = Layouts::built_in("booklet/booklet.css").unwrap().to_owned();
    let ours = sheet + "\n.ours { background: url(\"data:image/png;base64,AA==\") }\n";
    assert_eq!(found(&[("booklet/booklet.css", ours)]), []);
}

/// What a browser would load, follow, send or run (HTML standard, from memory).
#[test]
fn elements_and_attributes_that_ask_something_of_a_network_are_refused_at_their_line() {
    let elements = [
        "<script>go()</script>",
        "<script src=\"https://example.org/a.js\"></script>",
        "<script src=\"booklet.js\" type=\"module\"></script>",
        "<script type=\"importmap\">{}</script>",
        "<style>a { color: red }</style>",
        "<p style=\"color: red\">x</p>",
        "<p onclick=\"go()\">x</p>",
        "<P ONCLICK=go()>x</P>",
        "<img src=\"x.png\" alt=\"\" onerror=\"go()\">",
        "<img src=\"//example.org/x.png\" alt=\"\">",
        "<img srcset=\"//example.org/x.png 1x\" alt=\"\">",
        "<img src=\"&#104;ttps://example.org/x.png\" alt=\"\">",
        "<a href=\"https://example.org\">x</a>",
        "<a href=\"javascript:go()\">x</a>",
        "<a href=\"java&Tab;script:go()\">x</a>",
        "<a href=\"#\" ping=\"/\">x</a>",
        "<form action=\"/x\"></form>",
        "<button formaction=\"/x\">x</button>",
        "<base href=\"//example.org\">",
        "<meta http-equiv=\"refresh\" content=\"0;url=//example.org\">",
        "<link rel=\"stylesheet\" href=\"//example.org/a.css\">",
        "<link rel=\"preconnect\" href=\"a.css\">",
        "<iframe src=\"a.html\"></iframe>",
        "<object data=\"a.svg\"></object>",
        "<embed src=\"a.svg\">",
        "<video src=\"a.mp4\"></video>",
        "<noscript>x</noscript>",
        "<template>x</template>",
        "<svg><script>go()</script></svg>",
        "<svg><style>@import 'a.css';</style></svg>",
        "<svg><foreignObject/></svg>",
        "<svg><image href=\"//example.org/a.png\"/></svg>",
        "<svg><use href=\"//example.org/a.svg#a\"/></svg>",
        "<svg><a xlink:href=\"javascript:go()\"/></svg>",
        "<svg><rect fill=\"url(//example.org/a.svg#a)\"/></svg>",
        "<svg><rect fill=\"u\\72l(//example.org/a.svg#a)\"/></svg>",
        "<svg><title><img src=\"x.png\" alt=\"\"></title></svg>",
        "<svg><p>x</p></svg>",
        "<svg><![CDATA[x]]></svg>",
        "<math><mi>x</mi></math>",
    ];
    for element in elements {
        let found = found(&[glossary(element)]);
        let first = found.first().unwrap_or_else(|| panic!("nothing is found in {element}"));
        assert_eq!((first.0, &*first.1), ("page-not-offline", "booklet/glossary.html"), "{element}");
        assert!(found.iter().any(|(_, _, line)| *line == 3) || element.contains('&'), "{element}: {found:?}");
    }
}

#[test]
fn a_page_without_the_policy_or_with_it_too_late_is_refused() {
    let policy = Layouts::built_in("booklet/base.html").unwrap();
    let policy = policy.lines().find(|line| line.contains("Content-Security-Policy")).unwrap();
    let sheet = "<link rel=\"stylesheet\" href=\"booklet.css\">";
    let bases = [
        with("booklet/base.html", policy, ""),
        with("booklet/base.html", "default-src 'none'; ", ""),
        with("booklet/base.html", "script-src 'self' file:", "script-src 'self' file: https:"),
        with("booklet/base.html", policy, &format!("{sheet}{policy}")),
        with("booklet/base.html", policy, &format!("a word{policy}")),
        with("booklet/base.html", policy, &format!("</head>{policy}")),
    ];
    for base in bases {
        let found = found(std::slice::from_ref(&base));
        let first = found.first().unwrap_or_else(|| panic!("nothing is found in {}", base.1));
        assert_eq!((first.0, &*first.1), ("page-not-offline", "booklet/base.html"), "{}", base.1);
    }
    for (from, to) in
        [("default-src 'none'; ", ""), ("<style nonce", "<link rel=\"icon\" href=\"x\"><style nonce")]
    {
        let found = found(&[with("booklet/single.html", from, to)]);
        assert_eq!(found.first().map(|found| &*found.1), Some("booklet/single.html"), "{from}");
    }
    let script = "<script nonce=\"{{ nonce }}\">go()</script>\n</body>";
    assert!(!found(&[with("booklet/single.html", "</body>", script)]).is_empty());
}

#[test]
fn a_style_sheet_that_takes_something_in_is_refused_at_its_line() {
    let sheet = Layouts::built_in("booklet/booklet.css").unwrap();
    let lines = u32::try_from(sheet.lines().count()).unwrap();
    let found =
        found(&[("booklet/booklet.css", format!("{sheet}\n.a {{ src: url(//example.org/a.woff2) }}"))]);
    assert!(found.contains(&("page-not-offline", "booklet/booklet.css".to_owned(), lines + 2)), "{found:?}");
}

/// A misspelt name in a condition is no value, and what stands behind it is left out.
#[test]
fn a_page_without_what_decides_is_refused_at_its_layout() {
    let left_out = [
        ("fitting", "{% if not_these %}\n<section", "{% if not_this %}\n<section", "what wrong parts do"),
        ("fitting", "{% if tightening %}", "{% if tightenings %}", "what is greased"),
        ("fitting", "{% if before_work %}", "{% if before %}", "what comes before work"),
        ("fitting", "{%- if if_wrong.under_load", "{%- if if_wrong.load", "what a failed check calls for"),
        ("fitting", "{% if reject_if %}", "{% if rejects %}", "what is rejected"),
        ("fitting", "{% if witness %}<p class", "{% if witnesses %}<p class", "the witness"),
        (
            "fitting",
            "<section{% if steps %} aria-labelledby",
            "<section hidden{% if steps %} aria-labelledby",
            "the steps",
        ),
        ("pieces", "<strong>{{ cell.heading }}</strong>", "", "what each part does"),
        ("teaching", "{{ part.cell.heading }}", "", "what wrong parts do"),
        ("conductor", "{% if look_alikes %}", "{% if look_alike %}", "what tells look-alikes apart"),
        ("look-alikes", "{{ pair.apart }}", "", "what tells look-alikes apart"),
        ("notice", "{% if summary %}", "{% if summaries %}", "what it says"),
        ("wear", "{% if row.action %}<strong>", "{% if row.acts %}<strong>", "what worn wire calls for"),
    ];
    let mut layouts: BTreeMap<String, String> = BTreeMap::new();
    for (page, from, to, _) in left_out {
        let file = format!("booklet/{page}.html");
        let text = layouts.entry(file).or_insert_with_key(|file| Layouts::built_in(file).unwrap().to_owned());
        assert!(text.contains(from), "{page} has no {from}");
        *text = text.replace(from, to);
    }
    let layouts: Vec<(&str, String)> = layouts.iter().map(|(path, text)| (&**path, text.clone())).collect();
    let told = said_in("content", &layouts);
    for (page, _, to, what) in left_out {
        let told_of_it = (format!("booklet/{page}.html"), format!("a page does not show {what}"));
        assert!(told.contains(&told_of_it), "{to}: {told:#?}");
    }
    let hidden = with("booklet/footer.html", "<footer", "<footer hidden");
    assert_eq!(found(&[hidden])[0], ("page-incomplete", "booklet/footer.html".to_owned(), 0));
}

#[test]
fn a_page_that_lacks_what_it_must_show_is_refused() {
    let empty = "{% extends \"booklet/base.html\" %}{% block main %}{% endblock main %}";
    for page in ["fitting", "part", "conductor"] {
        let path = format!("booklet/{page}.html");
        let found = found(&[(&path, empty.to_owned())]);
        assert_eq!(found.first().map(|first| (first.0, &*first.1)), Some(("page-incomplete", &*path)));
    }
    for lacking in ["frame.caution", "frame.edition", "frame.state"] {
        let without =
            |layout: &str| Layouts::built_in(layout).unwrap().replace(&format!("{{{{ {lacking} }}}}"), "");
        let (header, footer) = (without("booklet/header.html"), without("booklet/footer.html"));
        // The demo's edition is long enough not to stand in a page by chance.
        let layouts = [
            ("booklet/header.html", header),
            ("booklet/footer.html", footer),
            ("booklet/start.html", empty.to_owned()),
        ];
        let found = found_in("content", &layouts);
        assert!(
            found.iter().any(|first| first.0 == "page-incomplete" && first.1.contains("booklet/")),
            "{lacking}"
        );
    }
}
