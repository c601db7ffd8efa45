//! What people come for, from the first command to the answer: a colourist, an educator, an owner. The fourth, a developer
//! with a plan in Rust and in Python, is `examples/trolley.rs` and `trolley.py`, which have tests of their own.

use super::fine;
use std::{
    fmt::Write,
    fs,
    path::Path,
    process::{Command, Output},
};

fn run(folder: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_foilwork")).current_dir(folder).args(args).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// The commands that the README shows, without the dollar.
fn readme() -> Vec<&'static str> {
    include_str!("../../../README.md").lines().filter_map(|line| line.strip_prefix("$ ")).collect()
}

/// A colourist who has the README and the files of `foilwork start`, and writes as people do. The first try is refused with
/// every slip and its way out; with just these the second is a plan.
#[test]
fn a_colourist_has_a_plan_at_the_second_try() {
    let folder = tempfile::tempdir().unwrap();
    let start =
        readme().into_iter().find(|line| line.starts_with("foilwork start ")).expect("the README begins with it");
    let words: Vec<_> = start.split_whitespace().skip(1).collect();
    assert_eq!(run(folder.path(), &words).status.code(), Some(0), "{start}");
    let home = folder.path().join(words[1]);
    let service = home.join("service.toml");
    let written = fs::read_to_string(&service).unwrap();
    let slips = [
        ("natural_level = 7", "natural_level = 6,5", "natural_level = 6.5", "write 6.5"),
        ("white_percent = 0", "white_percent = 30 %", "white_percent = 30", "write 30"),
    ];
    let mut first = written.clone();
    for (given, slip, _, _) in slips {
        assert!(first.contains(given), "{given}");
        first = first.replace(given, slip);
    }
    fs::write(&service, &first).unwrap();
    let refused = run(&home, &["plan", "service.toml"]);
    assert_eq!(refused.status.code(), Some(2));
    let complaint = text(&refused.stderr);
    let mut second = first;
    for (_, slip, right, way_out) in slips {
        assert!(complaint.contains(way_out), "{complaint}");
        second = second.replace(slip, right);
    }
    fs::write(&service, second).unwrap();
    let shop = home.join("shop.toml");
    let bottles = fs::read_to_string(&shop).unwrap().replace("strength = \"6 % w/w\"", "strength = \"20 vol\"");
    fs::write(&shop, bottles).unwrap();
    let plan = run(&home, &["plan", "service.toml", "--short"]);
    assert_eq!(plan.status.code(), Some(0), "{}", text(&plan.stderr));
    let sheet = text(&plan.stdout);
    assert!(
        // By hand: 20 min to put on and 30 to develop; 100 g at 1:2.
        sheet.contains("RINSE BY 10:50") && sheet.contains("weigh 33 g my powder, 67 g developer 6 (100 g)"),
        "{sheet}"
    );
}

/// An educator's chart for the wall and ten problems, each with its answer by hand. There is no command that sets problems
/// or prints a worksheet: the problems are the educator's, and foilwork checks the answers.
#[test]
fn an_educator_has_a_chart_and_ten_answers() {
    let chart =
        fine(&["table", "--stocks", "40 vol, 30 vol, 20 vol", "--targets", "30 vol, 20 vol, 10 vol", "--total", "60"]);
    // 60 g x 30/40, 20/40, 10/40; 20/30, 10/30; 10/20.
    for grams in ["45 + 15", "30 + 30", "15 + 45", "40 + 20", "20 + 40"] {
        assert!(chart.contains(grams), "{grams}\n{chart}");
    }
    let problems: [(&str, &[&str], &str); 10] = [
        (
            "12 % to 3 %, 80 g: 80 x 3/12",
            &["dilute", "--stock", "12 % w/w", "--target", "3 % w/w", "--total", "80"],
            "20 g",
        ),
        (
            "40 vol to 20 vol, 60 g: half",
            &["dilute", "--stock", "40 vol", "--target", "20 vol", "--total", "60"],
            "30 g",
        ),
        (
            "9 and 3 % to 6 %, 90 g: equal parts",
            &["dilute", "--stock", "9 % w/w", "--with", "3 % w/w", "--target", "6 % w/w", "--total", "90"],
            "45 g",
        ),
        ("the label 20 vol: 0.3 x 20", &["convert", "20 vol"], "6 % w/w"),
        ("1:1.5 to 75 g", &["scale", "1 g J7-mist + 1.5 g developer", "--total", "75"], "weigh      45 g  developer"),
        ("three shades to double", &["scale", "30 g J7 + 15 g J8-oat + 45 g developer", "--factor", "2"], "180 g"),
        ("60 g of a shade at 1:1.5", &["scale", "30 g J7 + 45 g developer", "--part", "J7=60"], "90 g  developer"),
        ("lift from 5 to 7", &["level", "--natural", "5", "--target", "7"], "2 levels lighter"),
        (
            "what level 7 shows, and what neutralises it",
            &["level", "--natural", "5", "--target", "7"],
            "neutralised by blue",
        ),
        ("cost 60, margin 40 %: 60/0.6", &["price", "--cost", "60", "--margin", "40", "--currency", "EUR"], "100.00"),
    ];
    for (problem, args, answer) in problems {
        let said = fine(args);
        assert!(said.contains(answer), "{problem}: {answer} in\n{said}");
    }
}

