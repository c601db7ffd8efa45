use crate::choice::choice;

choice! {
    /// What a row of a table says.
    LimitRule: "rule" {
        /// A ceiling for a concentration.
        Maximum = "maximum",
        /// Must not be an ingredient at all.
        Prohibited = "prohibited",
        /// A ceiling for what the general public may be sold.
        SupplyLimit = "supply-limit" => "supply limit",
        /// A ceiling for what a licence may allow the general public.
        LicenceCeiling = "licence-ceiling" => "licence ceiling",
        /// A concentration above which the label must say something.
        LabelThreshold = "label-threshold" => "label threshold",
        /// A concentration at which a poisons schedule changes.
        SchedulingThreshold = "scheduling-threshold" => "scheduling threshold",
        /// A concentration up to which a schedule does not apply.
        SchedulingExemption = "scheduling-exemption" => "scheduling exemption",
        /// Scheduled at any strength, with conditions.
        Scheduled = "scheduled",
        /// A duty to warn or to test, without a concentration.
        Label = "label",
        /// A limit for the air of the workplace.
        WorkplaceAir = "workplace-air" => "workplace air",
        /// Looked for and not found in the law: no figure exists there.
        NoEntry = "no-entry" => "no entry",
        /// A figure may exist; it could not be established.
        NotEstablished = "not-established" => "not established",
        /// The conclusion of an expert panel, without a figure.
        Conclusion = "conclusion",
    }
}

choice! {
    /// In what the concentration is meant.
    Measured: "measured" {
        /// In the mixture on the hair.
        AsApplied = "as-applied" => "as applied",
        /// In the product as it is supplied or sold.
        AsSupplied = "as-supplied" => "as supplied",
        /// Wherever it is.
        PresentAtAll = "present-at-all" => "present at all",
        /// In the air of the workplace.
        Air = "air",
        /// The source does not say.
        NotStated = "not-stated" => "not stated",
    }
}

choice! {
    /// What a row applies to.
    AppliesTo: "use of the table" {
        /// Hair colour mixed with an oxidant.
        Oxidative = "oxidative",
        /// Hair colour used without an oxidant.
        NonOxidative = "non-oxidative" => "non oxidative",
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
        PublicSale = "public-sale" => "public sale",
        /// The air of the workplace.
        Air = "air",
    }
}

choice! {
    /// Whose use a row covers.
    Users: "user" {
        /// Everyone.
        All = "all",
        /// Professionals only.
        Professional = "professional",
        /// The general public only.
        General = "general",
    }
}

choice! {
    /// What the mixture is for.
    Purpose: "purpose" {
        /// Hair colour mixed with an oxidant.
        OxidativeColour = "oxidative-colour" => "oxidative colour",
        /// Hair colour used without an oxidant.
        NonOxidativeColour = "non-oxidative-colour" => "non oxidative colour",
        /// Lightening with an oxidant.
        Lightening = "lightening",
        /// Colour for eyelashes or eyebrows.
        LashColour = "lash-colour" => "lash colour",
    }
}

choice! {
    /// Who uses it.
    Audience: "audience" {
        /// A professional, in a salon.
        Professional = "professional",
        /// Anyone, at home.
        General = "general",
    }
}

choice! {
    /// How the figure of a row was obtained.
    Obtained: "way the figure was obtained" {
        /// The text, or a report of it, was read.
        Retrieved = "retrieved",
        /// Read from the data of a scientific library.
        Library = "library",
        /// Not looked up: remembered. Never the basis of a finding that the level is within.
        FromMemory = "from-memory" => "from memory",
        /// Supplied with the user's own table.
        Stated = "stated",
    }
}

impl Obtained {
    /// Whether a finding may rest on it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::Obtained;
    ///
    /// assert!(Obtained::Retrieved.is_verified() && !Obtained::FromMemory.is_verified());
    /// ```
    #[must_use]
    pub const fn is_verified(self) -> bool {
        !matches!(self, Self::FromMemory)
    }
}

impl Purpose {
    /// Whether a row for `scope` concerns this purpose.
    #[must_use]
    pub(super) const fn is_covered_by(self, scope: AppliesTo, rule: LimitRule) -> bool {
        use AppliesTo::{Any, Bleach, Dye, Hair, Lash, NonOxidative, Oxidative};
        match self {
            // A dye in a lightener is used as a hair dye: what must not be one must not be there.
            Self::Lightening if matches!(rule, LimitRule::Prohibited) => {
                matches!(scope, Bleach | Oxidative | NonOxidative | Dye | Hair | Any)
            }
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
