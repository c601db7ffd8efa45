use super::{Outcome, Refusal, args::TitrateArgs, output, read};
use crate::{
    peroxide::{
        Conditions, PreDilution, StatedStrength, Strength, StrengthUnit, Titration, convert_interval,
        convert_interval_to, converted, permanganate, read_glass, resting_on, trace_conversion, trace_titration,
        trace_titre,
    },
    quantity::{AmountConcentration, Normality, Volume},
    source::{Interval, TracedResult},
    text::{Sheet, number, span},
};
use serde::Serialize;

/// The units a strength found by titration is shown in; the first is what was measured.
const SHOWN: [(StrengthUnit, usize); 4] = [
    (StrengthUnit::MolPerL, 4),
    (StrengthUnit::WvPercent, 3),
    (StrengthUnit::WwPercent, 3),
    (StrengthUnit::Volumes, 2),
];

/// The largest burette in common use, in mL.
const BURETTE_ML: f64 = 50.0;

/// Says to dilute first, and how much.
fn more_than_a_burette(titre: Volume, titration: &Titration) -> String {
    let before = titration.dilution.map_or(1.0, |d| d.made_up_to.best().ml() / d.taken.best().ml());
    // Half a burette is a good titre.
    let times = before * titre.ml() / (0.5 * BURETTE_ML);
    let mark = [100.0, 250.0, 500.0, 1000.0].into_iter().find(|mark| mark / 10.0 >= times);
    let how = match mark {
        Some(mark) => format!("dilute first, with --taken 10 --made-up-to {mark}"),
        None => "dilute first, in two steps".to_owned(),
    };
    format!("a titre of up to {titre:.1} is more than a burette of {BURETTE_ML} mL holds: {how}")
}

/// What a titration came to, as data.
#[derive(Serialize)]
struct Report {
    titre_ml: Interval<f64>,
    strength_mol_per_l: Interval<f64>,
    strength_wv_percent: Interval<f64>,
    strength_ww_percent: Interval<f64>,
    strength_volumes: Interval<f64>,
    temperature_c: f64,
    no_tolerance_stated: Vec<&'static str>,
    /// What to do when one burette does not hold the titre.
    dilute_first: Option<String>,
}

/// `foilwork titrate`: the strength from a titre, or the titre to expect from a strength.
pub(super) fn run(args: &TitrateArgs) -> Outcome {
    let conditions = read::conditions(&args.conditions)?;
    let mut glass = Glass::default();
    let titration = Titration {
        titrant: glass.titrant(&args.titrant)?,
        aliquot: glass.volume("--aliquot", &args.aliquot)?,
        dilution: match (&args.taken, &args.made_up_to) {
            (Some(taken), Some(mark)) => Some(PreDilution {
                taken: glass.volume("--taken", taken)?,
                made_up_to: glass.volume("--made-up-to", mark)?,
            }),
            _ => None,
        },
    };
    let (titre, strength) = match (&args.titre, &args.expect) {
        (Some(titre), _) => {
            let titre = glass.volume("--titre", titre)?;
            (titre, titration.strength(titre)?)
        }
        (None, Some(strength)) => {
            let strength = by_volume(strength, &conditions)?;
            (titration.expected_titre(strength)?, strength)
        }
        (None, None) => {
            let way_out = "give --titre (what the burette showed) or --expect (a strength, for the titre to expect)";
            return Err(Refusal(way_out.to_owned()));
        }
    };
    if args.trail.trail {
        let in_unit = |(unit, _)| trace_conversion(strength.map(Strength::from), unit, &conditions);
        let others = SHOWN.into_iter().filter(|(unit, _)| *unit != StrengthUnit::MolPerL).map(in_unit);
        let trail: Vec<_> = match &args.expect {
            None => [Ok(trace_titration(&titration, titre)?)].into_iter().chain(others).collect::<Result<_, _>>()?,
            // What is expected was converted the other way.
            Some(text) => {
                let mut trail = to_volume(text, &conditions)?;
                let own = resting_on(trace_titre(&titration, strength)?, &trail);
                trail.push(own);
                trail
            }
        };
        return output::deliver(output::trail(&trail, args.report.json)?, 0, &args.report.output);
    }
    let [mol_per_l, wv_percent, ww_percent, volumes] = SHOWN.map(|(unit, _)| shown(strength, unit, &conditions));
    let report = Report {
        titre_ml: titre.map(Volume::ml),
        strength_mol_per_l: mol_per_l?,
        strength_wv_percent: wv_percent?,
        strength_ww_percent: ww_percent?,
        strength_volumes: volumes?,
        temperature_c: conditions.temperature.celsius(),
        no_tolerance_stated: glass.no_tolerance,
        dilute_first: (titre.high().ml() > BURETTE_ML).then(|| more_than_a_burette(titre.high(), &titration)),
    };
    output::report(&args.report, &report, || text(&report, args.expect.is_some(), &conditions))
}

/// Readings, and which of them came without a tolerance.
#[derive(Default)]
struct Glass {
    no_tolerance: Vec<&'static str>,
}

