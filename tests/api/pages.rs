//! The bench sheet and the guest's page: what stands first, that they say what the plan says, and that no text of a file
//! becomes more than a text.

use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    money::{Currency, Money},
    quantity::Share,
    reader::Format,
    service::{self, LeftOut, LeftOutCost, Plan, PriceAt, PriceRange, plan_text},
    sheet::{agreement_page, bench_page, bench_sheet, guest_page},
    shop::parse_shop,
    source::Interval,
    text::{amount, escaped},
};
use rstest::rstest;

const SOFT: &str = include_str!("../../examples/soft-gradient.toml");

fn plan(text: &str) -> Plan {
    plan_text(text, Format::Toml).unwrap()
}

fn place(page: &str, words: &str) -> usize {
    page.find(words).unwrap_or_else(|| panic!("no {words:?} on the page"))
}

#[test]
fn the_chair_comes_first() {
    let page = bench_page(&plan(SOFT));
    let order = ["Mind before you begin", "At the chair", "Colours on the way", "Lift against time", "Head and foils"];
    let rest = ["Cost and price", "Cautions", "What the numbers rest on", "Sources of the checks"];
    let places: Vec<usize> = order.iter().chain(&rest).map(|heading| place(&page, &format!(">{heading}</"))).collect();
    assert!(places.is_sorted(), "{places:?}");
}

#[test]
fn every_gram_and_every_minute_of_the_plan_is_on_the_page() {
    let plan = plan(SOFT);
    let page = bench_page(&plan);
    let sections = plan.order.iter().filter(|step| step.stage == service::WorkStage::Section);
    let rinsed = sections.map(|step| step.rinse_by).reduce(|a, b| if a > b { a } else { b }).unwrap();
    for (mix, step) in plan.mixes.iter().zip(&plan.order) {
        let from = place(&page, &format!("{}. {}</h3>", step.number, escaped(&step.name)));
        let bowl = &page[from..from + place(&page[from..], "</section>")];
        for part in mix.bowls.iter().flat_map(|bowl| &bowl.parts) {
            assert!(bowl.contains(&format!(">{} g</td>", amount(part.weigh, 2))), "{} in {bowl}", part.product);
        }
        for at in step.look_at.iter().chain(&step.mix_at).chain([&step.rinse_by]) {
            let from_first = if mix.stage == service::WorkStage::Section { *at } else { rinsed + *at };
            assert!(bowl.contains(&format!("data-minute=\"{}\"", amount(from_first, 1))), "{at} in {bowl}");
        }
    }
}

/// Each picture in a figure; each rule of a check once, with its sources.
#[test]
fn pictures_and_sources_are_on_the_page() {
    let plan = plan(SOFT);
    let page = bench_page(&plan);
    let pictures = page.matches("<svg ").count();
    assert!(pictures > 3 && page.matches("<figure>").count() == pictures, "{pictures}");
    let sources = &page[place(&page, ">Sources of the checks</")..];
    let told: Vec<&str> = sources[..place(sources, "</ul>")].split("<li").skip(1).collect();
    assert!(plan.findings.iter().all(|one| told.iter().any(|text| text.contains(&format!(">{}: ", one.rule)))));
    assert!(told.iter().enumerate().all(|(i, text)| !told[..i].contains(text)), "{told:?}");
}

/// Without a toner nothing stands after the rinse.
#[test]
fn what_comes_after_the_rinse_is_told_where_there_is_some() {
    assert!(bench_page(&plan(SOFT)).contains("After rinsing"));
    let grey = include_str!("../../examples/grey-blend.toml");
    let grey = plan(grey);
    assert!(grey.mixes.iter().all(|mix| mix.stage == service::WorkStage::Section));
    assert!(!bench_page(&grey).contains("After rinsing"));
}

#[test]
fn what_says_stop_stands_above_all_else() {
    let stopped = plan(&SOFT.replace("scalp = \"intact\"", "scalp = \"broken\""));
    assert!(stopped.blocked);
    let page = bench_page(&stopped);
    assert!(place(&page, "Do not begin") < place(&page, "At the chair") && page.contains("STOP"));
    assert!(guest_page(&stopped).contains("We cannot begin yet"));
    assert!(!bench_page(&plan(SOFT)).contains("Do not begin"));
}

#[test]
fn notes_are_led_to_and_are_there() {
    let page = bench_page(&plan(SOFT));
    let mut found = 0;
    for note in 1..30 {
        let (to, there) = (format!("href=\"#note-{note}\""), format!("id=\"note-{note}\""));
        assert_eq!(page.contains(&to), page.contains(&there), "{note}");
        found += usize::from(page.contains(&to));
    }
    assert!(found >= 5);
}

