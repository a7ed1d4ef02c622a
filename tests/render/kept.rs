//! What is kept of the last run: with it and without it the bytes are the same, whatever has changed and whatever has
//! happened to what is remembered.

use super::{options, rendered, tree, world};
use fittingcards::publish::{self, AuditOptions, BookletForm, RenderOptions, Unchanged};
use fittingcards::source::{DiskWorld, FilePath, Folder, MemoryWorld, World};
use std::fs;
use std::path::Path;

/// The catalogue that `start` writes, in memory.
fn starter() -> MemoryWorld {
    let disk = DiskWorld::new(
        Path::new(env!("CARGO_MANIFEST_DIR")).join("src/cli/starter"),
        "no layouts of our own",
    );
    let files = disk.files(Folder::Catalogue).unwrap();
    files.into_iter().fold(MemoryWorld::new(), |world, file| {
        let bytes = disk.read(&file).unwrap();
        world.with(file, bytes)
    })
}

/// The same world with one text of a file replaced by another.
fn changed(world: &MemoryWorld, path: &str, from: &str, to: &str) -> MemoryWorld {
    let file = FilePath::catalogue(path);
    let text = String::from_utf8(world.read(&file).unwrap().to_vec()).unwrap();
    assert!(text.contains(from), "{path} has no {from}");
    world.clone().with(file, text.replacen(from, to, 1))
}

/// Renders into a folder where another run was before, and into an empty one; both must be the same. Gives how many
/// files were kept.
fn same_as_clean(world: &MemoryWorld, folder: &Path, what: &str) -> usize {
    let kept = rendered(world, &options(folder)).put.unwrap().kept;
    let clean = tempfile::tempdir().unwrap();
    rendered(world, &options(clean.path()));
    assert!(tree(folder) == tree(clean.path()), "{what}: not as a clean run makes it");
    kept
}

/// The cone of F-202 is drawn beside that of F-201 on the card of F-201, with its gap: narrower slits leave a wider one.
#[test]
fn a_card_is_made_again_with_the_wrong_part_that_is_drawn_on_it() {
    let folder = tempfile::tempdir().unwrap();
    let world = changed(&starter(), "catalogue.yaml", "size: A7", "size: A6");
    // Then the card says no length of it beside the drawing.
    let world = changed(&world, "catalogue.yaml", "visible_stand_out_mm: 2", "visible_stand_out_mm: 9");
    rendered(&world, &options(folder.path()));
    let front = |folder: &Path| std::fs::read(folder.join("cards/F-201-front.svg")).unwrap();
    let before = front(folder.path());
    let (from, to) = (
        "bore_mm: 12.8, bore_tolerance_mm: 0.05, slits: 3, slit_width_mm: 1.0",
        "bore_mm: 12.8, bore_tolerance_mm: 0.05, slits: 3, slit_width_mm: 0.9",
    );
    same_as_clean(&changed(&world, "parts/collet-body.yaml", from, to), folder.path(), to);
    assert!(front(folder.path()) != before, "the drawing has not changed");
}

/// Slips, gauges, labels and pages follow their records too, and what has not changed is kept.
#[test]
fn what_is_made_for_training_is_that_of_a_clean_run() {
    let folder = tempfile::tempdir().unwrap();
    let chosen = "decimal_mark: \".\"\ntraining: { questions: 3 }";
    let mut world = changed(&starter(), "catalogue.yaml", "decimal_mark: \".\"", chosen);
    rendered(&world, &options(folder.path()));
    let made = tree(folder.path());
    assert!(made.keys().any(|path| path.contains("training/assembly-slips.pdf")), "{:?}", made.keys());
    let fittings = "fittings/collet-dead-ends.yaml";
    let changes = [
        (fittings, "torque_Nm: { min: 60, max: 70 }", "torque_Nm: { min: 60, max: 71 }"),
        ("parts/collet-body.yaml", "stamp: \"CU 10.5\"", "stamp: \"CU 10,5\""),
        ("procedures/collet.yaml", "Seat cone {mark}.", "Seat the cone {mark}."),
        ("catalogue.yaml", "questions: 3", "questions: 4"),
    ];
    for (path, from, to) in changes {
        world = changed(&world, path, from, to);
        assert!(same_as_clean(&world, folder.path(), to) > 0, "{to}: nothing was kept");
    }
}

