//! The public interface of money.

mod amounts;
mod columns;
mod errors;
mod helpers;
mod lists;
mod services;
