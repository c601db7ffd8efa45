use super::{
    ExposedBasis, Outcome, PorousToning, Target, TonerAnswer, TonerError, TonerMix, TonerPart, TonerRequest,
    lighter::is_lighter,
    predictor::{Predictor, aim, predict},
    rules,
    search::{Candidate, search},
};
use crate::{
    colour::{Difference, Hue, Lab, Level, Shade, Swatch, Temper, Tone, ciede2000, lab_of},
    quantity::Share,
};

/// Finds the mix of shades whose predicted result is nearest to the target.
///
/// The mix is deposited on the exposed pigment: absorptions add up. All choices of up to `most_shades` shades are tried,
/// in whole divisions of the scale; shades lighter than the hair are left out, because a toner does not lighten. The
/// developer is not part of it. A further shade must bring the prediction nearer by [`TonerRequest::WORTH_A_SHADE`], or the
/// simpler mix is the best.
///
/// Where the hair was not measured, the trade's list names its warmth, and the target is neutral or cool, a mix with the
/// complement that the list names wins over one that the model prefers by less than its own error.
///
/// # Errors
///
/// [`TonerError`].
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Hue, Level, Shade, Tone},
///     quantity::Mass,
///     toner::{Exposed, Target, TonerRequest, find_toner},
/// };
///
/// let level = Level::new;
/// let shades = [
///     Shade::new("J9-plain", level(9.0)?, Tone::neutral())?,
///     Shade::new("J9-mist", level(9.0)?, Tone::of(Hue::Violet))?,
/// ];
/// let answer = find_toner(&TonerRequest {
///     exposed: Exposed::lightened(level(5.0)?, level(9.0)?),
///     target: Target::Look { level: level(8.5)?, tone: Tone::neutral() },
///     shades: shades.iter().collect(),
///     most_shades: 2,
///     bowl: Mass::from_g(30.0)?,
///     division: Mass::from_g(1.0)?,
/// })?;
/// assert!(answer.summary().starts_with("violet against pale yellow: "));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The model of [`Swatch`](crate::colour::Swatch). How much of a shade hair takes up is assumed, with wide bounds.
pub fn find_toner(request: &TonerRequest<'_>) -> Result<TonerAnswer, TonerError> {
    let divisions = request.checked()?;
    let shades = request.usable()?;
    let target = request.target.swatch();
    let aim = aim(&target);
    let predictors = Predictor::all(&request.exposed, &shades);
    let Some(best) = predictors.first() else { return Err(TonerError::NoShades) };
    let ranked = search(best, shades.len(), request.most_shades, divisions, aim);
    let mix = |candidate: &Candidate| build(request, &shades, candidate, divisions, &predictors, aim);
    let Some(nearest) = ranked.first().map(mix) else { return Err(TonerError::NoShades) };
    let complement = complement_asked(request, &target);
    let place = complement.and_then(|hue| chosen(&ranked, &shades, hue, nearest.predicted.uncertainty())).unwrap_or(0);
    let best = ranked.get(place).map_or_else(|| nearest.clone(), mix);
    let alternatives = alternatives(&ranked, place, divisions).map(mix).collect();
    let alternatives = telling(&best, alternatives);
    let before = request.exposed.look().difference_to(&target);
    let outcome = outcome(request, &best, &before, &target, complement.is_some());
    let mut findings = rules::check(request, &best, &target);
    findings.extend(complement.and_then(|hue| rules::complement_missing(&request.exposed, hue, &shades)));
    let against = request.exposed.listed_warmth().filter(|_| complement.is_some());
    let against = against.filter(|_| best.tone.main_hue().is_some_and(|hue| hue.temper() == Temper::Cool));
    let porous = PorousToning::of(request.exposed.porosity(), request.bowl);
    Ok(TonerAnswer { outcome, against, target, before, best, alternatives, findings, porous })
}

/// The neutralising hue that the trade names for this hair, when a colour without warmth is wanted.
fn complement_asked(request: &TonerRequest<'_>, target: &Swatch) -> Option<Hue> {
    let (_, lighter) = request.exposed.listed_warmth()?.neutraliser?;
    let cooler = match &request.target {
        Target::Look { tone, .. } => tone.main_hue().is_none_or(|hue| hue.temper() == Temper::Cool),
        Target::Lab(_) => request.exposed.look().difference_to(target).yellower < -Difference::REPEAT_READINGS,
    };
    cooler.then_some(lighter)
}

/// Among the mixes that the model cannot tell from the nearest, the first whose only hue is the complement, or a hue beside
/// it: the complement alone or with neutral shades.
fn chosen(ranked: &[Candidate], shades: &[&Shade], complement: Hue, error: f64) -> Option<usize> {
    let limit = ranked.first()?.cost() + error.max(Difference::REPEAT_READINGS);
    let steps = |candidate: &Candidate| {
        let hues = candidate.parts.iter().filter_map(|(place, _)| shades.get(*place)?.tone().main_hue());
        hues.map(|hue| hue.steps_to(complement)).max().unwrap_or(usize::MAX)
    };
    let within = || ranked.iter().enumerate().take_while(|(_, candidate)| candidate.cost() <= limit);
    (0..=1).find_map(|far| within().find(|(_, candidate)| steps(candidate) == far)).map(|(place, _)| place)
}

