use crate::choice::choice;

choice! {
    /// What came of a test.
    TestResult: "test result" {
        /// Nothing happened that should not.
        Clear = "clear",
        /// A reaction: itching, redness, heat, breaking.
        Reaction = "reaction",
        /// Not read yet.
        Pending = "pending",
    }
}

choice! {
    /// What of an earlier section must be over before another begins.
    #[derive(Default)]
    WaitFor: "what to wait for" {
        /// All of it is put on.
        #[default]
        Application = "application",
        /// The last of its foils is closed, which belongs to its application.
        FoilClosing = "foil-closing" => "foil closing",
        /// It has developed as long as planned.
        Development = "development",
        /// It is rinsed; the rinsing itself is not counted.
        Rinse = "rinse",
    }
}

choice! {
    /// A rule of the house for the order of the work.
    HouseRule: "rule for the order" {
        /// Two formulas in one foil: the darkest is painted first.
        DarkestFirst = "darkest-first" => "darkest first in one foil",
        /// What needs longest on the hair, slow or cool, is begun first.
        SlowestFirst = "slowest-first" => "slowest and coolest first",
        /// On virgin hair lightener goes on mid-lengths and ends before the warm roots.
        MidLengthsFirst = "mid-lengths-first" => "mid-lengths before roots on virgin hair",
        /// The hairline is worked before the rest.
        OutlineFirst = "outline-first" => "outline before crown",
    }
}

choice! {
    /// How the hair falls by itself.
    Curl: "curl" {
        /// Straight.
        Straight = "straight",
        /// In waves.
        Wavy = "wavy",
        /// In curls.
        Curly = "curly",
        /// In tight coils.
        Coily = "coily",
    }
}

choice! {
    /// How readily the hair takes up liquid.
    Porosity: "porosity" {
        /// Resists.
        Low = "low",
        /// As usual.
        Normal = "normal",
        /// Takes up at once.
        High = "high",
        /// Differs along the strand.
        Uneven = "uneven",
    }
}

choice! {
    /// Stretch and return of a damp strand.
    Elasticity: "elasticity" {
        /// Stretches and returns.
        Good = "good",
        /// Returns slowly.
        Reduced = "reduced",
        /// Stays stretched or breaks.
        Poor = "poor",
    }
}

choice! {
    /// State of the scalp.
    Scalp: "state of the scalp" {
        /// Nothing to see or feel.
        Intact = "intact",
        /// Sensitive or reddened.
        Irritated = "irritated",
        /// Wounds, rash or disease.
        Broken = "broken",
    }
}

choice! {
    /// What has been on this hair or has happened to this guest.
    HistoryFlag: "history" {
        /// Colour restorers or compound dyes with metal salts.
        MetallicSalts = "metallic-salts" => "metallic salts",
        /// Henna, pure or compound.
        Henna = "henna",
        /// A temporary black-henna tattoo, at any time.
        BlackHennaTattoo = "black-henna-tattoo" => "black henna tattoo",
        /// Any reaction to hair colour, at any time.
        ReactionToHairColour = "reaction-to-hair-colour" => "reaction to hair colour",
        /// Any reaction to lightener, at any time.
        ReactionToLightener = "reaction-to-lightener" => "reaction to lightener",
        /// Asthma, or trouble breathing near hairdressing products.
        Asthma = "asthma",
        /// Lightened before.
        Lightened = "lightened",
        /// Straightened or permed.
        StraightenedOrPermed = "straightened-or-permed" => "straightened or permed",
        /// Younger than sixteen.
        UnderSixteen = "under-sixteen" => "under sixteen",
        /// Permanent colour on the lengths.
        PermanentColour = "permanent-colour" => "permanent colour",
        /// A disease of the skin, such as eczema or psoriasis, also where the scalp looks sound today.
        SkinDisease = "skin-disease" => "disease of the skin",
        /// Medicine that the guest takes or puts on the scalp.
        Medicine = "medicine",
        /// Pregnant, or nursing.
        Pregnancy = "pregnancy",
        /// More hair falls out than usual.
        HairLoss = "hair-loss" => "loss of hair",
    }
}

choice! {
    /// What was done to the hair in an earlier service.
    PastWork: "earlier service" {
        /// Lightener, at whatever strength.
        Lightener = "lightener",
        /// Permanent or high-lift colour.
        PermanentColour = "permanent-colour" => "permanent colour",
        /// Demi-permanent colour, a toner or a gloss.
        Toner = "toner",
        /// Colour without peroxide.
        SemiPermanent = "semi-permanent" => "semi-permanent colour",
        /// Henna, pure or compound.
        Henna = "henna",
        /// A colour restorer or a compound dye with metal salts.
        MetallicColour = "metallic-colour" => "metallic colour",
        /// Chemically straightened or relaxed.
        Straightened = "straightened",
        /// Permed.
        Permed = "permed",
        /// Artificial pigment taken out without lightener.
        ColourRemover = "colour-remover" => "colour remover",
        /// Something, nobody knows what.
        Unknown = "unknown",
    }
}

choice! {
    /// Where an earlier service was done.
    PastPlace: "place of an earlier service" {
        /// In this salon.
        Here = "here",
        /// In another salon.
        Elsewhere = "elsewhere",
        /// At home.
        Home = "home" => "at home",
    }
}

choice! {
    /// Who has to agree before a service goes on.
    Party: "who agrees" {
        /// The guest.
        Guest = "guest",
        /// A parent or guardian of the guest.
        Guardian = "guardian",
        /// A doctor.
        Doctor = "doctor",
    }
}

choice! {
    /// A stretch of the strand.
    Zone: "zone" {
        /// At the scalp.
        Roots = "roots",
        /// Between roots and ends.
        MidLengths = "mid-lengths" => "mid lengths",
        /// The ends.
        Ends = "ends",
        /// Mid-lengths and ends together.
        Lengths = "lengths",
        /// Roots to ends.
        Whole = "whole",
    }
}

impl Zone {
    /// Whether the two have a stretch of the strand in common: `whole` meets every zone, `lengths` are mid-lengths and
    /// ends together.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::service::shape::Zone;
    ///
    /// assert!(Zone::Lengths.overlaps(Zone::Ends) && Zone::Whole.overlaps(Zone::Roots));
    /// assert!(!Zone::Roots.overlaps(Zone::Lengths));
    /// ```
    #[must_use]
    pub const fn overlaps(self, other: Self) -> bool {
        self.stretches() & other.stretches() != 0
    }

    /// Whether all of `other` lies in it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::service::shape::Zone;
    ///
    /// assert!(Zone::Lengths.covers(Zone::Ends) && !Zone::Ends.covers(Zone::Lengths));
    /// ```
    #[must_use]
    pub const fn covers(self, other: Self) -> bool {
        self.stretches() & other.stretches() == other.stretches()
    }

    /// Root, middle and end, a bit for each.
    const fn stretches(self) -> u8 {
        match self {
            Self::Roots => 0b001,
            Self::MidLengths => 0b010,
            Self::Ends => 0b100,
            Self::Lengths => 0b110,
            Self::Whole => 0b111,
        }
    }
}
