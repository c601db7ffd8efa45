//! `foilwork hair`: how much hair, how fast it grows, how much of it is white.

use super::{
    Outcome, Refusal,
    args::{HairArgs, HairFactsArgs},
    output, read,
};
use crate::{
    hair::{
        Age, DensityFact, Diameter, Group, GrowthRate, HairCount, HairDensity, HairFacts, MassPerLength, MeasuredFact,
        Ponytail, ThreadFact, Weeks, WhiteCount, WhiteShare, as_used, grown, growth, trace_growth, weeks_to_grow,
        white_share,
    },
    head::{PastUse, Technique, film, hair_by_use, take_up},
    quantity::{Area, InvalidQuantity, Length, Mass, Quantity, Share},
    source::{Basis, Citation, Interval, Sourced, TracedResult},
    text::{Sheet, range, traced},
};
use serde::Serialize;

/// Said before any figure where what was used and what is stated cannot both be.
const DOES_NOT_FIT: &str = "DOES NOT FIT: what was used and the rest of what is stated cannot both be true of this hair. Work \
                            with none of these figures: check --used, --used-on and the length that it was put on, then ask \
                            again.";
/// What was used over what it would be for each g/cm of all the hair.
const BY_USE: &str = "used / (share it was put on x painted length x taken up by a gram of hair)";
/// Of a regrowth, less the film on the scalp.
const BY_USE_ON_SCALP: &str = "(used - film on the scalp x scalp under it) / (share it was put on x painted length x taken up by a \
                               gram of hair)";
const FITS: &str = "yes where the bounds by use and those of what is stated have a mass by length in common, else no";

/// What there is of the hair, as data.
#[derive(Serialize)]
struct Report {
    share_percent: Share,
    length_cm: Length,
    hairs: Interval<HairCount>,
    mass_g: Interval<Mass>,
    surface_cm2: Interval<Area>,
    head_mass_per_length_g_per_cm: Interval<MassPerLength>,
    head_mass_per_length_by_use_g_per_cm: Option<Interval<MassPerLength>>,
    use_fits: Option<bool>,
    growth_cm_per_month: Interval<GrowthRate>,
    grown_cm: Option<Interval<Length>>,
    grown_in_weeks: Option<Interval<Weeks>>,
    white: Option<WhiteShare>,
    rests_on: Vec<RestsOn>,
    basis: Basis,
}

#[derive(Serialize)]
struct RestsOn {
    what: &'static str,
    value: String,
    basis: Basis,
    source: Option<&'static Citation>,
}

pub(super) fn run(args: &HairArgs) -> Outcome {
    let length = quantity::<Length>("--length", args.length)?;
    let facts = facts(&args.facts)?;
    let used = used(args, &facts, length)?;
    let by_use = used.as_ref().map(|(by_use, _)| *by_use);
    let use_fits = by_use.map(|by_use| {
        let stated = facts.head().mass_per_length.value;
        by_use.low() <= stated.high() && stated.low() <= by_use.high()
    });
    let head = HairFacts { by_use, ..facts }.head();
    let share = quantity::<Share>("--share", args.share)?;
    let tress = head.part(share);
    let rate = growth(facts.group);
    let weeks = args.weeks.map(|weeks| quantity::<Weeks>("--weeks", weeks)).transpose()?;
    let regrowth = args.regrowth.map(|cm| quantity::<Length>("--regrowth", cm)).transpose()?;
    if let Some(regrowth) = regrowth.filter(|regrowth| *regrowth > length) {
        let way_out = format!("--regrowth {regrowth} is longer than --length {length} (correct one of the two)");
        return Err(Refusal(way_out));
    }
    let counts = args.white.iter().map(|text| count(text)).collect::<Result<Vec<_>, _>>()?;
    if args.trail.trail {
        let mut trail = head.trail(share, length);
        trail.extend(used.map(|(_, traced)| traced));
        trail.extend(by_use.zip(use_fits).map(|(by_use, fits)| fit(by_use, facts.head().mass_per_length, fits)));
        trail.extend(weeks.map(|weeks| trace_growth(weeks, rate)));
        let mut text = output::trail(&trail, args.report.json)?;
        if use_fits == Some(false) && !args.report.json {
            let mut sheet = Sheet::default();
            sheet.paragraph(DOES_NOT_FIT, 0);
            text = format!("{}\n{text}", sheet.finish());
        }
        return output::deliver(text, 0, &args.report.output);
    }
    let report = Report {
        share_percent: share,
        length_cm: length,
        hairs: tress.hairs,
        mass_g: tress.mass(length.into()),
        surface_cm2: tress.surface(length.into()),
        head_mass_per_length_g_per_cm: head.mass_per_length.value,
        head_mass_per_length_by_use_g_per_cm: by_use,
        use_fits,
        growth_cm_per_month: rate.value,
        grown_cm: weeks.map(|weeks| grown(weeks.into(), rate.value)),
        grown_in_weeks: regrowth.map(|regrowth| weeks_to_grow(regrowth.into(), rate.value)),
        white: counted(&counts)?,
        rests_on: vec![
            rests_on("hair-bearing scalp", head.scalp, 0),
            rests_on("density", head.density, 0),
            rests_on("cross-section", head.cross_section, 0),
            rests_on("mass per length", head.mass_per_length, 2),
            rests_on("growth", rate, 2),
        ],
        basis: head.basis(),
    };
    output::report(&args.report, &report, || text(&report))
}

