use super::{
    Hue, Lab, Level, Shade, Tone, White,
    absorption::Absorption,
    assumptions::{Assumptions, ENSEMBLE},
    pigment::Melanin,
    srgb::{lab_of_linear, linear_of_lab},
};

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

    /// A unit of dye of this hue: it absorbs what a surface of lightness 60 and chroma 25 of the same hue angle absorbs,
    /// less the part that is common to all light. Equal amounts change chroma equally, whatever the hue.
    pub(crate) fn dye(self) -> Absorption {
        let (sin, cos) = self.lab_angle_degrees().to_radians().sin_cos();
        let seen = linear_of_lab(Lab::raw(60.0, 25.0 * cos, 25.0 * sin, White::D65TwoDegree));
        let brightest = seen.into_iter().fold(f64::MIN_POSITIVE, f64::max);
        Absorption(seen.map(|channel| (brightest / channel.max(1e-6)).ln()))
    }
}

impl Tone {
    /// A unit of dye in the proportions of the tone; `None` when it is neutral.
    fn dye(&self) -> Option<Absorption> {
        let mixed = self.parts().iter().map(|part| part.hue.dye() * (part.share_percent / 100.0));
        mixed.reduce(|all, one| all + one)
    }
}

/// Mean depth of a unit of dye over the twelve hues, so that a tone share is a share of depth on average.
pub(crate) const MEAN_DYE_DEPTH: f64 = 0.435;

/// What a colour of this level and tone adds to a fibre at full strength: on white hair as light as natural hair of its
/// level, the tone making up its share of the depth and neutral pigment the rest.
pub(crate) fn deposit(level: Level, tone: &Tone, with: &Assumptions) -> Absorption {
    let [best, ..] = &ENSEMBLE;
    // The label states the level: the uncertainty of reading a head by eye is not part of it.
    let neutral = Melanin::natural(level, best).absorption();
    let Some(dye) = tone.dye() else { return neutral };
    let dye = dye * (with.tone_share * neutral.depth() / MEAN_DYE_DEPTH);
    let mixed = neutral * (1.0 - dye.depth() / neutral.depth()).max(0.0) + dye;
    as_light_as(neutral, mixed, with)
}

/// More or less of `mixed`, so that white hair looks as light under it as under `neutral`.
fn as_light_as(neutral: Absorption, mixed: Absorption, with: &Assumptions) -> Absorption {
    let lightness = |absorption: Absorption| lab_of_linear(absorption.reflectance(with)).l();
    let wanted = lightness(neutral);
    // Between an eighth and eight times as much; twenty halvings leave less than a thousandth of a unit of L*.
    let (mut low, mut high) = (-3.0_f64, 3.0_f64);
    for _ in 0..20 {
        let middle = f64::midpoint(low, high);
        if lightness(mixed * middle.exp2()) > wanted { low = middle } else { high = middle }
    }
    mixed * low.exp2()
}

impl Shade {
    pub(crate) fn deposit(&self, with: &Assumptions) -> Absorption {
        deposit(self.level(), self.tone(), with) * self.strength().fraction()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mean_dye_depth_is_the_mean() {
        let mean = Hue::ALL.iter().map(|hue| hue.dye().depth()).sum::<f64>() / 12.0;
        assert!((mean - MEAN_DYE_DEPTH).abs() < 5e-4, "{mean}");
    }
}
