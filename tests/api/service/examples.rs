//! The plans of the example files against sums done by hand. What is rounded is what the scale or the coin rounds.

use super::base::example;
use foilwork::{
    quantity::Duration,
    reader::Format,
    service::{Mix, Plan, SectionColour, plan_text},
};

fn planned(name: &str) -> Plan {
    plan_text(&example(name), Format::of_name(name)).unwrap()
}

fn mix<'p>(plan: &'p Plan, name: &str) -> &'p Mix {
    plan.mixes.iter().find(|mix| mix.name == name).unwrap()
}

/// Product and grams on the scale, bowl by bowl.
fn weighed(mix: &Mix) -> Vec<(&str, f64)> {
    mix.bowls.iter().flat_map(|bowl| &bowl.parts).map(|part| (part.product.as_str(), part.weigh.g())).collect()
}

fn on_hair(plan: &Plan, name: &str) -> f64 {
    mix(plan, name).on_hair.best().ww_percent()
}

fn minutes(times: &[Duration]) -> Vec<f64> {
    times.iter().map(|time| time.min()).collect()
}

/// Section, level now, target, levels to move: best estimates.
fn levels(colour: &SectionColour) -> (&str, f64, f64, f64) {
    let (from, change) = (colour.from_level.best(), colour.change_levels.best());
    (&colour.section, from.number(), colour.target_level.number(), change.levels())
}

fn close(got: f64, want: f64) {
    assert!((got - want).abs() < 1e-9, "got {got}, want {want}");
}

fn costs(plan: &Plan) -> Vec<(String, String)> {
    let cost = &plan.money.as_ref().unwrap().cost;
    let mut lines: Vec<_> = cost.lines().iter().map(|line| (line.what.clone(), line.amount.to_string())).collect();
    lines.push(("total".to_owned(), cost.total().to_string()));
    lines
}

fn pairs(lines: &[(&str, &str)]) -> Vec<(String, String)> {
    lines.iter().map(|(what, amount)| ((*what).to_owned(), (*amount).to_owned())).collect()
}

fn price(plan: &Plan) -> [String; 3] {
    let money = plan.money.as_ref().unwrap();
    let (set, taxed) = (money.price.as_ref().unwrap(), money.taxed.as_ref().unwrap());
    [set.price.to_string(), taxed.tax.to_string(), taxed.gross.to_string()]
}

#[test]
fn soft_gradient_masses_and_strengths() {
    let plan = planned("soft-gradient.toml");
    // 25 % of the trade's 180 g is 45 g: 15 g powder to 30 g developer, and 3 % of 45 g = 1.35 g of additive.
    // In all 46.35 g, on a scale of 0.1 g 46.4 g; the additive is the part that is rounded up.
    assert_eq!(
        weighed(mix(&plan, "nape")),
        [("Foam Line powder", 15.0), ("developer 6", 30.0), ("bond additive", 1.4)]
    );
    close(on_hair(&plan, "nape"), 30.0 * 6.0 / 46.4);
    // 4.5 % lies half way between 3 and 6 %: 15 g of each.
    assert_eq!(
        weighed(mix(&plan, "crown")),
        [("Foam Line powder", 15.0), ("developer 6", 15.0), ("developer 3", 15.0), ("bond additive", 1.4)]
    );
    close(on_hair(&plan, "crown"), (15.0 * 6.0 + 15.0 * 3.0) / 46.4);
    // 40 g at 1:1.5 are 16 g and 24 g; 4.5 % is half of each again.
    let hairline = [("Foam Line clay", 16.0), ("developer 6", 12.0), ("developer 3", 12.0)];
    assert_eq!(weighed(mix(&plan, "hairline")), hairline);
    close(on_hair(&plan, "hairline"), 24.0 * 4.5 / 40.0);
    // 60 g at 1:2 are 20 g and 40 g; of the 20 g a third, 6.67 g, and two thirds, 13.33 g.
    assert_eq!(weighed(mix(&plan, "lengths")), [("J9-mist", 6.7), ("J9-clear", 13.3), ("toner developer", 40.0)]);
    close(on_hair(&plan, "lengths"), 40.0 * 1.9 / 60.0);
    assert_eq!(weighed(mix(&plan, "root shadow, 3 cm")), [("J7-drift", 10.0), ("toner developer", 20.0)]);
    close(on_hair(&plan, "root shadow, 3 cm"), 20.0 * 1.9 / 30.0);
}

