//! A bowl whose size may be changed, and every part follows.

use super::{
    WorkbookError,
    cells::{at, down, fixed},
    page::{Allowed, Page},
    weighed::{Parts, decimals},
};
use crate::{quantity::Mass, service::WeighedPart};

const GRAMS: usize = 2;
const PERCENT: usize = 2;

/// How the parts come to whole divisions of the scale.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Rounded {
    /// Each by itself.
    Each,
    /// So that they add up to the bowl, with the least harm to the ratio.
    Together,
}

/// What goes into it as planned.
pub(super) struct SizedBowl<'b> {
    pub(super) heading: &'b str,
    pub(super) parts: &'b [WeighedPart],
    pub(super) total: Mass,
    /// As stated, at least and at most, in % w/w.
    pub(super) on_hair: [f64; 2],
    pub(super) rounded: Rounded,
    pub(super) division_g: f64,
}

impl SizedBowl<'_> {
    /// Its rows. Its exact and its weighed masses stand in the two ranges that come back.
    pub(super) fn write(&self, page: &mut Page) -> Result<(String, String), WorkbookError> {
        let masses: Vec<f64> = self.parts.iter().map(|part| part.exact.g()).collect();
        let (whole, shown): (f64, usize) = (masses.iter().sum(), decimals(self.division_g));
        page.text(0, "in this bowl, g")?;
        page.input(1, whole, GRAMS, Allowed::GRAMS)?;
        let size = fixed(page.row, 1);
        page.row += 1;
        page.heading(&[
            self.heading,
            "share, %",
            "exact, g",
            "WEIGH, g",
            "scale shows, g",
            "peroxide as stated, at least, % w/w",
            "as stated, at most, % w/w",
        ])?;
        let (first, last) = (page.row, page.row + (masses.len() as u32).saturating_sub(1));
        let (division, division_g) = ("division_g", self.division_g);
        let together = Parts { first, last, exact: 2, beside: 7, division, masses_g: &masses, division_g };
        for part in self.parts {
            let exact = part.exact.g();
            page.text(0, &part.product)?;
            page.number(1, if whole > 0.0 { 100.0 * exact / whole } else { 0.0 }, 4)?;
            page.formula(2, &format!("{size}*{}/100", at(page.row, 1)), exact, GRAMS)?;
            match self.rounded {
                Rounded::Together => together.weigh(page, 3, part.weigh.g())?,
                Rounded::Each => {
                    let weigh = format!("ROUND({}/{division},0)*{division}", at(page.row, 2));
                    page.formula(3, &weigh, part.weigh.g(), shown)?;
                }
            }
            page.formula(4, &format!("SUM({})", down(3, first, page.row)), part.scale_shows.g(), shown)?;
            page.number(5, part.peroxide.low().ww_percent(), PERCENT)?;
            page.number(6, part.peroxide.high().ww_percent(), PERCENT)?;
            page.row += 1;
        }
        let (exact, weighed) = (down(2, first, last), down(3, first, last));
        page.text(0, "bowl; ON THE HAIR as stated, % w/w")?;
        page.formula(2, &format!("SUM({exact})"), whole, GRAMS)?;
        page.formula(3, &format!("SUM({weighed})"), self.total.g(), shown)?;
        for (column, came) in [5, 6].into_iter().zip(self.on_hair) {
            let mixed = format!("SUMPRODUCT({weighed},{})", down(column, first, last));
            page.formula(column, &format!("IF(SUM({weighed})=0,0,{mixed}/SUM({weighed}))"), came, PERCENT)?;
        }
        page.row += 1;
        Ok((exact, weighed))
    }
}
