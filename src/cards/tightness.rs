//! How tightly a face is set: from as designed to as tight as is legible.

/// How far gaps have closed up and types have shrunk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tightness {
    /// From 0, lines and blocks apart as designed, to 1, closed up.
    pub spacing: f64,
    /// From 0, types as designed, to 1, each at the least size of its class.
    pub type_scale: f64,
}

impl Tightness {
    /// From roomy to tight: blocks close up first, then types shrink; the last resort is lines that all but touch.
    pub const STEPS: [Self; 8] = [
        Self::of(0.0, 0.0),
        Self::of(0.4, 0.0),
        Self::of(0.8, 0.0),
        Self::of(0.8, 0.25),
        Self::of(0.8, 0.5),
        Self::of(0.8, 0.75),
        Self::of(0.8, 1.0),
        Self::TIGHTEST,
    ];
    /// As tight as is legible.
    pub const TIGHTEST: Self = Self::of(1.0, 1.0);

    const fn of(spacing: f64, type_scale: f64) -> Self {
        Self { spacing, type_scale }
    }

    /// What a gap of the design becomes.
    pub fn gap(self, designed: f64) -> f64 {
        designed * (1.0 - 0.875 * self.spacing)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn blocks_close_up_before_types_shrink() {
        let shrunk = |step: &Tightness| step.type_scale > 0.0;
        let first = Tightness::STEPS.iter().position(shrunk).expect("a step that shrinks");
        assert!((Tightness::STEPS[first - 1].spacing - Tightness::STEPS[first].spacing).abs() < 1e-9);
        assert!(Tightness::STEPS[first].spacing > 0.7);
        let in_order = |pair: &[Tightness]| {
            pair[0].spacing <= pair[1].spacing && pair[0].type_scale <= pair[1].type_scale
        };
        assert!(Tightness::STEPS.windows(2).all(in_order));
    }
}
