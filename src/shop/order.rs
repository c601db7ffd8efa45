use super::Shop;
use crate::{
    business::{Reorder, StockLevel, list::Taken},
    money::{Measure, MoneyError, PackPrice},
    quantity::Mass,
    source::TracedResult,
};
use rust_decimal::Decimal;
use serde::Serialize;

/// Over how many days things were used, and for how many they must last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OrderDays {
    /// The days in which what is in the list was sold.
    pub sold_in: u32,
    /// From order to delivery.
    pub lead: u32,
    /// How long a delivery should last.
    pub cover: u32,
    /// Of how many days' use is kept for bad days.
    pub reserve: u32,
}

/// One product of the shop: how fast it goes, and whether to order it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProductOrder {
    /// The product.
    pub product: String,
    /// Used on an average day, waste included.
    #[serde(rename = "daily_use_g")]
    pub daily_use: Mass,
    /// On the shelf, where the shop says so.
    #[serde(rename = "in_hand_g")]
    pub in_hand: Option<Mass>,
    /// What a pack holds, where the shop says so.
    #[serde(rename = "pack_g")]
    pub pack: Option<Mass>,
    /// How many days the stock in hand lasts, unrounded.
    pub stock_days: Option<Decimal>,
    /// When to order and how much; absent where `in_hand_g`, or `pack_g` with a price, is not stated.
    pub reorder: Option<Reorder>,
}

impl ProductOrder {
    /// How the order comes about, with the days that it was made for; empty where the shop does not say what is in hand or in a
    /// pack.
    ///
    /// # Errors
    ///
    /// [`MoneyError`], as of [`StockLevel::reorder`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, shop::{OrderDays, ProductOrder}};
    ///
    /// let days = OrderDays { sold_in: 30, lead: 5, cover: 14, reserve: 3 };
    /// let (daily_use, in_hand) = (Mass::from_g(120.0)?, None);
    /// let powder =
    ///     ProductOrder { product: "powder".into(), daily_use, in_hand, pack: None, stock_days: None, reorder: None };
    /// assert!(powder.trail(days)?.is_empty());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn trail(&self, days: OrderDays) -> Result<Vec<TracedResult>, MoneyError> {
        let (Some(in_hand), Some(pack), Some(_)) = (self.in_hand, self.pack, &self.reorder) else {
            return Ok(Vec::new());
        };
        let too_large = |_| MoneyError::TooLarge { field: "use" };
        let reserve = self.daily_use.times(f64::from(days.reserve)).map_err(too_large)?;
        let stock = StockLevel {
            on_hand: in_hand.into(),
            on_order: Mass::ZERO.into(),
            daily_use: self.daily_use.into(),
            reserve: reserve.into(),
        };
        let mut trail = stock.trail(days.lead, days.cover, pack.into())?;
        for one in &mut trail {
            one.what = format!("{}: {}", self.product, one.what);
        }
        Ok(trail)
    }
}

impl Shop {
    /// What to order of the products that a list of services takes, in the order given.
    ///
    /// What is ordered and not yet delivered the shop does not know: leave those products out of the order by hand.
    ///
    /// # Units
    ///
    /// Masses in g, times in days.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OutOfRange`] for no days at all; [`MoneyError::TooLarge`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::Taken, quantity::Mass, reader::Format, shop::{OrderDays, Shop, parse_shop}};
    ///
    /// let text = "currency = \"EUR\"\n[[lightener]]\nname = \"powder\"\nratio = \"1:2\"\nin_hand_g = 900\npack_g = 500\n\
    ///             price = \"31.50\"";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// let taken = [Taken { product: "powder".into(), mass: Mass::from_g(3600.0)? }];
    /// let days = OrderDays { sold_in: 30, lead: 5, cover: 14, reserve: 3 };
    /// let powder = &shop.orders(&taken, days)?[0];
    /// assert_eq!(powder.daily_use.g(), 120.0);
    /// // 8 days at 120 g are 960 g, and 900 g are there; 22 days need 2640 g: four packs.
    /// assert_eq!(powder.reorder.as_ref().map(|order| (order.due, order.packs)), Some((true, 4)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Source
    ///
    /// As [`StockLevel::reorder`].
    pub fn orders(&self, taken: &[Taken], days: OrderDays) -> Result<Vec<ProductOrder>, MoneyError> {
        if days.sold_in == 0 {
            let allowed = "at least 1";
            return Err(MoneyError::OutOfRange {
                field: "time of the list",
                value: Decimal::ZERO,
                unit: "days",
                allowed,
            });
        }
        taken.iter().map(|one| self.order(one, days)).collect()
    }

    fn order(&self, taken: &Taken, days: OrderDays) -> Result<ProductOrder, MoneyError> {
        let too_large = |_| MoneyError::TooLarge { field: "use" };
        let a_day = |count: u32| taken.mass.times(f64::from(count) / f64::from(days.sold_in)).map_err(too_large);
        let facts = self.facts(&taken.product);
        let pack = facts.and_then(|facts| facts.pack_price).map(PackPrice::contents);
        let mut order = ProductOrder {
            product: taken.product.clone(),
            daily_use: a_day(1)?,
            in_hand: facts.and_then(|facts| facts.in_hand),
            pack: pack.and_then(|pack| if let Measure::Mass(mass) = pack { Some(mass) } else { None }),
            stock_days: None,
            reorder: None,
        };
        let Some(in_hand) = order.in_hand else { return Ok(order) };
        let stock = StockLevel {
            on_hand: in_hand.into(),
            on_order: Mass::ZERO.into(),
            daily_use: order.daily_use.into(),
            reserve: a_day(days.reserve)?.into(),
        };
        order.stock_days = stock.days()?;
        order.reorder = pack.map(|pack| stock.reorder(days.lead, days.cover, pack)).transpose()?;
        Ok(order)
    }
}
