//! The laws of money, on random amounts. The independent side is plain 128-bit integer arithmetic.

use foilwork::{
    business::{
        CommissionRule, CommissionTier, SalesMixItem, break_even, commission_pay,
        list::{PackUse, ServiceLine, parse_csv, parse_json, price_services},
        profit_at, sales_mix_target,
    },
    money::{
        CommissionRate, CostColumns, CostKind, CostLine, CostTable, Currency, Discount, Labour, Margin, Money,
        MoneyError, OnCosts, Overhead, PackPrice, PriceEnding, PriceRule, PriceTarget, Rounding, ServiceColumns,
        TaxRate, Toward, add_tax, allocate, apply_discount, cost_columns, price_from_margin, price_from_markup,
        supply_cost, take_tax_out,
    },
    quantity::{Duration, Mass},
    shop::{
        Shop,
        shape::{ShopFile, TermsEntry},
    },
    source::Basis,
};
use proptest::prelude::*;
use rust_decimal::Decimal;

const TO_THE_NEAREST: [Rounding; 3] =
    [Rounding::MidpointAwayFromZero, Rounding::MidpointNearestEven, Rounding::MidpointTowardZero];

fn currency() -> impl Strategy<Value = Currency> {
    prop::sample::select(vec!["EUR", "JPY", "KWD", "CLF"]).prop_map(|code| Currency::from_code(code).unwrap())
}

fn amount(minor: std::ops::Range<i64>) -> impl Strategy<Value = Money> {
    (minor, currency()).prop_map(|(minor, currency)| Money::from_minor(minor, currency))
}

/// A percentage with two decimals.
fn percent(hundredths: std::ops::Range<i64>) -> impl Strategy<Value = Decimal> {
    hundredths.prop_map(|hundredths| Decimal::new(hundredths, 2))
}

fn any_rounding() -> impl Strategy<Value = Rounding> {
    prop::sample::select(Rounding::ALL.to_vec())
}

/// Half up, by the school rule: add half the divisor and cut off. Both positive.
fn school(over: i128, under: i128) -> i64 {
    i64::try_from((2 * over + under) / (2 * under)).unwrap()
}

fn product_cost(price: Money, pack: Mass, used: Mass, rounding: Rounding) -> Result<Money, MoneyError> {
    supply_cost(PackPrice::new(price, pack)?, used, rounding)
}

