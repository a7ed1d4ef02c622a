//! Two texts line by line.

/// The most lines that are shown of a difference.
const MOST: usize = 60;

/// Lines that one text has and the other lacks, each with the heading that it stands under; None where the
/// texts are the same.
pub fn between(was: &str, is: &str) -> Option<String> {
    if was == is {
        return None;
    }
    let (was, is): (Vec<&str>, Vec<&str>) = (was.lines().collect(), is.lines().collect());
    let mut out = Vec::new();
    let mut heading = "";
    for step in steps(&was, &is) {
        let (sign, line) = step;
        if sign == ' ' {
            if !line.starts_with(' ') {
                heading = line;
            }
            continue;
        }
        if !heading.is_empty() {
            out.push(format!("  {heading}"));
            heading = "";
        }
        out.push(format!("{sign} {line}"));
    }
    let more = out.len().saturating_sub(MOST);
    out.truncate(MOST);
    if more > 0 {
        out.push(format!("… and {more} lines more"));
    }
    if out.is_empty() {
        out.push("the texts differ in their line ends alone".to_owned());
    }
    Some(out.join("\n"))
}

/// The shortest way from one text to the other: lines kept (' '), taken away ('-') and added ('+').
fn steps<'a>(was: &[&'a str], is: &[&'a str]) -> Vec<(char, &'a str)> {
    // The longest common part of what follows each pair of lines.
    let mut common = vec![vec![0_u32; is.len() + 1]; was.len() + 1];
    for (i, old) in was.iter().enumerate().rev() {
        for (j, new) in is.iter().enumerate().rev() {
            common[i][j] =
                if old == new { common[i + 1][j + 1] + 1 } else { common[i + 1][j].max(common[i][j + 1]) };
        }
    }
    let (mut i, mut j, mut steps) = (0, 0, Vec::new());
    while i < was.len() || j < is.len() {
        if i < was.len() && j < is.len() && was[i] == is[j] {
            steps.push((' ', was[i]));
            (i, j) = (i + 1, j + 1);
        } else if j == is.len() || i < was.len() && common[i + 1][j] >= common[i][j + 1] {
            steps.push(('-', was[i]));
            i += 1;
        } else {
            steps.push(('+', is[j]));
            j += 1;
        }
    }
    steps
}

#[test]
fn a_difference_names_its_heading_and_both_lines() {
    let was = "front\n  a\n  b\nback\n  c\n  d";
    let is = "front\n  a\n  b\nback\n  c\n  e";
    assert_eq!(between(was, is).as_deref(), Some("  back\n-   d\n+   e"));
    assert_eq!(between(was, was), None);
}
