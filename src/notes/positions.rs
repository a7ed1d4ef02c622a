//! Lines and columns of a text.

/// Where lines and characters start, so that a place is looked up and not counted out.
pub(super) struct Positions {
    lines: Vec<usize>,
    characters: Vec<usize>,
}

impl Positions {
    pub(super) fn of(text: &str) -> Self {
        let after_breaks = text.match_indices('\n').map(|(at, _)| at + 1);
        Self {
            lines: std::iter::once(0).chain(after_breaks).collect(),
            characters: text.char_indices().map(|(at, _)| at).collect(),
        }
    }

    /// Line and column of a byte, both counted from 1; the column in characters.
    pub(super) fn at(&self, offset: usize) -> (u32, u32) {
        let line = self.lines.partition_point(|start| *start <= offset);
        let start = self.lines[line - 1];
        let column = self.before(offset) - self.before(start) + 1;
        (counted(line), counted(column))
    }

    fn before(&self, offset: usize) -> usize {
        self.characters.partition_point(|start| *start < offset)
    }
}

fn counted(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::Positions;

    #[test]
    fn columns_are_counted_in_characters() {
        let positions = Positions::of("é [a]\n\n[b]");
        let found = [0, 3, 7, 8, 11].map(|offset| positions.at(offset));
        assert_eq!(found, [(1, 1), (1, 3), (2, 1), (3, 1), (3, 4)]);
        assert_eq!(Positions::of("").at(0), (1, 1));
    }
}
