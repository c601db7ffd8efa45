use crate::source::Citation;
use serde::Serialize;
use std::borrow::Cow;

/// Why a finding says what it says: a citation of the register, a clause of a limit table, or the user's own words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, schemars::JsonSchema)]
pub struct Reason {
    /// The id of the citation; absent for what the user states.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<Cow<'static, str>>,
    /// The source in words.
    pub text: Cow<'static, str>,
    /// Whether it is from memory: never looked up, so a user should before relying on it.
    pub from_memory: bool,
}

impl Reason {
    /// What the user states, or what foilwork assumes, in words that say so.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Reason, source::COMMON_PRACTICE};
    ///
    /// assert_eq!(Reason::from(COMMON_PRACTICE).id.as_deref(), Some(COMMON_PRACTICE.id));
    /// assert_eq!(Reason::stated("stated by you").id, None);
    /// assert_eq!(Reason::assumed().to_string(), "assumed by foilwork");
    /// ```
    pub fn stated(text: impl Into<Cow<'static, str>>) -> Self {
        Self { id: None, text: text.into(), from_memory: false }
    }

    /// What foilwork assumes until someone measures it.
    #[must_use]
    pub fn assumed() -> Self {
        Self::stated("assumed by foilwork")
    }
}

impl From<Citation> for Reason {
    fn from(citation: Citation) -> Self {
        Self { id: Some(citation.id.into()), text: citation.text.into(), from_memory: !citation.is_verified() }
    }
}

impl From<&Citation> for Reason {
    fn from(citation: &Citation) -> Self {
        (*citation).into()
    }
}

impl std::fmt::Display for Reason {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.text)?;
        if self.from_memory { f.write_str(" [from memory, unverified]") } else { Ok(()) }
    }
}
