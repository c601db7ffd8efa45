use super::{Level, absorption::Absorption, assumptions::Assumptions, srgb::lab_of_linear};

/// Melanin in a fibre, in the relative concentrations of the renderer whose absorptions the model uses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Melanin {
    pub eumelanin: f64,
    pub pheomelanin: f64,
}

// Source: `MELANIN_ABSORPTION` in the register; red, green, blue, per fibre radius at unit concentration.
const EUMELANIN: Absorption = Absorption([0.419, 0.697, 1.37]);
const PHEOMELANIN: Absorption = Absorption([0.187, 0.4, 1.05]);

// Source of the concentrations: `MELANIN_EXAMPLES`: black 8, brown 2, blond 0.143. That black is level 1, brown level 4
// and that the steps between are even is assumed; blond then falls on level 9.7.
const BLACK: f64 = 8.0;
const LEVELS_PER_HALVING: f64 = 1.5;

impl Melanin {
    /// No pigment: white hair.
    pub const NONE: Self = Self { eumelanin: 0.0, pheomelanin: 0.0 };

    /// The melanin of natural hair of a level: half as much every one and a half levels.
    pub fn natural(level: Level, with: &Assumptions) -> Self {
        Self::total((-(level.number() + with.reading - 1.0) / LEVELS_PER_HALVING).exp2() * BLACK, with)
    }

    fn total(all: f64, with: &Assumptions) -> Self {
        Self { eumelanin: all * (1.0 - with.pheomelanin), pheomelanin: all * with.pheomelanin }
    }

    /// What is left of `self` when lightener has made it as light as natural hair of `level`.
    ///
    /// Eumelanin goes first: with `e` the share of it that is left, `e^resistance` of the pheomelanin is left. Nothing
    /// happens when the hair is that light already.
    pub fn lightened_to(self, level: Level, with: &Assumptions) -> Self {
        let wanted = Self::natural(level, with).lightness(with);
        let after = |lost: f64| Self {
            eumelanin: self.eumelanin * (-lost).exp(),
            pheomelanin: self.pheomelanin * (-with.resistance * lost).exp(),
        };
        // Lightness rises with every bit lost; the widest case, black to 12 at the slowest rate, needs less than 64.
        let (mut low, mut high) = (0.0, 64.0);
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            if after(middle).lightness(with) < wanted { low = middle } else { high = middle }
        }
        if self.lightness(with) >= wanted { self } else { after(high) }
    }

    pub fn absorption(self) -> Absorption {
        EUMELANIN * self.eumelanin + PHEOMELANIN * self.pheomelanin
    }

    fn lightness(self, with: &Assumptions) -> f64 {
        lab_of_linear(self.absorption().reflectance(with)).l()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::assumptions::ENSEMBLE;

    // Source: Physically Based Rendering, 4th ed., Fig. 9.47: absorptions printed for black, brown and blond hair, to two
    // decimals, as those of eumelanin at 8.0, 2.0 and 0.143.
    #[test]
    fn absorptions_are_those_printed_for_hair() {
        let printed = [(8.0, [3.35, 5.58, 10.96]), (2.0, [0.84, 1.39, 2.74]), (0.143, [0.06, 0.10, 0.20])];
        for (eumelanin, want) in printed {
            let Absorption(got) = Melanin { eumelanin, pheomelanin: 0.0 }.absorption();
            for (got, want) in got.into_iter().zip(want) {
                assert!((got - want).abs() < 0.0051, "{eumelanin}: got {got}, want {want}");
            }
        }
    }

    // Source: the same; that they stand for levels 1, 4 and about 9.7 is assumed.
    #[test]
    fn black_brown_and_blond_have_the_printed_concentrations() -> Result<(), crate::colour::InvalidLevel> {
        for (level, want) in [(1.0, 8.0), (4.0, 2.0), (9.7, 0.143)] {
            let got = Melanin::natural(Level::new(level)?, &ENSEMBLE[0]);
            let total = got.eumelanin + got.pheomelanin;
            assert!((total / want - 1.0).abs() < 0.01, "level {level}: {total}, printed {want}");
        }
        Ok(())
    }

    // Source: Borges et al., Anal. Biochem. 290:116, 2001 (1 to 5 %) and Pigment Cell Melanoma Res., doi
    // 10.1111/pcmr.12673 (11 to 17 %): the bounds are the ends of both.
    #[test]
    fn pheomelanin_shares_span_the_published_ones() {
        let shares = ENSEMBLE.map(|with| with.pheomelanin);
        assert_eq!(shares.iter().copied().fold(1.0, f64::min), 0.01);
        assert_eq!(shares.iter().copied().fold(0.0, f64::max), 0.17);
    }
}
