//! Laws of many services: sums of parts, order of lines, lines kept twice, guests forgotten, and bounds of what is learned.

use foilwork::{
    history::{
        GroupBy, KeptPart, KeptRecord, KeptSection, Learned, Summary, forget, lessons, read_records, read_records_csv,
        record_line, records_csv, summarise,
    },
    money::Money,
};
use proptest::{collection::vec, option::of, prelude::*, sample::select};

/// Tenths, as a scale and a clock show them.
fn tenths(low: u32, high: u32) -> impl Strategy<Value = f64> {
    (low..high).prop_map(|tenths| f64::from(tenths) / 10.0)
}

prop_compose! {
    fn section()(
        name in select(vec!["nape", "crown", "hairline"]),
        foils in of(0u32..20),
        expected_g in of(tenths(100, 900)),
        weighed_g in of(tenths(100, 900)),
        left_share in of(0u32..100),
        apply_min in of(tenths(10, 400)),
        applications in of(1u32..3),
        levels in of((2u32..16, 2u32..16)),
        grams in of(tenths(10, 600)),
    ) -> KeptSection {
        let product = |mass_g| KeptPart { product: format!("{name} powder"), mass_g };
        KeptSection {
            name: name.to_owned(),
            foils,
            expected_g,
            weighed_g,
            left_over_g: weighed_g.zip(left_share).map(|(g, share)| (g * f64::from(share) / 10.0).floor() / 10.0),
            apply_min,
            applications,
            target_level: levels.map(|(target, _)| 1.0 + f64::from(target) / 2.0),
            result_level: levels.map(|(_, result)| 1.0 + f64::from(result) / 2.0),
            part: grams.map(product).into_iter().collect(),
            ..KeptSection::default()
        }
    }
}

prop_compose! {
    /// Of one of three guests or of a guest without a code, whose codes begin with a word.
    fn record(codes: &'static str)(
        day in 1u32..28,
        month in 1u32..5,
        title in select(vec!["gloss", "foils"]),
        guest in of(0u32..3),
        colourist in of(select(vec!["R.", "W."])),
        chair_min in of(tenths(300, 3000)),
        money in of((select(vec!["EUR", "CHF"]), 1u32..20000, 1u32..40000, of(0u32..500))),
        section in vec(section(), 0..3),
        incidents in 0usize..2,
    ) -> KeptRecord {
        let amount = |cents: u32| format!("{}.{:02}", cents / 100, cents % 100);
        KeptRecord {
            format: 1,
            on: format!("2026-{month:02}-{day:02}"),
            title: title.to_owned(),
            guest: guest.map(|number| format!("{codes}-{number}")),
            colourist: colourist.map(str::to_owned),
            service_class: None,
            chair_min,
            currency: money.map(|(currency, ..)| currency.to_owned()),
            cost: money.map(|(_, cost, ..)| amount(cost)),
            left_over_cost: money.and_then(|(.., left)| left).map(amount),
            price: money.map(|(_, _, price, _)| amount(price)),
            section,
            incident: vec!["a foil was hot".to_owned(); incidents],
        }
    }
}

/// Records of which no two are of one service: each has a day of its own, and guests of other codes another year.
fn apart(codes: &'static str, most: usize) -> impl Strategy<Value = Vec<KeptRecord>> {
    vec(record(codes), 0..most).prop_map(|records| {
        let year = 2000 + codes.bytes().map(u32::from).sum::<u32>() % 100;
        let day = |place: usize| format!("{year}-{:02}-{:02}", 1 + place / 28, 1 + place % 28);
        records.into_iter().enumerate().map(|(place, record)| KeptRecord { on: day(place), ..record }).collect()
    })
}

fn all(records: &[KeptRecord]) -> Summary {
    summarise(records, GroupBy::All).pop().unwrap_or_else(|| summarise(&[empty()], GroupBy::All).remove(0))
}

fn empty() -> KeptRecord {
    read_records("{\"format\":1,\"on\":\"2026-01-01\",\"title\":\"none\"}\n").records.remove(0)
}

fn same(one: Option<f64>, other: Option<f64>) -> bool {
    (one.unwrap_or(0.0) - other.unwrap_or(0.0)).abs() < 1e-6
}

fn plus(one: Option<f64>, other: Option<f64>) -> Option<f64> {
    one.into_iter().chain(other).reduce(|a, b| a + b)
}

