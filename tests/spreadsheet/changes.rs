//! What rows change in the files of their records: each expected text is written by hand.

use super::{CONDUCTOR, FITTINGS, PARTS, errors, imported, small, text};

#[test]
fn values_are_changed_where_they_stand_and_as_they_are_written() {
    let table = "number,name,stamp,mark.text,geometry.collet.bore_mm,proven_on.1.date,proven_on.2.report\n\
                 C-1,\"Cone 14.0, new\",BZ 14,KE,14.4,2026-03-01,T-3\n";
    let expected = PARTS
        .replace("name: Cone 14.0   #", "name: Cone 14.0, new   #")
        .replace("\"14.0\"", "\"BZ 14\"")
        .replace("'KA'", "'KE'")
        .replace("14.30", "14.4")
        .replace("2026-02-10", "2026-03-01")
        .replace("report: T-2", "report: T-3");
    let import = imported(&small(), &[("parts.csv", table.as_bytes())]);
    assert_eq!(text(&import, "parts/cones.yaml"), expected);
    assert_eq!((import.files.len(), errors(&import)), (1, vec![]));
    let words: Vec<String> = import.changes[0].keys.iter().map(|key| key.words()).collect();
    assert_eq!(words[3], "geometry.collet.bore_mm: 14.30 becomes 14.4");
}

#[test]
fn keys_are_added_in_the_order_of_the_declarations() {
    let table = "number,drawing,mark.notches,geometry.collet.bore_tolerance_mm,geometry.body.length_mm,interface,reuse\n\
                 C-1,D-1,2,0.05,,seat,\n\
                 B-1,,,,70,,never\n";
    let expected = PARTS
        .replace("bronze-soft\n", "bronze-soft\ndrawing: D-1\n")
        .replace("text: 'KA' }\n", "text: 'KA', notches: 2 }\ninterface: seat\n")
        .replace("14.30, slits", "14.30, bore_tolerance_mm: 0.05, slits")
        .replace(
            "material: brass\n",
            "material: brass\nreuse: never\ngeometry: { body: { length_mm: 70 } }\n",
        );
    let import = imported(&small(), &[("parts.csv", table.as_bytes())]);
    assert_eq!(text(&import, "parts/cones.yaml"), expected);
}

#[test]
fn cells_that_are_cleared_take_their_keys_out() {
    let table = "number,stamp,mark.colour,mark.text,geometry.collet.slits,proven_on.2.conductor,proven_on.2.body,proven_on.2.report\n\
                 C-1,,,,,,,\n";
    let expected = PARTS
        .replace("stamp: \"14.0\"\n", "")
        .replace("mark: { colour: BU, text: 'KA' }\n", "")
        .replace("slits: 3, ", "")
        .replace("  - conductor: wire\n    body: B-1\n    report: T-2\n", "");
    let import = imported(&small(), &[("parts.csv", table.as_bytes())]);
    assert_eq!(text(&import, "parts/cones.yaml"), expected);
    assert!(import.changes[0].keys[0].words().ends_with("is taken out"));
}

#[test]
fn lists_are_changed_entry_by_entry() {
    let table = "number,parts,tightening.1.grease,tightening.2.item,tightening.2.spanner_mm,steps,reject_if,witness\n\
                 F-1,\"B-1, C-1, N-1 x6\",\"thread\",nut,24,\"Wipe.\nPush in, all the way.\nScrew down hard.\",\"Cracked, bent\",Second person reads it.\n";
    let expected = FITTINGS
        .replace("quantity: 4", "quantity: 6")
        .replace("[thread, taper] }\n", "[thread] }\n  - { item: nut, spanner_mm: 24 }\n")
        .replace("steps:\n", "steps:\n  - Wipe.\n")
        .replace("Screw down.", "Screw down hard.")
        .replace("A second person\n  reads the stamp.", "Second person reads it.")
        .replace("[Cracked]", "[\"Cracked, bent\"]");
    let import = imported(&small(), &[("fittings.csv", table.as_bytes())]);
    assert_eq!(text(&import, "fittings/ends.yaml"), expected);
    assert_eq!(errors(&import), []);
    let table = "number,parts,steps\nF-1,\"B-1,C-1,,N-1 x4\",\"Push in, all the way.\n\nScrew down.\"\n";
    assert_eq!(imported(&small(), &[("fittings.csv", table.as_bytes())]).changes, []);
    let table = "number,parts,steps\nF-1,\"B-1, C-1\",Screw down.\n";
    let expected = FITTINGS
        .replace("C-1, { part: N-1, quantity: 4 }]", "C-1]")
        .replace("  - \"Push in, all the way.\"\n", "");
    let import = imported(&small(), &[("fittings.csv", table.as_bytes())]);
    assert_eq!(text(&import, "fittings/ends.yaml"), expected);
}

