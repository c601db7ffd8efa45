//! What is said of rows and judgements, word for word.

use super::edges::house;
use foilwork::limits::{self, Audience, Jurisdiction, Purpose, Table, Use};
use foilwork::mix::{Composition, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::{Basis, Interval};
use rstest::rstest;

const COLOUR: Use = Use::professional(Purpose::OxidativeColour);

fn span(level: [f64; 3]) -> Interval<MassFraction> {
    let [low, best, high] = level.map(|value| MassFraction::from_ww_percent(value).unwrap());
    Interval::new(low, best, high).unwrap()
}

fn numbered(name: &str, cas: &str, level: [f64; 3]) -> Ingredient {
    Ingredient::named(name, span(level)).with_cas(cas.parse().unwrap())
}

fn mixed(parts: Vec<(f64, Product)>) -> Composition {
    Composition::mix(parts.into_iter().map(|(g, product)| (Mass::from_g(g).unwrap(), product)).collect()).unwrap()
}

/// Row, level, and what is said of it before the act.
#[rstest]
#[case("maximum", "2", "", [1.5; 3], "dye: 1.5 % w/w against 2 %: within (margin 0.50 percentage points)")]
#[case("maximum", "2", "", [0.5, 1.234_56, 1.5], "dye: 1.235 % w/w (from 0.5 to 1.5 %) against 2 %: within (margin 0.50 percentage points)")]
#[case("maximum", "2", "", [2.5; 3], "dye: 2.5 % w/w against 2 %: EXCEEDED")]
#[case("maximum", "2", "", [1.0, 2.1, 3.0], "dye: 2.1 % w/w (from 1 to 3 %) against 2 %: EXCEEDED by the best estimate")]
#[case("maximum", "2", "", [1.0, 1.5, 3.0], "dye: 1.5 % w/w (from 1 to 3 %) against 2 %: cannot be judged: the limit lies within the bounds of the level (a better known level would decide)")]
#[case("maximum", "2", "free-base", [1.5; 3], "dye: 1.5 % w/w (from 0 to 1.5 %) against 2 % as free base: within (margin 0.50 percentage points)")]
#[case("prohibited", "0", "", [1.5; 3], "dye: 1.5 % w/w, not permitted: EXCEEDED")]
fn a_judgement_is_said_in_full(
    #[case] rule: &str,
    #[case] figure: &str,
    #[case] form: &str,
    #[case] level: [f64; 3],
    #[case] want: &str,
) {
    for (date, act) in [("2026-01", "house rule; list: 2026-01"), ("", "house rule")] {
        let row = format!(
            "one | {rule} | Resorcinol | 108-46-3 | | any | all | {figure} | % | as-applied | {form} | | | | | house rule | {date}"
        );
        let table = house(&[&row]);
        let bowl = mixed(vec![(100.0, Product::declared("shade", vec![numbered("dye", "108-46-3", level)]))]);
        let report = limits::check(&table, &bowl, COLOUR);
        assert_eq!(report.judgements[0].to_string(), format!("{want}; {act}"));
        let finding = report.judgements[0].finding();
        assert_eq!((finding.text.as_str(), &*finding.sources[0].text), (want, act));
        assert_eq!(finding.sources[0].id.as_deref(), Some("one"));
    }
}

/// What no table names is said without a limit, and without what could be undeclared of it; of nothing nothing is said.
#[test]
fn what_is_not_named_is_said_without_a_limit() {
    let table = house(&["one | maximum | Resorcinol | 108-46-3 | | any | all | 2 | % | as-applied"]);
    let shade = vec![Ingredient::named("secret", span([1.0; 3])), Ingredient::named("nothing", span([0.0; 3]))];
    let bowl =
        mixed(vec![(50.0, Product::declared("shade", shade)), (50.0, Product::declared_in_part("cream", vec![]))]);
    let report = limits::check(&table, &bowl, COLOUR);
    let said: Vec<String> = report.judgements.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        ["secret: 0.5 % w/w: cannot be judged: the table does not name it, which does not mean that there is no limit"]
    );
}

/// A duty up to 2 %, of half a bowl with 3.8 %: 1.9 % and what is open. Two substances of one row are named by the row.
#[test]
fn a_duty_may_be_crossed_by_what_is_not_declared() {
    let table = house(&[
        "one | label-threshold | Pair | 108-46-3 90-15-3 | | any | all | 2 | % | as-applied | | | | | | act | | warn",
    ]);
    let applies = |water: f64, dyes: Vec<Ingredient>| {
        let cream = Product::declared_in_part("cream", vec![Ingredient::named("water", span([water; 3]))]);
        let bowl = mixed(vec![(50.0, Product::declared("shade", dyes)), (50.0, cream)]);
        let report = limits::check(&table, &bowl, COLOUR);
        let [notice] = report.notices.as_slice() else { panic!("{report}") };
        (notice.applies, notice.to_string())
    };
    let one = || vec![numbered("dye", "108-46-3", [3.8; 3])];
    assert_eq!(applies(99.9, one()), (Some(true), "dye: 1.9 % w/w is up to 2 %: warn; act".to_owned()));
    assert_eq!(applies(99.6, one()), (None, "dye: 1.9 % w/w may be up to 2 %: warn; act".to_owned()));
    let two = vec![numbered("dye", "108-46-3", [1.8; 3]), numbered("other", "90-15-3", [2.0; 3])];
    assert_eq!(applies(100.0, two), (Some(true), "Pair: 1.9 % w/w is up to 2 %: warn; act".to_owned()));
}

