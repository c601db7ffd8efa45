//! Workbooks for spreadsheets, with formulas that stay live, made in memory.
//!
//! A number that may be changed stands in a coloured cell that checks what is typed; everything else is a formula over them,
//! and protected. The number that foilwork came to stands in each formula as its last result. Only functions that every
//! spreadsheet has are used, and a text is never a formula.
//!
//! # What there is
//!
//! [`dilution_workbook`] is the wall chart, [`recipe_workbook`] scales a recipe, [`plan_workbook`] is the bench sheet of a plan
//! with its costs, [`services_workbook`] costs and prices a list, [`worksheet_workbook`] holds problems with their key. Each
//! has a page of sources. A page on which a mass or a strength may be changed says that a change is not checked; where the
//! strength on the hair follows from it, a cell says ABOVE when it passes the ceiling of the law. [`list_in_workbook`] reads a list back.

mod before;
mod bench;
mod binding;
mod cells;
mod costs;
mod dilution;
mod error;
mod limit;
mod list;
mod looks;
mod page;
mod problems;
mod recipe;
mod services;
mod sized;
mod sources;
mod weighed;

pub use bench::plan_workbook;
pub use dilution::{DilutionNames, dilution_workbook};
pub use error::{ListError, WorkbookError};
pub use list::{ListInWorkbook, list_in_workbook};
pub use problems::worksheet_workbook;
pub use recipe::{RecipeWorkbookError, recipe_workbook};
pub use services::services_workbook;
