//! The public interface of money.

mod amounts;
mod by_hand;
mod columns;
mod costs;
mod errors;
pub(crate) mod helpers;
mod many_rows;
mod percents;
mod services;
