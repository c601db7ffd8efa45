//! Swatches side by side, the table of pigment, the bars of cost, the grid of dilutions, the names of the wheel.

use super::{dashed, elements, level, line, outlined, rect, said, same, stroke, text};
use foilwork::{
    chart::{
        CostChart, DilutionChart, HueWheel, PigmentChart, SwatchStrip, cost_chart, dilution_chart, hue_wheel,
        pigment_chart, swatch_strip,
    },
    colour::{Hue, Naming, Swatch, underlying_pigment},
    money::{CostKind, CostLine, CostTable, Currency, Money},
    peroxide::dilution_table,
    quantity::{Mass, MassFraction},
    source::{Basis, Interval},
};
use rstest::rstest;

const WHITE: &str = "fill=\"#fff\"";

fn look(swatch: &Swatch) -> String {
    let hue = swatch.hue().map_or("grey", Hue::words);
    format!("L* {:.0} +/- {:.0}, {hue}", swatch.lab().l(), swatch.uncertainty())
}

/// A swatch is 170 wide and a cell 176; there is room for two at least. The ground is 126 high: 26 above, 46 of swatch, 54 of words.
#[rstest]
#[case(1, 360.0)]
#[case(2, 360.0)]
#[case(3, 536.0)]
fn swatches_stand_in_cells(#[case] count: usize, #[case] width: f64) {
    let all = [Swatch::natural(level(5.0)), Swatch::lightened(level(5.0), level(9.0)), Swatch::white()];
    let names = ["now", "then", "white"];
    let swatches: Vec<(&str, &Swatch)> = names.into_iter().zip(&all).take(count).collect();
    let mut want = vec![rect([0.0, 0.0, width, 126.0], WHITE), text((6.0, 18.0), "start", 13.0, "nape")];
    for ((name, swatch), left) in swatches.iter().zip([4.0, 180.0, 356.0]) {
        let paint = outlined(&swatch.srgb().to_string(), "#444", 1.0);
        want.push(rect([left, 26.0, 170.0, 46.0], &paint));
        want.push(text((left, 88.0), "start", 12.0, name));
        want.push(text((left, 103.0), "start", 11.0, &look(swatch)));
    }
    want.push(text((6.0, 118.0), "start", 10.0, "a model, not a photograph"));
    let svg = swatch_strip(&SwatchStrip { title: "nape", swatches: &swatches });
    same(&svg, &want);
    let words: Vec<String> = swatches.iter().map(|(name, swatch)| format!("{name}: {}", look(swatch))).collect();
    assert_eq!(said(&svg), ["nape", &format!("{}. A model, not a photograph.", words.join("; "))]);
}

/// From level 5: a row is 30 high, the first begins at 78. Up to the natural level there is nothing to lighten to.
#[test]
fn levels_and_what_they_show() {
    let svg = pigment_chart(&PigmentChart { title: "class", natural: level(5.0), naming: Naming::European });
    let mut want = vec![
        rect([0.0, 0.0, 720.0, 408.0], WHITE),
        text((14.0, 24.0), "start", 15.0, "class"),
        text((14.0, 44.0), "start", 11.0, "swatches are a model, not a photograph; hues by common practice"),
    ];
    let names = ["level", "named", "natural", "from 5", "what shows", "neutralised by"];
    for (x, name) in [14.0, 58.0, 208.0, 308.0, 408.0, 590.0].into_iter().zip(names) {
        want.push(text((x, 68.0), "start", 12.0, name));
    }
    let mut words = Vec::new();
    for number in 1..=10_u8 {
        let (this, top) = (level(f64::from(number)), 48.0 + 30.0 * f64::from(number));
        let swatch = |x: f64, swatch: Swatch| {
            rect([x, top + 4.0, 84.0, 22.0], &outlined(&swatch.srgb().to_string(), "#444", 1.0))
        };
        want.push(line(&[(10.0, top), (710.0, top)], &stroke("#ccc", 1.0)));
        want.push(text((14.0, top + 20.0), "start", 13.0, &number.to_string()));
        let name = this.name(Naming::European).map(|name| name.value.to_string()).unwrap_or_default();
        want.push(text((58.0, top + 20.0), "start", 13.0, &name));
        want.push(swatch(208.0, Swatch::natural(this)));
        if number <= 5 {
            want.push(text((308.0, top + 20.0), "start", 12.0, "not lighter than the hair"));
            continue;
        }
        let pigment = underlying_pigment(this).value;
        let neutral = pigment.neutraliser.map_or("nothing to neutralise", |(hue, _)| hue.words());
        want.push(swatch(308.0, Swatch::lightened(level(5.0), this)));
        want.push(text((408.0, top + 20.0), "start", 13.0, pigment.words.0));
        want.push(text((590.0, top + 20.0), "start", 13.0, neutral));
        words.push(format!("level {number}: {}, neutralised by {neutral}", pigment.words.0));
    }
    let end = "read the strand: porous and coloured hair shows other warmth";
    want.push(text((14.0, 398.0), "start", 11.0, end));
    same(&svg, &want);
    assert_eq!(said(&svg), ["class", &format!("{}.", words.join("; "))]);
}

