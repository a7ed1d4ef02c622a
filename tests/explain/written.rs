//! Records written from what is said of keys: a key with its example, and what its record must have beside it.

use fittingcards::explain::{Key, keys};
use fittingcards::source::{FilePath, MemoryWorld};
use std::sync::LazyLock;

/// Every key.
pub static KEYS: LazyLock<Vec<Key>> = LazyLock::new(keys);

/// The smallest record that has a key, with a value of its own for that key.
pub fn record_with(key: &Key, value: &str) -> String {
    let steps: Vec<&str> = key.path.split('.').collect();
    lines(&steps, 1, value).join("\n") + "\n"
}

/// A catalogue of this one record alone, and of the least settings where it is none.
pub fn world_of(kind: &str, record: &str) -> MemoryWorld {
    let settings = FilePath::catalogue("catalogue.yaml");
    if kind == "catalogue" {
        return MemoryWorld::new().with(settings, record);
    }
    let least = "title: Example\nowner: Example railway\nedition: \"1\"\ncaution: Example, not for use.\n";
    if kind == "installed" {
        let file = FilePath::catalogue("installed/one.csv");
        return MemoryWorld::new().with(settings, least).with(file, table_of(record));
    }
    let file = FilePath::catalogue(&format!("{kind}/one.yaml"));
    MemoryWorld::new().with(settings, least).with(file, record)
}

/// A head and one row, of the lines `key: value` of a record without mappings.
pub fn table_of(record: &str) -> String {
    let cells: Vec<(&str, &str)> = record.lines().filter_map(|line| line.split_once(": ")).collect();
    let quoted = |value: &str| format!("\"{}\"", value.trim_matches('"').replace('"', "\"\""));
    let head: Vec<&str> = cells.iter().map(|(key, _)| *key).collect();
    let row: Vec<String> = cells.iter().map(|(_, value)| quoted(value)).collect();
    format!("{}\n{}\n", head.join(","), row.join(","))
}

/// The mapping at a depth of the path, line by line: the needed keys with their examples, and the path's own.
fn lines(steps: &[&str], depth: usize, value: &str) -> Vec<String> {
    let above = steps[..depth].join(".");
    let own = format!("{above}.{}", steps[depth]);
    let beside = KEYS.iter().filter(|key| key.needed && parent(&key.path) == above && key.path != own);
    let mut lines: Vec<String> = beside.map(|key| format!("{}: {}", key.name(), key.example)).collect();
    if depth + 1 == steps.len() {
        lines.push(format!("{}: {value}", steps[depth]));
        return lines;
    }
    lines.push(format!("{}:", steps[depth]));
    let is_list = KEYS.iter().any(|key| key.path == own && key.takes.contains("a list, each entry"));
    for (index, line) in self::lines(steps, depth + 1, value).into_iter().enumerate() {
        let start = if is_list && index == 0 {
            "  - "
        } else if is_list {
            "    "
        } else {
            "  "
        };
        lines.push(format!("{start}{line}"));
    }
    lines
}

fn parent(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(parent, _)| parent)
}
