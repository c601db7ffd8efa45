use super::{shape::TermsEntry, stock_facts::amount};
use crate::{
    business::list::Business,
    money::{
        CardFee, CardRate, Currency, Labour, Margin, Markup, Money, MoneyError, OnCosts, Overhead, PriceEnding,
        PriceRule, PriceTarget, ProductiveShare, Rounding, TaxRate, Toward,
    },
    quantity::Duration,
    reader::{InField, Problems},
};
use rust_decimal::Decimal;

/// What an hour costs and how prices are set, as far as the shop says.
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// What hands-on time costs.
    pub labour: Option<Labour>,
    /// What chair time costs.
    pub overhead: Option<Overhead>,
    /// What a price must achieve.
    pub target: Option<PriceTarget>,
    /// The tax on top.
    pub tax: Option<TaxRate>,
    /// What the card terminal keeps.
    pub card: Option<CardFee>,
    /// The prices that are allowed on the list.
    pub ending: Option<(PriceEnding, Toward)>,
    /// How each line becomes whole minor units.
    pub rounding: Rounding,
    /// Fields that would raise a cost and are not stated, for example `on_costs_percent` beside a wage.
    pub not_stated: Vec<&'static str>,
}

impl Default for Terms {
    fn default() -> Self {
        Self {
            labour: None,
            overhead: None,
            target: None,
            tax: None,
            card: None,
            ending: None,
            rounding: Rounding::MidpointAwayFromZero,
            not_stated: Vec::new(),
        }
    }
}

impl Terms {
    pub(super) fn read(entry: &TermsEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let read = Read { entry, currency, field };
        let mut not_stated = Vec::new();
        let target = match (entry.margin_percent, entry.markup_percent) {
            (Some(margin), _) => {
                Some(PriceTarget::Margin(read.percent("margin_percent", margin, Margin::from_percent)?))
            }
            (None, Some(markup)) => {
                Some(PriceTarget::Markup(read.percent("markup_percent", markup, Markup::from_percent)?))
            }
            (None, None) => read.money("per_chair_h", entry.per_chair_h.as_deref())?.map(PriceTarget::PerChairHour),
        };
        let tax = entry.tax_percent.map(|tax| read.percent("tax_percent", tax, TaxRate::from_percent)).transpose()?;
        Ok(Self {
            labour: read.labour(&mut not_stated)?,
            overhead: read.overhead()?,
            target,
            tax,
            card: read.card()?,
            ending: read.ending()?,
            rounding: entry.rounding.unwrap_or(Rounding::MidpointAwayFromZero),
            not_stated,
        })
    }

    /// How prices are set; `None` without a target. Without a stated tax there is none.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "currency = \"EUR\"\n[terms]\nmargin_percent = 25";
    /// assert!(Shop::new(&parse_shop(text, Format::Toml)?)?.terms.rule().is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn rule(&self) -> Option<PriceRule> {
        let tax = self.tax.or_else(|| TaxRate::from_percent(Decimal::ZERO).ok())?;
        let (target, card, ending, rounding) = (self.target?, self.card, self.ending, self.rounding);
        Some(PriceRule { target, tax, card, ending, rounding })
    }

    /// The terms for costing a list of services: wage, overhead and a target must be stated.
    ///
    /// # Errors
    ///
    /// [`Problems`] names every field that is missing.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "currency = \"EUR\"\n[terms]\nwage_per_h = \"17.50\"\noverhead_per_h = \"19.20\"\nmargin_percent = 25";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// assert_eq!(shop.business()?.currency.code(), "EUR");
    /// # Ok::<(), foilwork::reader::Problems>(())
    /// ```
    pub fn business(&self, currency: Option<Currency>) -> Result<Business, Problems> {
        let mut missing = Problems::default();
        let mut lacks = |field: &str, message: &str| missing.say(None, field, format!("missing: {message}"));
        if currency.is_none() {
            lacks("currency", "say in which currency the prices are, for example \"EUR\"");
        }
        if self.labour.is_none() {
            lacks("terms.wage_per_h", "a service costs the hours that are worked on it");
        }
        if self.overhead.is_none() {
            lacks("terms.overhead_per_h", "give this, or `overhead` with `chairs` and `productive_h_per_chair`");
        }
        if self.target.is_none() {
            lacks("terms.margin_percent", "give this, `markup_percent` or `per_chair_h`");
        }
        match (currency, self.labour, self.overhead, self.rule()) {
            (Some(currency), Some(labour), Some(overhead), Some(rule)) => {
                Ok(Business { currency, labour, overhead, rule })
            }
            _ => Err(missing),
        }
    }
}