/// The guest is shown the price, not what the salon pays; the bench is shown both.
#[test]
fn the_guest_sees_no_grams_and_no_cost() {
    let plan = plan(SOFT);
    let page = guest_page(&plan);
    let money = plan.money.as_ref().unwrap();
    assert!(page.contains(&money.taxed.unwrap().gross.to_string()));
    assert!(!page.contains(&money.cost.total().to_string()) && !page.contains(" g<"));
    for part in plan.mixes.iter().flat_map(|mix| &mix.bowls).flat_map(|bowl| &bowl.parts) {
        assert!(!page.contains(&part.product), "{}", part.product);
    }
    for heading in ["What we plan", "What you should know", "Price", "At home", "Agreement"] {
        assert!(page.contains(&format!("<h2>{heading}</h2>")), "{heading}");
    }
}

/// What the checks could not judge is told to the guest too, by name.
#[test]
fn the_guest_is_told_what_is_not_settled() {
    let open = guest_page(&plan(&SOFT.replace("scalp = \"intact\"\n", "")));
    let settled = |page: &str| {
        let from = page.find("Not yet settled:").unwrap_or(page.len());
        page[from..].lines().next().unwrap_or_default().contains("scalp")
    };
    assert!(settled(&open) && !settled(&guest_page(&plan(SOFT))));
}

/// Findings are written for the bench: the guest reads what follows for them, without a field of the file, grams or stock.
#[test]
fn the_guest_reads_no_words_of_the_bench() {
    let mut plan = plan(SOFT);
    for rule in Rule::ALL {
        for verdict in [Verdict::Stop, Verdict::Warning, Verdict::NotJudged] {
            let text = "31 g stated is less: enter `used_g`";
            plan.findings.push(Finding::new(*rule, verdict, text, Reason::assumed()));
        }
    }
    plan.blocked = true;
    let page = guest_page(&plan);
    assert!(!page.contains("used_g") && !page.contains('`') && !page.contains("31 g"));
    // Nor the names of the rules, where something stops or is open.
    for (before, after) in [("To settle: ", "."), ("Not yet settled:", "; ask")] {
        let named = page.split(before).nth(1).and_then(|rest| rest.split(after).next()).unwrap();
        for rule in Rule::ALL {
            assert!(!named.split(", ").any(|name| name.trim() == rule.words() && *rule != Rule::Airways), "{rule}");
        }
        assert!(["law", "developer", "ratio", "stock"].iter().all(|word| !named.contains(&format!(", {word},"))));
        assert!(named.contains("your scalp") && named.contains("what the law allows"), "{named}");
    }
    // From memory of the trade: what a guest has to be told of is named by its own word.
    let told = ["asthma", "black-henna", "metal", "scalp", "sixteen", "skin test", "porous", "lightened already"];
    let page = page.to_lowercase();
    assert!(told.iter().all(|word| page.contains(word)), "{told:?}");
}

/// Both pages to sign tell the same risks; of lightening only where something is lightened.
#[test]
fn risks_are_told_in_the_same_words_on_both_pages() {
    let shop = parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml).unwrap();
    let pages = |text: &str| {
        let alone = service::parse(text, Format::Toml);
        let file = alone.or_else(|_| service::parse_with_shop(text, Format::Toml, &shop)).unwrap();
        let consultation = service::consult(&file, &service::Evidence::default()).unwrap();
        [guest_page(&service::plan(&file).unwrap()), agreement_page(&consultation)]
    };
    for (text, lightens) in [(include_str!("../../examples/gloss-refresh.toml"), false), (SOFT, true)] {
        for page in pages(text) {
            assert_eq!(page.contains("Lightening weakens hair"), lightens);
            assert!(
                page.contains("tell us about every earlier reaction") && page.contains("burns, itches or gets hot")
            );
        }
    }
}

/// Where consultation and drying are not stated, the end of the service is not known.
#[test]
fn no_finish_without_the_other_work() {
    let mut plan = plan(SOFT);
    assert!(guest_page(&plan).contains("until about") && bench_page(&plan).contains("finished at"));
    plan.chair.other_work = None;
    let (guest, bench) = (guest_page(&plan), bench_page(&plan));
    assert!(!guest.contains("until about") && guest.contains("and consultation, drying"));
    assert!(!bench.contains("finished at") && bench.contains("other_work_min"));
}

/// A price on a cost that leaves something out is not the price.
#[test]
fn a_price_that_leaves_something_out_says_so() {
    let mut plan = plan(SOFT);
    plan.money.as_mut().unwrap().left_out.clear();
    assert!(guest_page(&plan).contains("for what is planned here"));
    plan.money.as_mut().unwrap().left_out.push(LeftOut { what: LeftOutCost::Labour, of: None });
    let page = guest_page(&plan);
    assert!(page.contains("The price is not complete yet") && !page.contains("for what is planned here"));
}

