//! The products' own instructions and the rules of the trade, on both sides of each limit.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Note, Passed, Stop, Warning},
    head::{ExtraStep, Technique},
    service::{
        ServiceFile,
        shape::{ExistingColour, MixPart, Toner, Zone},
    },
    shop::{StrengthBasis, shape::ShadeEntry},
};
use rstest::rstest;

/// Only the lightener that its entry allows there may touch the scalp.
#[rstest]
#[case::foil_on_the_lengths(Technique::Weave, Zone::Lengths, None, false, None)]
#[case::foil_at_the_roots(Technique::Slice, Zone::Roots, None, false, Some(NotJudged))]
#[case::freehand_on_the_lengths(Technique::Freehand, Zone::Lengths, None, false, None)]
#[case::freehand_at_the_roots(Technique::Freehand, Zone::Roots, None, false, Some(Stop))]
#[case::block_of_whole_strands(Technique::Block, Zone::Whole, None, false, Some(Stop))]
#[case::regrowth(Technique::Regrowth, Zone::Roots, None, false, Some(Stop))]
#[case::regrowth_allowed_at_any_strength(Technique::Regrowth, Zone::Roots, None, true, Some(NotJudged))]
#[case::said_to_touch(Technique::Weave, Zone::Lengths, Some(true), false, Some(Stop))]
#[case::said_not_to_touch(Technique::Freehand, Zone::Roots, Some(false), false, None)]
fn on_scalp(
    #[case] technique: Technique,
    #[case] zone: Zone,
    #[case] stated: Option<bool>,
    #[case] allowed: bool,
    #[case] want: Option<Verdict>,
) {
    let plan = changed(only_lightener(), |file| {
        let section = &mut file.section[0];
        (section.technique, section.zone, section.on_scalp) = (technique, zone, stated);
        shop(file).lightener[0].on_scalp = allowed;
    });
    assert_eq!(verdicts(&plan, "on scalp"), Vec::from_iter(want));
}

/// Stated ceilings count with the upper bound, the stricter first; of a lightener that states none common practice has no more than
/// 20 volumes, about 6 %, on the scalp, as the bottle is called.
#[rstest]
#[case::product_at_its_limit(("6 % w/w", Some(6.0), None), Some(true), &[Passed])]
#[case::product_above(("6 % w/w", Some(5.99), None), Some(true), &[Stop])]
#[case::house_at_its_limit(("6 % w/w", None, Some(6.0)), Some(true), &[NotJudged, Passed])]
#[case::house_above(("6 % w/w", None, Some(5.99)), Some(true), &[Stop])]
#[case::house_allows_more_than_the_trade(("9 % w/w", None, Some(12.0)), Some(true), &[Warning, Passed])]
#[case::the_stricter_is_the_house(("6 % w/w", Some(9.0), Some(3.0)), Some(true), &[Stop])]
#[case::the_stricter_is_the_product(("6 % w/w", Some(3.0), Some(9.0)), Some(true), &[Stop])]
#[case::nobody_says(("6 % w/w", None, None), Some(true), &[NotJudged])]
#[case::twenty_volumes_by_the_label(("20 vol label", None, None), Some(true), &[NotJudged])]
#[case::thirty_volumes_by_the_label(("30 vol label", None, None), Some(true), &[Warning])]
#[case::nobody_says_and_strong(("6.06 % w/w", None, None), Some(true), &[Warning])]
#[case::off_the_scalp(("12 % w/w", Some(6.0), Some(6.0)), Some(false), &[])]
#[case::foil_at_the_roots_below(("6 % w/w", Some(6.0), None), None, &[Passed])]
#[case::foil_at_the_roots_above(("6.01 % w/w", Some(6.0), None), None, &[NotJudged])]
fn strongest_on_scalp(
    #[case] (strength, product, house): (&str, Option<f64>, Option<f64>),
    #[case] touches: Option<bool>,
    #[case] want: &[Verdict],
) {
    let plan = changed(only_lightener(), |file| {
        let section = &mut file.section[0];
        (section.technique, section.zone, section.on_scalp) = (Technique::Weave, Zone::Roots, touches);
        file.salon.strongest_on_scalp_ww_percent = house;
        shop(file).developer[0].strength = strength.to_owned();
        let powder = &mut shop(file).lightener[0];
        (powder.on_scalp, powder.strongest_on_scalp_ww_percent) = (true, product);
    });
    assert_eq!(verdicts(&plan, "on scalp"), want);
    let least = product.into_iter().chain(house).reduce(f64::min).filter(|_| touches != Some(false));
    let said = texts(&plan, "on scalp");
    assert!(least.is_none_or(|least| said.contains(&format!("{least} %"))), "{said}");
}