/// One pair of hands: 18, 16 and 12 min one after the other; then 30, 30 and 35 min to develop. Looks from 15 min after
/// the first strand on, every 5 min; the last strand of the nape is due at 18 + 15, of the hairline at 46 + 15.
#[test]
fn soft_gradient_times() {
    let plan = planned("soft-gradient.toml");
    let steps: Vec<_> = plan
        .order
        .iter()
        .map(|step| (step.name.as_str(), step.begin.min(), step.applied.min(), step.rinse_by.min()))
        .collect();
    assert_eq!(
        steps,
        [
            ("nape", 0.0, 18.0, 48.0),
            ("crown", 18.0, 34.0, 64.0),
            ("hairline", 34.0, 46.0, 81.0),
            ("lengths", 0.0, 5.0, 20.0),
            ("crown gloss", 5.0, 8.0, 20.0),
            ("root shadow, 3 cm", 8.0, 12.0, 20.0),
        ]
    );
    assert_eq!(minutes(&plan.order[0].look_at), [15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 48.0]);
    assert_eq!(minutes(&plan.order[2].look_at), [49.0, 54.0, 59.0, 64.0, 69.0, 74.0, 79.0, 81.0]);
    let last: Vec<_> = plan.order.iter().map(|step| step.look_at_last.map(|at| at.min())).collect();
    assert_eq!(last, [Some(35.0), Some(53.0), Some(64.0), None, None, None]);
    assert_eq!(minutes(&plan.order[3].look_at), [20.0]);
    let mixed: Vec<_> = plan.order.iter().flat_map(|step| minutes(&step.mix_at)).collect();
    assert_eq!(mixed, [0.0, 18.0, 34.0, 0.0, 5.0, 8.0]);
}

#[test]
fn soft_gradient_levels() {
    let plan = planned("soft-gradient.toml");
    let lifts: Vec<_> = plan.colour.iter().map(levels).collect();
    assert_eq!(lifts, [("nape", 6.0, 9.0, 3.0), ("crown", 6.0, 8.0, 2.0), ("hairline", 6.0, 9.0, 3.0)]);
}

/// Pack price times grams over grams of the pack, a half cent up:
/// 31.50*15/500 = 0.945; 8.90*30/1000 = 0.267; 42*1.4/250 = 0.2352; 8.90*15/1000 = 0.1335; 8.40*15/1000 = 0.126;
/// 36*16/500 = 1.152; 8.90*12/1000 = 0.1068; 8.40*12/1000 = 0.1008; 7.20*6.7/60 = 0.804; 7.20*13.3/60 = 1.596; 9.60*40/1000 = 0.384;
/// 7.20*5/60 = 0.60, twice; 9.60*20/1000 = 0.192, twice; 7.20*10/60 = 1.20; 34 foils: 18*34/500 = 1.224; 9*2/50 = 0.36.
/// The day: a bowl 3 min, a look 1, a section rinsed 3, the walk 2; hands that paint look every 5 min. Nape 3 to 24 with 3 looks,
/// crown 27 to 46 with 3, nape at the basin 51 to 56, hairline 59 to 73 with 2, crown at the basin 74 to 79, then 4 looks while
/// the hairline develops, rinsed as planned 35 min after its end: 108 to 111.
/// Toners: 3 bowls and 5+3+4 min of painting to 21, walk, 3 rinses from 3+20 on to 32.
/// Labour: 3*3+46+8+4+3*2+3*3 = 82 min, then 3*3+12+2+3*3 = 32, and 35 of other work: 149; 17.50*1.21/0.72*149/60 = 73.0341...
/// Overhead: 111+32+45 = 188 min; 19.20*188/60 = 60.16.
/// Price: 149.51/0.75 = 199.3466...; tax 199.35*0.19 = 37.8765.
#[test]
fn soft_gradient_money() {
    let plan = planned("soft-gradient.toml");
    let want = [
        ("Foam Line powder", "0.95 EUR"),
        ("developer 6", "0.27 EUR"),
        ("bond additive", "0.24 EUR"),
        ("Foam Line powder", "0.95 EUR"),
        ("developer 6", "0.13 EUR"),
        ("developer 3", "0.13 EUR"),
        ("bond additive", "0.24 EUR"),
        ("Foam Line clay", "1.15 EUR"),
        ("developer 6", "0.11 EUR"),
        ("developer 3", "0.10 EUR"),
        ("J9-mist", "0.80 EUR"),
        ("J9-clear", "1.60 EUR"),
        ("toner developer", "0.38 EUR"),
        ("J8-mist", "0.60 EUR"),
        ("J8", "0.60 EUR"),
        ("toner developer", "0.19 EUR"),
        ("J7-drift", "1.20 EUR"),
        ("toner developer", "0.19 EUR"),
        ("foil", "1.22 EUR"),
        ("gloves, pair", "0.36 EUR"),
        ("hands-on time", "73.03 EUR"),
        ("chair time", "56.96 EUR"),
        ("total", "141.40 EUR"),
    ];
    assert_eq!(costs(&plan), pairs(&want));
    assert_eq!(price(&plan), ["188.53 EUR", "35.82 EUR", "224.35 EUR"]);
}

