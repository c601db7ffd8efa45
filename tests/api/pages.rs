//! The bench sheet and the guest's page: what stands first, that they say what the plan says, and that no text of a file
//! becomes more than a text.

use foilwork::{
    reader::Format,
    service::{self, Plan, plan_text},
    sheet::{bench_page, guest_page},
    shop::parse_shop,
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
    for (mix, step) in plan.mixes.iter().zip(&plan.order) {
        let from = place(&page, &format!("{}. {}</h3>", step.number, escaped(&step.name)));
        let bowl = &page[from..from + place(&page[from..], "</section>")];
        for part in mix.bowls.iter().flat_map(|bowl| &bowl.parts) {
            assert!(bowl.contains(&format!(">{} g</td>", amount(part.weigh, 2))), "{} in {bowl}", part.product);
        }
        for at in step.look_at.iter().chain(&step.mix_at).chain([&step.rinse_by]) {
            let from_first = if mix.stage == service::WorkStage::Section { *at } else { plan.chair.sections + *at };
            assert!(bowl.contains(&format!("data-minute=\"{}\"", amount(from_first, 1))), "{at} in {bowl}");
        }
    }
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