/// What may not go there at all is not passed by the house's ceiling.
#[test]
fn no_ceiling_passes_what_is_kept_off() {
    let plan = changed(only_lightener(), |file| {
        file.section[0].on_scalp = Some(true);
        file.salon.strongest_on_scalp_ww_percent = Some(12.0);
    });
    assert_eq!(verdicts(&plan, "on scalp"), [Stop]);
}

/// The bottle of a step before the colour is chosen below the ceiling too: of 6 and 2 %, 6 without one, and 2 for one of 3 %.
#[rstest]
#[case::none((None, None), 6.0)]
#[case::house((None, Some(3.0)), 2.0)]
#[case::product((Some(3.0), None), 2.0)]
fn a_step_before_the_colour_keeps_to_the_ceiling(
    #[case] (product, house): (Option<f64>, Option<f64>),
    #[case] want: f64,
) {
    let plan = changed(only_colour(), |file| {
        let section = &mut file.section[0];
        section.on_scalp = Some(true);
        section.first = vec![ExtraStep::PreLighten];
        file.salon.strongest_on_scalp_ww_percent = house;
        shop(file).lightener[0].on_scalp = true;
        shop(file).lightener[0].strongest_on_scalp_ww_percent = product;
        let mut weak = shop(file).developer[0].clone();
        (weak.name, weak.strength) = ("weak developer".to_owned(), "2 % w/w".to_owned());
        shop(file).developer.push(weak);
    });
    let step = plan.first_steps.iter().find(|step| step.planned).unwrap();
    let bottle = step.parts.iter().find(|part| part.product.contains("developer")).unwrap();
    assert_eq!(bottle.product, if want > 5.0 { "developer" } else { "weak developer" }, "{:?}", step.parts);
}

/// The house's ceiling holds for colour too; without one nothing is said of it.
#[rstest]
#[case::none(None, None)]
#[case::at_it(Some(6.0), Some(Passed))]
#[case::above_it(Some(5.99), Some(Stop))]
fn colour_on_the_scalp(#[case] house: Option<f64>, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        file.section[0].on_scalp = Some(true);
        file.salon.strongest_on_scalp_ww_percent = house;
    });
    assert_eq!(verdicts(&plan, "on scalp"), Vec::from_iter(want));
}

/// What is left to the plan to choose is chosen below the ceiling.
#[test]
fn a_strength_that_is_left_open_keeps_to_the_ceiling() {
    let strength = |house| {
        let plan = changed(only_lightener(), |file| {
            let section = &mut file.section[0];
            (section.developer, section.on_scalp) = (None, Some(true));
            shop(file).lightener[0].on_scalp = true;
            let mut weak = shop(file).developer[0].clone();
            (weak.name, weak.strength) = ("weak developer".to_owned(), "2 % w/w".to_owned());
            shop(file).developer.push(weak);
            file.salon.strongest_on_scalp_ww_percent = house;
        });
        plan.mixes[0].developer.high().ww_percent()
    };
    assert!(strength(Some(3.0)) <= 3.0 && strength(None) > 3.0);
}

/// Foil at the roots, where nobody says whether a gap is left, may touch the scalp: what is chosen there keeps to the ceiling of 3 %,
/// so that no check asks for a weaker one afterwards. Of 6 % and its dilutions nothing above it is left.
#[rstest]
#[case::a_gap_is_left(Some(false), None)]
#[case::nobody_says(None, Some("on the scalp if no gap is left, the rule of the house takes 3 % w/w at most"))]
#[case::no_gap(Some(true), Some("on the scalp, the rule of the house takes 3 % w/w at most"))]
fn what_may_touch_the_scalp_is_chosen_as_what_does(#[case] touches: Option<bool>, #[case] why: Option<&str>) {
    let plan = changed(only_lightener(), |file| {
        let section = &mut file.section[0];
        (section.technique, section.zone, section.on_scalp) = (Technique::Weave, Zone::Roots, touches);
        section.developer = None;
        shop(file).lightener[0].on_scalp = true;
        shop(file).lightener[0].strongest_on_scalp_ww_percent = Some(12.0);
        let mut weak = shop(file).developer[0].clone();
        (weak.name, weak.strength) = ("weak developer".to_owned(), "2 % w/w".to_owned());
        shop(file).developer.push(weak);
        file.salon.strongest_on_scalp_ww_percent = Some(3.0);
    });
    assert_eq!(plan.mixes[0].developer.high().ww_percent() <= 3.0, touches != Some(false));
    let said = verdicts(&plan, "on scalp");
    assert!(said.iter().all(|verdict| *verdict == Passed), "{said:?}");
    let rejected = &plan.strengths[0].rejected;
    let of_six = rejected.iter().find(|one| one.developer.ww_percent() == 6.0).map(|one| one.why.as_str());
    assert_eq!(of_six.filter(|of_six| of_six.starts_with("on the scalp")), why, "{rejected:?}");
}

