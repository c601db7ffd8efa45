//! The rules of one strength type, by a unit that is chosen while the program runs: numbers in, numbers out.

use super::ColumnError;
use crate::{
    peroxide::{
        self, AgeingError, KnownVolume, MakeUp, MakeUpError, Strength, StrengthQuantity, StrengthUnit, VolumeStrength,
    },
    quantity::{
        ActiveOxygen, AmountConcentration, Duration, LossRate, MassConcentration, MassFraction, Molality, Normality,
        OxygenVolumes, Volume,
    },
    source::Interval,
};

/// A function of the type that goes with a unit.
macro_rules! in_unit {
    ($unit:expr, $function:ident) => {
        match $unit {
            StrengthUnit::WwPercent => $function::<MassFraction>,
            StrengthUnit::WvPercent | StrengthUnit::GPerL => $function::<MassConcentration>,
            StrengthUnit::MolPerL => $function::<AmountConcentration>,
            StrengthUnit::MolPerKg => $function::<Molality>,
            StrengthUnit::EqPerL => $function::<Normality>,
            StrengthUnit::ActiveOxygenPercent => $function::<ActiveOxygen>,
            StrengthUnit::Volumes => $function::<OxygenVolumes>,
        }
    };
}

/// The same of a type that counts by volume.
macro_rules! in_volume_unit {
    ($unit:expr, $function:ident) => {
        match $unit {
            StrengthUnit::MolPerL => $function::<AmountConcentration>,
            StrengthUnit::EqPerL => $function::<Normality>,
            StrengthUnit::Volumes => $function::<OxygenVolumes>,
            _ => $function::<MassConcentration>,
        }
    };
}

/// What a number in a unit is multiplied by for its type, and the largest number of that type: % w/v and g/L share one, all other
/// units have their own.
pub(super) fn scale_and_most(unit: StrengthUnit) -> (f64, f64) {
    let scale = if unit == StrengthUnit::WvPercent { 10.0 } else { 1.0 };
    (scale, unit.max() * scale)
}

/// Refuses a unit that counts by mass.
pub(super) fn by_volume(unit: StrengthUnit) -> Result<StrengthUnit, ColumnError> {
    if unit.is_by_mass() { Err(ColumnError::ByMass { unit }) } else { Ok(unit) }
}

pub(super) type MakeUpRule = fn(f64, f64, KnownVolume) -> Result<MakeUp, MakeUpError>;

pub(super) fn make_up(unit: StrengthUnit) -> MakeUpRule {
    fn typed<Q: VolumeStrength>(stock: f64, target: f64, known: KnownVolume) -> Result<MakeUp, MakeUpError> {
        peroxide::make_up(Q::from_unit(stock)?, Q::from_unit(target)?, known)
    }
    in_volume_unit!(unit, typed)
}

pub(super) type MadeUpRule = fn(f64, Volume, Volume) -> Result<f64, MakeUpError>;

pub(super) fn strength_after_make_up(unit: StrengthUnit) -> MadeUpRule {
    fn typed<Q: VolumeStrength>(stock: f64, taken: Volume, total: Volume) -> Result<f64, MakeUpError> {
        Ok(peroxide::strength_after_make_up(Q::from_unit(stock)?, taken, total)?.in_unit())
    }
    in_volume_unit!(unit, typed)
}

pub(super) type AfterRule = fn(f64, LossRate, Duration) -> Result<f64, AgeingError>;

pub(super) fn strength_after(unit: StrengthUnit) -> AfterRule {
    fn typed<Q: StrengthQuantity>(fresh: f64, rate: LossRate, elapsed: Duration) -> Result<f64, AgeingError> {
        let (fresh, rate) = (Interval::exact(Q::from_unit(fresh)?), Interval::exact(rate));
        Ok(peroxide::strength_after(fresh, rate, elapsed).best().in_unit())
    }
    in_unit!(unit, typed)
}

pub(super) type RateRule = fn(f64, f64, Duration) -> Result<f64, AgeingError>;

pub(super) fn loss_rate(unit: StrengthUnit) -> RateRule {
    fn typed<Q: StrengthQuantity + Into<Strength>>(
        first: f64,
        later: f64,
        elapsed: Duration,
    ) -> Result<f64, AgeingError> {
        let [first, later] = [Q::from_unit(first)?, Q::from_unit(later)?].map(Interval::exact);
        Ok(peroxide::loss_rate(first, later, elapsed)?.best().per_day())
    }
    in_unit!(unit, typed)
}

pub(super) type UntilRule = fn(f64, f64, LossRate) -> Result<f64, AgeingError>;

pub(super) fn time_until(unit: StrengthUnit) -> UntilRule {
    fn typed<Q: StrengthQuantity + Into<Strength>>(
        fresh: f64,
        wanted: f64,
        rate: LossRate,
    ) -> Result<f64, AgeingError> {
        let (fresh, wanted) = (Interval::exact(Q::from_unit(fresh)?), Q::from_unit(wanted)?);
        Ok(peroxide::time_until(fresh, wanted, Interval::exact(rate))?.best().days())
    }
    in_unit!(unit, typed)
}
