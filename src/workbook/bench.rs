use super::{
    WorkbookError,
    binding::bound,
    cells::{at, down, fixed},
    limit::{Ceiling, unchecked},
    page::{Allowed, Page},
    sources::{Rests, sources},
    weighed::{Parts, decimals},
};
use crate::{
    finding::{Reason, Verdict},
    money::{Money, SetPrice},
    quantity::{Mass, MassFraction, Quantity},
    scale::weigh,
    service::{Bowl, Mix, MoneyPlan, Plan},
    source::Basis,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

const GRAMS: usize = 2;
const PERCENT: usize = 2;

/// The bench sheet of a plan as a workbook: what to weigh bowl by bowl, at any size of the bowl, and the costs and the price
/// where the shop has a currency. What says STOP and what is warned of stands on it.
///
/// # Errors
///
/// [`WorkbookError`] when there are more rows than a sheet holds.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}, workbook::plan_workbook};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(plan_workbook(&plan(&file)?)?.starts_with(b"PK"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan_workbook(plan: &Plan) -> Result<Vec<u8>, WorkbookError> {
    let mut pages = vec![bench(plan)?];
    if let Some(money) = &plan.money {
        pages.push(costs(money)?);
    }
    let mut rests = rests(plan);
    rests.extend(Ceiling::of(plan.jurisdiction).map(Ceiling::rests));
    pages.push(sources(&rests)?);
    bound(pages)
}

fn bench(plan: &Plan) -> Result<Page, WorkbookError> {
    let widths = [30.0, 11.0, 11.0, 12.0, 12.0, 12.0, 12.0];
    let mut page = Page::new("Bench", &format!("Bench sheet: {}", plan.title), &widths)?;
    page.how()?;
    unchecked(
        &mut page,
        "What is said here of STOP, warnings and what was not judged is said of the plan as it was made: to \
                          check a change, change the file and plan again.",
    )?;
    for verdict in [Verdict::Stop, Verdict::Warning, Verdict::NotJudged] {
        for finding in plan.findings.iter().filter(|finding| finding.verdict == verdict) {
            page.paragraph(&format!("[{verdict}] {}", finding.text))?;
        }
    }
    page.row += 1;
    let division = division(plan);
    page.named_input("division_g", "the scale counts in, g", division, decimals(division), Allowed::GRAMS)?;
    let ceiling = Ceiling::of(plan.jurisdiction).filter(|_| plan.mixes.iter().any(|mix| brings(mix) > 0.0));
    if let Some(ceiling) = ceiling {
        ceiling.named(&mut page)?;
    }
    for mix in &plan.mixes {
        for bowl in &mix.bowls {
            page.row += 1;
            bowl_of(&mut page, mix, bowl, division)?;
            if let Some(ceiling) = ceiling.filter(|_| brings(mix) > 0.0) {
                held(&mut page, mix, bowl, ceiling)?;
            }
        }
    }
    page.cautions(plan.cautions.iter().map(|caution| caution.text))?;
    Ok(page)
}

/// The scales that the trade has, coarsest first.
const SCALES_G: [f64; 10] = [1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001];

/// The coarsest scale on which every bowl of the plan is weighed as the plan says.
fn division(plan: &Plan) -> f64 {
    let same = |bowl: &Bowl, division: Mass| {
        let exact: Vec<Mass> = bowl.parts.iter().map(|part| part.exact).collect();
        weigh(&exact, division).is_ok_and(|found| {
            found.parts().iter().zip(&bowl.parts).all(|(found, part)| (found.weighed.g() - part.weigh.g()).abs() < 1e-9)
        })
    };
    let all =
        |division: &f64| plan.mixes.iter().flat_map(|mix| &mix.bowls).all(|bowl| same(bowl, Mass::nearest(*division)));
    SCALES_G.into_iter().find(all).unwrap_or(0.001)
}

/// The most peroxide that a mix may bring onto the hair, in % w/w.
fn brings(mix: &Mix) -> f64 {
    mix.on_hair.high().ww_percent()
}

/// Under a bowl: whether what it comes to passes the ceiling, at the size and on the scale that stand there.
fn held(page: &mut Page, mix: &Mix, bowl: &Bowl, ceiling: Ceiling) -> Result<(), WorkbookError> {
    // A bottle that nobody measured is held against the law at the upper end of what its label may mean.
    let off = mix.on_hair_as_labelled.high().ww_percent() / brings(mix);
    let strength = bowl.on_hair.high().ww_percent();
    let at_most = at(page.row - 1, 6);
    let (words, counted, came) = if off > 1.0 {
        ("its label read high", format!("{at_most}*{off}"), strength * off)
    } else {
        ("at most, on the hair", at_most, strength)
    };
    let [above, held] = ["ABOVE", "held against"].map(|words| format!("{words} {}", ceiling.figure()));
    page.text(0, words)?;
    let formula = format!("IF({},\"{above}\",\"{held}\")", Ceiling::passed_by(&counted));
    page.alarm(1, &formula, if ceiling.is_passed_by(came) { &above } else { &held })?;
    page.row += 1;
    Ok(())
}

