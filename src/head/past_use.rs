use super::{FilmMass, Profile, TakeUp, film};
use crate::{
    hair::{MassPerLength, as_used, product},
    quantity::{Area, Length, Mass, Quantity, Share},
    source::Interval,
};

/// A mixture that was weighed in use on this hair, and where it went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PastUse {
    /// What was put on the hair, not what was mixed.
    used: Mass,
    /// What such a place takes for each g/cm that all the hair weighs, without the film on the scalp.
    for_each: Interval<f64>,
    /// The film on the scalp.
    film: Interval<f64>,
}

impl PastUse {
    /// A use on a share of all the hair, covered along the strand as the profile says; `scalp` is what the mixture touched.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{PastUse, Technique, take_up}, quantity::{Length, Mass, Share}};
    ///
    /// let (length, technique) = (Length::from_cm(20.0)?, Technique::Weave);
    /// let profile = technique.profile(length).value;
    /// let take_up = take_up(technique, true).value;
    /// let half = Share::from_percent(50.0)?;
    /// let used = PastUse::of(Mass::from_g(180.0)?, half.into(), &profile, length.into(), take_up, None);
    /// assert!(foilwork::head::hair_by_use(&[used]).is_some());
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn of(
        used: Mass,
        share: Interval<Share>,
        profile: &Profile,
        length: Interval<Length>,
        take_up: Interval<TakeUp>,
        scalp: Option<Interval<Area>>,
    ) -> Self {
        let film = scalp.map(|area| product(&[area.map(Area::cm2), film().value.map(FilmMass::g_per_cm2)]));
        let alone = Self { used, for_each: Interval::exact(0.0), film: film.unwrap_or(Interval::exact(0.0)) };
        alone.also_on(share, profile, length, take_up)
    }

    /// The same use on more of the hair, such as ends between the foils.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{PastUse, Technique, hair_by_use, take_up}, quantity::{Length, Mass, Share}};
    ///
    /// let (length, technique) = (Length::from_cm(20.0)?, Technique::Weave);
    /// let (profile, take_up) = (technique.profile(length).value, take_up(technique, true).value);
    /// let part = Share::from_percent(20.0)?;
    /// let foils = PastUse::of(Mass::from_g(80.0)?, part.into(), &profile, length.into(), take_up, None);
    /// let with_ends = foils.also_on(part.into(), &profile, length.into(), take_up);
    /// // The same grams on twice the hair: all of it weighs half as much.
    /// let weighs = |used| hair_by_use(&[used]).map(|mass| mass.best().g_per_cm());
    /// let (one, both) = (weighs(foils).unwrap(), weighs(with_ends).unwrap());
    /// assert!((one - 2.0 * both).abs() < 1e-9);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn also_on(
        self,
        share: Interval<Share>,
        profile: &Profile,
        length: Interval<Length>,
        take_up: Interval<TakeUp>,
    ) -> Self {
        let painted = profile.painted(length).map(Length::cm);
        let more = product(&[share.map(Share::fraction), painted, take_up.map(TakeUp::g_per_g)]);
        Self { for_each: self.for_each.combine(more, |so_far, more| so_far + more), ..self }
    }
}

/// What all the hair weighs by its length, as past uses of the same hair say: what was used, less the film on the scalp, over
/// what a gram of hair takes. For [`HairFacts::by_use`](crate::hair::HairFacts::by_use).
///
/// Several uses count as one of their sum: their take-up is one person's and is off the same way, so that many sections do not
/// make it surer. None without a use, or where the film alone may be all that was used.
///
/// # Example
///
/// ```
/// use foilwork::{
///     hair::HairFacts, head::{PastUse, Technique, hair_by_use, take_up}, quantity::{Length, Mass, Share},
/// };
///
/// let (length, technique) = (Length::from_cm(20.0)?, Technique::Weave);
/// let profile = technique.profile(length).value;
/// let used = PastUse::of(
///     Mass::from_g(90.0)?, Share::from_percent(45.0)?.into(), &profile, length.into(), take_up(technique, true).value, None,
/// );
/// let facts = HairFacts { by_use: hair_by_use(&[used]), ..HairFacts::default() };
/// let (now, before) = (facts.head().mass_per_length.value, HairFacts::default().head().mass_per_length.value);
/// // The trade's figure for such a head is twice that: this one has less hair, and it is better known.
/// assert!(now.best() < before.best() && now.high() < before.high());
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Take-up and film are those of [`take_up`](super::take_up) and [`film`], assumed; one use repeats another within a factor of
/// 1.2, assumed.
#[must_use]
pub fn hair_by_use(uses: &[PastUse]) -> Option<Interval<MassPerLength>> {
    let add = |one: f64, other: f64| one + other;
    let none = (Interval::exact(0.0), Interval::exact(0.0));
    let (on_hair, for_each) = uses.iter().fold(none, |(grams, takes), each| {
        let used = as_used(each.used).map(Mass::g);
        let less = |used: f64, film: f64| (used - film).max(0.0);
        // Least on the hair where least was used and the film was thickest.
        let on_hair = Interval::ordered(
            less(used.low(), each.film.high()),
            less(used.best(), each.film.best()),
            less(used.high(), each.film.low()),
        );
        (grams.combine(on_hair, add), takes.combine(each.for_each, add))
    });
    let known = on_hair.low() > 0.0 && for_each.low() > 0.0;
    known.then(|| {
        let per_cm = Interval::ordered(1.0 / for_each.high(), 1.0 / for_each.best(), 1.0 / for_each.low());
        product(&[on_hair, per_cm]).map(MassPerLength::nearest)
    })
}
