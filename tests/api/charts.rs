//! Charts for the wall: what stands in them, in words too, and that no text becomes markup.

use foilwork::{
    chart::{
        CostChart, DilutionChart, HueWheel, MarginChart, PigmentChart, cost_chart, dilution_chart, hue_wheel,
        margin_chart, pigment_chart,
    },
    colour::{Hue, Level, Naming},
    money::{CostKind, CostLine, CostTable, Currency, Margin, Money, MoneyStyle},
    peroxide::dilution_table,
    quantity::{Mass, MassFraction},
    source::{Basis, Interval},
};
use rstest::rstest;

fn euros(text: &str) -> Money {
    Money::parse(text, Currency::EUR).unwrap()
}

fn grid(title: &str, name: &str) -> String {
    let of = |percent| Interval::exact(MassFraction::from_ww_percent(percent).unwrap());
    let (total, division) = (Mass::from_g(80.0).unwrap(), Mass::from_g(1.0).unwrap());
    let table = dilution_table(&[of(12.0), of(3.0)], &[of(6.0)], of(0.0), total, division).unwrap();
    let (stocks, targets) = ([name.to_owned(), "3 %".to_owned()], ["6 %".to_owned()]);
    dilution_chart(&DilutionChart { title, stocks: &stocks, targets: &targets, weaker: name, table: &table })
}

fn costs(title: &str) -> String {
    let mut table = CostTable::new(Currency::EUR);
    for (kind, amount) in [(CostKind::Product, "12.50"), (CostKind::Labour, "30.00"), (CostKind::Overhead, "7.50")] {
        table.push(CostLine::new(kind, title, Basis::Stated, euros(amount))).unwrap();
    }
    cost_chart(&CostChart { title, table: &table, left_out: &[], style: None })
}

fn pigment(title: &str) -> String {
    pigment_chart(&PigmentChart { title, natural: Level::new(5.0).unwrap(), naming: Naming::European })
}

fn margins(title: &str, marked: Option<i64>) -> String {
    let marked = marked.map(|percent| Margin::from_percent(percent.into()).unwrap());
    margin_chart(&MarginChart::new(title, euros("45.00")).unwrap().marking(marked).unwrap())
}

fn description(svg: &str) -> &str {
    &svg[svg.find("<desc>").unwrap()..svg.find("</desc>").unwrap()]
}

/// 80 g at 6 % from 12 % is half of each; 3 % never becomes 6 % with water.
#[test]
fn the_grid_says_grams_and_what_cannot_be() {
    let svg = grid("wall", "12 %");
    for said in ["40 g + 40 g", "not from this", "80 g in all, on a scale of 1 g"] {
        assert!(svg.contains(said), "{said}");
    }
    assert!(description(&svg).contains("6 % from 40 g + 40 g"), "{}", description(&svg));
}

/// A bottle between 8.5 and 12 % gives half of that in half and half; 12 % is named as a hazard, and a bowl stays open.
#[test]
fn the_grid_says_what_a_cell_gives_and_what_to_mind() {
    let ww = |percent| MassFraction::from_ww_percent(percent).unwrap();
    let bottle = Interval::new(ww(8.5), ww(10.0), ww(12.0)).unwrap();
    let exact = |percent| Interval::exact(ww(percent));
    let (total, division) = (Mass::from_g(80.0).unwrap(), Mass::from_g(1.0).unwrap());
    let table = dilution_table(&[bottle], &[exact(5.0)], exact(0.0), total, division).unwrap();
    let (stocks, targets) = (["label".to_owned()], ["5 %".to_owned()]);
    let chart = DilutionChart { title: "wall", stocks: &stocks, targets: &targets, weaker: "water", table: &table };
    let svg = dilution_chart(&chart);
    assert!(svg.contains(">5.0 % (4.2-6.0)<") || svg.contains(">5.0 % (4.3-6.0)<"), "{svg}");
    for said in ["Never close", "Hazard classes at"] {
        assert!(description(&svg).contains(said), "{said}");
    }
    assert!(!description(&grid("wall", "3 %")[..]).contains("no advice"));
}

/// 12.50 of 50.00 is a quarter.
#[test]
fn shares_of_cost_are_of_the_whole() {
    let svg = costs("gloss");
    for said in ["12.50 EUR, 25.0 %", "30.00 EUR, 60.0 %", "7.50 EUR, 15.0 %", "in all 50.00 EUR"] {
        assert!(svg.contains(said), "{said}");
    }
}

