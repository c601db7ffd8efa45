use super::{
    blend::{BlendError, KnownMass, blend_two},
    round::round_to_scale,
};
use crate::{
    quantity::{Mass, MassFraction},
    scale::WeighError,
    source::Interval,
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
    /// What the stocks are weakened with: a diluent of 0 % w/w, or a weaker developer.
    #[serde(rename = "weaker_ww_percent")]
    pub weaker: Interval<MassFraction>,
    /// Stocks in the order given, and for each of them the targets in the order given.
    pub rows: Vec<DilutionRow>,
}

/// One stock weakened to one target.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DilutionRow {
    /// Strength of the bottle.
    #[serde(rename = "stock_ww_percent")]
    pub stock: Interval<MassFraction>,
    /// Strength wanted.
    #[serde(rename = "target_ww_percent")]
    pub target: Interval<MassFraction>,
    /// What to weigh; missing when the target is out of reach or the scale too coarse for it.
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
    /// Diluent, or weaker developer, on the scale.
    #[serde(rename = "diluent_g")]
    pub diluent: Mass,
    /// Strength that these masses really give, with the bounds of what they are made of.
    #[serde(rename = "strength_ww_percent")]
    pub strength: Interval<MassFraction>,
    /// Parts of stock and of diluent as a person mixes them, `[3, 1]`; missing where no small whole numbers do.
    pub parts: Option<[u32; 2]>,
    /// Parts of diluent to one part of stock, by mass and before rounding; missing when it is all diluent.
    pub diluent_parts: Option<f64>,
}

/// Builds the table of a range of stocks and targets for one bowl size and one scale, with a diluent or a weaker
/// developer.
///
/// A target that cannot be reached gives a row that says so, not an error: a chart has such corners. Best estimates decide
/// what is weighed; the bounds of a label or of a strength by volume stay with the result.
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
/// let ww = |values: &[f64]| values.iter().map(|&v| MassFraction::from_ww_percent(v)).collect::<Result<Vec<_>, _>>();
/// let (total, division) = (Mass::from_g(100.0)?, Mass::from_g(1.0)?);
/// let table = dilution_table(&ww(&[12.0, 9.0])?, &ww(&[6.0, 3.0])?, MassFraction::ZERO, total, division)?;
/// assert_eq!(table.rows.len(), 4);
/// let row = table.rows[3].weigh.as_ref().ok_or("9 % reaches 3 %")?;
/// assert_eq!((row.stock.g(), row.diluent.g(), row.parts), (33.0, 67.0, Some([1, 2])));
/// assert_eq!(row.strength.best().ww_percent(), 2.97);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide.
pub fn dilution_table<S: Copy + Into<Interval<MassFraction>>>(
    stocks: &[S],
    targets: &[S],
    weaker: impl Into<Interval<MassFraction>>,
    total: Mass,
    division: Mass,
) -> Result<DilutionTable, WeighError> {
    let weaker = weaker.into();
    let mut rows = Vec::with_capacity(stocks.len() * targets.len());
    for &stock in stocks {
        for &target in targets {
            let (stock, target) = (stock.into(), target.into());
            let (weigh, refused) = match weigh(stock, target, weaker, total, division)? {
                Ok(weighed) => (Some(weighed), None),
                Err(refused) => (None, Some(refused)),
            };
            rows.push(DilutionRow { stock, target, weigh, refused });
        }
    }
    Ok(DilutionTable { total, division, weaker, rows })
}

/// The row itself: outside, what is wrong with the whole table; inside, with this pair.
fn weigh(
    stock: Interval<MassFraction>,
    target: Interval<MassFraction>,
    weaker: Interval<MassFraction>,
    total: Mass,
    division: Mass,
) -> Result<Result<WeighedDilution, String>, WeighError> {
    let blend = match blend_two(stock.best(), weaker.best(), target.best(), KnownMass::Total(total)) {
        Ok(blend) => blend,
        Err(refused) => return Ok(Err(refused.to_string())),
    };
    let weighed = round_to_scale(&[(stock, blend.first), (weaker, blend.second)], division)?;
    let [stock_mass, diluent] = weighed.masses.as_slice() else {
        return Ok(Err(BlendError::Nothing { what: "total" }.to_string()));
    };
    let vanishes = |wanted: Mass, weighed: Mass| wanted > Mass::ZERO && weighed == Mass::ZERO;
    if vanishes(blend.first, *stock_mass) || vanishes(blend.second, *diluent) {
        return Ok(Err(format!("a part rounds to nothing on a scale of {division}: use a finer scale or make more")));
    }
    let [from, to, with] = [stock, target, weaker].map(|strength| strength.best().ww_percent());
    let diluent_parts = (blend.first > Mass::ZERO).then(|| if to == with { 0.0 } else { (from - to) / (to - with) });
    Ok(Ok(WeighedDilution {
        stock: *stock_mass,
        diluent: *diluent,
        strength: weighed.strength,
        parts: diluent_parts.and_then(small_parts),
        diluent_parts,
    }))
}

/// The smallest whole numbers, together at most 20, that are a ratio to half a percent.
fn small_parts(diluent_parts: f64) -> Option<[u32; 2]> {
    (1..=20_u32).flat_map(|together| (1..=together).map(move |stock| [stock, together - stock])).find(
        |[stock, diluent]| {
            let ratio = f64::from(*diluent) / f64::from(*stock);
            (ratio - diluent_parts).abs() <= 0.005 * diluent_parts
        },
    )
}