/// What an earlier use says of all the hair, and how it comes about. Of a regrowth the film on the scalp is taken off, and its length is what grew.
fn used(
    args: &HairArgs,
    facts: &HairFacts,
    length: Length,
) -> Result<Option<(Interval<MassPerLength>, TracedResult)>, Refusal> {
    let Some(used) = args.used else { return Ok(None) };
    let used = quantity::<Mass>("--used", used)?;
    let share = quantity::<Share>("--used-on", args.used_on)?;
    let technique: Technique = read::option("--used-technique", &args.used_technique)?;
    let regrowth = technique == Technique::Regrowth;
    let long = match args.regrowth.filter(|_| regrowth) {
        Some(cm) => quantity::<Length>("--regrowth", cm)?,
        None if regrowth => {
            let way_out = "--used-technique regrowth: how long the regrowth was is not said (give --regrowth in cm)";
            return Err(Refusal(way_out.to_owned()));
        }
        None => length,
    };
    let scalp = regrowth.then(|| facts.head().scalp.value.map(|all| Area::nearest(all.cm2() * share.fraction())));
    let takes = take_up(technique, args.used_lightener).value;
    let profile = technique.profile(length).value;
    let use_of = PastUse::of(used, share.into(), &profile, long.into(), takes, scalp);
    let found = hair_by_use(&[use_of]);
    let little = || {
        let text =
            format!("--used {used} on --used-on {share} says nothing of the hair (give what was put on it, in g)");
        Refusal(text)
    };
    let by_use = found.ok_or_else(little)?;
    let mut inputs = vec![
        traced("used", as_used(used)),
        traced("share it was put on", Interval::exact(share)),
        traced("painted length", profile.painted(long.into())),
        traced("taken up by a gram of hair", takes),
    ];
    inputs.extend(scalp.map(|scalp| traced("scalp under it", scalp)));
    inputs.extend(scalp.map(|_| traced("film on the scalp", film().value)));
    let value = by_use.map(MassPerLength::g_per_cm);
    let formula = if regrowth { BY_USE_ON_SCALP } else { BY_USE };
    let result = TracedResult::new("mass by length, by use", value, MassPerLength::UNIT, formula, Basis::Assumed);
    Ok(Some((by_use, result.made_of(inputs))))
}

/// Whether both can be true of this hair.
fn fit(by_use: Interval<MassPerLength>, stated: Sourced<Interval<MassPerLength>>, fits: bool) -> TracedResult {
    TracedResult::exact("use fits", if fits { "yes" } else { "no" }, "word", FITS, Basis::Assumed).made_of([
        traced("mass by length, by use", by_use).resting(Basis::Assumed),
        traced("mass by length, as stated", stated.value).resting(stated.basis),
    ])
}

/// A value that was given as a bare number in its own unit.
fn quantity<Q: Quantity>(name: &str, value: f64) -> Result<Q, Refusal> {
    Q::from_unit(value).map_err(|error: InvalidQuantity| read::about(name, error))
}

/// The facts that the options state.
pub(super) fn facts(args: &HairFactsArgs) -> Result<HairFacts, Refusal> {
    let density = match (&args.density, args.counted) {
        (Some(by_eye), _) => Some(DensityFact::ByEye(read::option("--density", by_eye)?)),
        (None, Some(counted)) => Some(DensityFact::Counted(quantity::<HairDensity>("--counted", counted)?.into())),
        (None, None) => None,
    };
    let method = read::option("--method", &args.method)?;
    let thread = match (&args.texture, args.diameter) {
        (Some(texture), _) => Some(ThreadFact::ByEye(read::option("--texture", texture)?)),
        (None, Some(um)) => Some(ThreadFact::Measured(quantity::<Diameter>("--diameter", um)?.into(), method)),
        (None, None) => None,
    };
    let gathered = quantity::<Share>("--gathered", args.gathered)?;
    let tail = |cm| Ok::<_, Refusal>(Ponytail { girth: quantity::<Length>("--girth", cm)?.into(), gathered });
    let facts = HairFacts {
        group: args.group.as_deref().map(|text| read::option::<Group>("--group", text)).transpose()?,
        age: args.age.map(|years| quantity::<Age>("--age", years)).transpose()?,
        density,
        thread,
        scalp: args.scalp.map(|cm2| quantity::<Area>("--scalp", cm2)).transpose()?.map(Interval::from),
        ponytail: args.girth.map(tail).transpose()?,
        by_use: None,
    };
    facts.plausible().map_err(|error| read::about(option_of(error.fact), error))
}

