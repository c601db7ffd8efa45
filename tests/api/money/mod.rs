//! The public interface of money.

mod amounts;
mod columns;
mod errors;
pub(crate) mod helpers;
mod services;
