use super::{Exposed, predictor::Predictor};
use crate::{
    colour::{Chroma, Lab, Level, SETS, Shade, Swatch, White, lab_of},
    finding::{Finding, Reason, Rule, Verdict},
    quantity::{Mass, Quantity, Share},
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// How much of a neutralising shade balances the exposed warmth, in a mix with a carrier shade.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct NeutralisingDose {
    /// Share of the neutralising shade that brings the hair nearest to natural hair as light as it is then, with its bounds
    /// over the assumptions of the model. More than the best estimate over-tones by the model; more than the upper bound
    /// under all assumptions.
    #[serde(rename = "share_percent")]
    pub share: Interval<Share>,
    /// The same in a bowl of shades.
    #[serde(rename = "mass_g")]
    pub mass: Interval<Mass>,
    /// Warmth before toning: CIELAB a\* and b\* away from natural hair as light as this.
    #[serde(rename = "warmth_before_chroma")]
    pub warmth_before: Interval<Chroma>,
    /// Warmth under the carrier alone.
    #[serde(rename = "warmth_without_chroma")]
    pub warmth_without: Interval<Chroma>,
    /// Warmth that is left at this share; it cannot be taken away with these shades.
    #[serde(rename = "warmth_left_chroma")]
    pub warmth_left: Interval<Chroma>,
    /// The basis: assumed.
    pub basis: Basis,
    /// What follows for the bowl.
    pub finding: Finding,
}

/// The dose of `neutraliser` in a bowl with `carrier` (a neutral or clear shade) that takes the exposed warmth down to that
/// of natural hair: by level, by how strong the pigment shows, and by what each shade deposits.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Hue, Level, Shade, Tone},
///     quantity::Mass,
///     toner::{Exposed, neutralising_dose},
/// };
///
/// let level = Level::new(9.0)?;
/// let violet = Shade::new("J9-mist", level, Tone::of(Hue::Violet))?;
/// let neutral = Shade::new("J9-plain", level, Tone::neutral())?;
/// let hair = Exposed::lightened(Level::new(5.0)?, level);
/// let dose = neutralising_dose(&hair, &violet, &neutral, Mass::from_g(30.0)?);
/// assert!(dose.warmth_left.best() < dose.warmth_without.best());
/// assert!(dose.mass.best() <= Mass::from_g(30.0)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn neutralising_dose(exposed: &Exposed, neutraliser: &Shade, carrier: &Shade, bowl: Mass) -> NeutralisingDose {
    let predictors = Predictor::all(exposed, &[neutraliser, carrier]);
    let locus = natural_hair();
    let each: Vec<Found> = predictors.iter().zip(&locus).map(|(with, locus)| Found::of(with, locus)).collect();
    let share = bounded(&each, |found| found.share);
    let mass = share.map(|share| bowl.times(share.fraction()).unwrap_or(bowl));
    let [low, best, high] = mass.to_array().map(Mass::g);
    let left = bounded(&each, |found| found.left);
    let text = if share.best() < Share::ALL {
        format!(
            "{best:.1} g of {} in {bowl} of shades ({low:.1} to {high:.1} g) takes the warmth away; more over-tones, so start \
             low and watch it on a strand",
            neutraliser.code()
        )
    } else {
        format!(
            "all {bowl} of {} would not take the warmth away: {:.0} of it is left (a deeper shade takes more); where it takes \
             up more than expected {low:.1} g is enough, so watch it on a strand",
            neutraliser.code(),
            left.best().chroma()
        )
    };
    NeutralisingDose {
        share,
        mass,
        warmth_before: bounded(&each, |found| found.before),
        warmth_without: bounded(&each, |found| found.without),
        warmth_left: left,
        basis: Basis::Assumed,
        finding: Finding::new(Rule::OverNeutralising, Verdict::Note, text, Reason::assumed()),
    }
}

/// What one set of assumptions gives.
struct Found {
    share: Share,
    before: Chroma,
    without: Chroma,
    left: Chroma,
}

impl Found {
    fn of(with: &Predictor, locus: &[Lab]) -> Self {
        let at = |share: f64| warmth(lab_of(with.toned([(0, share), (1, 1.0 - share)])), locus);
        // The warmth falls to a single least value and rises again: to 1 %, which no scale and no eye tells.
        let least = |from: i32, to: i32, step: usize| {
            let steps = (from..=to).step_by(step).map(|percent| (percent, at(f64::from(percent) / 100.0)));
            steps.fold((0, f64::INFINITY), |best, one| if one.1 < best.1 { one } else { best })
        };
        let (about, _) = least(0, 100, 10);
        let (percent, left) = least((about - 9).max(0), (about + 9).min(100), 1);
        Self {
            share: Share::nearest(f64::from(percent)),
            before: Chroma::nearest(warmth(lab_of(with.toned([])), locus)),
            without: Chroma::nearest(at(0.0)),
            left: Chroma::nearest(left),
        }
    }
}

fn bounded<Q: Copy + PartialOrd + Quantity>(each: &[Found], of: impl Fn(&Found) -> Q) -> Interval<Q> {
    let best = Interval::exact(each.first().map_or(Q::MIN, &of));
    each.iter().fold(best, |all, one| all.widened_to(Interval::exact(of(one))))
}

/// Natural hair from dark to light under every set of assumptions.
fn natural_hair() -> Vec<Vec<Lab>> {
    let levels = (0..=44).map(|quarter: i32| Level::clamped(1.0 + f64::from(quarter) / 4.0));
    let looks: Vec<Swatch> = levels.map(Swatch::natural).collect();
    let under =
        |set: usize| looks.iter().filter_map(|look| look.samples.get(set)).map(|sample| lab_of(*sample)).collect();
    (0..SETS).map(under).collect()
}

/// How far a colour lies from natural hair as light as it, in a\* and b\*.
fn warmth(lab: Lab, locus: &[Lab]) -> f64 {
    let lab = lab.adapted_to(White::D65TenDegree);
    let between = locus.iter().zip(locus.iter().skip(1)).find(|(_, lighter)| lab.l() <= lighter.l());
    let (dark, light) = match (between, locus.last()) {
        (Some((dark, light)), _) => (*dark, *light),
        (None, Some(last)) => (*last, *last),
        (None, None) => return lab.chroma(),
    };
    let span = light.l() - dark.l();
    let part = if span > 0.0 { ((lab.l() - dark.l()) / span).clamp(0.0, 1.0) } else { 0.0 };
    let (a, b) = (dark.a() + part * (light.a() - dark.a()), dark.b() + part * (light.b() - dark.b()));
    (lab.a() - a).hypot(lab.b() - b)
}