const fn option_of(fact: MeasuredFact) -> &'static str {
    match fact {
        MeasuredFact::Density => "--counted",
        MeasuredFact::Diameter => "--diameter",
        MeasuredFact::Scalp => "--scalp",
        MeasuredFact::Girth => "--girth",
        MeasuredFact::Gathered => "--gathered",
    }
}

fn count(text: &str) -> Result<WhiteCount, Refusal> {
    let way_out = || Refusal(format!("--white {text:?}: write region, share and counts, for example sides=27:60/100"));
    let (region, rest) = text.split_once('=').ok_or_else(way_out)?;
    let (share, counts) = rest.split_once(':').ok_or_else(way_out)?;
    let (white, counted) = counts.split_once('/').ok_or_else(way_out)?;
    let share = share.trim().parse::<f64>().map_err(|_| way_out())?;
    let number = |text: &str| text.trim().parse::<u32>().map_err(|_| way_out());
    let (white, counted) = (number(white)?, number(counted)?);
    if white > counted || counted == 0 {
        let wrong =
            format!("--white {text:?}: {white} white of {counted} counted cannot be (white/counted, as in 60/100)");
        return Err(Refusal(wrong));
    }
    Ok(WhiteCount { region: region.trim().to_owned(), share: quantity("--white", share)?, white, counted })
}

fn counted(counts: &[WhiteCount]) -> Result<Option<WhiteShare>, Refusal> {
    let total: f64 = counts.iter().map(|count| count.share.percent()).sum();
    if total > 100.0 + 1e-9 {
        let total = crate::text::number(total, 1);
        return Err(Refusal(format!("--white: the shares of the regions add up to {total} %, more than all the hair")));
    }
    Ok(white_share(counts))
}

fn rests_on<Q: Quantity>(what: &'static str, from: Sourced<Interval<Q>>, decimals: usize) -> RestsOn {
    RestsOn {
        what,
        value: format!("{} {}", range(&from.value, decimals), Q::UNIT),
        basis: from.basis,
        source: from.citation,
    }
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    let doubtful = report.use_fits == Some(false);
    if doubtful {
        sheet.paragraph(DOES_NOT_FIT, 0);
        sheet.blank();
    }
    sheet.line(&format!("{} of the hair, {} long", report.share_percent, report.length_cm));
    sheet.line(&format!("hairs    {}", range(&report.hairs, 0)));
    sheet.line(&format!("mass     {} g", range(&report.mass_g, 1)));
    sheet.line(&format!("surface  {} cm2", range(&report.surface_cm2, 0)));
    if let Some(grown) = &report.grown_cm {
        sheet.line(&format!("grown    {} cm", range(grown, 1)));
    }
    if let Some(weeks) = &report.grown_in_weeks {
        sheet.line(&format!("grown in {} weeks", range(weeks, 1)));
    }
    if let Some(white) = &report.white {
        sheet.paragraph(
            &format!(
                "white    {} %; counted: {} ({:.0} of the hair)",
                range(&white.white, 0),
                white.regions.join(", "),
                white.counted
            ),
            9,
        );
    }
    if let Some(by_use) = &report.head_mass_per_length_by_use_g_per_cm {
        let used = range(by_use, 1);
        sheet.paragraph(&format!("by use   {used} g for each cm of all the hair"), 9);
    }
    sheet.blank();
    for on in &report.rests_on {
        let source = on.source.map(|citation| format!(", {}", citation.id)).unwrap_or_default();
        sheet.paragraph(&format!("{}: {} [{}{source}]", on.what, on.value, on.basis), 2);
    }
    let bounds = if doubtful {
        "Bounds span both, for one of the two is wrong; how often they hold cannot be said."
    } else {
        "Bounds hold 80 of 100 people like this one. A ponytail's girth narrows them, and what was used before, --used."
    };
    sheet.paragraph(bounds, 0);
    sheet.finish()
}
