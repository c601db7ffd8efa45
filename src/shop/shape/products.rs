use super::SubstanceEntry;
use crate::shop::{CountsFrom, ShadeClass, StrengthBasis};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Declares a product of the shop: its own fields, then those that every product has.
macro_rules! product {
    ($(#[$doc:meta])* $name:ident { $($own:tt)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($own)*
            /// What its maker declares to be in it.
            #[serde(default)]
            pub composition: Vec<SubstanceEntry>,
            /// Whether `composition` names everything that the law may limit; what it leaves out is unknown otherwise.
            #[serde(default)]
            pub declared_in_full: bool,
            /// How much of it is in hand; without it there is always enough.
            #[schemars(range(min = 0.0, max = 1_000_000.0), extend("x-unit" = "g"))]
            pub in_hand_g: Option<f64>,
            /// Mass of a full pack.
            #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
            pub pack_g: Option<f64>,
            /// Price of a full pack, in quotes so that it stays exact.
            #[schemars(extend("x-parse" = "amount"))]
            pub price: Option<String>,
        }

        impl $name {
            /// What every product has.
            pub(in crate::shop) fn facts(&self) -> EntryFacts<'_> {
                EntryFacts {
                    composition: &self.composition,
                    declared_in_full: self.declared_in_full,
                    in_hand_g: self.in_hand_g,
                    pack_g: self.pack_g,
                    price: self.price.as_deref(),
                }
            }
        }
    };
}

/// The fields that every product has, as written.
#[derive(Debug, Clone, Copy)]
pub(in crate::shop) struct EntryFacts<'e> {
    pub(in crate::shop) composition: &'e [SubstanceEntry],
    pub(in crate::shop) declared_in_full: bool,
    pub(in crate::shop) in_hand_g: Option<f64>,
    pub(in crate::shop) pack_g: Option<f64>,
    pub(in crate::shop) price: Option<&'e str>,
}

product! {
    /// A peroxide preparation.
    DeveloperEntry {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
        pub name: String,
        /// Its strength with the unit: `6 % w/w`, `6 % w/v`, `20 vol label` or `19.8 volumes`.
        #[schemars(extend("x-parse" = "strength"))]
        pub strength: String,
        /// How the strength is known.
        pub strength_basis: StrengthBasis,
        /// Its density, measured; needed only to read a w/v figure, volumes or a label exactly.
        #[schemars(range(min = 0.5, max = 1.5), extend("x-unit" = "g/mL"))]
        pub density_g_per_ml: Option<f64>,
        /// Whether it is a cream or emulsion rather than a clear solution; taken for a cream where it is not said.
        pub cream: Option<bool>,
    }
}

product! {
    /// A lightener.
    LightenerEntry {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
        pub name: String,
        /// Parts lightener to parts developer, by mass, for example `1:2`.
        #[schemars(extend("x-parse" = "ratio"))]
        pub ratio: String,
        /// Whether its own instructions allow it on the scalp.
        #[serde(default)]
        pub on_scalp: bool,
        /// The strongest developer its own instructions allow where it touches the scalp.
        #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
        pub strongest_on_scalp_ww_percent: Option<f64>,
        /// The strongest developer its own instructions allow.
        #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
        pub strongest_developer_ww_percent: Option<f64>,
        /// The longest development its own instructions allow.
        #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
        pub longest_min: Option<f64>,
        /// From when that time counts; from the first strand where it is not said.
        pub longest_counts_from: Option<CountsFrom>,
        /// How long a mixed bowl is worked with.
        #[schemars(range(min = 5.0, max = 120.0), extend("x-unit" = "min"))]
        pub working_life_min: Option<f64>,
        /// Whether it holds persulfate; taken for so where it is not said.
        pub persulfate: Option<bool>,
        /// pH of the mixed bowl, as its maker states it; never assumed.
        #[schemars(range(min = 0.0, max = 14.0), extend("x-unit" = "pH"))]
        pub mixed_ph: Option<f64>,
    }
}

product! {
    /// A colour shade.
    ShadeEntry {
        /// Your code for it.
        #[schemars(length(min = 1, max = 20), extend("x-parse" = "name"))]
        pub code: String,
        /// Its level.
        #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
        pub level: f64,
        /// Its tones in words of the colour wheel, main tone first; none means natural.
        #[serde(default)]
        #[schemars(extend("items" = { "type": "string", "x-parse": "hue" }))]
        pub tones: Vec<String>,
        /// Its tones as digits that the shop explains under `digits`. Give this or `tones`.
        #[schemars(length(min = 1, max = 6))]
        pub tone_digits: Option<String>,
        /// How much it deposits of what its level says: less for a sheer shade, 0 for a clear one.
        #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
        pub deposit_percent: Option<f64>,
        /// What kind of colour it is.
        pub class: ShadeClass,
        /// Parts colour to parts developer, by mass, for example `1:1.5`; a semi-permanent colour has none.
        #[schemars(extend("x-parse" = "ratio"))]
        pub ratio: Option<String>,
        /// The strongest developer its own instructions allow.
        #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
        pub strongest_developer_ww_percent: Option<f64>,
        /// The longest development its own instructions allow.
        #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
        pub longest_min: Option<f64>,
        /// From when that time counts; from the first strand where it is not said.
        pub longest_counts_from: Option<CountsFrom>,
        /// pH of the mixed bowl, as its maker states it; never assumed.
        #[schemars(range(min = 0.0, max = 14.0), extend("x-unit" = "pH"))]
        pub mixed_ph: Option<f64>,
    }
}

product! {
    /// Something added to a mix.
    AdditiveEntry {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
        pub name: String,
        /// Dose as a share of the mixed bowl before it is added, from its own leaflet.
        #[schemars(range(min = 0.01, max = 50.0), extend("x-unit" = "%"))]
        pub dose_percent: f64,
    }
}

product! {
    /// What a developer may be weakened with.
    DiluentEntry {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
        pub name: String,
    }
}

product! {
    /// What takes artificial pigment out, used as it comes by its own instructions.
    RemoverEntry {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
        pub name: String,
        /// Whether it holds persulfate; taken for so where neither this nor a full declaration says that it does not.
        pub persulfate: Option<bool>,
        /// Whether it holds or releases peroxide; taken for so in the same way.
        pub peroxide: Option<bool>,
    }
}
