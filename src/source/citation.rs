use serde::Serialize;

/// How the cited text was consulted. `FromMemory` is shown to the user as unverified.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Consulted {
    /// The text itself was read.
    Retrieved,
    /// Read from a general-purpose scientific library's data.
    Library,
    /// Computed here from numbers that are cited.
    Computed,
    /// Not looked up: remembered. To be verified before anyone relies on it.
    FromMemory,
    /// A trade fact without a published source.
    CommonPractice,
}

/// One published source, or the plain words that there is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Citation {
    /// Short key, unique in the register, for example `codata-2022`.
    pub id: &'static str,
    /// Author, title, year, table or clause: enough to find it again.
    pub text: &'static str,
    /// How it was consulted.
    pub consulted: Consulted,
}

impl Citation {
    /// Whether the source has been seen, so that a finding may rest on it.
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

/// What the trade does, with no source to point to.
pub const COMMON_PRACTICE: Citation = Citation {
    id: "common-practice",
    text: "common practice of the trade; no published source",
    consulted: Consulted::CommonPractice,
};
