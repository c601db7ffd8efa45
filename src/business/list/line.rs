use super::{Packs, field::Fields, place::Place};
use crate::{
    choice::nearest,
    money::{CostSource, Currency, Money, PackPrice},
    quantity::{Duration, Mass},
    reader::Problems,
};
use serde::Serialize;

/// What a service takes from one kind of pack.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackUse {
    /// The pack and its price.
    pub pack: PackPrice,
    /// What goes on the head.
    pub used: Mass,
    /// What is mixed and thrown away.
    pub wasted: Mass,
}

impl PackUse {
    /// The same as the source of a cost line.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::PackUse, money::{CostSource, Currency, Money, PackPrice}, quantity::Mass};
    ///
    /// let g = Mass::from_g;
    /// let pack = PackPrice::new(Money::parse("26.40", Currency::from_code("EUR")?)?, g(500.0)?)?;
    /// let used = PackUse { pack, used: g(35.0)?, wasted: g(5.0)? };
    /// assert!(matches!(used.source(), CostSource::Supply { wasted: Some(_), .. }));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn source(&self) -> CostSource {
        CostSource::Supply { pack: self.pack, used: self.used.into(), wasted: Some(self.wasted.into()) }
    }
}

/// How much of a product of the shop is taken, waste included.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Taken {
    /// The product, by its name in the shop.
    pub product: String,
    /// How much.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
}

/// One service of a list.
#[derive(Debug, Clone, PartialEq)]
pub struct ServiceLine {
    /// The service, in the salon's words.
    pub service: String,
    /// The class of guest, where the list has classes.
    pub class: Option<String>,
    /// Colour, lightener or toner.
    pub product: Option<PackUse>,
    /// Developer.
    pub developer: Option<PackUse>,
    /// Foils, gloves, film for one service.
    pub consumables: Money,
    /// Towels and gowns for one service.
    pub laundry: Money,
    /// Time with hands on the guest.
    pub hands_on: Duration,
    /// Time the chair is taken, developing included.
    pub in_chair: Duration,
    /// The gross price on the list today; `None` to have one set by the rule.
    pub price: Option<Money>,
    /// How many were sold, for the totals.
    pub sold: u32,
    /// Of these, what it takes of the products that it names, for one service.
    pub takes: Vec<Taken>,
}

/// The columns of a list, in any order. `service`, `hands_on_min` and `chair_min` must be there; a pack needs its
/// name in the shop, or its price and mass, and what was used; everything else may be left out. Amounts are units of the
/// currency, masses g, times min.
pub const COLUMNS: &[&str] = &[
    "service",
    "class",
    "product",
    "product_g",
    "product_waste_g",
    "product_pack_price",
    "product_pack_g",
    "developer",
    "developer_g",
    "developer_waste_g",
    "developer_pack_price",
    "developer_pack_g",
    "consumables",
    "laundry",
    "hands_on_min",
    "chair_min",
    "price",
    "sold",
    "note",
];

/// Refuses column names that mean nothing here, so that a misspelt one is not silently left out.
pub(super) fn check_names<'a>(
    place: Place,
    names: impl Iterator<Item = &'a str>,
    columns: &[&str],
    problems: &mut Problems,
) {
    let mut seen: Vec<&str> = Vec::new();
    for name in names {
        if !columns.contains(&name) {
            let near = nearest(name, columns.iter().copied());
            let way_out = near.map_or_else(
                || format!("the columns are {}", columns.join(", ")),
                |column| format!("did you mean `{column}`?"),
            );
            place.say(problems, name, format!("unknown column: {way_out}"));
        } else if seen.contains(&name) {
            place.say(problems, name, "is there twice: keep one of them");
        }
        seen.push(name);
    }
}

