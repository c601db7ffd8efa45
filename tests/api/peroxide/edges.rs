//! The edges of what can be had, and what decides where two ways are equal. By hand, or by every combination.

use super::{
    by_hand::fact,
    shelf_errors::{g, ml, ww},
};
use crate::api::common::{all_near, near};
use foilwork::{
    peroxide::{
        Bearing, Conditions, MakeUpError, Objective, PreDilution, Shelf, SolutionDensity, Stock, Strength,
        StrengthUnit, Titration, blend_shelf, blend_shelf_to_scale, convert, density, dilution_table, loss_rate,
        mix_strengths, mix_volumes, strength_after_make_up, trace_conversion,
    },
    quantity::{
        AmountConcentration, Density, Duration, MassFraction, OxygenVolumes, PricePerKg, Quantity, Temperature,
    },
    source::Interval,
};
use rstest::rstest;

/// Bottles by strength, price of a kg and grams in hand, in the order of the alphabet.
fn shelf(stocks: &[(f64, f64, Option<f64>)]) -> Shelf {
    let stock = |(name, (percent, price, in_hand)): (char, &(f64, f64, Option<f64>))| {
        let stock = Stock::new(name, ww(*percent)).with_price(PricePerKg::from_per_kg(*price).unwrap());
        in_hand.map_or(stock.clone(), |mass| stock.with_in_hand(g(mass)))
    };
    Shelf::new(('A'..).zip(stocks).map(stock).collect()).unwrap()
}

fn names(blend: &foilwork::peroxide::ShelfBlend) -> String {
    blend.portions.iter().map(|portion| portion.stock.name.as_str()).collect()
}

/// 81 g of 6 % on a scale of 1 g. 9 % and water are 54 and 27 g, weighed as they are. 11 % and water are 44.18 and 36.82, weighed as 44
/// and 37, or 5.975 %; 12 % and water 40.5 each, weighed as 40 and 41 at best, or 5.93 % or 6.07 %. What is equal in cost and in what the
/// scale moves is taken in the order of the shelf; two prices of 4 and 3 make 40.5 g of 12 % as dear as 54 g of 9 %.
#[rstest]
#[case::weighable_and_as_dear_first(&[(9.0, 3.0, None), (12.0, 4.0, None), (0.0, 0.0, None)], "AC")]
#[case::weighable_and_as_dear_last(&[(12.0, 4.0, None), (9.0, 3.0, None), (0.0, 0.0, None)], "BC")]
#[case::moved_less_first(&[(11.0, 0.0, None), (12.0, 0.0, None), (0.0, 0.0, None)], "AC")]
#[case::moved_less_last(&[(12.0, 0.0, None), (11.0, 0.0, None), (0.0, 0.0, None)], "BC")]
#[case::moved_down_first(&[(11.0, 0.0, None), (9.0, 0.0, None), (0.0, 0.0, None)], "BC")]
#[case::moved_down_last(&[(9.0, 0.0, None), (11.0, 0.0, None), (0.0, 0.0, None)], "AC")]
#[case::like_bottles(&[(9.0, 5.0, None), (9.0, 5.0, None), (0.0, 0.0, None)], "AC")]
#[case::one_bottle_is_fewer(&[(12.0, 0.0, None), (0.0, 0.0, None), (6.0, 99.0, None)], "C")]
#[case::no_pair_will_do(&[(7.0, 0.0, Some(60.0)), (8.0, 0.0, Some(10.0)), (3.0, 0.0, Some(40.0))], "ABC")]
fn of_as_few_bottles_one_is_chosen(#[case] stocks: &[(f64, f64, Option<f64>)], #[case] want: &str) {
    let blend = blend_shelf_to_scale(&shelf(stocks), ww(6.0), g(81.0), Objective::FewestBottles, g(1.0)).unwrap();
    assert_eq!(names(&blend), want);
}

