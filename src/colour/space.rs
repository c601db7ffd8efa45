use super::white::{TenDegree, TwoDegree, White};
use palette::{chromatic_adaptation::AdaptFromUnclamped, convert::FromColorUnclamped};
use serde::Serialize;
use std::fmt;

/// CIELAB coordinates with the white they are counted from.
///
/// ```
/// use foilwork::colour::{Lab, White};
///
/// let tress = Lab::new(23.04, 4.04, 4.72, White::D65TenDegree)?;
/// assert_eq!(format!("{tress:.1}"), "L* 23.0, a* 4.0, b* 4.7 (D65/10 degrees)");
/// assert!((tress.lch().hue_degrees() - 49.4).abs() < 0.1);
/// # Ok::<(), foilwork::colour::InvalidColour>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Lab {
    l: f64,
    a: f64,
    b: f64,
    white: White,
}

/// The same colour as lightness, chroma and hue angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Lch {
    l: f64,
    c: f64,
    h: f64,
    white: White,
}

/// CIE tristimulus values relative to a white of Y = 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Xyz {
    x: f64,
    y: f64,
    z: f64,
    white: White,
}

/// A number that cannot be the colour coordinate it was given for.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("invalid {coordinate} (got {value}): must be {allowed}")]
#[non_exhaustive]
pub struct InvalidColour {
    /// The coordinate.
    pub coordinate: &'static str,
    /// The number.
    pub value: f64,
    /// The allowed range in words.
    pub allowed: &'static str,
}

fn check(
    coordinate: &'static str,
    value: f64,
    low: f64,
    high: f64,
    allowed: &'static str,
) -> Result<(), InvalidColour> {
    if (low..=high).contains(&value) { Ok(()) } else { Err(InvalidColour { coordinate, value, allowed }) }
}

impl Lab {
    /// Takes L\*, a\* and b\*.
    ///
    /// # Errors
    ///
    /// [`InvalidColour`] unless L\* is from 0 to 100 and a\*, b\* are from -200 to 200.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Lab, White};
    ///
    /// let yellow = Lab::new(80.0, 3.0, 4.0, White::D65TenDegree)?;
    /// assert_eq!((yellow.l(), yellow.a(), yellow.b(), yellow.chroma()), (80.0, 3.0, 4.0, 5.0));
    /// assert_eq!(yellow.adapted_to(White::D65TwoDegree).white(), White::D65TwoDegree);
    /// assert!(yellow.xyz().to_array()[1] < 1.0); // a white has 1
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(l: f64, a: f64, b: f64, white: White) -> Result<Self, InvalidColour> {
        check("L*", l, 0.0, 100.0, "from 0 (black) to 100 (white)")?;
        check("a*", a, -200.0, 200.0, "from -200 to 200")?;
        check("b*", b, -200.0, 200.0, "from -200 to 200")?;
        Ok(Self { l, a, b, white })
    }

    pub(crate) const fn raw(l: f64, a: f64, b: f64, white: White) -> Self {
        Self { l, a, b, white }
    }

    /// Lightness L\*, from 0 to 100.
    #[must_use]
    pub const fn l(self) -> f64 {
        self.l
    }

    /// a\*: red when positive, green when negative.
    #[must_use]
    pub const fn a(self) -> f64 {
        self.a
    }

    /// b\*: yellow when positive, blue when negative.
    #[must_use]
    pub const fn b(self) -> f64 {
        self.b
    }

    /// The white it is counted from.
    #[must_use]
    pub const fn white(self) -> White {
        self.white
    }

    /// Chroma, the distance from the grey axis.
    #[must_use]
    pub fn chroma(self) -> f64 {
        self.a.hypot(self.b)
    }

    /// As lightness, chroma and hue angle.
    #[must_use]
    pub fn lch(self) -> Lch {
        let h = self.b.atan2(self.a).to_degrees().rem_euclid(360.0);
        Lch { l: self.l, c: self.chroma(), h, white: self.white }
    }

    /// As tristimulus values.
    #[must_use]
    pub fn xyz(self) -> Xyz {
        let Self { l, a, b, white } = self;
        match white {
            White::D65TwoDegree => {
                let xyz =
                    palette::Xyz::<TwoDegree, f64>::from_color_unclamped(palette::Lab::<TwoDegree, f64>::new(l, a, b));
                Xyz { x: xyz.x, y: xyz.y, z: xyz.z, white }
            }
            White::D65TenDegree => {
                let xyz =
                    palette::Xyz::<TenDegree, f64>::from_color_unclamped(palette::Lab::<TenDegree, f64>::new(l, a, b));
                Xyz { x: xyz.x, y: xyz.y, z: xyz.z, white }
            }
        }
    }

    /// The corresponding colour under another white (Bradford adaptation).
    #[must_use]
    pub fn adapted_to(self, white: White) -> Self {
        if self.white == white { self } else { self.xyz().adapted_to(white).lab() }
    }
}

