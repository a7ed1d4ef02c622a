//! What keeps an edition from being issued; the reasons are those of the design of `issue`.

use super::{Desk, asked};
use fittingcards::register::Asked;

/// Names of one person, written in two ways; accents by Unicode Standard Annex #15.
const SAME_PEOPLE: [(&str, &str); 10] = [
    ("Jos\u{e9} Reed", "Jose\u{301} Reed"),
    ("I. Fell", "I.Fell"),
    ("I. Fell", "I. Fell."),
    ("I. Fell", "i fell"),
    ("I. Fell", "\u{ff29}. Fell"),
    ("Ann-Mary Fell", "Ann Mary Fell"),
    ("I. Fell, training cell", "I. Fell, engineer"),
    ("I. Fell", "i.fell , engineer, line"),
    ("I. Fell\u{ff0c}training cell", "I. Fell, engineer"),
    (", training cell", ",training cell"),
];

fn refused(desk: &Desk, asked: &Asked) -> Vec<String> {
    match desk.clone().issue_as(asked) {
        Ok(()) => Vec::new(),
        Err((refusals, _)) => {
            assert!(refusals.iter().all(|refusal| !refusal.help.is_empty()), "{refusals:?}");
            refusals.into_iter().map(|refusal| refusal.message).collect()
        }
    }
}

#[test]
fn each_refusal_has_its_reason_and_all_are_told_at_once() {
    let desk = Desk::issued();
    let good = asked("2", "2026-11-25", "");
    assert_eq!(refused(&desk, &good), Vec::<String>::new());
    let bad = |change: &dyn Fn(&mut Asked)| {
        let mut asked = good.clone();
        change(&mut asked);
        refused(&desk, &asked)
    };
    assert_eq!(
        bad(&|asked| asked.edition = "1".into()),
        ["edition 1 has been on the register since 2026-11-25"]
    );
    assert_eq!(
        bad(&|asked| asked.date = "2026-11-24".parse().unwrap()),
        ["the date 2026-11-24 is earlier than that of edition 1, 2026-11-25"]
    );
    assert_eq!(bad(&|asked| asked.approved_by = "A. Rood".into()), Vec::<String>::new());
    assert_eq!(bad(&|asked| asked.approved_by = " A.   reed".into()), ["A. Reed both checked and approved"]);
    for (one, other) in SAME_PEOPLE {
        let refused = bad(&|asked| (asked.checked_by, asked.approved_by) = (one.into(), other.into()));
        assert_eq!(refused, [format!("{one} both checked and approved")], "{other}");
    }
    let scripts = "mixes Latin letters with Greek or Cyrillic ones, which can look the same";
    assert_eq!(
        bad(&|asked| (asked.checked_by, asked.approved_by) = ("I. Fell".into(), "I. F\u{435}ll".into())),
        [format!("--approved-by {scripts}")]
    );
    let two = |one: &str, other: &str| {
        bad(&|asked| (asked.checked_by, asked.approved_by) = (one.into(), other.into()))
    };
    assert_eq!(two("I. Fell", "J. Fell"), Vec::<String>::new());
    // A post may be the same, or all that is given.
    assert_eq!(two("I. Fell, training cell", "J. Fell, training cell"), Vec::<String>::new());
    assert_eq!(two(", training cell", ", engineer"), Vec::<String>::new());
    assert_eq!(two("\u{418}. \u{41b}\u{435}\u{441}", "\u{39a}. \u{39b}\u{3b1}"), Vec::<String>::new());
    assert_eq!(bad(&|asked| asked.edition = "ST-4100".into()), ["ST-4100 is the number or id of a record"]);
    for (id, is) in [
        ("st-4100", "ST-4100 is the number or id of a record"),
        ("collet-41", "collet-41 is the number or id of a record"),
        ("st-body-bronze", "st-body-bronze is the id of a material"),
        ("copper-hard-drawn", "copper-hard-drawn is the id of a material"),
    ] {
        assert_eq!(bad(&|asked| asked.edition = id.into()), [is]);
    }
    assert_eq!(bad(&|asked| asked.edition = "../2".into()).len(), 1);
    assert_eq!(
        bad(&|asked| asked.reissue = vec!["ST-4100".into()]),
        ["a card is issued again and nothing says why"]
    );
    let several = bad(&|asked| {
        asked.edition = "1".into();
        asked.checked_by = String::new();
        asked.reissue = vec!["ST-9".into()];
    });
    assert_eq!(several.len(), 4, "{several:?}");
}
