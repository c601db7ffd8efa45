//! How a level stands to its figure, case by case on a table of one's own; every sum by hand.

use foilwork::limits::{self, Purpose, Report, Standing, Table, Use, Why};
use foilwork::mix::{Composition, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

/// A ceiling of 2 %, as it is stated or from memory, and where nobody says in what it is meant.
fn ceiling(how: &str, measured: &str) -> Table {
    let head = "id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,how,legal_reference\n";
    let row = format!("one,maximum,Resorcinol,108-46-3,any,all,2,%,{measured},as-stated,{how},house rule\n");
    Table::from_csv("house", &format!("{head}{row}")).unwrap()
}

fn percent(value: f64) -> MassFraction {
    MassFraction::from_ww_percent(value).unwrap()
}

fn resorcinol([low, best, high]: [f64; 3]) -> Ingredient {
    let level = Interval::new(percent(low), percent(best), percent(high)).unwrap();
    Ingredient::named("resorcinol", level).with_cas("108-46-3".parse().unwrap())
}

fn judged(table: &Table, bowl: &Composition) -> Standing {
    let report: Report<'_> = limits::check(table, bowl, Use::professional(Purpose::OxidativeColour));
    report.judgements.iter().find(|one| one.limit.is_some()).unwrap().standing
}

/// 100 g of one product: what is not declared of it is what its parts leave of the whole.
fn bowl(product: Product) -> Composition {
    Composition::mix(vec![(Mass::from_g(100.0).unwrap(), product)]).unwrap()
}

const fn open(why: Why) -> Standing {
    Standing::CannotBeJudged { why }
}

/// At the figure is not above it; above it by all bounds, by the best, by the highest alone.
#[rstest]
#[case::at_it([2.0; 3], Standing::Within)]
#[case::below([0.5, 1.0, 2.0], Standing::Within)]
#[case::highest_alone([1.0, 2.0, 2.01], open(Why::Straddles))]
#[case::best([2.0, 2.01, 3.0], Standing::Exceeded { certain: false })]
#[case::all([2.01, 2.01, 2.01], Standing::Exceeded { certain: true })]
#[case::all_bounds([2.01, 3.0, 4.0], Standing::Exceeded { certain: true })]
fn a_level_stands_by_its_bounds(#[case] level: [f64; 3], #[case] want: Standing) {
    let bowl = bowl(Product::declared("shade", vec![resorcinol(level)]));
    assert_eq!(judged(&ceiling("", "as-applied"), &bowl), want);
    // What is not within is so whoever says the figure; what is within needs one that was read and says in what it is meant.
    let within = want == Standing::Within;
    let memory = judged(&ceiling("from-memory", "as-applied"), &bowl);
    assert_eq!(memory, if within { open(Why::Unverified) } else { want });
    let unsaid = judged(&ceiling("retrieved", "not-stated"), &bowl);
    assert_eq!(unsaid, if within { open(Why::BasisNotStated) } else { want });
    let both = judged(&ceiling("from-memory", "not-stated"), &bowl);
    assert_eq!(both, if within { open(Why::Unverified) } else { want });
}

/// Half of the bowl states how much dye it has, half of that is in the bowl; of the other half, declared in part, what its water leaves
/// could be the same dye. 1.9 % and 0.1 % are 2 %, which is not above.
#[rstest]
#[case::nothing_left(2.0, 100.0, Standing::Within)]
#[case::could_just_be(3.8, 99.8, Standing::Within)]
#[case::could_be_more(3.8, 99.7, open(Why::Undeclared))]
#[case::above_as_declared(4.2, 90.0, Standing::Exceeded { certain: true })]
fn what_is_not_declared_could_be_more_of_it(#[case] level: f64, #[case] water: f64, #[case] want: Standing) {
    let water = Ingredient::named("water", Interval::exact(percent(water))).with_cas("7732-18-5".parse().unwrap());
    let half = |product| (Mass::from_g(50.0).unwrap(), product);
    let shade = half(Product::declared("shade", vec![resorcinol([level; 3])]));
    let bowl = Composition::mix(vec![shade, half(Product::declared_in_part("cream", vec![water]))]).unwrap();
    assert_eq!(judged(&ceiling("", "as-applied"), &bowl), want);
}

/// Two dyes of one group with ceilings of 2 and 4 %: their shares of these are added up. One alone is no sum.
fn grouped(how: &str) -> Table {
    let head =
        "id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,how,sum_group,legal_reference\n";
    let one = format!("one,maximum,Resorcinol,108-46-3,any,all,2,%,as-applied,as-stated,{how},pair,house rule\n");
    let two = "two,maximum,Other dye,95-70-5,any,all,4,%,as-applied,as-stated,,pair,house rule\n";
    Table::from_csv("house", &format!("{head}{one}{two}")).unwrap()
}

/// By hand: 1 of 2 and 2 of 4 % are one whole; 0.1 % more of either is more than that.
#[rstest]
#[case::whole([1.0; 3], [2.0; 3], Some((1.0, Standing::Within)))]
#[case::less([0.5; 3], [1.0; 3], Some((0.5, Standing::Within)))]
#[case::one_more([1.1; 3], [2.0; 3], Some((1.05, Standing::Exceeded { certain: true })))]
#[case::other_more([1.0; 3], [2.1; 3], Some((1.025, Standing::Exceeded { certain: true })))]
#[case::by_the_best([0.9, 1.1, 1.1], [2.0; 3], Some((1.05, Standing::Exceeded { certain: false })))]
#[case::by_the_highest([0.9, 1.0, 1.1], [2.0; 3], Some((1.0, open(Why::Straddles))))]
#[case::one_alone([1.0; 3], [0.0; 3], None)]
fn shares_of_their_ceilings_are_added_up(
    #[case] one: [f64; 3],
    #[case] other: [f64; 3],
    #[case] want: Option<(f64, Standing)>,
) {
    let [low, best, high] = other.map(percent);
    let level = Interval::new(low, best, high).unwrap();
    let other = Ingredient::named("other dye", level).with_cas("95-70-5".parse().unwrap());
    let mut dyes = vec![resorcinol(one), other];
    dyes.truncate(if best > MassFraction::ZERO { 2 } else { 1 });
    let bowl = bowl(Product::declared("shade", dyes));
    for how in ["", "from-memory"] {
        let table = grouped(how);
        let report = limits::check(&table, &bowl, Use::professional(Purpose::OxidativeColour));
        let Some((sum, standing)) = want else {
            assert!(report.sums.is_empty());
            continue;
        };
        let [found] = report.sums.as_slice() else { panic!("{report}") };
        assert!((found.sum.best() - sum).abs() < 1e-9, "{found}");
        let unread = standing == Standing::Within && !how.is_empty();
        assert_eq!(found.standing, if unread { open(Why::Unverified) } else { standing }, "{found}");
        assert_eq!(found.is_exceeded(), matches!(standing, Standing::Exceeded { .. }));
        assert_eq!(found.limits.len(), 2);
        assert_eq!(found.to_string().contains("(from "), !found.sum.is_exact());
        assert_eq!(report.is_exceeded(), found.is_exceeded());
    }
}

/// A bowl is within everything checked only where all of it was, something was, and all is declared.
#[test]
fn within_everything_is_all_of_it() {
    let within = |product: Product, how: &str| {
        let table = grouped(how);
        let bowl = bowl(product);
        limits::check(&table, &bowl, Use::professional(Purpose::OxidativeColour)).is_within_everything_checked()
    };
    let dye = || resorcinol([0.5; 3]);
    let other =
        |level| Ingredient::named("other dye", Interval::exact(percent(level))).with_cas("95-70-5".parse().unwrap());
    assert!(within(Product::declared("shade", vec![dye(), other(1.0)]), ""));
    assert!(!within(Product::declared("shade", vec![dye(), other(1.0)]), "from-memory"));
    // Each within its own ceiling, and together above one whole.
    assert!(!within(Product::declared("shade", vec![resorcinol([1.5; 3]), other(3.0)]), ""));
    assert!(!within(Product::declared_in_part("shade", vec![dye()]), ""));
    assert!(!within(Product::declared("shade", Vec::new()), ""));
}

/// A duty from 2 % on, or above it, or in the band above 1 % up to 2 %: whether it applies, does not, or may.
#[rstest]
#[case::up_to("", "", [1.0; 3], Some(true))]
#[case::up_to_at_it("", "", [2.0; 3], Some(true))]
#[case::up_to_beyond("", "", [2.1; 3], Some(false))]
#[case::up_to_perhaps("", "", [1.9, 2.0, 2.1], None)]
#[case::above_at_it(">", "", [2.0; 3], Some(false))]
#[case::above(">", "", [2.1; 3], Some(true))]
#[case::above_perhaps(">", "", [1.9, 2.0, 2.1], None)]
#[case::band("", "1", [1.5; 3], Some(true))]
#[case::band_top("", "1", [2.0; 3], Some(true))]
#[case::band_bottom("", "1", [1.0; 3], Some(false))]
#[case::band_below("", "1", [0.5; 3], Some(false))]
#[case::band_beyond("", "1", [2.1; 3], Some(false))]
#[case::band_perhaps_below("", "1", [0.9, 1.5, 1.5], None)]
#[case::band_perhaps_beyond("", "1", [1.5, 1.5, 2.1], None)]
#[case::none_of_it("", "", [0.0; 3], None)]
fn a_duty_applies_in_its_band(
    #[case] comparison: &str,
    #[case] from: &str,
    #[case] level: [f64; 3],
    #[case] want: Option<bool>,
) {
    let head = "id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,comparison,band_from,legal_reference\n";
    let row = format!(
        "one,scheduling-threshold,Resorcinol,108-46-3,any,all,2,%,as-applied,as-stated,{comparison},{from},house rule\n"
    );
    let table = Table::from_csv("house", &format!("{head}{row}")).unwrap();
    let bowl = bowl(Product::declared("shade", vec![resorcinol(level)]));
    let report = limits::check(&table, &bowl, Use::professional(Purpose::OxidativeColour));
    if level[2] == 0.0 {
        assert!(report.notices.is_empty(), "{report}");
        return;
    }
    let [notice] = report.notices.as_slice() else { panic!("{report}") };
    assert_eq!(notice.applies, want, "{notice}");
    let word = match want {
        Some(true) => " is ",
        Some(false) => " is not ",
        None => " may be ",
    };
    let side = if comparison.is_empty() { "up to 2 %" } else { "above 2 %" };
    let band = if from.is_empty() { String::new() } else { "above 1 % and ".to_owned() };
    assert!(notice.to_string().contains(&format!("{word}{band}{side}")), "{notice}");
}
