use super::PricedTable;
use crate::{
    business::{SalesMixItem, SalesMixPlan, sales_mix_target},
    money::{Money, MoneyError},
};

impl PricedTable {
    /// How many of each service, in the mix they are sold in, cover the fixed costs of a period and leave a profit.
    ///
    /// Wages and rent are fixed for the period, so they belong into `fixed`; the variable cost of a service is its
    /// product, developer, consumables, laundry and card fee.
    ///
    /// # Errors
    ///
    /// As [`sales_mix_target`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::{parse_csv, price_services}, money::Money, reader::Format, shop};
    ///
    /// let shop = shop::parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?;
    /// let business = shop::Shop::new(&shop)?.business()?;
    /// let text = std::fs::read_to_string("examples/juniper_and_tide_services.csv")?;
    /// let list = parse_csv(&text, business.currency)?;
    /// let table = price_services(&list, &business)?;
    ///
    /// let euros = |text: &str| Money::parse(text, business.currency);
    /// let plan = table.sales_needed(euros("14500.00")?, euros("1000.00")?)?;
    /// assert!(!plan.left_over.is_negative());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn sales_needed(&self, fixed: Money, profit: Money) -> Result<SalesMixPlan, MoneyError> {
        let item = |line: &super::PricedLine| {
            let parts = [line.product, line.developer, line.consumables, line.laundry, line.card_fee];
            let variable = Money::total(parts, line.cost.currency())?;
            Ok(SalesMixItem { what: line.name(), price: line.net, variable, weight: line.sold.into() })
        };
        let items = self.lines.iter().map(item).collect::<Result<Vec<_>, MoneyError>>()?;
        sales_mix_target(fixed, profit, &items)
    }
}
