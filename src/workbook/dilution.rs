use super::{
    WorkbookError,
    binding::bound,
    cells::{at, nearest},
    limit::{Ceiling, unchecked},
    page::{Allowed, Came, Page},
    sources::{Rests, sources},
    weighed::decimals,
};
use crate::{
    peroxide::{DilutionRow, DilutionTable, cautions, stronger},
    quantity::MassFraction,
    source::{
        Basis, Interval,
        citations::peroxide::{CODATA, EASTON, MIXTURE_DENSITY},
    },
};

const GRAMS: usize = 2;
const PERCENT: usize = 2;
const CAN: &str = "weighable";
const AS_MADE: &str = "no bottle is above that";
const AS_STATED: &str = "The strengths are those of bottles as stated, before anything is mixed with them: a bottle that nobody \
                         measured may hold up to a sixth more, which a plan counts and this chart does not.";
const STRONGER: &str = "ABOVE what this chart was made for: its cautions do not hold, make the chart anew";

/// The names of what is diluted, as they stand on the bottles: texts, never formulas.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DilutionNames {
    /// A name for each row of the table.
    pub bottles: Vec<String>,
    /// What is added.
    pub weaker: String,
}

/// The wall chart of a dilution: bottles, targets, total and scale may be changed; grams and strength follow.
///
/// # Units
///
/// Strengths in % w/w, masses in g.
///
/// # Errors
///
/// [`WorkbookError`] when there are more rows than a sheet holds.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::dilution_table, quantity::{Mass, MassFraction}, workbook::{DilutionNames, dilution_workbook}};
///
/// let [stock, target] = [12.0, 3.0].map(MassFraction::from_ww_percent);
/// let (total, division) = (Mass::from_g(60.0)?, Mass::from_g(1.0)?);
/// let table = dilution_table(&[stock?], &[target?], MassFraction::ZERO, total, division)?;
/// let names = DilutionNames { bottles: vec!["the new bottle".into()], weaker: "diluent".into() };
/// assert!(dilution_workbook(&table, &names)?.starts_with(b"PK"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide.
pub fn dilution_workbook(table: &DilutionTable, names: &DilutionNames) -> Result<Vec<u8>, WorkbookError> {
    let widths = [24.0, 9.0, 9.0, 9.0, 9.0, 10.0, 10.0, 10.0, 10.0, 9.0, 9.0, 9.0, 22.0, 24.0];
    let mut page = Page::new("Dilution", "Dilution by mass", &widths)?;
    page.how()?;
    unchecked(&mut page, AS_STATED)?;
    page.named_input("total_g", "total of every mix, g", table.total.g(), GRAMS, Allowed::GRAMS)?;
    let division = table.division.g();
    page.named_input("division_g", "the scale counts in, g", division, decimals(division), Allowed::GRAMS)?;
    let units = (table.total.g() / division).round_ties_even();
    let divisions = nearest("ROUND(total_g/division_g,9)");
    page.named_formula("divisions", "divisions of the scale in a mix", &divisions, units, 0)?;
    page.paragraph(&format!("Added: {}", names.weaker))?;
    let [_, best, _] = table.weaker.to_array().map(MassFraction::ww_percent);
    page.named_input("weaker_ww_percent", "its strength, % w/w", best, PERCENT, Allowed::WW_PERCENT)?;
    for (name, words, bound) in [
        ("weaker_low_ww_percent", "  at least", table.weaker.low()),
        ("weaker_high_ww_percent", "  at most", table.weaker.high()),
    ] {
        page.named_formula(
            name,
            words,
            &bound_of("weaker_ww_percent", table.weaker, bound),
            bound.ww_percent(),
            PERCENT,
        )?;
    }
    made_for(&mut page, table)?;
    let ceiling = Ceiling::of(None);
    if let Some(ceiling) = ceiling {
        ceiling.named(&mut page)?;
    }
    page.row += 1;
    page.heading(&[
        "bottle",
        "% w/w",
        "at least",
        "at most",
        "wanted, % w/w",
        "bottle, exact g",
        "added, exact g",
        "WEIGH bottle, g",
        "WEIGH added, g",
        "gives, % w/w",
        "at least",
        "at most",
        "can it be weighed?",
        "as it is on the hair",
    ])?;
    page.repeat_heading()?;
    for (place, row) in table.rows.iter().enumerate() {
        page.text(0, names.bottles.get(place).map_or("", String::as_str))?;
        one(&mut page, row, table)?;
        if let Some(ceiling) = ceiling {
            held(&mut page, row, table, ceiling)?;
        }
        page.row += 1;
    }
    let strongest = table.rows.iter().map(|row| row.stock).chain([table.weaker]).reduce(stronger);
    let strongest = strongest.unwrap_or(table.weaker);
    page.cautions(cautions(strongest).iter().map(String::as_str))?;
    page.paragraph(
        "These cautions are for the bottles that the chart was made with: a stronger one needs more, and above 12 % w/w foilwork \
         gives no advice on handling it in a salon.",
    )?;
    let (basis, source) = if table.weaker.high().ww_percent() > 0.0 {
        (Basis::Stated, "the label, or a measurement of yours")
    } else {
        (Basis::Assumed, "a diluent holds no peroxide; one that the maker of the developer allows")
    };
    let added = Rests::new("strength of what is added", basis, source);
    let mut rests = vec![
        Rests::new("strengths of the bottles", Basis::Stated, "the label, or a measurement of yours"),
        added,
        Rests::new("grams, and the strength that they give", Basis::Derived, "conservation of mass and of peroxide"),
        Rests::rounding(),
    ];
    if table.rows.iter().map(|row| row.stock).chain([table.weaker]).any(|strength| !strength.is_exact()) {
        rests.push(Rests::new(
            "bounds of a label in volumes or in % w/v",
            Basis::Derived,
            format!(
                "N volumes pair with 0.3 N percent (common practice of the trade); read as % w/v or as volumes of oxygen, the \
                 percent by mass follows from density and molar volume: {EASTON}; {MIXTURE_DENSITY}; {CODATA}"
            ),
        ));
        rests.push(Rests::new(
            "bounds of a changed label",
            Basis::Assumed,
            "off by as much, in proportion, as the label that the chart was made with",
        ));
    }
    rests.extend(ceiling.map(Ceiling::rests));
    bound(vec![page, sources(&rests)?])
}

