//! Laws that peroxide arithmetic keeps.

mod assay;
mod columns;
mod dilution;
mod shelf;
mod units;
