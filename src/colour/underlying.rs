use super::{Hue, Level, Swatch};
use crate::{
    choice::choice,
    source::{Basis, COMMON_PRACTICE, Sourced},
};
use serde::Serialize;

choice! {
    /// How strongly the exposed pigment shows, in the words of the trade, weakest last.
    Visibility: "visibility" {
        /// Hidden by the depth of the hair.
        Hidden = "hidden",
        /// Dark and strong.
        Dark = "dark",
        /// Strong.
        Strong = "strong",
        /// Weak for its level: less than the list expects.
        Weak = "weak",
        /// Pale.
        Pale = "pale",
        /// Very pale: a very dilute neutralising tone is enough.
        VeryPale = "very-pale" => "very pale",
    }
}

/// The warm colour left when hair is lightened to a level, and the tone that counteracts it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct UnderlyingPigment {
    /// The level asked about.
    pub level: Level,
    /// The words of the list, from the darker row to the lighter one (the same for a whole level).
    pub words: (&'static str, &'static str),
    /// The exposed hue as a range, from the darker row to the lighter one; they coincide for a whole level.
    pub exposed: (Hue, Hue),
    /// The neutralising hue as a range in the same order, or nothing where none is visible.
    pub neutraliser: Option<(Hue, Hue)>,
    /// How strongly it shows, from the darker row to the lighter one.
    pub visibility: (Visibility, Visibility),
}

struct Row {
    words: &'static str,
    exposed: Hue,
    neutralised: bool,
    visibility: Visibility,
}

const fn row(words: &'static str, exposed: Hue, visibility: Visibility) -> Row {
    Row { words, exposed, neutralised: !matches!(visibility, Visibility::Hidden), visibility }
}

/// From level 1. Common practice; a printed trade booklet gives the same for levels 3 to 10.
const ROWS: [Row; 10] = [
    row("black (very dark red-brown)", Hue::Red, Visibility::Hidden),
    row("very dark red-brown", Hue::Red, Visibility::Dark),
    row("dark red (red-brown)", Hue::Red, Visibility::Dark),
    row("red", Hue::Red, Visibility::Strong),
    row("red-orange", Hue::RedOrange, Visibility::Strong),
    row("orange", Hue::Orange, Visibility::Strong),
    row("yellow-orange", Hue::YellowOrange, Visibility::Strong),
    row("yellow", Hue::Yellow, Visibility::Strong),
    row("pale yellow", Hue::Yellow, Visibility::Pale),
    row("very pale yellow", Hue::Yellow, Visibility::VeryPale),
];

/// The pigment exposed when natural hair is lightened to `level`, with the hue that neutralises it.
///
/// Above level 10 no list goes on; the last row is repeated there and the basis becomes "assumed".
///
/// ```
/// use foilwork::colour::{Hue, Level, underlying_pigment};
///
/// let six = underlying_pigment(Level::new(6.0)?);
/// assert_eq!(six.value.words.0, "orange");
/// assert_eq!(six.value.neutraliser, Some((Hue::Blue, Hue::Blue)));
/// let between = underlying_pigment(Level::new(6.5)?).value;
/// assert_eq!(between.to_string(), "orange to yellow-orange, neutralised by blue to blue-violet");
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
///
/// # Source
///
/// Common practice, hue by hue; the neutralising hue is the complement on the wheel.
#[must_use]
pub fn underlying_pigment(level: Level) -> Sourced<UnderlyingPigment> {
    let number = level.number().min(10.0);
    let [.., last] = &ROWS;
    let at = |whole: f64| ROWS.get(whole as usize - 1).unwrap_or(last);
    let (darker, lighter) = (at(number.floor()), at(number.ceil()));
    let neutraliser = match (darker.neutralised, lighter.neutralised) {
        (true, true) => Some((darker.exposed.complement(), lighter.exposed.complement())),
        (false, true) if number > 1.5 => Some((lighter.exposed.complement(), lighter.exposed.complement())),
        _ => None,
    };
    let value = UnderlyingPigment {
        level,
        words: (darker.words, lighter.words),
        exposed: (darker.exposed, lighter.exposed),
        neutraliser,
        visibility: (darker.visibility, lighter.visibility),
    };
    let basis = if level > Level::LIGHTEST_OF_TEN { Basis::Assumed } else { Basis::CommonPractice };
    Sourced { value, basis, citation: Some(&COMMON_PRACTICE) }
}

impl UnderlyingPigment {
    /// The words of the list alone, such as `orange to yellow-orange`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, underlying_pigment};
    ///
    /// assert_eq!(underlying_pigment(Level::new(9.0)?).value.shown(), "pale yellow");
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn shown(&self) -> String {
        let (darker, lighter) = self.words;
        if darker == lighter { darker.to_owned() } else { format!("{darker} to {lighter}") }
    }

    /// How much shows, as a model with bounds: hair of a natural level lightened to this one. Its
    /// [`chroma`](Swatch::chroma) is the strength of the warmth that a toner meets.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, underlying_pigment};
    ///
    /// let (natural, orange) = (Level::new(4.0)?, underlying_pigment(Level::new(6.0)?).value);
    /// assert!(orange.modelled_from(natural).chroma().best().chroma() > 10.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn modelled_from(&self, natural: Level) -> Swatch {
        Swatch::lightened(natural, self.level)
    }
}

impl std::fmt::Display for UnderlyingPigment {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (darker, lighter) = self.words;
        f.write_str(darker)?;
        if darker != lighter {
            write!(f, " to {lighter}")?;
        }
        match self.neutraliser {
            None => f.write_str(", no visible warmth to neutralise"),
            Some((a, b)) if a == b => write!(f, ", neutralised by {a}"),
            Some((a, b)) => write!(f, ", neutralised by {a} to {b}"),
        }
    }
}
