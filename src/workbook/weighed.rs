//! The columns that round the parts of a bowl to the scale: whole divisions that add up, with the least harm to the ratio.

use super::{
    WorkbookError,
    cells::{at, down, nearest},
    page::Page,
};

/// Where the parts of a bowl stand, and the cells their rounding needs.
pub(super) struct Parts<'c> {
    /// The rows of the parts.
    pub(super) first: u32,
    pub(super) last: u32,
    /// The column with the exact masses.
    pub(super) exact: u16,
    /// The first of four columns beside the print area.
    pub(super) beside: u16,
    /// The cell of the scale's division.
    pub(super) division: &'c str,
    /// What stands in the column of the exact masses, in g, and what the scale counts in.
    pub(super) masses_g: &'c [f64],
    pub(super) division_g: f64,
}

impl Parts<'_> {
    /// What the scale is to show for the part of the next row, from the columns beside.
    ///
    /// Each part goes to its nearest division; where these do not add up to the bowl, the parts that it harms least are moved
    /// by one, the first of equals first.
    pub(super) fn weigh(&self, page: &mut Page, column: u16, came: f64) -> Result<(), WorkbookError> {
        let row = page.row;
        let own_g = self.masses_g.get((row - self.first) as usize).copied().unwrap_or(0.0);
        let total_g: f64 = self.masses_g.iter().sum();
        let units = (total_g / self.division_g).round_ties_even();
        let share_of = |mass_g: f64| if total_g > 0.0 { units * mass_g / total_g } else { 0.0 };
        let lacks = units - self.masses_g.iter().map(|&mass_g| share_of(mass_g).round_ties_even()).sum::<f64>();
        let (shared, rounded) = (share_of(own_g), share_of(own_g).round_ties_even());
        let sign = if lacks == 0.0 { 0.0 } else { lacks.signum() };
        let all = |column: u16| down(column, self.first, self.last);
        let [quota, near, harm, moved] = [0, 1, 2, 3].map(|more| self.beside + more);
        let (exact, division) = (all(self.exact), self.division);
        let counted = format!("ROUND(SUM({exact})/{division},9)");
        let whole = nearest(&counted);
        let missing = format!("({whole}-SUM({}))", all(near));
        let (own, share) = (at(row, self.exact), at(row, quota));
        page.formula(quota, &format!("IF(SUM({exact})=0,0,{whole}*{own}/SUM({exact}))"), shared, 6)?;
        page.formula(near, &nearest(&share), rounded, 0)?;
        let after = format!("ABS({}+SIGN({missing})-{share})", at(row, near));
        page.formula(
            harm,
            &format!("IF({share}>0,ROUND({after}/{share},12),1000000)"),
            if shared > 0.0 { (rounded + sign - shared).abs() / shared } else { 1e6 },
            6,
        )?;
        let own_harm = at(row, harm);
        let smaller = format!("SUMPRODUCT(({}<{own_harm})*1)", all(harm));
        let before = format!("SUMPRODUCT(({}={own_harm})*1)", down(harm, self.first, row));
        page.formula(
            moved,
            &format!("IF({smaller}+{before}<=ABS({missing}),SIGN({missing}),0)"),
            (came / self.division_g).round() - rounded,
            0,
        )?;
        let weighed = format!("({}+{})*{division}", at(row, near), at(row, moved));
        page.formula(column, &weighed, came, decimals(self.division_g))
    }
}

/// A row that says whether a part rounds to nothing; `came` is absent where no part is there.
pub(super) fn vanishes(page: &mut Page, exact: &str, weighed: &str, came: Option<bool>) -> Result<(), WorkbookError> {
    const LOST: &str = "a part rounds to NOTHING: use a finer scale or make more";
    const SHOWN: &str = "no part rounds away";
    page.text(0, "on this scale")?;
    let formula =
        format!("IF(SUM({exact})=0,\"-\",IF(SUMPRODUCT(({exact}>0)*({weighed}=0))>0,\"{LOST}\",\"{SHOWN}\"))");
    page.alarm(1, &formula, came.map_or("-", |lost| if lost { LOST } else { SHOWN }))?;
    page.row += 1;
    Ok(())
}

/// The decimals that a scale of so many grams shows, for one part.
pub(super) fn decimals(division_g: f64) -> usize {
    (0..6)
        .find(|decimals| {
            let scaled = division_g * 10_f64.powi(*decimals);
            (scaled - scaled.round()).abs() < 1e-9
        })
        .and_then(|decimals| usize::try_from(decimals).ok())
        .unwrap_or(6)
}
