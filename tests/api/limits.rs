//! Findings and the words they come in.

use foilwork::limits::{
    self, Audience, Jurisdiction, Listing, Measured, Purpose, Rule, Table, Treatment, Use, Verdict, Why, check_peroxide,
};
use foilwork::mix::{Cas, Composition, Form, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_percent_ww(percent).unwrap())
}

fn substance(cas: &str, percent: f64) -> Ingredient {
    Ingredient::named(cas, exact(percent)).with_cas(cas.parse().unwrap())
}

fn bowl(ingredients: Vec<Ingredient>) -> Composition {
    Composition::mix(vec![(Mass::from_g(100.0).unwrap(), Product::declared("bowl", ingredients))]).unwrap()
}

const EU: Jurisdiction = Jurisdiction::EuropeanUnion;

#[rstest]
#[case("EU", EU)]
#[case("uk", Jurisdiction::GreatBritain)]
#[case("Great Britain", Jurisdiction::GreatBritain)]
#[case("USA", Jurisdiction::UnitedStates)]
#[case("asean", Jurisdiction::Asean)]
fn a_jurisdiction_is_read_by_code_or_name(#[case] text: &str, #[case] want: Jurisdiction) -> Outcome {
    assert_eq!(text.parse::<Jurisdiction>()?, want);
    assert_eq!(want.to_string().parse::<Jurisdiction>()?, want);
    assert_eq!(want.code().parse::<Jurisdiction>()?, want);
    Ok(())
}

#[test]
fn an_unknown_jurisdiction_lists_the_known_ones() {
    let said = "Atlantis".parse::<Jurisdiction>().unwrap_err().to_string();
    assert!(Jurisdiction::ALL.iter().all(|j| said.contains(j.code())), "{said}");
}

fn verdict(code: &str, low: f64, best: f64, high: f64) -> Result<Verdict, Box<dyn std::error::Error>> {
    let percent = MassFraction::from_percent_ww;
    let level = Interval::new(percent(low)?, percent(best)?, percent(high)?)?;
    let report = check_peroxide(code.parse()?, level, Use::professional(Purpose::Lightening));
    Ok(report.findings.first().ok_or("no finding")?.verdict)
}

#[rstest]
#[case::at_the_limit("EU", 12.0, 12.0, 12.0, Verdict::Within)]
#[case::above("EU", 12.1, 12.1, 12.1, Verdict::Exceeded { certain: true })]
#[case::best_above("EU", 11.5, 12.2, 12.9, Verdict::Exceeded { certain: false })]
#[case::straddles("EU", 11.0, 11.8, 12.5, Verdict::CannotBeJudged(Why::Straddles))]
#[case::british("GB", 12.0, 12.0, 12.0, Verdict::Within)]
#[case::chinese("CN", 12.5, 12.5, 12.5, Verdict::Exceeded { certain: true })]
#[case::from_memory_is_never_green("JP", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::Unverified))]
#[case::from_memory_can_be_exceeded("JP", 6.5, 6.5, 6.5, Verdict::Exceeded { certain: true })]
#[case::asean("ASEAN", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::Unverified))]
#[case::canada_has_no_figure("CA", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::NoFigure))]
#[case::no_federal_figure("US", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::NoCeilingForThisUse))]
#[case::new_zealand("NZ", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::NotInTable))]
fn peroxide_against_the_law(
    #[case] code: &str,
    #[case] low: f64,
    #[case] best: f64,
    #[case] high: f64,
    #[case] want: Verdict,
) -> Outcome {
    assert_eq!(verdict(code, low, best, high)?, want);
    Ok(())
}

/// A bowl of 12 % stock and 12 % stock is 12 %, also in floating point.
#[test]
fn the_last_bit_is_not_a_breach() -> Outcome {
    let strength = foilwork::mix::as_applied(&[(Mass::from_g(0.1)?, exact(12.0)), (Mass::from_g(0.2)?, exact(12.0))])?;
    let report = check_peroxide(EU, strength, Use::professional(Purpose::Lightening));
    assert_eq!(report.findings[0].verdict, Verdict::Within);
    Ok(())
}