proptest! {
    #[test]
    fn decimal_and_back_is_the_same_amount(minor in any::<i64>(), currency in currency(), rounding in any_rounding()) {
        let money = Money::from_minor(minor, currency);
        prop_assert_eq!(Money::from_decimal(money.decimal(), currency, rounding), Ok(money));
        prop_assert_eq!(Money::parse(&money.decimal().to_string(), currency), Ok(money));
    }

    #[test]
    fn sums_are_those_of_the_integers_or_refused(a in any::<i64>(), b in any::<i64>(), currency in currency()) {
        let (left, right) = (Money::from_minor(a, currency), Money::from_minor(b, currency));
        prop_assert_eq!(left.plus(right).ok().map(Money::minor), a.checked_add(b));
        prop_assert_eq!(left.minus(right).ok().map(Money::minor), a.checked_sub(b));
        prop_assert_eq!(left.times(b).ok().map(Money::minor), a.checked_mul(b));
    }

    #[test]
    fn shares_add_up_and_none_is_a_unit_off(
        amount in amount(-10_000_000..10_000_000),
        weights in prop::collection::vec(0_u32..1_000_000, 1..40),
    ) {
        let weights = [weights, vec![1]].concat();
        let total: i128 = weights.iter().map(|w| i128::from(*w)).sum();
        let shares = allocate(amount, &weights.iter().map(|w| Decimal::from(*w)).collect::<Vec<_>>()).unwrap();
        prop_assert_eq!(shares.iter().map(|share| share.minor()).sum::<i64>(), amount.minor());
        for (share, weight) in shares.iter().zip(&weights) {
            // |share - amount * weight / total| < 1, without dividing.
            let off = i128::from(share.minor()) * total - i128::from(amount.minor()) * i128::from(*weight);
            prop_assert!(off.abs() < total, "share {} of weight {}", share, weight);
        }
    }

    #[test]
    fn product_cost_is_rounded_once_from_the_unrounded_unit_price(
        price in amount(0..100_000_000), pack_mg in 1_i64..5_000_000, used_mg in 0_i64..5_000_000,
    ) {
        let grams = |mg: i64| Mass::from_g(mg as f64 / 1000.0).unwrap();
        let cost = product_cost(price, grams(pack_mg), grams(used_mg), Rounding::MidpointAwayFromZero).unwrap();
        prop_assert_eq!(cost.minor(), school(i128::from(price.minor()) * i128::from(used_mg), pack_mg.into()));
    }

    #[test]
    fn a_pack_costs_what_its_parts_cost_to_half_a_unit_each(
        price in amount(0..1_000_000), pack in 1_i64..100_000, cut in 0_i64..100_000, rounding in prop::sample::select(TO_THE_NEAREST.to_vec()),
    ) {
        let cut = cut % (pack + 1);
        let cost = |dg: i64| {
            let grams = |dg: i64| Mass::from_g(dg as f64 / 10.0).unwrap();
            product_cost(price, grams(pack), grams(dg), rounding).unwrap().minor()
        };
        prop_assert!((cost(cut) + cost(pack - cut) - price.minor()).abs() <= 1);
        prop_assert_eq!(cost(pack), price.minor());
    }

    #[test]
    fn margin_and_markup_are_inverse(margin in percent(-20_000..9_999)) {
        let margin = Margin::from_percent(margin).unwrap();
        let back = margin.markup().unwrap().margin().unwrap();
        prop_assert!((back.percent() - margin.percent()).abs() < Decimal::new(1, 20));
    }

    #[test]
    fn a_margin_and_its_markup_set_the_same_price(cost in amount(1..100_000_000), margin in percent(0..9_500)) {
        let margin = Margin::from_percent(margin).unwrap();
        let by_margin = price_from_margin(cost, margin, Rounding::MidpointAwayFromZero).unwrap();
        let by_markup = price_from_markup(cost, margin.markup().unwrap(), Rounding::MidpointAwayFromZero).unwrap();
        // A mark-up of 28 digits can fall on the other side of an exact half.
        prop_assert!((by_margin.price.minor() - by_markup.price.minor()).abs() <= 1);
        let want = i128::from(cost.minor()) * 10_000;
        let under = 10_000 - i128::try_from((margin.percent() * Decimal::from(100)).trunc()).unwrap();
        prop_assert_eq!(by_margin.price.minor(), school(want, under));
        prop_assert_eq!(by_margin.profit.plus(cost).unwrap(), by_margin.price);
    }

    #[test]
    fn tax_out_undoes_tax_in_to_the_minor_unit(
        net in amount(-100_000_000..100_000_000), rate in percent(0..10_000),
        rounding in prop::sample::select(TO_THE_NEAREST.to_vec()),
    ) {
        let rate = TaxRate::from_percent(rate).unwrap();
        let there = add_tax(net, rate, rounding).unwrap();
        prop_assert_eq!(take_tax_out(there.gross, rate, rounding).unwrap(), there);
    }

    #[test]
    fn net_and_tax_make_the_gross_price(gross in amount(0..1_000_000), rate in percent(0..10_000), rounding in any_rounding()) {
        let price = take_tax_out(gross, TaxRate::from_percent(rate).unwrap(), rounding).unwrap();
        prop_assert_eq!(price.net.plus(price.tax), Ok(gross));
        prop_assert!(price.net <= gross && !price.net.is_negative());
    }

    #[test]
    fn roundings_differ_by_one_and_keep_their_order(minor_tenths in any::<i32>()) {
        let eur = Currency::from_code("EUR").unwrap();
        let value = Decimal::new(minor_tenths.into(), 3);
        let at = |rounding| Money::from_decimal(value, eur, rounding).unwrap().minor();
        let (down, up) = (at(Rounding::ToNegativeInfinity), at(Rounding::ToPositiveInfinity));
        prop_assert_eq!(down, i64::from(minor_tenths).div_euclid(10));
        prop_assert_eq!(up, -(-i64::from(minor_tenths)).div_euclid(10));
        for &rounding in Rounding::ALL {
            // rust_decimal rounds on its own.
            let want = value.round_dp_with_strategy(2, rounding.strategy());
            prop_assert_eq!(Money::from_decimal_exact(want, eur).unwrap().minor(), at(rounding));
        }
    }

    #[test]
    fn a_price_ending_is_a_neighbour(price in 0_i64..1_000_000, step in 1_i64..10_000, ending in 0_i64..10_000) {
        let ending = ending % step;
        let eur = |minor| Money::from_minor(minor, Currency::from_code("EUR").unwrap());
        let list = PriceEnding::new(eur(step), eur(ending)).unwrap();
        let at = |toward| list.apply(eur(price), toward).unwrap().minor();
        let (near, up) = (at(Toward::Nearest), at(Toward::Up));
        for allowed in [near, up] {
            prop_assert_eq!((allowed - ending).rem_euclid(step), 0);
            prop_assert!(allowed >= 0);
        }
        if price < ending {
            // Nothing is allowed below the ending itself: the price goes up, or is refused.
            prop_assert!(list.apply(eur(price), Toward::Down).is_err());
            prop_assert_eq!((near, up), (ending, ending));
            return Ok(());
        }
        let down = at(Toward::Down);
        prop_assert_eq!((down - ending).rem_euclid(step), 0);
        prop_assert!(down <= price && price <= up && up - down <= step);
        prop_assert_eq!((near - price).abs(), (price - down).min(up - price));
    }

    #[test]
    fn a_discount_comes_wholly_off(price in amount(0..10_000_000), discount in percent(0..9_999), rounding in any_rounding()) {
        let offer = apply_discount(price, Discount::from_percent(discount).unwrap(), rounding).unwrap();
        prop_assert_eq!(offer.off.plus(offer.after), Ok(price));
    }

    #[test]
    fn one_sale_fewer_does_not_break_even(fixed in 1_i64..10_000_000, left in 1_i64..100_000, variable in 0_i64..100_000) {
        let price = variable + left;
        let usd = |minor| Money::from_minor(minor, Currency::from_code("USD").unwrap());
        let even = break_even(usd(fixed), usd(price), usd(variable), Rounding::ToZero).unwrap();
        let profit = |count: i64| (price - variable) * count - fixed;
        prop_assert!(profit(even.count) >= 0 && profit(even.count - 1) < 0);
        let count = u32::try_from(even.count).unwrap();
        prop_assert_eq!(profit_at(usd(fixed), usd(price), usd(variable), count).unwrap().minor(), profit(even.count));
    }

    #[test]
    fn a_mix_of_gains_reaches_its_goal(
        goal in 0_i64..10_000_000, items in prop::collection::vec((1_i64..50_000, 1_u32..20), 1..8),
    ) {
        let usd = |minor| Money::from_minor(minor, Currency::from_code("USD").unwrap());
        let items: Vec<_> = items
            .into_iter()
            .map(|(price, weight)| SalesMixItem { what: "service".into(), price: usd(price), variable: usd(0), weight: weight.into() })
            .collect();
        let plan = sales_mix_target(usd(goal), usd(0), &items).unwrap();
        prop_assert!(!plan.left_over.is_negative());
        prop_assert_eq!(plan.services.iter().map(|line| line.count).sum::<i64>(), plan.count);
        // Never more than one of each beyond the exact mix.
        let count = plan.count_exact.ceil() + Decimal::from(items.len());
        prop_assert!(Decimal::from(plan.count) <= count);
        prop_assert_eq!(plan.sales.minor() - goal, plan.left_over.minor());
    }

    #[test]
    fn equal_tiers_pay_like_a_flat_rate(takings in 0_i64..10_000_000, end in 1_i64..10_000_000, rate in percent(0..10_000)) {
        let usd = |minor| Money::from_minor(minor, Currency::from_code("USD").unwrap());
        let rate = CommissionRate::from_percent(rate).unwrap();
        let tiers = CommissionRule::Tiered(vec![
            CommissionTier { up_to: Some(usd(end)), rate },
            CommissionTier { up_to: None, rate },
        ]);
        let pay = |rule: &CommissionRule| commission_pay(usd(0), rule, usd(takings), Rounding::MidpointAwayFromZero).unwrap();
        prop_assert_eq!(pay(&tiers), pay(&CommissionRule::Flat(rate)));
    }

    #[test]
    fn a_rule_meets_its_margin_after_tax_and_card_fee(
        cost in 1_000_i64..1_000_000, margin in percent(0..6_000), tax in percent(0..3_000), fee in percent(0..500),
    ) {
        let eur = |minor| Money::from_minor(minor, Currency::from_code("EUR").unwrap());
        let card = foilwork::money::CardFee::new(foilwork::money::CardRate::from_percent(fee).unwrap(), eur(25)).unwrap();
        let rule = |target| PriceRule {
            target,
            tax: TaxRate::from_percent(tax).unwrap(),
            card: Some(card),
            ending: None,
            rounding: Rounding::MidpointAwayFromZero,
        };
        let asked = Margin::from_percent(margin).unwrap();
        let price = rule(PriceTarget::Margin(asked)).price(eur(cost), None).unwrap();
        // Net price, tax and fee are each rounded by at most half a unit: that much of the price the margin may miss.
        let missed = (price.set.margin.percent() - margin).abs() * price.taxed.net.decimal();
        prop_assert!(missed <= Decimal::new(200, 2), "asked {asked}, got {}", price.set);
        let same = rule(PriceTarget::Markup(asked.markup().unwrap())).price(eur(cost), None).unwrap();
        prop_assert!((same.taxed.net.minor() - price.taxed.net.minor()).abs() <= 1);
    }

    #[test]
    fn a_cost_table_adds_up_however_it_is_grouped(
        lines in prop::collection::vec((0_i64..100_000, 0_usize..4, 0_usize..3), 1..30),
    ) {
        let eur = Currency::from_code("EUR").unwrap();
        let mut table = CostTable::new(eur);
        let parts = [CostKind::Product, CostKind::Labour, CostKind::Overhead, CostKind::Consumables];
        for (minor, part, section) in &lines {
            let section = ["crown", "nape", "sides"][*section];
            let line = CostLine::new(parts[*part], "line", Basis::Derived, Money::from_minor(*minor, eur));
            table.push(CostLine { section: Some(section.into()), bowl: Some(section.into()), ..line }).unwrap();
        }
        let sum = lines.iter().map(|(minor, ..)| *minor).sum::<i64>();
        prop_assert_eq!(table.total().minor(), sum);
        prop_assert_eq!(table.by_kind().iter().map(|(_, m)| m.minor()).sum::<i64>(), sum);
        prop_assert_eq!(table.by_section().iter().map(|(_, m)| m.minor()).sum::<i64>(), sum);
        prop_assert_eq!(table.by_bowl(), table.by_section());
        if sum > 0 {
            let shares: Decimal = table.shares().iter().map(|line| line.share_percent).sum();
            prop_assert_eq!(shares, Decimal::ONE_HUNDRED);
        }
    }

    #[test]
    fn a_priced_list_adds_up_down_and_across(
        services in prop::collection::vec((1_i64..20_000, 1_u32..200_000, 0_u32..200_000, 1_u32..300, 0_u32..50, prop::option::of(1_i64..50_000)), 1..20),
        margin in 0_u32..60, tax in 0_u32..30,
    ) {
        let terms = TermsEntry {
            wage_per_h: Some("17.35".into()),
            on_costs_percent: Some(21.4),
            paid_h: Some(38.0),
            productive_h: Some(23.7),
            overhead: Some("48123.45".into()),
            chairs: Some(4),
            productive_h_per_chair: Some(1170.0),
            margin_percent: Some(margin.into()),
            tax_percent: Some(tax.into()),
            card_percent: Some(1.49),
            ..TermsEntry::default()
        };
        let shop = ShopFile { currency: Some("EUR".into()), terms: Some(terms), ..ShopFile::default() };
        let business = Shop::new(&shop).unwrap().business().unwrap();
        let eur = |minor| Money::from_minor(minor, business.currency);
        let grams = |centigrams: u32| Mass::from_g(f64::from(centigrams) / 100.0).unwrap();
        let list: Vec<_> = services
            .into_iter()
            .map(|(pack_price, pack, used, minutes, sold, price)| ServiceLine {
                service: "service".into(),
                class: None,
                product: Some(PackUse { pack: PackPrice::new(eur(pack_price), grams(pack)).unwrap(), used: grams(used), wasted: grams(used / 9) }),
                developer: None,
                consumables: eur(120),
                laundry: eur(45),
                hands_on: Duration::from_min(f64::from(minutes) / 2.0).unwrap(),
                in_chair: Duration::from_min(f64::from(minutes)).unwrap(),
                price: price.map(eur),
                sold,
                takes: Vec::new(),
            })
            .collect();
        let table = price_services(&list, &business).unwrap();
        prop_assert!(table.totals.reconcile());
        for line in &table.lines {
            let parts = [line.product, line.developer, line.consumables, line.laundry, line.labour, line.overhead, line.card_fee];
            prop_assert_eq!(parts.iter().map(|part| part.minor()).sum::<i64>(), line.cost.minor());
            prop_assert_eq!(line.net.minor() + line.tax.minor(), line.gross.minor());
            prop_assert_eq!(line.net.minor() - line.cost.minor(), line.profit.minor());
        }
        let down: i64 = table.lines.iter().map(|line| line.profit.minor() * i64::from(line.sold)).sum();
        prop_assert_eq!(table.totals.profit.minor(), down);
    }

    #[test]
    fn no_text_makes_a_reader_panic(text in "(\\PC|[\"\n\r,;\t]){0,200}", cells in prop::collection::vec("[-+0-9.eE\",nNa ]{0,24}", 5)) {
        let eur = Currency::from_code("EUR").unwrap();
        let _ = parse_csv(&text, eur);
        let _ = parse_json(&text, eur);
        let _ = text.parse::<Currency>();
        let _ = Money::parse(&text, eur);
        let header = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min\nfoils,";
        // Whatever the cells hold: either a service, or problems that name this line.
        if let Err(problems) = parse_csv(&format!("{header}{}\n", cells.join(",")), eur) {
            prop_assert!(!problems.0.is_empty());
        }
    }

    #[test]
    fn no_amounts_make_a_sum_panic(
        a in any::<i64>(), b in any::<i64>(), c in any::<i64>(), mass in 0.0..1e9, pack in 0.0..1e9,
        scale in 0_u32..28, rounding in any_rounding(),
    ) {
        let eur = |minor| Money::from_minor(minor, Currency::from_code("EUR").unwrap());
        let (mass, pack) = (Mass::from_g(mass).unwrap(), Mass::from_g(pack).unwrap());
        let percent = Decimal::from_i128_with_scale(i128::from(c), scale);
        let _ = product_cost(eur(a), pack, mass, rounding);
        let _ = eur(a).percent(percent, rounding);
        let _ = break_even(eur(a), eur(b), eur(c), rounding);
        let _ = allocate(eur(a), &[percent, Decimal::from(b.unsigned_abs()), Decimal::from(3)]);
        if let Ok(margin) = Margin::from_percent(percent) {
            let _ = margin.markup();
            if let Ok(set) = price_from_margin(eur(b), margin, rounding) {
                prop_assert_eq!(set.cost.plus(set.profit), Ok(set.price));
            }
        }
        if let Ok(rate) = TaxRate::from_percent(percent)
            && let Ok(price) = take_tax_out(eur(a), rate, rounding)
        {
            prop_assert_eq!(price.net.plus(price.tax), Ok(eur(a)));
        }
    }
}

