use super::{Exposed, Target, search};
use crate::{
    colour::{Level, Shade},
    quantity::{Mass, Share},
};

/// What to look for, among what, and how finely it can be weighed.
#[derive(Debug, Clone)]
pub struct TonerRequest<'a> {
    /// The hair.
    pub exposed: Exposed,
    /// The colour wanted.
    pub target: Target,
    /// The shades at hand; a shade of no strength counts as a clear diluter.
    pub shades: Vec<&'a Shade>,
    /// How many shades a mix may have, from 1 to [`TonerRequest::MOST_SHADES`].
    pub most_shades: usize,
    /// Mass of all shades together, without developer.
    pub bowl: Mass,
    /// Division of the scale.
    pub division: Mass,
}

/// Why no toner can be looked for.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TonerError {
    /// Nothing to choose from.
    #[error("no shades to choose from: give at least one shade of the chart")]
    NoShades,
    /// A toner does not lighten.
    #[error(
        "every shade is lighter than the hair at {level}: a toner does not lighten (lift further, or give shades of \
         {level} or darker)"
    )]
    AllLighter {
        /// The level of the hair.
        level: Level,
    },
    /// More than anybody has on the shelf; the search would take long.
    #[error(
        "too many shades to search (got {got}): give at most {most} for mixes of up to {size}, for example those of \
             the levels in question"
    )]
    TooManyShades {
        /// How many there are.
        got: usize,
        /// How many are searched.
        most: usize,
        /// The size of the mixes.
        size: usize,
    },
    /// A mix has one to four shades.
    #[error("invalid number of shades in a mix (got {got}): must be from 1 to {most}", most = TonerRequest::MOST_SHADES)]
    MixSize {
        /// What was asked.
        got: usize,
    },
    /// The bowl cannot be weighed in whole divisions.
    #[error(
        "cannot weigh a bowl of {bowl} on a scale with a division of {division}: the bowl must be from 1 to 10000 \
             whole divisions"
    )]
    Scale {
        /// The bowl.
        bowl: Mass,
        /// The division.
        division: Mass,
    },
}

impl TonerRequest<'_> {
    /// CIEDE2000 by which a further shade must bring a mix nearer (assumed: no eye tells less).
    pub const WORTH_A_SHADE: f64 = search::WORTH_A_SHADE;
    /// The most shades a mix may have.
    pub const MOST_SHADES: usize = 4;

    /// The most shades that are searched for mixes of up to `size` shades; it keeps a search well below a second.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::toner::TonerRequest;
    ///
    /// // The more shades a mix may have, the fewer can be searched.
    /// assert!(TonerRequest::longest_shelf(4) < TonerRequest::longest_shelf(2));
    /// ```
    #[must_use]
    pub const fn longest_shelf(size: usize) -> usize {
        if size < 4 { 48 } else { 24 }
    }

    /// The bowl in whole divisions of the scale, when everything that was asked can be looked for.
    pub(super) fn checked(&self) -> Result<u32, TonerError> {
        let (got, size) = (self.shades.len(), self.most_shades);
        if got == 0 {
            return Err(TonerError::NoShades);
        }
        if size == 0 || size > Self::MOST_SHADES {
            return Err(TonerError::MixSize { got: size });
        }
        let most = Self::longest_shelf(size);
        if got > most {
            return Err(TonerError::TooManyShades { got, most, size });
        }
        let divisions = self.bowl.g() / self.division.g();
        let whole = divisions.round();
        if (1.0..=10_000.0).contains(&whole) && (divisions - whole).abs() <= 1e-6 {
            Ok(whole as u32)
        } else {
            Err(TonerError::Scale { bowl: self.bowl, division: self.division })
        }
    }

    /// The shades that may go on this hair: none lighter than it, but for clear ones, which only dilute.
    pub(super) fn usable(&self) -> Result<Vec<&Shade>, TonerError> {
        let level = self.exposed.level();
        let usable = |shade: &&&Shade| shade.level() <= level || shade.strength() <= Share::NONE;
        let mut shades: Vec<&Shade> = self.shades.iter().filter(usable).copied().collect();
        // So that the order of the shelf decides nothing, not even between mixes that are as good as equal.
        shades.sort_by_key(|shade| shade.code());
        if shades.is_empty() { Err(TonerError::AllLighter { level }) } else { Ok(shades) }
    }
}
