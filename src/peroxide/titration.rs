use crate::{
    quantity::{AmountConcentration, InvalidQuantity, Normality, Quantity, Volume},
    source::Interval,
};

/// Equivalents of permanganate in a mole: Mn(VII) to Mn(II).
const EQUIVALENTS: f64 = 5.0;
/// Moles of peroxide for one of permanganate: `2 MnO4- + 5 H2O2 + 6 H+ -> 2 Mn2+ + 5 O2 + 8 H2O`.
const PEROXIDE_PER_PERMANGANATE: f64 = 2.5;

/// A measured dilution before the titration: strong peroxide is diluted first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PreDilution {
    /// Taken from the bottle.
    pub taken: Interval<Volume>,
    /// Made up to this mark.
    pub made_up_to: Interval<Volume>,
}

/// A titration of peroxide with permanganate in acid: everything but the reading of the burette.
///
/// Every volume comes with the tolerance printed on its glass ([`read_glass`]); the results carry the bounds that follow
/// when all of them are off at once in the worst way. A blank, an end point overrun or an old titrant are not in them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Titration {
    /// Concentration of the permanganate.
    pub titrant: Interval<AmountConcentration>,
    /// Pipetted into the flask that is titrated.
    pub aliquot: Interval<Volume>,
    /// The dilution that the aliquot was taken from, if there was one.
    pub dilution: Option<PreDilution>,
}

/// Why a titration gives no answer.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TitrationError {
    /// A zero to divide by.
    #[error("the {what} may be zero: give more than its tolerance")]
    Nothing {
        /// What.
        what: &'static str,
    },
    /// A dilution that concentrates.
    #[error("{taken} were taken and made up to {made_up_to}: the mark must not be below what was taken")]
    NoDilution {
        /// Taken from the bottle.
        taken: Volume,
        /// The mark.
        made_up_to: Volume,
    },
    /// A result that cannot be.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// A volume with the tolerance of the glass that measured it.
///
/// # Errors
///
/// [`TitrationError`] when the tolerance is larger than the volume.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::read_glass, quantity::Volume};
///
/// let pipette = read_glass(Volume::from_ml(10.0)?, Volume::from_ml(0.02)?)?;
/// assert_eq!(pipette.low().ml(), 9.98);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn read_glass(volume: Volume, tolerance: Volume) -> Result<Interval<Volume>, TitrationError> {
    let [low, high] = [volume.ml() - tolerance.ml(), volume.ml() + tolerance.ml()].map(Volume::from_ml);
    Ok(Interval::ordered(low?, volume, high?))
}

/// The concentration of a permanganate solution whose strength is stated as normality: 0.1 N is 0.02 mol/L.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::permanganate, quantity::Normality};
///
/// assert_eq!(permanganate(Normality::from_eq_per_l(0.1)?).mol_per_l(), 0.02);
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Five equivalents in a mole: Mn(VII) to Mn(II).
#[must_use]
pub fn permanganate(normality: Normality) -> AmountConcentration {
    AmountConcentration::nearest(normality.eq_per_l() / EQUIVALENTS)
}

impl Titration {
    /// The strength of the bottle from the titre.
    ///
    /// # Errors
    ///
    /// [`TitrationError`] when a volume may be zero or the dilution is none.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{PreDilution, Titration, read_glass}, quantity::{AmountConcentration, Volume}};
    /// use foilwork::source::Interval;
    ///
    /// let glass = |ml, tolerance| -> Result<_, Box<dyn std::error::Error>> {
    ///     Ok(read_glass(Volume::from_ml(ml)?, Volume::from_ml(tolerance)?)?)
    /// };
    /// let titration = Titration {
    ///     titrant: Interval::exact(AmountConcentration::from_mol_per_l(0.02)?),
    ///     aliquot: glass(10.0, 0.02)?,
    ///     dilution: Some(PreDilution { taken: glass(10.0, 0.02)?, made_up_to: glass(100.0, 0.1)? }),
    /// };
    /// let bottle = titration.strength(glass(12.0, 0.03)?)?;
    /// assert_eq!(format!("{:.3}", bottle.best()), "0.600 mol/L");
    /// assert_eq!(format!("{:.3} to {:.3}", bottle.low(), bottle.high()), "0.596 mol/L to 0.605 mol/L");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Source
    ///
    /// `c(H2O2) = 2.5 c(KMnO4) V(KMnO4) / V(sample)`; British Pharmacopoeia: 1 mL of 0.02 mol/L is 1.701 mg of peroxide.
    pub fn strength(&self, titre: Interval<Volume>) -> Result<Interval<AmountConcentration>, TitrationError> {
        let at = |factor: f64, titre: Volume| AmountConcentration::from_mol_per_l(factor * titre.ml());
        Ok(self.factor()?.try_combine(titre, at)?)
    }

    /// The titre to expect from a bottle of a given strength.
    ///
    /// # Errors
    ///
    /// [`TitrationError`] when a volume may be zero or the dilution is none.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::Titration, quantity::{AmountConcentration, Volume}, source::Interval};
    ///
    /// let titration = Titration {
    ///     titrant: Interval::exact(AmountConcentration::from_mol_per_l(0.02)?),
    ///     aliquot: Interval::exact(Volume::from_ml(10.0)?),
    ///     dilution: None,
    /// };
    /// let titre = titration.expected_titre(Interval::exact(AmountConcentration::from_mol_per_l(0.06)?))?;
    /// assert_eq!(format!("{:.1}", titre.best()), "12.0 mL");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn expected_titre(&self, strength: Interval<AmountConcentration>) -> Result<Interval<Volume>, TitrationError> {
        let factor = self.factor()?;
        if factor.low() == 0.0 {
            return Err(TitrationError::Nothing { what: "titrant" });
        }
        let at = |strength: AmountConcentration, factor: f64| Volume::from_ml(strength.mol_per_l() / factor);
        Ok(strength.try_combine(factor, at)?)
    }

    /// mol/L of the bottle for each mL of titre.
    fn factor(&self) -> Result<Interval<f64>, TitrationError> {
        if self.aliquot.low().ml() == 0.0 {
            return Err(TitrationError::Nothing { what: "aliquot" });
        }
        let dilution = match self.dilution {
            None => Interval::exact(1.0),
            Some(PreDilution { taken, .. }) if taken.low().ml() == 0.0 => {
                return Err(TitrationError::Nothing { what: "volume taken" });
            }
            Some(PreDilution { taken, made_up_to }) if made_up_to.best() < taken.best() => {
                return Err(TitrationError::NoDilution { taken: taken.best(), made_up_to: made_up_to.best() });
            }
            Some(PreDilution { taken, made_up_to }) => made_up_to.combine(taken, |mark, taken| mark.ml() / taken.ml()),
        };
        let moles = self.titrant.combine(dilution, |c, times| PEROXIDE_PER_PERMANGANATE * c.mol_per_l() * times);
        Ok(moles.combine(self.aliquot, |moles, aliquot| moles / aliquot.ml()))
    }
}
