//! Wrappers of `foilwork::money`.