// Source: Regulation (EC) No 1223/2009, Annex III; molar masses of the periodic table typed here: p-phenylenediamine
// 108.14, its sulfate 206.22; toluenediamine 122.17, its sulfate 220.25; carbamide peroxide 94.07 against 34.01.
#[rstest]
#[case::ppd_sulfate_over("16245-77-5", 2.0 * 206.22 / 108.14 + 0.01, "EU-III-8a-ox-prof", true)]
#[case::ppd_sulfate_under("16245-77-5", 2.0 * 206.22 / 108.14 - 0.01, "EU-III-8a-ox-prof", false)]
#[case::toluenediamine_sulfate_as_base("615-50-9", 2.0 * 220.25 / 122.17 + 0.01, "EU-III-9a-ox-prof", true)]
#[case::toluenediamine_sulfate_as_sulfate("615-50-9", 3.601, "EU-III-9a-ox-prof-salt", true)]
#[case::toluenediamine_base_as_sulfate("95-70-5", 3.6 * 122.17 / 220.25 - 0.01, "EU-III-9a-ox-prof-salt", false)]
#[case::carbamide_peroxide_over("124-43-6", 12.0 * 94.07 / 34.01 + 0.1, "EU-III-12-hair", true)]
#[case::carbamide_peroxide_under("124-43-6", 12.0 * 94.07 / 34.01 - 0.1, "EU-III-12-hair", false)]
fn salts_count_as_the_entry_counts_them(
    #[case] cas: &str,
    #[case] percent: f64,
    #[case] id: &str,
    #[case] exceeded: bool,
) -> Outcome {
    let mixed = bowl(vec![substance(cas, percent)]);
    let report = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::OxidativeColour));
    let finding = report.findings.iter().find(|f| f.limit.is_some_and(|l| l.id == id)).ok_or("no such finding")?;
    assert_eq!(
        finding.verdict,
        if exceeded { Verdict::Exceeded { certain: true } } else { Verdict::Within },
        "{finding}"
    );
    Ok(())
}

/// Base and salts of one entry, and peroxide and what releases it, count together.
#[test]
fn one_entry_adds_up_what_it_covers() {
    let mixed = bowl(vec![substance("106-50-3", 1.5), substance("16245-77-5", 1.2)]);
    let report = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::OxidativeColour));
    let [ppd] = report.findings.as_slice() else { panic!("{report}") };
    // 1.5 + 1.2 x 108.14 / 206.22 = 2.129
    assert!((ppd.level.best().percent_ww() - 2.1293).abs() < 1e-3 && ppd.is_exceeded(), "{ppd}");
    assert!(ppd.substance.starts_with("P-PHENYLENEDIAMINE;"), "the entry is named when it covers more than one");
}

#[test]
fn a_form_that_is_not_known_is_not_guessed() {
    let of = Use::professional(Purpose::OxidativeColour);
    let check = |ingredient: Ingredient| {
        let mixed = bowl(vec![ingredient]);
        let report = limits::check(Table::of(EU), &mixed, of);
        let row = |f: &&limits::Finding<'_>| f.limit.is_some_and(|l| l.id == "EU-III-292-ox");
        report.findings.iter().find(row).map(|f| f.verdict)
    };
    let salt = "337906-37-3";
    // Entry 292 counts the base at 1.8 %; even all of 1.5 % salt is within, 2.5 % may or may not be.
    assert_eq!(check(substance(salt, 1.5)), Some(Verdict::Within));
    assert_eq!(check(substance(salt, 2.5)), Some(Verdict::CannotBeJudged(Why::FormUnknown)));
    assert_eq!(check(substance(salt, 1.6).stated_as(Form::FreeBase)), Some(Verdict::Within));
    assert_eq!(check(substance(salt, 1.9).stated_as(Form::FreeBase)), Some(Verdict::Exceeded { certain: true }));
}

#[test]
fn prohibited_is_exceeded_by_any_amount_and_not_by_none() {
    let of = Use::professional(Purpose::OxidativeColour);
    for (percent, exceeded) in [(0.001, true), (0.0, false)] {
        let mixed = bowl(vec![substance("123-31-9", percent)]);
        assert_eq!(limits::check(Table::of(EU), &mixed, of).is_exceeded(), exceeded, "{percent} % hydroquinone");
    }
}

#[test]
fn names_are_enough_where_there_is_no_number() {
    let mixed = bowl(vec![Ingredient::named("Resorcinol", exact(1.3))]);
    let report = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::OxidativeColour));
    assert_eq!(report.findings[0].limit.map(|l| l.id.as_str()), Some("EU-III-22-ox"));
    assert!(report.is_exceeded());
}

