//! The shop at its edges: words that are no hue, fields that need or exclude each other, what is on the shelf and what it costs.

use foilwork::{
    business::list::Taken,
    quantity::Mass,
    reader::Format,
    shop::{OrderDays, Shop, parse_shop, shape::Declared, shop_schema},
};
use rstest::rstest;
use schemars::JsonSchema;
use serde_json::Value;

fn problems(text: &str) -> Vec<String> {
    let found = parse_shop(text, Format::Toml).err().map(|problems| problems.to_string()).unwrap_or_default();
    found.lines().map(str::to_owned).collect()
}

fn shop(text: &str) -> Shop {
    Shop::new(&parse_shop(text, Format::Toml).unwrap()).unwrap()
}

/// Words of shade charts, as charts commonly use them (common practice): each says which hues it may stand for.
#[rstest]
#[case(&["ash", "Ashy", "cool"], "blue, green or violet")]
#[case(&["gold", "golden", " WARM "], "yellow or yellow-orange")]
#[case(&["copper"], "orange or red-orange")]
#[case(&["mahogany"], "red-violet")]
#[case(&["pearl", "iridescent"], "violet or blue-violet")]
#[case(&["beige"], "yellow with violet")]
#[case(&["matt", "matte"], "green")]
fn a_word_of_a_chart_is_no_hue(#[case] words: &[&str], #[case] meant: &str) {
    for word in words {
        let told = problems(&format!("[[shade]]\nclass = \"semi\"\ncode = \"a\"\nlevel = 9\ntones = [\"{word}\"]\n"));
        let want = format!(
            "line 5: shade[1].tones[1]: \"{word}\" is a word of shade charts, mostly for {meant}: write the hues that your own chart means \
             by it"
        );
        assert_eq!(told, [want]);
    }
}

#[test]
fn texts_of_a_shop_are_read_each_in_its_way() {
    let hue = |word: &str| problems(&format!("[digits]\n7 = [\"{word}\"]\n"));
    for word in ["natural", "Neutral"] {
        assert_eq!(
            hue(word),
            [format!("line 2: digits.7[1]: \"{word}\" is no hue: leave `tones` out, or write an empty list")]
        );
    }
    let named = |name: &str| problems(&format!("[[diluent]]\nname = \"{name}\"\n"));
    let plus =
        "line 2: diluent[1].name: \"a + b\" holds a plus sign or a line break: recipes use them, so leave them out";
    assert_eq!(named("a + b"), [plus]);
    for name in ["base ", " base"] {
        assert_eq!(
            named(name),
            [format!("line 2: diluent[1].name: {name:?} begins or ends with a blank: leave it out")]
        );
    }
    let ratio = |ratio: &str| problems(&format!("[[lightener]]\nname = \"powder\"\nratio = \"{ratio}\"\n"));
    assert!(ratio("1:2").is_empty() && ratio("1+1.5").is_empty());
    let three = "line 3: lightener[1].ratio: \"1:2:3\" has 3 parts: give product to developer, for example 1:2";
    assert_eq!(ratio("1:2:3"), [three]);
    let price = |price: &str| {
        problems(&format!("currency = \"EUR\"\n[[diluent]]\nname = \"base\"\npack_g = 500\nprice = \"{price}\"\n"))
    };
    assert!(price("0").is_empty() && price("0.00").is_empty());
    assert_eq!(price("-1"), ["line 5: diluent[1].price: \"-1\" is negative: give 0 or more, for example \"12.50\""]);
    let finer = "line 5: diluent[1].price: \"1.005\" is between two amounts of EUR, which has 2 decimals: round it";
    assert_eq!(price("1.005"), [finer]);
}

/// All that an editor is told of a text field, by the reader of that field: which it is, and no field without.
#[test]
fn the_schema_says_how_each_text_is_written() {
    fn walk<'s>(schema: &'s Value, found: &mut Vec<(&'s str, &'s Value)>) {
        if let Some(reader) = schema.get("x-parse").and_then(Value::as_str) {
            found.push((reader, schema));
        }
        match schema {
            Value::Object(fields) => fields.values().for_each(|one| walk(one, found)),
            Value::Array(items) => items.iter().for_each(|one| walk(one, found)),
            _ => {}
        }
    }
    let schema = shop_schema();
    let mut found = Vec::new();
    walk(&schema, &mut found);
    let mut readers: Vec<&str> = found.iter().map(|(reader, _)| *reader).collect();
    readers.sort_unstable();
    readers.dedup();
    assert_eq!(readers, ["amount", "cas", "currency", "form", "hue", "name", "ratio", "strength"]);
    for (reader, schema) in found {
        let keyword = match reader {
            "form" => None,
            "hue" => Some("enum"),
            _ => Some("pattern"),
        };
        for one in ["enum", "pattern"] {
            assert_eq!(schema.get(one).is_some(), keyword == Some(one), "{reader}: {schema}");
        }
        if reader == "hue" {
            // The twelve hues of the wheel.
            assert_eq!(schema["enum"].as_array().map(Vec::len), Some(12));
        }
    }
    // A declared level is called as its type is, wherever a schema names it.
    assert!(std::any::type_name::<Declared>().ends_with(&format!("::{}", Declared::schema_name())));
    assert!(Declared::inline_schema());
}