#[test]
fn a_step_keeps_its_stage_behind_its_text() {
    use fittingcards::source::FilePath;
    let staged =
        FITTINGS.replace("- Screw down.", "- { text: \"Screw, {torque}.\", stage: entered } # tight");
    let world = small().with(FilePath::catalogue("fittings/ends.yaml"), &staged);
    let table = "number,steps\nF-1,\"Push in, all the way.\nScrew, {torque}. [entered]\"\n";
    assert_eq!(imported(&world, &[("fittings.csv", table.as_bytes())]).changes, []);
    let table = "number,steps\nF-1,\"Push in, all the way. [apart]\nScrew it, {torque}. [seated]\"\n";
    let expected = staged
        .replace("- \"Push in, all the way.\"", "- { text: \"Push in, all the way.\", stage: apart }")
        .replace("\"Screw, {torque}.\", stage: entered", "\"Screw it, {torque}.\", stage: seated");
    let import = imported(&world, &[("fittings.csv", table.as_bytes())]);
    assert_eq!(text(&import, "fittings/ends.yaml"), expected);
}

#[test]
fn a_row_of_a_number_that_is_new_becomes_a_file_of_its_own() {
    let table = "number,name,role,material,stamp,mark.text,mark.colour,proven_on.1.conductor,proven_on.1.body\n\
                 C-2,\"Cone: 12.5\",cone,bronze-soft,=12.5,TE,WH,wire,B-1\n\
                 c-1,Other,cone,brass,,,,,\n";
    let import = imported(&small(), &[("parts.csv", table.as_bytes())]);
    let expected = "number: C-2\nname: \"Cone: 12.5\"\nrole: cone\nmaterial: bronze-soft\nstamp: =12.5\n\
                    mark: { colour: WH, text: TE }\nproven_on: [{ conductor: wire, body: B-1 }]\n";
    assert_eq!(text(&import, "parts/C-2.yaml"), expected);
    assert!(import.changes[0].is_new);
    // Capital letters make no number another one.
    let found: Vec<_> = errors(&import).into_iter().map(|(code, file, line, _)| (code, file, line)).collect();
    assert_eq!(found, [("duplicate-id", "parts.csv".to_owned(), 3)]);
}

#[test]
fn what_is_wrong_is_told_at_its_cell_with_the_codes_of_records() {
    let parts = "number,name,role,bore_mm,geometry.collet.bore_mm,material,mark.colour,\n\
                 C-1,Cone,cone,,14.0 mm,bronze-soft,XX,\n\
                 C-1,,,,,,,\n\
                 ,Nameless,,,,,,\n\
                 B-1,,body,,,plastic,,stray\n";
    let fittings = "number,parts,tightening.1.torque_Nm.min,conductor\nF-1,\"B-1, C-9\",800,wire\n";
    let import =
        imported(&small(), &[("parts.csv", parts.as_bytes()), ("fittings.csv", fittings.as_bytes())]);
    // Lines and columns are counted by hand.
    let expected = [
        ("unknown-part", "fittings.csv", 2, 5),
        ("window-upside-down", "fittings.csv", 2, 16),
        ("unknown-key", "parts.csv", 1, 18),
        ("wrong-type", "parts.csv", 2, 16),
        ("unknown-word", "parts.csv", 2, 36),
        ("duplicate-id", "parts.csv", 3, 1),
        ("missing-key", "parts.csv", 4, 1),
        ("missing-key", "parts.csv", 5, 5),
        ("unknown-material", "parts.csv", 5, 13),
        ("unknown-key", "parts.csv", 5, 22),
    ];
    let expected = expected.map(|(code, file, line, column)| (code, file.to_owned(), line, column));
    assert_eq!(errors(&import), expected);
}