/// Entries 8, 9 and 9a: each within its own maximum, together beyond one whole.
#[test]
fn the_ratio_sum_catches_what_single_limits_miss() {
    let group = |name: &str, group: &str, percent: f64| {
        Ingredient::named(name, exact(percent)).in_group(group).stated_as(Form::FreeBase)
    };
    let mixed = bowl(vec![
        substance("95-70-5", 1.0),
        group("a substituted diamine", "n-substituted-p-phenylenediamines", 1.0),
        group("a methyl diamine", "methylphenylenediamines", 1.0),
    ]);
    let report = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::OxidativeColour));
    assert!(report.findings.iter().all(|f| f.verdict == Verdict::Within), "{report}");
    // 1/2 + 1/3 + 1/5 = 1.0333
    let [sum] = report.sums.as_slice() else { panic!("{report}") };
    assert!((sum.sum()[1] - 1.0333).abs() < 2e-3 && sum.is_exceeded(), "{sum}");
    assert!(report.is_exceeded());
}

#[test]
fn as_supplied_is_judged_on_the_product_and_not_on_the_bowl() {
    let developer = Product::declared("strong developer", vec![substance("7722-84-1", 15.0)]);
    let mixed = Composition::mix(vec![
        (Mass::from_g(50.0).unwrap(), developer),
        (Mass::from_g(50.0).unwrap(), Product::declared("lightener", vec![])),
    ])
    .unwrap();
    let at_home = limits::check(Table::of(EU), &mixed, Use::general(Purpose::Lightening));
    let supply = at_home.findings.iter().find(|f| f.limit.is_some_and(|l| l.rule == Rule::SupplyLimit)).unwrap();
    assert_eq!((supply.product, supply.is_exceeded()), (Some("strong developer"), true));
    // 7.5 % on the hair is within; the supply limit does not bind a professional.
    let in_salon = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::Lightening));
    assert!(!in_salon.is_exceeded(), "{in_salon}");
    assert!(in_salon.is_within_everything_checked());
}

// Source: AU_SUSMP (from memory): unscheduled up to 6 %, Schedule 5 above 6 % to 12 %, Schedule 6 above 12 %.
#[rstest]
#[case(6.0, [true, false, false])]
#[case(9.0, [false, true, false])]
#[case(12.0, [false, true, false])]
#[case(12.5, [false, false, true])]
fn australian_schedules_are_bands(#[case] percent: f64, #[case] want: [bool; 3]) {
    let mixed = bowl(vec![substance("7722-84-1", percent)]);
    let report = limits::check(Table::of(Jurisdiction::Australia), &mixed, Use::professional(Purpose::OxidativeColour));
    let applies: Vec<Option<bool>> = report.notices.iter().map(|n| n.applies).collect();
    assert_eq!(applies, want.map(Some), "{report}");
}

#[test]
fn lashes_have_their_own_ceiling_and_professionals_only() {
    let mixed = bowl(vec![substance("7722-84-1", 3.0)]);
    let lash = limits::check(Table::of(EU), &mixed, Use::professional(Purpose::LashColour));
    assert!(lash.is_exceeded(), "3 % against 2 % on lashes: {lash}");
    let at_home = limits::check(Table::of(EU), &mixed, Use::general(Purpose::LashColour));
    assert!(at_home.findings.iter().all(|f| f.product.is_some() || f.verdict != Verdict::Within), "{at_home}");
}

const HOUSE: &str = "\
id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,legal_reference
house-1,maximum,Hydrogen peroxide,7722-84-1,hair,all,9,%,as-applied,h2o2-released,house rule 2026
EU-III-22-ox,maximum,Resorcinol,108-46-3,oxidative,all,1,%,as-applied,as-stated,house rule 2026
";

#[test]
fn a_table_of_ones_own_is_added_or_replaces() -> Outcome {
    let eu = Table::of(EU);
    let house = Table::from_csv("Juniper & Tide", HOUSE)?;
    let both = eu.overlaid(&house);
    assert_eq!((both.rows().len(), both.title()), (177, "European Union with Juniper & Tide"));
    let mixed = bowl(vec![substance("7722-84-1", 10.0), substance("108-46-3", 1.1)]);
    let of = Use::professional(Purpose::OxidativeColour);
    assert!(!limits::check(eu, &mixed, of).is_exceeded());
    let report = limits::check(&both, &mixed, of);
    let exceeded: Vec<&str> =
        report.findings.iter().filter(|f| f.is_exceeded()).filter_map(|f| f.limit).map(|l| l.id.as_str()).collect();
    assert_eq!(exceeded, ["house-1", "EU-III-22-ox"]);
    Ok(())
}

