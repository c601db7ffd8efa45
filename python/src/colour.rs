//! Wrappers of `foilwork::colour`.
