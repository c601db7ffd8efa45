//! Tables of ones own, listings and reports.

use foilwork::limits;
use foilwork::limits::{Jurisdiction, Listing, Purpose, Table, Treatment, Use, check_peroxide};
use foilwork::mix::{Composition, Ingredient, Product};
use foilwork::quantity::{Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

const EU: Jurisdiction = Jurisdiction::EuropeanUnion;

const HOUSE: &str = "\
id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,legal_reference
house-1,maximum,Hydrogen peroxide,7722-84-1,hair,all,9,%,as-applied,h2o2-released,house rule 2026
EU-III-22-ox,maximum,Resorcinol,108-46-3,oxidative,all,1,%,as-applied,as-stated,house rule 2026
";

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

fn substance(cas: &str, percent: f64) -> Ingredient {
    Ingredient::named(cas, exact(percent)).with_cas(cas.parse().unwrap())
}

fn bowl(ingredients: Vec<Ingredient>) -> Composition {
    Composition::mix(vec![(Mass::from_g(100.0).unwrap(), Product::declared("bowl", ingredients))]).unwrap()
}

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
        report.judgements.iter().filter(|f| f.is_exceeded()).filter_map(|f| f.limit).map(|l| l.id.as_str()).collect();
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

/// A table that a spreadsheet wrote: its lines end in CR LF, and the line named is still the one with the mistake.
#[rstest]
#[case::figure(&HOUSE.replace("EU-III-22-ox,maximum,Resorcinol,108-46-3,oxidative,all,1,%", "x,maximum,Resorcinol,108-46-3,oxidative,all,1,g/L"), "line 3: figure is")]
#[case::ragged(&format!("{HOUSE}a,b\n"), "line 4: 2 fields under 11 column names")]
#[case::twice(&HOUSE.replace("EU-III-22-ox", "house-1"), "line 3: the id")]
fn line_ends_of_any_kind_count_alike(#[case] text: &str, #[case] want: &str) {
    for text in [text.to_owned(), text.replace('\n', "\r\n")] {
        let said = Table::from_csv("t", &text).unwrap_err().to_string();
        assert!(said.contains(want), "{said}");
    }
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
    assert_eq!(report.judgements[0].margin_percentage_points(), Some(-1.0));
    let json = serde_json::to_value(&report)?;
    let judgement = &json["judgements"][0];
    assert_eq!((judgement["standing"].as_str(), judgement["certain"].as_bool()), (Some("exceeded"), Some(true)));
    assert_eq!(judgement["level_ww_percent"], serde_json::json!({"low": 13.0, "best": 13.0, "high": 13.0}));
    let limit = &judgement["limit"];
    assert_eq!((limit["measured"].as_str(), limit["obtained"].as_str()), (Some("as-applied"), Some("retrieved")));
    assert!(limit["citations"].as_array().is_some_and(|s| s.len() == 3));
    // In law "40 volumes" stands beside 12 % as wording; nothing is converted by it.
    assert!(limit["conditions"].as_str().is_some_and(|c| c.starts_with("law equates it with 40 volumes")));
    assert!(limit["unit_reading"].as_str().is_some_and(|u| u.contains("convention")));
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
