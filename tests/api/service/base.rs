//! A small service in which nothing is wrong, to be changed in one place by each test.

pub(super) use crate::api::common::{example, near};
use foilwork::{
    finding::{Finding, Rule, Verdict},
    reader::Format,
    service::{Plan, ServiceFile, parse, plan},
    shop::shape::ShopFile,
};

/// One lightened section with everything stated, a toner and a root shadow. Invented, like all of "Juniper & Tide".
const FINE: &str = r#"
format = 1

[service]
title = "Fine"
start = 2026-11-25T10:00
jurisdiction = "EU"

[analysis]
natural_level = 6
white_percent = 0
scalp = "intact"
elasticity = "good"
history = []

[analysis.skin_test]
applied = 2026-11-23T10:00
result = "clear"

[analysis.strand_test]
applied = 2026-11-23T10:00
result = "clear"

[salon]
scale_division_g = 0.1
bowl_capacity_g = 120
working_life_min = 30
room_c = 20
people = 1
basins = 1
mix_bowl_min = 3
look_min = 1
rinse_section_min = 3
basin_walk_min = 2
stay_longer_min = 10
skin_test_wait_h = 48
skin_test_valid_days = 7
skin_test_source = "house rule"

[[shop.developer]]
name = "developer"
strength = "6 % w/w"
strength_basis = "measured"

[[shop.lightener]]
name = "powder"
declared_in_full = true
ratio = "1:2"
strongest_developer_ww_percent = 12
longest_min = 50
longest_counts_from = "first-strand"

[[shop.shade]]
code = "J9"
level = 9
class = "demi"
declared_in_full = true
ratio = "1:2"
strongest_developer_ww_percent = 9
longest_min = 20
longest_counts_from = "first-strand"

[[shop.shade]]
code = "J6"
level = 6
class = "permanent"
declared_in_full = true
ratio = "1:1"
strongest_developer_ww_percent = 12
longest_min = 50
longest_counts_from = "first-strand"

[[shop.shade]]
code = "J8-veil"
level = 8
class = "semi"
declared_in_full = true
strongest_developer_ww_percent = 0
longest_min = 20
longest_counts_from = "first-strand"

[[shop.additive]]
name = "bond"
declared_in_full = true
dose_percent = 3

[[section]]
name = "top"
technique = "weave"
share_percent = 20
zone = "lengths"
on_scalp = false
target_level = 9
product = "powder"
developer = "developer"
mix_g = 45
foils = 10
apply_min = 20
develop_min = 30

[[toner]]
name = "veil"
mix = [{ shade = "J9", parts = 1 }]
developer = "developer"
mix_g = 60
apply_min = 5
develop_min = 15

[root_shadow]
mix = [{ shade = "J6", parts = 1 }]
developer = "developer"
mix_g = 30
length_cm = 3
apply_min = 5
develop_min = 10
"#;

/// The shop of a file that has one.
pub(super) fn shop(file: &mut ServiceFile) -> &mut ShopFile {
    file.shop.as_mut().unwrap()
}

pub(crate) fn fine() -> ServiceFile {
    parse(FINE, Format::Toml).unwrap()
}

/// The same without any dye: one lightened section, no toner, no shadow.
pub(super) fn only_lightener() -> ServiceFile {
    ServiceFile { toner: Vec::new(), root_shadow: None, ..fine() }
}

/// The same with permanent colour instead of lightener.
pub(super) fn only_colour() -> ServiceFile {
    let mut file = only_lightener();
    file.section[0].product = Some("J6".to_owned());
    file.section[0].target_level = 6.0;
    file
}

/// The plan after a change.
pub(super) fn changed(mut file: ServiceFile, change: impl FnOnce(&mut ServiceFile)) -> Plan {
    change(&mut file);
    plan(&file).unwrap()
}

/// What one check came to, every time it was made.
pub(super) fn verdicts(plan: &Plan, check: &str) -> Vec<Verdict> {
    found(plan, check).map(|finding| finding.verdict).collect()
}

/// The texts of one check.
pub(super) fn texts(plan: &Plan, check: &str) -> String {
    found(plan, check).map(|finding| format!("{}\n", finding.text)).collect()
}

/// The findings of a rule, by its words.
fn found<'p>(plan: &'p Plan, check: &str) -> impl Iterator<Item = &'p Finding> {
    let rule: Rule = check.parse().unwrap();
    plan.findings.iter().filter(move |finding| finding.rule == rule)
}

#[test]
fn nothing_is_wrong_with_the_base() {
    for file in [fine(), only_lightener(), only_colour()] {
        let plan = plan(&file).unwrap();
        let other: Vec<_> = plan.findings.iter().filter(|finding| finding.verdict != Verdict::Passed).collect();
        assert!(other.is_empty(), "{other:#?}");
        assert!(plan.defaults.is_empty(), "{:#?}", plan.defaults);
    }
}