/// A bottle of 6 % by its label may hold up to 7 %: the trade takes it as it is called, a house that states 6.5 % does not, and it is
/// the stricter of the two though its number is the higher.
#[test]
fn every_ceiling_holds_where_a_strength_is_chosen() {
    let plan = changed(only_lightener(), |file| {
        let section = &mut file.section[0];
        (section.developer, section.on_scalp) = (None, Some(true));
        file.salon.strongest_on_scalp_ww_percent = Some(6.5);
        let shop = shop(file);
        shop.lightener[0].on_scalp = true;
        shop.developer[0].strength_basis = StrengthBasis::Label;
        let mut weak = shop.developer[0].clone();
        (weak.name, weak.strength) = ("weak developer".to_owned(), "3 % w/w".to_owned());
        shop.developer.push(weak);
    });
    assert!(plan.mixes[0].developer.high().ww_percent() <= 6.5);
    assert!(!verdicts(&plan, "on scalp").contains(&Stop), "{}", texts(&plan, "on scalp"));
}

/// The developer is 6 % w/w.
#[rstest]
#[case::at_the_limit(Some(6.0), Passed)]
#[case::above(Some(5.99), Stop)]
#[case::not_on_the_shelf(None, NotJudged)]
fn strongest_developer(#[case] strongest_ww_percent: Option<f64>, #[case] want: Verdict) {
    let plan =
        changed(only_lightener(), |file| shop(file).lightener[0].strongest_developer_ww_percent = strongest_ww_percent);
    assert_eq!(verdicts(&plan, "developer"), [want]);
    let plan = changed(only_colour(), |file| shop(file).shade[1].strongest_developer_ww_percent = strongest_ww_percent);
    assert_eq!(verdicts(&plan, "developer"), [want]);
}

/// What counts of an estimate is its upper bound: a label of 20 vol may be 6.4 % w/w in a light cream.
#[test]
fn the_upper_bound_of_a_label_counts() {
    let plan = changed(only_lightener(), |file| {
        shop(file).developer[0].strength = "20 vol label".to_owned();
        shop(file).developer[0].cream = Some(true);
        shop(file).lightener[0].strongest_developer_ww_percent = Some(6.0);
    });
    assert_eq!(verdicts(&plan, "developer"), [Stop], "{}", texts(&plan, "developer"));
}

// Common practice: an hour of applying lightener is the most before the first foils are done.
#[rstest]
#[case::at_the_limit(40.0, None)]
#[case::above(41.0, Some(Warning))]
fn pace(#[case] second_apply_min: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        let mut second = file.section[0].clone();
        second.name = "nape".to_owned();
        second.apply_min = Some(second_apply_min);
        file.section.push(second);
    });
    assert_eq!(verdicts(&plan, "pace"), Vec::from_iter(want));
}

/// 15 g + 30 g + 3 % of 45 g = 46.35 g. On 0.5 g: 93 divisions for 92.7, of which the additive takes 3 for its share of
/// 93 * 1.35 / 46.35 = 2.709, 10.7 % too many. On 0.1 g: 464 divisions, 14 for 13.515, 3.6 % too many.
#[rstest]
#[case::coarse(0.5, Some(Warning))]
#[case::fine(0.1, None)]
fn coarse_scale(#[case] division_g: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        file.section[0].additives = vec!["bond".to_owned()];
        file.salon.scale_division_g = Some(division_g);
    });
    assert_eq!(verdicts(&plan, "scale"), Vec::from_iter(want), "{}", texts(&plan, "scale"));
}

