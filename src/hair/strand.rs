use crate::{
    colour::Level,
    quantity::{Length, Quantity},
    source::{Basis, Interval, Sourced, citations::hair},
};
use schemars::JsonSchema;
use serde::Serialize;

/// One colour on a stretch of the strand.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Band {
    /// Where it begins, from the scalp.
    #[serde(rename = "from_cm")]
    pub from: Length,
    /// Where it ends, from the scalp.
    #[serde(rename = "to_cm")]
    pub to: Length,
    /// Its level.
    pub level: Level,
    /// Its tone in words.
    pub tone: Option<String>,
    /// Whether it was lightened or coloured.
    pub artificial: bool,
}

/// What lies along a strand, from the scalp to the ends, without a gap.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BandedStrand {
    #[serde(rename = "length_cm")]
    length: Length,
    bands: Vec<Band>,
}

/// Bands that do not make a strand.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum StrandError {
    /// No band at all.
    #[error("a strand without a band: state at least one, from 0 cm to the length of the hair")]
    Empty,
    /// A band that ends where or before it begins.
    #[error("band {band}: it ends at {to}, not behind {from} where it begins (swap `from` and `to`)")]
    Backwards {
        /// Which, counted from the scalp.
        band: usize,
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
    },
    /// Two bands on one place, or none.
    #[error("band {band} begins at {from}, but the one before ends at {end}: {what} (let `from` be {end})")]
    Apart {
        /// Which, counted from the scalp.
        band: usize,
        /// Where it begins.
        from: Length,
        /// Where the one before ends; 0 cm for the first.
        end: Length,
        /// Whether they overlap or leave a gap.
        what: &'static str,
    },
    /// A band longer than the hair, or hair longer than its bands.
    #[error(
        "the last band ends at {end}, but the hair is {length} long: let its `to` be {length}, or correct the length"
    )]
    Length {
        /// Where the last band ends.
        end: Length,
        /// How long the hair is.
        length: Length,
    },
}

/// Places nearer than this are one place.
const SAME: f64 = 1e-6;

impl BandedStrand {
    /// A strand of this length; the bands in order from the scalp.
    ///
    /// # Errors
    ///
    /// [`StrandError`] when they overlap, leave a gap, or do not end where the hair ends.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, hair::{Band, BandedStrand}, quantity::Length};
    ///
    /// let band = |from, to, level, artificial| {
    ///     let (from, to) = (Length::from_cm(from)?, Length::from_cm(to)?);
    ///     Ok::<_, Box<dyn std::error::Error>>(Band { from, to, level: Level::new(level)?, tone: None, artificial })
    /// };
    /// let strand = BandedStrand::new(Length::from_cm(30.0)?, vec![band(0.0, 4.0, 5.0, false)?, band(4.0, 30.0, 8.0, true)?])?;
    /// assert_eq!(strand.level_at(Length::from_cm(10.0)?), Some(Level::new(8.0)?));
    /// // A mix from the scalp to 6 cm lies on 2 cm that are lightened already.
    /// assert_eq!(strand.overlap(Length::from_cm(0.0)?, Length::from_cm(6.0)?).cm(), 2.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(length: Length, bands: Vec<Band>) -> Result<Self, StrandError> {
        let mut end = Length::MIN;
        for (i, band) in bands.iter().enumerate() {
            let (number, from) = (i + 1, band.from);
            if band.to.cm() - from.cm() <= SAME {
                return Err(StrandError::Backwards { band: number, from, to: band.to });
            }
            if (from.cm() - end.cm()).abs() > SAME {
                let what = if from > end { "a gap without a colour" } else { "they overlap" };
                return Err(StrandError::Apart { band: number, from, end, what });
            }
            end = band.to;
        }
        if bands.is_empty() {
            return Err(StrandError::Empty);
        }
        if (end.cm() - length.cm()).abs() > SAME {
            return Err(StrandError::Length { end, length });
        }
        Ok(Self { length, bands })
    }

    /// How long the hair is.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, hair::{Band, BandedStrand}, quantity::Length};
    ///
    /// let length = Length::from_cm(20.0)?;
    /// let whole = Band { from: Length::from_cm(0.0)?, to: length, level: Level::new(6.0)?, tone: None, artificial: true };
    /// let strand = BandedStrand::new(length, vec![whole.clone()])?;
    /// assert_eq!((strand.length(), strand.bands()), (length, &[whole][..]));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// The bands from the scalp on.
    #[must_use]
    pub fn bands(&self) -> &[Band] {
        &self.bands
    }

    /// The level at a place; none beyond the ends. Where two bands meet it is that of the upper one.
    #[must_use]
    pub fn level_at(&self, at: Length) -> Option<Level> {
        self.bands.iter().find(|band| band.from <= at && at <= band.to).map(|band| band.level)
    }

    /// How much of a stretch is lightened or coloured already.
    #[must_use]
    pub fn overlap(&self, from: Length, to: Length) -> Length {
        let of = |band: &Band| (band.to.cm().min(to.cm()) - band.from.cm().max(from.cm())).max(0.0);
        Length::nearest(self.bands.iter().filter(|band| band.artificial).map(of).sum())
    }

    /// The regrowth: natural hair from the scalp on; none where the colour begins at the scalp.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, hair::{Band, BandedStrand}, quantity::Length};
    ///
    /// let length = Length::from_cm(20.0)?;
    /// let whole = Band { from: Length::from_cm(0.0)?, to: length, level: Level::new(6.0)?, tone: None, artificial: true };
    /// assert_eq!(BandedStrand::new(length, vec![whole])?.regrowth().cm(), 0.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn regrowth(&self) -> Length {
        self.bands.iter().take_while(|band| !band.artificial).last().map_or(Length::MIN, |band| band.to)
    }
}

/// How far from the scalp its warmth speeds up a mixture: 1 cm (0.5 to 1.5), assumed; training texts name the warm band
/// and no length was found.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::hair::warm_band().value.best().cm(), 1.0);
/// ```
#[must_use]
pub fn warm_band() -> Sourced<Interval<Length>> {
    let value = Interval::ordered(0.5, 1.0, 1.5).map(Length::nearest);
    Sourced { value, basis: Basis::Assumed, citation: Some(&hair::WARM_BAND) }
}
