//! Records as tables for a spreadsheet, and rows back into the files of their records.

mod changes;
mod comments;
mod cut_off;
mod hostile;
mod round_trip;
mod since_export;
mod written;

use fittingcards::diagnostics::Findings;
use fittingcards::records::written_table;
use fittingcards::source::{FilePath, Folder, MemoryWorld, World};
use fittingcards::spreadsheet::{Import, Sheet, import, read_tables, sheets, workbook};
use std::collections::BTreeMap;

/// A small catalogue with comments, brackets and quotes of all sorts.
pub const PARTS: &str = "# Cones of the yard.\n\
    number: C-1\n\
    name: Cone 14.0   # the old one\n\
    role: cone\n\
    material: bronze-soft\n\
    stamp: \"14.0\"\n\
    mark: { colour: BU, text: 'KA' }\n\
    geometry:\n\
    \x20 # measured in May\n\
    \x20 collet: { bore_mm: 14.30, slits: 3, half_angle_deg: 5 } # by hand\n\
    proven_on:\n\
    \x20 - { conductor: wire, body: B-1, holding_load_kN: 44.0, date: 2026-02-10 }\n\
    \x20 - conductor: wire\n\
    \x20   body: B-1\n\
    \x20   report: T-2\n\
    ---\n\
    number: B-1\n\
    name: Body\n\
    role: body\n\
    material: brass\n\
    # end\n";

pub const FITTINGS: &str = "number: F-1\n\
    name: Dead-end\n\
    family: cone-dead-end\n\
    conductor: wire\n\
    parts: [B-1, C-1, { part: N-1, quantity: 4 }] # in order\n\
    tightening:\n\
    \x20 - { item: screw, torque_Nm: { min: 80, max: 90 }, grease: [thread, taper] }\n\
    steps:\n\
    \x20 - \"Push in, all the way.\"\n\
    \x20 # then\n\
    \x20 - Screw down.\n\
    witness: >-\n\
    \x20 A second person\n\
    \x20 reads the stamp.\n\
    reject_if: [Cracked]\n";

const CONDUCTOR: &str = "id: wire\nname: Wire\nduty: messenger\nmaterial: copper-hard-drawn\n\
    construction: { stranded: { wires: 19, wire_diameter_mm: 2.50 } }\nidentity: { drum_tag: \"\", tracer: red }\n";

pub const SETTINGS: &str = "title: Example\nowner: Example railway\nedition: \"1\"\ndate: 2026-01-01\ncaution: Example, not for use.\n";

pub fn small() -> MemoryWorld {
    let nut = "number: N-1\nname: Nut\nrole: nut\nmaterial: brass\n";
    [
        ("catalogue.yaml", SETTINGS),
        ("parts/cones.yaml", PARTS),
        ("parts/nuts.yaml", nut),
        ("fittings/ends.yaml", FITTINGS),
        ("conductors/wire.yaml", CONDUCTOR),
    ]
    .into_iter()
    .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text))
}

pub fn csv_of(sheet: &Sheet) -> Vec<u8> {
    let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
    written_table(&head, &sheet.texts()).unwrap()
}

/// What comes of tables given as CSV, by the names of their files.
pub fn imported(world: &dyn World, tables: &[(&str, &[u8])]) -> Import {
    let mut findings = Findings::new();
    let tables: Vec<_> =
        tables.iter().flat_map(|(name, bytes)| read_tables(name, bytes, None, &mut findings)).collect();
    let mut import = import(world, &tables).unwrap();
    import.findings.extend(findings);
    import
}

/// The tables of a catalogue as CSV files and as an XLSX file.
pub fn exported(world: &dyn World) -> (Vec<(String, Vec<u8>)>, Vec<u8>) {
    let sheets = sheets(world).unwrap();
    let csv = sheets.iter().map(|sheet| (format!("{}.csv", sheet.kind.folder()), csv_of(sheet))).collect();
    (csv, workbook(&sheets, None).unwrap())
}

/// The text that a file would have.
pub fn text<'i>(import: &'i Import, path: &str) -> &'i str {
    let file = import.files.iter().find(|(file, ..)| file.path.as_ref() == path);
    file.map_or_else(|| panic!("{path} does not change: {:?}", import.findings.sorted()), |(_, _, text)| text)
}

/// Code, line and column of each error.
pub fn errors(import: &Import) -> Vec<(&'static str, String, u32, u32)> {
    let errors = import.findings.sorted().into_iter();
    let errors = errors.filter(|finding| finding.severity == fittingcards::diagnostics::Severity::Error);
    let place = |finding: &fittingcards::diagnostics::Finding| {
        (finding.code, finding.place.file.path.to_string(), finding.place.line, finding.place.column)
    };
    errors.map(place).collect()
}

/// The texts of a catalogue's files.
pub fn files_of(world: &dyn World) -> BTreeMap<String, String> {
    let files = world.files(Folder::Catalogue).unwrap();
    let text = |file: &FilePath| String::from_utf8_lossy(&world.read(file).unwrap()).into_owned();
    files.iter().map(|file| (file.path.to_string(), text(file))).collect()
}
