use foilwork::{
    peroxide::{
        KnownMass, Objective, Shelf, ShelfBlend, ShelfError, Stock, blend_shelf, blend_two, mix_strengths,
        round_to_scale,
    },
    quantity::{Mass, MassFraction, PricePerKg},
};
use proptest::{collection::vec, prelude::*, sample::select};

fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

fn g(grams: f64) -> Mass {
    Mass::from_g(grams).unwrap()
}

const OBJECTIVES: &[Objective] = &[Objective::LeastCost, Objective::FewestBottles, Objective::LeastLeftover];

/// Bottles of whole percents (so that ties occur), some with an amount in hand.
fn shelf(most: usize) -> impl Strategy<Value = Shelf> {
    vec((0_u8..=12, 0.0..20.0_f64, proptest::option::of(1.0..80.0_f64)), 1..=most).prop_map(|bottles| {
        let stock = |(place, (percent, price, in_hand)): (usize, (u8, f64, Option<f64>))| {
            let stock = Stock::new(format!("bottle {place}"), ww(f64::from(percent)))
                .with_price(PricePerKg::from_per_kg(price).unwrap());
            match in_hand {
                Some(mass) => stock.with_in_hand(g(mass)),
                None => stock,
            }
        };
        Shelf::new(bottles.into_iter().enumerate().map(stock).collect()).unwrap()
    })
}

fn strength(blend: &ShelfBlend) -> f64 {
    let parts: Vec<_> = blend.portions.iter().map(|p| (p.stock.strength, p.mass)).collect();
    mix_strengths(&parts).unwrap().strength.best().ww_percent()
}

proptest! {
    #[test]
    fn a_blend_keeps_mass_peroxide_and_stock(
        shelf in shelf(8), target in 0.0..12.0_f64, total in 1.0..100.0_f64, objective in select(OBJECTIVES),
    ) {
        match blend_shelf(&shelf, ww(target), g(total), objective) {
            Ok(blend) => {
                prop_assert!((blend.total().g() / total - 1.0).abs() < 1e-9);
                prop_assert!((strength(&blend) - target).abs() < 1e-9, "{}", strength(&blend));
                for portion in &blend.portions {
                    prop_assert!(portion.stock.in_hand.is_none_or(|mass| portion.mass.g() <= mass.g() * (1.0 + 1e-12)));
                }
            }
            Err(ShelfError::AmountsInHand { weakest, strongest, most, .. }) => {
                prop_assert!(ww(target) < weakest || ww(target) > strongest);
                prop_assert!(most.g() < total);
                // What the error offers can be had.
                if most.g() > 1e-6 {
                    let less = g(most.g() * (1.0 - 1e-9));
                    prop_assert!(blend_shelf(&shelf, ww(target), less, objective).is_ok());
                }
                let inside = ww(0.5 * (weakest.ww_percent() + strongest.ww_percent()));
                prop_assert!(blend_shelf(&shelf, inside, g(total), objective).is_ok());
            }
            Err(ShelfError::Blend(_) | ShelfError::NotEnough { .. }) => {}
            Err(other) => prop_assert!(false, "{other}"),
        }
    }

    #[test]
    fn each_objective_is_best_at_what_it_is_for(shelf in shelf(7), target in 0.0..12.0_f64, total in 1.0..100.0_f64) {
        let all: Vec<_> = OBJECTIVES.iter().map(|&o| blend_shelf(&shelf, ww(target), g(total), o)).collect();
        let [Ok(cheap), Ok(few), Ok(left)] = all.as_slice() else {
            prop_assert!(all.iter().all(Result::is_err), "reachable for one is reachable for all");
            return Ok(());
        };
        for other in [cheap, few, left] {
            prop_assert!(cheap.cost() <= other.cost() + 1e-9);
            prop_assert!(few.portions.len() <= other.portions.len());
            prop_assert!(left.leftover().g() <= other.leftover().g() + 1e-6);
        }
    }

    #[test]
    fn two_bottles_are_the_alligation(
        a in 0.0..=100.0_f64, b in 0.0..=100.0_f64, share in 0.0..=1.0_f64, total in 1.0..1e4_f64,
        prices in (0.0..50.0_f64, 0.0..50.0_f64),
    ) {
        prop_assume!((a - b).abs() > 1e-3);
        let target = ww((a + share * (b - a)).clamp(a.min(b), a.max(b)));
        let price = |p| PricePerKg::from_per_kg(p).unwrap();
        let shelf = Shelf::new(vec![
            Stock::new("a", ww(a)).with_price(price(prices.0)), Stock::new("b", ww(b)).with_price(price(prices.1)),
        ]).unwrap();
        let blend = blend_shelf(&shelf, target, g(total), Objective::LeastCost).unwrap();
        let two = blend_two(ww(a), ww(b), target, KnownMass::Total(g(total))).unwrap();
        let taken = |name: &str| blend.portions.iter().find(|p| p.stock.name == name).map_or(0.0, |p| p.mass.g());
        prop_assert!((taken("a") - two.first.g()).abs() < 1e-9 * total);
        prop_assert!((taken("b") - two.second.g()).abs() < 1e-9 * total);
    }

    #[test]
    fn rounding_keeps_total_and_whole_divisions(
        parts in vec((0.0..=12.0_f64, 0.0..200.0_f64), 1..6), division in select(&[0.01, 0.1, 0.5, 1.0, 2.0, 5.0][..]),
    ) {
        let parts: Vec<_> = parts.into_iter().map(|(percent, mass)| (ww(percent), g(mass))).collect();
        let total: f64 = parts.iter().map(|(_, mass)| mass.g()).sum();
        prop_assume!(total > division);
        let rounded = round_to_scale(&parts, g(division)).unwrap();
        prop_assert!((rounded.total.g() - total).abs() <= 0.5 * division + 1e-9);
        let two = parts.iter().filter(|(_, mass)| mass.g() > 0.0).count() <= 2;
        for ((_, exact), shown) in parts.iter().zip(&rounded.masses) {
            // More parts than two may add up to whole divisions, which then go where they spoil a share least.
            prop_assert!(!two || (shown.g() - exact.g()).abs() < division + 1e-9);
            let counts = shown.g() / division;
            prop_assert!((counts - counts.round()).abs() < 1e-9, "{shown} on a {division} g scale");
        }
        let peroxide: f64 = parts.iter().zip(&rounded.masses).map(|((w, _), m)| w.ww_percent() * m.g()).sum();
        prop_assert!((peroxide / rounded.total.g() - rounded.strength.best().ww_percent()).abs() < 1e-9);
    }

    #[test]
    fn mixing_is_the_same_in_any_order_and_within_its_parts(parts in vec((0.0..=100.0_f64, 0.01..500.0_f64), 1..8)) {
        let parts: Vec<_> = parts.into_iter().map(|(percent, mass)| (ww(percent), g(mass))).collect();
        let forth = mix_strengths(&parts).unwrap();
        let back = mix_strengths(&parts.iter().rev().copied().collect::<Vec<_>>()).unwrap();
        prop_assert!((forth.strength.best().ww_percent() - back.strength.best().ww_percent()).abs() < 1e-11);
        prop_assert!(parts.iter().any(|(w, _)| *w <= forth.strength.best()) && parts.iter().any(|(w, _)| *w >= forth.strength.best()));
    }
}

