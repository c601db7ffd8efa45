use crate::{
    choice::choice,
    colour::Level,
    quantity::{Duration, Mass},
    service::shape::Elasticity,
};

choice! {
    /// What a line of the log notes.
    Noted: "what is noted" {
        /// The first strand of a section is on.
        Begun = "begun",
        /// A section is all on.
        Applied = "applied",
        /// A section is rinsed.
        Rinsed = "rinsed",
        /// The level of a section, as seen.
        Seen = "seen",
        /// How the scalp feels to the guest.
        Comfort = "comfort",
        /// What a foil of a section is like.
        Foil = "foil",
        /// Stretch and return of a damp strand.
        Elasticity = "elasticity",
        /// What was really weighed for a section.
        Weighed = "weighed",
        /// What of it was left over.
        LeftOver = "left-over" => "left over",
        /// The level and tone that a section came to.
        Result = "result",
        /// A reaction or an accident, in words.
        Incident = "incident",
    }
}

choice! {
    /// How the scalp feels to the guest.
    Comfort: "comfort" {
        /// Nothing to feel.
        Fine = "fine",
        /// Warm or tingling.
        Tingling = "tingling",
        /// Itching.
        Itching = "itching",
        /// Burning or pain.
        Burning = "burning",
    }
}

choice! {
    /// What a foil is like.
    FoilHeat: "state of a foil" {
        /// Not warmer than the room.
        Cool = "cool",
        /// Warm.
        Warm = "warm",
        /// Hot.
        Hot = "hot",
        /// Swollen or bubbling.
        Swollen = "swollen",
    }
}

/// A line of the log.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Duration, record::{LogEntry, Noted}};
///
/// let on = LogEntry { section: Some("nape".to_owned()), ..LogEntry::new(Duration::from_min(3.0)?, Noted::Begun) };
/// assert!(on.checked().is_ok());
/// assert!(LogEntry::new(Duration::ZERO, Noted::Begun).checked().is_err());
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct LogEntry {
    /// When, from the first brush.
    pub at: Duration,
    /// What is noted.
    pub what: Noted,
    /// The section, where it is about one.
    pub section: Option<String>,
    /// A level.
    pub level: Option<Level>,
    /// A tone in words.
    pub tone: Option<String>,
    /// How the scalp feels.
    pub comfort: Option<Comfort>,
    /// What a foil is like.
    pub foil: Option<FoilHeat>,
    /// Stretch and return.
    pub elasticity: Option<Elasticity>,
    /// A mass of mix.
    pub mass: Option<Mass>,
    /// Words.
    pub note: Option<String>,
}

/// An entry that lacks what it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{what}: `{field}` is missing (give it)")]
pub struct InvalidEntry {
    /// What is noted.
    pub what: Noted,
    /// The field that is missing.
    pub field: &'static str,
}

impl LogEntry {
    /// An entry that says no more yet than when and what.
    #[must_use]
    pub const fn new(at: Duration, what: Noted) -> Self {
        let (section, tone, note) = (None, None, None);
        Self { at, what, section, level: None, tone, comfort: None, foil: None, elasticity: None, mass: None, note }
    }

    /// The same entry, where it says all that it is for.
    ///
    /// # Errors
    ///
    /// [`InvalidEntry`] names the first field that is missing.
    pub fn checked(self) -> Result<Self, InvalidEntry> {
        let what = self.what;
        let given = |field: &str| match field {
            "section" => self.section.is_some(),
            "level" => self.level.is_some(),
            "comfort" => self.comfort.is_some(),
            "foil" => self.foil.is_some(),
            "elasticity" => self.elasticity.is_some(),
            "mass_g" => self.mass.is_some(),
            _ => self.note.as_deref().is_some_and(|note| !note.trim().is_empty()),
        };
        match needs(what).iter().find(|field| !given(field)) {
            Some(field) => Err(InvalidEntry { what, field }),
            None => Ok(self),
        }
    }
}

impl Noted {
    /// Whether it is one of the times of an application.
    pub(super) const fn is_a_time(self) -> bool {
        matches!(self, Self::Begun | Self::Applied | Self::Rinsed)
    }

    /// Why such a time counts for nothing, and the way out.
    pub(super) const fn why_left_out(self) -> &'static str {
        match self {
            Self::Begun => "it was on then; correct the minute, or the begin or rinse noted before where that is wrong",
            _ => "it was not on then; correct the minute",
        }
    }
}

const fn needs(what: Noted) -> &'static [&'static str] {
    match what {
        Noted::Begun | Noted::Applied | Noted::Rinsed => &["section"],
        Noted::Seen | Noted::Result => &["section", "level"],
        Noted::Comfort => &["comfort"],
        Noted::Foil => &["section", "foil"],
        Noted::Elasticity => &["section", "elasticity"],
        Noted::Weighed | Noted::LeftOver => &["section", "mass_g"],
        Noted::Incident => &["note"],
    }
}