/// 75 g at 1:1.5 are 30 g of two shades, 15 g each, and 45 g of developer; 45*6/75 = 3.6 % w/w by the label's usual
/// reading. Read as w/v in a cream from 8 % lighter to 2 % heavier than a clear 6 % solution (1.0204 g/mL at 20 C), the
/// bottle holds from 6/1.0408 = 5.76 % w/w; read as true oxygen volumes, 20 x 34.014/11.207 = 60.7 g/L, up to
/// 6.07/0.9388 = 6.47 % w/w.
#[test]
fn grey_blend_masses_and_strengths() {
    let plan = planned("grey-blend.toml");
    let regrowth = mix(&plan, "regrowth");
    assert_eq!(weighed(regrowth), [("J6", 15.0), ("J6-amber", 15.0), ("cream developer", 45.0)]);
    close(on_hair(&plan, "regrowth"), 45.0 * 6.0 / 75.0);
    let (low, high) = (regrowth.on_hair.low().ww_percent(), regrowth.on_hair.high().ww_percent());
    assert!((low - 0.6 * 5.76).abs() < 0.01 && (high - 0.6 * 6.47).abs() < 0.01, "{low} to {high}");
    let step = &plan.order[0];
    assert_eq!((step.begin.min(), step.applied.min(), step.rinse_by.min()), (0.0, 25.0, 65.0));
}

/// 9.50*15/100 = 1.425, twice; 7.90*45/1000 = 0.3555; 8*1/50 = 0.16. Labour: a bowl 3, painting 25 with
/// 4 looks, so on at 32, 40 min more with 6 looks, at the basin 70 to 75: 3+25+4+6+2+3+25 = 68 min; 14.20*1.18/0.70*68/60 = 27.128...
/// Overhead: 75+25 = 100 min; 16.50*100/60 = 27.50. Price: 58.01*1.6 = 92.816; tax 92.82*0.2 = 18.564.
#[test]
fn grey_blend_money() {
    let plan = planned("grey-blend.toml");
    let want = [
        ("J6", "1.43 GBP"),
        ("J6-amber", "1.43 GBP"),
        ("cream developer", "0.36 GBP"),
        ("gloves, pair", "0.16 GBP"),
        ("hands-on time", "27.13 GBP"),
        ("chair time", "27.50 GBP"),
        ("total", "58.01 GBP"),
    ];
    assert_eq!(costs(&plan), pairs(&want));
    assert_eq!(price(&plan), ["92.82 GBP", "18.56 GBP", "111.38 GBP"]);
}

/// 30 g at 1.9 % from 12 %: 30*1.9/12 = 4.75 g and 25.25 g, on 0.1 g 4.8 g and 25.2 g: 4.8*12/45 = 1.28 % on the hair.
/// 40 g at 1.9 %: 6.33 g and 33.67 g: 6.3*12/60 = 1.26 %. The 20 g of shades are shared 2 to 1.
#[test]
fn lowlights_masses_and_strengths() {
    let plan = planned("lowlights.json");
    assert_eq!(
        weighed(mix(&plan, "warm fill")),
        [("J8-ember", 15.0), ("developer 12", 4.8), ("maker's thinning base", 25.2)]
    );
    close(on_hair(&plan, "warm fill"), 1.28);
    assert_eq!(
        weighed(mix(&plan, "lowlights")),
        [("J7", 13.3), ("J7-amber", 6.7), ("developer 12", 6.3), ("maker's thinning base", 33.7)]
    );
    close(on_hair(&plan, "lowlights"), 1.26);
    let steps: Vec<_> = plan.order.iter().map(|s| (s.name.as_str(), s.begin.min(), s.rinse_by.min())).collect();
    assert_eq!(steps, [("warm fill", 0.0, 35.0), ("lowlights", 35.0, 75.0)]);
}

/// 7.20*15/60 = 1.80; 9.90*4.8/1000 = 0.0475; 6*25.2/500 = 0.3024; 7.20*13.3/60 = 1.596; 7.20*6.7/60 = 0.804;
/// 9.90*6.3/1000 = 0.0624; 6*33.7/500 = 0.4044; 36 foils: 18*36/500 = 1.296. The fill: a bowl 3, painting 20 with
/// 3 looks, 15 min more with 2 looks, rinsed 41 to 44; the lowlights wait for that: a bowl to 47, on at 70, 20 min more with 3 looks,
/// rinsed 90 to 93. Labour: 3+20+3+2+2+3 = 33, 3+20+3+3+2+3 = 34, 25 more: 92 min; 17.50*1.21/0.72*92/60 = 45.094...
/// Overhead: 93+25 = 118 min; 19.20*118/60 = 37.76. Price: 89.16/0.75 = 118.88; tax 118.88*0.19 = 22.5872.
#[test]
fn lowlights_money() {
    let plan = planned("lowlights.json");
    let want = [
        ("J8-ember", "1.80 EUR"),
        ("developer 12", "0.05 EUR"),
        ("maker's thinning base", "0.30 EUR"),
        ("J7", "1.60 EUR"),
        ("J7-amber", "0.80 EUR"),
        ("developer 12", "0.06 EUR"),
        ("maker's thinning base", "0.40 EUR"),
        ("foil", "1.30 EUR"),
        ("hands-on time", "45.09 EUR"),
        ("chair time", "37.76 EUR"),
        ("total", "89.16 EUR"),
    ];
    assert_eq!(costs(&plan), pairs(&want));
    assert_eq!(price(&plan), ["118.88 EUR", "22.59 EUR", "141.47 EUR"]);
}
