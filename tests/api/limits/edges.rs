//! What an entry covers, what is open, and what is said of it: on tables of one's own, by hand.

use foilwork::finding::Verdict;
use foilwork::limits::{self, Judgement, Jurisdiction, Purpose, Report, Standing, Table, Use, Why};
use foilwork::mix::{Composition, Form, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

/// The columns of every table here; a row may end early.
const HEAD: [&str; 18] = [
    "id",
    "rule",
    "substance",
    "cas",
    "group",
    "applies_to",
    "user",
    "figure",
    "unit",
    "measured",
    "expressed_as",
    "comparison",
    "band_from",
    "sum_group",
    "how",
    "legal_reference",
    "list_date",
    "conditions",
];

/// A table of rows whose cells are parted by bars.
pub(super) fn house(rows: &[&str]) -> Table {
    let line = |cells: Vec<&str>| {
        let cells: Vec<&str> = cells.into_iter().map(str::trim).chain(std::iter::repeat("")).take(HEAD.len()).collect();
        cells.join(",")
    };
    let lines: Vec<String> =
        std::iter::once(HEAD.to_vec()).chain(rows.iter().map(|row| row.split('|').collect())).map(line).collect();
    Table::from_csv("house", &lines.join("\n")).unwrap()
}

const RESORCINOL: &str = "108-46-3";
const TOLUENEDIAMINE: &str = "95-70-5";
const NAPHTHOL: &str = "90-15-3";

const COLOUR: Use = Use::professional(Purpose::OxidativeColour);
const AT_HOME: Use = Use::general(Purpose::OxidativeColour);
const LIGHTENING: Use = Use::professional(Purpose::Lightening);

fn percent(value: f64) -> MassFraction {
    MassFraction::from_ww_percent(value).unwrap()
}

fn span([low, best, high]: [f64; 3]) -> Interval<MassFraction> {
    Interval::new(percent(low), percent(best), percent(high)).unwrap()
}

fn named(name: &str, level: f64) -> Ingredient {
    Ingredient::named(name, Interval::exact(percent(level)))
}

fn numbered(name: &str, cas: &str, level: f64) -> Ingredient {
    named(name, level).with_cas(cas.parse().unwrap())
}

fn mixed(parts: Vec<(f64, Product)>) -> Composition {
    Composition::mix(parts.into_iter().map(|(g, product)| (Mass::from_g(g).unwrap(), product)).collect()).unwrap()
}

fn bowl(ingredients: Vec<Ingredient>) -> Composition {
    mixed(vec![(100.0, Product::declared("shade", ingredients))])
}

const fn open(why: Why) -> Standing {
    Standing::CannotBeJudged { why }
}

const EXCEEDED: Standing = Standing::Exceeded { certain: true };

/// The judgement of the row of an id.
#[track_caller]
fn of_row<'r, 'a>(report: &'r Report<'a>, id: &str) -> &'r Judgement<'a> {
    let of_it = |one: &&Judgement<'_>| one.limit.is_some_and(|limit| limit.id == id);
    report.judgements.iter().find(of_it).unwrap_or_else(|| panic!("no row {id}: {report}"))
}

/// 1.5 % of A are 0.75 of 2 % as stated; as free base, of which nobody knows how much it holds, at most 0.375 of 4 %. B is 0.125 to 0.35
/// of 4 %. The larger of the two shares of A counts: 0.875 to 1.1, and in whatever order they stand it is not known in which form.
#[test]
fn two_figures_of_one_substance_count_once_in_a_sum() {
    let stated = "a1 | maximum | Dye A | 108-46-3 | | any | all | 2 | % | as-applied | as-stated | | | pair";
    let base = "a2 | maximum | Dye A | 108-46-3 | | any | all | 4 | % | as-applied | free-base | | | pair";
    let other = "b | maximum | Dye B | 95-70-5 | | any | all | 4 | % | as-applied | as-stated | | | pair";
    for rows in [[stated, base, other], [base, stated, other], [other, base, stated], [other, stated, base]] {
        let table = house(&rows);
        let sum = |a: f64, b: [f64; 3]| {
            let b = Ingredient::named("b", span(b)).with_cas(TOLUENEDIAMINE.parse().unwrap());
            let bowl = bowl(vec![numbered("a", RESORCINOL, a), b]);
            let report = limits::check(&table, &bowl, COLOUR);
            let [sum] = report.sums.as_slice() else { panic!("{report}") };
            assert_eq!(sum.limits.len(), 2);
            (sum.sum.to_array().map(|x| (x * 1e6).round() / 1e6), sum.standing)
        };
        assert_eq!(sum(1.5, [0.5, 1.2, 1.4]), ([0.875, 1.05, 1.1], open(Why::FormUnknown)));
        // 0.25 and at most 0.1 are within, in whatever form.
        assert_eq!(sum(0.5, [0.4; 3]), ([0.35; 3], Standing::Within));
    }
}

/// Of each half of a bowl: 1 % of A and 2 % of B are 0.25 each of their 2 and 4 %; what is open of the other half could be A or B, and
/// counts for both. 0.65 % are 0.4875 more, 0.7 % are 0.525.
#[rstest]
#[case(98.7, Standing::Within)]
#[case(98.6, open(Why::Undeclared))]
fn what_is_not_declared_counts_in_a_sum(#[case] water: f64, #[case] want: Standing) {
    let table = house(&[
        "a | maximum | Dye A | 108-46-3 | | any | all | 2 | % | as-applied | as-stated | | | pair",
        "b | maximum | Dye B | 95-70-5 | | any | all | 4 | % | as-applied | as-stated | | | pair",
    ]);
    let shade = Product::declared("shade", vec![numbered("a", RESORCINOL, 1.0), numbered("b", TOLUENEDIAMINE, 2.0)]);
    let cream = Product::declared_in_part("cream", vec![named("water", water)]);
    let bowl = mixed(vec![(50.0, shade), (50.0, cream)]);
    let report = limits::check(&table, &bowl, COLOUR);
    assert_eq!((report.sums[0].standing, report.sums[0].sum.best()), (want, 0.5), "{report}");
}

fn powder_and_developer(powder: Product, peroxide: f64) -> Composition {
    let developer = Product::declared("developer", vec![named("hydrogen peroxide", peroxide), named("aqua", 80.0)]);
    mixed(vec![(30.0, powder), (60.0, developer)])
}

/// In 90 g: 7 % of 30 g that nobody knows are 2.333 %, 3 % that nobody declares 1 %. With 8.8 % of peroxide only both together cross 12 %,
/// with 8 % they leave a margin of 0.667.
#[test]
fn what_nobody_knows_is_added_to_what_nobody_declares() {
    let powder = || Product::declared_in_part("powder", vec![named("brightening complex", 7.0), named("water", 90.0)]);
    let table = Table::of(Jurisdiction::EuropeanUnion);
    let check = |product, peroxide| {
        let bowl = powder_and_developer(product, peroxide);
        let report = limits::check(table, &bowl, LIGHTENING);
        let one = of_row(&report, "EU-III-12-hair");
        let margin = one.margin_percentage_points().unwrap();
        (
            one.standing,
            (one.undeclared_at_most.ww_percent() * 1e3).round() / 1e3,
            (margin * 1e3).round() / 1e3,
            one.to_string(),
        )
    };
    let (standing, at_most, margin, text) = check(powder(), 13.2);
    assert_eq!((standing, at_most, margin), (open(Why::Unidentified), 3.333, -0.133));
    assert!(text.starts_with("hydrogen peroxide: 8.8 % w/w and at most 3.333 % undeclared against 12 % as "), "{text}");
    assert!(!text.contains("margin"), "{text}");
    let (standing, at_most, margin, text) = check(powder(), 12.0);
    assert_eq!((standing, at_most, margin), (Standing::Within, 3.333, 0.667));
    assert!(text.contains(": within (margin 0.67 percentage points); "), "{text}");
    // 40 % of 30 g alone are 13.333 %, two of 20 % as much.
    for secrets in [vec![("secret", 40.0)], vec![("secret", 20.0), ("another", 20.0)]] {
        let secrets = secrets.into_iter().map(|(name, level)| named(name, level)).collect();
        let (standing, at_most, ..) = check(Product::declared("powder", secrets), 12.0);
        assert_eq!((standing, at_most), (open(Why::Unidentified), 13.333));
    }
}

/// As supplied the same holds of each product: 9 % and what nobody knows, together at most 12 % or more.
#[rstest]
#[case(&[2.0], Standing::Within)]
#[case(&[5.0], open(Why::Unidentified))]
#[case(&[2.0, 2.0], open(Why::Unidentified))]
fn what_nobody_knows_counts_in_a_product_too(#[case] secrets: &[f64], #[case] want: Standing) {
    let mut inside = vec![named("hydrogen peroxide", 9.0)];
    inside.extend(secrets.iter().enumerate().map(|(place, level)| named(&format!("secret {place}"), *level)));
    let bowl = bowl(inside);
    let report = limits::check(Table::of(Jurisdiction::EuropeanUnion), &bowl, Use::general(Purpose::Lightening));
    let supply = of_row(&report, "EU-2019-1148-H2O2");
    assert_eq!((supply.standing, supply.product), (want, Some("shade")), "{report}");
}

/// Half of the bowl may be all base: as sulfate, 220.25 over 122.17 of it. A salt stated as base is one number again as salt.
#[test]
fn what_is_open_counts_for_more_as_a_salt() {
    let half = |product| (50.0, product);
    let shade = Product::declared("shade", vec![numbered("base", TOLUENEDIAMINE, 1.0)]);
    let bowl_of_both = mixed(vec![half(shade), half(Product::declared_in_part("cream", Vec::new()))]);
    let report = limits::check(Table::of(Jurisdiction::EuropeanUnion), &bowl_of_both, COLOUR);
    let open_of = |id| of_row(&report, id).undeclared_at_most.ww_percent();
    assert!((open_of("EU-III-9a-ox-prof-salt") - 50.0 * 220.25 / 122.17).abs() < 0.02);
    assert_eq!(open_of("EU-III-9a-ox-prof"), 50.0);
    let bowl_of_salt = bowl(vec![numbered("salt", "615-50-9", 1.9).stated_as(Form::FreeBase)]);
    let report = limits::check(Table::of(Jurisdiction::EuropeanUnion), &bowl_of_salt, COLOUR);
    for level in of_row(&report, "EU-III-9a-ox-prof-salt").level.to_array() {
        assert!((level.ww_percent() - 1.9 * 220.25 / 122.17).abs() < 1e-3, "{report}");
    }
}

const MAXIMUM: &str = "one | maximum | Resorcinol | 108-46-3 | | any | all | 2 | % | as-applied";
const NOTICE: &str = "one | label-threshold | Resorcinol | 108-46-3 | | any | all | 2 | % | as-applied";

/// What a table says of 3 % in a use: held against it, for professionals only, prohibited elsewhere, or nothing.
#[rstest]
#[case::judged(&[MAXIMUM], COLOUR, EXCEEDED)]
#[case::noted_alone(&[NOTICE], COLOUR, open(Why::NoCeilingForThisUse))]
#[case::noted_for_professionals(&["one | label-threshold | Resorcinol | 108-46-3 | | any | professional | 2 | % | as-applied"], AT_HOME, open(Why::NoCeilingForThisUse))]
#[case::for_professionals(&["one | maximum | Resorcinol | 108-46-3 | | any | professional | 2 | % | as-applied"], AT_HOME, Standing::ProfessionalsOnly)]
#[case::for_the_public(&["one | maximum | Resorcinol | 108-46-3 | | any | general | 2 | % | as-applied"], COLOUR, open(Why::NoCeilingForThisUse))]
#[case::elsewhere(&["one | maximum | Resorcinol | 108-46-3 | | lash | all | 2 | % | as-applied"], COLOUR, open(Why::NoCeilingForThisUse))]
#[case::prohibited_elsewhere(&["one | prohibited | Resorcinol | 108-46-3 | | lash | all | 0 | % | as-applied"], COLOUR, open(Why::ProhibitedInOtherUse))]
#[case::both_elsewhere(
    &["one | maximum | Resorcinol | 108-46-3 | | lash | all | 2 | % | as-applied", "two | prohibited | Resorcinol | 108-46-3 | | nails | all | 0 | % | as-applied"],
    COLOUR,
    open(Why::ProhibitedInOtherUse)
)]
#[case::both_the_other_way_round(
    &["one | prohibited | Resorcinol | 108-46-3 | | lash | all | 0 | % | as-applied", "two | maximum | Resorcinol | 108-46-3 | | nails | all | 2 | % | as-applied"],
    COLOUR,
    open(Why::ProhibitedInOtherUse)
)]
#[case::a_dye_is_no_lightener(&["one | maximum | Resorcinol | 108-46-3 | | dye | all | 2 | % | as-applied"], LIGHTENING, open(Why::NoCeilingForThisUse))]
#[case::a_prohibited_dye_is(&["one | prohibited | Resorcinol | 108-46-3 | | dye | all | 0 | % | as-applied"], LIGHTENING, EXCEEDED)]
#[case::not_named(&["one | maximum | Other | 90-15-3 | | any | all | 2 | % | as-applied"], COLOUR, open(Why::NotInTable))]
fn a_table_says_so_much_of_a_use(#[case] rows: &[&str], #[case] of: Use, #[case] want: Standing) {
    let table = house(rows);
    let bowl = bowl(vec![numbered("resorcinol", RESORCINOL, 3.0)]);
    let report = limits::check(&table, &bowl, of);
    let [judgement] = report.judgements.as_slice() else { panic!("{report}") };
    assert_eq!(judgement.standing, want, "{report}");
    assert_eq!(report.is_exceeded(), want.verdict() == Verdict::Stop);
}

