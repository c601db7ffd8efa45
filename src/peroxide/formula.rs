//! The arithmetic between units on plain numbers, shared by the scalar functions and the columns.

use super::{
    cubic::Cubic,
    molar::{MolarVolume, OXYGEN_G_PER_MOL, PEROXIDE_G_PER_MOL},
    unit::StrengthUnit,
};

/// g/L from % w/w.
#[inline]
pub(crate) fn g_per_l(ww_percent: f64, cubic: &Cubic) -> f64 {
    1000.0 * cubic.concentration(ww_percent / 100.0)
}

/// The strongest g/L that the inverse is asked for; a rounding error above what the forward direction gives.
#[inline]
pub(crate) fn max_g_per_l(ww_percent: f64, cubic: &Cubic) -> f64 {
    g_per_l(ww_percent, cubic) * (1.0 + 1e-12)
}

/// % w/w from g/L.
#[inline]
pub(crate) fn ww_percent(g_per_l: f64, cubic: &Cubic) -> f64 {
    100.0 * cubic.fraction(g_per_l / 1000.0)
}

/// % w/w from a unit that counts by mass.
#[inline]
pub(crate) fn to_ww_percent(x: f64, unit: StrengthUnit) -> f64 {
    match unit {
        StrengthUnit::MolPerKg => {
            let g_per_kg_water = x * PEROXIDE_G_PER_MOL;
            100.0 * g_per_kg_water / (1000.0 + g_per_kg_water)
        }
        StrengthUnit::ActiveOxygenPercent => x * (PEROXIDE_G_PER_MOL / OXYGEN_G_PER_MOL),
        _ => x,
    }
}

/// A unit that counts by mass from % w/w. Pure peroxide holds no water, so its molality is infinite.
#[inline]
pub(crate) fn from_ww_percent(percent: f64, unit: StrengthUnit) -> f64 {
    match unit {
        StrengthUnit::MolPerKg => 1000.0 * percent / ((100.0 - percent) * PEROXIDE_G_PER_MOL),
        StrengthUnit::ActiveOxygenPercent => percent / (PEROXIDE_G_PER_MOL / OXYGEN_G_PER_MOL),
        _ => percent,
    }
}

/// How many g/L one of a unit that counts by volume is.
#[inline]
pub(crate) fn g_per_l_each(unit: StrengthUnit, vm: MolarVolume) -> f64 {
    match unit {
        StrengthUnit::WvPercent => 10.0,
        StrengthUnit::MolPerL => PEROXIDE_G_PER_MOL,
        StrengthUnit::EqPerL => PEROXIDE_G_PER_MOL / 2.0,
        StrengthUnit::Volumes => PEROXIDE_G_PER_MOL / (vm.l_per_mol() / 2.0),
        _ => 1.0,
    }
}

/// g/L from a unit that counts by volume.
#[inline]
pub(crate) fn to_g_per_l(x: f64, unit: StrengthUnit, vm: MolarVolume) -> f64 {
    x * g_per_l_each(unit, vm)
}

/// A unit that counts by volume from g/L.
#[inline]
pub(crate) fn from_g_per_l(x: f64, unit: StrengthUnit, vm: MolarVolume) -> f64 {
    x / g_per_l_each(unit, vm)
}

/// From one unit that counts by volume to another: one multiplication or one division, whichever has the factor above 1,
/// so that round factors such as 10 stay exact both ways.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Ratio {
    Times(f64),
    Over(f64),
}

impl Ratio {
    #[inline]
    pub(crate) fn between(from: StrengthUnit, to: StrengthUnit, vm: MolarVolume) -> Self {
        let (each, per) = (g_per_l_each(from, vm), g_per_l_each(to, vm));
        if each >= per { Self::Times(each / per) } else { Self::Over(per / each) }
    }

    #[inline]
    pub(crate) fn apply(self, x: f64) -> f64 {
        match self {
            Self::Times(factor) => x * factor,
            Self::Over(factor) => x / factor,
        }
    }
}
