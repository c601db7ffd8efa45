use super::{
    Hue, Lab, Level, SETS, Swatch, UnderlyingPigment, Visibility, White,
    bands::Bands,
    fibre::Fibre,
    pigment::EUMELANIN,
    solve::solve,
    space::{lab_of, xyz_of},
    underlying_pigment,
};
use crate::choice::{Choice, UnknownChoice};
use schemars::JsonSchema;
use serde::Serialize;
use std::{fmt, str::FromStr};

/// Exposed pigment as a colourist names it: a hue of the wheel, and how strong it looks for its level.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Hue, SeenPigment, Visibility};
///
/// let seen: SeenPigment = "pale yellow".parse()?;
/// assert_eq!((seen.hue, seen.visibility), (Hue::Yellow, Some(Visibility::Pale)));
/// assert_eq!("strong yellow-orange".parse::<SeenPigment>()?.to_string(), "strong yellow-orange");
/// # Ok::<(), foilwork::choice::UnknownChoice>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SeenPigment {
    /// The hue.
    pub hue: Hue,
    /// How strong it looks; none when nobody said.
    pub visibility: Option<Visibility>,
}

/// Half a step of the wheel: how far a hue named by eye may be off, in degrees (assumed).
const HUE_BY_EYE: f64 = 12.0;
/// How far a strength named by eye may be off, as a factor (assumed).
const CHROMA_BY_EYE: f64 = 0.25;
/// What a step from one word of strength to the next changes (assumed).
const STEP_OF_STRENGTH: f64 = 0.75;

impl SeenPigment {
    /// How hair of this level looks when its pigment is named so: as light as its level, of the hue named, and as strong as
    /// the model expects at that level, more or less by the word. Stated, with wide bounds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Level, SeenPigment};
    ///
    /// let orange: SeenPigment = "orange".parse()?;
    /// assert_eq!(orange.look(Level::new(6.0)?).hue(), Some(Hue::Orange));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn look(&self, level: Level) -> Swatch {
        let darker = Level::clamped(level.number() - 4.0);
        let expected = Swatch::lightened(darker, level);
        let chroma = lab_of(expected.best_sample()).chroma() * self.strength_at(level);
        let mut turn = 0;
        Swatch::stated(expected.samples.map(|sample| {
            let (hue, strength) = NAMED.get(turn % NAMED.len()).copied().unwrap_or((0.0, 0.0));
            turn += 1;
            let angle = (self.hue.lab_angle_degrees() + hue * HUE_BY_EYE).to_radians();
            let chroma = chroma * (1.0 + strength * CHROMA_BY_EYE);
            // The angles of the wheel are for the 2 degree observer.
            xyz_of(Lab::raw(lab_of(sample).l(), chroma * angle.cos(), chroma * angle.sin(), White::D65TwoDegree))
        }))
    }

    /// The same as an entry of the list: the hue seen, and the complement that neutralises it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Level, SeenPigment};
    ///
    /// let orange: SeenPigment = "orange".parse()?;
    /// assert_eq!(orange.listed(Level::new(7.0)?).neutraliser, Some((Hue::Blue, Hue::Blue)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn listed(&self, level: Level) -> UnderlyingPigment {
        let (_, expected) = underlying_pigment(level).value.visibility;
        let (hue, visibility) = (self.hue, self.visibility.unwrap_or(expected));
        UnderlyingPigment {
            level,
            words: (hue.words(), hue.words()),
            exposed: (hue, hue),
            neutraliser: Some((hue.complement(), hue.complement())),
            visibility: (visibility, visibility),
        }
    }

    /// How much stronger than the list expects at this level, as a factor.
    fn strength_at(self, level: Level) -> f64 {
        let rank = |word: Visibility| match word {
            Visibility::Hidden | Visibility::Dark | Visibility::Strong => 0,
            Visibility::Weak | Visibility::Pale => 1,
            Visibility::VeryPale => 2,
        };
        let (_, expected) = underlying_pigment(level).value.visibility;
        let weaker = self.visibility.map_or(0, |seen| rank(seen) - rank(expected));
        STEP_OF_STRENGTH.powi(weaker)
    }
}

/// Which way hue and strength are off in each sample, the best first.
const NAMED: [(f64, f64); SETS] = [
    (0.0, 0.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (-1.0, -1.0),
    (1.0, 1.0),
    (-1.0, 1.0),
    (1.0, -1.0),
    (0.5, 0.0),
    (-0.5, 0.0),
    (0.0, 0.5),
    (0.0, -0.5),
    (0.0, 1.0),
    (0.0, -1.0),
    (0.0, 0.0),
];

impl fmt::Display for SeenPigment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.visibility {
            Some(word) => write!(f, "{word} {}", self.hue),
            None => self.hue.fmt(f),
        }
    }
}

/// Reads `orange`, `pale yellow`, `very pale yellow`, `strong red-orange`, `weak orange` or `red-brown`: the hues of the
/// trade's list alone, for lightening exposes no other.
impl FromStr for SeenPigment {
    type Err = UnknownChoice;

    fn from_str(text: &str) -> Result<Self, UnknownChoice> {
        let lower = text.trim().to_lowercase();
        for word in Visibility::ALL.iter().rev() {
            if let Some(rest) = lower.strip_prefix(Choice::words(*word)).filter(|rest| rest.starts_with([' ', '-'])) {
                let (hue, _) = listed_hue(rest.trim_start_matches([' ', '-']), text)?;
                return Ok(Self { hue, visibility: Some(*word) });
            }
        }
        let (hue, visibility) = listed_hue(&lower, text)?;
        Ok(Self { hue, visibility })
    }
}