/// By its name where it has no number, by its group beside its number, never by a name against its number, and never twice.
#[test]
fn an_entry_covers_by_number_name_or_group() {
    let table = house(&[
        "name | maximum | House dye; Maison Dye | | | any | all | 2 | % | as-applied",
        "both | maximum | Resorcinol | 108-46-3 | family | any | all | 2 | % | as-applied",
        "group | maximum | A family | | relatives | any | all | 2 | % | as-applied",
    ]);
    let level = |ingredient: Ingredient| {
        let bowl = bowl(vec![ingredient]);
        let report = limits::check(&table, &bowl, COLOUR);
        let [one] = report.judgements.as_slice() else { panic!("{report}") };
        (one.limit.map(|limit| limit.id.clone()), one.level.best().ww_percent())
    };
    let found = |id: &str, level| (Some(id.to_owned()), level);
    assert_eq!(level(named("MAISON DYE", 1.5)), found("name", 1.5));
    assert_eq!(level(named("house dye", 1.5)), found("name", 1.5));
    assert_eq!(level(named("house", 1.5)), (None, 1.5));
    assert_eq!(level(numbered("Resorcinol", NAPHTHOL, 1.5)), (None, 1.5));
    assert_eq!(level(numbered("House dye", NAPHTHOL, 1.5)), (None, 1.5));
    assert_eq!(level(numbered("x", NAPHTHOL, 1.5).in_group("relatives")), found("group", 1.5));
    assert_eq!(level(numbered("x", NAPHTHOL, 1.5).in_group("family")), found("both", 1.5));
    assert_eq!(level(numbered("x", RESORCINOL, 1.5).in_group("family")), found("both", 1.5));
    assert_eq!(level(named("x", 1.5).in_group("family")), found("both", 1.5));
    assert_eq!(level(named("x", 1.5).in_group("friends")), (None, 1.5));
}

