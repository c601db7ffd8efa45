/// Declares a checked newtype over `f64`: one private field, one constructor, one getter, one unit for reading,
/// printing and plain data.
///
/// The quantities differ only in name, unit and range; writing each by hand would hide that. Further constructors and
/// getters (other units) are ordinary `impl` blocks beside the declaration.
///
/// `key` is how the unit ends the name of a field of plain data, for example `total_g`: a quantity serialises as a bare
/// number, so the name has to say what it is.
macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident: $what:literal in $unit:literal, key $key:literal,
        $from:ident / $get:ident,
        $low:literal..=$high:literal, $allowed:literal
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, serde::Serialize, serde::Deserialize)]
        #[serde(try_from = "f64", into = "f64")]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("Takes a ", $what, " in ", $unit, ".")]
            ///
            /// # Errors
            ///
            #[doc = concat!("[`InvalidQuantity`](crate::quantity::InvalidQuantity) unless the value is ", $allowed, ".")]
            pub const fn $from(value: f64) -> Result<Self, $crate::quantity::InvalidQuantity> {
                if value >= $low && value <= $high {
                    Ok(Self(value))
                } else {
                    Err($crate::quantity::InvalidQuantity {
                        quantity: $what,
                        value,
                        unit: $unit,
                        allowed: $allowed,
                    })
                }
            }

            #[doc = concat!("The ", $what, " in ", $unit, ".")]
            #[must_use]
            pub const fn $get(self) -> f64 {
                self.0
            }
        }

        impl $crate::quantity::Quantity for $name {
            const WHAT: &'static str = $what;
            const UNIT: &'static str = $unit;
            const KEY: &'static str = $key;
            const MIN: Self = Self($low);
            const MAX: Self = Self($high);

            fn from_unit(value: f64) -> Result<Self, $crate::quantity::InvalidQuantity> {
                Self::$from(value)
            }

            fn in_unit(self) -> f64 {
                self.0
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                match f.precision() {
                    Some(digits) => write!(f, "{:.digits$} {}", self.0, $unit),
                    None => write!(f, "{} {}", self.0, $unit),
                }
            }
        }

        impl std::str::FromStr for $name {
            type Err = $crate::quantity::ParseQuantityError;

            /// Reads what `Display` prints: a number, then the unit.
            fn from_str(text: &str) -> Result<Self, Self::Err> {
                $crate::quantity::read(text)
            }
        }

        impl TryFrom<f64> for $name {
            type Error = $crate::quantity::InvalidQuantity;

            #[doc = concat!("The same as [`", stringify!($name), "::", stringify!($from), "`], for serde.")]
            fn try_from(value: f64) -> Result<Self, Self::Error> {
                Self::$from(value)
            }
        }

        impl From<$name> for f64 {
            fn from(quantity: $name) -> Self {
                quantity.0
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn inline_schema() -> bool {
                true
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "number", "minimum": $low, "maximum": $high, "x-unit": $unit })
            }
        }
    };
}

pub(crate) use quantity;
