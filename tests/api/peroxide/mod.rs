//! What a caller of the peroxide room sees: text in, text out, and every error.

mod assay_errors;
mod by_hand;
mod edges;
mod errors;
mod shelf_errors;
mod text;
