//! Peroxide present or released, who may use it, and what cannot be told.

use foilwork::finding::Verdict;
use foilwork::limits::{self, Jurisdiction, Purpose, Report, Standing, Table, Use, Why};
use foilwork::mix::{Cas, Composition, Form, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

const EU: Jurisdiction = Jurisdiction::EuropeanUnion;
const LIGHTENING: Use = Use::professional(Purpose::Lightening);

fn named(name: &str, percent: f64) -> Ingredient {
    Ingredient::named(name, Interval::exact(MassFraction::from_ww_percent(percent).unwrap()))
}

/// A powder in a developer, both declared in full.
fn bowl(powder_g: f64, powder: Vec<Ingredient>, developer_g: f64, developer_percent: f64) -> Composition {
    let g = |mass| Mass::from_g(mass).unwrap();
    let developer = vec![named("hydrogen peroxide", developer_percent), named("aqua", 80.0)];
    Composition::mix(vec![
        (g(powder_g), Product::declared("powder", powder)),
        (g(developer_g), Product::declared("developer", developer)),
    ])
    .unwrap()
}

fn peroxide(report: &Report<'_>) -> (Standing, f64) {
    let on_hair =
        |judgement: &&limits::Judgement<'_>| judgement.limit.is_some_and(|limit| limit.id.ends_with("12-hair"));
    let found = report.judgements.iter().find(on_hair).expect("a judgement of the peroxide on the hair");
    (found.standing, found.level.best().ww_percent())
}

// Source of every factor: one peroxide for each O-O bond of the formula, molar masses of the periodic table typed here
// (H2O2 34.01; 2 Na2CO3.3 H2O2 314.02; MgO2 56.30; Na2O2 77.98; BaO2 169.33; CaO2 72.08; CO(NH2)2.H2O2 94.07;
// NaBO3.H2O 99.81). 30 g of powder at 50 % in 60 g of developer at 12 % is (7.2 + 15 x factor) / 90.
#[rstest]
#[case::percarbonate("sodium percarbonate", 3.0 * 34.01 / 314.02)]
#[case::by_another_name("Sodium Carbonate Peroxide", 3.0 * 34.01 / 314.02)]
#[case::magnesium("magnesium peroxide", 34.01 / 56.30)]
#[case::sodium("sodium peroxide", 34.01 / 77.98)]
#[case::barium("barium peroxide", 34.01 / 169.33)]
#[case::calcium("calcium peroxide", 34.01 / 72.08)]
#[case::carbamide("Urea Peroxide", 34.01 / 94.07)]
#[case::perborate("sodium perborate monohydrate", 34.01 / 99.81)]
fn what_releases_peroxide_counts_as_peroxide(#[case] releaser: &str, #[case] factor: f64) {
    let mixed = bowl(30.0, vec![named(releaser, 50.0)], 60.0, 12.0);
    let (standing, level) = peroxide(&limits::check(Table::of(EU), &mixed, LIGHTENING));
    let want = 100.0 * (7.2 + 15.0 * factor) / 90.0;
    assert!((level - want).abs() < 0.01, "{releaser}: got {level}, want {want}");
    assert_eq!(standing == Standing::Exceeded { certain: true }, want > 12.0, "{releaser}: {standing}");
}

/// The worked case in one number: 30 g with half percarbonate and 60 g at 12 % hold 13.4 % on the hair.
#[test]
fn a_percarbonate_powder_takes_the_strongest_developer_over_the_limit() {
    let mixed = bowl(30.0, vec![named("sodium percarbonate", 50.0)], 60.0, 12.0);
    let report = limits::check(Table::of(EU), &mixed, LIGHTENING);
    assert_eq!(format!("{:.1}", peroxide(&report).1), "13.4");
    assert_eq!(report.findings()[0].verdict, Verdict::Stop);
}

/// The complex with a polymer holds no fixed amount, so nothing is concluded unless even all of it would be within.
#[test]
fn a_complex_without_a_fixed_content_is_not_guessed() {
    let check = |percent| {
        let mixed = bowl(30.0, vec![named("PVP-hydrogen peroxide", percent)], 60.0, 12.0);
        peroxide(&limits::check(Table::of(EU), &mixed, LIGHTENING)).0
    };
    assert_eq!(check(50.0), Standing::CannotBeJudged { why: Why::FormUnknown });
    assert_eq!(check(10.0), Standing::Within); // 8 % and at most 3.3 %
}

#[rstest]
#[case::could_cross(40.0, Standing::CannotBeJudged { why: Why::Unidentified })] // 8 % + 13.3 %
#[case::could_not_cross(9.0, Standing::Within)] // 8 % + 3 %
fn an_ingredient_nobody_knows_could_be_a_releaser(#[case] percent: f64, #[case] want: Standing) {
    let mixed = bowl(30.0, vec![named("brightening complex", percent)], 60.0, 12.0);
    let report = limits::check(Table::of(EU), &mixed, LIGHTENING);
    assert_eq!(peroxide(&report).0, want, "{report}");
    assert!(!report.is_within_everything_checked());
    // The same mass of something known to release nothing is judged as before.
    let known = bowl(30.0, vec![named("sodium metasilicate", percent)], 60.0, 12.0);
    assert_eq!(peroxide(&limits::check(Table::of(EU), &known, LIGHTENING)).0, Standing::Within);
}

/// Naming peroxide does not close the list: the rest of a powder declared in part may hold a releaser.
#[test]
fn what_is_left_undeclared_beside_peroxide_may_release_more() -> Outcome {
    let g = Mass::from_g;
    let powder = Product::declared_in_part("powder", vec![named("hydrogen peroxide", 0.0)]);
    let developer = Product::declared("developer", vec![named("hydrogen peroxide", 12.0)]);
    let mixed = Composition::mix(vec![(g(30.0)?, powder), (g(60.0)?, developer)])?;
    let report = limits::check(Table::of(EU), &mixed, LIGHTENING);
    assert_eq!(peroxide(&report).0, Standing::CannotBeJudged { why: Why::Undeclared });
    Ok(())
}

#[rstest]
#[case("hydrogen peroxide")]
#[case("Hydrogen Peroxide (14 %)")]
#[case("hydrogen peroxide 14 % solution")]
#[case("H2O2")]
fn a_name_finds_the_row_of_its_substance(#[case] name: &str) {
    let g = Mass::from_g(50.0).unwrap();
    let mixed = Composition::mix(vec![(g, Product::declared("developer", vec![named(name, 14.0)]))]).unwrap();
    let report = limits::check(Table::of(EU), &mixed, LIGHTENING);
    assert_eq!(peroxide(&report).0, Standing::Exceeded { certain: true }, "{report}");
}

/// Source: common chemical names as the CAS registry gives them (from memory).
#[rstest]
#[case("PPD", "106-50-3")]
#[case("para-Phenylenediamine", "106-50-3")]
#[case("1,4-diaminobenzene", "106-50-3")]
#[case("1,3-dihydroxybenzene", "108-46-3")]
#[case("potassium persulphate", "7727-21-1")]
#[case("AQUA", "7732-18-5")]
#[case("urea hydrogen peroxide", "124-43-6")]
fn synonyms_name_one_substance(#[case] name: &str, #[case] cas: &str) -> Outcome {
    assert_eq!(Cas::of_name(name), Some(cas.parse()?));
    Ok(())
}

/// Stated as what it sets free, an ingredient counts, whatever it is called.
#[test]
fn a_level_stated_as_released_peroxide_counts() {
    let releaser = named("house releaser", 20.0).stated_as(Form::HydrogenPeroxideReleased);
    let mixed = bowl(30.0, vec![releaser], 60.0, 12.0);
    let (standing, level) = peroxide(&limits::check(Table::of(EU), &mixed, LIGHTENING));
    assert!((level - 100.0 * (7.2 + 6.0) / 90.0).abs() < 1e-9);
    assert_eq!(standing, Standing::Exceeded { certain: true });
}

/// Source: Regulation (EC) No 1223/2009, Annex II, entries 1319, 1384 and 1642: not to be used in hair dye.
#[rstest]
#[case("5307-14-2")]
#[case("615-66-7")]
#[case("533-73-3")]
fn a_prohibited_dye_is_prohibited_in_a_lightener_too(#[case] cas: &str) -> Outcome {
    let dye = named("a dye", 0.1).with_cas(cas.parse()?);
    let mixed = bowl(30.0, vec![dye], 60.0, 9.0);
    assert!(limits::check(Table::of(EU), &mixed, LIGHTENING).is_exceeded());
    Ok(())
}

/// Source: Regulation (EC) No 1223/2009, Annex III, entry 12(f): eyelashes, 2 %, professional use only.
#[rstest]
#[case("EU")]
#[case("GB")]
fn lashes_are_for_professionals_only(#[case] code: &str) -> Outcome {
    let g = Mass::from_g(10.0)?;
    let mixed = Composition::mix(vec![(g, Product::declared("lash colour", vec![named("hydrogen peroxide", 1.0)]))])?;
    let report = limits::check(Table::of(code.parse()?), &mixed, Use::general(Purpose::LashColour));
    let lash = report.judgements.iter().find(|j| j.limit.is_some_and(|l| l.id.ends_with("12-lash"))).ok_or("no row")?;
    assert_eq!(lash.standing, Standing::ProfessionalsOnly, "{report}");
    assert!(report.is_exceeded() && report.to_string().contains("professionals only"));
    // The diamines of oxidative colour have one figure for each kind of user, so they are closed to nobody.
    let dye = named("p-phenylenediamine", 1.0);
    let colour = Composition::mix(vec![(g, Product::declared("J7-mist", vec![dye]))])?;
    let report = limits::check(Table::of(EU), &colour, Use::general(Purpose::OxidativeColour));
    assert!(!report.is_exceeded(), "{report}");
    Ok(())
}

/// Source: membership of the European Union; the Windsor Framework for Northern Ireland (from memory).
#[rstest]
#[case("DE", "write EU")]
#[case("Germany", "write EU")]
#[case("IE", "write EU")]
#[case("Northern Ireland", "write EU")]
#[case("Scotland", "write GB")]
fn a_place_under_another_name_gets_the_way_out(#[case] place: &str, #[case] hint: &str) {
    let said = place.parse::<Jurisdiction>().unwrap_err().to_string();
    assert!(said.contains(hint), "{said}");
}

#[test]
fn poland_has_the_law_of_the_union() -> Outcome {
    let strong = Interval::exact(MassFraction::from_ww_percent(12.5)?);
    assert!(limits::check_peroxide(Jurisdiction::Poland, strong, LIGHTENING).is_exceeded());
    Ok(())
}