/// For 40 g of 6 %. Of 50 g of 12 % 20 g are taken and 30 stay; 10 g of 12 %, 20 g of 6 % and water leave nothing, and so three bottles
/// are better than two. What leaves as much and takes as many bottles is told apart by its cost, and then by its place on the shelf.
#[rstest]
#[case::nothing_left(&[(12.0, 0.0, Some(50.0)), (12.0, 0.0, Some(10.0)), (6.0, 0.0, Some(20.0)), (0.0, 0.0, None)], "BCD", 0.0)]
#[case::cheaper_first(&[(12.0, 2.0, Some(100.0)), (12.0, 9.0, Some(100.0)), (0.0, 0.0, None)], "AC", 80.0)]
#[case::cheaper_last(&[(12.0, 9.0, Some(100.0)), (12.0, 2.0, Some(100.0)), (0.0, 0.0, None)], "BC", 80.0)]
#[case::like_bottles(&[(12.0, 2.0, Some(100.0)), (12.0, 2.0, Some(100.0)), (0.0, 0.0, None)], "AC", 80.0)]
#[case::like_bottles_without_end(&[(12.0, 2.0, None), (12.0, 2.0, None), (0.0, 0.0, None)], "AC", 0.0)]
#[case::fewer_bottles(&[(12.0, 0.0, None), (0.0, 0.0, None), (6.0, 50.0, None)], "C", 0.0)]
fn of_what_leaves_as_little_one_is_chosen(
    #[case] stocks: &[(f64, f64, Option<f64>)],
    #[case] want: &str,
    #[case] leftover: f64,
) {
    let blend = blend_shelf(&shelf(stocks), ww(6.0), g(40.0), Objective::LeastLeftover).unwrap();
    assert_eq!(names(&blend), want);
    near(blend.leftover().g(), leftover, 1e-6);
}

/// What the bottles come to together can be made, by taking all of each: rounding in the sums is no reason to refuse it. The strength is
/// the mean by mass.
#[test]
fn all_that_is_in_hand_can_be_used_up() {
    let mut tried = 0;
    for step in 1..60 {
        let part = |times: f64, most: f64| (f64::from(step) * times) % most + 0.1;
        let stocks = [
            (part(1.37, 12.0), part(7.3, 90.0)),
            (part(2.11, 12.0), part(3.9, 70.0)),
            (part(0.73, 12.0), part(11.7, 80.0)),
        ];
        let all = shelf(&stocks.map(|(percent, mass)| (percent, 1.0, Some(mass))));
        let total: f64 = stocks.iter().map(|(_, mass)| mass).sum();
        let mean = stocks.iter().map(|(percent, mass)| percent * mass).sum::<f64>() / total;
        for objective in Objective::ALL {
            let blend = blend_shelf(&all, ww(mean), g(total), *objective).unwrap();
            let taken: Vec<f64> = blend.portions.iter().map(|portion| portion.mass.g()).collect();
            all_near(&taken, &stocks.map(|(_, mass)| mass), 1e-9 * total);
            tried += 1;
        }
    }
    assert_eq!(tried, 59 * 3);
}

/// From 9 % to 12 % in either order: the ends themselves can be had, of one bottle each.
#[rstest]
#[case(&[(12.0, 0.0, None), (9.0, 0.0, None)], "A", "B")]
#[case(&[(9.0, 0.0, None), (12.0, 0.0, None)], "B", "A")]
#[case(&[(10.0, 0.0, None), (12.0, 0.0, None), (9.0, 0.0, None), (11.0, 0.0, None)], "B", "C")]
fn a_shelf_reaches_from_its_weakest_to_its_strongest(
    #[case] stocks: &[(f64, f64, Option<f64>)],
    #[case] strongest: &str,
    #[case] weakest: &str,
) {
    for objective in Objective::ALL {
        let blend = |percent| blend_shelf(&shelf(stocks), ww(percent), g(80.0), *objective);
        assert_eq!(names(&blend(12.0).unwrap()), strongest);
        assert_eq!(names(&blend(9.0).unwrap()), weakest);
        assert_eq!(
            blend(8.9).unwrap_err().to_string(),
            "cannot reach 8.9 % w/w: the weakest stock is 9 % w/w, so anything from 9 % w/w to 12 % w/w is reachable (add a \
             diluent to go lower)"
        );
        assert_eq!(
            blend(12.1).unwrap_err().to_string(),
            "cannot reach 12.1 % w/w: the strongest stock is 12 % w/w, so anything from 9 % w/w to 12 % w/w is reachable"
        );
    }
}

/// Sixteen bottles are as many as are searched through.
#[test]
fn sixteen_bottles_are_searched() {
    let stocks: Vec<_> = (0..16).map(|percent| (f64::from(percent), 1.0, None)).collect();
    let blend = blend_shelf(&shelf(&stocks), ww(7.0), g(80.0), Objective::FewestBottles).unwrap();
    assert_eq!(names(&blend), "H");
}