/// Peroxide stated either way counts as peroxide; another form does not. A salt counts as itself where the entry names it alone; of
/// another substance of its group there could be any amount of that salt.
#[rstest]
#[case::peroxide("h2o2-released", numbered("x", RESORCINOL, 3.0).stated_as(Form::HydrogenPeroxide), EXCEEDED)]
#[case::the_other_way("h2o2", numbered("x", RESORCINOL, 3.0).stated_as(Form::HydrogenPeroxideReleased), EXCEEDED)]
#[case::no_peroxide("h2o2-released", numbered("x", RESORCINOL, 3.0).stated_as(Form::FreeBase), open(Why::FormUnknown))]
#[case::as_peroxide("free-base", numbered("x", RESORCINOL, 3.0).stated_as(Form::HydrogenPeroxide), open(Why::FormUnknown))]
#[case::no_more_than_all("free-base", numbered("x", RESORCINOL, 1.5), Standing::Within)]
#[case::perhaps("free-base", numbered("x", RESORCINOL, 3.0), open(Why::FormUnknown))]
#[case::the_salt("hydrochloride", numbered("x", RESORCINOL, 1.5), Standing::Within)]
#[case::too_much_salt("hydrochloride", numbered("x", RESORCINOL, 2.5), EXCEEDED)]
#[case::another_of_its_group("hydrochloride", numbered("x", NAPHTHOL, 0.5).in_group("family"), open(Why::FormUnknown))]
fn a_level_counts_in_the_form_of_the_entry(#[case] form: &str, #[case] dye: Ingredient, #[case] want: Standing) {
    let table =
        house(&[&format!("one | maximum | Resorcinol | 108-46-3 | family | any | all | 2 | % | as-applied | {form}")]);
    let bowl = bowl(vec![dye]);
    assert_eq!(of_row(&limits::check(&table, &bowl, COLOUR), "one").standing, want);
}

