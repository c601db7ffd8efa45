use super::{Lab, Lanes, White, ciede2000_lanes};
use schemars::JsonSchema;
use serde::Serialize;
use std::fmt;

/// How far two colours are apart, as one number and as the directions a colourist names.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Difference {
    /// CIEDE2000 colour difference (kL = kC = kH = 1).
    pub ciede2000: f64,
    /// L\* of the second minus the first: positive is lighter.
    pub lighter: f64,
    /// a\* of the second minus the first: positive is redder, negative greener.
    pub redder: f64,
    /// b\* of the second minus the first: positive is yellower (warmer), negative bluer (cooler).
    pub yellower: f64,
    /// Chroma of the second minus the first: positive is more intense.
    pub more_intense: f64,
}

/// Two colours that are not counted from the same white.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("cannot compare a colour measured for {first} with one for {second}: adapt one of them first")]
pub struct MixedWhites {
    /// White of the first colour.
    pub first: White,
    /// White of the second colour.
    pub second: White,
}

impl Difference {
    /// From the first colour to the second.
    ///
    /// ```
    /// use foilwork::colour::{Difference, Lab, White};
    ///
    /// let brown = Lab::new(23.0, 4.0, 5.0, White::D65TenDegree)?;
    /// let lighter = Lab::new(28.0, 4.0, 7.0, White::D65TenDegree)?;
    /// assert_eq!(Difference::between(brown, lighter)?.to_string(), "4.0 (lighter 5.0, yellower 2.0)");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`MixedWhites`] unless both are counted from the same white.
    ///
    /// # Source
    ///
    /// CIEDE2000 as in [`CIEDE2000_PAPER`](crate::source::citations::colour::CIEDE2000_PAPER), whose published pairs agree to
    /// the four decimals they are printed with; the same lanes work off long columns.
    pub fn between(first: Lab, second: Lab) -> Result<Self, MixedWhites> {
        if first.white() != second.white() {
            return Err(MixedWhites { first: first.white(), second: second.white() });
        }
        Ok(Self::of(first, second))
    }

    /// From the first colour to the second when both are known to be counted from the same white.
    pub(crate) fn of(first: Lab, second: Lab) -> Self {
        Self {
            ciede2000: ciede2000(first, second),
            lighter: second.l() - first.l(),
            redder: second.a() - first.a(),
            yellower: second.b() - first.b(),
            more_intense: second.chroma() - first.chroma(),
        }
    }

    /// Whether the two could be one tress measured twice: two readings of one tress, moved in between, differ by about
    /// 1.2 in L\*, 0.3 in a\* and 0.4 in b\* (one standard deviation), so less than about 2 units is not told apart.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Difference, Lab, White};
    ///
    /// let tress = Lab::new(23.0, 4.0, 5.0, White::D65TenDegree)?;
    /// let (again, lighter) = (Lab::new(24.2, 4.3, 5.4, White::D65TenDegree)?, Lab::new(28.0, 4.0, 5.0, White::D65TenDegree)?);
    /// assert!(Difference::between(tress, again)?.is_within_repeat_readings());
    /// assert!(!Difference::between(tress, lighter)?.is_within_repeat_readings());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn is_within_repeat_readings(&self) -> bool {
        self.ciede2000 <= Self::REPEAT_READINGS
    }

    /// CIEDE2000 below which two readings of hair are not told apart: assumed, about twice the spread of repeated
    /// readings published for dark brown tresses (see [`TRESS_COLOUR`](crate::source::citations::colour::TRESS_COLOUR)).
    pub const REPEAT_READINGS: f64 = 2.0;
}

/// CIEDE2000 of two colours with the same white. It does not depend on which white that is.
pub(crate) fn ciede2000(first: Lab, second: Lab) -> f64 {
    let lanes = |lab: Lab| [lab.l(), lab.a(), lab.b()].map(Lanes::splat);
    let [one, ..] = ciede2000_lanes(lanes(first), lanes(second));
    one
}

impl fmt::Display for Difference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = [
            (self.lighter, "lighter", "darker"),
            (self.redder, "redder", "greener"),
            (self.yellower, "yellower", "bluer"),
        ];
        write!(f, "{:.1}", self.ciede2000)?;
        let mut open = false;
        for (size, more, less) in words {
            if size.abs() >= 0.5 {
                let word = if size > 0.0 { more } else { less };
                write!(f, "{}{word} {:.1}", if open { ", " } else { " (" }, size.abs())?;
                open = true;
            }
        }
        if open { f.write_str(")") } else { Ok(()) }
    }
}