/// A verdict is never finer than the model's own error: hair is left alone only when every set of assumptions says so, and
/// never against the warmth that the trade's list names, unless it would have to become lighter: that no toner does.
fn outcome(
    request: &TonerRequest<'_>,
    best: &TonerMix,
    before: &Difference,
    target: &Swatch,
    warmth_to_take_away: bool,
) -> Outcome {
    let left = best.residual.ciede2000;
    if before.ciede2000 > left {
        return if left <= Difference::REPEAT_READINGS { Outcome::Reached } else { Outcome::NearestOnly };
    }
    let measured = request.exposed.start() == ExposedBasis::Measured;
    let samples = request.exposed.look().samples.into_iter().zip(best.predicted.samples).zip(target.samples);
    let mut decided = samples.map(|((untoned, toned), sample)| {
        // Levels of start and target are read by one eye; a measured start owes nothing to it.
        let target = lab_of(if measured { target.best_sample() } else { sample });
        ciede2000(lab_of(untoned), target) <= ciede2000(lab_of(toned), target)
    });
    let left_alone = !warmth_to_take_away || is_lighter(before);
    if left_alone && decided.all(|nearer| nearer) { Outcome::AlreadyNearer } else { Outcome::TooCloseToTell }
}

/// The nearest of all where it is not the best, the best of each smaller number of shades, and further choices in which
/// every shade makes up at least a tenth.
fn alternatives(ranked: &[Candidate], place: usize, divisions: u32) -> impl Iterator<Item = &Candidate> {
    let best = ranked.get(place);
    let count = best.map_or(0, |best| best.parts.len());
    let others = move || ranked.iter().enumerate().filter(move |(at, _)| *at != place).map(|(_, other)| other);
    let nearest = others().min_by(|a, b| a.miss.total_cmp(&b.miss));
    let nearest = nearest.filter(|other| best.is_some_and(|best| other.miss < best.miss));
    let simpler = (1..count).filter_map(move |fewer| others().find(|other| other.parts.len() == fewer));
    let telling = move |other: &&Candidate| other.parts.iter().all(|(_, mass)| mass * 10 >= divisions);
    let mut kept: Vec<&Candidate> = Vec::new();
    for candidate in nearest.into_iter().chain(simpler).chain(others().filter(telling).take(12)) {
        if !kept.contains(&candidate) {
            kept.push(candidate);
        }
    }
    kept.into_iter()
}

/// The alternatives that differ in something that matters: fewer shades, nearer, or a colour that can be told apart from
/// the best and from each other; at most five, nearest first.
fn telling(best: &TonerMix, alternatives: Vec<TonerMix>) -> Vec<TonerMix> {
    let mut kept: Vec<TonerMix> = Vec::new();
    for mix in alternatives {
        let apart = |other: &TonerMix| mix.predicted.difference_to(&other.predicted).ciede2000 > 1.0;
        let fewer = kept.iter().chain([best]).all(|other| mix.parts.len() < other.parts.len());
        let nearer = kept.is_empty() && mix.residual.ciede2000 < best.residual.ciede2000;
        if fewer || nearer || kept.iter().chain([best]).all(apart) {
            kept.push(mix);
        }
    }
    kept.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    kept.truncate(5);
    kept
}

fn build(
    request: &TonerRequest<'_>,
    shades: &[&Shade],
    candidate: &Candidate,
    divisions: u32,
    predictors: &[Predictor],
    aim: Lab,
) -> TonerMix {
    let share_of = |mass: u32| f64::from(mass) / f64::from(divisions);
    let shares: Vec<_> = candidate.parts.iter().map(|(place, mass)| (*place, share_of(*mass))).collect();
    let predicted = predict(predictors, &shares);
    let mut level = 0.0;
    let mut tones = Vec::new();
    let mut parts = Vec::new();
    for (place, share) in shares {
        let Some(shade) = shades.get(place) else { continue };
        let checked = Share::from_fraction(share).unwrap_or(Share::ALL);
        level += shade.level().number() * share;
        tones.push((shade.tone(), checked));
        let mass = request.bowl.times(share).unwrap_or(request.bowl);
        parts.push(TonerPart { code: shade.code().to_owned(), mass, share: checked });
    }
    parts.sort_by(|a, b| b.mass.g().total_cmp(&a.mass.g()));
    TonerMix {
        parts,
        level: Level::clamped(level),
        tone: Tone::blend(tones),
        residual: Difference::of(predicted.lab(), aim),
        predicted,
    }
}
