//! What every bowl keeps: mass, ratio, strength between its parts, and the words of a recipe.

use foilwork::mix::{
    BowlRequest, Composition, Ingredient, Pace, Product, Ratio, Recipe, as_applied, bowls, minimum_bowl, minimum_mass,
};
use foilwork::quantity::{Duration, Mass, MassFraction, Share};
use foilwork::scale::weigh;
use foilwork::source::Interval;
use proptest::prelude::*;
use rust_decimal::Decimal;

fn mass(g: f64) -> Mass {
    Mass::from_g(g).unwrap()
}

fn strength(low: f64, best: f64, high: f64) -> Interval<MassFraction> {
    let mut bounds = [low, best, high];
    bounds.sort_by(f64::total_cmp);
    let [low, best, high] = bounds.map(|p| MassFraction::from_ww_percent(p).unwrap());
    Interval::new(low, best, high).unwrap()
}

prop_compose! {
    fn any_strength()(low in 0.0..40.0, best in 0.0..40.0, high in 0.0..40.0) -> Interval<MassFraction> {
        strength(low, best, high)
    }
}

fn division() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![0.01, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0])
}

/// Every way to give `units` whole divisions to the parts, and the smallest worst error among them.
fn least_worst_error(shares: &[f64], units: u32) -> f64 {
    fn rest(shares: &[f64], units: u32, total: f64) -> f64 {
        let error = |share: &f64, given: u32| (f64::from(given) / (share * total) - 1.0).abs();
        match shares {
            [] => f64::INFINITY,
            [only] => error(only, units),
            [first, others @ ..] => (0..=units)
                .map(|given| error(first, given).max(rest(others, units - given, total)))
                .fold(f64::INFINITY, f64::min),
        }
    }
    rest(shares, units, f64::from(units))
}