fn costs(amounts: &[(CostKind, &str)]) -> CostTable {
    let mut table = CostTable::new(Currency::EUR);
    for (kind, amount) in amounts {
        let amount = Money::parse(amount, Currency::EUR).unwrap();
        table.push(CostLine::new(*kind, "some", Basis::Stated, amount)).unwrap();
    }
    table
}

const THREE: &[(CostKind, &str)] =
    &[(CostKind::Overhead, "7.50"), (CostKind::Product, "12.50"), (CostKind::Labour, "30.00")];

/// The longest bar is 300 wide: of 30 that is 300, so of 12.50 125 and of 7.50 75. A row is 30 high, the first begins at 50; a line of what
/// is not counted makes the picture 16 higher.
#[rstest]
#[case(&[], "in all", 176.0)]
#[case(&["foils", "labour of the crown"], "counted", 192.0)]
fn bars_of_cost(#[case] left_out: &[&str], #[case] counted: &str, #[case] height: f64) {
    let paint = outlined("#5b7f95", "#223", 1.0);
    let rows = [
        ("product", 125.0, "12.50 EUR, 25.0 %"),
        ("labour", 300.0, "30.00 EUR, 60.0 %"),
        ("overhead", 75.0, "7.50 EUR, 15.0 %"),
    ];
    let mut want = vec![rect([0.0, 0.0, 640.0, height], WHITE), text((12.0, 24.0), "start", 15.0, "gloss")];
    for ((kind, long, told), top) in rows.into_iter().zip([50.0, 80.0, 110.0]) {
        want.push(text((122.0, top + 18.0), "end", 13.0, kind));
        want.push(rect([130.0, top + 4.0, long, 20.0], &paint));
        want.push(text((138.0 + long, top + 18.0), "start", 13.0, told));
    }
    want.push(text((12.0, 164.0), "start", 13.0, &format!("{counted} 50.00 EUR")));
    let mut words = format!(
        "50.00 EUR {counted}: product 12.50 EUR, 25.0 %, labour 30.00 EUR, 60.0 % and overhead 7.50 EUR, 15.0 %."
    );
    if !left_out.is_empty() {
        let without = "not counted: foils; labour of the crown";
        want.push(text((12.0, 180.0), "start", 12.0, without));
        words += &format!(" {without}.");
    }
    let left_out: Vec<String> = left_out.iter().map(|one| (*one).to_owned()).collect();
    let table = costs(THREE);
    let svg = cost_chart(&CostChart { title: "gloss", table: &table, left_out: &left_out, style: None });
    same(&svg, &want);
    assert_eq!(said(&svg), ["gloss", words.as_str()]);
}