/// A shade that is mixed says how; one that is used as it is need not. A name is taken once in its kind, and but for developers in all.
#[test]
fn names_and_ratios_of_a_shop_go_together() {
    let shade =
        |class: &str, more: &str| problems(&format!("[[shade]]\ncode = \"a\"\nlevel = 9\nclass = \"{class}\"\n{more}"));
    assert_eq!(
        shade("demi", ""),
        ["line 1: shade[1].ratio: missing: say how many parts colour to developer, for example 1:1.5"]
    );
    assert!(shade("demi", "ratio = \"1:1.5\"\n").is_empty() && shade("semi", "").is_empty());
    let developer = "[[developer]]\nname = \"six\"\nstrength = \"6 % w/w\"\nstrength_basis = \"label\"\n";
    let entry = |kind: &str, name: &str| match kind {
        "developer" => developer.replacen("six", name, 1),
        "lightener" => format!("[[lightener]]\nname = \"{name}\"\nratio = \"1:2\"\n"),
        "shade" => format!("[[shade]]\ncode = \"{name}\"\nlevel = 9\nclass = \"semi\"\n"),
        "additive" => format!("[[additive]]\nname = \"{name}\"\ndose_percent = 3\n"),
        _ => format!("[[{kind}]]\nname = \"{name}\"\n"),
    };
    let kinds = ["developer", "lightener", "shade", "additive", "diluent", "remover"];
    for kind in kinds {
        let key = if kind == "shade" { "code" } else { "name" };
        let told = problems(&(entry(kind, "x") + &entry(kind, "x")));
        let want = format!("{kind}[2].{key}: \"x\" is already taken in line 2: give each its own {key}");
        assert!(told.len() == 1 && told[0].ends_with(&want), "{told:?}");
        assert!(problems(&(entry(kind, "x") + &entry(kind, "y"))).is_empty());
        for other in kinds.iter().filter(|other| **other != kind) {
            let told = problems(&(entry(kind, "x") + &entry(other, "x")));
            if kind == "developer" || *other == "developer" {
                assert!(told.is_empty(), "{told:?}");
                continue;
            }
            // Of two kinds the one that comes first in the list of kinds has the name.
            let place = |of: &str| kinds.iter().position(|one| *one == of);
            let (first, second) = if place(kind) < place(other) { (kind, *other) } else { (*other, kind) };
            let article = if first == "additive" { "an" } else { "a" };
            let want = format!("\"x\" is already the name of {article} {first}: rename one of them");
            assert!(
                told.len() == 1 && told[0].contains(&format!(": {second}[1].")) && told[0].ends_with(&want),
                "{told:?}"
            );
        }
    }
    let consumable = "[[consumable]]\nname = \"foil\"\nprice = \"1.00\"\npack_pieces = 10\nper = \"foil\"\n";
    let told = problems(&format!("currency = \"EUR\"\n{consumable}{consumable}"));
    assert_eq!(told, ["line 8: consumable[2].name: \"foil\" is already taken in line 3: give each its own name"]);
    let class = "[[class_price]]\nclass = \"half\"\nprice = \"90.00\"\n";
    let told = problems(&format!("currency = \"EUR\"\n{class}{class}"));
    assert_eq!(told, ["line 6: class_price[2].class: \"half\" is already taken in line 3: give each its own class"]);
    let more = format!("currency = \"EUR\"\n{class}per_extra_h = \"40.00\"\n");
    let want = "line 2: class_price[1].included_min: missing: say after how many minutes an hour more is paid for";
    assert_eq!(problems(&more), [want]);
    assert!(problems(&format!("{more}included_min = 120\n")).is_empty());
    assert!(problems(&format!("currency = \"EUR\"\n{class}included_min = 120\n")).is_empty());
}

