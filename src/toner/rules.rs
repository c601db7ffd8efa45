//! Rules of the trade, held against a mix.

use super::{Exposed, ExposedBasis, TonerMix, TonerRequest, ToningPorosity, lighter::is_lighter, suits::DARKER_LEVELS};
use crate::{
    colour::{Hue, Lab, Shade, Swatch, White, lab_of},
    finding::{Finding, Reason, Rule, Verdict},
    quantity::Share,
    source::{COMMON_PRACTICE, Interval},
};

pub(super) fn check(request: &TonerRequest<'_>, mix: &TonerMix, target: &Swatch) -> Vec<Finding> {
    let exposed = &request.exposed;
    [
        target_lighter(exposed, target),
        much_darker(exposed, mix),
        porosity(exposed, mix),
        over_neutralised(exposed, mix),
        cool_dose(exposed, mix),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// A toner that is much darker than the hair leaves it dark and flat.
fn much_darker(exposed: &Exposed, mix: &TonerMix) -> Option<Finding> {
    let darker = exposed.level() - mix.level;
    (exposed.start() != ExposedBasis::White && darker.levels() > DARKER_LEVELS).then(|| {
        let text = format!(
            "the mix is {:.1} and the hair {}: {:.1} than what it is put on, which a toner should not be by more than 2 \
             (choose lighter shades, or colour it with pre-pigmentation)",
            mix.level,
            exposed.level(),
            -darker
        );
        Finding::new(Rule::TonerLevel, Verdict::Warning, text, COMMON_PRACTICE)
    })
}

/// Without the complement, or a hue beside it, no mix takes the warmth away.
pub(super) fn complement_missing(exposed: &Exposed, complement: Hue, shades: &[&Shade]) -> Option<Finding> {
    let near = |shade: &&Shade| shade.tone().parts().iter().any(|part| part.hue.steps_to(complement) <= 1);
    let warmth = exposed.listed_warmth()?;
    (!shades.iter().any(near)).then(|| {
        let text = format!(
            "{complement} is named against {}, and none of the shades that may go on {} holds it (add one no lighter than the \
             hair, or plan for warmth)",
            warmth.shown(),
            exposed.level()
        );
        Finding::new(Rule::TonerFound, Verdict::Note, text, COMMON_PRACTICE)
    })
}

fn target_lighter(exposed: &Exposed, target: &Swatch) -> Option<Finding> {
    let before = exposed.look().difference_to(target);
    is_lighter(&before).then(|| {
        let text = format!(
            "the target is {:.1} L* lighter than the hair: a toner does not lighten (lift further first)",
            before.lighter
        );
        Finding::new(Rule::TonerLevel, Verdict::Warning, text, COMMON_PRACTICE)
    })
}

fn porosity(exposed: &Exposed, mix: &TonerMix) -> Option<Finding> {
    (exposed.porosity() == ToningPorosity::Porous).then(|| {
        let (time, dyed) = (exposed.porosity().time(), exposed.porosity().dilution().value);
        let told = |share: Interval<Share>| format!("{:.0} ({:.0} to {:.0})", share.best(), share.low(), share.high());
        let (time, dyed) = (told(time), told(dyed));
        let darkest = mix.predicted.lightness().low().lab_l();
        Finding::new(
            Rule::Porosity,
            Verdict::Note,
            format!(
                "porous hair takes up more: this mix counts on half as much again, so expect the darker end of the \
                 prediction, down to L* {darkest:.0}; a mix meant for other hair wants {time} of its time, or {dyed} of its \
                 shades and the rest clear, not both, or a filler that equalises first (watch it; a strand test decides)"
            ),
            COMMON_PRACTICE,
        )
    })
}

/// Whether toning carries the colour through grey to the other side of the hue it started from.
fn over_neutralised(exposed: &Exposed, mix: &TonerMix) -> Option<Finding> {
    let crossed =
        |before: Lab, after: Lab| after.chroma() > 1.0 && before.a() * after.a() + before.b() * after.b() < 0.0;
    let samples = exposed.look().samples.into_iter().zip(mix.predicted.samples);
    let crossings = samples.filter(|(before, after)| crossed(lab_of(*before), lab_of(*after))).count();
    let before = exposed.look().lab().adapted_to(White::D65TenDegree);
    let after = mix.predicted.lab();
    let certain = crossed(before, after);
    (crossings > 0).then(|| {
        let lean = Hue::nearest_to(after).map_or("grey", Hue::words);
        let (verdict, how) = if certain { (Verdict::Warning, "is predicted to") } else { (Verdict::Note, "may") };
        Finding::new(
            Rule::OverNeutralising,
            verdict,
            format!(
                "the mix {how} carry the colour past neutral (best estimate {lean}, chroma {:.0}): reduce the \
                 neutralising shade or the time, and watch it",
                after.chroma()
            ),
            Reason::assumed(),
        )
    })
}

/// Very pale hair needs a very dilute violet.
fn cool_dose(exposed: &Exposed, mix: &TonerMix) -> Option<Finding> {
    let cool = [Hue::Blue, Hue::BlueViolet, Hue::Violet];
    let share: f64 =
        mix.tone.parts().iter().filter(|part| cool.contains(&part.hue)).map(|part| part.share_percent).sum();
    (exposed.level().number() >= 10.0 && share > 50.0).then(|| {
        Finding::new(
            Rule::CoolDose,
            Verdict::Note,
            format!(
                "{share:.0} % of the tone is blue or violet on {}: very pale hair takes a very dilute violet (test on a \
                 strand, rinse as soon as the yellow is gone)",
                exposed.level()
            ),
            COMMON_PRACTICE,
        )
    })
}
