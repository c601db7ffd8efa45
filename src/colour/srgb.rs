use super::{
    Lab, White,
    screen_byte::{byte, can_be_shown},
    white::TwoDegree,
};
use palette::{LinSrgb, Srgb as Encoded, convert::FromColorUnclamped};
use std::{fmt, str::FromStr};

/// A colour for a screen: sRGB with 8 bits for each channel.
///
/// ```
/// use foilwork::colour::{Lab, Srgb, White};
///
/// let yellow: Srgb = "#f2d16b".parse()?;
/// assert_eq!(yellow.to_string(), "#f2d16b");
/// assert_eq!(Srgb::nearest(yellow.lab()), (yellow, true));
/// # Ok::<(), foilwork::colour::NotHex>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Srgb {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

/// Text that is not a colour in hexadecimal.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("invalid sRGB colour {0:?}: write six hexadecimal digits after a #, for example #f2d16b")]
pub struct NotHex(pub String);

impl Srgb {
    /// The nearest colour a screen can show, and whether it is the colour itself rather than the edge of the gamut.
    ///
    /// Coordinates for 10 degrees are first adapted to the white of sRGB.
    #[must_use]
    pub fn nearest(lab: Lab) -> (Self, bool) {
        let [x, y, z] = lab.adapted_to(White::D65TwoDegree).xyz().to_array();
        let light = LinSrgb::from_color_unclamped(palette::Xyz::<TwoDegree, f64>::new(x, y, z));
        let within = [light.red, light.green, light.blue].into_iter().all(can_be_shown);
        (Self { red: byte(light.red), green: byte(light.green), blue: byte(light.blue) }, within)
    }

    /// In CIELAB for the white of sRGB.
    #[must_use]
    pub fn lab(self) -> Lab {
        let encoded = Encoded::new(self.red, self.green, self.blue).into_format::<f64>();
        let lab = palette::Lab::<TwoDegree, f64>::from_color_unclamped(encoded.into_linear());
        Lab::raw(lab.l, lab.a, lab.b, White::D65TwoDegree)
    }
}

impl fmt::Display for Srgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

impl FromStr for Srgb {
    type Err = NotHex;

    fn from_str(text: &str) -> Result<Self, NotHex> {
        let fail = || NotHex(text.to_owned());
        let digits = text.trim().strip_prefix('#').filter(|digits| digits.len() == 6 && digits.is_ascii());
        let byte = |at: usize| {
            digits.and_then(|digits| digits.get(at..at + 2)).and_then(|pair| u8::from_str_radix(pair, 16).ok())
        };
        match (byte(0), byte(2), byte(4)) {
            (Some(red), Some(green), Some(blue)) => Ok(Self { red, green, blue }),
            _ => Err(fail()),
        }
    }
}

/// As its text, such as `#f2d16b`.
impl serde::Serialize for Srgb {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl schemars::JsonSchema for Srgb {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Srgb".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "pattern": "^#[0-9a-f]{6}$" })
    }
}