impl Lch {
    /// Takes lightness, chroma and the hue angle in degrees.
    ///
    /// # Errors
    ///
    /// [`InvalidColour`] unless L\* is from 0 to 100, chroma from 0 to 200 and the angle from -360 to 360 degrees.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Lch, White};
    ///
    /// let green = Lch::new(50.0, 20.0, 180.0, White::D65TenDegree)?;
    /// assert_eq!((green.l(), green.chroma(), green.hue_degrees()), (50.0, 20.0, 180.0));
    /// assert!((green.lab().a() + 20.0).abs() < 1e-9 && green.lab().b().abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(l: f64, chroma: f64, hue_degrees: f64, white: White) -> Result<Self, InvalidColour> {
        check("L*", l, 0.0, 100.0, "from 0 (black) to 100 (white)")?;
        check("chroma", chroma, 0.0, 200.0, "from 0 to 200")?;
        check("hue angle", hue_degrees, -360.0, 360.0, "from -360 to 360 degrees")?;
        Ok(Self { l, c: chroma, h: hue_degrees.rem_euclid(360.0), white })
    }

    /// Lightness L\*, from 0 to 100.
    #[must_use]
    pub const fn l(self) -> f64 {
        self.l
    }

    /// Chroma, the distance from the grey axis.
    #[must_use]
    pub const fn chroma(self) -> f64 {
        self.c
    }

    /// Hue angle in degrees, from 0 (red-purple) through 90 (yellow), 180 (green) and 270 (blue).
    #[must_use]
    pub const fn hue_degrees(self) -> f64 {
        self.h
    }

    /// As rectangular coordinates.
    #[must_use]
    pub fn lab(self) -> Lab {
        let (sin, cos) = self.h.to_radians().sin_cos();
        Lab { l: self.l, a: self.c * cos, b: self.c * sin, white: self.white }
    }
}

impl Xyz {
    /// Takes X, Y and Z relative to a white of Y = 1.
    ///
    /// # Errors
    ///
    /// [`InvalidColour`] unless each is from 0 to 2.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{White, Xyz};
    ///
    /// // A perfect white reads L* 100 under its own light, and stays white under another.
    /// let (ten, two) = (White::D65TenDegree, White::D65TwoDegree);
    /// let white = Xyz::new(0.94811, 1.0, 1.07304, ten)?;
    /// assert_eq!((white.white(), white.to_array()[1]), (ten, 1.0));
    /// assert!((white.lab().l() - 100.0).abs() < 1e-6 && white.lab().chroma() < 0.01);
    /// assert!(white.adapted_to(two).lab().chroma() < 0.01);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(x: f64, y: f64, z: f64, white: White) -> Result<Self, InvalidColour> {
        check("X", x, 0.0, 2.0, "from 0 to 2, with Y = 1 for white")?;
        check("Y", y, 0.0, 2.0, "from 0 to 2, with Y = 1 for white")?;
        check("Z", z, 0.0, 2.0, "from 0 to 2, with Y = 1 for white")?;
        Ok(Self { x, y, z, white })
    }

    pub(crate) const fn raw([x, y, z]: [f64; 3], white: White) -> Self {
        Self { x, y, z, white }
    }

    /// X, Y, Z.
    #[must_use]
    pub const fn to_array(self) -> [f64; 3] {
        [self.x, self.y, self.z]
    }

    /// The white it is counted from.
    #[must_use]
    pub const fn white(self) -> White {
        self.white
    }

    /// As CIELAB.
    #[must_use]
    pub fn lab(self) -> Lab {
        let Self { x, y, z, white } = self;
        match white {
            White::D65TwoDegree => {
                let xyz = palette::Xyz::<TwoDegree, f64>::new(x, y, z);
                let lab = palette::Lab::<TwoDegree, f64>::from_color_unclamped(xyz);
                Lab { l: lab.l, a: lab.a, b: lab.b, white }
            }
            White::D65TenDegree => {
                let xyz = palette::Xyz::<TenDegree, f64>::new(x, y, z);
                let lab = palette::Lab::<TenDegree, f64>::from_color_unclamped(xyz);
                Lab { l: lab.l, a: lab.a, b: lab.b, white }
            }
        }
    }

    /// The corresponding colour under another white (Bradford adaptation).
    #[must_use]
    pub fn adapted_to(self, white: White) -> Self {
        let Self { x, y, z, .. } = self;
        let (two, ten) = (palette::Xyz::<TwoDegree, f64>::new(x, y, z), palette::Xyz::<TenDegree, f64>::new(x, y, z));
        match (self.white, white) {
            (White::D65TwoDegree, White::D65TenDegree) => {
                let xyz = palette::Xyz::<TenDegree, f64>::adapt_from_unclamped(two);
                Self { x: xyz.x, y: xyz.y, z: xyz.z, white }
            }
            (White::D65TenDegree, White::D65TwoDegree) => {
                let xyz = palette::Xyz::<TwoDegree, f64>::adapt_from_unclamped(ten);
                Self { x: xyz.x, y: xyz.y, z: xyz.z, white }
            }
            _ => self,
        }
    }
}

impl fmt::Display for Lab {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = f.precision().unwrap_or(2);
        let Self { l, a, b, white } = self;
        write!(f, "L* {l:.digits$}, a* {a:.digits$}, b* {b:.digits$} ({white})")
    }
}

impl fmt::Display for Lch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = f.precision().unwrap_or(2);
        let Self { l, c, h, white } = self;
        write!(f, "L* {l:.digits$}, C* {c:.digits$}, h {h:.digits$} degrees ({white})")
    }
}

/// CIELAB of tristimulus values for D65 and 10 degrees.
pub(crate) fn lab_of(xyz: [f64; 3]) -> Lab {
    Xyz::raw(xyz, White::D65TenDegree).lab()
}

/// Tristimulus values for D65 and 10 degrees.
pub(crate) fn xyz_of(lab: Lab) -> [f64; 3] {
    lab.adapted_to(White::D65TenDegree).xyz().to_array()
}
