use crate::reader::{at_most_one, one_of};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A shade and its parts in a mix of shades.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MixPart {
    /// A shade's code.
    pub shade: String,
    /// Its parts.
    #[schemars(range(min = 0.01, max = 1000.0), extend("x-unit" = "parts"))]
    pub parts: f64,
}

/// A look that is wanted; which shades of the shop give it is worked out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ToneTarget {
    /// The level wanted.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub level: f64,
    /// The tones wanted in words of the colour wheel, main tone first; none means neutral.
    #[serde(default)]
    #[schemars(length(max = 12), extend("items" = { "type": "string", "x-parse": "hue" }))]
    pub tones: Vec<String>,
}

/// What every application after the rinse has, borrowed from a [`Toner`] or a [`RootShadow`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Application<'f> {
    /// The shades and their parts; empty where a target is named.
    pub mix: &'f [MixPart],
    /// The look wanted, where no mix is named.
    pub target: Option<&'f ToneTarget>,
    /// A developer of the shop.
    pub developer: Option<&'f str>,
    /// The strength wanted before mixing.
    pub strength: Option<&'f str>,
    /// Parts colour to parts developer, where that is stated.
    pub ratio: Option<&'f str>,
    /// How much mix to make, in g.
    pub mix_g: f64,
    /// How long the application takes, in min.
    pub apply_min: Option<f64>,
    /// How long it develops, in min.
    pub develop_min: f64,
}

/// Declares an application after the rinse: its own fields, then those that every one has.
macro_rules! application {
    ($(#[$doc:meta])* $name:ident { $($own:tt)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(deny_unknown_fields)]
        #[schemars(extend("allOf" = [one_of(&["mix", "target"]), at_most_one(&["developer", "strength"])]))]
        pub struct $name {
            $($own)*
            /// The shades and their parts. Give this or `target`.
            #[serde(default)]
            #[schemars(length(max = 12))]
            pub mix: Vec<MixPart>,
            /// The look wanted, for which shades of the shop are found and weighed. Give this or `mix`.
            pub target: Option<ToneTarget>,
            /// A developer of the shop. Give this or `strength`.
            pub developer: Option<String>,
            /// The strength wanted before mixing, blended from the shop.
            #[schemars(extend("x-parse" = "strength"))]
            pub strength: Option<String>,
            /// Parts colour to parts developer, where it differs from the shades' own ratio.
            #[schemars(extend("x-parse" = "ratio"))]
            pub ratio: Option<String>,
            /// How much mix to make.
            #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
            pub mix_g: f64,
            /// How long the application takes.
            #[schemars(range(min = 1.0, max = 240.0), extend("x-unit" = "min"))]
            pub apply_min: Option<f64>,
            /// How long it develops.
            #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
            pub develop_min: f64,
        }

        impl $name {
            /// What it shares with every other application after the rinse.
            #[must_use]
            pub fn application(&self) -> Application<'_> {
                Application {
                    mix: &self.mix,
                    target: self.target.as_ref(),
                    developer: self.developer.as_deref(),
                    strength: self.strength.as_deref(),
                    ratio: self.ratio.as_deref(),
                    mix_g: self.mix_g,
                    apply_min: self.apply_min,
                    develop_min: self.develop_min,
                }
            }
        }
    };
}

application! {
    /// A toner applied after rinsing.
    Toner {
        /// Your name for it.
        #[schemars(length(min = 1, max = 60))]
        pub name: String,
        /// The sections it goes on; none named means all lightened ones.
        #[serde(default)]
        #[schemars(length(max = 500))]
        pub sections: Vec<String>,
    }
}

application! {
    /// A darker toner on the first centimetres, to soften where the light starts.
    RootShadow {
        /// How far down it is taken; where it is not said, short at the hairline and longer inside, region by region.
        #[schemars(range(min = 0.5, max = 30.0), extend("x-unit" = "cm"))]
        pub length_cm: Option<f64>,
    }
}