/// An owner's fifty services: costed by what the shop pays, ranked by what a chair hour leaves, what loses money and what
/// cannot be marked, and a product ordered anew.
#[test]
fn an_owner_ranks_fifty_services() {
    let folder = tempfile::tempdir().unwrap();
    let home = folder.path();
    let shop = "currency = \"EUR\"\n\n[[lightener]]\nname = \"powder\"\nratio = \"1:2\"\npack_g = 500\nprice = \"30.00\"\n\n\
                [terms]\nwage_per_h = \"18.00\"\noverhead_per_h = \"12.00\"\nmargin_percent = 20\n";
    fs::write(home.join("shop.toml"), shop).unwrap();
    // Service n takes n g of powder, 30 min of hands, 60 min of chair, and costs 30 + n: all of it by hand below.
    let mut list = String::from("Service,Product,Product g,Hands-on min,Chair min,Price\n");
    for n in 1..=48 {
        writeln!(list, "service {n},powder,{n},30,60,{}.00", 30 + n).unwrap();
    }
    list += "gift,powder,10,30,60,5.00\nimpossible,,,90,60,200.00\n";
    fs::write(home.join("list.csv"), list).unwrap();
    let out = run(home, &["cost", "list.csv", "--shop", "shop.toml", "--sort", "chair-hour", "--json"]);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let table: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    let lines = table["lines"].as_array().unwrap();
    assert_eq!(lines.len(), 50);
    let names: Vec<_> = lines.iter().map(|line| line["service"].as_str().unwrap()).collect();
    // Powder is 0.06 a gram and the price rises by 1: the dearer leaves more; the gift leaves less than nothing.
    assert_eq!((names[0], names[1], names[48], names[49]), ("impossible", "service 48", "service 1", "gift"));
    // Service 48: 48 x 0.06 = 2.88, 18 x 0.5 = 9.00, 12 x 1 = 12.00: 23.88 of 78.00.
    assert_eq!(lines[1]["cost"]["amount"], "23.88");
    assert_eq!(lines[1]["profit"]["amount"], "54.12");
    let marks = |place: usize| lines[place]["marks"].to_string();
    assert!(marks(0).contains("hands-on-exceeds-chair") && marks(49).contains("loses-money"), "{}", marks(49));
    let shown = text(&run(home, &["cost", "list.csv", "--shop", "shop.toml", "--sort", "profit"]).stdout);
    assert!(shown.contains("! the price is below the cost: gift"), "{shown}");
    assert!(shown.contains("! hands-on time exceeds the time in the chair: impossible"), "{shown}");
    // 120 g a day for 5 days and 300 g in reserve are 900 g: order now; 14 more days are 1680 g, four packs of 500 g.
    let reorder = fine(&[
        "business",
        "reorder",
        "--on-hand",
        "900 g",
        "--daily",
        "120 g",
        "--pack",
        "500 g",
        "--lead-days",
        "5",
        "--cover-days",
        "14",
        "--reserve",
        "300 g",
    ]);
    assert!(reorder.contains("order now: 4 x 500 g"), "{reorder}");
}

/// The same owner orders by what was sold: the stock is the shop's, the use is the list's.
#[test]
fn an_owner_orders_by_what_was_sold() {
    let folder = tempfile::tempdir().unwrap();
    let home = folder.path();
    let shop = "currency = \"EUR\"\n\n[[lightener]]\nname = \"powder\"\nratio = \"1:2\"\nin_hand_g = 900\npack_g = 500\n\
                price = \"30.00\"\n\n[[developer]]\nname = \"six\"\nstrength = \"6 % w/w\"\nstrength_basis = \"label\"\n\
                pack_g = 1000\nprice = \"8.00\"\n";
    fs::write(home.join("shop.toml"), shop).unwrap();
    let list = "service,product,product_g,product_waste_g,developer,developer_g,hands_on_min,chair_min,sold\n\
                half head,powder,32,4,six,64,65,120,50\nfull head,powder,55,5,six,110,105,170,30\ncut,,,,,,30,40,200\n";
    fs::write(home.join("list.csv"), list).unwrap();
    let args = ["business", "reorder", "--list", "list.csv", "--shop", "shop.toml", "--sold-in-days", "30"];
    let days = ["--lead-days", "5", "--cover-days", "14", "--reserve-days", "3"];
    let out = run(home, &[&args[..], &days, &["--json"]].concat());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let orders: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    // 36 x 50 + 60 x 30 = 3600 g in 30 days: 120 g a day. 8 days are 960 g and 900 are there: 22 days want 2640, four packs.
    assert_eq!((&orders[0]["product"], &orders[0]["daily_use_g"]), (&"powder".into(), &120.0.into()));
    assert_eq!(orders[0]["reorder"]["packs"], 4);
    assert_eq!(orders[0]["stock_days"], "7.5");
    // 64 x 50 + 110 x 30 = 6500 g; how much is there the shop does not say.
    assert_eq!((&orders[1]["product"], &orders[1]["reorder"]), (&"six".into(), &serde_json::Value::Null));
    let shown = text(&run(home, &[&args[..], &days].concat()).stdout);
    assert!(shown.contains("? is what the shop does not say"), "{shown}");
    assert!(shown.lines().all(|line| line.chars().count() <= 80), "{shown}");

    let refused = |args: &[&str]| text(&run(home, args).stderr);
    let nothing_named = "service,hands_on_min,chair_min,sold\ncut,30,40,200\n";
    fs::write(home.join("bare.csv"), nothing_named).unwrap();
    let bare = ["business", "reorder", "--list", "bare.csv", "--shop", "shop.toml", "--sold-in-days", "30"];
    assert!(refused(&[&bare[..], &days].concat()).contains("no service names a product of the shop"));
    let no_days = ["business", "reorder", "--list", "list.csv", "--shop", "shop.toml", "--sold-in-days", "0"];
    assert!(
        refused(&[&no_days[..], &days].concat()).contains("invalid time of the list (got 0 days): must be at least 1")
    );
}