#[rstest]
#[case::column("id,rule\nx,maximum\n", "the column \"substance\" is missing")]
#[case::rule(&HOUSE.replace("house-1,maximum", "house-1,ceiling"), "line 2: rule is \"ceiling\", must be one of maximum, prohibited")]
#[case::figure(&HOUSE.replace(",9,%", ",900,%"), "line 2: figure is \"900\", must be a number from 0 to 100")]
#[case::unit(&HOUSE.replace(",9,%", ",9,g/L"), "line 2: figure is \"9\", must be a number from 0 to 100 with the unit % or % w/w")]
#[case::cas(&HOUSE.replace("7722-84-1", "7722-84-2"), "its check digit should be 1")]
#[case::twice(&HOUSE.replace("EU-III-22-ox", "house-1"), "line 3: the id \"house-1\" is used twice")]
#[case::form(&HOUSE.replace("h2o2-released", "salt"), "line 2: expressed_as is \"salt\", must be as-stated or a form")]
#[case::ragged("id,rule,substance,applies_to,user,figure,unit,measured\nx,maximum\n", "invalid limit table: ")]
fn a_bad_table_names_line_and_column(#[case] text: &str, #[case] want: &str) {
    let said = Table::from_csv("t", text).unwrap_err().to_string();
    assert!(said.contains(want), "{said}");
}

#[test]
fn the_listing_says_what_is_checked_and_what_is_not() -> Outcome {
    let listing: Listing = Table::of(EU).listing();
    let count = |t: Treatment| listing.limits.iter().filter(|l| l.treatment == t).count();
    let all: usize = [Treatment::Checked, Treatment::CheckedNeverGreen, Treatment::Noted, Treatment::NotChecked]
        .map(count)
        .iter()
        .sum();
    assert_eq!((all, count(Treatment::CheckedNeverGreen)), (176, 0));
    // Not checked: skin, straightening, lotion, nails, and the persulfates, for which there is no entry.
    let not: Vec<&str> =
        listing.limits.iter().filter(|l| l.treatment == Treatment::NotChecked).map(|l| l.id.as_str()).collect();
    assert_eq!(not, ["EU-III-12-skin", "EU-III-99-straight", "EU-III-22-lotion", "EU-III-14", "EU-PERSULFATE-NONE"]);
    let text = listing.to_string();
    assert!(text.starts_with("European Union: 176 entries") && text.ends_with("not thereby without a limit."));
    assert_eq!(serde_json::to_value(&listing)?["limits"][0]["treatment"], "checked");
    Ok(())
}

#[test]
fn a_report_is_plain_data_too() -> Outcome {
    let report = check_peroxide(EU, exact(13.0), Use::professional(Purpose::Lightening));
    let json = serde_json::to_value(report.record())?;
    assert_eq!(json["exceeded"], true);
    let finding = &json["findings"][0];
    assert_eq!(
        (finding["verdict"].as_str(), finding["margin_percentage_points"].as_f64()),
        (Some("exceeded"), Some(-1.0))
    );
    assert_eq!((finding["measured"].as_str(), finding["verified"].as_bool()), (Some("as-applied"), Some(true)));
    assert!(finding["sources"].as_array().is_some_and(|s| s.len() == 3));
    assert_eq!(json["audience"], "professional");
    Ok(())
}

#[test]
fn a_report_reads_as_one_page() {
    let report = check_peroxide(EU, exact(13.0), Use::professional(Purpose::Lightening));
    let want = "\
European Union, lightening, professional use
  hydrogen peroxide: 13 % w/w against 12 % as hydrogen peroxide present or released: EXCEEDED; Regulation (EC) No \
1223/2009, Annex III, entry 12(a), as replaced by Reg (EU) 2019/831 (CosIng row 2020-07-27); list: CosIng list last \
update 2025-12-08
The table is not complete: what it does not name is not thereby allowed.";
    assert_eq!(report.to_string(), want);
}

#[test]
fn twelve_percent_has_a_different_basis_each_time() {
    let twelve = |j: Jurisdiction| {
        let rows = Table::of(j).rows().iter();
        let peroxide = rows.filter(|r| r.cas.contains(&Cas::HYDROGEN_PEROXIDE) && r.figure.starts_with("12 %"));
        peroxide.map(|r| r.measured).collect::<Vec<_>>()
    };
    assert_eq!(twelve(EU), [Measured::AsApplied, Measured::AsSupplied]);
    assert_eq!(twelve(Jurisdiction::Australia), [Measured::AsSupplied, Measured::AsSupplied]);
    assert_eq!(Audience::from_code("professional"), Some(Audience::Professional));
}
