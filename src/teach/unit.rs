use crate::{
    choice::choice,
    source::{
        Citation,
        citations::{money, trade},
    },
};

choice! {
    /// A published unit or standard of a training in hairdressing, as far as its text was read.
    TrainingUnit: "unit" {
        /// Australia, colour and lighten hair.
        Shbhcls002 = "au-shbhcls002" => "SHBHCLS002",
        /// Australia, neutralise unwanted colours and tones.
        Shbhcls004 = "au-shbhcls004" => "SHBHCLS004",
        /// Australia, solve complex colour problems.
        Shbhcls006 = "au-shbhcls006" => "SHBHCLS006",
        /// United Kingdom, creatively colour and lighten the hair.
        Skahdbr6 = "uk-skahdbr6" => "SKAHDBR6",
        /// United Kingdom, corrective services.
        Skahdbr7 = "uk-skahdbr7" => "SKAHDBR7",
        /// England, colour correction.
        D6001010 = "uk-d6001010" => "D/600/1010",
        /// England, colour and lighten hair.
        A6008630 = "uk-a6008630" => "A/600/8630",
        /// New Zealand, full-head highlighting.
        Nz12313 = "nz-12313" => "NZ 12313",
        /// New Zealand, bleach and tone.
        Nz2889 = "nz-2889" => "NZ 2889",
        /// New Zealand, permanent colour.
        Nz19792 = "nz-19792" => "NZ 19792",
        /// New Zealand, fundamentals of colour.
        Nz28835 = "nz-28835" => "NZ 28835",
        /// New Zealand, costs of a salon.
        Nz28846 = "nz-28846" => "NZ 28846",
        /// Canada, alters hair colour.
        RedSealF = "ca-red-seal-f" => "Red Seal F-13.01",
    }
}

impl TrainingUnit {
    /// Title, publisher, year, and which of its elements were read.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::TrainingUnit;
    ///
    /// assert!(TrainingUnit::Nz12313.citation().text.contains("full-head highlighting"));
    /// ```
    #[must_use]
    pub const fn citation(self) -> &'static Citation {
        match self {
            Self::Shbhcls002 => &trade::UNIT_SHBHCLS002,
            Self::Shbhcls004 => &trade::UNIT_SHBHCLS004,
            Self::Shbhcls006 => &trade::UNIT_SHBHCLS006,
            Self::Skahdbr6 => &trade::UNIT_SKAHDBR6,
            Self::Skahdbr7 => &trade::UNIT_SKAHDBR7,
            Self::D6001010 => &trade::UNIT_D6001010,
            Self::A6008630 => &trade::UNIT_A6008630,
            Self::Nz12313 => &trade::UNIT_NZ12313,
            Self::Nz2889 => &trade::UNIT_NZ2889,
            Self::Nz19792 => &trade::UNIT_NZ19792,
            Self::Nz28835 => &trade::UNIT_NZ28835,
            Self::Nz28846 => &money::SALON_COSTS,
            Self::RedSealF => &trade::UNIT_RED_SEAL_F,
        }
    }
}