/// A bound follows its best value in proportion: a changed label may be off by as much as the one that it replaces.
fn bound_of(best_cell: &str, of: Interval<MassFraction>, bound: MassFraction) -> String {
    let (best, bound) = (of.best().ww_percent(), bound.ww_percent());
    if best == bound {
        best_cell.to_owned()
    } else if best > 0.0 {
        format!("MIN(100,{best_cell}*{})", bound / best)
    } else {
        format!("MIN(100,{best_cell}+{bound})")
    }
}

/// Whether every bottle is as weak as those that the cautions of the chart were chosen for.
fn made_for(page: &mut Page, table: &DilutionTable) -> Result<(), WorkbookError> {
    let all = table.rows.iter().map(|row| row.stock).chain([table.weaker]);
    let strongest = all.map(|strength| strength.high().ww_percent()).fold(0.0, f64::max);
    page.named_number("made_for_ww_percent", "bottles up to, % w/w", strongest, PERCENT)?;
    // Two rows down stands the ceiling with its sentence, then an empty row and the names of the columns.
    let first = page.row + 1 + if Ceiling::of(None).is_some() { 2 } else { 0 } + 2;
    let last = first + (table.rows.len() as u32).saturating_sub(1);
    let bottles = format!("MAX({}:{},weaker_ww_percent,weaker_high_ww_percent)", at(first, 1), at(last, 3));
    page.text(0, "cautions")?;
    let stronger = format!("ROUND({bottles},9)>ROUND(made_for_ww_percent,9)");
    page.alarm(1, &format!("IF({stronger},\"{STRONGER}\",\"{AS_MADE}\")"), AS_MADE)?;
    page.row += 1;
    Ok(())
}

