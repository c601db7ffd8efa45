use super::{InvalidColour, Lab, White, Xyz, observer::BANDS, observer::weights};

/// Reflectance of hair from 400 to 700 nm in steps of 10 nm, each from 0 to 1.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Reflectance, White};
///
/// let grey = Reflectance::new([0.5; 31])?;
/// let lab = grey.lab(White::D65TenDegree);
/// assert!((lab.l() - 76.07).abs() < 0.01 && lab.chroma() < 0.01);
/// # Ok::<(), foilwork::colour::InvalidColour>(())
/// ```
///
/// # Source
///
/// Daylight D65 of ISO/CIE 11664-2, observers of ISO/CIE 11664-1: see
/// [`D65_SPECTRUM`](crate::source::citations::colour::D65_SPECTRUM) and
/// [`OBSERVERS`](crate::source::citations::colour::OBSERVERS).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reflectance([f64; BANDS]);

impl Reflectance {
    /// Takes the reflectance at 400, 410, ... 700 nm.
    ///
    /// # Errors
    ///
    /// [`InvalidColour`] unless each is from 0 to 1.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::Reflectance;
    ///
    /// let error = Reflectance::new([1.5; 31]).map_err(|error| error.to_string());
    /// assert_eq!(error, Err("invalid reflectance (got 1.5): must be from 0 to 1".to_owned()));
    /// ```
    pub fn new(bands: [f64; BANDS]) -> Result<Self, InvalidColour> {
        for value in bands {
            if !(0.0..=1.0).contains(&value) {
                return Err(InvalidColour { coordinate: "reflectance", value, allowed: "from 0 to 1" });
            }
        }
        Ok(Self(bands))
    }

    /// X, Y, Z under daylight for an observer: the spectrum summed with light times matching function.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Reflectance, White};
    ///
    /// let white = Reflectance::new([1.0; 31])?.xyz(White::D65TwoDegree).to_array();
    /// assert!((white[0] - 0.95047).abs() < 1e-12 && (white[2] - 1.08883).abs() < 1e-12);
    /// # Ok::<(), foilwork::colour::InvalidColour>(())
    /// ```
    #[must_use]
    pub fn xyz(&self, white: White) -> Xyz {
        let sum = |weights: [f64; BANDS]| self.0.iter().zip(weights).map(|(value, weight)| value * weight).sum();
        let [x, y, z] = weights(white).map(sum);
        Xyz::raw([x, y, z], white)
    }

    /// CIELAB under daylight for an observer.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Reflectance, White};
    ///
    /// let white = Reflectance::new([1.0; 31])?.lab(White::default());
    /// assert!((white.l() - 100.0).abs() < 1e-9);
    /// # Ok::<(), foilwork::colour::InvalidColour>(())
    /// ```
    #[must_use]
    pub fn lab(&self, white: White) -> Lab {
        self.xyz(white).lab()
    }
}