fn past(bound: Option<(f64, bool)>, side: impl Fn(f64, f64) -> bool, point: f64) -> bool {
    bound.is_none_or(|(at, included)| side(point, at) || (included && point == at))
}

/// A class applies where every strength of a span is in it, and may apply where one is: asked of the ends, of the bounds and of what is
/// between them, with each bound included, excluded and missing.
#[test]
fn a_class_bears_on_a_span_as_on_its_strengths() {
    let ends = |at| [None, Some((at, true)), Some((at, false))];
    let points = [0.0, 4.0, 7.9, 8.0, 8.1, 20.0, 34.9, 35.0, 35.1, 60.0];
    let mut seen = [0; 3];
    for lower in ends(8.0) {
        for upper in ends(35.0) {
            if lower.is_none() && upper.is_none() {
                continue;
            }
            let fact = fact(lower, upper);
            let holds = |point: f64| past(lower, |a, b| a > b, point) && past(upper, |a, b| a < b, point);
            for (place, low) in points.into_iter().enumerate() {
                for high in points.into_iter().skip(place) {
                    let inside = points.into_iter().filter(|point| (low..=high).contains(point)).map(holds);
                    let (all, some) = inside.fold((true, false), |(all, some), one| (all && one, some || one));
                    let want = if all { Some(Bearing::Applies) } else { some.then_some(Bearing::MayApply) };
                    let span = Interval::ordered(ww(low), ww(low), ww(high));
                    assert_eq!(fact.bears_on(span), want, "{lower:?} {upper:?} {low} {high}");
                    seen[if all {
                        0
                    } else if some {
                        1
                    } else {
                        2
                    }] += 1;
                }
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 20), "{seen:?}");
}

/// 12 to 2.99 is 1 and 3.01, within half a percent of three parts. Parts that are no round ratio are found up to twenty together.
#[rstest]
#[case(12.0, 12.0 / 4.01, Some([1, 3]))]
#[case(12.0, 12.0 / 4.02, None)]
#[case(12.0, 12.0 / 11.0, Some([1, 10]))]
#[case(12.0, 12.0 * 11.0 / 20.0, Some([11, 9]))]
#[case(12.0, 12.0 * 13.0 / 21.0, None)]
fn parts_are_within_half_a_percent(#[case] from: f64, #[case] to: f64, #[case] parts: Option<[u32; 2]>) {
    let table = dilution_table(&[ww(from)], &[ww(to)], ww(0.0), g(1000.0), g(0.01)).unwrap();
    assert_eq!(table.rows[0].weigh.as_ref().unwrap().parts, parts);
}

/// With a weaker developer instead of water: 12 % and 3 % make 6 % in one and two parts, 9 % in two and one.
#[test]
fn parts_count_the_strength_of_the_weaker_one() {
    let table = dilution_table(&[ww(12.0)], &[ww(6.0), ww(9.0), ww(3.0)], ww(3.0), g(90.0), g(0.1)).unwrap();
    let of = |row: usize| table.rows[row].weigh.as_ref().unwrap();
    assert_eq!(
        (of(0).parts, of(0).diluent_parts, of(0).stock, of(0).diluent),
        (Some([1, 2]), Some(2.0), g(30.0), g(60.0))
    );
    assert_eq!(
        (of(1).parts, of(1).diluent_parts, of(1).stock, of(1).diluent),
        (Some([2, 1]), Some(0.5), g(60.0), g(30.0))
    );
    assert_eq!((of(2).parts, of(2).diluent_parts, of(2).stock), (None, None, g(0.0)));
}

/// A part of which nothing is weighed changes nothing, not in the last bit: 0.1 g of 0.1 % are 0.1 %.
#[test]
fn a_part_of_nothing_changes_nothing() {
    for other in [0.0, 12.0, 100.0] {
        let mixed = mix_strengths(&[(ww(0.1), g(0.1)), (ww(other), g(0.0))]).unwrap();
        assert_eq!((mixed.strength, mixed.total), (Interval::exact(ww(0.1)), g(0.1)));
    }
}

/// The bounds of what is poured are the least and the most that any corner gives: each part as heavy and as strong as it may be, or as
/// light and as weak.
#[test]
fn what_is_poured_is_bounded_by_its_corners() {
    let at = Temperature::REFERENCE;
    let span = |low, best, high| Interval::ordered(low, best, high).map(MassFraction::nearest);
    let parts = [(span(11.5, 12.0, 12.5), 100.0), (span(3.0, 3.0, 3.0), 50.0), (span(5.0, 6.0, 7.0), 70.0)];
    let mixed = mix_volumes(&parts.map(|(strength, volume)| (strength, ml(volume))), at).unwrap();
    let rho = |strength: MassFraction| density(strength, at).unwrap();
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for corner in 0..64_u32 {
        let (mut mass, mut peroxide) = (0.0, 0.0);
        for (place, (strength, volume)) in parts.iter().enumerate() {
            let bit = |which: usize| corner >> (2 * place + which) & 1 == 1;
            let percent = if bit(0) { strength.high() } else { strength.low() };
            let heavy = if bit(1) { rho(strength.high()).high() } else { rho(strength.low()).low() };
            mass += volume * heavy.g_per_ml();
            peroxide += volume * heavy.g_per_ml() * percent.ww_percent();
        }
        (least, most) = (least.min(peroxide / mass), most.max(peroxide / mass));
    }
    near(mixed.strength.low().ww_percent(), least, 1e-9);
    near(mixed.strength.high().ww_percent(), most, 1e-9);
    assert!(least < 7.6 && most > 8.6, "{least} {most}");
}

/// A measured density of 1.08 from 1.05 to 1.10 g/mL: 6 % w/w are 64.8 g/L, from 63 to 66.
#[test]
fn measured_bounds_stand_around_what_was_measured() {
    let measured = Interval::ordered(1.05, 1.08, 1.10).map(Density::nearest);
    let product = Conditions::default().with_density(SolutionDensity::Measured(measured));
    let six = Strength::of(6.0, StrengthUnit::WwPercent).unwrap();
    let found = foilwork::peroxide::convert_interval(six, StrengthUnit::GPerL, &product).unwrap();
    all_near(&found.to_array().map(Strength::number), &[63.0, 64.8, 66.0], 1e-9);
    let litre = Strength::of(64.8, StrengthUnit::GPerL).unwrap();
    let found = foilwork::peroxide::convert_interval(litre, StrengthUnit::WwPercent, &product).unwrap();
    all_near(&found.to_array().map(Strength::number), &[64.8 / 11.0, 6.0, 64.8 / 10.5], 1e-9);
}

/// Round factors stay round: a tenth of every whole number of g/L in % w/v, ten times as many back.
#[test]
fn a_factor_of_ten_is_exact_both_ways() {
    for whole in 1..=2000 {
        let (litre, tenth) = (f64::from(whole), f64::from(whole) / 10.0);
        let turn = |number, from, to| {
            convert(Strength::of(number, from).unwrap(), to, &Conditions::default()).unwrap().number()
        };
        assert_eq!(turn(litre, StrengthUnit::GPerL, StrengthUnit::WvPercent), tenth);
        assert_eq!(turn(litre / 16.0, StrengthUnit::WvPercent, StrengthUnit::GPerL), 10.0 * (litre / 16.0));
    }
}

/// What is taken may fill the flask to its mark; the mark of a dilution may be where it was taken from.
#[test]
fn a_mark_may_be_reached_exactly() {
    let stock = OxygenVolumes::from_volumes(20.0).unwrap();
    assert_eq!(strength_after_make_up(stock, ml(100.0), ml(100.0)), Ok(stock));
    assert!(matches!(strength_after_make_up(stock, ml(100.1), ml(100.0)), Err(MakeUpError::AboveMark { .. })));
    let exact = |value| Interval::exact(ml(value));
    let titrant = Interval::exact(AmountConcentration::from_mol_per_l(0.02).unwrap());
    let plain = Titration { titrant, aliquot: exact(10.0), dilution: None };
    let same = Some(PreDilution { taken: exact(25.0), made_up_to: exact(25.0) });
    // 2.5 x 0.02 x 12 / 10.
    for dilution in [None, same] {
        let found = Titration { dilution, ..plain }.strength(exact(12.0)).unwrap().best();
        near(found.mol_per_l(), 0.06, 1e-12);
    }
}

/// A strength whose lower bound is nothing has no rate; between two that are equal none is lost, and zero has no sign.
#[test]
fn a_rate_needs_something_to_lose() {
    let span = |low, best, high| Interval::ordered(low, best, high).map(MassFraction::nearest);
    let day = Duration::from_days(1.0).unwrap();
    for (first, later) in [
        (span(0.0, 6.0, 7.0), span(5.0, 5.0, 5.0)),
        (span(6.0, 6.0, 6.0), span(0.0, 5.0, 5.5)),
        (span(0.0, 6.0, 7.0), span(0.0, 5.0, 6.0)),
    ] {
        let said = loss_rate(first, later, day).unwrap_err().to_string();
        assert_eq!(said, "the lower bound of a strength is zero: give more than 0");
    }
    let none = loss_rate(span(6.0, 6.0, 6.0), span(6.0, 6.0, 6.0), day).unwrap().best().per_day();
    assert_eq!((none, none.is_sign_positive()), (0.0, true));
}

/// The steps of every conversion, as `STEPS` names them for either side; where a density stands between, it is said in which direction.
#[test]
fn a_conversion_tells_its_steps() {
    let units = [
        (StrengthUnit::WwPercent, "", ""),
        (StrengthUnit::GPerL, "", ""),
        (
            StrengthUnit::MolPerKg,
            "% w/w = 100 x mol/kg x M / (1000 + mol/kg x M)",
            "mol/kg = 1000 x % w/w / ((100 - % w/w) x M)",
        ),
        (
            StrengthUnit::ActiveOxygenPercent,
            "% w/w = % active oxygen x M / molar mass of oxygen",
            "% active oxygen = % w/w x molar mass of oxygen / M",
        ),
        (StrengthUnit::WvPercent, "g/L = 10 x % w/v", "% w/v = g/L / 10"),
        (StrengthUnit::MolPerL, "g/L = mol/L x M", "mol/L = g/L / M"),
        (StrengthUnit::EqPerL, "g/L = N x M / 2", "N = 2 x g/L / M"),
        (StrengthUnit::Volumes, "g/L = volumes x 2 x M / molar volume", "volumes = g/L x molar volume / (2 x M)"),
    ];
    for (from, to_base, _) in units {
        for (to, _, from_base) in units {
            let density = match (from.is_by_mass(), to.is_by_mass()) {
                (true, false) => "g/L = 10 x % w/w x density",
                (false, true) => "% w/w = g/L / (10 x density)",
                _ => "",
            };
            let steps: Vec<&str> = [to_base, density, from_base].into_iter().filter(|step| !step.is_empty()).collect();
            let want = if from == to || steps.is_empty() { "as stated".to_owned() } else { steps.join("; ") };
            let strength = Strength::of(1.0, from).unwrap();
            let told = trace_conversion(strength, to, &Conditions::default()).unwrap();
            assert_eq!((&*told.formula, told.what), (want.as_str(), format!("strength in {to}")));
            assert_eq!(
                (told.inputs[0].what.as_str(), told.inputs[0].unit.as_str()),
                ("strength as stated", from.code())
            );
            // What the formula names is given beside it.
            let named: Vec<&str> = told.inputs.iter().skip(1).map(|input| input.what.as_str()).collect();
            let uses = |word: &str| want.contains(word);
            let beside = [
                (uses(" M"), "M, molar mass of hydrogen peroxide"),
                (uses("molar mass of oxygen"), "molar mass of oxygen, O"),
                (uses("molar volume"), "molar volume, of oxygen"),
                (uses("density"), "density"),
            ];
            assert_eq!(named, beside.iter().filter(|(used, _)| *used).map(|(_, what)| *what).collect::<Vec<_>>());
        }
    }
}

/// 6 g in 100 g of a product of 1 g/mL, by molar masses of 34.014 and 15.999 g/mol and 22.413 969 545 L of oxygen a mole at 0 C: from each
/// unit into each.
#[test]
fn one_strength_in_every_unit() {
    let at = Conditions::default().with_density(SolutionDensity::measured(Density::from_g_per_ml(1.0).unwrap()));
    let moles = 60.0 / 34.014;
    let same = [
        (StrengthUnit::WwPercent, 6.0),
        (StrengthUnit::WvPercent, 6.0),
        (StrengthUnit::GPerL, 60.0),
        (StrengthUnit::MolPerL, moles),
        (StrengthUnit::EqPerL, 2.0 * moles),
        (StrengthUnit::Volumes, moles * 22.413_969_545 / 2.0),
        (StrengthUnit::MolPerKg, 60.0 / (0.94 * 34.014)),
        (StrengthUnit::ActiveOxygenPercent, 6.0 * 15.999 / 34.014),
    ];
    assert_eq!(same.len(), StrengthUnit::ALL.len());
    for (from, number) in same {
        for (to, want) in same {
            let found = convert(Strength::of(number, from).unwrap(), to, &at).unwrap().number();
            near(found, want, 1e-9 * want);
        }
    }
}
