use super::{
    CrossSection, Cut, HairCount, HairDensity, HairFacts, MassPerLength, Tress, fibre_density, group, product,
    spread::agreed,
};
use crate::{
    quantity::{Area, Length, Quantity, Share},
    source::{Basis, Interval, Sourced, citations::hair},
};

/// All the hair of a head, from what is known of it.
///
/// # Example
///
/// ```
/// use foilwork::{hair::HairFacts, quantity::Share};
///
/// let head = HairFacts::default().head();
/// assert!(head.part(Share::ALL).hairs.best().hairs() > 100_000.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadOfHair {
    /// Scalp that bears hair.
    pub scalp: Sourced<Interval<Area>>,
    /// Hairs on a square centimetre, the mean over the head.
    pub density: Sourced<Interval<HairDensity>>,
    /// Cross-section of a hair.
    pub cross_section: Sourced<Interval<CrossSection>>,
    /// Circumference of a hair.
    pub circumference: Interval<Length>,
    /// Mass of the hair of a square centimetre by its length, in g/cm.
    mass_per_area: Interval<f64>,
    /// Mass of all the hair by its length.
    pub mass_per_length: Sourced<Interval<MassPerLength>>,
}

impl HairFacts {
    /// The head of hair that these facts describe.
    #[must_use]
    pub fn head(&self) -> HeadOfHair {
        HeadOfHair::of(self)
    }
}

impl HeadOfHair {
    fn of(facts: &HairFacts) -> Self {
        let (scalp, density, cross_section) = (facts.scalp(), facts.density(), facts.cross_section());
        let ellipticity = group::ellipticity(facts.group);
        let circumference = cross_section
            .value
            .combine(ellipticity, |area, ellipticity| Cut::of_area(area, ellipticity).circumference());
        let keratin = fibre_density().value;
        let area = scalp.value.map(Area::cm2);
        let on_area = [
            density.value.map(HairDensity::hairs_per_cm2),
            cross_section.value.map(CrossSection::um2),
            keratin.map(|keratin| keratin.g_per_ml() * 1e-8),
        ];
        let [dense, thick, heavy] = on_area;
        let by_parts = product(&[area, dense, thick, heavy]).map(MassPerLength::nearest);
        let basis = scalp.basis.weaker(density.basis).weaker(cross_section.basis);
        let mut mass_per_length = match facts.ponytail {
            Some(tail) => Sourced::measured(agreed(by_parts, tail.mass_per_length())),
            None => Sourced { value: by_parts, basis, citation: Some(&hair::MASS_SPREAD) },
        };
        if let Some(by_use) = facts.by_use {
            // What a gram of hair takes up is assumed.
            let basis = mass_per_length.basis.weaker(Basis::Assumed);
            let before = mass_per_length.value;
            // Where the two do not meet, one of them is wrong, and nobody knows which: both stay possible.
            let value = if before.high() < by_use.low() || by_use.high() < before.low() {
                let (low, high) = if before.low() < by_use.low() {
                    (before.low(), by_use.high())
                } else {
                    (by_use.low(), before.high())
                };
                Interval::ordered(low, before.best(), high)
            } else {
                agreed(before, by_use)
            };
            mass_per_length = Sourced { value, basis, ..mass_per_length };
        }
        // Ponytail and use weigh the whole head: what of it is on a square centimetre depends on how many there are.
        let mass_per_area = if facts.ponytail.is_some() || facts.by_use.is_some() {
            product(&[mass_per_length.value.map(MassPerLength::g_per_cm), area.map(|cm2| 1.0 / cm2)])
        } else {
            product(&on_area)
        };
        Self { scalp, density, cross_section, circumference, mass_per_area, mass_per_length }
    }

    /// A part of the hair, by its share of all of it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::{Length, Share}};
    ///
    /// let head = HairFacts::default().head();
    /// let (half, all) = (head.part(Share::from_percent(50.0)?), head.part(Share::ALL));
    /// let length = Length::from_cm(20.0)?;
    /// assert_eq!(half.mass(length.into()).best().g() * 2.0, all.mass(length.into()).best().g());
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn part(&self, share: Share) -> Tress {
        self.shared(share.into())
    }

    /// A part of the hair whose share is an estimate.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::Share, source::Interval};
    ///
    /// let share = Interval::new(Share::from_percent(20.0)?, Share::from_percent(25.0)?, Share::from_percent(40.0)?)?;
    /// let head = HairFacts::default().head();
    /// assert!(head.shared(share).hairs.high() > head.part(share.best()).hairs.high());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn shared(&self, share: Interval<Share>) -> Tress {
        let share = share.map(Share::fraction);
        let scalp = self.scalp.value.map(Area::cm2);
        let density = self.density.value.map(HairDensity::hairs_per_cm2);
        let mass = self.mass_per_length.value.map(MassPerLength::g_per_cm);
        Tress {
            hairs: product(&[scalp, density, share]).map(HairCount::nearest),
            mass_per_length: product(&[mass, share]).map(MassPerLength::nearest),
            circumference: self.circumference,
        }
    }

    /// The hair of an area of the scalp that was measured.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::Area};
    ///
    /// let panel = HairFacts::default().head().on(Area::from_cm2(48.0)?.into());
    /// assert_eq!(panel.hairs.best().hairs(), 48.0 * 211.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn on(&self, area: Interval<Area>) -> Tress {
        let area = area.map(Area::cm2);
        Tress {
            hairs: product(&[area, self.density.value.map(HairDensity::hairs_per_cm2)]).map(HairCount::nearest),
            mass_per_length: product(&[area, self.mass_per_area]).map(MassPerLength::nearest),
            circumference: self.circumference,
        }
    }

    /// The weakest of what it rests on.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, source::Basis};
    ///
    /// assert_eq!(HairFacts::default().head().basis(), Basis::Assumed);
    /// ```
    #[must_use]
    pub fn basis(&self) -> Basis {
        self.mass_per_length.basis
    }
}
