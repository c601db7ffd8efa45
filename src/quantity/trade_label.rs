/// The volume number printed on a developer bottle.
///
/// By trade convention 10, 20, 30 and 40 vol stand for 3, 6, 9 and 12 percent. The label states neither whether the
/// percent is by weight or by volume nor a measured oxygen yield, so it is a type of its own: it has to be read before
/// it is a strength. Other strengths are stated in percent or in oxygen volumes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TradeLabel {
    /// 10 vol, 3 percent.
    Vol10,
    /// 20 vol, 6 percent.
    Vol20,
    /// 30 vol, 9 percent.
    Vol30,
    /// 40 vol, 12 percent.
    Vol40,
}

/// A number that is not one of the four trade labels.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error(
    "unknown trade label (got {volume} vol): must be 10, 20, 30 or 40 vol (state any other strength in % w/w, % w/v or \
     volumes)"
)]
pub struct UnknownLabel {
    /// The number that was given.
    pub volume: f64,
}

impl TradeLabel {
    /// All four, weakest first.
    pub const ALL: [Self; 4] = [Self::Vol10, Self::Vol20, Self::Vol30, Self::Vol40];

    /// Takes the number on the label: 10, 20, 30 or 40.
    ///
    /// # Errors
    ///
    /// [`UnknownLabel`] for any other number.
    pub fn from_vol(volume: f64) -> Result<Self, UnknownLabel> {
        Self::ALL.into_iter().find(|label| f64::from(label.vol()) == volume).ok_or(UnknownLabel { volume })
    }

    /// The number on the label, in vol.
    #[must_use]
    pub const fn vol(self) -> u8 {
        match self {
            Self::Vol10 => 10,
            Self::Vol20 => 20,
            Self::Vol30 => 30,
            Self::Vol40 => 40,
        }
    }

    /// The percent that the trade pairs with the number, read neither as w/w nor as w/v.
    #[must_use]
    pub const fn percent(self) -> u8 {
        self.vol() / 10 * 3
    }
}

impl std::fmt::Display for TradeLabel {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} vol label", self.vol())
    }
}
