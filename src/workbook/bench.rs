use super::{
    WorkbookError,
    before::first_steps,
    binding::bound,
    cells::at,
    costs::costs,
    limit::{Ceiling, unchecked},
    page::{Allowed, Page},
    sized::{Rounded, SizedBowl},
    sources::{Rests, sources},
    weighed::{decimals, vanishes},
};
use crate::{
    finding::{Finding, Reason, Verdict, WORDS_OF_VERDICTS},
    quantity::{Mass, MassFraction},
    service::{Bowl, Mix, Plan},
    source::{Basis, COMMON_PRACTICE},
};

const PERCENT: usize = 2;
/// What the text sheet says and this one does not.
const LEFT_OUT: &str = "What to weigh, bowl by bowl. When to start, to look and to rinse, the guest, the shop's law and the \
                        rest of the plan stand on the bench sheet in text (`foilwork plan`).";

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
        pages.push(costs(plan, money)?);
    }
    let mut rests = rests(plan);
    rests.extend(Ceiling::of(plan.jurisdiction).map(Ceiling::rests));
    let mut sources = sources(&rests)?;
    sources.row += 1;
    sources.paragraph(WORDS_OF_VERDICTS)?;
    for missing in &plan.not_computed {
        sources.paragraph(&format!("Not computed: {}: {}", missing.what, missing.why))?;
    }
    for fact in &plan.stated_not_used {
        sources.paragraph(&format!("Stated, not used: {}: {}", fact.field, fact.why))?;
    }
    pages.push(sources);
    bound(pages)
}

fn bench(plan: &Plan) -> Result<Page, WorkbookError> {
    let widths = [30.0, 11.0, 11.0, 12.0, 12.0, 12.0, 12.0];
    let mut page = Page::new("Bench", &format!("Bench sheet: {}", plan.title), &widths)?;
    if let Some(banner) = plan.banner() {
        page.stop(&banner)?;
        for finding in plan.findings.iter().filter(|finding| finding.verdict == Verdict::Stop) {
            page.stop(&found(finding))?;
        }
        page.row += 1;
    }
    page.how()?;
    page.paragraph(LEFT_OUT)?;
    unchecked(
        &mut page,
        "What is said here of STOP, warnings and what was not judged is said of the plan as it was made: to \
                          check a change, change the file and plan again.",
    )?;
    for verdict in [Verdict::Warning, Verdict::NotJudged] {
        for finding in plan.findings.iter().filter(|finding| finding.verdict == verdict) {
            page.paragraph(&found(finding))?;
        }
    }
    page.row += 1;
    let division = plan.scale_division.g();
    page.named_input("division_g", "the scale counts in, g", division, decimals(division), Allowed::GRAMS)?;
    let ceiling = Ceiling::of(plan.jurisdiction).filter(|_| plan.mixes.iter().any(|mix| brings(mix) > 0.0));
    if let Some(ceiling) = ceiling {
        ceiling.named(&mut page)?;
    }
    first_steps(&mut page, plan)?;
    for mix in &plan.mixes {
        for bowl in &mix.bowls {
            page.row += 1;
            let (exact, weighed) = bowl_of(&mut page, mix, bowl, division)?;
            if let Some(ceiling) = ceiling.filter(|_| brings(mix) > 0.0) {
                held(&mut page, (mix, bowl), &weighed, ceiling)?;
            }
            let any = bowl.parts.iter().any(|part| part.exact.g() > 0.0);
            vanishes(&mut page, &exact, &weighed, any.then_some(false))?;
        }
    }
    page.cautions(plan.cautions.iter().map(|caution| caution.text))?;
    Ok(page)
}

/// A finding as the text sheet words it.
fn found(finding: &Finding) -> String {
    format!("[{}] {}: {}", finding.verdict, finding.rule, finding.text)
}

/// The most peroxide that a mix may bring onto the hair, in % w/w.
fn brings(mix: &Mix) -> f64 {
    mix.on_hair.high().ww_percent()
}

