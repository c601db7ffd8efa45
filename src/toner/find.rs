use super::{
    MixPart, Outcome, TonerAnswer, TonerError, TonerMix, TonerRequest,
    predictor::{Predictor, aim, predict},
    rules,
    search::{Candidate, search},
};
use crate::{
    colour::{Difference, Level, Tone},
    quantity::Share,
};

/// Finds the mix of shades whose predicted result is nearest to the target.
///
/// The mix is deposited on the exposed pigment: absorptions add up. All choices of up to `most_shades` shades are tried,
/// in whole divisions of the scale. The developer is not part of it. A further shade must bring the prediction nearer by
/// [`TonerRequest::WORTH_A_SHADE`], or the simpler mix is the best.
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
///     toner::{Exposed, Outcome, Target, TonerRequest, find_toner},
/// };
///
/// let level = Level::new;
/// let shades = [
///     Shade::new("10-0", level(10.0)?, Tone::neutral())?,
///     Shade::new("9-7", level(9.0)?, Tone::of(Hue::Violet))?,
/// ];
/// let answer = find_toner(&TonerRequest {
///     exposed: Exposed::lightened(level(5.0)?, level(9.0)?),
///     target: Target::Look { level: level(8.0)?, tone: Tone::of(Hue::Violet) },
///     shades: shades.iter().collect(),
///     most_shades: 2,
///     bowl: Mass::from_g(30.0)?,
///     division: Mass::from_g(1.0)?,
/// })?;
/// assert!(answer.best.residual.ciede2000 < answer.before.ciede2000);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The model of [`Swatch`](crate::colour::Swatch). How much of a shade hair takes up is assumed, with wide bounds.
pub fn find_toner(request: &TonerRequest<'_>) -> Result<TonerAnswer, TonerError> {
    let divisions = request.checked()?;
    let target = request.target.swatch();
    let aim = aim(&target);
    let best = Predictor::best(&request.exposed, &request.shades);
    let ranked = search(&best, request.shades.len(), request.most_shades, divisions, aim);
    let predictors = Predictor::all(&request.exposed, &request.shades);
    let mix = |candidate: &Candidate| build(request, candidate, divisions, &predictors, aim);
    let Some(first) = ranked.first() else { return Err(TonerError::NoShades) };
    let best = mix(first);
    let alternatives = alternatives(&ranked, divisions).into_iter().map(mix).collect();
    let before = request.exposed.look().difference_to(&target);
    let outcome = if before.ciede2000 <= best.residual.ciede2000 {
        Outcome::AlreadyNearer
    } else if best.residual.ciede2000 <= Difference::REPEAT_READINGS {
        Outcome::Reached
    } else {
        Outcome::NearestOnly
    };
    let findings = rules::check(request, &best, &target);
    Ok(TonerAnswer { outcome, before, target, best, alternatives, findings })
}

/// The nearest of all where it is not the best, the best of each smaller number of shades, and up to three further
/// choices in which every shade makes up at least a tenth.
fn alternatives(ranked: &[Candidate], divisions: u32) -> Vec<&Candidate> {
    let Some((best, others)) = ranked.split_first() else { return Vec::new() };
    let nearest = others.iter().min_by(|a, b| a.miss.total_cmp(&b.miss)).filter(|other| other.miss < best.miss);
    let simpler = (1..best.parts.len()).filter_map(|fewer| others.iter().find(|other| other.parts.len() == fewer));
    let telling = |other: &&Candidate| other.parts.iter().all(|(_, mass)| mass * 10 >= divisions);
    let mut kept: Vec<&Candidate> = Vec::new();
    for candidate in nearest.into_iter().chain(simpler).chain(others.iter().filter(telling).take(3)) {
        if !kept.contains(&candidate) {
            kept.push(candidate);
        }
    }
    kept.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    kept
}

fn build(
    request: &TonerRequest<'_>,
    candidate: &Candidate,
    divisions: u32,
    predictors: &[Predictor],
    aim: crate::colour::Lab,
) -> TonerMix {
    let share_of = |mass: u32| f64::from(mass) / f64::from(divisions);
    let shares: Vec<_> = candidate.parts.iter().map(|(place, mass)| (*place, share_of(*mass))).collect();
    let predicted = predict(predictors, &shares);
    let mut level = 0.0;
    let mut tones = Vec::new();
    let mut parts = Vec::new();
    for (place, share) in shares {
        let Some(shade) = request.shades.get(place) else { continue };
        let checked = Share::from_fraction(share).unwrap_or(Share::ALL);
        level += shade.level().number() * share;
        tones.push((shade.tone(), checked));
        let mass = request.bowl.times(share).unwrap_or(request.bowl);
        parts.push(MixPart { code: shade.code().to_owned(), mass, share: checked });
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
