//! Density as a cubic in the mass fraction, at one temperature: the form every crossing between mass and volume uses.

/// `rho(x) = a + b x + c x2 + d x3` in g/mL, with `x` the mass fraction from 0 to 1.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cubic {
    pub a: f64,
    pub b: f64,
    pub c: f64,
    pub d: f64,
}

impl Cubic {
    /// Aqueous peroxide at a temperature in degrees Celsius.
    ///
    /// Water after Kell; the increments are the cited coefficients, each a cubic in the temperature.
    #[inline]
    pub(crate) const fn aqueous(t: f64) -> Self {
        Self {
            a: water(t),
            b: 0.397_63 + t * (-2.873_2e-3 + t * (3.248_8e-5 + t * -1.636_3e-7)),
            c: 0.022_06 + t * (3.535_7e-3 + t * (-6.094_7e-5 + t * 3.616_5e-7)),
            d: 0.051_87 + t * (-1.941_4e-3 + t * (3.906_1e-5 + t * -2.55e-7)),
        }
    }

    /// A density that does not depend on the strength: the product was measured as it is.
    #[inline]
    pub(crate) const fn constant(g_per_ml: f64) -> Self {
        Self { a: g_per_ml, b: 0.0, c: 0.0, d: 0.0 }
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
    /// The start solves the problem with the density taken as a straight line; three Newton steps then reach the last
    /// bit everywhere from 0 to 70 % and 0 to 50 C. No branch, so that columns vectorise.
    #[inline]
    pub(crate) fn fraction(&self, y: f64) -> f64 {
        let slope = self.b + 0.45 * self.c + 0.25 * self.d;
        let mut x = 2.0 * y / (self.a + (self.a * self.a + 4.0 * slope * y).sqrt());
        for _ in 0..3 {
            let excess = self.concentration(x) - y;
            let growth = self.a + x * (2.0 * self.b + x * (3.0 * self.c + x * 4.0 * self.d));
            x -= excess / growth;
        }
        x
    }
}

/// Density of water in g/mL.
#[inline]
const fn water(t: f64) -> f64 {
    let above = 999.839_52
        + t * (16.945_176 + t * (-7.987_040_1e-3 + t * (-46.170_461e-6 + t * (105.563_02e-9 + t * -280.542_53e-12))));
    above / (1.0 + 16.879_85e-3 * t) / 1000.0
}
