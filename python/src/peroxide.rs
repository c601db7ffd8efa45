//! Wrappers of `foilwork::peroxide`.