/// One way to state a thing, and all that this way needs.
#[test]
fn terms_are_stated_in_one_way() {
    let terms = |fields: &str| problems(&format!("currency = \"EUR\"\n[terms]\n{fields}"));
    for (one, other) in [
        ("margin_percent = 20", "markup_percent = 30"),
        ("margin_percent = 20", "per_chair_h = \"60.00\""),
        ("markup_percent = 20", "per_chair_h = \"60.00\""),
        ("overhead_per_h = \"10.00\"", "overhead = \"900\"\nchairs = 2\nproductive_h_per_chair = 100"),
    ] {
        let name = |field: &str| field.split(' ').next().unwrap().to_owned();
        let want = format!("line 4: terms: both `{}` and `{}` are given: keep one of them", name(one), name(other));
        assert_eq!(terms(&format!("{one}\n{other}\n")), [want]);
        assert!(terms(one).is_empty() && terms(other).is_empty());
    }
    let hours = "wage_per_h = \"16.00\"\npaid_h = 40\nproductive_h = 30\n";
    assert!(terms(hours).is_empty());
    let both = "line 6: terms: both `productive_percent` and `productive_h` are given: keep one of them";
    let told = terms("wage_per_h = \"16.00\"\nproductive_percent = 75\npaid_h = 40\nproductive_h = 30\n");
    assert_eq!(told, [both]);
    let missing = |field: &str, why: &str| vec![format!("line 3: terms.{field}: missing: {why}")];
    assert_eq!(terms("productive_h = 30\n"), missing("paid_h", "`productive_h` is a part of them"));
    assert_eq!(
        terms("paid_h = 40\n"),
        missing("productive_h", "`paid_h` alone does not say how many hours are worked")
    );
}

/// By hand: a card fee is there where a part of it is stated; the part that is not is none.
#[test]
fn a_card_fee_has_one_part_or_both() {
    let fee = |fields: &str| shop(&format!("currency = \"EUR\"\n[terms]\n{fields}")).terms.card;
    assert!(fee("").is_none());
    let (percent, fixed, both) =
        (fee("card_percent = 2\n"), fee("card_fixed = \"0.25\"\n"), fee("card_percent = 2\ncard_fixed = \"0.25\"\n"));
    assert!(percent.is_some() && fixed.is_some() && both.is_some());
    assert!(percent != fixed && percent != both && fixed != both);
    assert_eq!(fee("card_percent = 2\ncard_fixed = \"0.00\"\n"), percent);
    assert_eq!(fee("card_percent = 0\ncard_fixed = \"0.25\"\n"), fixed);
}

/// The density of a bottle matters only where its strength is not by mass, and is assumed where neither it nor the kind is stated.
#[rstest]
#[case("20 vol", "", true)]
#[case("20 vol", "cream = true\n", false)]
#[case("20 vol", "cream = false\n", false)]
#[case("20 vol", "density_g_per_ml = 1.01\n", false)]
#[case("6 % w/w", "", false)]
#[case("6 % w/w", "cream = true\n", false)]
#[case("6 % w/v", "", true)]
fn a_density_is_assumed_where_it_matters(#[case] strength: &str, #[case] more: &str, #[case] assumed: bool) {
    let text = format!("[[developer]]\nname = \"d\"\nstrength = \"{strength}\"\nstrength_basis = \"label\"\n{more}");
    assert_eq!(shop(&text).bottles[0].density_is_assumed(), assumed);
}

/// A product of each kind, with its own mass in hand and its own price.
const SHELF: &str = "currency = \"EUR\"
[[developer]]\nname = \"developer\"\nstrength = \"6 % w/w\"\nstrength_basis = \"label\"\nin_hand_g = 100\npack_g = 1000\nprice = \"10.00\"
[[lightener]]\nname = \"lightener\"\nratio = \"1:2\"\nin_hand_g = 200\npack_g = 500\nprice = \"30.00\"
[[shade]]\ncode = \"shade\"\nlevel = 9\nclass = \"semi\"\nin_hand_g = 300\npack_g = 60\nprice = \"9.00\"
[[additive]]\nname = \"additive\"\ndose_percent = 3\nin_hand_g = 400\npack_g = 250\nprice = \"25.00\"
[[diluent]]\nname = \"diluent\"\nin_hand_g = 500\npack_g = 500\nprice = \"8.00\"
[[remover]]\nname = \"remover\"\nin_hand_g = 600\npack_g = 200\nprice = \"12.00\"
";