#[test]
fn whatever_changes_the_bytes_are_those_of_a_clean_run() {
    let folder = tempfile::tempdir().unwrap();
    let first = starter();
    rendered(&first, &options(folder.path()));
    let all = tree(folder.path()).len();
    let fittings = "fittings/collet-dead-ends.yaml";
    let parts = "parts/collet-body.yaml";
    let changes = [
        (fittings, "torque_Nm: { min: 60, max: 70 }", "torque_Nm: { min: 60, max: 71 }"),
        (fittings, "name: Collet dead-end, messenger 95", "name: Collet end, messenger 95"),
        (parts, "large_diameter_mm: 36", "large_diameter_mm: 37"),
        (parts, "stamp: \"CU 10.5\"", "stamp: \"CU 10,5\""),
        (parts, "bore_mm: 10.8,", "bore_mm: 10.80,"),
        ("conductors/messengers.yaml", "duty: messenger", "duty: earth"),
        ("procedures/collet.yaml", "steps:", "# A comment moves the steps.\nsteps:"),
        ("procedures/collet.yaml", "Seat cone {mark}.", "Seat the cone {mark}."),
        (
            "procedures/collet.yaml",
            "\"Grease thread. Screw {torque}.\"",
            "{ text: \"Grease thread. Screw {torque}.\", stage: entered }",
        ),
        ("procedures/collet.yaml", "Second person reads mark", "A second person reads mark"),
        ("procedures/collet.yaml", "Slip mark has moved", "Slip mark is gone"),
        ("parts/collet-body.yaml", "drawing: D-101/A", "drawing: D-101/B"),
        ("parts/collet-body.yaml", "name: Closing screw M30x2", "name: Closing screw M30x2.0"),
        ("parts/collet-body.yaml", "report: R-1", "report: R-9"),
        ("parts/collet-body.yaml", "reuse: never", "reuse: if-undamaged"),
        ("conductors/messengers.yaml", "drum_tag: \"CU 70\"", "drum_tag: \"CU 71\""),
        ("notices/1.yaml", "from the first of December", "from December on"),
        ("holders/holders.yaml", "F-201: 6", "F-201: 7"),
        ("notes/F-201.md", "", "Another note.\n\n"),
        ("notes/chapters/01-before-you-start.md", "\n\n", "\n\nAnother line.\n\n"),
        ("catalogue.yaml", "bleed_mm: 2", "bleed_mm: 1"),
        ("catalogue.yaml", "Load on a puller", "Load on two pullers"),
    ];
    for (path, from, to) in changes {
        let what = format!("{path}: {from} → {to}");
        let kept = same_as_clean(&changed(&first, path, from, to), folder.path(), &what);
        assert!((1..all).contains(&kept), "{what}: {kept} of {all} files kept");
    }
    let own = first
        .clone()
        .with(FilePath::layouts("cards/parts.xml"), "<block id=\"parts\"><space height=\"1\"/></block>");
    same_as_clean(&own, folder.path(), "a layout of a block");
    let footer = "<footer class=\"bottom\"><p class=\"caution\">{{ frame.caution }}</p><p>{{ frame.edition }}, \
                  {{ frame.date }}, {{ frame.state }}</p></footer>\n";
    let own = first.clone().with(FilePath::layouts("booklet/footer.html"), footer);
    same_as_clean(&first, folder.path(), "no layout of ours");
    assert!(same_as_clean(&own, folder.path(), "a layout of pages") > 0, "cards were not kept");
    let own = first.clone().with(FilePath::catalogue("fonts/own.ttf"), dejavu::sans_mono::regular());
    same_as_clean(&own, folder.path(), "a font");
    let material = "id: bronze-soft\nname: Soft bronze of our own\ngroup: bronze\n";
    let own = first.clone().with(FilePath::catalogue("materials/own.yaml"), material);
    same_as_clean(&own, folder.path(), "a material");
    same_as_clean(&first, folder.path(), "back to the first");
}

