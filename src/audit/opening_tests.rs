//! How people say that something is opened, and that it must not be: common practice, no source.

use super::opening_words::{Load, Opening, Telling, openings_under_load, openings_with};

/// The first of what a text says that is read under tension.
fn opening(text: &str) -> Option<Opening> {
    let mut load = Load::ON;
    openings_with(text, &mut load, Telling::All).into_iter().next()
}

fn found(text: &str) -> Option<String> {
    opening(text).map(|opening| opening.words)
}

/// How people say that something is opened: common practice, no source.
#[test]
fn words_of_opening_are_found_in_every_form() {
    for (text, words) in [
        ("Undo the screw and begin again.", "undo"),
        ("Open it and start again.", "open"),
        ("Loosen the screw by one turn.", "loosen"),
        ("Keep clear. Slackening the nut helps.", "slackening"),
        ("The screw is unscrewed", "unscrewed"),
        ("Release the load screw.", "release"),
        ("Back the screw off by a turn", "back the screw off"),
        ("Take it apart.", "take it apart"),
        ("It is taken apart.", "taken apart"),
        ("Take the cone out", "take the cone out"),
        ("Turn the screw back", "turn the screw back"),
        ("Dismantling it", "dismantling"),
        ("Remove the cone.", "remove"),
        ("UNBOLT THE KEEPER", "unbolt"),
        ("Cut it off, make it anew", "cut"),
        ("Cutting", "cutting"),
        ("Re-open it", "open"),
        ("Replace the cone with the right one", "replace"),
        ("Swap the cone", "swap"),
        ("Change the cone", "change the cone"),
        ("Slack the bolts", "slack the bolts"),
        ("Tap it loose", "tap it loose"),
        ("Free the cone", "free the cone"),
        ("Pull the cone", "pull the cone"),
        ("Draw the wedge", "draw the wedge"),
        ("Pull the split pin", "pull the split pin"),
        ("Hacksaw the sleeve", "hacksaw"),
        ("Crack the load nut", "crack the load nut"),
    ] {
        assert_eq!(found(text).as_deref(), Some(words), "{text}");
    }
    assert_eq!(opening("Stop. Undo it").map(|opening| opening.at), Some(6));
}

/// The first is what cards say where a record says nothing, from the project's contract.
#[test]
fn what_forbids_to_open_is_allowed() {
    for text in [
        "stop, do not loosen, keep clear; take the load on a puller first",
        "Nothing; never open it.",
        "Don’t try to undo it",
        "Do not loosen the screw or open the body.",
        "No opening under load",
        "Without loosening it, keep clear",
        "It must not be opened",
        "Nobody may open it.",
        "Keep clear. Take the tension off first.",
        "Release the line tension with a winch.",
        "Keep clear until the line is slackened.",
    ] {
        assert_eq!(found(text), None, "{text}");
    }
}

#[test]
fn a_load_that_is_taken_away_first_allows_it() {
    for text in [
        "Take the load on a puller first, then take it apart.",
        "Take the line tension off on a puller and open it.",
        "Once the load is on a puller, undo the screw.",
        "Keep clear until the load is off; then open it.",
        "Slack off the line, then loosen the screw.",
        "Unload it. Open it.",
        "After the tension is released, open it.",
    ] {
        assert_eq!(found(text), None, "{text}");
    }
}

#[test]
fn what_is_in_doubt_is_found() {
    for text in [
        "Do not wait, open it.",
        "Do not wait and open it.",
        "Do not forget to open it.",
        "If it does not hold open it.",
        "Not only loosen it.",
        "Do not use a puller: open it.",
        "Without a puller, open it.",
        "Before the load is on a puller, open it.",
        "If the load is on a puller, open it.",
        "Open it before you take the load on a puller.",
        "Take the puller off, then open it.",
        "Take care under load, open it.",
        "Attach a puller, then open it.",
        "Release the tension on the screw, then open it.",
        "Slacken the line clamp.",
        "Under load release it.",
    ] {
        assert!(found(text).is_some(), "{text}");
    }
}

#[test]
fn other_words_are_none() {
    for text in [
        "Keep the slits in sight, stop trains.",
        "The easterly openers, a cute thing",
        "Stop. Tell the foreman.",
        "Keep the track free, nothing may change.",
        "If a strand is loose or a crack shows, keep clear.",
        "Pull back. Draw a line round it.",
    ] {
        assert_eq!(found(text), None, "{text}");
    }
}

