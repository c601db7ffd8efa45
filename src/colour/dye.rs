use super::{
    Hue, Lab, Level, Shade, Tone, White,
    bands::Bands,
    fibre::Model,
    pigment::{EUMELANIN, Melanin},
    solve::solve,
};
use std::sync::LazyLock;

/// The dyes of the three primaries, yellow, red and blue, as absorptions.
///
/// Together, in equal parts, they absorb as eumelanin does: in the words of the trade, the three primaries make neutral
/// brown. So does every pair of complements. Yellow takes the short wavelengths, red the middle, blue the long ones; where
/// they are cut, and how softly, is chosen so that the neutralising tone that the trade names for a level is the one that
/// brings the modelled exposed pigment nearest to natural hair.
static PRIMARIES: LazyLock<[Bands; 3]> = LazyLock::new(|| {
    const YELLOW_TO_RED_NM: f64 = 505.0;
    const RED_TO_BLUE_NM: f64 = 580.0;
    const SOFTNESS_NM: f64 = 15.0;
    let below = |nm: f64, edge: f64| 1.0 / (1.0 + ((nm - edge) / SOFTNESS_NM).exp());
    let yellow = Bands::at(|nm| below(nm, YELLOW_TO_RED_NM));
    let blue = Bands::at(|nm| 1.0 - below(nm, RED_TO_BLUE_NM));
    let red = Bands::at(|nm| (below(nm, RED_TO_BLUE_NM) - below(nm, YELLOW_TO_RED_NM)).max(0.0));
    [yellow, red, blue].map(|part| part.with(&EUMELANIN, |part, all| part * all * 3.0))
});

impl Hue {
    /// The CIELAB hue angle that stands for this hue, in degrees (D65, 2 degree observer).
    ///
    /// The mean angle of two chips of the Munsell renotation (values 5 and 6, chroma 6, adapted from C to D65) of the
    /// Munsell hue closest to the trade's word: 5R, 10R, 5YR, 10YR, 5Y, 5GY, 5G, 5BG, 2.5PB, 7.5PB, 10PB and 10P.
    /// The angles are published; which chip stands for which word is assumed.
    ///
    /// # Source
    ///
    /// [`MUNSELL`](crate::source::citations::colour::MUNSELL).
    #[must_use]
    pub const fn lab_angle_degrees(self) -> f64 {
        match self {
            Self::Red => 26.4,
            Self::RedOrange => 43.1,
            Self::Orange => 60.5,
            Self::YellowOrange => 76.3,
            Self::Yellow => 91.1,
            Self::YellowGreen => 117.7,
            Self::Green => 161.6,
            Self::BlueGreen => 188.4,
            Self::Blue => 259.6,
            Self::BlueViolet => 286.0,
            Self::Violet => 297.1,
            Self::RedViolet => 333.9,
        }
    }

    /// The hue whose angle is closest to that of a colour, or nothing for a colour so grey (chroma below 2) that a
    /// repeated reading would change its hue.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Hue, Lab, White};
    ///
    /// let angle = Hue::Yellow.lab_angle_degrees().to_radians();
    /// let brassy = Lab::new(70.0, 30.0 * angle.cos(), 30.0 * angle.sin(), White::D65TwoDegree)?;
    /// assert_eq!(Hue::nearest_to(brassy), Some(Hue::Yellow));
    /// assert_eq!(Hue::nearest_to(Lab::new(70.0, 0.5, 0.5, White::D65TwoDegree)?), None); // too grey to tell
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn nearest_to(lab: Lab) -> Option<Self> {
        if lab.chroma() < 2.0 {
            return None;
        }
        let angle = lab.adapted_to(White::D65TwoDegree).lch().hue_degrees();
        let apart = |hue: &Self| {
            let apart = (hue.lab_angle_degrees() - angle).abs();
            apart.min(360.0 - apart)
        };
        Self::ALL.iter().copied().min_by(|a, b| apart(a).total_cmp(&apart(b)))
    }

