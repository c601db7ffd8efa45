//! How much of what: the neutralising shade, the natural shade for white hair, the pigment to put back first.

use super::{Hair, Mix, PartKind, sections::Work};
use crate::{
    colour::{Hue, Level, Shade, Temper},
    mix::natural_share,
    quantity::{Mass, Share},
    service::{request::Request, shape::HistoryFlag},
    shop::ShadeClass,
    source::{Basis, Interval},
    toner::{Exposed, ExposedBasis, NeutralisingDose, PrePigmentMix, neutralising_dose, pre_pigment},
};
use schemars::JsonSchema;
use serde::Serialize;

/// How much of a shade of the chart balances the warmth of a section, in a bowl with a neutral or clear shade.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionNeutralising {
    /// The shade against the warmth: of the shop, the complement or beside it, nearest to the level of the hair.
    pub neutraliser: String,
    /// The shade that makes up the rest of the bowl.
    pub carrier: String,
    /// Grams and share, with bounds.
    pub dose: NeutralisingDose,
}

/// How much of a natural shade the trade adds for white hair.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct NaturalShadeDose {
    /// The neutral shade of the shop nearest to the target; none where the shop has no neutral permanent shade.
    pub shade: Option<String>,
    /// Share of all shades in the bowl.
    #[serde(rename = "share_percent")]
    pub share: Interval<Share>,
    /// The same in the shades of this mix.
    #[serde(rename = "mass_g")]
    pub mass: Interval<Mass>,
    /// The basis: common practice.
    pub basis: Basis,
}

/// A toner is seldom darker than the hair by more.
const DARKER_LEVELS: f64 = 2.0;

/// Mass of all colour in a mix, without developer.
pub(super) fn colour_mass(mix: &Mix) -> Option<Mass> {
    let bowl = |bowl: &super::Bowl| {
        let colour = bowl.parts.iter().filter(|part| part.kind == PartKind::Colour).map(|part| part.weigh.g());
        colour.sum::<f64>() * bowl.count as f64
    };
    Mass::from_g(mix.bowls.iter().map(bowl).sum()).ok().filter(|mass| *mass > Mass::ZERO)
}

/// So many shades at most are tried against the warmth, the nearest first: a wall of shades must not make a plan slow.
const TRIED: usize = 12;

/// The dose against the warmth of this hair, from the shop's shades of the toner's class: of the shade nearest to the hair's
/// level that a part of the bowl is enough of, else of the one that leaves least.
pub(super) fn neutralising(
    request: &Request,
    exposed: &Exposed,
    toner: &Work<'_>,
    mix: &Mix,
) -> Option<SectionNeutralising> {
    let against = complement(exposed)?;
    let class = if toner.has_peroxide() { ShadeClass::Demi } else { ShadeClass::Semi };
    let (level, bowl) = (exposed.level(), colour_mass(mix)?);
    let far = |shade: &Shade| (level - shade.level()).levels();
    let stocked = request.shop.shades.iter().filter(|stocked| stocked.class == class).map(|stocked| &stocked.shade);
    let shades: Vec<&Shade> = stocked.filter(|shade| (0.0..=DARKER_LEVELS).contains(&far(shade))).collect();
    let carriers = shades.iter().filter(|shade| shade.tone().is_neutral());
    // A clear shade only dilutes: it carries where there is no neutral one.
    let sheer = |shade: &Shade| shade.strength() <= Share::NONE;
    let carrier = carriers.min_by(|a, b| sheer(a).cmp(&sheer(b)).then(far(a).total_cmp(&far(b))))?;
    let steps = |shade: &Shade| shade.tone().main_hue().map(|hue| hue.steps_to(against)).filter(|steps| *steps <= 1);
    let mut against: Vec<(usize, &Shade)> = shades.iter().filter_map(|shade| Some((steps(shade)?, *shade))).collect();
    against.sort_by(|a, b| far(a.1).total_cmp(&far(b.1)).then(a.0.cmp(&b.0)));
    let mut best: Option<(&Shade, NeutralisingDose)> = None;
    for (_, shade) in against.into_iter().take(TRIED) {
        let dose = neutralising_dose(exposed, shade, carrier, bowl);
        let enough = dose.share.best() < Share::ALL;
        if best.as_ref().is_none_or(|(_, known)| dose.warmth_left.best() < known.warmth_left.best()) {
            best = Some((shade, dose));
        }
        if enough {
            break;
        }
    }
    best.map(|(shade, dose)| SectionNeutralising {
        neutraliser: shade.code().to_owned(),
        carrier: carrier.code().to_owned(),
        dose,
    })
}

/// The hue that neutralises what shows: of the list, or opposite to the warmth that was measured.
fn complement(exposed: &Exposed) -> Option<Hue> {
    if let Some(warmth) = exposed.listed_warmth() {
        return warmth.neutraliser.map(|(_, lighter)| lighter);
    }
    let measured = (exposed.start() == ExposedBasis::Measured).then(|| exposed.look().hue())??;
    (measured.temper() == Temper::Warm).then(|| measured.complement())
}

/// The natural shade for white hair under permanent colour.
pub(super) fn natural_shade(
    request: &Request,
    white: Share,
    work: &Work<'_>,
    target: Level,
    mix: &Mix,
) -> Option<NaturalShadeDose> {
    let permanent = work.shades().next().is_some() && work.shades().all(|shade| shade.class == ShadeClass::Permanent);
    if white == Share::NONE || !permanent {
        return None;
    }
    let colour = colour_mass(mix)?;
    let usual = natural_share(white);
    let neutral = request.shop.shades.iter().filter(|one| one.class == ShadeClass::Permanent);
    let neutral = neutral.map(|one| &one.shade).filter(|shade| shade.tone().is_neutral());
    let far = |shade: &Shade| (target - shade.level()).levels().abs();
    Some(NaturalShadeDose {
        shade: neutral.min_by(|a, b| far(a).total_cmp(&far(b))).map(|shade| shade.code().to_owned()),
        share: usual.share,
        mass: usual.share.map(|share| colour.times(share.fraction()).unwrap_or(colour)),
        basis: usual.basis,
    })
}

/// The lightest level and the target of lightened hair that is coloured with no warm shade; a warm one is itself the pigment
/// put back.
pub(super) fn going_darker(hair: &Hair, work: &Work<'_>) -> Option<(Level, Level)> {
    let warm = work.tone.main_hue().is_some_and(|hue| hue.temper() == Temper::Warm);
    let target = work.task.target.filter(|_| !work.lightens() && !warm)?;
    let told = hair.has(HistoryFlag::Lightened).then(|| work.from.best());
    Some((work.lightened.or(told)?, target))
}

/// The shade of the chart to put warmth back with, as much as of the colour that follows.
pub(super) fn pigment_first(request: &Request, hair: &Hair, work: &Work<'_>, mix: &Mix) -> Option<PrePigmentMix> {
    let (lightest, target) = going_darker(hair, work)?;
    let depositing = request.shop.shades.iter().filter(|one| one.class != ShadeClass::Permanent);
    pre_pigment(lightest, target, depositing.map(|one| &one.shade), colour_mass(mix)?)
}