/// One table of terms while it is read.
struct Read<'t> {
    entry: &'t TermsEntry,
    currency: Option<Currency>,
    field: &'t str,
}

impl Read<'_> {
    fn path(&self, key: &str) -> String {
        format!("{}.{key}", self.field)
    }

    fn money(&self, key: &str, text: Option<&str>) -> Result<Option<Money>, Problems> {
        let Some(text) = text else { return Ok(None) };
        let currency = self.currency.ok_or("there is no currency: say it in `currency`").in_field(&self.path(key))?;
        amount(text, currency).map(Some).in_field(&self.path(key))
    }

    fn percent<T>(
        &self,
        key: &str,
        percent: f64,
        take: impl Fn(Decimal) -> Result<T, MoneyError>,
    ) -> Result<T, Problems> {
        let percent = Decimal::try_from(percent).in_field(&self.path(key))?;
        take(percent).in_field(&self.path(key))
    }

    fn hours(&self, key: &str, hours: f64) -> Result<Duration, Problems> {
        Duration::from_h(hours).in_field(&self.path(key))
    }

    fn labour(&self, not_stated: &mut Vec<&'static str>) -> Result<Option<Labour>, Problems> {
        let entry = self.entry;
        let Some(wage) = self.money("wage_per_h", entry.wage_per_h.as_deref())? else { return Ok(None) };
        if entry.on_costs_percent.is_none() {
            not_stated.push("on_costs_percent");
        }
        let on_costs = entry.on_costs_percent.unwrap_or(0.0);
        let on_costs = self.percent("on_costs_percent", on_costs, OnCosts::from_percent)?;
        if let (Some(paid), Some(productive)) = (entry.paid_h, entry.productive_h) {
            let (paid, productive) = (self.hours("paid_h", paid)?, self.hours("productive_h", productive)?);
            return Labour::new(wage, on_costs, paid, productive).map(Some).in_field(&self.path("productive_h"));
        }
        if entry.productive_percent.is_none() {
            not_stated.push("productive_percent");
        }
        let key = "productive_percent";
        let share = self.percent(key, entry.productive_percent.unwrap_or(100.0), ProductiveShare::from_percent)?;
        Labour::with_productive_share(wage, on_costs, share).map(Some).in_field(&self.path("wage_per_h"))
    }

    fn overhead(&self) -> Result<Option<Overhead>, Problems> {
        let entry = self.entry;
        if let Some(per_h) = self.money("overhead_per_h", entry.overhead_per_h.as_deref())? {
            return Overhead::per_hour(per_h).map(Some).in_field(&self.path("overhead_per_h"));
        }
        let overhead = self.money("overhead", entry.overhead.as_deref())?;
        let (Some(overhead), Some(chairs), Some(hours)) = (overhead, entry.chairs, entry.productive_h_per_chair) else {
            return Ok(None);
        };
        let hours = self.hours("productive_h_per_chair", hours)?;
        Overhead::new(overhead, chairs, hours).map(Some).in_field(&self.path("overhead"))
    }

    fn card(&self) -> Result<Option<CardFee>, Problems> {
        let fixed = self.money("card_fixed", self.entry.card_fixed.as_deref())?;
        let (Some(currency), true) = (self.currency, fixed.is_some() || self.entry.card_percent.is_some()) else {
            return Ok(None);
        };
        let rate = self.percent("card_percent", self.entry.card_percent.unwrap_or(0.0), CardRate::from_percent)?;
        CardFee::new(rate, fixed.unwrap_or(Money::zero(currency))).map(Some).in_field(&self.path("card_fixed"))
    }

    fn ending(&self) -> Result<Option<(PriceEnding, Toward)>, Problems> {
        let ending = self.money("price_ending", self.entry.price_ending.as_deref())?;
        let Some(step) = self.money("price_step", self.entry.price_step.as_deref())? else { return Ok(None) };
        let ending = PriceEnding::new(step, ending.unwrap_or(Money::zero(step.currency())));
        let ending = ending.in_field(&self.path("price_ending"))?;
        Ok(Some((ending, self.entry.price_toward.unwrap_or(Toward::Up))))
    }
}
