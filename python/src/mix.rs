//! Wrappers of `foilwork::mix`.