// Common practice, give or take two levels: lightener reaches 3 levels at 10 vol, 5 at 20 vol, 6 at 30 vol, 7 at 40 vol
// in one session; 3 % w/w for each 10 vol, boundaries half way.
#[rstest]
#[case::not_lighter(6.0, "6 % w/w", 6.0, Some(Warning))]
#[case::darker(6.0, "6 % w/w", 5.0, Some(Warning))]
#[case::a_little_lighter(6.0, "6 % w/w", 6.1, None)]
#[case::vol_10(2.0, "3 % w/w", 5.0, None)]
#[case::vol_10_over(2.0, "3 % w/w", 5.1, Some(Warning))]
#[case::vol_20(2.0, "6 % w/w", 7.0, None)]
#[case::vol_20_over(2.0, "6 % w/w", 7.1, Some(Warning))]
#[case::vol_30(2.0, "9 % w/w", 8.0, None)]
#[case::vol_30_over(2.0, "9 % w/w", 8.1, Some(Warning))]
#[case::vol_40(2.0, "12 % w/w", 9.0, None)]
#[case::vol_40_over(2.0, "12 % w/w", 9.1, Some(Warning))]
#[case::just_below_20(2.0, "4.49 % w/w", 5.1, Some(Warning))]
#[case::just_20(2.0, "4.5 % w/w", 5.1, None)]
fn lightener_lift(#[case] natural: f64, #[case] strength: &str, #[case] target: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        file.analysis.natural_level = natural;
        shop(file).developer[0].strength = strength.to_owned();
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want), "{}", texts(&plan, "lift"));
}

// Source: North Carolina cosmetology examination study guide, section 7.2: 10 vol deposits, 20 vol lifts 1 to 2 levels,
// 30 vol 2 to 3, 40 vol 3 to 4.
#[rstest]
#[case::vol_10("3 % w/w", 5.0, None)]
#[case::vol_10_over("3 % w/w", 5.1, Some(Warning))]
#[case::vol_20("6 % w/w", 7.0, None)]
#[case::vol_20_over("6 % w/w", 7.1, Some(Warning))]
#[case::vol_30("9 % w/w", 8.0, None)]
#[case::vol_30_over("9 % w/w", 8.1, Some(Warning))]
#[case::vol_40("12 % w/w", 9.0, None)]
#[case::vol_40_over("12 % w/w", 9.1, Some(Warning))]
fn colour_lift_from_level_5(#[case] strength: &str, #[case] target: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        file.analysis.natural_level = 5.0;
        shop(file).developer[0].strength = strength.to_owned();
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want), "{}", texts(&plan, "lift"));
}

// Common practice: permanent colour does not lift artificial colour.
#[rstest]
#[case::artificial(true, 6.5, Some(Warning))]
#[case::natural(false, 6.5, None)]
#[case::not_lifted(true, 6.0, None)]
fn colour_on_colour(#[case] artificial: bool, #[case] target: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        file.analysis.existing = vec![ExistingColour {
            zone: Some(Zone::Lengths),
            level: 6.0,
            tone: None,
            artificial,
            ..ExistingColour::default()
        }];
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "lift"), Vec::from_iter(want));
}

// Common practice: a toner deposits; a shade lighter than the hair does not show.
#[rstest]
#[case::same(9.0, Passed)]
#[case::lighter_than_the_hair(8.9, Warning)]
fn toner_level(#[case] lifted_to: f64, #[case] want: Verdict) {
    let plan = changed(fine(), |file| file.section[0].target_level = lifted_to);
    assert_eq!(verdicts(&plan, "toner level"), [want]);
}

/// Without names a toner goes on what is lightened; the darkest of it decides.
#[test]
fn the_darkest_section_decides_for_the_toner() {
    let plan = changed(fine(), |file| {
        let mut second = file.section[0].clone();
        second.name = "nape".to_owned();
        second.target_level = 8.0;
        file.section.push(second);
        let named = Toner { name: "top alone".to_owned(), sections: vec!["top".to_owned()], ..file.toner[0].clone() };
        file.toner.push(named);
    });
    assert_eq!(verdicts(&plan, "toner level"), [Warning, Passed]);
}

// Common practice: from about a third white, a permanent shade above level 8 covers only in part.
#[rstest]
#[case::a_third(30.0, 9.0, "J6", Some(Warning))]
#[case::less(29.9, 9.0, "J6", None)]
#[case::level_8(30.0, 8.0, "J6", None)]
#[case::demi(30.0, 9.0, "J9", None)]
fn white_hair(#[case] white_percent: f64, #[case] level: f64, #[case] shade: &str, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file: &mut ServiceFile| {
        file.analysis.white_percent = Some(white_percent);
        shop(file).shade[1].level = level;
        file.section[0].product = Some(shade.to_owned());
    });
    let partly = plan.findings.iter().filter(|finding| finding.text.contains("covers it only in part"));
    assert_eq!(partly.map(|finding| finding.verdict).collect::<Vec<_>>(), Vec::from_iter(want));
}

