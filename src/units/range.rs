//! From least to most.

use std::ops::{Add, Sub};

/// Everything from a least to a most, both included.
///
/// ```
/// use fittingcards::units::Range;
/// let range = Range::between(6.0, 3.0);
/// assert_eq!((range.least(), range.most()), (3.0, 6.0));
/// assert!(range.contains(3.0) && !range.contains(6.1));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range<T> {
    least: T,
    most: T,
}

impl<T: Copy + PartialOrd> Range<T> {
    /// From one value to another, in whichever order they are given.
    #[must_use]
    pub fn between(a: T, b: T) -> Self {
        let (least, most) = if b < a { (b, a) } else { (a, b) };
        Self { least, most }
    }

    /// From a least to a most; `None` where they stand the other way round.
    #[must_use]
    pub fn ordered(least: T, most: T) -> Option<Self> {
        (least <= most).then_some(Self { least, most })
    }

    /// A single value.
    #[must_use]
    pub fn at(value: T) -> Self {
        Self { least: value, most: value }
    }

    /// The least.
    #[must_use]
    pub fn least(self) -> T {
        self.least
    }

    /// The most.
    #[must_use]
    pub fn most(self) -> T {
        self.most
    }

    /// Whether a value lies in it.
    #[must_use]
    pub fn contains(self, value: T) -> bool {
        self.least <= value && value <= self.most
    }

    /// What lies in both.
    ///
    /// ```
    /// use fittingcards::units::Range;
    /// let range = Range::between(1.0, 3.0);
    /// assert_eq!(range.overlap(Range::between(2.0, 5.0)), Some(Range::between(2.0, 3.0)));
    /// assert_eq!(range.overlap(Range::between(4.0, 5.0)), None);
    /// ```
    #[must_use]
    pub fn overlap(self, other: Self) -> Option<Self> {
        let least = if other.least > self.least { other.least } else { self.least };
        let most = if other.most < self.most { other.most } else { self.most };
        Self::ordered(least, most)
    }

    /// The range of what a function makes of its values, where that only rises or only falls.
    #[must_use]
    pub fn map<U: Copy + PartialOrd>(self, function: impl Fn(T) -> U) -> Range<U> {
        Range::between(function(self.least), function(self.most))
    }
}

impl<T: Copy + PartialOrd + Add<Output = T> + Sub<Output = T>> Range<T> {
    /// So much either side of a value.
    #[must_use]
    pub fn around(middle: T, off: T) -> Self {
        Self::between(middle - off, middle + off)
    }

    /// The same with so much more at either end.
    #[must_use]
    pub fn widened(self, by: T) -> Self {
        Self { least: self.least - by, most: self.most + by }
    }

    /// How far apart its ends lie.
    #[must_use]
    pub fn width(self) -> T {
        self.most - self.least
    }

    /// How far it lies from another; negative where they overlap.
    ///
    /// ```
    /// use fittingcards::units::Range;
    /// assert_eq!(Range::at(1.0).distance(Range::between(3.0, 4.0)), 2.0);
    /// ```
    #[must_use]
    pub fn distance(self, other: Self) -> T {
        let (below, above) = (other.least - self.most, self.least - other.most);
        if above > below { above } else { below }
    }
}
