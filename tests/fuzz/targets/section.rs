//! What the command line writes of a conductor: `section` with any arguments.

use fittingcards::cli;

pub fn run(input: &[u8]) {
    let Ok(line) = std::str::from_utf8(input) else { return };
    let arguments: Vec<&str> = line.split_whitespace().collect();
    // Materials that are not built in are looked for in a catalogue on disk, which is not what is tried here.
    let Ok((answer, sketch)) = cli::section(arguments.iter().copied().chain(["--catalogue", "nowhere"]))
    else {
        return;
    };
    for text in [&answer, &sketch] {
        for word in ["NaN", "inf", "null"] {
            assert!(!text.contains(word) || line.contains(word), "{word} in {text}");
        }
    }
}

pub fn seeds() -> Vec<Vec<u8>> {
    let lines = [
        "--stranded 19/2.80 --material copper-hard-drawn",
        "--stranded 26/3.45+7/2.68 --material aluminium-al1 --core-material steel-st1a --format json",
        "--stranded 3,9/2.80 --temperature 80",
        "--stranded 1,6,12,18/2.5 --material bronze-soft --temperature=-40",
        "--solid 8 --material steel-st1a",
        "--tube 100x5 --material aluminium-al1",
        "--bar 40x10 --material copper-hard-drawn --format json",
        "--rope 7x19/8.0 --core wsc --grade 1770",
        "--rope 6x36ws/16 --core iwrc",
        "--rope 1x19/6 --grade 1570 --format json",
    ];
    lines.iter().map(|line| line.as_bytes().to_vec()).collect()
}