// Common practice for half-white hair: a third to two thirds of the shades natural.
#[rstest]
#[case::half(1.0, 1.0, Passed)]
#[case::all_natural(1.0, 0.0, Warning)]
#[case::too_little(1.0, 3.0, Warning)]
fn natural_share_on_half_white_hair(#[case] natural: f64, #[case] fashion: f64, #[case] want: Verdict) {
    let plan = changed(only_colour(), |file| {
        file.analysis.white_percent = Some(50.0);
        let amber =
            ShadeEntry { code: "J6-amber".to_owned(), tones: vec!["orange".to_owned()], ..shop(file).shade[1].clone() };
        shop(file).shade.push(amber);
        let part = |shade: &str, parts: f64| MixPart { shade: shade.to_owned(), parts };
        file.section[0].product = None;
        file.section[0].mix = vec![part("J6", natural), part("J6-amber", fashion)];
        file.section[0].mix.retain(|part| part.parts > 0.0);
    });
    assert_eq!(verdicts(&plan, "white hair"), [want], "{}", texts(&plan, "white hair"));
}

/// Nothing lifts without peroxide: no pigment is exposed, and no developer can be too strong.
#[rstest]
#[case::with_developer("J6", Some("developer"), true)]
#[case::without("J8-veil", None, false)]
fn pigment_is_exposed_by_peroxide_only(#[case] product: &str, #[case] developer: Option<&str>, #[case] exposes: bool) {
    let plan = changed(only_colour(), |file| {
        let section = &mut file.section[0];
        section.product = Some(product.to_owned());
        section.developer = developer.map(str::to_owned);
        section.target_level = 7.0;
        shop(file).shade[2].strongest_developer_ww_percent = None;
    });
    assert_eq!(plan.colour[0].exposed.is_some(), exposes);
    assert_eq!(verdicts(&plan, "developer").len(), usize::from(exposes));
}

/// 8.3 less 5.3 is 3.000000000000001 in binary; a limit is not exceeded by the last bit.
#[test]
fn levels_are_compared_as_they_are_written() {
    let plan = changed(only_colour(), |file| {
        shop(file).developer[0].strength = "9 % w/w".to_owned();
        file.analysis.natural_level = 5.3;
        file.section[0].target_level = 8.3;
    });
    assert_eq!(verdicts(&plan, "lift"), [], "{}", texts(&plan, "lift"));
}

// The estimate is that of `HeadPlan`, from the hair as stated; which part of it is far below is assumed.
#[rstest]
#[case::less_than_the_least(0.9, 0.0, Some(Warning))]
#[case::less_than_half(0.0, 0.45, Some(Note))]
#[case::more_than_half(0.0, 0.55, None)]
#[case::more_than_the_estimate(0.0, 1.5, None)]
fn a_stated_mix_is_held_against_the_hair(#[case] of_low: f64, #[case] of_best: f64, #[case] want: Option<Verdict>) {
    let long = || {
        changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(60.0);
            file.section[0].mix_g = None;
        })
    };
    let takes = long().head.sections[0].takes.unwrap();
    assert!(takes.low().g() < 0.45 * takes.best().g(), "the hair of a stranger is known that badly");
    let stated = of_low * takes.low().g() + of_best * takes.best().g();
    let plan = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(60.0);
        file.section[0].mix_g = Some(stated);
    });
    assert_eq!(verdicts(&plan, "amount"), Vec::from_iter(want), "{stated} g of {takes:?}");
    // What such a section really took narrows the estimate, so that the same mass is enough.
    let known = changed(only_lightener(), |file| {
        file.analysis.length_cm = Some(60.0);
        file.section[0].mix_g = Some(stated);
        file.section[0].used_g = Some(stated);
    });
    assert_eq!(verdicts(&known, "amount"), []);
}

/// The estimate itself, stated, is neither too little nor far from it.
#[test]
fn a_mix_as_the_hair_takes_it_is_enough() {
    let worked = |mix_g| {
        changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(90.0);
            file.section[0].mix_g = mix_g;
        })
    };
    let takes = worked(None).head.sections[0].takes.unwrap();
    assert_eq!(verdicts(&worked(Some(takes.best().g())), "amount"), []);
    assert_eq!(verdicts(&worked(Some(takes.low().g() * 0.9)), "amount"), [Warning]);
}
