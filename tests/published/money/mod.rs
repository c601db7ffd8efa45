//! Every money row of the worked examples, and ISO 4217.
//!
//! `tests/data/money/worked_examples.csv` holds the rows as they were collected, with the source of each;
//! `sources.csv` says what each source is and how it was consulted. A check names its rows, and the numbers it must
//! reach are read from the row: nothing is copied by hand into a test.

mod currency;
mod prices;
mod rows;