/// A bowl: its size may be changed, and every part follows.
fn bowl_of(page: &mut Page, mix: &Mix, bowl: &Bowl, division_g: f64) -> Result<(), WorkbookError> {
    let parts = mix.ratio.as_ref().map_or_else(|| "no developer".to_owned(), |ratio| format!("{ratio} parts"));
    let times = match bowl.count {
        1 => "one bowl".to_owned(),
        count => format!("{count} fresh bowls, each as follows"),
    };
    let within = crate::text::amount(bowl.use_within, 0);
    page.paragraph(&format!("{}: {parts}; {times}; used within {within} min", mix.name))?;
    let masses: Vec<f64> = bowl.parts.iter().map(|part| part.exact.g()).collect();
    let whole: f64 = masses.iter().sum();
    page.text(0, "in this bowl, g")?;
    page.input(1, whole, GRAMS, Allowed::GRAMS)?;
    let size = fixed(page.row, 1);
    page.row += 1;
    page.heading(&[
        "into the tared bowl",
        "share, %",
        "exact, g",
        "WEIGH, g",
        "scale shows, g",
        "peroxide at least, % w/w",
        "at most, % w/w",
    ])?;
    let first = page.row;
    let last = first + (masses.len() as u32).saturating_sub(1);
    let rounding = Parts { first, last, exact: 2, beside: 7, division: "division_g", masses_g: &masses, division_g };
    let shown = decimals(division_g);
    for (part, exact) in bowl.parts.iter().zip(&masses) {
        page.text(0, &part.product)?;
        page.number(1, if whole > 0.0 { 100.0 * exact / whole } else { 0.0 }, 4)?;
        page.formula(2, &format!("{size}*{}/100", at(page.row, 1)), *exact, GRAMS)?;
        rounding.weigh(page, 3, part.weigh.g())?;
        page.formula(4, &format!("SUM({})", down(3, first, page.row)), part.scale_shows.g(), shown)?;
        page.number(5, part.peroxide.low().ww_percent(), PERCENT)?;
        page.number(6, part.peroxide.high().ww_percent(), PERCENT)?;
        page.row += 1;
    }
    page.text(0, "bowl; ON THE HAIR, % w/w")?;
    page.formula(2, &format!("SUM({})", down(2, first, last)), whole, GRAMS)?;
    let weighed = down(3, first, last);
    page.formula(3, &format!("SUM({weighed})"), bowl.total.g(), shown)?;
    for (column, strength) in [(5, bowl.on_hair.low()), (6, bowl.on_hair.high())] {
        let peroxide = format!("SUMPRODUCT({weighed},{})", down(column, first, last));
        let mixed = format!("IF(SUM({weighed})=0,0,{peroxide}/SUM({weighed}))");
        page.formula(column, &mixed, MassFraction::ww_percent(strength), PERCENT)?;
    }
    page.row += 1;
    Ok(())
}

/// What the service costs, line by line, and what its price leaves.
fn costs(money: &MoneyPlan) -> Result<Page, WorkbookError> {
    let lines = money.cost.lines();
    let currency = money.cost.total().currency();
    let decimals = currency.exponent() as usize;
    let amounts = Allowed { low: 0.0, high: 1_000_000_000.0, unit: currency.code() };
    let mut page = Page::new("Cost", "Cost and price of the service", &[20.0, 36.0, 22.0, 14.0, 12.0, 18.0])?;
    page.how()?;
    let amount = format!("amount, {}", currency.code());
    page.heading(&["kind", "what", "for", &amount, "share, %", "basis"])?;
    page.repeat_heading()?;
    let first = page.row;
    let last = first + (lines.len() as u32).saturating_sub(1);
    let total_of = format!("SUM({})", down(3, first, last));
    let whole = float(money.cost.total());
    for line in lines {
        page.text(0, &line.kind.to_string())?;
        page.text(1, &line.what)?;
        page.text(2, line.section.as_deref().unwrap_or_default())?;
        page.input(3, float(line.amount), decimals, amounts)?;
        let share = if whole > 0.0 { 100.0 * float(line.amount) / whole } else { 0.0 };
        page.formula(4, &format!("IF({total_of}=0,0,100*{}/{total_of})", at(page.row, 3)), share, 1)?;
        page.text(5, &line.basis.to_string())?;
        page.row += 1;
    }
    page.text(0, "cost")?;
    if lines.is_empty() {
        page.number(3, 0.0, decimals)?;
    } else {
        page.formula(3, &total_of, whole, decimals)?;
    }
    page.call("cost", 3);
    page.row += 2;
    if let Some(set) = &money.price {
        price(&mut page, set, money, decimals, amounts)?;
    }
    page.paragraph(
        "Margin is profit over net price, mark-up is profit over cost, card fee included: not the same number.",
    )?;
    page.paragraph(&format!("Every line of the plan was rounded once ({}).", money.rounding))?;
    Ok(page)
}