/// Common practice of Germany, as CLDR has it: `1.234,50 €`, in the picture and in its words.
#[test]
fn costs_are_written_as_the_shop_writes_money() {
    let mut table = CostTable::new(Currency::EUR);
    table.push(CostLine::new(CostKind::Labour, "hands", Basis::Stated, euros("1234.50"))).unwrap();
    let style = MoneyStyle { currency: "EUR", symbol: "€", before: false, gap: " ", group: ".", point: ',' };
    let svg = cost_chart(&CostChart { title: "gloss", table: &table, left_out: &[], style: Some(style) });
    assert!(svg.contains(">1.234,50 €, 100.0 %</text>") && svg.contains(">in all 1.234,50 €</text>"));
    assert!(description(&svg).contains("1.234,50 €") && !svg.contains("EUR"));
}

/// What the sum leaves out is not hidden by the words "in all".
#[test]
fn a_cost_that_is_not_complete_says_so() {
    let mut table = CostTable::new(Currency::EUR);
    table.push(CostLine::new(CostKind::Product, "powder", Basis::Stated, euros("12.50"))).unwrap();
    let left_out = ["labour".to_owned(), "foils of the crown".to_owned()];
    let svg = cost_chart(&CostChart { title: "gloss", table: &table, left_out: &left_out, style: None });
    assert!(!svg.contains("in all") && svg.contains("counted 12.50 EUR"));
    assert!(svg.contains(">not counted: labour; foils of the crown</text>"));
    assert!(description(&svg).contains("not counted: labour"));
}

/// Common practice: 10 is very pale yellow, which violet neutralises; nothing at or below the natural level is lightened to.
#[test]
fn pigment_shows_above_the_natural_level_only() {
    let svg = pigment("class");
    assert_eq!(svg.matches("not lighter than the hair").count(), 5);
    assert!(svg.contains("very pale yellow") && svg.contains("violet") && svg.contains("not a photograph"));
    assert!(description(&svg).starts_with("<desc>level 6: orange, neutralised by blue"), "{}", description(&svg));
}

#[test]
fn the_wheel_names_all_twelve_and_the_pair() {
    let svg = hue_wheel(&HueWheel { title: "wheel", marked: Some(Hue::Yellow) });
    for hue in Hue::ALL {
        assert!(svg.contains(&format!(">{hue}</text>")), "{hue}");
    }
    assert_eq!(svg.matches("<path").count(), 12);
    assert!(description(&svg).contains("yellow is neutralised by violet"));
    // Common practice: from red over yellow is warm, from green over blue is cool.
    let warm = description(&svg).split("warm are ").nth(1).unwrap();
    assert!(warm.contains("orange") && warm.contains("yellow") && !warm.contains("blue,"), "{warm}");
    assert!(hue_wheel(&HueWheel { title: "wheel", marked: None }).contains("none is marked"));
}

/// 45 / (1 - 0.25) = 60, which is a third on top of the cost.
#[rstest]
#[case(Some(25), "margin 25 %: 60.00 EUR, mark-up 33.3 %")]
#[case(Some(90), "margin 90 %: 450.00 EUR, mark-up 900 %")]
#[case(None, "no margin is marked")]
fn a_marked_margin_says_its_price(#[case] marked: Option<i64>, #[case] said: &str) {
    assert!(margins("m", marked).contains(said));
}

/// A mark at the edge of the axis would be at the wrong place.
#[rstest]
#[case(96)]
#[case(-1)]
fn a_margin_off_the_axis_is_refused(#[case] percent: i64) {
    let chart = MarginChart::new("m", euros("45.00")).unwrap();
    let refused = chart.marking(Some(Margin::from_percent(percent.into()).unwrap()));
    assert!(refused.unwrap_err().to_string().ends_with("must be from 0 to 95 % of the price"));
}

/// Both ends of the axis belong to it; so does every margin between.
#[rstest]
#[case(0, "margin 0 %: 45.00 EUR")]
#[case(95, "margin 95 %: 900.00 EUR")]
fn a_margin_at_an_end_of_the_axis_is_drawn(#[case] percent: i64, #[case] said: &str) {
    assert!(margins("m", Some(percent)).contains(said), "{}", margins("m", Some(percent)));
}

/// Without a cost there is no margin to speak of; a cent is a cost.
#[rstest]
#[case("0.01", true)]
#[case("0.00", false)]
#[case("-0.01", false)]
fn a_margin_is_of_a_cost(#[case] cost: &str, #[case] drawn: bool) {
    assert_eq!(MarginChart::new("m", euros(cost)).is_ok(), drawn);
}

#[rstest]
#[case::markup("<script>alert(1)</script>")]
#[case::attribute("\" onload=\"alert(1)")]
#[case::turned("grey\u{202e}edit")]
fn no_text_becomes_markup(#[case] text: &str) {
    let drawn = [
        grid(text, text),
        costs(text),
        pigment(text),
        margins(text, None),
        hue_wheel(&HueWheel { title: text, marked: None }),
    ];
    for svg in drawn {
        assert!(!svg.contains("<script") && !svg.contains("\" onload") && !svg.contains('\u{202e}'), "{svg}");
        assert!(!svg.contains("NaN") && !svg.contains("inf") && !svg.contains("href"));
    }
}