/// A bottle and a target. Beside the print area stand the divisions of both parts: exact, to the nearest, and those of the bottle
/// once both add up.
fn one(page: &mut Page, row: &DilutionRow, table: &DilutionTable) -> Result<(), WorkbookError> {
    let cell = |column: u16| at(page.row, column);
    let [stock, low, high, target, exact, added, weigh, weigh_added] = [1, 2, 3, 4, 5, 6, 7, 8].map(cell);
    let [note, share, share_added, near, near_added, settled] = [12, 14, 15, 16, 17, 18].map(cell);
    let best_value = row.stock.best().ww_percent();
    page.input(1, best_value, PERCENT, Allowed::WW_PERCENT)?;
    for (column, bound) in [(2, row.stock.low()), (3, row.stock.high())] {
        page.formula(column, &bound_of(&stock, row.stock, bound), bound.ww_percent(), PERCENT)?;
    }
    page.input(4, row.target.best().ww_percent(), PERCENT, Allowed::WW_PERCENT)?;

    let (total, weaker) = (table.total.g(), table.weaker.best().ww_percent());
    let wanted = row.target.best().ww_percent();
    let reached = wanted <= best_value.max(weaker) && wanted >= best_value.min(weaker);
    let same = best_value == weaker;
    let exact_g = reached.then(|| if same { total } else { total * (wanted - weaker) / (best_value - weaker) });
    let out = format!("OR({target}>MAX({stock},weaker_ww_percent),{target}<MIN({stock},weaker_ww_percent))");
    // Where both are as strong as what is wanted, all of it is the bottle.
    let grams = format!(
        "IF({stock}=weaker_ww_percent,total_g,total_g*({target}-weaker_ww_percent)/({stock}-weaker_ww_percent))"
    );
    page.formula(5, &format!("IF({out},\"-\",{grams})"), came(exact_g), GRAMS)?;
    let rest = format!("IF({exact}=\"-\",\"-\",total_g-{exact})");
    page.formula(6, &rest, came(exact_g.map(|exact_g| total - exact_g)), GRAMS)?;

    let units = (total / table.division.g()).round_ties_even();
    let shares = exact_g.map_or([0.0; 2], |exact_g| [exact_g, total - exact_g].map(|grams| units * grams / total));
    let [own, other] = shares;
    let [own_near, other_near] = shares.map(f64::round_ties_even);
    let own_settled = if own_near + other_near == units || own < other { own_near } else { units - other_near };
    for (column, of, value) in [(14, &exact, own), (15, &added, other)] {
        page.formula(column, &format!("IF({of}=\"-\",0,divisions*{of}/total_g)"), value, 6)?;
    }
    page.formula(16, &nearest(&share), own_near, 0)?;
    page.formula(17, &nearest(&share_added), other_near, 0)?;
    // Two halves in the middle may both go up or both down: then the bigger part, which it harms less, gives way.
    let adds_up = format!("OR({near}+{near_added}=divisions,{share}<{share_added})");
    page.formula(18, &format!("IF({adds_up},{near},divisions-{near_added})"), own_settled, 0)?;

    let fine = "too fine for this scale";
    let vanishes = format!("OR(AND({exact}>0,{settled}=0),AND({added}>0,divisions-{settled}=0))");
    let told = if exact_g.is_none() {
        "out of reach"
    } else if row.weigh.is_none() {
        fine
    } else {
        CAN
    };
    page.formula(12, &format!("IF({exact}=\"-\",\"out of reach\",IF({vanishes},\"{fine}\",\"{CAN}\"))"), told, 0)?;
    let weighed = row.weigh.as_ref();
    let shown = decimals(table.division.g());
    let when = |formula: &str| format!("IF({note}=\"{CAN}\",{formula},\"-\")");
    page.formula(7, &when(&format!("{settled}*division_g")), came(weighed.map(|weighed| weighed.stock.g())), shown)?;
    let rest = when(&format!("(divisions-{settled})*division_g"));
    page.formula(8, &rest, came(weighed.map(|weighed| weighed.diluent.g())), shown)?;
    let gives = weighed.map(|weighed| weighed.strength.to_array().map(MassFraction::ww_percent));
    let bounds = [
        (10, &low, "weaker_low_ww_percent", 0),
        (9, &stock, "weaker_ww_percent", 1),
        (11, &high, "weaker_high_ww_percent", 2),
    ];
    for (column, of, weaker, place) in bounds {
        let mixed = when(&format!("({weigh}*{of}+{weigh_added}*{weaker})/({weigh}+{weigh_added})"));
        let value = gives.and_then(|gives| gives.get(place).copied());
        page.formula(column, &mixed, came(value), PERCENT)?;
    }
    Ok(())
}

/// Whether what is mixed, or else a bottle, passes the ceiling of what may be on the hair.
fn held(page: &mut Page, row: &DilutionRow, table: &DilutionTable, ceiling: Ceiling) -> Result<(), WorkbookError> {
    let high = |strength: Interval<MassFraction>| strength.high().ww_percent();
    // Where nothing is weighed, these cells hold a text, which counts as nothing.
    let mixed = format!("MAX({}:{})", at(page.row, 9), at(page.row, 11));
    let bottles = format!("MAX({}:{},weaker_ww_percent,weaker_high_ww_percent)", at(page.row, 1), at(page.row, 3));
    let [above, bottle_above, held] =
        ["ABOVE", "BOTTLE ABOVE", "held against"].map(|words| format!("{words} {}", ceiling.figure()));
    let formula = format!(
        "IF({},\"{above}\",IF({},\"{bottle_above}\",IF({}=\"{CAN}\",\"{held}\",\"-\")))",
        Ceiling::passed_by(&mixed),
        Ceiling::passed_by(&bottles),
        at(page.row, 12)
    );
    let came = if row.weigh.as_ref().is_some_and(|weighed| ceiling.is_passed_by(high(weighed.strength))) {
        above
    } else if ceiling.is_passed_by(high(row.stock).max(high(table.weaker))) {
        bottle_above
    } else if row.weigh.is_some() {
        held
    } else {
        "-".to_owned()
    };
    page.alarm(13, &formula, &came)
}

fn came(value: Option<f64>) -> Came<'static> {
    value.map_or(Came::Text("-"), Came::To)
}
