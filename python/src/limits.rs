//! Wrappers of `foilwork::limits`.
