//! Laws that peroxide arithmetic keeps.

mod columns;
mod dilution;
mod units;