/// Numerator over denominator, both positive, rounded as named.
fn rounded(over: i128, under: i128, rounding: Rounding) -> i64 {
    let (cut, twice) = (over / under, 2 * (over % under));
    let up = match rounding {
        Rounding::MidpointAwayFromZero => twice >= under,
        Rounding::MidpointTowardZero => twice > under,
        Rounding::MidpointNearestEven => twice > under || (twice == under && cut % 2 == 1),
        Rounding::AwayFromZero | Rounding::ToPositiveInfinity => twice > 0,
        _ => false,
    };
    i64::try_from(cut).unwrap() + i64::from(up)
}

/// A price, a pack and the product used and wasted in thousandths of a gram: small numbers tie often, large ones fill the bits.
fn cost_row() -> impl Strategy<Value = (i64, i64, i64, i64)> {
    prop_oneof![
        (0..40_i64, 1..9_i64, 0..40_i64, 0..9_i64)
            .prop_map(|(price, pack, used, wasted)| { (price, 500 * pack, 125 * used, 250 * wasted) }),
        (0..9_999_999_i64, 1..2_000_000_i64, 0..999_999_i64, 0..999_999_i64),
        (0..1_i64 << 53, 1..1_i64 << 30, 0..1_i64 << 20, 0..3_i64),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn columns_of_costs_are_exact_to_the_minor_unit(
        rows in prop::collection::vec(cost_row(), 1..300),
        minutes in 0..30_000_i64,
        rounding in any_rounding(),
    ) {
        let euro = Currency::from_code("EUR").unwrap();
        let money = |minor| Money::from_minor(minor, euro);
        let hours = |h| Duration::from_h(h).unwrap();
        // 15.00 an hour are 25 cents a minute, and 7.30 an hour of a chair: 730 / 60 of a cent.
        let labour = Labour::new(money(1500), OnCosts::from_percent(0.into()).unwrap(), hours(30.0), hours(30.0)).unwrap();
        let overhead = Overhead::new(money(730), 1, hours(1.0)).unwrap();
        let grams = |of: fn(&(i64, i64, i64, i64)) -> i64| rows.iter().map(|row| of(row) as f64 / 1000.0).collect::<Vec<_>>();
        let prices: Vec<i64> = rows.iter().map(|row| row.0).collect();
        let (packs, used, wasted) = (grams(|row| row.1), grams(|row| row.2), grams(|row| row.3));
        let (time, extras) = (vec![minutes as f64 / 100.0; rows.len()], vec![3_i64; rows.len()]);
        let services = ServiceColumns {
            pack_price_minor: &prices,
            pack_g: &packs,
            used_g: &used,
            wasted_g: &wasted,
            consumables_minor: &extras,
            hands_on_min: &time,
            chair_min: &time,
        };
        let mut columns = [vec![0; rows.len()], vec![0; rows.len()], vec![0; rows.len()], vec![0; rows.len()]];
        let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
        let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
        cost_columns(&services, &labour, &overhead, rounding, out).unwrap();
        let (labour, overhead) = (rounded(25 * i128::from(minutes), 100, rounding), rounded(73 * i128::from(minutes), 600, rounding));
        for (place, (price, pack, used, wasted)) in rows.iter().enumerate() {
            let product = rounded(i128::from(*price) * i128::from(used + wasted), i128::from(*pack), rounding);
            let got = columns.each_ref().map(|column| column[place]);
            prop_assert_eq!(got, [product, labour, overhead, product + labour + overhead + 3], "row {}", place);
        }
    }
}
