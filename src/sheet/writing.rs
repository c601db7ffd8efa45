use crate::{
    colour::Level,
    money::{Money, MoneyStyle},
    quantity::{Mass, MassFraction},
    service::Start,
    shop::{Country, Habits},
    source::Interval,
    text::{amount, number},
};
use jiff::civil::{Date, DateTime};

/// Grams in an ounce of mass: a sixteenth of the pound of 453.592 37 g.
///
/// # Source
///
/// [NIST Handbook 44](crate::source::citations::mix::NIST_HANDBOOK_44_C), Appendix C.
const G_PER_OUNCE: f64 = 453.592_37 / 16.0;

/// Percent for one volume on a label, by the trade's convention.
const PERCENT_PER_VOLUME: f64 = 0.3;

/// Writes what a sheet shows in the way of the shop.
#[derive(Clone, Copy)]
pub(super) struct Writing {
    habits: Habits,
    money: Option<MoneyStyle>,
}

impl Writing {
    pub(super) fn of(habits: Habits) -> Self {
        Self { habits, money: habits.country.map(amounts) }
    }

    /// A day, always with two digits for day and month.
    pub(super) fn date(self, day: Date) -> String {
        let pattern = match self.habits.country {
            Some(Country::UnitedStates) => "%m/%d/%Y",
            Some(
                Country::Australia
                | Country::Belgium
                | Country::Spain
                | Country::France
                | Country::UnitedKingdom
                | Country::Ireland
                | Country::Italy
                | Country::NewZealand
                | Country::Portugal,
            ) => "%d/%m/%Y",
            Some(
                Country::Austria
                | Country::Switzerland
                | Country::Germany
                | Country::Denmark
                | Country::Finland
                | Country::Norway
                | Country::Poland,
            ) => "%d.%m.%Y",
            Some(Country::Czechia) => "%d. %m. %Y",
            Some(Country::Netherlands) => "%d-%m-%Y",
            Some(Country::China | Country::Japan) => "%Y/%m/%d",
            Some(Country::Canada | Country::Sweden) | None => "%Y-%m-%d",
        };
        day.strftime(pattern).to_string()
    }

    /// A time of day, to the minute.
    pub(super) fn time(self, at: DateTime) -> String {
        let pattern = match self.habits.country {
            Some(Country::UnitedStates | Country::Australia | Country::Canada | Country::NewZealand) => "%-I:%M %P",
            Some(Country::Denmark | Country::Finland) => "%H.%M",
            _ => "%H:%M",
        };
        at.strftime(pattern).to_string()
    }

    /// The start of a service.
    pub(super) fn start(self, start: Start) -> String {
        match start {
            Start::Day(day) => self.date(day),
            // Seconds are stated so seldom that they are shown as they are.
            Start::At(at) if at.second() != 0 => format!("{} {}", self.date(at.date()), at.strftime("%H:%M:%S")),
            Start::At(at) => format!("{} {}", self.date(at.date()), self.time(at)),
        }
    }

    /// An amount of money: as the country writes its own currency, and with the code where it is another.
    pub(super) fn money(self, money: Money) -> String {
        self.money.map_or_else(|| money.to_string(), |style| style.write(money))
    }

    /// The style of that, for a picture.
    pub(super) const fn style(self) -> Option<MoneyStyle> {
        self.money
    }

    /// Grams, and ounces beside them where the shop wants them.
    pub(super) fn grams(self, mass: Mass) -> String {
        let grams = format!("{} g", amount(mass, 2));
        if self.habits.ounces { format!("{grams} = {:.2} oz", mass.g() / G_PER_OUNCE) } else { grams }
    }

    /// The label that the trade gives a strength, in brackets, where the shop wants it.
    pub(super) fn label(self, strength: &Interval<MassFraction>) -> String {
        let percent = strength.best().ww_percent();
        if !self.habits.volume_labels || percent <= 0.0 {
            return String::new();
        }
        format!(" ({} vol by the label)", number(percent / PERCENT_PER_VOLUME, 1))
    }

    /// The name of a level, where the shop wants it and the list has one.
    pub(super) fn level_name(self, level: Level) -> Option<String> {
        Some(level.name(self.habits.level_names?)?.value.to_string())
    }

    /// The names of these levels, each once, and the list that they are from.
    pub(super) fn level_names(self, levels: impl Iterator<Item = Level>) -> Option<String> {
        let mut levels: Vec<Level> = levels.collect();
        levels.sort_by(|a, b| a.number().total_cmp(&b.number()));
        levels.dedup();
        let named = |level: &Level| Some(format!("{} {}", number(level.number(), 1), self.level_name(*level)?));
        let names: Vec<_> = levels.iter().filter_map(named).collect();
        let list = self.habits.level_names?;
        (!names.is_empty()).then(|| format!("Levels by the {list} list: {}.", names.join(", ")))
    }

    /// What the reader has to know about what stands beside grams and percent.
    pub(super) fn note(self) -> Option<String> {
        let ounces = "oz are ounces of mass (28.35 g), not of volume";
        let label = "vol by the label is the trade's number (10 for 3 %), not measured oxygen";
        match (self.habits.ounces, self.habits.volume_labels) {
            (true, true) => Some(format!("Weigh the grams: {ounces}; {label}.")),
            (true, false) => Some(format!("Weigh the grams: {ounces}.")),
            (false, true) => Some(format!("Strengths count in percent: {label}.")),
            (false, false) => None,
        }
    }
}

/// How a country writes amounts of its own currency.
///
/// # Source
///
/// [Unicode CLDR](crate::source::citations::trade::UNICODE_CLDR); dates and times too.
const fn amounts(country: Country) -> MoneyStyle {
    const fn before(currency: &'static str, symbol: &'static str, gap: &'static str) -> MoneyStyle {
        MoneyStyle { currency, symbol, before: true, gap, group: ",", point: '.' }
    }
    const fn after(currency: &'static str, symbol: &'static str, group: &'static str) -> MoneyStyle {
        MoneyStyle { currency, symbol, before: false, gap: " ", group, point: ',' }
    }
    match country {
        Country::Austria | Country::Belgium | Country::Netherlands => {
            MoneyStyle { group: ".", point: ',', ..before("EUR", "€", " ") }
        }
        Country::Australia => before("AUD", "$", ""),
        Country::Canada => before("CAD", "$", ""),
        Country::Switzerland => MoneyStyle { group: "’", ..before("CHF", "CHF", " ") },
        Country::China => before("CNY", "¥", ""),
        Country::Czechia => after("CZK", "Kč", " "),
        Country::Germany | Country::Spain | Country::Italy => after("EUR", "€", "."),
        Country::Denmark => after("DKK", "kr.", "."),
        Country::Finland | Country::France | Country::Portugal => after("EUR", "€", " "),
        Country::UnitedKingdom => before("GBP", "£", ""),
        Country::Ireland => before("EUR", "€", ""),
        Country::Japan => before("JPY", "￥", ""),
        Country::Norway => after("NOK", "kr", " "),
        Country::NewZealand => before("NZD", "$", ""),
        Country::Poland => after("PLN", "zł", " "),
        Country::Sweden => after("SEK", "kr", " "),
        Country::UnitedStates => before("USD", "$", ""),
    }
}
