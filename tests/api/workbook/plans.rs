//! The bench sheet of a plan, with other sizes and another scale typed into it.

use super::{
    book::Book,
    books::{bench, planned},
    formula::Value,
};
use foilwork::{finding::Verdict, workbook::plan_workbook};
use rstest::rstest;

const FIRST: (&str, &str) = ("name = \"nape\"", "name = \"nape\"\nfirst = [\"clean-first\"]");

/// The weighed grams of a bowl, whose size stands in this row.
fn weighed(book: &Book, size: usize, parts: usize) -> Vec<f64> {
    (size + 2..size + 2 + parts).map(|row| book.number(&format!("D{row}"))).collect()
}

/// The rows in which the size of a bowl stands.
fn sizes(book: &Book) -> Vec<usize> {
    let column = book.first_column("Bench");
    (1..=column.len()).filter(|row| column[row - 1] == "in this bowl, g").collect()
}

/// 15, 15 and 45 g in 75. In 150 twice that. On a scale of 10 g 75 g are 7.5 divisions, and 8 by the even side: of these 1.6, 1.6
/// and 4.8, to the nearest 2, 2 and 5, one too many; to take it from the last harms a sixth of it, from the others more than a third.
#[test]
fn a_bowl_of_another_size_comes_to_the_sums_by_hand() {
    let mut book = Book::of(&bench("grey-blend.toml", &[]));
    let size = sizes(&book)[0];
    let at = format!("B{size}");
    assert_eq!(weighed(&book, size, 3), [15.0, 15.0, 45.0]);
    book.change(&at, 150.0);
    assert_eq!(weighed(&book, size, 3), [30.0, 30.0, 90.0]);
    book.change(&at, 75.0);
    book.change("division_g", 10.0);
    assert_eq!(weighed(&book, size, 3), [20.0, 20.0, 40.0]);
    assert_eq!(
        [2, 3, 4, 5].map(|row| book.number(&format!("E{}", size + row)) * f64::from(row < 5)),
        [20.0, 40.0, 80.0, 0.0]
    );
    assert_eq!(book.number(&format!("D{}", size + 5)), 80.0);
    // What is on the hair follows what is weighed: half of it is developer, where it was three fifths.
    let (most, developer) = (book.number(&format!("G{}", size + 5)), book.number(&format!("G{}", size + 4)));
    assert!((most - developer / 2.0).abs() < 1e-9);
    // The label may be a sixth too low.
    assert!((book.number(&format!("G{}", size + 6)) - most * 7.0 / 6.0).abs() < 1e-9);
    assert!((book.number(&format!("F{}", size + 6)) - book.number(&format!("F{}", size + 5)) * 5.0 / 6.0).abs() < 1e-9);
    let said = |book: &Book| [6, 7].map(|row| book.value(&format!("B{}", size + row)).to_string());
    assert_eq!(said(&book), ["held against 12 % w/w", "no part rounds away"]);
    book.change(&at, 4.0);
    assert_eq!(said(&book), ["-", "a part rounds to NOTHING: use a finer scale or make more"]);
    book.change("division_g", 1.0);
    book.change("limit_ww_percent", 3.0);
    assert_eq!(said(&book)[0], "ABOVE 12 % w/w");
}