#[rstest]
#[case(
    " | maximum | Resorcinol | 108-46-3 | | any | all | 2 | % | as-applied",
    "id is \"\", must be a key, and substance a name"
)]
#[case(
    "one | maximum | | 108-46-3 | | any | all | 2 | % | as-applied",
    "id is \"one\", must be a key, and substance a name"
)]
#[case(
    "one | maximum | Resorcinol | | | | all | 2 | % | as-applied",
    "applies_to is \"\", must be one or more of oxidative, "
)]
#[case(
    "one | maximum | Resorcinol | | | hair moon | all | 2 | % | as-applied",
    "applies_to is \"hair moon\", must be one or more of "
)]
#[case(
    "one | supply-limit | Resorcinol | | | any | all | | % | as-applied",
    "figure is \"\", must be a number from 0 to 100 with the unit "
)]
#[case(
    "one | licence-ceiling | Resorcinol | | | any | all | 2 | g | as-applied",
    "figure is \"2\", must be a number from 0 to 100 with the unit "
)]
#[case(
    "one | label | Resorcinol | | | any | all | 2 | % | as-applied | | | 101",
    "band_from is \"101\", must be a number from 0 to 100"
)]
#[case(
    "one | label | Resorcinol | | | any | nobody | 2 | % | as-applied",
    "user is \"nobody\", must be one of all, professional, general"
)]
#[case(
    "one | label | Resorcinol | | | any | all | 2 | % | as-applied | | | | | heard",
    "how is \"heard\", must be one of retrieved, "
)]
fn a_row_that_cannot_be_read_says_its_cell(#[case] row: &str, #[case] want: &str) {
    let cells: Vec<&str> = row.split('|').map(str::trim).chain(std::iter::repeat("")).take(18).collect();
    let head = "id,rule,substance,cas,group,applies_to,user,figure,unit,measured,expressed_as,comparison,band_from,sum_group,how,\
                legal_reference,list_date,conditions";
    let said = Table::from_csv("t", &format!("{head}\n{}\n", cells.join(","))).unwrap_err().to_string();
    assert!(said.starts_with(&format!("invalid limit table, line 2: {want}")), "{said}");
}

/// Every kind of row as it is listed.
#[test]
fn a_listing_says_what_becomes_of_each_row() {
    let table = house(&[
        "a | maximum | Dye | 108-46-3 | | oxidative hair | all | 2 | % | as-applied | | | | | | act | 2026",
        "b | prohibited | Dye | 108-46-3 | | dye | all | 0 | % | as-applied | | | | | | act | 2026",
        "c | label-threshold | Dye | 108-46-3 | | hair | all | 5 | % | as-applied | | > | | | | act | 2026",
        "d | label-threshold | Dye | 108-46-3 | | hair | all | 5 | % | not-stated | | | | | | act | 2026",
        "e | no-entry | Dye | | | hair | all | | | as-applied | | | | | | act | 2026",
        "f | workplace-air | Dye | 108-46-3 | | hair | all | 1.4 | mg/m3 | air | | | | | | act | 2026",
        "g | maximum | Dye | 108-46-3 | | skin | all | 2 | % | as-applied | | | | | | act | 2026",
        "h | supply-limit | Dye | 108-46-3 | | public-sale | general | 12 | % w/w | as-supplied | | | | | | act | 2026",
        "i | maximum | Dye | 108-46-3 | | hair | all | 2 | % | as-applied | | | | | from-memory | act | 2026",
        "j | maximum | Dye | 108-46-3 | | hair | all | 2 | % | not-stated | | | | | | act | 2026",
        "k | maximum | Dyes | | one two | hair | all | 2 | % | as-applied | | | | | | act | 2026",
        "l | maximum | House dye | | | hair | all | 2 | % | as-applied | | | | | | act | 2026",
        "m | maximum | Dye | 108-46-3 90-15-3 | one | hair | all | 2 | % | as-applied | free-base | | | pair | | act | 2026",
        "n | maximum | Dye | 108-46-3 | | hair | all | 2 | % | as-applied | free-base | | | | | act | 2026",
    ]);
    let want = "\
house: 14 entries

checked (8):
  a | Dye | oxidative hair | at most 2 % | act | 2026
  b | Dye | dye | prohibited | act | 2026
  h | Dye | public-sale | supply limit, up to 12 % w/w | for use by the general public only; against each product as supplied, not \
against the mixture | act | 2026
  j | Dye | hair | at most 2 % | the source does not say in what the figure is meant, so it never gives \"within\" | act | 2026
  k | Dyes | hair | at most 2 % | only for ingredients stated to belong to one or two | act | 2026
  l | House dye | hair | at most 2 % | act | 2026
  m | Dye | hair | at most 2 % as free base | needs the level stated in the form the entry counts, unless even all of it would be \
within; ratio sum with pair | act | 2026
  n | Dye | hair | at most 2 % as free base | act | 2026

checked, but from memory and unverified: never a basis for \"within\" (1):
  i | Dye | hair | at most 2 % | act | 2026

noted beside the findings (2):
  c | Dye | hair | label threshold, above 5 % | act | 2026
  d | Dye | hair | label threshold, up to 5 % | act | 2026

not checked (3):
  e | Dye | hair | no entry | no figure could be established | act | 2026
  f | Dye | hair | workplace air, up to 1.4 mg/m3 | needs a measurement of the air | act | 2026
  g | Dye | skin | at most 2 % | foilwork plans no such use | act | 2026

The table is not complete: a substance that is missing here is not thereby without a limit.";
    assert_eq!(table.listing().to_string(), want);
}

