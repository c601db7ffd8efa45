//! What the rules of the trade say of a mix, in whole sentences.

use super::toner::{lab, level};
use foilwork::{
    colour::{Hue, Shade, Tone},
    finding::{Rule, Verdict},
    quantity::{Mass, Share},
    toner::{Exposed, Target, TonerAnswer, TonerRequest, ToningPorosity, find_toner},
};

fn answer(exposed: Exposed, number: f64, tone: Tone, target: Target) -> TonerAnswer {
    let shade = Shade::new("J", level(number), tone).unwrap();
    let (bowl, division) = (Mass::from_g(30.0).unwrap(), Mass::from_g(1.0).unwrap());
    find_toner(&TonerRequest { exposed, target, shades: vec![&shade], most_shades: 1, bowl, division }).unwrap()
}

fn said(answer: &TonerAnswer, rule: Rule) -> Vec<(Verdict, String)> {
    let of = answer.findings.iter().filter(|finding| finding.rule == rule);
    of.map(|finding| (finding.verdict, finding.text.clone())).collect()
}

/// A target of L* 60 on hair of 50, and a shade of level 6 on hair of level 9.
#[test]
fn a_target_too_light_and_a_mix_too_dark() {
    let found = answer(
        Exposed::measured(lab(50.0, 5.0, 20.0), level(9.0)),
        6.0,
        Tone::neutral(),
        Target::Lab(lab(60.0, 5.0, 20.0)),
    );
    let lighter = "the target is 10.0 L* lighter than the hair: a toner does not lighten (lift further first)";
    let darker = "the mix is level 6.0 and the hair level 9: 3.0 levels darker than what it is put on, which a toner should not be by more than \
                  2 (choose lighter shades, or colour it with pre-pigmentation)";
    let want = [lighter, darker].map(|text| (Verdict::Warning, text.to_owned()));
    assert_eq!(said(&found, Rule::TonerLevel), want);
    let found = answer(
        Exposed::measured(lab(50.0, 5.0, 20.0), level(8.0)),
        6.0,
        Tone::neutral(),
        Target::Lab(lab(40.0, 5.0, 20.0)),
    );
    assert_eq!(said(&found, Rule::TonerLevel), []);
}

/// Past neutral is where a* and b* point the other way. Of what was measured the best estimate says so surely; hair as warm as before, or
/// warmer, is not past it.
#[test]
fn a_mix_that_goes_past_neutral() {
    let neutral = || Target::Look { level: level(9.0), tone: Tone::neutral() };
    let pale = Exposed::measured(lab(66.0, 0.3, 3.0), level(10.0));
    let found = answer(pale, 7.0, Tone::of(Hue::Blue), neutral());
    let after = found.best.predicted.lab();
    let lean = Hue::nearest_to(after).map_or("grey", Hue::words);
    let text = |how: &str| {
        format!(
            "the mix {how} carry the colour past neutral (best estimate {lean}, chroma {:.0}): reduce the neutralising shade or the time, and \
             watch it",
            after.chroma()
        )
    };
    assert!(after.a() * 0.3 + after.b() * 3.0 < 0.0 && after.chroma() > 1.0, "{after:?}");
    assert_eq!(said(&found, Rule::OverNeutralising), [(Verdict::Warning, text("is predicted to"))]);
    for tone in [Tone::of(Hue::Yellow), Tone::neutral()] {
        let found = answer(pale, 9.0, tone, neutral());
        assert_eq!(said(&found, Rule::OverNeutralising), []);
    }
}

/// Uptake of half as much again wants 1 / 1.5^2 of the time or 1 / 1.5 of the dye, and at most 3.5 times 1 / 3.5^2 and 1 / 3.5.
#[test]
fn porous_hair_is_told_in_full() {
    let target = || Target::Look { level: level(9.0), tone: Tone::neutral() };
    let hair = Exposed::lightened(level(5.0), level(9.0));
    let found = answer(hair.with_porosity(ToningPorosity::Porous), 9.0, Tone::of(Hue::Violet), target());
    let darkest = found.best.predicted.lightness().low().lab_l();
    let want = format!(
        "porous hair takes up more: this mix counts on half as much again, so expect the darker end of the prediction, down to L* {darkest:.0}; a \
         mix meant for other hair wants 44 % (8 % to 100 %) of its time, or 67 % (29 % to 100 %) of its shades and the rest clear, not both, or \
         a filler that equalises first (watch it; a strand test decides)"
    );
    assert_eq!(said(&found, Rule::Porosity), [(Verdict::Note, want)]);
    let ordinary = answer(hair, 9.0, Tone::of(Hue::Violet), target());
    assert!(found.best.predicted.lab().l() < ordinary.best.predicted.lab().l(), "it takes up more");
}

/// On very pale hair more than half of the tone blue or violet is too much: 60 of 100 are, and 50 are not; both hues count.
#[test]
fn half_of_the_tone_may_be_cool() {
    let target = || Target::Look { level: level(9.0), tone: Tone::neutral() };
    let hair = Exposed::measured(lab(66.0, 2.0, 20.0), level(10.0));
    let of = |parts: &[(Hue, f64)]| {
        let tones: Vec<(Tone, Share)> =
            parts.iter().map(|(hue, percent)| (Tone::of(*hue), Share::from_percent(*percent).unwrap())).collect();
        let tone = Tone::blend(tones.iter().map(|(tone, share)| (tone, *share)));
        said(&answer(hair, 9.0, tone, target()), Rule::CoolDose)
    };
    assert_eq!(of(&[(Hue::Violet, 50.0), (Hue::Green, 50.0)]), []);
    let want = |percent: u32| {
        let text = format!(
            "{percent} % of the tone is blue or violet on level 10: very pale hair takes a very dilute violet (test on a strand, rinse as soon as \
             the yellow is gone)"
        );
        [(Verdict::Note, text)]
    };
    assert_eq!(of(&[(Hue::Violet, 60.0), (Hue::Green, 40.0)]), want(60));
    assert_eq!(of(&[(Hue::Violet, 30.0), (Hue::Blue, 40.0), (Hue::Green, 30.0)]), want(70));
}