/// With 12 % w/w in place of 6 %, in 1:2: 8 %, read up to a sixth higher 9.3 %. Japan's ceiling is 6 %; Canada's table has none, and
/// then that of the European Union is held against.
#[rstest]
#[case("EU", "held against 12 % w/w", "(European Union; ")]
#[case(
    "CA",
    "held against 12 % w/w",
    "(European Union: the table has none for Canada, which does not mean that there is none; "
)]
#[case("JP", "ABOVE 6 % w/w", "(Japan, from memory and unverified; ")]
#[case("", "held against 12 % w/w", "(European Union: no jurisdiction is stated, and yours may have another; ")]
fn a_bowl_is_held_against_the_law_asked_for(#[case] of: &str, #[case] want: &str, #[case] whose: &str) {
    let stated = if of.is_empty() { String::new() } else { format!("jurisdiction = \"{of}\"\n") };
    let changes = [
        ("jurisdiction = \"EU\"\n", stated.as_str()),
        ("strength = \"6 %", "strength = \"12 %"),
        ("_percent = 85", "_percent = 79"),
        ("_percent = 9\n", "_percent = 12\n"),
    ];
    let book = Book::of(&bench("soft-gradient.toml", &changes));
    book.holds();
    let told = book.first_column("Bench");
    let at = told.iter().position(|text| text.starts_with("on the hair, labels read low and high")).unwrap() + 1;
    assert_eq!(book.left(book.place(&format!("B{at}"))), Value::from(want));
    let ceiling =
        told.iter().find(|text| text.starts_with("Peroxide on the hair, as ready for use: at most ")).unwrap();
    assert!(ceiling.contains(whose), "{ceiling}");
    let sources = book.rows("Sources");
    let row = sources.iter().find(|row| row[0].to_string().starts_with("ceiling of ")).unwrap();
    assert_eq!(row[1], Value::from("law"));
}

/// Weighed each for itself: on a scale of 10 g what is below 5 g is nothing.
#[test]
fn a_step_before_the_colour_has_a_bowl_of_its_own() {
    let mut book = Book::of(&bench("soft-gradient.toml", &[FIRST]));
    book.holds();
    let first = book.row("Bench", "FIRST: nape, ");
    let size = first + 1;
    let column = book.first_column("Bench");
    assert_eq!(column[first - 2], "");
    assert_eq!([&column[first], &column[first + 1]], ["in this bowl, g", "for this step alone"]);
    let (whole, shares) =
        (book.number(&format!("B{size}")), [2, 3].map(|row| book.number(&format!("B{}", size + row)) / 100.0));
    assert!((shares[0] + shares[1] - 1.0).abs() < 1e-9);
    // One part of powder and two of developer.
    assert!((whole * shares[0] * 2.0 - whole * shares[1]).abs() < 0.01 * whole, "{whole} {shares:?}");
    let strength = book.number(&format!("G{}", size + 3));
    let came: Vec<f64> = weighed(&book, size, 2);
    let on_hair = came[1] * strength / (came[0] + came[1]);
    assert!((book.number(&format!("G{}", size + 4)) - on_hair).abs() < 1e-9);
    assert_eq!(book.left(book.place(&format!("B{}", size + 5))), Value::from("no part rounds away"));
    book.change(&format!("B{size}"), 13.5);
    book.change("division_g", 10.0);
    assert_eq!(weighed(&book, size, 2), [0.0, 10.0]);
    assert_eq!(
        book.value(&format!("B{}", size + 5)),
        Value::from("a part rounds to NOTHING: use a finer scale or make more")
    );
    assert!(column[size + 5].starts_with("The strength of this step was held against the law"));
}