/// The cheapest by every corner of what can be weighed: all bottles but two are left full or taken whole, and the two make up mass and
/// peroxide. In price times grams.
fn cheapest_corner(bottles: &[(f64, f64, f64)], target: f64, total: f64) -> Option<f64> {
    let mut best: Option<f64> = None;
    let n = bottles.len();
    for (one, other) in (0..n).flat_map(|one| (0..n).map(move |other| (one, other))).filter(|(one, other)| one != other)
    {
        for whole in 0..1_u32 << n {
            let fixed = |place: usize| if whole >> place & 1 == 1 { bottles[place].2 } else { 0.0 };
            let rest: Vec<usize> = (0..n).filter(|place| *place != one && *place != other).collect();
            let mass = total - rest.iter().map(|place| fixed(*place)).sum::<f64>();
            let excess = -rest.iter().map(|place| fixed(*place) * (bottles[*place].0 - target)).sum::<f64>();
            let (a, b) = (bottles[one].0 - target, bottles[other].0 - target);
            // x + y = mass, a x + b y = excess; of two that are alike one is enough.
            let (x, y) = if (a - b).abs() < 1e-9 {
                (mass, 0.0)
            } else {
                ((excess - b * mass) / (a - b), (a * mass - excess) / (a - b))
            };
            let fits = |x: f64, cap: f64| (-1e-9..=cap + 1e-9).contains(&x);
            if fits(x, bottles[one].2) && fits(y, bottles[other].2) && (a * x + b * y - excess).abs() < 1e-7 {
                let cost = x * bottles[one].1 + y * bottles[other].1;
                let cost = cost + rest.iter().map(|place| fixed(*place) * bottles[*place].1).sum::<f64>();
                best = Some(best.map_or(cost, |best| best.min(cost)));
            }
        }
    }
    best
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    // A linear programme has its least in a corner.
    #[test]
    fn the_least_cost_is_that_of_the_cheapest_corner(shelf in shelf(4), target in 0.0..12.0_f64, total in 1.0..100.0_f64) {
        let bottle = |stock: &Stock| {
            let cap = stock.in_hand.map_or(total, |mass| mass.g().min(total));
            (stock.strength.best().ww_percent(), stock.price.map_or(0.0, PricePerKg::per_kg), cap)
        };
        let bottles: Vec<_> = shelf.stocks().iter().map(bottle).collect();
        prop_assume!(bottles.len() > 1);
        let want = cheapest_corner(&bottles, target, total);
        let found = blend_shelf(&shelf, ww(target), g(total), Objective::LeastCost).ok().map(|blend| blend.cost() * 1000.0);
        match (found, want) {
            (Some(found), Some(want)) => prop_assert!((found - want).abs() <= 1e-6 * want.max(1.0), "{found} {want}"),
            (None, None) => {}
            // On the very edge of what can be had rounding decides.
            (found, want) => prop_assert!(false, "{found:?} {want:?}"),
        }
    }
}
