use super::{Profile, Region};
use crate::{
    colour::{Level, Swatch, section_look},
    quantity::{Length, Quantity, Share},
    source::Interval,
};

/// A blend from the outline inward: the colour starts further from the scalp, and less of the hair is lightened.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gradient {
    start_outline: Length,
    start_interior: Length,
    share_outline: Share,
    share_interior: Share,
}

/// Wishes that contradict each other.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum GradientError {
    /// The outline begins further down than the interior.
    #[error(
        "`start_outline` {outline} is further from the scalp than `start_interior` {interior}: the outline would be the \
         quieter one (swap them, or give both {interior})"
    )]
    StartFalls {
        /// At the outline.
        outline: Length,
        /// At the crown.
        interior: Length,
    },
    /// The interior is the brighter one.
    #[error(
        "`share_outline` {outline} is less than `share_interior` {interior}: the crown would be the brighter one (swap them, \
         or give both {outline})"
    )]
    ShareRises {
        /// At the outline.
        outline: Share,
        /// At the crown.
        interior: Share,
    },
    /// A start where there is no hair.
    #[error("`start_interior` {interior} is not within the hair's `length` {length} (start at less than {length})")]
    BeyondTheEnds {
        /// At the crown.
        interior: Length,
        /// Of the hair.
        length: Length,
    },
}

impl GradientError {
    /// The text with the caller's own names of starts and shares, both of outline and interior, and of the length.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::GradientError, quantity::Length};
    ///
    /// let names = ["--outline", "--interior", "--outline-share", "--interior-share", "--length"];
    /// let error = GradientError::BeyondTheEnds { interior: Length::from_cm(9.0)?, length: Length::from_cm(8.0)? };
    /// assert!(error.told_with(names).starts_with("--interior 9 cm is not within the hair's --length 8 cm"));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn told_with(&self, names: [&str; 5]) -> String {
        let known = ["`start_outline`", "`start_interior`", "`share_outline`", "`share_interior`", "`length`"];
        let put = |text: String, (known, name): (&str, &str)| text.replace(known, name);
        known.into_iter().zip(names).fold(self.to_string(), put)
    }
}

impl Gradient {
    /// A gradient from the outline to the crown, on hair of this length.
    ///
    /// # Errors
    ///
    /// [`GradientError`] when the outline would be the quieter part, or the colour would begin beyond the ends.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Gradient, Template}, quantity::{Length, Share}};
    ///
    /// let (cm, percent) = (Length::from_cm, Share::from_percent);
    /// let blend = Gradient::new((cm(1.0)?, cm(5.0)?), (percent(70.0)?, percent(20.0)?), cm(30.0)?)?;
    /// let template = Template::standard();
    /// let [outline, .., crown] = [0, 1, 2, 3].map(|i| blend.start(&template.regions()[i]).cm());
    /// assert_eq!((outline, crown), (1.0, 5.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(start: (Length, Length), share: (Share, Share), length: Length) -> Result<Self, GradientError> {
        let (start_outline, start_interior) = start;
        let (share_outline, share_interior) = share;
        if start_outline > start_interior {
            return Err(GradientError::StartFalls { outline: start_outline, interior: start_interior });
        }
        if share_outline < share_interior {
            return Err(GradientError::ShareRises { outline: share_outline, interior: share_interior });
        }
        if start_interior >= length {
            return Err(GradientError::BeyondTheEnds { interior: start_interior, length });
        }
        Ok(Self { start_outline, start_interior, share_outline, share_interior })
    }

    /// Where the colour begins in a region: even steps from the outline inward.
    #[must_use]
    pub fn start(&self, region: &Region) -> Length {
        Length::nearest(between(self.start_outline.cm(), self.start_interior.cm(), region.inward))
    }

    /// The share of a region's hair that is lightened.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Gradient, Template}, quantity::{Length, Share}};
    ///
    /// let (cm, percent) = (Length::from_cm, Share::from_percent);
    /// let blend = Gradient::new((cm(1.0)?, cm(5.0)?), (percent(70.0)?, percent(20.0)?), cm(30.0)?)?;
    /// let template = Template::standard();
    /// let back = &template.regions()[8];
    /// // The back lies 60 % inward: 70 - 0.6 x 50.
    /// assert_eq!(blend.share(back).percent(), 40.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn share(&self, region: &Region) -> Share {
        Share::nearest(between(self.share_outline.percent(), self.share_interior.percent(), region.inward))
    }
}

fn between(outline: f64, interior: f64, inward: Share) -> f64 {
    outline + (interior - outline) * inward.fraction()
}

/// How light a section reads at every whole centimetre from the scalp to the ends: of its hair `taken` is covered along
/// the strand as the profile says and then reaches `to`, the rest stays at `from`. The light of both adds up.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, head::{Technique, level_along}, quantity::{Length, Share}};
///
/// let length = Length::from_cm(30.0)?;
/// let combed = Technique::BackComb.profile(length).value;
/// let levels = level_along(&combed, Share::ALL.into(), (Level::new(5.0)?, Level::new(9.0)?), length);
/// assert_eq!(levels.len(), 31);
/// assert_eq!(levels[0].1.best(), Level::new(5.0)?);
/// assert!(levels[30].1.best() > Level::new(7.0)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn level_along(
    profile: &Profile,
    taken: Interval<Share>,
    (from, to): (Level, Level),
    length: Length,
) -> Vec<(Length, Interval<Level>)> {
    let (base, light) = (Swatch::natural(from), Swatch::lightened(from, to));
    let places = (0..=u16::MAX).map(f64::from).take_while(|cm| *cm <= length.cm()).map(Length::nearest);
    let level = |at: Length| {
        let covered = profile
            .covered_at(at)
            .combine(taken, |covered, taken| Share::nearest(covered.percent() * taken.fraction()));
        if covered.high() == Share::NONE {
            return Interval::exact(from);
        }
        let best = section_look(&base, &light, covered.best()).perceived_level.best();
        let end = |share: Share| section_look(&base, &light, share).perceived_level.best();
        Interval::ordered(end(covered.low()), best, end(covered.high()))
    };
    places.map(|at| (at, level(at))).collect()
}
