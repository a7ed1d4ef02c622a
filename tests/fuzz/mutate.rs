//! Changes to an input: by line, by word and by byte, with lines and words of the seeds.

use fastrand::Rng;

/// Words that readers of numbers, YAML, XML, Markdown and templates stumble over.
const EDGES: [&str; 48] = [
    "0",
    "-0",
    "-1",
    "1",
    "0.1",
    "1e-9",
    "1e-300",
    "1e308",
    "1e309",
    "5e-324",
    "4294967295",
    "4294967296",
    ".nan",
    ".inf",
    "null",
    "~",
    "true",
    "\"\"",
    "''",
    "[]",
    "{}",
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    "- ",
    "? ",
    "&a",
    "*a",
    "!x",
    "|",
    ">",
    "%",
    "#",
    "---",
    "<",
    ">",
    "&amp;",
    "&#0;",
    "{{",
    "}}",
    "{%",
    "\u{202E}",
    "\u{AD}",
    "é",
    "ſ",
];

/// The lines and words of the seeds.
pub struct Pool {
    seeds: Vec<Vec<u8>>,
    lines: Vec<Vec<u8>>,
    words: Vec<Vec<u8>>,
}

impl Pool {
    pub fn new(seeds: Vec<Vec<u8>>) -> Self {
        let all = || seeds.iter().flat_map(|seed| seed.split(|byte| *byte == b'\n'));
        let sorted = |mut list: Vec<Vec<u8>>| {
            list.sort();
            list.dedup();
            list
        };
        let lines = sorted(all().map(<[u8]>::to_vec).collect());
        let words = all().flat_map(|line| words(line).into_iter().map(|(from, to)| line[from..to].to_vec()));
        let words = words.chain(EDGES.iter().map(|edge| edge.as_bytes().to_vec()));
        let words = sorted(words.collect());
        Self { seeds, lines, words }
    }

    /// One of the seeds.
    pub fn seed(&self, dice: &mut Rng) -> Vec<u8> {
        one(&self.seeds, dice)
    }

    /// An input with a few changes.
    pub fn changed(&self, input: &[u8], dice: &mut Rng) -> Vec<u8> {
        let mut changed = input.to_vec();
        for _ in 0..dice.usize(1..=4) {
            changed = match dice.u8(0..8) {
                0..=2 => self.by_line(&changed, dice),
                3..=5 => self.by_word(&changed, dice),
                _ => by_byte(changed, dice),
            };
        }
        changed
    }

    fn by_line(&self, input: &[u8], dice: &mut Rng) -> Vec<u8> {
        let mut lines: Vec<Vec<u8>> = input.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
        let (at, other) = (dice.usize(..lines.len()), dice.usize(..lines.len()));
        match dice.u8(0..6) {
            0 => drop(lines.remove(at)),
            1 => lines.insert(at, lines[other].clone()),
            2 => lines.swap(at, other),
            3 => lines.insert(at, one(&self.lines, dice)),
            4 => lines[at] = one(&self.lines, dice),
            _ => lines.truncate(at.max(1)),
        }
        lines.join(&b'\n')
    }

    fn by_word(&self, input: &[u8], dice: &mut Rng) -> Vec<u8> {
        let words = words(input);
        let Some(&(from, to)) = dice.choice(&words) else { return one(&self.words, dice) };
        let new = match dice.u8(0..4) {
            0 => dice.choice(&EDGES).map(|edge| edge.as_bytes().to_vec()).unwrap_or_default(),
            1 => dice.choice(&words).map(|&(from, to)| input[from..to].to_vec()).unwrap_or_default(),
            _ => one(&self.words, dice),
        };
        [&input[..from], &new, &input[to..]].concat()
    }
}

fn one(list: &[Vec<u8>], dice: &mut Rng) -> Vec<u8> {
    dice.choice(list).cloned().unwrap_or_default()
}

/// Where words lie: letters, digits and points, or anything else but white space.
fn words(text: &[u8]) -> Vec<(usize, usize)> {
    let kind = |byte: u8| match byte {
        b' ' | b'\n' | b'\t' => 0,
        b'.' | b'_' | b'-' => 1,
        byte if byte.is_ascii_alphanumeric() || byte > 127 => 1,
        _ => 2,
    };
    let mut found = Vec::new();
    let mut from = 0;
    for at in 1..=text.len() {
        if at == text.len() || kind(text[at]) != kind(text[from]) {
            if kind(text[from]) > 0 {
                found.push((from, at));
            }
            from = at;
        }
    }
    found
}

fn by_byte(mut input: Vec<u8>, dice: &mut Rng) -> Vec<u8> {
    if input.is_empty() {
        return vec![dice.u8(..)];
    }
    let at = dice.usize(..input.len());
    let end = (at + dice.usize(1..=16)).min(input.len());
    match dice.u8(0..6) {
        0 => input[at] ^= 1 << dice.u8(0..8),
        1 => input[at] = dice.u8(..),
        2 => input.insert(at, dice.u8(..)),
        3 => drop(input.drain(at..end)),
        4 => {
            let piece = input[at..end].to_vec();
            let to = dice.usize(..=input.len());
            input.splice(to..to, piece);
        }
        _ => input[at..end].fill(*dice.choice(&[0, 1, 0x7F, 0x80, 0xFF]).unwrap_or(&0)),
    }
    input
}
