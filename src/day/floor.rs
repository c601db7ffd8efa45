use crate::quantity::{Duration, Quantity};
use schemars::JsonSchema;
use serde::Serialize;

/// What the salon has for this guest: hands, basins, and how long the small work takes.
///
/// # Example
///
/// ```
/// use foilwork::day::Floor;
///
/// let floor = Floor { people: 2, ..Floor::default() };
/// assert_eq!((floor.mix.min(), floor.look.min(), floor.rinse.min()), (3.0, 1.0, 3.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Floor {
    /// Pairs of hands.
    pub people: u32,
    /// Basins.
    pub basins: u32,
    /// Weighing and mixing a bowl.
    #[serde(rename = "mix_min")]
    pub mix: Duration,
    /// A look over all that is on; zero where nothing has to be looked at.
    #[serde(rename = "look_min")]
    pub look: Duration,
    /// The first look that counts for a section, from its first strand.
    #[serde(rename = "first_look_min")]
    pub first_look: Duration,
    /// How long hands work or rest between two looks.
    #[serde(rename = "look_every_min")]
    pub look_every: Duration,
    /// Rinsing a section at the basin.
    #[serde(rename = "rinse_min")]
    pub rinse: Duration,
    /// Bringing the guest to the basin.
    #[serde(rename = "walk_min")]
    pub walk: Duration,
}

impl Default for Floor {
    /// One pair of hands, one basin; 3 min for a bowl, 1 min for a look, 3 min for rinsing a section, 2 min to
    /// the basin (assumed); looks after 15 min and then every 5 (citation `check-interval`).
    fn default() -> Self {
        let min = Duration::nearest;
        Self {
            people: 1,
            basins: 1,
            mix: min(3.0),
            look: min(1.0),
            first_look: min(15.0),
            look_every: min(5.0),
            rinse: min(3.0),
            walk: min(2.0),
        }
    }
}

impl Floor {
    /// How long the looks take while hands put on for so long: one after each `look_every` of it, none at its very end.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{day::Floor, quantity::Duration};
    ///
    /// let floor = Floor::default();
    /// assert_eq!(floor.looks_while(Duration::from_min(18.0)?).min(), 3.0);
    /// assert_eq!(floor.looks_while(Duration::from_min(15.0)?).min(), 2.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn looks_while(&self, apply: Duration) -> Duration {
        let every = seconds(self.look_every);
        let looks = if every > 0 { (seconds(apply) - 1).max(0) / every } else { 0 };
        Duration::nearest(looks as f64 * self.look.min())
    }
}

/// Minutes as whole seconds, rounded up: no limit is passed by a rounding.
pub(super) fn seconds(time: Duration) -> i64 {
    // The last bits of a sum of minutes are no second.
    (time.min() * 60.0 - 1e-6).ceil() as i64
}

/// Minutes as the whole seconds that are over by then.
pub(super) fn seconds_over(time: Duration) -> i64 {
    (time.min() * 60.0 + 1e-6).floor() as i64
}

/// So many of a thing, among seconds.
pub(super) fn many(count: usize) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}

/// Whole seconds as minutes.
pub(super) fn minutes(seconds: i64) -> Duration {
    Duration::nearest(seconds as f64 / 60.0)
}