impl Glass {
    fn volume(&mut self, name: &'static str, text: &str) -> Result<Interval<Volume>, Refusal> {
        let (value, tolerance) = match read::with_tolerance(name, text)? {
            (value, tolerance, "" | "mL" | "ml") => (value, tolerance),
            (.., unit) => return Err(Refusal(format!("{name} {text:?}: give the volume in mL, not in {unit}"))),
        };
        self.note(name, tolerance);
        let checked = |ml| Volume::from_ml(ml).map_err(|error| read::about(name, error));
        let (volume, tolerance) = (checked(value)?, checked(tolerance.unwrap_or(0.0))?);
        read_glass(volume, tolerance).map_err(|error| read::about(name, error))
    }

    fn titrant(&mut self, text: &str) -> Result<Interval<AmountConcentration>, Refusal> {
        const NAME: &str = "--titrant";
        let (value, tolerance, unit) = read::with_tolerance(NAME, text)?;
        if unit.is_empty() {
            return Err(Refusal(format!("{NAME} {text:?} has no unit: write mol/L, or N for the normality")));
        }
        self.note(NAME, tolerance);
        let at = |value: f64| -> Result<AmountConcentration, Refusal> {
            let failed = |error: &dyn std::fmt::Display| read::about(NAME, error);
            match unit.parse().map_err(|error: crate::peroxide::ParseUnitError| failed(&error))? {
                StrengthUnit::MolPerL => AmountConcentration::from_mol_per_l(value).map_err(|error| failed(&error)),
                StrengthUnit::EqPerL => {
                    Normality::from_eq_per_l(value).map(permanganate).map_err(|error| failed(&error))
                }
                unit => Err(Refusal(format!("{NAME}: state the permanganate in mol/L or N, not in {unit}"))),
            }
        };
        let tolerance = tolerance.unwrap_or(0.0);
        Ok(Interval::new(at(value - tolerance)?, at(value)?, at(value + tolerance)?)?)
    }

    fn note(&mut self, name: &'static str, tolerance: Option<f64>) {
        if tolerance.is_none() {
            self.no_tolerance.push(name.trim_start_matches('-'));
        }
    }
}

/// How it gets there: from a label to % w/w, and from there or from its own unit to mol/L.
fn to_volume(text: &str, conditions: &Conditions) -> Result<Vec<TracedResult>, Refusal> {
    let (strength, label) = expected(text, conditions)?;
    let mut steps: Vec<_> =
        label.map(|label| converted(label, conditions)).transpose()?.flatten().into_iter().collect();
    if strength.best().unit() != StrengthUnit::MolPerL {
        let step = trace_conversion(strength, StrengthUnit::MolPerL, conditions)?;
        steps.push(resting_on(step, &steps));
    }
    Ok(steps)
}

/// A stated strength as the titration counts it; a label keeps all its readings as bounds.
fn by_volume(text: &str, conditions: &Conditions) -> Result<Interval<AmountConcentration>, Refusal> {
    Ok(convert_interval_to(expected(text, conditions)?.0, conditions)?)
}

/// A stated strength, and the label where it is one.
fn expected(text: &str, conditions: &Conditions) -> Result<(Interval<Strength>, Option<StatedStrength>), Refusal> {
    Ok(match read::option("--expect", text) {
        Ok(label @ StatedStrength::TradeLabel(_)) => (label.mass_fraction_under(conditions)?.into(), Some(label)),
        _ => (read::option::<Strength>("--expect", text)?.into(), None),
    })
}

/// The bounds in another unit: those of the titration and those of the density together.
fn shown(
    strength: Interval<AmountConcentration>,
    unit: StrengthUnit,
    conditions: &Conditions,
) -> Result<Interval<f64>, Refusal> {
    Ok(convert_interval(strength, unit, conditions)?.map(Strength::number))
}

fn words(found: &Interval<f64>, decimals: usize) -> String {
    span(found, |value| number(value, decimals))
}

fn text(report: &Report, expected: bool, conditions: &Conditions) -> String {
    let mut sheet = Sheet::default();
    let titre = words(&report.titre_ml, 3);
    if expected {
        sheet.line(&format!("expect a titre of {titre} mL from a bottle of"));
    } else {
        sheet.line(&format!("a titre of {titre} mL says that the bottle has"));
    }
    let found = [
        &report.strength_mol_per_l,
        &report.strength_wv_percent,
        &report.strength_ww_percent,
        &report.strength_volumes,
    ];
    for ((unit, decimals), found) in SHOWN.into_iter().zip(found) {
        sheet.line(&format!("  {} {unit}", words(found, decimals)));
    }
    if let Some(way_out) = &report.dilute_first {
        sheet.paragraph(way_out, 0);
    }
    let (density, oxygen) = (conditions.density.basis(), conditions.molar_volume.code());
    sheet.line(&format!("at {}; density: {density}; oxygen in volumes: {oxygen}", conditions.temperature));
    sheet.paragraph("Bounds: every stated tolerance off at once in the worst way, and the density.", 2);
    if !report.no_tolerance_stated.is_empty() {
        let names = report.no_tolerance_stated.join(", ").replace('-', " ");
        sheet.paragraph(&format!("No tolerance stated, so none counted: {names} (write 12.0+-0.03)."), 2);
    }
    sheet.paragraph("Not in the bounds: a blank, an end point overrun, an old titrant.", 2);
    sheet.finish()
}