/// What stops stands above, what is warned of and not judged below how the page is used; what is fine stands on the page of sources.
#[rstest]
#[case("soft-gradient.toml", &[])]
#[case("grey-blend.toml", &[("result = \"clear\"", "result = \"reaction\"")])]
#[case("staged-lightening.toml", &[])]
fn the_page_reads_from_the_top(#[case] name: &str, #[case] changes: &[(&str, &str)]) {
    let plan = planned(name, changes);
    let book = Book::of(&plan_workbook(&plan).unwrap());
    let of = |verdict: Verdict| {
        let found = plan.findings.iter().filter(move |finding| finding.verdict == verdict);
        found.map(|finding| format!("[{}] {}: {}", finding.verdict, finding.rule, finding.text)).collect::<Vec<_>>()
    };
    let mut want = vec![format!("Bench sheet: {}", plan.title), String::new()];
    let stops = of(Verdict::Stop);
    if !stops.is_empty() {
        let says = if stops.len() == 1 { "1 finding says" } else { "several say" };
        let banner = format!("*** DO NOT BEGIN: {says} STOP. Resolve it first. ***");
        want.extend([vec![banner], stops, vec![String::new()]].concat());
    }
    want.extend(
        ["Coloured cells", "", "What to weigh, bowl by bowl.", "A CHANGED NUMBER IS NOT CHECKED", ""].map(String::from),
    );
    want.extend([of(Verdict::Warning), of(Verdict::NotJudged), vec![String::new()]].concat());
    want.extend(
        ["the scale counts in, g", "ceiling held against, % w/w", "Peroxide on the hair", ""].map(String::from),
    );
    assert!(!plan.first_steps.iter().any(|step| step.planned));
    for mix in &plan.mixes {
        for bowl in &mix.bowls {
            want.push(format!("{}: ", mix.name));
            want.extend(["in this bowl, g".to_owned(), "into the tared bowl".to_owned()]);
            want.extend(bowl.parts.iter().map(|part| part.product.clone()));
            want.push("bowl; ON THE HAIR as stated, % w/w".to_owned());
            if mix.on_hair.high().ww_percent() > 0.0 {
                let label = mix.on_hair_as_labelled.high() > mix.on_hair.high();
                want.push(
                    if label { "on the hair, labels read low and high" } else { "at most, on the hair" }.to_owned(),
                );
            }
            want.extend(["on this scale".to_owned(), String::new()]);
        }
    }
    want.extend(plan.cautions.iter().map(|caution| caution.text.chars().take(200).collect()));
    book.reads("Bench", &want.iter().map(String::as_str).collect::<Vec<_>>());
    assert_eq!(book.first_column("Bench").len(), want.len());
    rests(&book, &plan);
}

/// What each number rests on: every estimate, every default, every finding, every caution, and what was not computed or not used.
fn rests(book: &Book, plan: &foilwork::service::Plan) {
    let sources = book.rows("Sources");
    let what: Vec<String> = sources.iter().map(|row| row[0].to_string()).collect();
    let row = |name: &str| {
        let at = what.iter().position(|told| told == name).unwrap_or_else(|| panic!("no {name}"));
        [1, 2].map(|column| sources[at][column].to_string())
    };
    for mix in &plan.mixes {
        assert_eq!(row(&format!("{}: strength of the developer", mix.name))[0], mix.strength_basis.to_string());
    }
    for default in &plan.defaults {
        assert_eq!(row(&format!("{} = {}", default.field, default.value))[0], default.basis.to_string());
    }
    for finding in &plan.findings {
        assert!(row(&format!("{}: {}", finding.rule, finding.text))[0].starts_with("checked: "));
    }
    for caution in &plan.cautions {
        let [basis, source] = row(caution.text);
        let cited = caution.sources.iter().any(|one| one.id.is_some() && one.id.as_deref() != Some("common-practice"));
        assert_eq!(basis, if cited { "published" } else { "common practice" }, "{}", caution.text);
        assert_eq!(source, caution.sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "));
    }
    let begins = |word: &str| what.iter().filter(|told| told.starts_with(word)).count();
    assert_eq!(begins("Not computed: "), plan.not_computed.len());
    assert_eq!(begins("Stated, not used: "), plan.stated_not_used.len());
    // The last row of the table, an empty one, the release and its sentence, an empty one, and what the verdicts mean.
    let after = plan.not_computed.len() + plan.stated_not_used.len();
    let ends = &what[what.len() - after - 6..what.len() - after];
    assert!(
        !ends[0].is_empty() && ends[1].is_empty() && ends[2].starts_with("foilwork ") && ends[4].is_empty(),
        "{ends:?}"
    );
    assert!(ends[5].starts_with("OPEN means unknown, never passed."), "{ends:?}");
}
