//! What a caller of the peroxide room sees: text in, text out, and every error.

mod errors;
mod text;
