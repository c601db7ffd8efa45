use super::{Exposed, Target, search};
use crate::{colour::Shade, quantity::Mass};

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
}
