use crate::choice::choice;
use serde::Serialize;

choice! {
    /// How the cited text was consulted. What is from memory is shown to the user as unverified.
    Consulted: "way of consulting" {
        /// The text itself was read.
        Retrieved = "retrieved",
        /// Read from a general-purpose scientific library's data.
        Library = "library",
        /// Computed here from numbers that are cited.
        Computed = "computed",
        /// Not looked up: remembered. To be verified before anyone relies on it.
        FromMemory = "from-memory" => "from memory",
        /// A trade fact without a published source.
        CommonPractice = "common-practice" => "common practice",
    }
}

/// One published source, or the plain words that there is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, schemars::JsonSchema)]
pub struct Citation {
    /// Short key, unique in the register, for example `codata-2022`: lower case, words joined by hyphens, the year last.
    pub id: &'static str,
    /// Author, title, year, table or clause: enough to find it again.
    pub text: &'static str,
    /// How it was consulted.
    pub consulted: Consulted,
}

impl Citation {
    /// Whether the source has been seen, so that a finding may rest on it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::{Citation, Consulted};
    ///
    /// let remembered = Citation { id: "a-table", text: "somebody, a table", consulted: Consulted::FromMemory };
    /// assert!(!remembered.is_verified());
    /// ```
    #[must_use]
    pub const fn is_verified(&self) -> bool {
        !matches!(self.consulted, Consulted::FromMemory)
    }
}

impl std::fmt::Display for Citation {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.text)?;
        if self.is_verified() { Ok(()) } else { f.write_str(" [from memory, unverified]") }
    }
}

/// Declares the citations of a room: a constant for each, and `CITATIONS`, the list of all of them.
///
/// ```text
/// citations! {
///     /// Atomic weights.
///     ATOMIC_WEIGHTS = "iupac-atomic-weights-2021", Retrieved, "IUPAC, Standard atomic weights, 2021";
/// }
/// ```
macro_rules! citations {
    ($($(#[$doc:meta])* $name:ident = $id:literal, $consulted:ident, $text:literal;)+) => {
        $(
            $(#[$doc])*
            pub const $name: $crate::source::Citation = $crate::source::Citation {
                id: $id,
                text: $text,
                consulted: $crate::source::Consulted::$consulted,
            };
        )+

        /// In the order of the register.
        pub const CITATIONS: &[$crate::source::Citation] = &[$($name),+];
    };
}

pub(crate) use citations;

/// What the trade does, with no source to point to.
pub const COMMON_PRACTICE: Citation = Citation {
    id: "common-practice",
    text: "common practice of the trade; no published source",
    consulted: Consulted::CommonPractice,
};
