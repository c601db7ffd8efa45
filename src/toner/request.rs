use super::{
    Exposed, MixPart, Outcome, Target, TonerAnswer, TonerMix,
    bench::{Bench, aim, predict},
    rules,
    search::{Candidate, search},
};
use crate::{
    colour::{Difference, Level, Shade, Tone},
    quantity::{Mass, Share},
};

/// What to look for, among what, and how finely it can be weighed.
#[derive(Debug, Clone)]
pub struct TonerRequest<'a> {
    /// The hair.
    pub exposed: Exposed,
    /// The colour wanted.
    pub target: Target,
    /// The shades at hand; a shade of no strength counts as a clear diluter.
    pub shades: Vec<&'a Shade>,
    /// How many shades a mix may have, from 1 to [`TonerRequest::MOST_SHADES`].
    pub most_shades: usize,
    /// Mass of all shades together, without developer.
    pub bowl: Mass,
    /// Division of the scale.
    pub division: Mass,
}

/// Why no toner can be looked for.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TonerError {
    /// Nothing to choose from.
    #[error("no shades to choose from: give at least one shade of the chart")]
    NoShades,
    /// More than anybody has on the shelf; the search would take long.
    #[error(
        "too many shades to search (got {got}): give at most {most} for mixes of up to {size}, for example those of \
             the levels in question"
    )]
    TooManyShades {
        /// How many there are.
        got: usize,
        /// How many are searched.
        most: usize,
        /// The size of the mixes.
        size: usize,
    },
    /// A mix has one to four shades.
    #[error("invalid number of shades in a mix (got {got}): must be from 1 to {most}", most = TonerRequest::MOST_SHADES)]
    MixSize {
        /// What was asked.
        got: usize,
    },
    /// The bowl cannot be weighed in whole divisions.
    #[error(
        "cannot weigh a bowl of {bowl} on a scale with a division of {division}: the bowl must be from 1 to 10000 \
             whole divisions"
    )]
    Scale {
        /// The bowl.
        bowl: Mass,
        /// The division.
        division: Mass,
    },
}

impl TonerRequest<'_> {
    /// CIEDE2000 by which a further shade must bring a mix nearer (assumed: no eye tells less).
    pub const WORTH_A_SHADE: f64 = 0.25;
    /// The most shades a mix may have.
    pub const MOST_SHADES: usize = 4;

    /// The most shades that are searched for mixes of up to `size` shades; it keeps a search well below a second.
    #[must_use]
    pub const fn longest_shelf(size: usize) -> usize {
        if size < 4 { 48 } else { 24 }
    }
}

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
    let divisions = checked(request)?;
    let target = request.target.swatch();
    let aim = aim(&target);
    let best = Bench::best(&request.exposed, &request.shades);
    let ranked = search(&best, request.shades.len(), request.most_shades, divisions, aim);
    let benches = Bench::all(&request.exposed, &request.shades);
    let mix = |candidate: &Candidate| build(request, candidate, divisions, &benches, aim);
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

fn checked(request: &TonerRequest<'_>) -> Result<u32, TonerError> {
    let (got, size) = (request.shades.len(), request.most_shades);
    if got == 0 {
        return Err(TonerError::NoShades);
    }
    if size == 0 || size > TonerRequest::MOST_SHADES {
        return Err(TonerError::MixSize { got: size });
    }
    let most = TonerRequest::longest_shelf(size);
    if got > most {
        return Err(TonerError::TooManyShades { got, most, size });
    }
    let divisions = request.bowl.g() / request.division.g();
    let whole = divisions.round();
    if (1.0..=10_000.0).contains(&whole) && (divisions - whole).abs() <= 1e-6 {
        Ok(whole as u32)
    } else {
        Err(TonerError::Scale { bowl: request.bowl, division: request.division })
    }
}

fn build(
    request: &TonerRequest<'_>,
    candidate: &Candidate,
    divisions: u32,
    benches: &[Bench],
    aim: crate::colour::Lab,
) -> TonerMix {
    let share_of = |mass: u32| f64::from(mass) / f64::from(divisions);
    let shares: Vec<_> = candidate.parts.iter().map(|(place, mass)| (*place, share_of(*mass))).collect();
    let predicted = predict(benches, &shares);
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