/// Nobody signs, or is told a price for, what must not begin.
#[test]
fn a_plan_that_says_stop_has_nothing_to_sign() {
    let page = guest_page(&plan(&SOFT.replace("scalp = \"intact\"", "scalp = \"broken\"")));
    assert!(page.contains("To settle: your scalp.") && page.matches("We cannot begin yet").count() == 1);
    assert!(!page.contains("Agreement") && !page.contains("class=\"sign\"") && !page.contains("<h2>Price"));
    assert!(page.contains("<h2>At home"));
}

#[test]
fn the_guest_hears_of_bounds() {
    let mut plan = plan(SOFT);
    let share = |percent| Share::from_percent(percent).unwrap();
    let (unsure, sure) = ("Perhaps not in one visit:", Interval::new(share(85.0), share(92.0), share(99.0)).unwrap());
    for section in &mut plan.lift {
        section.chance = sure;
    }
    assert!(!guest_page(&plan).contains(unsure));
    plan.lift[0].chance = Interval::new(share(30.0), share(85.0), share(95.0)).unwrap();
    assert!(guest_page(&plan).contains(unsure));
    let page = guest_page(&plan);
    let regrowth = page.split("begins to show after about ").nth(1).unwrap();
    // Best, then (low to high).
    assert!(regrowth.split(" weeks").next().unwrap().contains(" to "), "{regrowth}");
}

/// A section without a target is still worked on, and so are toner and shadow.
#[test]
fn every_mix_is_named_to_the_guest() {
    let mut plan = plan(SOFT);
    plan.colour.remove(0);
    let page = guest_page(&plan);
    let planned = &page[place(&page, "What we plan")..place(&page, "What you should know")];
    for mix in &plan.mixes {
        assert!(planned.contains(&format!("{}: ", escaped(&mix.name))), "{} in {planned}", mix.name);
    }
}

/// A service without colour, without prices, on a day without a time.
#[rstest]
#[case(include_str!("../../examples/gloss-refresh.toml"))]
#[case(include_str!("../../examples/grey-blend.toml"))]
#[case(include_str!("../../examples/finish-together.toml"))]
fn every_example_is_a_page(#[case] file: &str) {
    let shop = parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml).unwrap();
    let plan = if file.contains("shop_file") {
        service::plan(&service::parse_with_shop(file, Format::Toml, &shop).unwrap()).unwrap()
    } else {
        plan(file)
    };
    for page in [bench_page(&plan), guest_page(&plan)] {
        assert!(page.starts_with("<!doctype html>") && page.ends_with("</html>\n"));
        // The namespace of pictures is a name, not an address that is asked.
        let page = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
        for never in ["NaN", "inf ", "http:", "https:", "style=\"", "{}"] {
            assert!(!page.contains(never), "{never}");
        }
    }
}

#[rstest]
#[case::markup("<script>alert(1)</script>")]
#[case::attribute("x' onmouseover='alert(1)' y")]
#[case::closing("</title></style></main></body>")]
#[case::entity("&lt;script&gt;")]
#[case::picture("<svg onload=alert(1)>")]
fn a_text_of_the_file_is_a_text_on_the_page(#[case] text: &str) {
    let file =
        SOFT.replace("name = \"nape\"", &format!("name = \"{text}\"")).replace("\"nape\"", &format!("\"{text}\""));
    let file = file.replace("guest = \"J-014\"", &format!("guest = \"{text}\""));
    let plan = plan(&file);
    assert_eq!(plan.guest.as_deref(), Some(text));
    assert!(plan.mixes.iter().any(|mix| mix.name == text));
    for page in [bench_page(&plan), guest_page(&plan)] {
        assert!(page.contains(&escaped(text)));
        assert!(!page.contains(text), "{text}");
        assert_eq!(page.matches("<script").count(), page.matches("script-src").count());
        assert_eq!((page.matches("</main>").count(), page.matches("</title>\n<style>").count()), (1, 1));
        assert!(!page.contains("onload=alert") || page.contains("&lt;svg onload=alert"));
    }
}

