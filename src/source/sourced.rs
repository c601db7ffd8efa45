use super::{Basis, Citation};
use schemars::JsonSchema;
use serde::Serialize;

/// A value with its basis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// What it rests on.
    pub basis: Basis,
    /// The citation, where there is one.
    pub citation: Option<&'static Citation>,
}

impl<T> Sourced<T> {
    /// A value printed in a cited source.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::{Basis, COMMON_PRACTICE, Sourced};
    ///
    /// assert_eq!(Sourced::published(11.6, &COMMON_PRACTICE).basis, Basis::Published);
    /// assert_eq!(Sourced::derived(2.0).basis, Basis::Derived);
    /// assert_eq!(Sourced::measured(2.0).basis, Basis::Measured);
    /// assert_eq!(Sourced::stated(2.0).basis, Basis::Stated);
    /// assert_eq!(Sourced::common_practice(2.0).basis, Basis::CommonPractice);
    /// assert_eq!(Sourced::assumed(2.0).basis, Basis::Assumed);
    /// ```
    pub const fn published(value: T, citation: &'static Citation) -> Self {
        Self { value, basis: Basis::Published, citation: Some(citation) }
    }

    /// A value the trade uses without a source.
    pub const fn common_practice(value: T) -> Self {
        Self { value, basis: Basis::CommonPractice, citation: Some(&super::COMMON_PRACTICE) }
    }

    /// A value the user stated.
    pub const fn stated(value: T) -> Self {
        Self { value, basis: Basis::Stated, citation: None }
    }

    /// A value the user measured.
    pub const fn measured(value: T) -> Self {
        Self { value, basis: Basis::Measured, citation: None }
    }

    /// A value foilwork assumes until the user measures it.
    pub const fn assumed(value: T) -> Self {
        Self { value, basis: Basis::Assumed, citation: None }
    }

    /// A value calculated from others, no better founded than `basis`.
    pub const fn derived(value: T) -> Self {
        Self { value, basis: Basis::Derived, citation: None }
    }
}