/// Steps and the like: what is opened before load, or once it is taken, is no danger.
#[test]
fn what_is_opened_under_load_is_found_in_any_text() {
    let told = |text: &str| {
        let all = openings_under_load(text, Telling::All).into_iter();
        all.map(|opening| (opening.at, opening.words)).collect::<Vec<_>>()
    };
    for (text, at, words) in [
        ("Loosen the screw under tension.", 0, "loosen"),
        ("Measure. Open the body under line tension.", 9, "open"),
        ("While it is loaded, undo the nut", 20, "undo"),
        ("With the tension on, take it apart", 21, "take it apart"),
        ("Under full load change the cone", 16, "change the cone"),
    ] {
        assert_eq!(told(text), [(at, words.to_owned())], "{text}");
    }
    for text in [
        "Before load: take it apart. Under load: keep clear.",
        "Never open it under tension.",
        "Loosen it only where it is not under tension.",
        "Take it apart before it is under load.",
        "Take the load on a puller, then take it apart.",
        "Under tension keep clear; take the load on a puller first, then open it.",
        "Tension, wait 10 min: measure.",
    ] {
        assert_eq!(told(text), [], "{text}");
    }
}

/// A chapter tells what happened; only what it orders is done.
#[test]
fn a_chapter_may_tell_of_what_was_opened() {
    let told = |text: &str| !openings_under_load(text, Telling::Orders).is_empty();
    assert!(
        told("Dismantle it under tension.")
            && told("Under line tension open it.")
            && told("Then, under load, take it apart.")
    );
    assert!(!told("A fitting that is opened under tension lets the line go."));
    assert!(!told("Whoever opens it under tension dies."));
    assert!(!told("Opening it under tension kills."));
    assert!(!told("Under tension the line draws the cone in."));
    assert!(!told("With full line tension, tension draws the cone deeper."));
}

/// Who can't take the load away, or has put it on again, must not open anything.
#[test]
fn a_load_that_is_not_taken_away_for_sure_allows_nothing() {
    for text in [
        "If you can, take the load on a puller first; else undo it.",
        "If you can, take the load on a puller first, then undo it.",
        "Take the load on a puller, if possible, then undo it.",
        "Take the load on a puller where there is one, then undo it.",
        "Take the load on a puller when you have one, otherwise undo it.",
        "Load on the puller? If not, undo it.",
        "Load on the puller? Undo it.",
        "Take the load on a puller first, tension it again, undo the screw.",
        "Take the load on a puller first, then off again. Undo the screw.",
        "Take the load on a puller. Let the load back on. Undo the screw.",
        "Take the load on a puller. Remove the puller. Undo the screw.",
        "Take the load on a puller, or undo it.",
        "Take the load on a puller. Without one, undo it.",
        "Take the load on a puller. No puller: undo it.",
        "Try to take the load on a puller, then undo it.",
        "If it slips, take the load on a puller. Undo the screw.",
        "Release the tension at the fitting.",
        "Slacken the line at the fitting.",
        "Ease the tension with the clamp.",
        "Lower the line tension to 5 kN, then take it apart.",
        "Slacken the line to 5 kN, then take it apart.",
        "Load off the puller, undo it.",
        "Once the tension is released from the puller, undo it.",
        "Take the load on a puller afterwards, undo it.",
    ] {
        assert!(found(text).is_some(), "{text}");
    }
}

/// How people say that something is opened, further.
#[test]
fn more_words_of_opening_are_found() {
    for text in [
        "Turn the screw to the left until it comes free.",
        "Give the screw a turn anticlockwise.",
        "Half a turn anti-clockwise.",
        "Knock the cone back, begin again.",
        "Drive the wedge back.",
        "Re-seat the cone.",
        "Reseat the cone.",
        "Fit the right cone.",
        "Spin the nut off.",
        "Run the screw off.",
        "Twist the cap off.",
        "Lever the cone out.",
        "Get the cone out.",
        "Slip the cone out.",
        "Drift the pin out.",
        "Punch the pin out.",
        "Let off half a turn.",
        "Strip the fitting.",
        "Unseat the cone.",
        "Disconnect it.",
        "Saw the sleeve.",
        "Sever the wire.",
        "Shear the bolts.",
        "Take the keeper away.",
        "Un-screw it.",
        "Losen it.",
        "Loose the screw.",
        "Back the screw half a turn.",
        "Screw a turn to the left.",
        "New cone.",
        "Put in the right cone.",
        "Put another cone in.",
        "Make it loose.",
        "Begin again.",
        "Start over.",
        "Take it to pieces.",
    ] {
        assert!(found(text).is_some(), "{text}");
    }
}

#[test]
fn sound_texts_are_left_alone() {
    for text in [
        "With no tension on it, undo the screw and look.",
        "With the line load held by the puller, take the cone out.",
        "Slacken the puller under load, watch the slip mark.",
        "Do not undo, unscrew or cut anything.",
        "Relieve the fitting with a puller, then take it apart.",
        "Lower the line tension to zero, then take it apart.",
        "Remove the puller only with the load on the fitting.",
        "Take the tension off the fitting with a puller, then open it.",
        "If it slips, take the load on a puller first, then take it apart.",
        "Take the load on a puller. If the cone does not come out, take it apart.",
        "Ease the load onto the fitting.",
        "Get out of the span. Get off the ladder.",
        "Thimble loose or turned.",
        "Keep clear until it is replaced by others.",
        "Fit a second puller before anything is cut.",
        "The load goes on a puller first; only then is it opened.",
        "Release the puller grip.",
    ] {
        assert_eq!(found(text), None, "{text}");
    }
    assert!(found("Do not undo, unscrew anything.").is_some());
    assert!(found("Slacken the puller clamp.").is_some());
}

