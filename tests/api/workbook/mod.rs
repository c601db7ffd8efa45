//! Workbooks, opened: every formula is worked again by a spreadsheet of some two hundred lines that knows nothing of foilwork, as
//! they stand and after something was changed; and what a page shows, checks, locks and prints is read from its XML.

mod book;
mod books;
mod costs;
mod dilution;
mod formula;
mod layout;
mod list;
mod looks;
mod marks;
mod plans;
mod recipe;
mod services;

use book::Book;

/// All kinds of book, as they are made: each formula comes to what foilwork left in it.
#[test]
fn every_formula_comes_to_what_foilwork_left() {
    let half = books::open(5.0, 6.0, 7.0);
    let dilution =
        |stocks: &[_], targets: &[f64], weaker, sizes| books::chart(&books::table(stocks, targets, weaker, sizes));
    let none = books::exact(&[0.0])[0];
    for bytes in [
        // Out of reach, as strong as what is added, a bottle above 12 %.
        dilution(&books::exact(&[12.0, 9.0, 3.0, 25.0]), &[6.0, 4.5, 3.0, 10.0, 25.0], none, (100.0, 1.0)),
        // Halves in the middle, on a fine scale and on a coarse one; a part that rounds to nothing; what is added is stronger.
        dilution(&books::exact(&[12.0, 9.0, 3.0, 1.0]), &[6.0, 4.5, 3.0], books::exact(&[3.0])[0], (2.5, 0.1)),
        dilution(&books::exact(&[12.0]), &[6.0, 0.1, 11.9], none, (5.0, 1.0)),
        dilution(&[half, books::open(10.0, 12.0, 14.0)], &[3.0, 6.0], books::open(1.0, 1.5, 3.0), (61.0, 0.5)),
        dilution(&[half], &[3.0], books::open(0.0, 0.0, 1.0), (60.0, 1.0)),
        // 2.5 and 4.5 g both go down to the even gram: the bigger part is moved, whichever it is.
        dilution(&books::exact(&[7.0]), &[2.5, 4.5], none, (7.0, 1.0)),
        books::recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6% + 0.5 g drops", 77, 0.1),
        books::recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6% + 0.5 g drops", 77, 1.0),
        books::recipe("1 g a + 1 g b + 1 g c + 1 g d", 2, 1.0),
        books::recipe("30 mL a + 10 mL b", 75, 1.0),
        books::services(),
        books::problems(3, 8, foilwork::teach::SheetHalf::Both),
        books::bench("soft-gradient.toml", &[]),
        books::bench("grey-blend.toml", &[]),
        books::bench("finish-together.toml", &[]),
        books::bench("gloss-refresh.toml", &[]),
        books::bench("staged-lightening.toml", &[]),
        books::bench("lowlights.json", &[]),
    ] {
        let found = Book::of(&bytes).holds();
        assert!(found >= 5, "{found} formulas");
    }
}
