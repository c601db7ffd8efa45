use super::{Level, bands::Bands, fibre::Model, solve::solve};
use std::{f64::consts::LN_2, sync::LazyLock};

/// Pigment in a fibre: the two melanins as absorption at 550 nm, oxidised melanin as absorption at 400 nm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Melanin {
    pub(crate) eumelanin: f64,
    pub(crate) pheomelanin: f64,
    pub(crate) oxidised: f64,
}

/// Absorption of eumelanin, 1 at 550 nm. Source: `MELANIN_SPECTRUM` in the register.
pub(super) static EUMELANIN: LazyLock<Bands> = LazyLock::new(|| Bands::at(|nm| (nm / 550.0).powf(-3.48)));
/// Absorption of pheomelanin, 1 at 550 nm. Source: `PHEOMELANIN_SPECTRUM` in the register (from memory).
pub(super) static PHEOMELANIN: LazyLock<Bands> = LazyLock::new(|| Bands::at(|nm| (nm / 550.0).powf(-4.75)));

impl Melanin {
    /// No pigment: white hair.
    pub(crate) const NONE: Self = Self { eumelanin: 0.0, pheomelanin: 0.0, oxidised: 0.0 };

    /// The melanin of natural hair of a level.
    pub(crate) fn natural(level: Level, model: &Model) -> Self {
        let with = &model.with;
        Self::total((-(level.number() + with.reading - 1.0) / with.levels_per_halving).exp2(), model)
    }

    /// The melanin that a label means by a level: no head was read by eye.
    pub(super) fn of_label(level: Level, model: &Model) -> Self {
        Self::total((-(level.number() - 1.0) / model.with.levels_per_halving).exp2(), model)
    }

    fn total(share_of_black: f64, model: &Model) -> Self {
        let (all, pheomelanin) = (model.with.melanin_of_black * share_of_black, model.with.pheomelanin);
        Self { eumelanin: all * (1.0 - pheomelanin), pheomelanin: all * pheomelanin, oxidised: 0.0 }
    }

    /// What is left of natural hair of `from` when lightener has made it as light as natural hair of `to`; hair that is
    /// that light already stays as it is.
    ///
    /// A dose d leaves exp(-d) of the eumelanin, turns what it took into oxidised melanin, and takes that and pheomelanin
    /// at their own rates: two steps in a row, as is published for bleaching.
    pub(crate) fn lightened(from: Level, to: Level, model: &Model) -> Self {
        let start = Self::natural(from, model);
        if to <= from { start } else { start.along(Self::dose(from, to, None, model), model).0 }
    }

    /// The dose of lightener that takes natural hair of one level to a lighter one, near a guess where there is one.
    pub(super) fn dose(from: Level, to: Level, guess: Option<f64>, model: &Model) -> f64 {
        let start = Self::natural(from, model);
        let (wanted, _) = model.fibre.luminance(&Self::natural(to, model).absorption(model), &Bands::ZERO);
        let (target, _) = model.fibre.depth(wanted);
        let guess = guess.unwrap_or(1.3 * LN_2 * (to - from).levels() / model.with.levels_per_halving);
        // Depth falls with every bit lost; the widest case, black to 12, needs less than 64.
        solve(guess, 0.0, 64.0, |dose| {
            let (left, change) = start.along(dose, model);
            let (luminance, slope) = model.fibre.luminance(&left.absorption(model), &change.absorption(model));
            let (depth, steepness) = model.fibre.depth(luminance);
            (depth - target, steepness * slope)
        })
    }

    /// What a dose of lightener leaves of natural pigment, and how that changes with the dose.
    fn along(self, dose: f64, model: &Model) -> (Self, Self) {
        let with = &model.with;
        let (left, gone) = ((-dose).exp(), (-with.survival * dose).exp());
        let (eumelanin, pheomelanin) = (self.eumelanin * left, self.pheomelanin * (-with.resistance * dose).exp());
        let formed = with.oxidised * self.eumelanin / (1.0 - with.survival);
        let after = Self { eumelanin, pheomelanin, oxidised: formed * (gone - left) };
        let change = Self {
            eumelanin: -eumelanin,
            pheomelanin: -with.resistance * pheomelanin,
            oxidised: formed * (left - with.survival * gone),
        };
        (after, change)
    }