#[test]
fn a_run_that_changes_nothing_keeps_every_file_and_says_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let first = rendered(&starter(), &options(folder.path()));
    let before = tree(folder.path());
    let second = rendered(&starter(), &options(folder.path()));
    assert_eq!(first.findings.sorted(), second.findings.sorted());
    let (first_put, second_put) = (first.put.unwrap(), second.put.unwrap());
    assert_eq!((first_put.written, first_put.bytes), (second_put.written, second_put.bytes));
    assert_eq!((first_put.kept, second_put.kept), (0, second_put.written));
    assert!(before == tree(folder.path()));
}

/// A tag shows no step: a storekeeper's sheets are not made again for one.
#[test]
fn a_step_in_other_words_makes_no_kit_tag_again() {
    let folder = tempfile::tempdir().unwrap();
    let written = || {
        let sheets = ["tags", "cards"].map(|name| folder.path().join(format!("sheets/{name}.pdf")));
        sheets.map(|sheet| fs::metadata(sheet).unwrap().modified().unwrap())
    };
    rendered(&starter(), &options(folder.path()));
    let [tags, cards] = written();
    let worded = changed(&starter(), "procedures/collet.yaml", "Seat cone {mark}.", "Seat the cone {mark}.");
    rendered(&worded, &options(folder.path()));
    let [tags_now, cards_now] = written();
    assert_eq!(tags_now, tags);
    assert_ne!(cards_now, cards);
}

#[test]
fn what_is_remembered_may_be_damaged_in_any_way() {
    let folder = tempfile::tempdir().unwrap();
    let remembered = folder.path().join(".cache/outputs");
    rendered(&world(2), &options(folder.path()));
    let sound = fs::read(&remembered).unwrap();
    let text = String::from_utf8(sound.clone()).unwrap();
    let (head, rest) = text.split_once('\n').unwrap();
    let mut flipped = sound.clone();
    flipped[sound.len() / 2] ^= 1;
    let earlier = text.replacen("outputs 2 ", "outputs 1 ", 1);
    assert_ne!(earlier, text);
    let without_a_line = rest.rsplit_once('\n').unwrap().0;
    let head_of =
        |lines: &str| format!("fittingcards outputs 2 {}\n", blake3::hash(lines.as_bytes()).to_hex());
    assert_eq!(head_of(rest), format!("{head}\n"));
    let damaged = [
        ("empty", Vec::new()),
        ("cut short", sound[..sound.len() - 7].to_vec()),
        ("a bit flipped", flipped),
        ("of another form", earlier.into_bytes()),
        ("somebody else's", b"\x89PNG\r\n\x1a\n\0\0".to_vec()),
        ("without a line, with its own checksum", (head_of(without_a_line) + without_a_line).into_bytes()),
        ("without its checksum", rest.as_bytes().to_vec()),
        (
            "sound JSON with another checksum",
            format!("{head}\n{{\"common\":{{}},\"outputs\":{{}}}}").into_bytes(),
        ),
    ];
    for (what, bytes) in damaged {
        fs::write(&remembered, bytes).unwrap();
        let kept = same_as_clean(&world(2), folder.path(), what);
        assert_eq!(kept, 0, "{what}");
        assert!(same_as_clean(&world(2), folder.path(), what) > 0, "{what}: not written again");
    }
}

#[test]
fn a_file_that_somebody_changed_or_took_away_is_made_again() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(2), &options(folder.path()));
    for path in ["cards/F-1-front.svg", "cards/F-2-back.png", "sheets/cards.pdf", "booklet/index.html"] {
        let file = folder.path().join(path);
        let mut bytes = fs::read(&file).unwrap();
        *bytes.last_mut().unwrap() ^= 1;
        fs::write(&file, bytes).unwrap();
        assert!(same_as_clean(&world(2), folder.path(), path) > 0);
        fs::remove_file(&file).unwrap();
        assert!(same_as_clean(&world(2), folder.path(), path) > 0);
    }
}