/// What is said of colours that are wanted rather than exposed.
fn said_of_tones(word: &str) -> Option<&'static str> {
    Some(match word {
        "gold" | "golden" => "gold is yellow, or yellow-orange where it is deep",
        "brass" | "brassy" => "brass is yellow-orange or orange",
        "copper" | "coppery" => "copper is orange or red-orange",
        _ => return None,
    })
}

/// The hues that the list of exposed pigment has, darkest first.
const LISTED: &[&str] = &["red-brown", "red", "red-orange", "orange", "yellow-orange", "yellow"];

/// A hue of the list; of red-brown, the list says that it is dark.
fn listed_hue(word: &str, whole: &str) -> Result<(Hue, Option<Visibility>), UnknownChoice> {
    if ["red-brown", "red brown"].contains(&word) {
        return Ok((Hue::Red, Some(Visibility::Dark)));
    }
    let unlisted =
        |got: &str, hint| UnknownChoice { what: "exposed pigment", got: got.to_owned(), choices: LISTED, hint };
    match word.parse::<Hue>() {
        Ok(hue @ (Hue::Red | Hue::RedOrange | Hue::Orange | Hue::YellowOrange | Hue::Yellow)) => Ok((hue, None)),
        Ok(_) => {
            let way_out = "lightening exposes no other hue; a green, blue or violet cast is no exposed pigment: read the \
                           hair with an instrument, `measured`";
            Err(unlisted(whole.trim(), Some(way_out)))
        }
        Err(_) => Err(unlisted(word, said_of_tones(word))),
    }
}

/// A smooth spectrum with these X, Y, Z: natural hair of the same luminance, bent by an exponential of second degree in the
/// wavelength. Colours far from hair may be met only nearly.
pub(crate) fn spectrum_of(wanted: [f64; 3], fibre: &Fibre) -> Bands {
    let [_, luminance, _] = wanted;
    let (target, _) = fibre.depth(luminance);
    let pigment = solve(0.0, -12.0, 6.0, |less| {
        let melanin = *EUMELANIN * (-less).exp();
        let (luminance, slope) = fibre.luminance(&melanin, &(melanin * -1.0));
        let (depth, steepness) = fibre.depth(luminance);
        (depth - target, steepness * slope)
    });
    let place = |nm: f64| (nm - 550.0) / 150.0;
    let powers = [Bands::at(|_| 1.0), Bands::at(place), Bands::at(|nm| place(nm).powi(2))];
    let mut seen = fibre.reflectance(&(*EUMELANIN * (-pigment).exp()));
    for _ in 0..30 {
        let got = seen.xyz();
        let off = subtract(wanted, got);
        if off.iter().all(|off| off.abs() < 1e-10) {
            break;
        }
        let weighed = powers.map(|power| seen.with(&power, |a, b| a * b).xyz());
        let Some(by) = solved(weighed, off) else { break };
        // A step of more than a factor of e anywhere is shortened.
        let longest = by.iter().map(|c| c.abs()).sum::<f64>().max(1.0);
        let bend = powers.iter().zip(by).fold(Bands::ZERO, |all, (power, c)| all + *power * (c / longest));
        seen = seen.with(&bend, |seen, bend| seen * bend.exp());
    }
    seen
}

const fn subtract([a, b, c]: [f64; 3], [d, e, f]: [f64; 3]) -> [f64; 3] {
    [a - d, b - e, c - f]
}

/// Three equations in three unknowns by Cramer's rule; the columns are what each unknown contributes.
fn solved([a, b, c]: [[f64; 3]; 3], right: [f64; 3]) -> Option<[f64; 3]> {
    let determinant = |[a, b, c]: [f64; 3], [d, e, f]: [f64; 3], [g, h, i]: [f64; 3]| {
        a * (e * i - f * h) - d * (b * i - c * h) + g * (b * f - c * e)
    };
    let all = determinant(a, b, c);
    (all.abs() > 1e-300)
        .then(|| [determinant(right, b, c) / all, determinant(a, right, c) / all, determinant(a, b, right) / all])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{fibre::MODELS, solve::looks};

    // Measured over greys as light as hair; at the ends of what hair can be the bracket is halved instead.
    #[test]
    fn a_spectrum_begins_at_its_luminance_after_few_looks() {
        let fibre = &MODELS[0].fibre;
        let grey = |y: f64| [0.948 * y, y, 1.073 * y];
        let most = [0.05, 0.1, 0.2, 0.3].map(|y| looks::of(|| spectrum_of(grey(y), fibre)));
        assert_eq!(most, [3; 4]);
    }

    // Hue and strength named by eye are off by 12 degrees and a quarter, each to both sides, as said at the constants; samples are kept
    // in single precision.
    #[test]
    fn what_is_named_by_eye_is_off_to_both_sides() {
        let orange: SeenPigment = "orange".parse().unwrap();
        // Seen as the wheel is: for the 2 degree observer.
        let seen = |sample| lab_of(sample).adapted_to(White::D65TwoDegree);
        let [best, others @ ..] = orange.look(Level::clamped(6.0)).samples.map(seen);
        let angle = |lab: &Lab| lab.b().atan2(lab.a()).to_degrees();
        let of =
            |some: fn(f64, f64) -> f64, values: &dyn Fn(&Lab) -> f64| others.iter().map(values).reduce(some).unwrap();
        let strength = |lab: &Lab| lab.chroma() / best.chroma();
        assert!((of(f64::min, &strength) - 0.75).abs() < 1e-6 && (of(f64::max, &strength) - 1.25).abs() < 1e-6);
        let turn = |lab: &Lab| angle(lab) - angle(&best);
        assert!((of(f64::min, &turn) + 12.0).abs() < 1e-4 && (of(f64::max, &turn) - 12.0).abs() < 1e-4);
    }
}
