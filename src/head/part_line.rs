use super::Region;
use crate::choice::choice;

choice! {
    /// Where the hair is parted when it is worn.
    PartLine: "part" {
        /// No part: it is worn back or forward.
        None = "none",
        /// In the middle.
        Centre = "centre",
        /// On the guest's left.
        Left = "left",
        /// On the guest's right.
        Right = "right",
    }
}

/// Where a part ends towards the crown, on the map of the standard template.
const BACK_END: f64 = 7.5;

impl PartLine {
    /// How far from the left edge of the map it runs; none without a part. The map is 12 wide, the face at the top.
    #[must_use]
    pub(crate) const fn across(self) -> Option<f64> {
        match self {
            Self::None => None,
            Self::Centre => Some(6.0),
            Self::Left => Some(4.8),
            Self::Right => Some(7.2),
        }
    }

    /// Whether it runs through a region: from the front hairline to the crown, of what is seen from the front. Through none
    /// whose place on the map is not stated.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::{PartLine, Template};
    ///
    /// let template = Template::standard();
    /// let parted = template.regions().iter().filter(|region| PartLine::Left.runs_through(region));
    /// assert_eq!(parted.map(|region| region.name.as_str()).collect::<Vec<_>>(), ["front hairline", "front", "top"]);
    /// ```
    #[must_use]
    pub fn runs_through(self, region: &Region) -> bool {
        let crossed = |(x, [left, top, width, _]): (f64, [f64; 4])| {
            region.front && x >= left && x <= left + width && top < BACK_END
        };
        self.across().zip(region.place).is_some_and(crossed)
    }
}
