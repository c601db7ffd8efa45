use super::{blend::BlendError, dilute::dilute, round::round_to_scale};
use crate::{
    quantity::{Mass, MassFraction},
    scale::WeighError,
};
use serde::Serialize;

/// A dilution table: one row for each stock and target, ready for a wall chart.
///
/// As plain data every name carries its unit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DilutionTable {
    /// Total of every row before rounding.
    #[serde(rename = "total_g")]
    pub total: Mass,
    /// What the scale counts in.
    #[serde(rename = "division_g")]
    pub division: Mass,
    /// Stocks in the order given, and for each of them the targets in the order given.
    pub rows: Vec<DilutionRow>,
}

/// One stock diluted to one target.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DilutionRow {
    /// Strength of the bottle.
    #[serde(rename = "stock_ww_percent")]
    pub stock: MassFraction,
    /// Strength wanted.
    #[serde(rename = "target_ww_percent")]
    pub target: MassFraction,
    /// What to weigh; missing when the target is above the stock.
    pub weigh: Option<WeighedDilution>,
    /// Why there is nothing to weigh.
    pub refused: Option<String>,
}

/// What a row says to weigh.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeighedDilution {
    /// Stock on the scale.
    #[serde(rename = "stock_g")]
    pub stock: Mass,
    /// Diluent on the scale.
    #[serde(rename = "diluent_g")]
    pub diluent: Mass,
    /// Strength that these masses really give.
    #[serde(rename = "strength_ww_percent")]
    pub strength: MassFraction,
    /// Parts of diluent to one part of stock, by mass and before rounding; missing when it is all diluent.
    pub diluent_parts: Option<f64>,
}

/// Builds the dilution table of a range of stocks and targets for one bowl size and one scale.
///
/// A target above its stock gives a row that says so, not an error: a chart has such corners.
///
/// # Units
///
/// Strengths in % w/w, masses in g.
///
/// # Errors
///
/// [`WeighError`] when the division is zero or coarser than the bowl.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::dilution_table, quantity::{Mass, MassFraction}};
///
/// let ww = |values: &[f64]| values.iter().map(|&v| MassFraction::from_percent_ww(v)).collect::<Result<Vec<_>, _>>();
/// let table = dilution_table(&ww(&[12.0, 9.0])?, &ww(&[6.0, 3.0])?, Mass::from_g(100.0)?, Mass::from_g(1.0)?)?;
/// assert_eq!(table.rows.len(), 4);
/// let row = table.rows[3].weigh.as_ref().ok_or("9 % reaches 3 %")?;
/// assert_eq!((row.stock.g(), row.diluent.g(), row.diluent_parts), (33.0, 67.0, Some(2.0)));
/// assert_eq!(row.strength.percent_ww(), 2.97);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn dilution_table(
    stocks: &[MassFraction],
    targets: &[MassFraction],
    total: Mass,
    division: Mass,
) -> Result<DilutionTable, WeighError> {
    let mut rows = Vec::with_capacity(stocks.len() * targets.len());
    for &stock in stocks {
        for &target in targets {
            let row = |weigh, refused| DilutionRow { stock, target, weigh, refused };
            rows.push(match weigh(stock, target, total, division)? {
                Ok(weighed) => row(Some(weighed), None),
                Err(refused) => row(None, Some(refused.to_string())),
            });
        }
    }
    Ok(DilutionTable { total, division, rows })
}

/// The row itself: outside, what is wrong with the whole table; inside, with this pair.
fn weigh(
    stock: MassFraction,
    target: MassFraction,
    total: Mass,
    division: Mass,
) -> Result<Result<WeighedDilution, BlendError>, WeighError> {
    let blend = match dilute(stock, target, total) {
        Ok(blend) => blend,
        Err(refused) => return Ok(Err(refused)),
    };
    let weighed = round_to_scale(&[(stock, blend.stock), (MassFraction::ZERO, blend.diluent)], division)?;
    let [stock_mass, diluent_mass] = weighed.masses.as_slice() else {
        return Ok(Err(BlendError::Nothing { what: "total" }));
    };
    Ok(Ok(WeighedDilution {
        stock: *stock_mass,
        diluent: *diluent_mass,
        strength: weighed.strength.best(),
        diluent_parts: (target > MassFraction::ZERO)
            .then(|| (stock.percent_ww() - target.percent_ww()) / target.percent_ww()),
    }))
}