proptest! {
    #[test]
    fn weighed_parts_add_up_to_the_rounded_total(
        grams in prop::collection::vec(0.05..400.0_f64, 1..12),
        division in division(),
    ) {
        let parts: Vec<Mass> = grams.iter().map(|g| mass(*g)).collect();
        let total: f64 = grams.iter().sum();
        prop_assume!(total > division);
        let bowl = weigh(&parts, mass(division)).unwrap();
        let sum: f64 = bowl.parts().iter().map(|p| p.weighed.g()).sum();
        prop_assert!((sum - bowl.total().g()).abs() < 1e-9);
        prop_assert!((bowl.total().g() - total).abs() <= division / 2.0 + 1e-9);
        for part in bowl.parts() {
            let divisions = part.weighed.g() / division;
            prop_assert!((divisions - divisions.round()).abs() < 1e-9, "{} is no whole division", part.weighed);
        }
    }

    /// What is a whole number of divisions already is left alone.
    #[test]
    fn weighing_twice_changes_nothing(grams in prop::collection::vec(0.5..90.0_f64, 1..9), division in division()) {
        let parts: Vec<Mass> = grams.iter().map(|g| mass(*g)).collect();
        prop_assume!(grams.iter().sum::<f64>() > division);
        let once: Vec<Mass> = weigh(&parts, mass(division)).unwrap().parts().iter().map(|p| p.weighed).collect();
        let twice = weigh(&once, mass(division)).unwrap();
        prop_assert_eq!(&twice.parts().iter().map(|p| p.weighed).collect::<Vec<_>>(), &once);
        prop_assert!(twice.worst_ratio_error_percent() < 1e-9);
    }

    /// From the minimum up, rounding one mass to the scale is off by no more than the tolerance.
    #[test]
    fn the_minimum_mass_keeps_its_tolerance(division in division(), percent in 0.5..50.0_f64, more in 1.0..40.0_f64) {
        let least = minimum_mass(mass(division), Share::from_percent(percent).unwrap()).unwrap().g();
        let g = least * more;
        let off = ((g / division).round() * division / g - 1.0).abs() * 100.0;
        prop_assert!(off <= percent + 1e-9, "{g} g on {division} g: {off} %");
    }

    /// No other set of whole divisions with the same total has a smaller worst error of ratio.
    #[test]
    fn the_worst_error_of_ratio_is_the_least_possible(
        grams in prop::collection::vec(0.2..9.0_f64, 2..5),
    ) {
        let total: f64 = grams.iter().sum();
        prop_assume!((1.0..30.0).contains(&total));
        let parts: Vec<Mass> = grams.iter().map(|g| mass(*g)).collect();
        let bowl = weigh(&parts, mass(1.0)).unwrap();
        let shares: Vec<f64> = grams.iter().map(|g| g / total).collect();
        let best = 100.0 * least_worst_error(&shares, bowl.total().g().round() as u32);
        let got = bowl.worst_ratio_error_percent();
        prop_assert!((got - best).abs() < 1e-6, "got {got} %, brute force {best} %");
    }

    /// Scale, weigh, and compare the weighed ratio with the written one: within the error that was printed.
    #[test]
    fn scaling_then_weighing_keeps_the_ratio_within_the_printed_error(
        parts in prop::collection::vec(1_u32..400, 2..7),
        total in 20.0..400.0_f64,
        division in division(),
    ) {
        let ratio = Ratio::new(parts.iter().map(|p| Decimal::from(*p)).collect()).unwrap();
        let bowl = weigh(&ratio.split_total(mass(total)).unwrap(), mass(division)).unwrap();
        let printed = bowl.worst_ratio_error_percent();
        let sum: f64 = parts.iter().copied().map(f64::from).sum();
        for (part, weighed) in parts.iter().zip(bowl.parts()) {
            let (want, got) = (f64::from(*part) / sum, weighed.weighed.g() / bowl.total().g());
            prop_assert!((got / want - 1.0).abs() * 100.0 <= printed + 1e-6);
        }
    }

    #[test]
    fn a_bowl_from_the_bound_up_is_within_tolerance(
        parts in prop::collection::vec(1_u32..30, 2..5),
        percent in 2.0..30.0_f64,
        division in division(),
        more in 1.0..3.0_f64,
    ) {
        let ratio = Ratio::new(parts.iter().map(|p| Decimal::from(*p)).collect()).unwrap();
        let tolerance = Share::from_percent(percent).unwrap();
        let least = minimum_bowl(&ratio, mass(division), tolerance).unwrap();
        prop_assert!(least.first <= least.always_from);
        for total in [least.first, least.always_from, mass(least.always_from.g() * more)] {
            let bowl = weigh(&ratio.split_total(total).unwrap(), mass(division)).unwrap();
            prop_assert!(bowl.worst_ratio_error_percent() <= percent + 1e-6, "{total}");
        }
    }

    #[test]
    fn the_bowl_is_never_outside_its_parts(
        parts in prop::collection::vec((0.01..500.0_f64, any_strength()), 1..8),
    ) {
        let parts: Vec<_> = parts.into_iter().map(|(g, s)| (mass(g), s)).collect();
        let bowl = as_applied(&parts).unwrap();
        let extreme = |pick: fn(f64, f64) -> f64, of: fn(&Interval<MassFraction>) -> MassFraction, start: f64| {
            parts.iter().map(|(_, s)| of(s).ww_percent()).fold(start, pick)
        };
        prop_assert!(bowl.low().ww_percent() >= extreme(f64::min, Interval::low, 100.0));
        prop_assert!(bowl.high().ww_percent() <= extreme(f64::max, Interval::high, 0.0));
        prop_assert!(bowl.best().ww_percent() <= extreme(f64::max, Interval::best, 0.0));
        prop_assert!(bowl.low() <= bowl.best() && bowl.best() <= bowl.high());
    }

    /// Peroxide in equals peroxide out.
    #[test]
    fn mixing_conserves_the_solute(parts in prop::collection::vec((0.01..500.0_f64, 0.0..40.0_f64), 1..8)) {
        let total: f64 = parts.iter().map(|(g, _)| g).sum();
        let solute: f64 = parts.iter().map(|(g, p)| g * p).sum();
        let exact: Vec<_> = parts.iter().map(|(g, p)| (mass(*g), strength(*p, *p, *p))).collect();
        let bowl = as_applied(&exact).unwrap().best().ww_percent() * total;
        prop_assert!((bowl - solute).abs() <= 1e-9 * solute.max(1.0));
    }

    #[test]
    fn a_thickener_only_lowers_the_strength(g in 1.0..200.0_f64, percent in 0.1..20.0_f64, more in 0.1..50.0_f64) {
        let developer = (mass(g), strength(percent, percent, percent));
        let thin = as_applied(&[developer]).unwrap();
        let thick = as_applied(&[developer, (mass(more), strength(0.0, 0.0, 0.0))]).unwrap();
        prop_assert!(thick.best() < thin.best());
    }

    #[test]
    fn a_ratio_reads_back_and_its_shares_add_up(
        parts in prop::collection::vec((1_i64..99_999, 0_u32..4), 2..8),
        total in (1_i64..999_999, 0_u32..3),
    ) {
        let parts: Vec<Decimal> = parts.into_iter().map(|(m, scale)| Decimal::new(m, scale)).collect();
        let ratio = Ratio::new(parts).unwrap();
        prop_assert_eq!(&ratio.to_string().parse::<Ratio>().unwrap(), &ratio);
        let total = Decimal::new(total.0, total.1);
        let sum: Decimal = ratio.split_decimal(total).unwrap().iter().sum();
        prop_assert!((sum - total).abs() <= total * Decimal::new(1, 24));
        prop_assert!(ratio.same_mix(&ratio));
    }

    #[test]
    fn a_recipe_prints_back_what_was_read(
        parts in prop::collection::vec((1_i64..99_999, 0_u32..3, 0_usize..4, "[0-9a-zA-Z][0-9a-zA-Z./% -]{0,8}[0-9a-zA-Z%]"), 1..7),
    ) {
        let unit = |at: usize| ["g", "mL", "US fl oz", "UK fl oz"][at];
        let lines: Vec<String> =
            parts.iter().map(|(m, s, u, name)| format!("{} {} {name}", Decimal::new(*m, *s), unit(*u))).collect();
        let text = lines.join(" + ");
        prop_assert_eq!(text.parse::<Recipe>().unwrap().to_string(), text);
    }

    #[test]
    fn reading_never_panics(text in "\\PC{0,40}") {
        let _ = text.parse::<Recipe>();
        let _ = text.parse::<Ratio>();
        let _ = text.parse::<foilwork::mix::Cas>();
    }

    #[test]
    fn splitting_and_combining_gives_the_recipe_back(a in 1_i64..9_999, b in 1_i64..9_999, n in 1_u32..9) {
        let recipe: Recipe = format!("{} g J7-mist + {} g 6%", Decimal::new(a, 1), Decimal::new(b, 1)).parse().unwrap();
        let ratio = Ratio::new(vec![Decimal::ONE, Decimal::from(n)]).unwrap();
        let bowls = recipe.split(&ratio).unwrap();
        let again = bowls[0].combined(&bowls[1]).unwrap();
        for (got, want) in again.parts().iter().zip(recipe.parts()) {
            prop_assert!((got.amount.value - want.amount.value).abs() < Decimal::new(1, 20));
        }
    }

    #[test]
    fn bowls_cover_the_head_within_their_life(
        total in 10.0..900.0_f64,
        capacity in 30.0..200.0_f64,
        life in 5.0..60.0_f64,
        pace in 0.5..10.0_f64,
        residue in 0.0..20.0_f64,
        mixing in 0.0..6.0_f64,
    ) {
        let minutes = |m| Duration::from_min(m).unwrap();
        let request = BowlRequest::new(mass(total), mass(capacity), minutes(life), Pace::from_g_per_min(pace).unwrap())
            .residue(mass(residue))
            .mixing(minutes(mixing));
        let plan = bowls(&request).unwrap();
        prop_assert!((plan.applied().g() - total).abs() < 1e-6);
        prop_assert!((plan.leftover().g() - residue * plan.bowls().len() as f64).abs() < 1e-6);
        let mut clock = 0.0;
        for bowl in plan.bowls() {
            prop_assert!(bowl.mixed.g() <= capacity + 1e-9);
            prop_assert!(bowl.empty_at.min() <= bowl.use_by.min() + 1e-6);
            prop_assert!((bowl.mix_at.min() - clock).abs() < 1e-6, "mixed before the last bowl was empty");
            clock = bowl.empty_at.min();
        }
        // One bowl fewer would not do.
        let fewer = (plan.bowls().len() - 1) as f64;
        prop_assert!(fewer * (capacity - residue).min(pace * life) < total);
    }

    /// The same parts in another order are the same bowl.
    #[test]
    fn the_order_of_mixing_does_not_matter(a in 1.0..100.0_f64, b in 1.0..100.0_f64, x in 0.0..12.0_f64, y in 0.0..12.0_f64) {
        let product = |p: f64| Product::declared("p", vec![Ingredient::named("dye", strength(p, p, p))]);
        let one = Composition::mix(vec![(mass(a), product(x)), (mass(b), product(y))]).unwrap();
        let two = Composition::mix(vec![(mass(b), product(y)), (mass(a), product(x))]).unwrap();
        let level = |c: &Composition| c.constituents()[0].level.best().ww_percent();
        prop_assert!((level(&one) - level(&two)).abs() < 1e-9);
        prop_assert!((level(&one) * (a + b) - (a * x + b * y)).abs() < 1e-6);
    }
}