/// By hand: 10, 60, 150, 100, 16 and 60 for a kilogram.
#[test]
fn facts_are_found_by_name_whatever_the_kind() {
    let shop = shop(SHELF);
    let facts = |name: &str| {
        let facts = shop.facts(name)?;
        Some((facts.in_hand?.g(), facts.price_per_kg()?.to_string()))
    };
    let all = ["developer", "lightener", "shade", "additive", "diluent", "remover"].map(|name| facts(name).unwrap());
    let want = [(100.0, "10"), (200.0, "60"), (300.0, "150"), (400.0, "100"), (500.0, "16"), (600.0, "60")];
    for ((got_g, got_price), (g, price)) in all.iter().zip(want) {
        assert_eq!((*got_g, got_price.parse::<f64>().unwrap()), (g, price.parse::<f64>().unwrap()));
    }
    assert_eq!(
        (facts("anything"), shop.shade("shade").is_some(), shop.shade("lightener").is_none()),
        (None, true, true)
    );
    assert_eq!(shop.colours().map(|shade| shade.code().to_owned()).collect::<Vec<_>>(), ["shade"]);
}

/// By hand: 3000 g in 30 days are 100 g a day. 200 g are there for 2 days; 5 until the order comes, 3 in reserve and 14 covered are 22 days,
/// 2200 g, of which 2000 are missing: four packs of 500. Of no days sold in there is no day's use.
#[test]
fn orders_follow_from_what_a_day_takes() {
    let shop = shop(SHELF);
    let taken = |product: &str, g: f64| Taken { product: product.to_owned(), mass: Mass::from_g(g).unwrap() };
    let days = OrderDays { sold_in: 30, lead: 5, cover: 14, reserve: 3 };
    let all = [taken("lightener", 3000.0), taken("diluent", 300.0), taken("unknown", 600.0)];
    let orders = shop.orders(&all, days).unwrap();
    let told: Vec<_> = orders
        .iter()
        .map(|one| (one.product.as_str(), one.daily_use.g(), one.stock_days.map(|days| days.to_string())))
        .collect();
    let days_of = |days: &str| Some(days.to_owned());
    assert_eq!(told, [("lightener", 100.0, days_of("2")), ("diluent", 10.0, days_of("50")), ("unknown", 20.0, None)]);
    let order = |place: usize| orders[place].reorder.as_ref().map(|order| (order.due, order.packs));
    assert_eq!((order(0), order(1), order(2)), (Some((true, 4)), Some((false, 0)), None));
    assert!(orders[0].trail(days).unwrap().iter().all(|one| one.what.starts_with("lightener: ")));
    assert_eq!((orders[0].trail(days).unwrap().is_empty(), orders[2].trail(days).unwrap().len()), (false, 0));
    let none = shop.orders(&all, OrderDays { sold_in: 0, ..days }).unwrap_err();
    assert_eq!(none.to_string(), "invalid time of the list (got 0 days): must be at least 1");
}

/// A remover holds what its maker declares, or what is said of it; what nobody says of one that is not declared in full, it may hold.
#[test]
fn a_remover_holds_what_is_declared_or_not_ruled_out() {
    let remover = |fields: &str| {
        let text = format!("[[remover]]\nname = \"r\"\n{fields}");
        let file = parse_shop(&text, Format::Toml).map_err(|problems| problems.to_string())?;
        let shop = Shop::new(&file).map_err(|problems| problems.to_string())?;
        Ok((shop.removers[0].persulfate, shop.removers[0].peroxide))
    };
    let full =
        "declared_in_full = true\ncomposition = [{ substance = \"water\", cas = \"7732-18-5\", ww_percent = 100 }]\n";
    let persulfate = "declared_in_full = true\ncomposition = [{ substance = \"potassium persulfate\", cas = \"7727-21-1\", ww_percent = 40 }]\n";
    assert_eq!(
        (remover(""), remover(full), remover(persulfate)),
        (Ok((true, true)), Ok((false, false)), Ok((true, false)))
    );
    assert_eq!(remover("persulfate = false\n"), Ok((false, true)));
    assert_eq!(remover("peroxide = false\n"), Ok((true, false)));
    assert_eq!(remover(&format!("peroxide = true\n{full}")), Ok((false, true)));
    let wrong = remover(&format!("persulfate = false\n{persulfate}"));
    assert_eq!(
        wrong,
        Err("line 3: remover[1].persulfate: false, and `composition` declares it: correct one of the two".to_owned())
    );
}