#[test]
fn a_value_that_stands_elsewhere_too_is_left_to_hand() {
    use fittingcards::source::FilePath;
    let parts = PARTS
        .replace("body: B-1, holding", "body: &same B-1, holding")
        .replace("body: B-1\n", "body: *same\n");
    let world = small().with(FilePath::catalogue("parts/cones.yaml"), parts);
    for table in ["number,proven_on.1.body\nC-1,N-1\n", "number,proven_on.2.body\nC-1,N-1\n"] {
        let import = imported(&world, &[("parts.csv", table.as_bytes())]);
        assert_eq!(errors(&import), [("record-not-editable", "parts.csv".to_owned(), 2, 5)], "{table}");
    }
}

/// A record in a file that can't be read would be taken for a new one.
#[test]
fn a_file_that_cannot_be_read_stops_the_rows_of_its_kind() {
    use fittingcards::source::FilePath;
    let world = small().with(FilePath::catalogue("parts/nuts.yaml"), "number: N-1\nname: [Nut\n");
    let import = imported(&world, &[("parts.csv", b"number,name,role,material\nN-1,Nut 2,nut,brass\n")]);
    let found: Vec<_> = errors(&import).into_iter().map(|(code, file, ..)| (code, file)).collect();
    assert!(found.contains(&("not-yaml", "parts/nuts.yaml".to_owned())), "{found:?}");
}

#[test]
fn line_ends_and_a_mark_at_the_start_stay_as_they_are() {
    use fittingcards::source::FilePath;
    let parts = format!("\u{feff}{}", PARTS.replace('\n', "\r\n"));
    let world = small().with(FilePath::catalogue("parts/cones.yaml"), &parts);
    let import = imported(&world, &[("parts.csv", b"number,drawing,stamp\nC-1,D-1,X\n")]);
    let expected =
        parts.replace("bronze-soft\r\n", "bronze-soft\r\ndrawing: D-1\r\n").replace("\"14.0\"", "\"X\"");
    assert_eq!(text(&import, "parts/cones.yaml"), expected);
}

/// An entry that has a comma looks like two in its cell: with one more in the cell, the list would come to four.
#[test]
fn a_list_whose_entries_have_commas_is_left_to_hand() {
    use fittingcards::source::FilePath;
    for list in ["[\"thread, all round\", taper]", "[\"thread, all round\", \"\"]"] {
        let fittings = FITTINGS.replace("[thread, taper]", list);
        let world = small().with(FilePath::catalogue("fittings/ends.yaml"), fittings);
        let table = "number,tightening.1.grease\nF-1,\"thread, all round, taper, head\"\n";
        let import = imported(&world, &[("fittings.csv", table.as_bytes())]);
        let told = ("record-not-editable", "fittings.csv".to_owned(), 2, 5);
        assert!(errors(&import).contains(&told), "{list}: {:?}", import.findings);
    }
}

/// A spreadsheet parts thousands as others part decimals: 1060 kg would become 1.06 kg.
#[test]
fn a_number_that_may_have_a_mark_in_its_thousands_is_refused() {
    use fittingcards::source::FilePath;
    let wire = format!("{CONDUCTOR}stated: {{ mass_kg_per_km: 1060, breaking_load_kN: 67.6 }}\n");
    let world = small().with(FilePath::catalogue("conductors/wire.yaml"), wire);
    for (name, table, refused) in [
        ("conductors.csv", "id;stated.mass_kg_per_km\nwire;1,060\n", Some((2, 6))),
        ("conductors.csv", "id;stated.mass_kg_per_km\nwire;1.070\n", Some((2, 6))),
        ("conductors.csv", "id,stated.mass_kg_per_km\nwire,1.060\n", Some((2, 6))),
        ("conductors.csv", "id;stated.mass_kg_per_km\nwire;1070,5\n", None),
        ("conductors.csv", "id;stated.mass_kg_per_km;stated.breaking_load_kN\nwire;1060;67,500\n", None),
    ] {
        let import = imported(&world, &[(name, table.as_bytes())]);
        let told = errors(&import).into_iter().find(|(code, ..)| *code == "wrong-type");
        assert_eq!(told.map(|(_, _, line, column)| (line, column)), refused, "{table}");
    }
}

/// Whoever takes a row out of a sheet may think that the record goes too.
#[test]
fn records_without_a_row_are_named() {
    let import = imported(&small(), &[("parts.csv", b"number,name\nC-1,Cone\n")]);
    assert_eq!(import.without_row, ["B-1", "N-1"]);
    assert!(imported(&small(), &[("parts.csv", b"number,name\n")]).without_row.is_empty());
}
