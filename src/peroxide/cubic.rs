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
