use super::{DensityFact, HairFacts, ThreadFact};
use crate::{
    choice::choice,
    quantity::{Quantity, Share},
    source::Interval,
};

choice! {
    /// A fact of a head of hair that is measured.
    MeasuredFact: "measured fact" {
        /// Hairs on a square centimetre.
        Density = "density",
        /// How thick a hair is.
        Diameter = "diameter",
        /// Scalp that bears hair.
        Scalp = "scalp" => "hair-bearing scalp",
        /// Girth of a ponytail.
        Girth = "girth" => "girth of the ponytail",
        /// How much of the hair is in it.
        Gathered = "gathered" => "hair gathered in the ponytail",
    }
}

/// A figure that no head has: a slip, or another unit.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{fact}: {value} is on no head, from {from} to {to} is (measure again, or leave it out)")]
pub struct ImplausibleFact {
    /// Which.
    pub fact: MeasuredFact,
    /// The figure with its unit.
    pub value: String,
    /// The least that is taken.
    pub from: String,
    /// The most that is taken.
    pub to: String,
}

impl HairFacts {
    /// These facts, if heads have them: 10 to 500 hairs/cm2, 15 to 200 um, 100 to 1200 cm2 of scalp, a ponytail of 1 to 40 cm
    /// that gathers at least a tenth; far beyond all that is published, assumed as what can only be a slip.
    ///
    /// # Errors
    ///
    /// [`ImplausibleFact`] with the fact and what is taken.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::{HairFacts, Ponytail}, quantity::{Length, Share}};
    ///
    /// let tail = Ponytail { girth: Length::from_mm(0.1)?.into(), gathered: Share::ALL };
    /// let slip = HairFacts { ponytail: Some(tail), ..HairFacts::default() }.plausible();
    /// assert!(slip.is_err_and(|error| error.to_string().contains("from 1 cm to 40 cm")));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    pub fn plausible(self) -> Result<Self, ImplausibleFact> {
        if let Some(DensityFact::Counted(counted)) = self.density {
            within(MeasuredFact::Density, counted, 10.0, 500.0)?;
        }
        if let Some(ThreadFact::Measured(read, _)) = self.thread {
            within(MeasuredFact::Diameter, read, 15.0, 200.0)?;
        }
        if let Some(scalp) = self.scalp {
            within(MeasuredFact::Scalp, scalp, 100.0, 1200.0)?;
        }
        if let Some(tail) = self.ponytail {
            within(MeasuredFact::Girth, tail.girth, 1.0, 40.0)?;
            within::<Share>(MeasuredFact::Gathered, tail.gathered.into(), 10.0, 100.0)?;
        }
        Ok(self)
    }
}

/// Whether the best estimate lies between two figures in its own unit.
fn within<Q: Quantity>(fact: MeasuredFact, value: Interval<Q>, from: f64, to: f64) -> Result<(), ImplausibleFact> {
    let best = value.best().in_unit();
    if best >= from && best <= to {
        return Ok(());
    }
    let said = |number: f64| format!("{number} {}", Q::UNIT);
    Err(ImplausibleFact { fact, value: said(best), from: said(from), to: said(to) })
}