/// What costs nothing has a bar of no length and no share.
#[test]
fn a_cost_of_nothing_has_no_bar() {
    let table = costs(&[(CostKind::Product, "0.00")]);
    let svg = cost_chart(&CostChart { title: "gloss", table: &table, left_out: &[], style: None });
    let bar = rect([130.0, 54.0, 0.0, 20.0], &outlined("#5b7f95", "#223", 1.0));
    assert_eq!(elements(&svg)[3], bar);
    assert_eq!(elements(&svg)[4], text((138.0, 68.0), "start", 13.0, "0.00 EUR, 0.0 %"));
}

fn ww(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

/// Cells of 128 by 72 from (150, 92) on; 80 g at 6 % from 12 % are half and half, at 3 % a quarter: of a bar of 112 that is 56 and 28. What
/// is too weak already has no grams. Small letters are about 5.7 wide: of a width of 440 they fill 416.
#[rstest]
#[case(1, 440.0, 72)]
#[case(3, 546.0, 91)]
fn the_grid_of_dilutions(#[case] columns: usize, #[case] width: f64, #[case] letters: usize) {
    let (total, division) = (Mass::from_g(80.0).unwrap(), Mass::from_g(0.5).unwrap());
    let targets: Vec<f64> = [6.0, 3.0, 12.0].into_iter().take(columns).collect();
    let wanted: Vec<_> = targets.iter().map(|percent| ww(*percent)).collect();
    let table = dilution_table(&[ww(12.0), ww(2.0)], &wanted, ww(0.0), total, division).unwrap();
    let stocks = ["strong".to_owned(), "weak".to_owned()];
    let targets: Vec<String> = targets.iter().map(|percent| format!("to {percent}")).collect();
    let svg = dilution_chart(&DilutionChart {
        title: "wall",
        stocks: &stocks,
        targets: &targets,
        weaker: "water",
        table: &table,
    });
    // Below the cells, at 236, stand as many lines as the cautions take.
    let all = elements(&svg);
    let under: Vec<&str> = all.iter().skip(5 + 8 * columns).copied().collect();
    let height = 248.0 + 15.0 * under.len() as f64;
    let mut want = vec![
        rect([0.0, 0.0, width, height], WHITE),
        text((12.0, 24.0), "start", 15.0, "wall"),
        text((12.0, 46.0), "start", 12.0, "g of bottle + g of water, 80 g in all, on a scale of 0.5 g"),
    ];
    let cells = [
        ("to 6", "40 g + 40 g", "6.0 %", 56.0),
        ("to 3", "20 g + 60 g", "3.0 %", 28.0),
        ("to 12", "80 g + 0 g", "12.0 %", 112.0),
    ];
    let lefts = [150.0, 278.0, 406.0];
    for ((name, ..), left) in cells.iter().zip(lefts).take(columns) {
        want.push(text((left + 64.0, 80.0), "middle", 13.0, name));
    }
    want.push(text((12.0, 133.0), "start", 13.0, "strong"));
    for ((_, grams, gives, dark), left) in cells.iter().zip(lefts).take(columns) {
        want.push(rect([left, 92.0, 128.0, 72.0], &outlined("#fff", "#888", 1.0)));
        want.push(text((left + 64.0, 114.0), "middle", 14.0, grams));
        want.push(text((left + 64.0, 132.0), "middle", 11.0, gives));
        want.push(rect([left + 8.0, 142.0, 112.0, 12.0], &outlined("#dfe9f5", "#345", 1.0)));
        want.push(rect([left + 8.0, 142.0, *dark, 12.0], "fill=\"#345\""));
    }
    want.push(text((12.0, 205.0), "start", 13.0, "weak"));
    for left in lefts.into_iter().take(columns) {
        want.push(rect([left, 164.0, 128.0, 72.0], &outlined("#fff", "#888", 1.0)));
        want.push(text((left + 64.0, 205.0), "middle", 13.0, "not from this"));
    }
    let inside = |one: &str| one.split_once('>').unwrap().1.trim_end_matches("</text>").to_owned();
    let lines: Vec<String> = under.iter().copied().map(inside).collect();
    for (place, line) in lines.iter().enumerate() {
        assert!(line.chars().count() <= letters + 30, "a sign may take five letters: {line}");
        want.push(text((12.0, 256.0 + 15.0 * place as f64), "start", 11.0, line));
    }
    same(&svg, &want);
    let dark = "dark: from the bottle; below the grams what it gives, in % w/w; stir, use at once";
    let lines = lines.join(" ");
    let below = lines.strip_prefix(dark).unwrap().trim();
    let [_, words] = said(&svg);
    let cells: Vec<String> = cells
        .iter()
        .take(columns)
        .map(|(name, grams, gives, _)| format!("{name} from {grams}, which gives {gives}"))
        .collect();
    let cells = foilwork::text::list(&cells, "and");
    assert!(words.starts_with(&format!("strong: {cells}; weak: to 6 not from this")), "{words}");
    assert!(words.ends_with(below) && below.contains("Never close"), "{words}: {below}");
}

/// Around (290, 262): names on a ring of 164, 4 below their place; the words of the halves on one of 58, a half of a twelfth before the
/// first hue of each. Red stands at the top and green below it.
#[rstest]
#[case(None)]
#[case(Some(Hue::Yellow))]
fn the_wheel(#[case] marked: Option<Hue>) {
    let svg = hue_wheel(&HueWheel { title: "wheel", marked });
    let all = elements(&svg);
    assert_eq!(all[0], rect([0.0, 0.0, 580.0, 500.0], WHITE));
    assert_eq!(all[1], text((12.0, 24.0), "start", 15.0, "wheel"));
    let model = "colours are a model, not a photograph; opposite hues neutralise";
    assert_eq!(all[2], text((12.0, 42.0), "start", 11.0, model));
    let on = |radius: f64, degrees: f64| {
        (290.0 + radius * degrees.to_radians().sin(), 262.0 - radius * degrees.to_radians().cos())
    };
    let pair: Vec<Hue> = marked.into_iter().chain(marked.map(Hue::complement)).collect();
    let mut order: Vec<Hue> = Hue::ALL.iter().copied().filter(|hue| !pair.contains(hue)).collect();
    order.extend(Hue::ALL.iter().copied().filter(|hue| pair.contains(hue)));
    for (place, hue) in order.iter().enumerate() {
        let (sector, name) = (all[3 + 2 * place], all[4 + 2 * place]);
        let outline = if pair.contains(hue) {
            "stroke=\"#000\" stroke-width=\"3.5\"/>"
        } else {
            "stroke=\"#fff\" stroke-width=\"1.5\"/>"
        };
        assert!(sector.starts_with("<path d=\"M") && sector.ends_with(outline), "{hue}: {sector}");
        let degrees = 30.0 * Hue::ALL.iter().position(|one| one == hue).unwrap() as f64;
        let (x, y) = on(164.0, degrees);
        let anchor = match degrees {
            degrees if degrees == 0.0 || degrees == 180.0 => "middle",
            degrees if degrees < 180.0 => "start",
            _ => "end",
        };
        assert_eq!(name, text((x, y + 4.0), anchor, 13.0, hue.words()));
    }
    // From yellow-orange to blue-violet, which stand at 90 and 270 degrees.
    for (place, (words, degrees)) in [("warm", 75.0), ("cool", 255.0)].into_iter().enumerate() {
        let (x, y) = on(58.0, degrees);
        assert_eq!(all[27 + place], text((x, y + 4.0), "middle", 12.0, words));
    }
    if marked.is_some() {
        assert_eq!(all[29], line(&[on(82.0, 120.0), on(82.0, 300.0)], &dashed("#222", 2.0)));
        assert_eq!(all[30], text((290.0, 484.0), "middle", 14.0, "yellow is neutralised by violet"));
        assert_eq!(all.len(), 31);
    } else {
        assert_eq!(all.len(), 29);
    }
}
