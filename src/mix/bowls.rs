use super::Pace;
use crate::quantity::{Duration, Mass, Quantity};
use serde::Serialize;

/// More fresh bowls than anyone mixes in a day: a request beyond it is a slip.
const MOST_BOWLS: f64 = 500.0;

/// What has to go onto the hair, and what bounds one bowl.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BowlRequest {
    /// Product that must reach the hair.
    pub total: Mass,
    /// The most one bowl holds.
    pub capacity: Mass,
    /// How long a mixed bowl may be used, counted from the end of mixing.
    pub working_life: Duration,
    /// How fast product goes onto the hair.
    pub pace: Pace,
    /// Time that application stands still while a bowl is mixed; zero when someone else mixes ahead.
    pub mixing: Duration,
    /// What stays behind in the bowl and the brush.
    pub residue: Mass,
}

impl BowlRequest {
    /// A request without mixing time and without residue.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{BowlRequest, Pace}, quantity::{Duration, Mass}};
    ///
    /// let g = Mass::from_g;
    /// let request = BowlRequest::new(g(90.0)?, g(120.0)?, Duration::from_min(40.0)?, Pace::from_g_per_min(3.0)?);
    /// assert_eq!(request.residue(g(5.0)?).mixing(Duration::from_min(3.0)?).residue.g(), 5.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub const fn new(total: Mass, capacity: Mass, working_life: Duration, pace: Pace) -> Self {
        let mixing = Duration::ZERO;
        Self { total, capacity, working_life, pace, mixing, residue: Mass::ZERO }
    }

    /// The same with the time application stands still for each mixing.
    #[must_use]
    pub const fn mixing(self, mixing: Duration) -> Self {
        Self { mixing, ..self }
    }

    /// The same with what stays behind in each bowl.
    #[must_use]
    pub const fn residue(self, residue: Mass) -> Self {
        Self { residue, ..self }
    }
}

/// One fresh bowl. Times count from the start of the first mixing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FreshBowl {
    /// Mass to mix, residue included.
    #[serde(rename = "mixed_g")]
    pub mixed: Mass,
    /// Mass that goes onto the hair.
    #[serde(rename = "applied_g")]
    pub applied: Mass,
    /// When to start mixing.
    #[serde(rename = "mix_at_min")]
    pub mix_at: Duration,
    /// When it is mixed and application goes on.
    #[serde(rename = "ready_at_min")]
    pub ready_at: Duration,
    /// When the last of it is on the hair.
    #[serde(rename = "empty_at_min")]
    pub empty_at: Duration,
    /// When it must no longer be used.
    #[serde(rename = "use_by_min")]
    pub use_by: Duration,
}

/// Fresh bowls in the order of mixing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BowlPlan {
    bowls: Vec<FreshBowl>,
}

impl BowlPlan {
    /// The bowls, all of one size.
    #[must_use]
    pub fn bowls(&self) -> &[FreshBowl] {
        &self.bowls
    }

    /// Everything mixed, which is what the bowls cost.
    #[must_use]
    pub fn mixed(&self) -> Mass {
        self.bowls.iter().map(|b| b.mixed).sum()
    }

    /// Everything that reaches the hair.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{BowlRequest, Pace, bowls}, quantity::{Duration, Mass}};
    ///
    /// let g = Mass::from_g;
    /// let request = BowlRequest::new(g(90.0)?, g(120.0)?, Duration::from_min(40.0)?, Pace::from_g_per_min(3.0)?);
    /// let plan = bowls(&request.residue(g(5.0)?))?;
    /// assert_eq!((plan.mixed(), plan.applied()), (g(95.0)?, g(90.0)?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn applied(&self) -> Mass {
        self.bowls.iter().map(|b| b.applied).sum()
    }

    /// Mixed and thrown away.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{BowlRequest, Pace, bowls}, quantity::{Duration, Mass}};
    ///
    /// let g = Mass::from_g;
    /// let request = BowlRequest::new(g(90.0)?, g(120.0)?, Duration::from_min(40.0)?, Pace::from_g_per_min(3.0)?);
    /// assert_eq!(bowls(&request.residue(g(5.0)?))?.leftover().g(), 5.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn leftover(&self) -> Mass {
        self.mixed().minus_or_zero(self.applied())
    }
}

