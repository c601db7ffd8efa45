use crate::{
    quantity::{AmountConcentration, InvalidQuantity, Normality, Volume},
    source::{Interval, InvalidInterval},
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
    /// Division by nothing.
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
    /// Bounds out of order; does not happen with volumes above zero.
    #[error(transparent)]
    Interval(#[from] InvalidInterval),
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
    let low = Volume::from_ml(volume.ml() - tolerance.ml())?;
    Ok(Interval::new(low, volume, Volume::from_ml(volume.ml() + tolerance.ml())?)?)
}

/// The concentration of a permanganate solution whose strength is stated as normality: 0.1 N is 0.02 mol/L.
///
/// # Errors
///
/// [`InvalidQuantity`] never for a normality in range.
pub fn permanganate(normality: Normality) -> Result<AmountConcentration, InvalidQuantity> {
    AmountConcentration::from_mol_per_l(normality.eq_per_l() / EQUIVALENTS)
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
        let factor = self.factor()?;
        let at = |factor: f64, titre: Volume| AmountConcentration::from_mol_per_l(factor * titre.ml());
        let (low, best, high) = factor;
        Ok(Interval::new(at(low, titre.low())?, at(best, titre.best())?, at(high, titre.high())?)?)
    }

    /// The titre to expect from a bottle of a given strength.
    ///
    /// # Errors
    ///
    /// [`TitrationError`] when a volume may be zero or the dilution is none.
    pub fn expected_titre(&self, strength: Interval<AmountConcentration>) -> Result<Interval<Volume>, TitrationError> {
        let (low, best, high) = self.factor()?;
        if low == 0.0 {
            return Err(TitrationError::Nothing { what: "titrant" });
        }
        let at = |factor: f64, strength: AmountConcentration| Volume::from_ml(strength.mol_per_l() / factor);
        Ok(Interval::new(at(high, strength.low())?, at(best, strength.best())?, at(low, strength.high())?)?)
    }

    /// mol/L of the bottle for each mL of titre: lower bound, best, upper bound.
    fn factor(&self) -> Result<(f64, f64, f64), TitrationError> {
        if self.aliquot.low().ml() == 0.0 {
            return Err(TitrationError::Nothing { what: "aliquot" });
        }
        let (thin, mean, thick) = match self.dilution {
            None => (1.0, 1.0, 1.0),
            Some(PreDilution { taken, .. }) if taken.low().ml() == 0.0 => {
                return Err(TitrationError::Nothing { what: "volume taken" });
            }
            Some(PreDilution { taken, made_up_to }) if made_up_to.best() < taken.best() => {
                return Err(TitrationError::NoDilution { taken: taken.best(), made_up_to: made_up_to.best() });
            }
            Some(PreDilution { taken, made_up_to }) => (
                made_up_to.low().ml() / taken.high().ml(),
                made_up_to.best().ml() / taken.best().ml(),
                made_up_to.high().ml() / taken.low().ml(),
            ),
        };
        let of = |titrant: AmountConcentration, dilution: f64, aliquot: Volume| {
            PEROXIDE_PER_PERMANGANATE * titrant.mol_per_l() * dilution / aliquot.ml()
        };
        Ok((
            of(self.titrant.low(), thin, self.aliquot.high()),
            of(self.titrant.best(), mean, self.aliquot.best()),
            of(self.titrant.high(), thick, self.aliquot.low()),
        ))
    }
}