/// Under a bowl: whether what it comes to passes the ceiling, at the size and on the scale that stand there.
fn held(page: &mut Page, (mix, bowl): (&Mix, &Bowl), weighed: &str, ceiling: Ceiling) -> Result<(), WorkbookError> {
    // A bottle that nobody measured is held against the law at the upper end of what its label may mean.
    let off = mix.on_hair_as_labelled.high().ww_percent() / brings(mix);
    let strength = bowl.on_hair.high().ww_percent();
    let at_most = at(page.row - 1, 6);
    let (words, counted, came) = if off > 1.0 {
        let counted = at(page.row, 6);
        page.formula(6, &format!("{at_most}*{off}"), strength * off, PERCENT)?;
        let (low, stated) = (mix.on_hair_as_labelled.low().ww_percent(), mix.on_hair.low().ww_percent());
        if stated > 0.0 {
            let off = low / stated;
            let least = format!("{}*{off}", at(page.row - 1, 5));
            page.formula(5, &least, bowl.on_hair.low().ww_percent() * off, PERCENT)?;
        }
        ("on the hair, labels read low and high", counted, strength * off)
    } else {
        ("at most, on the hair", at_most, strength)
    };
    let [above, held] = ["ABOVE", "held against"].map(|words| format!("{words} {}", ceiling.figure()));
    page.text(0, words)?;
    // Where nothing is weighed, nothing is held against anything.
    let formula = format!("IF(SUM({weighed})=0,\"-\",IF({},\"{above}\",\"{held}\"))", Ceiling::passed_by(&counted));
    let told = match (bowl.total.g() > 0.0, ceiling.is_passed_by(came)) {
        (false, _) => "-",
        (true, true) => &above,
        (true, false) => &held,
    };
    page.alarm(1, &formula, told)?;
    page.row += 1;
    Ok(())
}

/// A bowl: its size may be changed, and every part follows.
///
/// Its exact and its weighed masses stand in the two ranges that come back.
fn bowl_of(page: &mut Page, mix: &Mix, bowl: &Bowl, division_g: f64) -> Result<(String, String), WorkbookError> {
    let parts = mix.ratio.as_ref().map_or_else(|| "no developer".to_owned(), |ratio| format!("{ratio} parts"));
    let times = match bowl.count {
        1 => "one bowl".to_owned(),
        count => format!("{count} fresh bowls, each as follows"),
    };
    let within = crate::text::amount(bowl.use_within, 0);
    page.paragraph(&format!("{}: {parts}; {times}; used within {within} min", mix.name))?;
    let on_hair = [bowl.on_hair.low(), bowl.on_hair.high()].map(MassFraction::ww_percent);
    let (parts, total, heading) = (&bowl.parts, bowl.total, "into the tared bowl");
    SizedBowl { heading, parts, total, on_hair, rounded: Rounded::Together, division_g }.write(page)
}

/// A caution rests on its citations, or else on what the trade does.
fn basis_of(sources: &[Reason]) -> Basis {
    let cited = sources.iter().filter_map(|source| source.id.as_deref()).any(|id| id != COMMON_PRACTICE.id);
    if cited { Basis::Published } else { Basis::CommonPractice }
}

fn rests(plan: &Plan) -> Vec<Rests> {
    let cited = |sources: &[Reason]| sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
    let mut rests = vec![
        Rests::new("exact grams at another size of the bowl", Basis::Derived, "the ratio of the plan"),
        Rests::rounding(),
        Rests::new("strength on the hair", Basis::Derived, "conservation of mass and of peroxide"),
    ];
    for mix in &plan.mixes {
        let needed = crate::text::range::<Mass>(&mix.needed, 0);
        let (amount, strength) =
            ("as the file states it, or the estimate for hair and method", "the file, or the choice of the plan");
        rests.push(Rests::new(format!("{}: {needed} g needed", mix.name), mix.needed_basis, amount));
        rests.push(Rests::new(format!("{}: strength of the developer", mix.name), mix.strength_basis, strength));
    }
    for default in &plan.defaults {
        let what = format!("{} = {}", default.field, default.value);
        rests.push(Rests::new(what, default.basis, cited(&default.sources)));
    }
    for finding in &plan.findings {
        let what = format!("{}: {}", finding.rule, finding.text);
        rests.push(Rests::new(what, format!("checked: {}", finding.verdict), cited(&finding.sources)));
    }
    for caution in &plan.cautions {
        rests.push(Rests::new(caution.text, basis_of(&caution.sources), cited(&caution.sources)));
    }
    rests
}
