//! What every check keeps: the order of ingredients, the direction of more, and no green from memory.

use foilwork::limits::{self, Audience, Jurisdiction, Obtained, Purpose, Standing, Table, Use};
use foilwork::mix::{Cas, Composition, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use proptest::prelude::*;

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

fn bowl(ingredients: Vec<Ingredient>) -> Composition {
    Composition::mix(vec![(Mass::from_g(100.0).unwrap(), Product::declared("bowl", ingredients))]).unwrap()
}

fn diamines(toluenediamine: f64, substituted: f64, methyl: f64) -> Vec<Ingredient> {
    vec![
        Ingredient::named("toluene-2,5-diamine", exact(toluenediamine)).with_cas("95-70-5".parse().unwrap()),
        Ingredient::named("a substituted diamine", exact(substituted))
            .in_group("n-substituted-p-phenylenediamines")
            .stated_as(foilwork::mix::Form::FreeBase),
        Ingredient::named("a methyl diamine", exact(methyl))
            .in_group("methylphenylenediamines")
            .stated_as(foilwork::mix::Form::FreeBase),
    ]
}

fn jurisdiction() -> impl Strategy<Value = Jurisdiction> {
    prop::sample::select(Jurisdiction::ALL.to_vec())
}

fn any_use() -> impl Strategy<Value = Use> {
    let purposes = [Purpose::OxidativeColour, Purpose::NonOxidativeColour, Purpose::Lightening, Purpose::LashColour];
    let audiences = [Audience::Professional, Audience::General];
    (prop::sample::select(purposes.to_vec()), prop::sample::select(audiences.to_vec()))
        .prop_map(|(purpose, audience)| Use { purpose, audience })
}

proptest! {
    /// The sum rule of entries 8, 9 and 9a does not ask which came first, and is the sum of level over own maximum
    /// (3 % for entry 8, 5 % for 9, 2 % for 9a; Regulation (EC) No 1223/2009, Annex III).
    #[test]
    fn the_ratio_sum_is_symmetric(a in 0.0..3.0_f64, b in 0.0..4.0_f64, c in 0.0..6.0_f64, turn in 0_usize..3) {
        let mut turned = diamines(a, b, c);
        turned.rotate_left(turn);
        turned.reverse();
        let (one, two) = (bowl(diamines(a, b, c)), bowl(turned));
        let table = Table::of(Jurisdiction::EuropeanUnion);
        let of = Use::professional(Purpose::OxidativeColour);
        let (one, two) = (limits::check(table, &one, of), limits::check(table, &two, of));
        let sum = |report: &limits::Report<'_>| report.sums[0].sum.best();
        prop_assert!((sum(&one) - sum(&two)).abs() < 1e-12);
        // 9a has a second figure as sulfate; its ratio is the same within the digits of the law (0.2 %).
        let want = a / 2.0 + b / 3.0 + c / 5.0;
        prop_assert!((sum(&one) - want).abs() < 3e-3 * want.max(0.01), "{} for {want}", sum(&one));
        prop_assert_eq!(one.sums[0].is_exceeded(), sum(&one) > 1.0 + 1e-9);
    }

    /// A table from memory, or a product that is not declared, never gives "within".
    #[test]
    fn memory_is_never_green(j in jurisdiction(), of in any_use(), percent in 0.0..15.0_f64, cas in 0_usize..6) {
        let number = ["7722-84-1", "106-50-3", "95-70-5", "108-46-3", "7664-41-7", "124-43-6"][cas];
        let ingredient = Ingredient::named("x", exact(percent)).with_cas(number.parse().unwrap());
        let mixed = bowl(vec![ingredient]);
        let report = limits::check(Table::of(j), &mixed, of);
        for finding in report.judgements.iter().filter(|f| f.standing == Standing::Within) {
            let limit = finding.limit.expect("within what?");
            prop_assert!(limit.obtained != Obtained::FromMemory);
            prop_assert!(finding.margin_percentage_points().unwrap() >= -1e-6);
            let ceiling = limit.concentration.unwrap().ww_percent();
            prop_assert!(finding.level.high().ww_percent() <= ceiling * (1.0 + 1e-9));
        }
    }

    /// What is not declared counts as if it were all peroxide: green only when even then nothing is exceeded.
    #[test]
    fn what_is_not_declared_is_taken_for_the_worst(of in any_use(), percent in 0.0..15.0_f64, share in 80.0..99.9_f64) {
        let peroxide = Ingredient::named("hydrogen peroxide", exact(percent)).with_cas(Cas::HYDROGEN_PEROXIDE);
        let mixed = Composition::mix(vec![
            (Mass::from_g(share).unwrap(), Product::declared("developer", vec![peroxide])),
            (Mass::from_g(100.0 - share).unwrap(), Product::unknown("something")),
        ]).unwrap();
        for j in Jurisdiction::ALL.iter().copied() {
            let report = limits::check(Table::of(j), &mixed, of);
            prop_assert!(!report.is_within_everything_checked());
            for finding in report.judgements.iter().filter(|f| f.product.is_none() && f.standing == Standing::Within) {
                let ceiling = finding.limit.expect("within what?").concentration.unwrap().ww_percent();
                let worst = percent * share / 100.0 + (100.0 - share);
                prop_assert!(worst <= ceiling + 1e-6, "{worst} % could be in there");
            }
        }
    }

    /// More of a substance never turns "exceeded" into anything else.
    #[test]
    fn more_is_never_better(percent in 0.0..20.0_f64, more in 0.0..20.0_f64, of in any_use()) {
        let table = Table::of(Jurisdiction::EuropeanUnion);
        let check = |p: f64| {
            let mixed = bowl(vec![Ingredient::named("x", exact(p)).with_cas(Cas::HYDROGEN_PEROXIDE)]);
            limits::check(table, &mixed, of).is_exceeded()
        };
        prop_assert!(!check(percent) || check(percent + more));
    }

    #[test]
    fn reading_a_table_never_panics(text in "(id,rule,substance,applies_to,user,figure,unit,measured\n)?\\PC{0,80}") {
        let _ = Table::from_csv("any", &text);
    }

    /// While an ingredient that nobody can identify could release enough peroxide to cross the limit, no bowl is within.
    /// At most its own mass: the richest peroxide of all would be peroxide itself.
    #[test]
    fn no_bowl_with_a_possible_releaser_is_within(
        powder_g in 5.0..60.0_f64,
        developer_g in 5.0..120.0_f64,
        strength in 0.0..14.0_f64,
        unknown in 0.01..100.0_f64,
        place in jurisdiction(),
        of in any_use(),
        stated in prop::bool::ANY,
    ) {
        let g = |mass| Mass::from_g(mass).unwrap();
        let secret = Ingredient::named("a secret of the maker", exact(unknown));
        // A number that no table knows identifies nothing either.
        let secret = if stated { secret.with_cas("50-00-0".parse().unwrap()) } else { secret };
        let developer = Ingredient::named("hydrogen peroxide", exact(strength));
        let mixed = Composition::mix(vec![
            (g(powder_g), Product::declared("powder", vec![secret])),
            (g(developer_g), Product::declared("developer", vec![developer])),
        ]).unwrap();
        let report = limits::check(Table::of(place), &mixed, of);
        prop_assert!(!report.is_within_everything_checked());
        let most = (developer_g * strength + powder_g * unknown) / (powder_g + developer_g);
        for judgement in report.judgements.iter().filter(|judgement| judgement.product.is_none()) {
            let on_peroxide = judgement.limit.filter(|limit| limit.cas.contains(&Cas::HYDROGEN_PEROXIDE));
            if let Some(ceiling) = on_peroxide.and_then(|limit| limit.concentration) {
                let could_cross = most > ceiling.ww_percent() * (1.0 + 1e-6);
                prop_assert!(!(could_cross && judgement.standing == Standing::Within), "{judgement}");
            }
        }
    }
}
