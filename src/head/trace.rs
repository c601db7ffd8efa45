use super::{Layout, LayoutError, Panel, Taking};
use crate::{
    source::{Basis, Interval, TracedInput, TracedResult},
    text::traced,
};

/// Rows down a panel, times foils beside each other.
pub(crate) const FOILS_FORMULA: &str =
    "whole ((height of a panel + left between) / (subsection + left between)) x foils in a row x panels";
const PICKS_FORMULA: &str = "whole ((width + gap) / (pick + gap))";

impl Layout {
    /// How the foils of a panel, and the strands picked in a row, come about.
    ///
    /// # Errors
    ///
    /// [`LayoutError`], as of [`on`](Self::on).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Layout, Panel}, quantity::Length};
    ///
    /// let panel = Panel { width: Length::from_cm(8.0)?, height: Length::from_cm(6.0)? };
    /// let trail = Layout::slice().trail_on(panel)?;
    /// assert_eq!((trail[0].what.as_str(), trail[0].unit.as_str()), ("foils", "foils"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trail_on(&self, panel: Panel) -> Result<Vec<TracedResult>, LayoutError> {
        let found = self.on(panel)?;
        let foils = found.foils.map(f64::from);
        let foils = TracedResult::new("foils", foils, "foils", FOILS_FORMULA, Basis::Derived).made_of([
            traced("height of a panel", Interval::exact(panel.height)),
            traced("subsection", self.subsection),
            traced("left between", self.left_between),
            TracedInput::exact("foils in a row", found.across, "foils"),
            TracedInput::exact("panels", 1, "panels"),
        ]);
        let Taking::Weave { pick, gap, .. } = self.taking else { return Ok(vec![foils]) };
        let picks = found.picks.map(f64::from);
        let picks = TracedResult::new("strands in a row", picks, "strands", PICKS_FORMULA, Basis::Derived).made_of([
            traced("width", Interval::exact(panel.width)),
            traced("pick", pick),
            traced("gap", gap),
        ]);
        Ok(vec![foils, picks])
    }
}
