use crate::quantity::InvalidQuantity;
use schemars::JsonSchema;
use serde::Serialize;
use std::{fmt, ops::Neg};

/// A way along the scale in levels: positive is lighter (lift), negative darker (deposit).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, JsonSchema)]
#[serde(transparent)]
#[schemars(inline, extend("x-unit" = "levels", "minimum" = -11.0, "maximum" = 11.0))]
pub struct LevelChange(f64);

impl LevelChange {
    /// No change.
    pub const NONE: Self = Self(0.0);

    /// Takes a change in levels.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when it is wider than the whole scale or not a number.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::colour::{Level, LevelChange};
    ///
    /// let change = Level::new(7.0)? - Level::new(4.0)?;
    /// assert_eq!((change, change.levels()), (LevelChange::from_levels(3.0)?, 3.0));
    /// assert!(change.is_lift() && (-change).is_deposit());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn from_levels(levels: f64) -> Result<Self, InvalidQuantity> {
        if levels >= -11.0 && levels <= 11.0 {
            Ok(Self(levels))
        } else {
            Err(InvalidQuantity {
                quantity: "change of level",
                value: levels,
                unit: "levels",
                allowed: "from -11 (darker) to 11 levels (lighter)",
            })
        }
    }

    /// From one number of the scale to another. Levels are written in decimals: the last bits of their difference in
    /// binary mean nothing, and must not put a change of 3 levels above a limit of 3.
    pub(super) fn between(from: f64, to: f64) -> Self {
        Self(((to - from) * 1e13).round() / 1e13)
    }

    /// The signed number of levels; positive is lighter.
    #[must_use]
    pub const fn levels(self) -> f64 {
        self.0
    }

    /// Whether hair has to become lighter.
    #[must_use]
    pub const fn is_lift(self) -> bool {
        self.0 > 0.0
    }

    /// Whether hair has to become darker.
    #[must_use]
    pub const fn is_deposit(self) -> bool {
        self.0 < 0.0
    }
}

impl Neg for LevelChange {
    type Output = Self;

    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl fmt::Display for LevelChange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.abs();
        let word = if size == 1.0 { "level" } else { "levels" };
        let direction = match self.0 {
            change if change > 0.0 => "lighter",
            change if change < 0.0 => "darker",
            _ => return f.write_str("no change"),
        };
        match f.precision() {
            Some(digits) => write!(f, "{size:.digits$} {word} {direction}"),
            None => write!(f, "{size} {word} {direction}"),
        }
    }
}