/// A whole bowl within is all of it: one dye, remembered or too much, is enough against it, and so is a tenth of a gram that nobody
/// declares.
#[test]
fn one_of_them_is_enough_not_to_be_within() {
    let within = |how: &str, bowl: &Composition| {
        let table = house(&[&format!("{MAXIMUM} | as-stated | | | | {how}")]);
        let report = limits::check(&table, bowl, COLOUR);
        let cream = "not declared in full: cream";
        let said = report.findings().iter().any(|one| one.text == cream && one.verdict == Verdict::NotJudged);
        assert_eq!((said, report.to_string().contains(cream)), (!report.undeclared.is_empty(), said), "{report}");
        (report.is_within_everything_checked(), report.judgements.iter().all(|one| one.standing == Standing::Within))
    };
    let dye = |level| vec![numbered("resorcinol", RESORCINOL, level)];
    assert_eq!(within("", &bowl(dye(1.5))), (true, true));
    assert_eq!(within("from-memory", &bowl(dye(1.5))), (false, false));
    assert_eq!(within("", &bowl(dye(2.5))), (false, false));
    let cream = Product::declared_in_part("cream", Vec::new());
    let open = mixed(vec![(99.9, Product::declared("shade", dye(1.5))), (0.1, cream)]);
    assert_eq!(within("", &open), (false, true));
}