/// Bowls of your own timing, for [`recipes`](BowlPlan::recipes) and [`leftovers`](BowlPlan::leftovers).
impl FromIterator<FreshBowl> for BowlPlan {
    fn from_iter<I: IntoIterator<Item = FreshBowl>>(bowls: I) -> Self {
        Self { bowls: bowls.into_iter().collect() }
    }
}

/// Bowls that cannot be planned.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BowlError {
    /// No mass to apply.
    #[error("there is nothing to apply (total 0 g): give a total above 0 g")]
    Nothing,
    /// The bowl holds no more than what stays behind in it.
    #[error("a bowl of {capacity} holds no more than the {residue} that stays behind: use a bigger bowl")]
    Capacity {
        /// The most one bowl holds.
        capacity: Mass,
        /// What stays behind.
        residue: Mass,
    },
    /// The mixture is spent before any of it can be used.
    #[error("the working life is {0}: it must be above 0 min (take it from the product's directions)")]
    WorkingLife(Duration),
    /// Hundreds of bowls.
    #[error("{total} would take {bowls} bowls of {usable}: check the units (at most 500 bowls)")]
    TooMany {
        /// Product that must reach the hair.
        total: Mass,
        /// Bowls that would take.
        bowls: f64,
        /// What one bowl puts on the hair.
        usable: Mass,
    },
}

/// Number, size and mixing times of fresh bowls.
///
/// One bowl puts on the hair what it holds beyond its residue, and no more than the pace allows within its working
/// life. The number of bowls is the least that does; they are all made the same size, so that one weighing card serves
/// for all and none is so small that the scale spoils its ratio.
///
/// # Units
///
/// Masses in g, times in min from the start of the first mixing.
///
/// # Errors
///
/// [`BowlError`] when a bowl could put nothing on the hair, or hundreds would be needed.
///
/// # Example
///
/// ```
/// use foilwork::{mix::{BowlRequest, Pace, bowls}, quantity::{Duration, Mass}};
///
/// let (total, capacity) = (Mass::from_g(200.0)?, Mass::from_g(120.0)?);
/// let request = BowlRequest::new(total, capacity, Duration::from_min(40.0)?, Pace::from_g_per_min(2.0)?);
/// let plan = bowls(&request)?;
/// assert_eq!(plan.bowls().len(), 3); // 2 g/min for 40 min: 80 g at most from one bowl
/// assert_eq!(plan.mixed().g().round(), 200.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Arithmetic; the working life is the manufacturer's, the pace and the residue are the user's.
pub fn bowls(request: &BowlRequest) -> Result<BowlPlan, BowlError> {
    let BowlRequest { total, capacity, working_life, pace, mixing, residue } = *request;
    if total.g() <= 0.0 {
        return Err(BowlError::Nothing);
    }
    if working_life.min() <= 0.0 {
        return Err(BowlError::WorkingLife(working_life));
    }
    let room = capacity.g() - residue.g();
    if room <= 0.0 {
        return Err(BowlError::Capacity { capacity, residue });
    }
    let usable = room.min(pace.g_per_min() * working_life.min());
    // A last bit too much must not cost a whole bowl.
    let count = (total.g() / usable * (1.0 - 1e-12)).ceil().max(1.0);
    if count > MOST_BOWLS {
        return Err(BowlError::TooMany { total, bowls: count, usable: Mass::nearest(usable) });
    }
    let (applied, cycle) = (total.g() / count, mixing.min() + total.g() / count / pace.g_per_min());
    let mut plan = BowlPlan { bowls: Vec::new() };
    let mut at = 0.0;
    while (plan.bowls.len() as f64) < count {
        let ready = at + mixing.min();
        plan.bowls.push(FreshBowl {
            mixed: Mass::nearest(applied + residue.g()),
            applied: Mass::nearest(applied),
            mix_at: Duration::nearest(at),
            ready_at: Duration::nearest(ready),
            empty_at: Duration::nearest(at + cycle),
            use_by: Duration::nearest(ready + working_life.min()),
        });
        at += cycle;
    }
    Ok(plan)
}