/// Reads one row, whatever text it came from.
pub(super) fn read_line<'a>(
    place: Place,
    packs: &Packs,
    get: impl Fn(&str) -> Option<&'a str>,
    problems: &mut Problems,
) -> Option<ServiceLine> {
    let currency = packs.currency;
    let mut fields = Fields::new(place, get);
    let service = fields.name("service");
    let service = fields.required("service", service);
    let class = fields.name("class");
    let product = read_pack(&mut fields, packs, "product", PRODUCT);
    let developer = read_pack(&mut fields, packs, "developer", DEVELOPER);
    let nothing = Money::zero(currency);
    let consumables = fields.money("consumables", currency).unwrap_or(nothing);
    let laundry = fields.money("laundry", currency).unwrap_or(nothing);
    let hands_on = fields.quantity("hands_on_min", Duration::from_min);
    let hands_on = fields.required("hands_on_min", hands_on);
    let in_chair = fields.quantity("chair_min", Duration::from_min);
    let in_chair = fields.required("chair_min", in_chair);
    let price = fields.money("price", currency);
    let sold = fields.count("sold").unwrap_or(1);
    if let Some(chair) = in_chair.filter(|chair| chair.min() <= 0.0) {
        fields.problem("chair_min", format!("invalid chair time (got {chair}): must be more than nothing"));
    }
    let named = [("product", &product), ("developer", &developer)].map(|(name, pack)| {
        let (product, pack) = (fields.text(name)?.to_owned(), pack.as_ref()?);
        Some(Taken { product, mass: pack.used + pack.wasted })
    });
    let takes = named.into_iter().flatten().collect();
    problems.0.append(&mut fields.problems.0);
    let (service, hands_on, in_chair) = (service?, hands_on?, in_chair?);
    Some(ServiceLine {
        service,
        class,
        product,
        developer,
        consumables,
        laundry,
        hands_on,
        in_chair,
        price,
        sold,
        takes,
    })
}

/// Used, wasted, price of the pack, mass of the pack.
const PRODUCT: [&str; 4] = ["product_g", "product_waste_g", "product_pack_price", "product_pack_g"];
const DEVELOPER: [&str; 4] = ["developer_g", "developer_waste_g", "developer_pack_price", "developer_pack_g"];

/// What a service takes from a pack, which is named or given with its price and mass.
fn read_pack<'a, F: Fn(&str) -> Option<&'a str>>(
    fields: &mut Fields<'a, F>,
    packs: &Packs,
    name: &'static str,
    columns: [&'static str; 4],
) -> Option<PackUse> {
    let [used, wasted, pack_price, pack_mass] = columns;
    let named = fields.text(name);
    if named.is_none() && columns.iter().all(|column| fields.text(column).is_none()) {
        return None;
    }
    let pack = match named {
        Some(_) if fields.text(pack_price).or(fields.text(pack_mass)).is_some() => {
            fields.problem(name, format!("give the name, or {pack_price} and {pack_mass}, not both"));
            None
        }
        Some(called) => packs.named(called).map_err(|problem| fields.problem(name, problem)).ok(),
        None => given_pack(fields, packs.currency, pack_price, pack_mass),
    };
    let taken = fields.quantity(used, Mass::from_g);
    let taken = fields.required(used, taken);
    let thrown_away = fields.quantity(wasted, Mass::from_g).unwrap_or(Mass::ZERO);
    Some(PackUse { pack: pack?, used: taken?, wasted: thrown_away })
}

fn given_pack<'a, F: Fn(&str) -> Option<&'a str>>(
    fields: &mut Fields<'a, F>,
    currency: Currency,
    pack_price: &'static str,
    pack_mass: &'static str,
) -> Option<PackPrice> {
    let price = fields.money(pack_price, currency);
    let price = fields.required(pack_price, price);
    let holds = fields.quantity(pack_mass, Mass::from_g);
    let holds = fields.required(pack_mass, holds);
    if let Some(holds) = holds.filter(|holds| holds.g() <= 0.0) {
        fields.problem(pack_mass, format!("invalid pack contents (got {holds}): must be more than nothing"));
        return None;
    }
    PackPrice::new(price?, holds?).map_err(|problem| fields.problem(pack_price, problem)).ok()
}