/// What is told in one text after another, as in steps.
fn in_turn(texts: &[&str]) -> Vec<String> {
    let mut load = Load::default();
    let told = |text: &&str| openings_with(text, &mut load, Telling::All);
    texts.iter().flat_map(told).map(|opening| opening.words).collect()
}

#[test]
fn what_is_opened_after_the_line_is_tensioned_is_found() {
    for texts in [
        &["Tension, wait 10 min: 2 mm. Else undo."][..],
        &["Tension, wait 10 min: 2 mm. No? Loosen it."],
        &["Tension, wait 10 min, loosen screw, measure again."],
        &["Tension to 12 kN.", "Measure.", "Loosen the screw."],
        &["Tension the line, then undo the screw."],
        &["After tensioning, loosen the screw half a turn."],
        &["After tension, loosen the screw half a turn."],
        &["Once tensioned, loosen the screw."],
        &["Leave the load on and undo the screw."],
        &["Load on: undo the screw."],
        &["In a tensioned span undo the screw."],
        &["At line tension undo the screw."],
        &["On a tensioned line undo the screw."],
        &["Screw 12; undo with wire taut."],
        &["While the wire is tight, undo the screw."],
        &["Take the load on a puller.", "Tension, wait 10 min.", "Undo the screw."],
        &["Tension. Take the load on a puller.", "Remove the puller.", "Undo the screw."],
    ] {
        assert_eq!(in_turn(texts).len(), 1, "{texts:?} {:?}", in_turn(texts));
    }
    for texts in [
        &["Undo the screw.", "Tension, wait 10 min."][..],
        &["Tension, wait 10 min.", "Never undo the screw."],
        &["Tension, wait 10 min.", "Take the load on a puller.", "Undo the screw."],
        &["Tension, wait 10 min: 2 mm. Else take the load on a puller, then undo it."],
        &["Tension, then once more.", "Remove the puller, measure."],
        &["Tension.", "Take off the puller and the tag, remove the earths.", "Ease off the puller."],
        &["Split pin, open both legs.", "Tension.", "Open both legs of the split pin."],
        &["Tension draws the cone in.", "Undo the screw."],
        &["Slack jumpers only, never in a tensioned span.", "Undo the screw."],
        &["Before the line tension is on, undo it."],
        &["Until the load is on, the screw may be loosened."],
        &["When it is no longer tensioned, undo it."],
        &["While it is not tensioned, undo it."],
    ] {
        assert_eq!(in_turn(texts), [""; 0], "{texts:?}");
    }
}

#[test]
fn orders_of_a_chapter_need_not_begin_with_the_verb() {
    let told = |text: &str| !openings_under_load(text, Telling::Orders).is_empty();
    for text in [
        "You can loosen the screw under tension.",
        "The screw must be loosened under tension.",
        "Carefully loosen the screw under tension.",
        "Always loosen the screw under tension.",
        "Now carefully loosen the screw under tension.",
        "First, loosen the screw under tension.",
        "Please loosen the screw under tension.",
        "Loosen the screw\nunder tension.",
        "It is safe to loosen the screw under tension.",
        "The screw may be loosened under tension.",
        "You have to loosen the screw under tension.",
        "It is enough to loosen the screw under tension.",
        "If it has moved loosen the screw under tension.",
        "Under tension you loosen the screw.",
        "The line is under tension. Loosen the screw.",
        "Under tension:\n\n- loosen the screw",
        "Under tension:\n\n- wait\n- loosen the screw",
        "Under tension:\n1. Wait\n2. Loosen the screw",
        "## Under tension\n\nWait. Loosen the screw.",
    ] {
        assert!(told(text), "{text}");
    }
    for text in [
        "A nut can loosen under tension.",
        "You must not loosen it under tension.",
        "If you loosen it under tension, the line goes.",
        "Whatever is under tension stays closed. Loosen the screw before.",
        "It is not safe to loosen it under tension.",
        "It must never be loosened under tension.",
        "To loosen it under tension kills.",
        "Under tension:\n\n- keep clear\n\nBefore it:\n\n- loosen the screw",
        "## Under tension\n\nTake the load on a puller. Loosen the screw.",
        "## Under tension\n\nWait.\n\n## Before\n\nLoosen the screw.",
        "The slip mark moves\n\nLoosen the screw before tension.",
    ] {
        assert!(!told(text), "{text}");
    }
}
