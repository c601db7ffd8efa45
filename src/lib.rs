//! Hair-colour chemistry for lightening in foils and freehand: which strength, how much to mix in how many bowls, what is
//! then on the hair and whether the law allows it, toned with what, at what cost and price. Facts about the hair, the
//! products and the prices go in; a checked, explained, weighable plan comes out, in which every number has a basis and
//! every estimate its bounds.
//!
//! ```
//! use foilwork::prelude::*;
//!
//! // 80 g at 4.5 % from a 12 % developer, and what is on the hair after mixing with 40 g of lightener.
//! let (stock, target) = ("12 % w/w".parse()?, "4.5 % w/w".parse()?);
//! let blend = dilute(stock, target, "80 g".parse()?)?;
//! let (developer, lightener) = (Interval::exact(target), Interval::exact(MassFraction::ZERO));
//! let bowl = as_applied(&[(blend.total(), developer), ("40 g".parse()?, lightener)])?;
//! assert_eq!(format!("{} of stock, {:.2} on the hair", blend.stock, bowl.best()), "30 g of stock, 3.00 % w/w on the hair");
//!
//! // A whole service: facts in, a checked plan out.
//! let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
//! assert!(!plan.blocked);
//! println!("{}", bench_sheet(&plan));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Where things are
//!
//! | in the salon you say | here it is |
//! | --- | --- |
//! | 6 %, 20 vol: the strength on the bottle | [`peroxide::StatedStrength`], in every unit by [`peroxide::convert`] |
//! | weaken a developer | [`peroxide::dilute`] |
//! | use up the open bottles | [`peroxide::blend_shelf`] |
//! | 1:2, the formula | [`mix::Ratio`], [`mix::Recipe`] |
//! | the strength on the hair | [`mix::as_applied`] |
//! | fresh bowls | [`mix::bowls`] |
//! | is that allowed? | [`limits::check`] |
//! | level or depth, tone or reflect | [`colour::Level`], [`colour::Tone`] |
//! | the warmth underneath | [`colour::underlying_pigment`] |
//! | which shade for that level | [`colour::formula_level`] |
//! | how much natural shade for the white | [`mix::natural_share`] |
//! | how much hair, and how fast it grows | [`hair::HairFacts`], [`hair::growth`] |
//! | how many foils, how many grams in each | [`head::Layout`], [`head::demand`] |
//! | how the head reads | [`head::read_head`] |
//! | the toner | [`toner::find_toner`] |
//! | how long, and how sure | [`lift::Lightening`], [`lift::finish_together`] |
//! | which section first, when to rinse, how long to book | [`day::arrange`] |
//! | what the service costs, margin or mark-up | [`money::ServiceCost`], [`money::PriceRule`] |
//! | does the chair pay? | [`business::break_even`], [`business::rank_by_chair_hour`] |
//! | what is on the shelves | [`shop::parse_shop`], [`shop::Shop`] |
//! | the service of one guest | [`service::parse`], [`service::plan`], [`sheet::bench_sheet`] |
//! | problems for a class | [`teach::worksheet`] |
//! | what was noted, weighed and reached | [`record::read_log`], [`record::record`] |
//! | ten thousand bottles at once | [`mod@column`] |
//! | says who? | [`source::register`] |
//!
//! # What it does not do
//!
//! - It does not say that anything is safe, and it does not replace the product's own instructions, a skin test, a strand
//!   test, local law or training.
//! - It knows no brand and no product: strengths, ratios, compositions and prices are yours to enter.
//! - Hair mass, foils and the look of the head are estimates from what you state.
//! - A swatch and a forecast of lift are models: no photograph, no promise. A strand decides.
//!
//! # The rooms
//!
//! Data flows one way, from the top of this list to its end.
//!
//! | room | holds |
//! | --- | --- |
//! | [`quantity`], [`source`], [`choice`], [`finding`], [`text`] | what a number is, what it rests on, words to choose from, what a check found, how it is written |
//! | [`reader`], [`scale`] | files of a derived shape; rounding to a real scale |
//! | [`peroxide`], [`mix`], [`limits`] | strengths; bowls; what the law allows on the hair |
//! | [`colour`], [`hair`], [`head`], [`toner`], [`lift`] | level, tone, shades, pigment; how much hair there is; foils, regions, how the head reads; what to put on top; lightening against time |
//! | [`day`] | hands, looks and basin on the clock: the best order |
//! | [`money`], [`business`] | cost and price; whether the salon lives from them |
//! | [`shop`] | what the salon has and charges |
//! | [`service`], [`sheet`], [`chart`], [`page`] | the plan of a service; the plan as something to look at; pictures; pages |
//! | [`teach`] | worksheets |
//! | [`record`] | what happened, noted line by line and held against the plan |
//! | [`history`] | what is kept of many services: summed up, learned from, forgotten |
//! | [`mod@column`] | the same functions over slices |
//! | [`workbook`] (feature `workbook`) | the tables as workbooks with live formulas; lists read back |
//!
//! Most programs need the names of the [`prelude`] and one or two rooms. Why it is built this way is told in
//! [`docs::why`]. With the feature `cli` there is the command line too.

#![cfg_attr(not(test), deny(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

pub mod business;
pub mod chart;
pub mod choice;
pub mod colour;
pub mod column;
pub mod day;
pub mod docs;
pub mod finding;
pub mod hair;
pub mod head;
pub mod history;
pub mod lift;
pub mod limits;
pub mod mix;
pub mod money;
pub mod page;
pub mod peroxide;
pub mod prelude;
pub mod quantity;
pub mod reader;
pub mod record;
pub mod scale;
pub mod service;
pub mod sheet;
pub mod shop;
pub mod source;
pub mod teach;
pub mod text;
mod threads;
pub mod toner;
#[cfg(feature = "workbook")]
pub mod workbook;

#[cfg(feature = "cli")]
pub mod cli;

/// The examples of the README, run as doctests.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
pub struct Readme;
