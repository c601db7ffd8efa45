//! Density as a cubic in the mass fraction, at one temperature: the form every crossing between mass and volume uses.

/// `rho(x) = a + b x + c x2 + d x3` in g/mL, with `x` the mass fraction from 0 to 1.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cubic {
    a: f64,
    b: f64,
    c: f64,
    d: f64,
    /// A first guess of `x / y` as a cubic in the mass concentration `y`, good to 0.2 %.
    guess: [f64; 4],
}

impl Cubic {
    /// Aqueous peroxide at a temperature in degrees Celsius.
    ///
    /// Water after Kell; the increments are the cited coefficients, each a cubic in the temperature. The guess was fitted
    /// to this very law and decides nothing but the number of steps.
    #[inline]
    pub(crate) const fn aqueous(t: f64) -> Self {
        Self {
            a: water(t),
            b: 0.397_63 + t * (-2.873_2e-3 + t * (3.248_8e-5 + t * -1.636_3e-7)),
            c: 0.022_06 + t * (3.535_7e-3 + t * (-6.094_7e-5 + t * 3.616_5e-7)),
            d: 0.051_87 + t * (-1.941_4e-3 + t * (3.906_1e-5 + t * -2.55e-7)),
            guess: [0.998_2 + t * (1.875e-4 + t * 2.627e-6), -0.361_3 + t * 2.059e-4, 0.158_6, -0.047_84],
        }
    }

    /// A density that does not depend on the strength: the product was measured as it is.
    #[inline]
    pub(crate) const fn constant(g_per_ml: f64) -> Self {
        Self { a: g_per_ml, b: 0.0, c: 0.0, d: 0.0, guess: [1.0 / g_per_ml, 0.0, 0.0, 0.0] }
    }

    /// Density in g/mL at a mass fraction.
    #[inline]
    pub(crate) const fn at(&self, x: f64) -> f64 {
        self.a + x * (self.b + x * (self.c + x * self.d))
    }

    /// Mass concentration in g/mL at a mass fraction.
    #[inline]
    pub(crate) const fn concentration(&self, x: f64) -> f64 {
        x * self.at(x)
    }

    /// Mass fraction at a mass concentration in g/mL: the inverse of [`concentration`](Self::concentration).
    ///
    /// From the guess, one step with all derivatives of the quartic reaches the last bit everywhere from 0 to 70 % and
    /// 0 to 50 C. No branch, so that columns vectorise.
    #[inline]
    pub(crate) fn fraction(&self, y: f64) -> f64 {
        let [g0, g1, g2, g3] = self.guess;
        let x = y * (g0 + y * (g1 + y * (g2 + y * g3)));
        // The equation and its derivatives at the start, each over its factorial; then the series for the root.
        let first = 1.0 / (self.a + x * (2.0 * self.b + x * (3.0 * self.c + x * 4.0 * self.d)));
        let r = (self.concentration(x) - y) * first;
        let second = (self.b + x * (3.0 * self.c + x * 6.0 * self.d)) * first;
        let third = (self.c + x * 4.0 * self.d) * first;
        let fourth = self.d * first;
        let square = second * second;
        x - r * (1.0 + r * (second + r * (2.0 * square - third + r * (5.0 * second * (square - third) + fourth))))
    }
}

/// Density of water in g/mL.
#[inline]
const fn water(t: f64) -> f64 {
    let square = t * t;
    let above = (999.839_52 + 16.945_176 * t)
        + square * ((-7.987_040_1e-3 - 46.170_461e-6 * t) + square * (105.563_02e-9 - 280.542_53e-12 * t));
    above / (1000.0 + 16.879_85 * t)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Water after Kell, J. Chem. Eng. Data 20 (1975) 97: the powers of the temperature, in kg/m3, over `1 + 16.87985e-3 t`.
    const KELL: [f64; 6] = [999.839_52, 16.945_176, -7.987_040_1e-3, -46.170_461e-6, 105.563_02e-9, -280.542_53e-12];

    /// The coefficients of [`MIXTURE_DENSITY`](crate::source::citations::peroxide::MIXTURE_DENSITY): a row for each power of the
    /// mass fraction from the first, a column for each power of the temperature.
    const MIXTURE: [[f64; 4]; 3] = [
        [0.397_63, -2.873_2e-3, 3.248_8e-5, -1.636_3e-7],
        [0.022_06, 3.535_7e-3, -6.094_7e-5, 3.616_5e-7],
        [0.051_87, -1.941_4e-3, 3.906_1e-5, -2.55e-7],
    ];

    fn powers(factors: &[f64], x: f64) -> f64 {
        (0..).zip(factors).map(|(power, factor)| factor * x.powi(power)).sum()
    }

    fn grid() -> impl Iterator<Item = (f64, f64)> {
        (0..=20).flat_map(|celsius| (0..=35).map(move |percent| (2.5 * f64::from(celsius), 0.02 * f64::from(percent))))
    }

    /// Term by term, as the sources print it.
    #[test]
    fn a_density_is_the_sum_of_its_published_terms() {
        for (t, x) in grid() {
            let water = powers(&KELL, t) / (1000.0 * (1.0 + 16.879_85e-3 * t));
            let [b, c, d] = MIXTURE.map(|row| powers(&row, t));
            let want = powers(&[water, b, c, d], x);
            let cubic = Cubic::aqueous(t);
            assert!((cubic.at(x) / want - 1.0).abs() < 1e-14, "{t} C, {x}: {} {want}", cubic.at(x));
            assert!((cubic.concentration(x) - x * want).abs() < 1e-14, "{t} C, {x}");
        }
    }

    /// A law: what a concentration was made from comes back, to the last bits.
    #[test]
    fn a_mass_fraction_comes_back_from_its_concentration() {
        for (t, x) in grid() {
            let cubic = Cubic::aqueous(t);
            let back = cubic.fraction(cubic.concentration(x));
            assert!((back - x).abs() <= 2e-15 * x, "{t} C, {x}: {back}");
        }
        for g_per_ml in [0.92, 1.0, 1.08, 1.45] {
            let cubic = Cubic::constant(g_per_ml);
            // 0.35 of a product of so many g/mL.
            assert!((cubic.concentration(0.35) - 0.35 * g_per_ml).abs() < 1e-15);
            assert!((cubic.fraction(0.35 * g_per_ml) - 0.35).abs() < 1e-15);
            assert_eq!((cubic.at(0.0), cubic.at(1.0)), (g_per_ml, g_per_ml));
        }
    }

    /// The first guess is good to 0.2 %, from nothing to 70 %: one step is enough from there.
    #[test]
    fn the_guess_is_near() {
        for (t, x) in grid().filter(|(_, x)| *x > 0.0) {
            let cubic = Cubic::aqueous(t);
            let guess = powers(&cubic.guess, cubic.concentration(x)) * cubic.concentration(x);
            assert!((guess / x - 1.0).abs() < 2.5e-3, "{t} C, {x}: {guess}");
        }
    }
}