#[test]
fn what_no_longer_belongs_is_forgotten() {
    let folder = tempfile::tempdir().unwrap();
    let remembered = || fs::metadata(folder.path().join(".cache/outputs")).unwrap().len();
    rendered(&world(12), &options(folder.path()));
    let many = remembered();
    same_as_clean(&world(2), folder.path(), "fewer fittings");
    assert!(remembered() < many / 2, "{} bytes after {many}", remembered());
    let listed = fs::read_to_string(folder.path().join("manifest.json")).unwrap();
    assert!(!listed.contains(".cache"));
}

#[test]
fn what_was_asked_for_decides_too() {
    let folder = tempfile::tempdir().unwrap();
    let plain = options(folder.path());
    rendered(&world(3), &plain);
    let before = tree(folder.path());
    let asked = [
        RenderOptions { preview_dpi: 60.0, ..plain.clone() },
        RenderOptions { only: vec!["F-2".to_owned()], ..plain.clone() },
        RenderOptions { booklet: BookletForm::PagesAndSingleFile, ..plain.clone() },
        RenderOptions { unchanged: Unchanged::MadeAgain, ..plain.clone() },
    ];
    for asked in asked {
        rendered(&world(3), &asked);
        rendered(&world(3), &plain);
        assert!(before == tree(folder.path()), "after {asked:?}");
    }
}

#[test]
fn others_keep_their_files_where_the_run_remembers() {
    let folder = tempfile::tempdir().unwrap();
    let theirs = folder.path().join(".cache/theirs");
    rendered(&world(1), &options(folder.path()));
    fs::write(&theirs, "mine").unwrap();
    rendered(&world(2), &options(folder.path()));
    assert_eq!(fs::read_to_string(&theirs).unwrap(), "mine");
}

#[test]
fn an_audit_finds_the_same_beside_an_output() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&starter(), &options(folder.path()));
    let too_long = format!("torque_Nm: {{ min: 60, max: 70 }}, item: {}", "very ".repeat(80));
    let broken = changed(&starter(), "fittings/collet-dead-ends.yaml", "item: closing screw", &too_long);
    for world in [starter(), broken] {
        let audit = |output| {
            let options = AuditOptions { output, ..AuditOptions::default() };
            publish::check(&world, &options, &|_| {}).unwrap()
        };
        let (beside, alone) = (audit(Some(folder.path().to_path_buf())), audit(None));
        assert_eq!(beside.sorted(), alone.sorted());
    }
}

#[test]
fn why_a_card_is_made_again_is_told_in_its_own_words() {
    let folder = tempfile::tempdir().unwrap();
    let asked = RenderOptions { why: Some("F-201".to_owned()), ..options(folder.path()) };
    let told = |world: &MemoryWorld| {
        let why = rendered(world, &asked).why;
        why.into_iter().flat_map(|why| why.changed).collect::<Vec<_>>().join("\n")
    };
    assert!(told(&starter()).contains("not made before"));
    assert_eq!(told(&starter()), "");
    let torque =
        changed(&starter(), "fittings/collet-dead-ends.yaml", "min: 60, max: 70", "min: 60, max: 71");
    let why = told(&torque).replace('\u{a0}', " ");
    assert!(why.contains("torque") && why.contains("was “60 to 70 N·m”, is “60 to 71 N·m”"), "{why}");
    let body = changed(&torque, "parts/collet-body.yaml", "large_diameter_mm: 36", "large_diameter_mm: 37");
    assert!(told(&body).contains("records that it is drawn from"));
    let layout =
        body.with(FilePath::layouts("cards/parts.xml"), "<block id=\"parts\"><space height=\"1\"/></block>");
    assert!(told(&layout).contains("layouts/cards/parts.xml"));
}
