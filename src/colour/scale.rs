use super::Level;
use crate::{
    choice::choice,
    source::{Basis, Interval},
};

choice! {
    /// A scale on which somebody read how light hair is.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::Scale;
    ///
    /// assert_eq!((Scale::Japanese20.lowest(), Scale::Japanese20.highest()), (1.0, 20.0));
    /// assert!(Scale::Twelve.counts_levels() && !Scale::Japanese20.counts_levels());
    /// ```
    Scale: "scale" {
        /// 1 to 10 with European names: the scale of [`Level`].
        European10 = "european-10" => "European 1-10",
        /// 1 to 10 with US names, which run one step off at 5 to 7.
        Us10 = "us-10" => "US 1-10",
        /// 1 to 12, the European scale carried on above 10.
        Twelve = "twelve" => "1-12",
        /// The Japanese scale, notionally 1 to 20; its reference swatches are 4 to 15.
        Japanese20 = "japanese-20" => "Japanese 1-20",
    }
}

impl Scale {
    /// The first number.
    #[must_use]
    pub const fn lowest(self) -> f64 {
        1.0
    }

    /// The last number.
    #[must_use]
    pub const fn highest(self) -> f64 {
        match self {
            Self::European10 | Self::Us10 => 10.0,
            Self::Twelve => 12.0,
            Self::Japanese20 => 20.0,
        }
    }

    /// Whether its numbers are [`Level`]s as they stand.
    #[must_use]
    pub const fn counts_levels(self) -> bool {
        matches!(self, Self::European10 | Self::Twelve)
    }
}

/// A number read on a scale. It is not a [`Level`] until a mapping says which.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScaleReading {
    scale: Scale,
    number: f64,
}

/// Why a reading cannot be taken or mapped.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ScaleError {
    /// Off the scale.
    #[error("invalid reading on the {scale} scale (got {number}): must be from {lowest} to {highest}", lowest = .scale.lowest(), highest = .scale.highest())]
    OutOfRange {
        /// The scale.
        scale: Scale,
        /// The number.
        number: f64,
    },
    /// Two points make the shortest mapping.
    #[error("a mapping needs at least 2 anchors on the same scale (got {0})")]
    TooFewAnchors(usize),
    /// A lighter reading must be a lighter level.
    #[error("the anchors of a mapping must rise in both scales, and all be read on the {0} scale")]
    NotRising(Scale),
    /// The half-width must be a number of levels.
    #[error("invalid uncertainty of a mapping (got {0} levels): must be from 0 to 11 levels")]
    Uncertainty(f64),
    /// Wrong scale for this mapping.
    #[error("this mapping is for the {expected} scale, the reading is on the {got} scale")]
    OtherScale {
        /// The scale of the mapping.
        expected: Scale,
        /// The scale of the reading.
        got: Scale,
    },
    /// Nothing is stated there.
    #[error("{number} on the {scale} scale lies outside the stated mapping ({first} to {last}): state more anchors")]
    OutsideAnchors {
        /// The scale.
        scale: Scale,
        /// The number.
        number: f64,
        /// The first anchor.
        first: f64,
        /// The last anchor.
        last: f64,
    },
}

impl ScaleReading {
    /// A number read on a scale.
    ///
    /// # Errors
    ///
    /// [`ScaleError::OutOfRange`] off the scale.
    pub fn new(scale: Scale, number: f64) -> Result<Self, ScaleError> {
        if number >= scale.lowest() && number <= scale.highest() {
            Ok(Self { scale, number })
        } else {
            Err(ScaleError::OutOfRange { scale, number })
        }
    }

    /// The scale.
    #[must_use]
    pub const fn scale(self) -> Scale {
        self.scale
    }

    /// The number on that scale.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.number
    }
}

/// A level mapped from another scale, with its bounds and the basis of the mapping.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MappedLevel {
    /// The level with its bounds.
    pub level: Interval<Level>,
    /// The basis of the mapping.
    pub basis: Basis,
}

/// A stated correspondence between a scale and levels: straight lines between anchors, nothing beyond them.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, Scale, ScaleMapping, ScaleReading}, source::Basis};
///
/// // A salon that holds its own swatches side by side and reads them within half a level.
/// let read = |number| ScaleReading::new(Scale::Japanese20, number);
/// let anchors = [(read(4.0)?, Level::new(1.0)?), (read(14.0)?, Level::new(9.0)?)];
/// let own = ScaleMapping::new(&anchors, 0.5, Basis::Measured)?;
/// let level = own.level(read(9.0)?)?.level; // half way between the two
/// assert_eq!((level.low(), level.best(), level.high()), (Level::new(4.5)?, Level::new(5.0)?, Level::new(5.5)?));
/// assert!(own.level(read(15.0)?).is_err()); // no anchor there
/// assert_eq!((read(9.0)?.scale(), read(9.0)?.number()), (Scale::Japanese20, 9.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ScaleMapping {
    scale: Scale,
    anchors: Vec<(f64, f64)>,
    half_width: f64,
    basis: Basis,
}