/// The rows that concern a substance, by number, name or part of a name, and a use; what sets peroxide free is concerned by the rows on
/// what is released.
#[rstest]
#[case(None, None, None, "xyzw")]
#[case(Some("resorcinol"), None, None, "xzw")]
#[case(Some("108-46-3"), None, None, "xzw")]
#[case(Some(" RESOR"), None, None, "xzw")]
#[case(Some("124-43-6"), None, None, "y")]
#[case(Some("hydrogen peroxide"), None, None, "y")]
#[case(Some("something else"), None, None, "")]
#[case(Some("108-46-3"), Some(Purpose::OxidativeColour), None, "xw")]
#[case(Some("108-46-3"), Some(Purpose::OxidativeColour), Some(Audience::Professional), "x")]
#[case(Some("108-46-3"), Some(Purpose::OxidativeColour), Some(Audience::General), "w")]
#[case(None, Some(Purpose::OxidativeColour), None, "xyw")]
#[case(None, None, Some(Audience::Professional), "xy")]
#[case(None, None, Some(Audience::General), "yw")]
#[case(None, Some(Purpose::Lightening), None, "xy")]
#[case(None, Some(Purpose::NonOxidativeColour), Some(Audience::General), "yw")]
#[case(None, Some(Purpose::LashColour), None, "")]
fn rows_concern_a_substance_and_a_use(
    #[case] substance: Option<&str>,
    #[case] purpose: Option<Purpose>,
    #[case] audience: Option<Audience>,
    #[case] want: &str,
) {
    let table = house(&[
        "x | maximum | Resorcinol | 108-46-3 | | oxidative | professional | 2 | % | as-applied",
        "y | maximum | Hydrogen peroxide | 7722-84-1 | | hair | all | 12 | % | as-applied | h2o2-released",
        "z | maximum | Resorcinol lotion | 108-46-3 | | skin | all | 2 | % | as-applied",
        "w | maximum | Resorcinol | 108-46-3 | | dye | general | 2 | % | as-applied",
    ]);
    let found: String =
        table.concerning(substance, purpose, audience).rows().iter().map(|row| row.id.as_str()).collect();
    assert_eq!(found, want);
}

/// A figure is published to us where all that it rests on was looked up, and it rests on something.
#[test]
fn a_figure_is_published_where_its_sources_were_read() {
    let stated = house(&["one | maximum | Resorcinol | 108-46-3 | | any | all | 2 | % | as-applied"]);
    assert_eq!(stated.trail().iter().map(|one| one.basis).collect::<Vec<_>>(), [Basis::Assumed]);
    let (mut read, mut remembered) = (0, 0);
    for jurisdiction in Jurisdiction::ALL {
        let table = Table::of(*jurisdiction);
        let with_figure: Vec<_> = table.rows().iter().filter(|row| row.concentration.is_some()).collect();
        let trail = table.trail();
        assert_eq!(trail.len(), with_figure.len());
        for (row, one) in with_figure.into_iter().zip(trail) {
            let unread = row.citations.iter().filter(|citation| !citation.is_verified()).count();
            assert_eq!(one.basis, if unread == 0 { Basis::Published } else { Basis::Assumed }, "{}", row.id);
            *(if unread == 0 { &mut read } else { &mut remembered }) += 1;
        }
    }
    assert!(read > 100, "{read} {remembered}");
}
