//! Laws that peroxide arithmetic keeps.

mod dilution;
mod units;
