use serde::Serialize;

/// Declares an enum of table codes: one variant for each code, parsed and printed as that code.
macro_rules! codes {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $code:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        #[non_exhaustive]
        pub enum $name {
            $($(#[$vdoc])* #[serde(rename = $code)] $variant,)+
        }

        impl $name {
            /// Every code, in the order of the documentation.
            pub const CODES: &'static [&'static str] = &[$($code),+];

            /// The code used in tables.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code,)+ }
            }

            /// The variant of a code.
            #[must_use]
            pub fn from_code(text: &str) -> Option<Self> {
                match text { $($code => Some(Self::$variant),)+ _ => None }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.pad(self.code())
            }
        }
    };
}

codes! {
    /// What a row of a table says.
    Rule {
        /// A ceiling for a concentration.
        Maximum = "maximum",
        /// Must not be an ingredient at all.
        Prohibited = "prohibited",
        /// A ceiling for what the general public may be sold.
        SupplyLimit = "supply-limit",
        /// A ceiling for what a licence may allow the general public.
        LicenceCeiling = "licence-ceiling",
        /// A concentration above which the label must say something.
        LabelThreshold = "label-threshold",
        /// A concentration at which a poisons schedule changes.
        SchedulingThreshold = "scheduling-threshold",
        /// A concentration up to which a schedule does not apply.
        SchedulingExemption = "scheduling-exemption",
        /// Scheduled at any strength, with conditions.
        Scheduled = "scheduled",
        /// A duty to warn or to test, without a concentration.
        Label = "label",
        /// A limit for the air of the workplace.
        WorkplaceAir = "workplace-air",
        /// Looked for and not found in the law: no figure exists there.
        NoEntry = "no-entry",
        /// A figure may exist; it could not be established.
        NotEstablished = "not-established",
        /// The conclusion of an expert panel, without a figure.
        Conclusion = "conclusion",
    }
}

codes! {
    /// In what the concentration is meant.
    Measured {
        /// In the mixture on the hair.
        AsApplied = "as-applied",
        /// In the product as it is supplied or sold.
        AsSupplied = "as-supplied",
        /// Wherever it is.
        PresentAtAll = "present-at-all",
        /// In the air of the workplace.
        Air = "air",
        /// The source does not say.
        NotStated = "not-stated",
    }
}

codes! {
    /// What a row applies to.
    AppliesTo {
        /// Hair colour mixed with an oxidant.
        Oxidative = "oxidative",
        /// Hair colour used without an oxidant.
        NonOxidative = "non-oxidative",
        /// Hair colour of either kind.
        Dye = "dye",
        /// Lighteners.
        Bleach = "bleach",
        /// Any product for the hair.
        Hair = "hair",
        /// Products that colour eyelashes (and eyebrows).
        Lash = "lash",
        /// Any cosmetic product.
        Any = "any",
        /// Products for the skin.
        Skin = "skin",
        /// Products that straighten hair.
        Straightening = "straightening",
        /// Hair lotions and shampoos.
        Lotion = "lotion",
        /// Artificial nails.
        Nails = "nails",
        /// Anything sold to the general public.
        PublicSale = "public-sale",
        /// The air of the workplace.
        Air = "air",
    }
}

codes! {
    /// Whose use a row covers.
    Users {
        /// Everyone.
        All = "all",
        /// Professionals only.
        Professional = "professional",
        /// The general public only.
        General = "general",
    }
}

codes! {
    /// What the mixture is for.
    Purpose {
        /// Hair colour mixed with an oxidant.
        OxidativeColour = "oxidative-colour",
        /// Hair colour used without an oxidant.
        NonOxidativeColour = "non-oxidative-colour",
        /// Lightening with an oxidant.
        Lightening = "lightening",
        /// Colour for eyelashes or eyebrows.
        LashColour = "lash-colour",
    }
}

codes! {
    /// Who uses it.
    Audience {
        /// A professional, in a salon.
        Professional = "professional",
        /// Anyone, at home.
        General = "general",
    }
}

codes! {
    /// How the figure of a row was obtained.
    Obtained {
        /// The text, or a report of it, was read.
        Retrieved = "retrieved",
        /// Read from the data of a scientific library.
        Library = "library",
        /// Not looked up: remembered. Never the ground of a finding that nothing is exceeded.
        FromMemory = "from memory",
        /// Supplied with the user's own table.
        Stated = "stated",
    }
}

impl Obtained {
    /// Whether a finding may rest on it.
    #[must_use]
    pub const fn is_verified(self) -> bool {
        !matches!(self, Self::FromMemory)
    }
}

impl Purpose {
    /// Whether a row for `scope` concerns this purpose.
    #[must_use]
    pub(super) const fn is_covered_by(self, scope: AppliesTo) -> bool {
        use AppliesTo::{Any, Bleach, Dye, Hair, Lash, NonOxidative, Oxidative};
        match self {
            Self::OxidativeColour => matches!(scope, Oxidative | Dye | Hair | Any),
            Self::NonOxidativeColour => matches!(scope, NonOxidative | Dye | Hair | Any),
            // A dye in a lightener is used under oxidative conditions like any other.
            Self::Lightening => matches!(scope, Bleach | Oxidative | Hair | Any),
            Self::LashColour => matches!(scope, Lash | Any),
        }
    }
}

impl Users {
    pub(super) const fn include(self, audience: Audience) -> bool {
        matches!(
            (self, audience),
            (Self::All, _) | (Self::Professional, Audience::Professional) | (Self::General, Audience::General)
        )
    }
}