fn price(
    page: &mut Page,
    set: &SetPrice,
    money: &MoneyPlan,
    decimals: usize,
    amounts: Allowed,
) -> Result<(), WorkbookError> {
    let (net, profit) = (float(set.price), float(set.profit));
    page.named_input("net_price", "net price", net, decimals, amounts)?;
    // What the card terminal keeps is in the cost that the price is held against, not among the lines.
    let fee = set.cost.minus(money.cost.total()).map_or(0.0, float);
    page.named_input("card_fee", "card fee, at this price", fee, decimals, amounts)?;
    page.named_formula("profit", "profit", "net_price-cost-card_fee", profit, decimals)?;
    let percent = |decimal: Decimal| decimal.to_f64().unwrap_or(0.0);
    let margin = "IF(net_price=0,0,100*profit/net_price)";
    page.named_formula("margin_percent", "margin, %", margin, percent(set.margin.percent()), 1)?;
    let markup = "IF(cost+card_fee=0,0,100*profit/(cost+card_fee))";
    page.named_formula("markup_percent", "mark-up, %", markup, percent(set.markup.percent()), 1)?;
    let Some(taxed) = &money.taxed else {
        return page.paragraph("Tax is not counted: the shop states none.");
    };
    let (tax, gross) = (float(taxed.tax), float(taxed.gross));
    match plain_rate(taxed.net, taxed.tax) {
        Some(rate) => {
            page.named_input("tax_percent", "tax, %", rate, 2, Allowed::PERCENT)?;
            let formula = format!("ROUND(net_price*tax_percent/100,{decimals})");
            page.named_formula("tax", "tax", &formula, tax, decimals)?;
        }
        None => page.named_input("tax", "tax", tax, decimals, amounts)?,
    }
    page.named_formula("gross_price", "THE GUEST PAYS", "net_price+tax", gross, decimals)
}

/// The rate of a tax, to the hundredth of a percent, where it gives the very amount when halves are rounded up.
fn plain_rate(net: Money, tax: Money) -> Option<f64> {
    let rate = (Decimal::ONE_HUNDRED.checked_mul(tax.decimal())?.checked_div(net.decimal())?).round_dp(2);
    let back = rate.checked_mul(net.decimal())?.checked_div(Decimal::ONE_HUNDRED)?;
    let strategy = rust_decimal::RoundingStrategy::MidpointAwayFromZero;
    let same = back.round_dp_with_strategy(net.currency().exponent(), strategy) == tax.decimal();
    if same { rate.to_f64() } else { None }
}

pub(super) fn float(money: Money) -> f64 {
    money.decimal().to_f64().unwrap_or(0.0)
}

fn rests(plan: &Plan) -> Vec<Rests> {
    let cited = |sources: &[Reason]| sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
    let mut rests = vec![
        Rests::new("exact grams at another size of the bowl", Basis::Derived, "the ratio of the plan"),
        Rests::new(
            "rounding to the scale",
            Basis::Derived,
            "whole divisions that add up, with the least harm to the ratio",
        ),
        Rests::new("strength on the hair", Basis::Derived, "conservation of mass and of peroxide"),
    ];
    for mix in &plan.mixes {
        let needed = crate::text::range::<Mass>(&mix.needed, 0);
        rests.push(Rests::new(format!("{}: {needed} g needed", mix.name), mix.needed_basis, "the plan"));
        rests.push(Rests::new(format!("{}: strength of the developer", mix.name), mix.strength_basis, "the plan"));
    }
    for default in &plan.defaults {
        let what = format!("{} = {}", default.field, default.value);
        rests.push(Rests::new(what, default.basis, cited(&default.sources)));
    }
    for finding in &plan.findings {
        rests.push(Rests::new(finding.rule.to_string(), finding.verdict, cited(&finding.sources)));
    }
    for caution in &plan.cautions {
        rests.push(Rests::new(caution.text, "caution", cited(&caution.sources)));
    }
    rests
}