    /// Parts of yellow, red and blue that it is mixed from, adding up to 1: a hue is the mean of its neighbours.
    pub(crate) const fn primaries(self) -> [f64; 3] {
        match self {
            Self::Red => [0.0, 1.0, 0.0],
            Self::RedOrange => [0.25, 0.75, 0.0],
            Self::Orange => [0.5, 0.5, 0.0],
            Self::YellowOrange => [0.75, 0.25, 0.0],
            Self::Yellow => [1.0, 0.0, 0.0],
            Self::YellowGreen => [0.75, 0.0, 0.25],
            Self::Green => [0.5, 0.0, 0.5],
            Self::BlueGreen => [0.25, 0.0, 0.75],
            Self::Blue => [0.0, 0.0, 1.0],
            Self::BlueViolet => [0.0, 0.25, 0.75],
            Self::Violet => [0.0, 0.5, 0.5],
            Self::RedViolet => [0.0, 0.75, 0.25],
        }
    }
}

impl Tone {
    /// A unit of dye in the proportions of the tone; `None` when it is neutral.
    pub(super) fn dye(&self) -> Option<Bands> {
        let mixed = self.parts().iter().map(|part| {
            let parts = part.hue.primaries().into_iter().zip(&*PRIMARIES);
            let dye = parts.fold(Bands::ZERO, |all, (share, primary)| all + *primary * share);
            dye * (part.share_percent / 100.0)
        });
        mixed.reduce(|all, one| all + one)
    }
}

/// What a colour of this level and tone adds to a fibre at full strength: on white hair as light as natural hair of its
/// level, the tone making up its share of the depth and neutral pigment the rest.
pub(crate) fn deposit(level: Level, tone: &Tone, model: &Model) -> Bands {
    // The label states the level: the uncertainty of reading a head by eye is not part of it.
    let melanin = Melanin::of_label(level, model);
    let neutral = melanin.absorption(model);
    let Some(dye) = tone.dye() else { return neutral };
    let share = model.with.tone_share;
    let mixed = neutral * (1.0 - share) + dye * (share * (melanin.eumelanin + melanin.pheomelanin));
    as_light_as(&neutral, &mixed, model)
}

/// More or less of `mixed`, so that white hair looks as light under it as under `neutral`.
fn as_light_as(neutral: &Bands, mixed: &Bands, model: &Model) -> Bands {
    let (wanted, _) = model.fibre.luminance(neutral, &Bands::ZERO);
    let (target, _) = model.fibre.depth(wanted);
    // In powers of e, from a twentieth to twenty times as much; less of it, less depth.
    let less = solve(0.0, -3.0, 3.0, |less| {
        let scaled = *mixed * (-less).exp();
        let (luminance, slope) = model.fibre.luminance(&scaled, &(scaled * -1.0));
        let (depth, steepness) = model.fibre.depth(luminance);
        (depth - target, steepness * slope)
    });
    *mixed * (-less).exp()
}