/// Grams of a product in a summary.
fn used(of: &Summary, product: &str) -> f64 {
    of.used.iter().filter(|part| part.product == product).map(|part| part.mass_g).sum()
}

/// Services, cost, price, profit, what was left over and how many say it, of a currency.
fn takings(of: &Summary, currency: &str) -> [String; 6] {
    let zero = Money::parse("0", currency.parse().unwrap()).unwrap();
    let found = of.money.iter().find(|sum| sum.price.currency().to_string() == currency);
    found.map_or(
        [0.to_string(), zero.to_string(), zero.to_string(), zero.to_string(), zero.to_string(), 0.to_string()],
        |sum| {
            let left = sum.left_over.unwrap_or(zero);
            [
                sum.services.to_string(),
                sum.cost.to_string(),
                sum.price.to_string(),
                sum.profit.to_string(),
                left.to_string(),
                sum.left_over_services.to_string(),
            ]
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Two histories of different guests together are the sum of both.
    #[test]
    fn two_histories_add_up(one in apart("J", 6), two in apart("K", 6)) {
        prop_assume!(!one.is_empty() && !two.is_empty());
        let (a, b, both) = (all(&one), all(&two), all(&[one.clone(), two.clone()].concat()));
        prop_assert_eq!((both.services, both.incidents), (a.services + b.services, a.incidents + b.incidents));
        prop_assert_eq!((both.guests, both.without_guest), (a.guests + b.guests, a.without_guest + b.without_guest));
        prop_assert_eq!((both.as_planned, both.kept_twice), (a.as_planned + b.as_planned, 0));
        prop_assert!(same(both.chair_min, plus(a.chair_min, b.chair_min)));
        prop_assert!(same(both.applying_min, plus(a.applying_min, b.applying_min)));
        prop_assert!(same(both.weighed_g, plus(a.weighed_g, b.weighed_g)));
        prop_assert!(same(both.left_over_g, plus(a.left_over_g, b.left_over_g)));
        for product in ["nape powder", "crown powder", "hairline powder"] {
            prop_assert!((used(&both, product) - used(&a, product) - used(&b, product)).abs() < 1e-6);
        }
        prop_assert!(both.used.windows(2).all(|pair| pair[0].mass_g >= pair[1].mass_g));
        // Added in minor units by hand.
        let cents = |text: &str| text.split(' ').next().unwrap().replace('.', "").parse::<i64>().unwrap();
        for currency in ["EUR", "CHF"] {
            let (a, b, both) = (takings(&a, currency), takings(&b, currency), takings(&both, currency));
            for place in 0..6 {
                prop_assert_eq!(cents(&both[place]), cents(&a[place]) + cents(&b[place]), "{} of {}", place, currency);
            }
            prop_assert_eq!(cents(&both[3]), cents(&both[2]) - cents(&both[1]));
        }
        // Each waste lies between the two that it is made of.
        if let (Some(a), Some(b), Some(both)) = (a.waste_percent, b.waste_percent, both.waste_percent) {
            prop_assert!(both >= a.min(b) - 1e-9 && both <= a.max(b) + 1e-9);
        }
        let (a, b, both) = (lessons(&one), lessons(&two), lessons(&[one, two].concat()));
        prop_assert_eq!((both.records, both.put_on_again), (a.records + b.records, a.put_on_again + b.put_on_again));
        let count = |of: Option<Learned>| of.map_or(0, |learned| learned.count);
        prop_assert_eq!(count(both.level_off), count(a.level_off) + count(b.level_off));
        prop_assert_eq!(
            count(both.weeks_between_visits),
            count(a.weeks_between_visits) + count(b.weeks_between_visits)
        );
    }

    /// Groups of any kind add up to all, and none of them is empty.
    #[test]
    fn groups_add_up_to_all(records in vec(record("J"), 1..8)) {
        let whole = all(&records);
        for by in [GroupBy::Service, GroupBy::Colourist, GroupBy::Month] {
            let groups = summarise(&records, by);
            prop_assert!(groups.iter().all(|group| group.services > 0));
            prop_assert!(groups.windows(2).all(|pair| pair[0].of < pair[1].of));
            prop_assert_eq!(groups.iter().map(|group| group.services).sum::<usize>(), whole.services);
            prop_assert_eq!(groups.iter().map(|group| group.kept_twice).sum::<usize>(), whole.kept_twice);
            prop_assert_eq!(groups.iter().map(|group| group.incidents).sum::<usize>(), whole.incidents);
            let weighed = groups.iter().filter_map(|group| group.weighed_g).reduce(|a, b| a + b);
            prop_assert!(same(weighed, whole.weighed_g));
        }
    }

    /// In whatever order the lines of different services stand, they say the same.
    #[test]
    fn the_order_of_the_lines_says_nothing(records in apart("J", 7)) {
        let turned: Vec<KeptRecord> = records.iter().rev().cloned().collect();
        let (one, other) = (lessons(&records), lessons(&turned));
        let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
            (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
            (a, b) => a.is_none() && b.is_none(),
        };
        let alike = |a: &Learned, b: &Learned| {
            let pairs = [(a.mean_low, b.mean_low), (a.mean_high, b.mean_high), (a.next_low, b.next_low), (a.next_high, b.next_high)];
            a.count == b.count && near(Some(a.mean), Some(b.mean)) && pairs.into_iter().all(|(a, b)| near(a, b))
        };
        prop_assert_eq!(one.demand.len(), other.demand.len());
        prop_assert!(one.demand.iter().zip(&other.demand).all(|(a, b)| a.technique == b.technique && alike(&a.factor, &b.factor)));
        prop_assert_eq!(one.foils.len(), other.foils.len());
        for (a, b) in one.foils.iter().zip(&other.foils) {
            prop_assert!(a.colourist == b.colourist && alike(&a.min_per_foil, &b.min_per_foil));
        }
        for (a, b) in [(one.weeks_between_visits, other.weeks_between_visits), (one.level_off, other.level_off)] {
            prop_assert!(a.is_some() == b.is_some() && a.zip(b).is_none_or(|(a, b)| alike(&a, &b)));
        }
        for by in [GroupBy::All, GroupBy::Service] {
            let services = |of: &[KeptRecord]| {
                summarise(of, by).into_iter().map(|one| (one.of, one.services, one.guests)).collect::<Vec<_>>()
            };
            prop_assert_eq!(services(&records), services(&turned));
        }
    }

    /// What is kept twice says what it said once, and how often.
    #[test]
    fn what_is_kept_twice_counts_once(records in apart("J", 6)) {
        let twice = [records.clone(), records.clone()].concat();
        for by in [GroupBy::All, GroupBy::Service, GroupBy::Colourist, GroupBy::Month] {
            let once = summarise(&records, by);
            let again = summarise(&twice, by);
            let want: Vec<Summary> = once.into_iter().map(|one| Summary { kept_twice: one.services, ..one }).collect();
            prop_assert_eq!(again, want);
        }
        let once = lessons(&records);
        prop_assert_eq!(lessons(&twice), foilwork::history::Lessons { kept_twice: records.len(), ..once });
    }

    /// Lines and tables hold all of it.
    #[test]
    fn what_is_written_is_read_back(records in vec(record("J"), 0..5)) {
        let lines: String = records.iter().map(record_line).collect();
        let found = read_records(&lines);
        prop_assert!(found.problems.is_empty(), "{:?}", found.problems);
        prop_assert_eq!(&found.records, &records);
        let found = read_records_csv(&records_csv(&records));
        prop_assert!(found.problems.is_empty(), "{:?}", found.problems);
        prop_assert_eq!(&found.records, &records);
    }

    /// No trace of the code is left, every other line stands as it was, and there is nothing to forget a second time.
    #[test]
    fn who_is_forgotten_leaves_no_trace(records in vec(record("J"), 0..6), who in 0u32..3, table in any::<bool>()) {
        let code = format!("J-{who}");
        let text = if table { records_csv(&records) } else { records.iter().map(record_line).collect() };
        let found = forget(text.as_bytes(), &code);
        let left = String::from_utf8(found.kept.clone()).unwrap();
        prop_assert!(!left.contains(&code));
        let others: String = text.split_inclusive('\n').filter(|line| !line.contains(&code)).collect();
        prop_assert_eq!(&left, &others);
        let holds = text.split_inclusive('\n').enumerate().filter(|(_, line)| line.contains(&code));
        prop_assert_eq!(found.removed, holds.map(|(place, _)| place as u64 + 1).collect::<Vec<_>>());
        prop_assert!(found.unsure.is_empty());
        prop_assert_eq!(forget(left.as_bytes(), &code).kept, found.kept);
        // Nobody has no code.
        prop_assert_eq!(forget(text.as_bytes(), " ").kept, text.as_bytes());
    }

    /// The mean lies within its bounds and these within those of the next; one figure has none.
    #[test]
    fn what_is_learned_has_its_bounds_in_order(records in apart("J", 12)) {
        let found = lessons(&records);
        let learned = found.demand.iter().map(|one| one.factor).chain(found.foils.iter().map(|one| one.min_per_foil));
        for one in learned.chain(found.weeks_between_visits).chain(found.level_off) {
            match (one.next_low, one.mean_low, one.mean_high, one.next_high) {
                (Some(next_low), Some(low), Some(high), Some(next_high)) => {
                    let all = [next_low, low, one.mean, high, next_high];
                    prop_assert!(one.count > 1 && all.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9), "{one:?}");
                }
                none => prop_assert!(one.count == 1 && none == (None, None, None, None), "{one:?}"),
            }
        }
    }

    /// Twice the grams on the same hair are twice the factor; half a level more everywhere is half a level more in the mean.
    #[test]
    fn lessons_follow_their_figures(records in apart("J", 8)) {
        let changed = |change: fn(&mut KeptSection)| {
            let mut changed = records.clone();
            changed.iter_mut().flat_map(|record| &mut record.section).for_each(change);
            lessons(&changed)
        };
        let found = lessons(&records);
        let double = changed(|section| {
            section.weighed_g = section.weighed_g.map(|g| 2.0 * g);
            section.left_over_g = section.left_over_g.map(|g| 2.0 * g);
        });
        prop_assert_eq!(found.demand.len(), double.demand.len());
        for (one, two) in found.demand.iter().zip(&double.demand) {
            let pairs = [(Some(one.factor.mean), Some(two.factor.mean)), (one.factor.next_low, two.factor.next_low), (one.factor.mean_high, two.factor.mean_high)];
            for (one, two) in pairs.into_iter().filter_map(|(one, two)| one.zip(two)) {
                prop_assert!((two - 2.0 * one).abs() <= 1e-9 * two.abs());
            }
        }
        // As much of the double is thrown away.
        prop_assert!(same(found.waste.as_ref().map(|one| one.waste_percent), double.waste.as_ref().map(|one| one.waste_percent)));
        let lighter = changed(|section| section.result_level = section.result_level.map(|level| level + 0.5));
        if let (Some(one), Some(two)) = (found.level_off, lighter.level_off) {
            prop_assert!((two.mean - one.mean - 0.5).abs() < 1e-9 && one.count == two.count);
            prop_assert!(one.mean_low.zip(two.mean_low).is_none_or(|(one, two)| (two - one - 0.5).abs() < 1e-9));
        }
    }

    /// Waste on a straight line over days has the slope of that line, and bounds that lie on it.
    #[test]
    fn a_straight_line_of_waste_is_its_own_trend(first in 1u32..100, step in 0u32..10, count in 3u32..9, falls in any::<bool>()) {
        // Of 100 g as many are left as the line says, a day apart.
        let left = |day: u32| if falls { first + step * (count - day) } else { first + step * day };
        let records: Vec<KeptRecord> = (0..count)
            .map(|day| KeptRecord {
                on: format!("2026-03-{:02}", day + 1),
                section: vec![KeptSection {
                    name: "nape".to_owned(),
                    weighed_g: Some(100.0),
                    left_over_g: Some(f64::from(left(day)) / 10.0),
                    ..KeptSection::default()
                }],
                ..empty()
            })
            .collect();
        let found = lessons(&records).waste.unwrap();
        let slope = 30.0 * f64::from(step) / 10.0 * if falls { -1.0 } else { 1.0 };
        for got in [found.change_percent_points, found.change_low_percent_points, found.change_high_percent_points] {
            prop_assert!((got.unwrap() - slope).abs() < 1e-5, "{found:?}");
        }
        let says = match (step, falls) {
            (0, _) => None,
            (_, true) => Some("waste falls; "),
            (_, false) => Some("waste rises; "),
        };
        prop_assert!(says.is_none_or(|says| found.text.starts_with(says)), "{found:?}");
        let mean = (0..count).map(|day| f64::from(left(day)) / 10.0).sum::<f64>() / f64::from(count);
        prop_assert!((found.waste_percent - mean).abs() < 1e-9);
        prop_assert!(lessons(&records[..2]).waste.unwrap().change_percent_points.is_none());
    }
}
