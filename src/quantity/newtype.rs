/// Declares a checked newtype over `f64`: one private field, one constructor, one getter, `Display` with the unit.
///
/// The quantities differ only in name, unit and range; writing each by hand would hide that. Further constructors and
/// getters (other units) are ordinary `impl` blocks beside the declaration.
macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident: $what:literal in $unit:literal,
        $from:ident / $get:ident,
        when |$v:ident| $valid:expr, $allowed:literal
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("Takes a ", $what, " in ", $unit, ".")]
            ///
            /// # Errors
            ///
            #[doc = concat!("[`InvalidQuantity`](crate::quantity::InvalidQuantity) unless the value is ", $allowed, ".")]
            pub const fn $from(value: f64) -> Result<Self, $crate::quantity::InvalidQuantity> {
                let $v = value;
                if $valid {
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

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                match f.precision() {
                    Some(digits) => write!(f, "{:.digits$} {}", self.0, $unit),
                    None => write!(f, "{} {}", self.0, $unit),
                }
            }
        }
    };
}

pub(crate) use quantity;
