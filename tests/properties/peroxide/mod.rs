//! Laws that peroxide arithmetic keeps.

mod assay;
mod bounds;
mod columns;
mod dilution;
mod shelf;
mod units;
