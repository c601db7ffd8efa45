use serde::Serialize;
use std::{fmt, str::FromStr};

/// The chemical form a level is stated in. A sulfate weighs more than the base in it, so 2 % of one is not 2 % of the
/// other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Form {
    /// The amine itself, whatever salt it was added as.
    FreeBase,
    /// The sulfate.
    Sulfate,
    /// The hydrochloride with one HCl, or as the source writes it without a count.
    Hydrochloride,
    /// The salt with two HCl.
    Dihydrochloride,
    /// The salt with four HCl.
    Tetrahydrochloride,
    /// Hydrogen peroxide itself.
    #[serde(rename = "h2o2")]
    HydrogenPeroxide,
    /// Hydrogen peroxide, added as such or set free by another compound.
    #[serde(rename = "h2o2-released")]
    HydrogenPeroxideReleased,
    /// Ammonia, also when added as its solution in water.
    #[serde(rename = "nh3")]
    Ammonia,
    /// Free sulfur dioxide.
    #[serde(rename = "so2")]
    SulfurDioxide,
    /// The metal strontium.
    Strontium,
    /// The persulfate ion.
    Persulfate,
}

impl Form {
    const ALL: [(Self, &'static str, &'static str); 11] = [
        (Self::FreeBase, "free-base", "free base"),
        (Self::Sulfate, "sulfate", "sulfate"),
        (Self::Hydrochloride, "hydrochloride", "hydrochloride"),
        (Self::Dihydrochloride, "dihydrochloride", "dihydrochloride"),
        (Self::Tetrahydrochloride, "tetrahydrochloride", "tetrahydrochloride"),
        (Self::HydrogenPeroxide, "h2o2", "hydrogen peroxide"),
        (Self::HydrogenPeroxideReleased, "h2o2-released", "hydrogen peroxide present or released"),
        (Self::Ammonia, "nh3", "ammonia"),
        (Self::SulfurDioxide, "so2", "free sulfur dioxide"),
        (Self::Strontium, "strontium", "strontium"),
        (Self::Persulfate, "persulfate", "persulfate"),
    ];

    fn entry(self) -> (&'static str, &'static str) {
        Self::ALL.iter().find(|(form, ..)| *form == self).map_or(("", ""), |(_, code, words)| (code, words))
    }

    /// The code used in tables, for example `free-base`.
    #[must_use]
    pub fn code(self) -> &'static str {
        self.entry().0
    }
}

impl fmt::Display for Form {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.entry().1)
    }
}

/// Text that names no chemical form.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "invalid form (got \"{0}\"): must be one of free-base, sulfate, hydrochloride, dihydrochloride, \
     tetrahydrochloride, h2o2, h2o2-released, nh3, so2, strontium, persulfate"
)]
pub struct InvalidForm(pub(super) String);

impl FromStr for Form {
    type Err = InvalidForm;

    fn from_str(text: &str) -> Result<Self, InvalidForm> {
        Self::ALL
            .iter()
            .find(|(_, code, words)| *code == text || *words == text)
            .map(|(form, ..)| *form)
            .ok_or_else(|| InvalidForm(text.to_owned()))
    }
}