impl Shade {
    pub(crate) fn deposit(&self, model: &Model) -> Bands {
        deposit(self.level(), self.tone(), model) * self.strength().fraction()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{fibre::MODELS, solve::looks};

    // Measured over every hue and set.
    #[test]
    fn a_shade_is_as_light_as_its_level_after_few_looks() {
        let mut most = 0;
        for (hue, model) in Hue::ALL.iter().flat_map(|hue| MODELS.iter().map(move |model| (hue, model))) {
            for level in [2.0, 5.0, 8.0, 11.0].map(Level::clamped) {
                most = most.max(looks::of(|| deposit(level, &Tone::of(*hue), model)));
            }
        }
        assert_eq!(most, 4);
    }

    fn of(tone: &Tone) -> Vec<f64> {
        tone.dye().unwrap_or(Bands::ZERO).0.map(wide::f64x4::to_array).concat()
    }

    /// In equal parts the primaries absorb as eumelanin does, at every wavelength. Yellow is cut at 505 nm and blue at 580, softly over
    /// 15: by hand, at 580 nm half is blue; at 540 nm 1 / (1 + e^(-40/15)) - 1 / (1 + e^(35/15)) = 0.9350 - 0.0884 is red; at 500 nm
    /// 1 / (1 + e^(-5/15)) = 0.5826 is yellow.
    #[test]
    fn primaries_are_parts_of_eumelanin() {
        let all = EUMELANIN.0.map(wide::f64x4::to_array).concat();
        let [yellow, red, blue] = [Hue::Yellow, Hue::Red, Hue::Blue].map(|hue| of(&Tone::of(hue)));
        for (place, all) in all.iter().enumerate() {
            let sum = yellow[place] + red[place] + blue[place];
            assert!((sum - 3.0 * all).abs() < 1e-9, "{place}: {sum}");
        }
        let part = |dye: &[f64], nm: usize| dye[(nm - 400) / 10] / all[(nm - 400) / 10] / 3.0;
        assert!((part(&blue, 580) - 0.5).abs() < 1e-9);
        assert!((part(&red, 540) - 0.8466).abs() < 1e-4 && (part(&yellow, 500) - 0.5826).abs() < 1e-4);
        // A tone of two hues is both dyes by their shares.
        let both = of(&Tone::from_hues([Hue::Yellow, Hue::Blue]));
        for (place, both) in both.iter().enumerate() {
            assert!((both - (2.0 * yellow[place] + blue[place]) / 3.0).abs() < 1e-9);
        }
    }

    /// Of the twelve hues three are primaries, and every other is the mean of its neighbours.
    #[test]
    fn hues_between_primaries_are_means() {
        for (place, hue) in Hue::ALL.iter().enumerate() {
            let parts = hue.primaries();
            let own = [Hue::Yellow, Hue::Red, Hue::Blue].into_iter().position(|primary| primary == *hue);
            let want = own.map_or_else(
                || {
                    let beside = |steps: usize| Hue::ALL[(place + steps) % 12].primaries();
                    let (before, after) = (beside(11), beside(1));
                    [0, 1, 2].map(|part| f64::midpoint(before[part], after[part]))
                },
                |own| [0, 1, 2].map(|part| if part == own { 1.0 } else { 0.0 }),
            );
            assert_eq!(parts, want, "{hue}");
        }
    }

    /// Angles of 26.4 for red and 333.9 for red-violet: at 0 degrees red-violet is 26.1 away and red 26.4, and at 1 degree red is nearer.
    /// A chroma of 2 has a hue, a smaller one has none.
    #[test]
    fn the_nearest_hue_is_found_round_the_circle() {
        let at = |chroma: f64, degrees: f64| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            Lab::new(60.0, chroma * cos, chroma * sin, White::D65TwoDegree).ok().and_then(Hue::nearest_to)
        };
        let degrees = [0.0, 359.0, 1.0, 330.0, 27.0, 90.0, 180.0, 270.0];
        let want = [
            Hue::RedViolet,
            Hue::RedViolet,
            Hue::Red,
            Hue::RedViolet,
            Hue::Red,
            Hue::Yellow,
            Hue::BlueGreen,
            Hue::Blue,
        ];
        assert_eq!(degrees.map(|degrees| at(20.0, degrees)), want.map(Some));
        assert_eq!([1.9, 2.1].map(|chroma| at(chroma, 90.0)), [None, Some(Hue::Yellow)]);
        assert_eq!(Lab::new(60.0, 2.0, 0.0, White::D65TwoDegree).ok().and_then(Hue::nearest_to), Some(Hue::RedViolet));
    }

    // Common practice: complements mix to neutral. Their parts of the three primaries add up to equal parts.
    #[test]
    fn complements_are_equal_parts_of_the_primaries() {
        for hue in Hue::ALL {
            let (one, other) = (hue.primaries(), hue.complement().primaries());
            // A secondary is two primaries, so it counts twice against the primary that it lacks.
            let weighed =
                |share: f64| one.iter().zip(other).map(|(a, b)| a * share + b * (1.0 - share)).collect::<Vec<_>>();
            let spread = |parts: &[f64]| parts.iter().map(|part| (part - 1.0 / 3.0).abs()).fold(0.0, f64::max);
            let best = (0..=300).map(|i| spread(&weighed(f64::from(i) / 300.0))).fold(1.0, f64::min);
            assert!(best < 0.12, "{hue}: {best}");
        }
    }
}