impl ScaleMapping {
    /// A mapping through `anchors`, each a reading and the level it stands for, uncertain by `half_width` levels.
    ///
    /// # Errors
    ///
    /// [`ScaleError`] with fewer than two anchors, or when they do not rise together on one scale.
    pub fn new(anchors: &[(ScaleReading, Level)], half_width: f64, basis: Basis) -> Result<Self, ScaleError> {
        let [(first, _), _, ..] = anchors else { return Err(ScaleError::TooFewAnchors(anchors.len())) };
        let scale = first.scale;
        let points: Vec<_> = anchors.iter().map(|(reading, level)| (reading.number, level.number())).collect();
        let rising = points.iter().zip(points.iter().skip(1)).all(|(a, b)| a.0 < b.0 && a.1 < b.1);
        if !rising || anchors.iter().any(|(reading, _)| reading.scale != scale) {
            return Err(ScaleError::NotRising(scale));
        }
        if !(0.0..=11.0).contains(&half_width) {
            return Err(ScaleError::Uncertainty(half_width));
        }
        Ok(Self { scale, anchors: points, half_width, basis })
    }

    /// The Japanese scale mapped through the underlying pigment printed for both: blue-black is 4 there and 1 here, red
    /// 5.5 and 4, red-orange 7.5 and 5, yellow-orange 9.5 and 7, yellow 13.5 and 8, pale yellow 15 and 9.
    ///
    /// Assumed, +/- 1 level: both lists describe lightened hair in words, and words are coarse.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Level, Scale, ScaleMapping, ScaleReading}, source::Basis};
    ///
    /// let mapped = ScaleMapping::japanese_by_underlying_pigment().level(ScaleReading::new(Scale::Japanese20, 13.5)?)?;
    /// assert_eq!((mapped.level.best(), mapped.basis), (Level::new(8.0)?, Basis::Assumed)); // yellow in both lists
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn japanese_by_underlying_pigment() -> Self {
        Self {
            scale: Scale::Japanese20,
            anchors: vec![(4.0, 1.0), (5.5, 4.0), (7.5, 5.0), (9.5, 7.0), (13.5, 8.0), (15.0, 9.0)],
            half_width: 1.0,
            basis: Basis::Assumed,
        }
    }

    /// The level a reading stands for.
    ///
    /// # Errors
    ///
    /// [`ScaleError::OtherScale`] and [`ScaleError::OutsideAnchors`]: nothing is guessed.
    pub fn level(&self, reading: ScaleReading) -> Result<MappedLevel, ScaleError> {
        if !self.is_for(reading.scale) {
            return Err(ScaleError::OtherScale { expected: self.scale, got: reading.scale });
        }
        let number = reading.number;
        let segment =
            self.anchors.iter().zip(self.anchors.iter().skip(1)).find(|(a, b)| a.0 <= number && number <= b.0);
        let Some((a, b)) = segment else {
            let end = |anchor: Option<&(f64, f64)>| anchor.map_or(number, |anchor| anchor.0);
            return Err(ScaleError::OutsideAnchors {
                scale: self.scale,
                number,
                first: end(self.anchors.first()),
                last: end(self.anchors.last()),
            });
        };
        let best = Stretch::between(*a, *b).level(number);
        let at = |shift: f64| Level::clamped(best + shift);
        let level = Interval::ordered(at(-self.half_width), at(0.0), at(self.half_width));
        Ok(MappedLevel { level, basis: self.basis })
    }

    /// Its stretches in their order, the last of them repeated; none where there are more than places for them. Each side of a level
    /// it is off by so many.
    pub(crate) fn stretches<const N: usize>(&self) -> Option<([Stretch; N], f64)> {
        let pairs = self.anchors.iter().zip(self.anchors.iter().skip(1));
        let all: Vec<_> = pairs.map(|(a, b)| Stretch::between(*a, *b)).collect();
        let last = all.last()?;
        let place = |place: usize| *all.get(place).unwrap_or(last);
        (all.len() <= N).then(|| (std::array::from_fn(place), self.half_width))
    }

    /// Whether it is for readings on a scale.
    pub(crate) fn is_for(&self, scale: Scale) -> bool {
        self.scale == scale
    }
}

/// A straight line from one anchor to the next: readings and levels.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stretch {
    pub(crate) from: f64,
    pub(crate) to: f64,
    level: f64,
    rise: f64,
    run: f64,
}

impl Stretch {
    #[inline]
    fn between(a: (f64, f64), b: (f64, f64)) -> Self {
        Self { from: a.0, to: b.0, level: a.1, rise: b.1 - a.1, run: b.0 - a.0 }
    }

    /// This one where it is so, another one else, number by number.
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    pub(crate) fn if_else(&self, so: bool, other: Self) -> Self {
        let choose = |this: f64, other: f64| if so { this } else { other };
        Self {
            from: choose(self.from, other.from),
            to: choose(self.to, other.to),
            level: choose(self.level, other.level),
            rise: choose(self.rise, other.rise),
            run: choose(self.run, other.run),
        }
    }

    /// The level of a reading on it.
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    pub(crate) fn level(&self, reading: f64) -> f64 {
        self.level + self.rise * (reading - self.from) / self.run
    }
}