    /// How much light it takes at each wavelength; absorptions add up.
    pub(crate) fn absorption(self, model: &Model) -> Bands {
        *EUMELANIN * self.eumelanin + *PHEOMELANIN * self.pheomelanin + model.oxidised * self.oxidised
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{assumptions::ENSEMBLE, fibre::MODELS, solve::looks};

    // Source: Jacques, optical absorption of melanin: 1.70e12 nm^-3.48 per cm in the interior of a skin melanosome; 993.7,
    // 494.3 and 276.4 per cm at 450, 550 and 650 nm. Only the shape is used.
    #[test]
    fn eumelanin_falls_as_published_for_melanosomes() {
        let at = |nm: f64| EUMELANIN.0.map(wide::f64x4::to_array).concat()[((nm - 400.0) / 10.0) as usize];
        assert!((at(550.0) - 1.0).abs() < 1e-12);
        assert!((at(450.0) - 993.7 / 494.3).abs() < 5e-4 && (at(650.0) - 276.4 / 494.3).abs() < 5e-4);
    }

    // Source: Borges et al., Anal. Biochem. 290:116, 2001 (1 to 5 %) and Pigment Cell Melanoma Res., doi
    // 10.1111/pcmr.12673 (11 to 17 %): the bounds are the ends of both.
    #[test]
    fn pheomelanin_shares_span_the_published_ones() {
        let shares = ENSEMBLE.map(|with| with.pheomelanin);
        assert_eq!(shares.iter().copied().fold(1.0, f64::min), 0.01);
        assert_eq!(shares.iter().copied().fold(0.0, f64::max), 0.17);
    }

    // A derivative is the limit of a quotient of differences: here of 1e-5 to both sides, off by its square.
    #[test]
    fn what_a_dose_leaves_changes_as_its_quotient_of_differences() {
        let parts = |one: Melanin| [one.eumelanin, one.pheomelanin, one.oxidised];
        for model in &*MODELS {
            for (level, dose) in [(1.0, 0.2), (4.5, 1.0), (6.0, 3.0), (9.0, 6.0)] {
                let start = Melanin::natural(Level::clamped(level), model);
                let at = |dose| parts(start.along(dose, model).0);
                let ([low, high], change) = ([dose - 1e-5, dose + 1e-5].map(at), parts(start.along(dose, model).1));
                for ((low, high), change) in low.iter().zip(high).zip(change) {
                    let quotient = (high - low) / 2e-5;
                    assert!(
                        (quotient - change).abs() < 1e-7 * (1.0 + change.abs()),
                        "{level}, {dose}: {quotient} {change}"
                    );
                }
            }
        }
    }

    // Newton's steps double the places that are right; measured, from the guess that is taken where none is given.
    #[test]
    fn a_dose_is_found_in_few_looks() {
        let levels = [1.0, 3.0, 5.0, 7.0, 9.0, 12.0].map(Level::clamped);
        let mut most = 0;
        for model in &*MODELS {
            for (from, to) in levels.iter().flat_map(|from| levels.iter().map(move |to| (*from, *to))) {
                if to > from {
                    most = most.max(looks::of(|| Melanin::dose(from, to, None, model)));
                }
            }
        }
        assert_eq!(most, 5);
    }

    fn near(got: f64, want: f64, part: f64) {
        assert!((got - want).abs() <= part * want.abs(), "{got} for {want}");
    }

    /// Half of the melanin is gone after the levels that halve it; a level that was read too light has less than is written.
    #[test]
    fn melanin_halves_by_levels() {
        for model in &*MODELS {
            let all = |melanin: Melanin| melanin.eumelanin + melanin.pheomelanin;
            let up = |levels: f64| Level::clamped(1.0 + levels);
            for (levels, left) in [(0.0, 1.0), (1.0, 0.5), (2.0, 0.25)] {
                let levels = levels * model.with.levels_per_halving;
                let label = Melanin::of_label(up(levels), model);
                near(all(label), model.with.melanin_of_black * left, 1e-9);
                near(label.pheomelanin, all(label) * model.with.pheomelanin, 1e-9);
                let read = Melanin::natural(up(levels), model);
                near(all(read), all(label) * (-model.with.reading / model.with.levels_per_halving).exp2(), 1e-9);
            }
        }
    }

    /// Hair lightened to a level is as light as it, and what is no lighter stays as it grew.
    #[test]
    fn lightener_takes_away_what_it_says() {
        let (dark, light) = (Level::clamped(4.0), Level::clamped(8.0));
        for model in &*MODELS {
            let start = Melanin::natural(dark, model);
            let luminance = |melanin: Melanin| model.fibre.luminance(&melanin.absorption(model), &Bands::ZERO).0;
            near(luminance(Melanin::lightened(dark, light, model)), luminance(Melanin::natural(light, model)), 1e-9);
            assert_eq!(Melanin::lightened(dark, dark, model), start);
            assert_eq!(Melanin::lightened(light, dark, model), Melanin::natural(light, model));
            // Without lightener all is there.
            assert_eq!(start.along(0.0, model).0, start);
        }
    }

    // Published b* of black hair is below 0: its surface is bluish under every set but the two whose eye reads a level too high. Eyes read
    // too low as often, by as much.
    #[test]
    fn surfaces_are_bluish_and_readings_cancel() {
        assert!(ENSEMBLE.iter().all(|with| (with.surface_tilt < 0.0) == (with.reading <= 0.0)));
        let readings = ENSEMBLE.map(|with| with.reading);
        assert_eq!((readings.iter().sum::<f64>(), readings.iter().filter(|off| **off < 0.0).count()), (0.0, 2));
    }
}