/// A range is told on every sheet; how it is worked out is the next test.
#[test]
fn the_guest_is_told_from_what_price_to_what() {
    let mut plan = plan(SOFT);
    let money = |text: &str| Money::parse(text, Currency::EUR).unwrap();
    let at = |cost: &str, gross: &str| PriceAt { cost: money(cost), net: money(gross), gross: money(gross) };
    let range = PriceRange { least: at("40.00", "80.00"), most: at("65.00", "130.00") };
    plan.money.as_mut().unwrap().range = Some(range);
    let told = "From 80.00 EUR to 130.00 EUR, as the hair takes less or more mixture";
    for page in [guest_page(&plan), bench_page(&plan), bench_sheet(&plan)] {
        assert!(page.split_whitespace().collect::<Vec<_>>().join(" ").contains(told), "{page}");
    }
    plan.money.as_mut().unwrap().range = None;
    assert!(!guest_page(&plan).contains("as the hair takes"));
}

/// The ends of the range, worked from grams, bowls and the cost of each product as planned.
#[test]
fn a_price_moves_with_the_grams_of_the_hair_alone() {
    let text = SOFT.replace("mix_g = 45\n", "").replace("capacity_g = 120", "capacity_g = 25");
    let plan = plan(&text);
    let money = plan.money.as_ref().unwrap();
    let (mut least, mut most, mut products) = (0.0, 0.0, 0);
    for line in money.cost.lines() {
        let amount = line.amount.minor() as f64;
        let mix = line.section.as_ref().and_then(|name| plan.mixes.iter().find(|mix| mix.name == *name));
        let Some(mix) = mix else {
            least += amount;
            most += amount;
            continue;
        };
        products += 1;
        let (bowl, bowls) = (mix.bowls[0].total.g(), mix.bowls[0].count as f64);
        let by_hair = plan.head.sections.iter().find(|section| section.section == mix.name);
        let high = by_hair.and_then(|section| section.takes).map_or(0.0, |takes| takes.high().g());
        least += amount * (mix.needed.low().g() / bowl).ceil().clamp(1.0, bowls) / bowls;
        most += amount * (high.max(mix.needed.high().g()) / (bowl * bowls)).max(1.0);
    }
    let range = money.range.unwrap();
    // Each line was rounded to a cent as planned, and once more here.
    let off = |minor: i64, worked: f64| (minor as f64 - worked).abs() / f64::from(products);
    assert!(off(range.least.cost.minor(), least) <= 3.0, "{} and {least}", range.least.cost);
    assert!(off(range.most.cost.minor(), most) <= 3.0, "{} and {most}", range.most.cost);
    let gross = money.taxed.unwrap().gross;
    assert!(range.least.gross < gross && gross < range.most.gross, "{range:?}");
    // A margin of a quarter and a tax of 19 %.
    let worked = range.most.cost.minor() as f64 / 0.75 * 1.19;
    assert!((range.most.gross.minor() as f64 - worked).abs() <= 2.0);
}

/// Bowls that are mixed one after the other are counted on the page; a single one is just mixed.
#[test]
fn bowls_that_follow_each_other_are_counted() {
    let plan = plan(&SOFT.replacen("bowl_capacity_g = 120", "bowl_capacity_g = 30", 1));
    let page = bench_page(&plan);
    let told: Vec<&str> = page.split("data-what=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    let (mut counted, mut single) = (0, 0);
    for step in &plan.order {
        let many = step.mix_at.len();
        for bowl in 1..=many {
            let what = if many > 1 { format!("mix bowl {bowl} of {many}, ") } else { "mix, ".to_owned() };
            let of_step = told.iter().filter(|line| line.ends_with(&format!(", {}", step.name)));
            assert!(of_step.into_iter().any(|line| line.starts_with(&what)), "{}: {what}", step.name);
            *(if many > 1 { &mut counted } else { &mut single }) += 1;
        }
    }
    assert!(counted > 1 && single > 0, "{counted} {single}");
    // Each step begins, is all on and is rinsed once; each look before the rinse is a line, of the last strand too when that is due.
    for step in &plan.order {
        let of_step = || told.iter().filter(|line| line.ends_with(&format!(", {}", step.name)));
        let times = |what: &str| of_step().filter(|line| line.contains(what)).count();
        assert_eq!((times("begin"), times("all on")), (1, 1), "{}", step.name);
        let rinse = ["RINSE BY", "PLANNED RINSE", "RINSE AT LATEST"].map(times);
        assert!(rinse == [1, 0, 0] || rinse == [0, 1, 1], "{}: {rinse:?}", step.name);
        let looks = step.look_at.iter().filter(|at| **at != step.rinse_by);
        let too = looks.clone().filter(|at| step.look_at_last.is_some_and(|from| **at >= from)).count();
        assert_eq!(of_step().filter(|line| line.contains("look")).count(), looks.count(), "{}", step.name);
        assert_eq!(of_step().filter(|line| line.contains("look, the last strand too")).count(), too, "{}", step.name);
    }
}
