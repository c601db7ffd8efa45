//! How light a section reads along the strand, and how its hair lies in the zones of the strand.

use super::super::{Hair, canvas::Stretch, colours::Colours, sections::Work};
use crate::{
    colour::{Level, Swatch, level_of_luminance, levels_of, natural_luminance},
    head::Profile,
    quantity::{Area, Length, Mass, Quantity, Share},
    reader::Problems,
    service::{request::Request, shape::Zone},
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// How light a section reads from the scalp to the ends, before any root shadow.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LevelsAlong {
    /// Of the hair of its area, what is taken: the rest between it counts in. Absent where that is not known: then it is the
    /// taken hair alone.
    #[serde(rename = "taken_percent")]
    pub taken: Option<Share>,
    /// Centimetres beside each other that read as one level, to half a level.
    pub stretches: Vec<LevelStretch>,
    /// What the levels rest on: how the technique lies along the strand, and the colour model.
    pub basis: Basis,
}

/// Centimetres that read as one level.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct LevelStretch {
    /// Where they begin, from the scalp.
    #[serde(rename = "from_cm")]
    pub from: Length,
    /// Where they end.
    #[serde(rename = "to_cm")]
    pub to: Length,
    /// How light they read, their mean.
    pub level: Interval<Level>,
}

/// Hair in a zone of the strand, of the head or of a section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ZoneHair {
    /// The zone.
    pub zone: Zone,
    /// Its mass.
    #[serde(rename = "hair_g")]
    pub hair: Interval<Mass>,
    /// Its surface.
    #[serde(rename = "surface_cm2")]
    pub surface: Interval<Area>,
}

const ZONES: [Zone; 3] = [Zone::Roots, Zone::MidLengths, Zone::Ends];

/// None where the length of the hair is not stated.
pub(super) fn levels(
    request: &Request,
    hair: &Hair,
    colours: &Colours,
    work: &Work<'_>,
    lights: &mut Lights,
) -> Result<Option<LevelsAlong>, Problems> {
    let known = request.amounts.length.zip(work.task.on_head).zip(colours.at(work.place));
    let Some(((length, on_head), colour)) = known else { return Ok(None) };
    let taken = work.taken(request)?;
    let part = taken.unwrap_or(Share::ALL).fraction();
    let zones = ZONES.map(|zone| (zone, request.amounts.stretch(zone)));
    let end = request.amounts.stretch(work.task.zone).map_or(length, |(_, end)| end);
    let there = |cm: (Length, Length), at: Length| {
        let zone =
            zones.iter().find(|(_, cm)| cm.is_some_and(|(_, to)| at <= to)).map_or(Zone::Ends, |(zone, _)| *zone);
        hair.at(Stretch { zone, cm: Some(cm) }).level
    };
    let covered = |at: Length| {
        let painted = |share: Share| if at < end { share.percent() * part } else { 0.0 };
        // Ends between the foils, on hair that these leave.
        let between = on_head.ends.filter(|ends| at >= ends.from);
        let between = between.map_or(0.0, |ends| (1.0 - part) * ends.of_left.percent());
        on_head.profile.covered_at(at).map(|share| Share::nearest(painted(share) + between))
    };
    let light = lights.of(&colour.swatch);
    let mut found: Vec<LevelStretch> = Vec::new();
    let mut same: Option<(Interval<Level>, Interval<Share>, Interval<Level>)> = None;
    for from in (0..=u16::MAX).map(f64::from).take_while(|from| *from < length.cm()).map(Length::nearest) {
        let to = Length::nearest((from.cm() + 1.0).min(length.cm()));
        let at = Length::nearest(f64::midpoint(from.cm(), to.cm()));
        let (base, covered) = (there((from, to), at), covered(at));
        // Most centimetres are as the one before.
        let level = match same {
            Some((before, share, level)) if before == base && share == covered => level,
            _ => light.among(base, covered),
        };
        same = Some((base, covered, level));
        join(&mut found, LevelStretch { from, to, level });
    }
    Ok(Some(LevelsAlong { taken, stretches: found, basis: Basis::Assumed }))
}

/// What was worked out for covered hair, as many sections end alike.
#[derive(Default)]
pub(super) struct Lights(Vec<(Swatch, Light)>);

impl Lights {
    fn of(&mut self, swatch: &Swatch) -> Light {
        if let Some((_, light)) = self.0.iter().rev().find(|(known, _)| known == swatch) {
            return *light;
        }
        let light = Light::of(swatch);
        // A plan of hundreds of looks compares no longer than it would work.
        if self.0.len() < 16 {
            self.0.push((*swatch, light));
        }
        light
    }
}

/// The covered hair: its luminance by the best estimate, and the levels that the model is unsure of it.
#[derive(Clone, Copy)]
struct Light {
    y: f64,
    level: Interval<Level>,
}

impl Light {
    fn of(swatch: &Swatch) -> Self {
        Self { y: luminance(swatch), level: levels_of(swatch) }
    }

    /// Hair of a base of which a share is covered. The light of both adds up; what the model is unsure of counts as far as it is
    /// covered.
    fn among(&self, base: Interval<Level>, covered: Interval<Share>) -> Interval<Level> {
        if covered.high() == Share::NONE {
            return base;
        }
        let at = |base: Level, share: Share, bound: Level| {
            let (part, y) = (share.fraction(), natural_luminance(base));
            let unsure = (bound - self.level.best()).levels() * part;
            Level::clamped(level_of_luminance(y * (1.0 - part) + self.y * part).number() + unsure)
        };
        let best = at(base.best(), covered.best(), self.level.best());
        if base.is_exact() && covered.is_exact() && self.level.is_exact() {
            return Interval::exact(best);
        }
        // Covered hair may be the darker one too.
        let darkens = self.level.best() < base.best();
        let (least, most) = if darkens { (covered.high(), covered.low()) } else { (covered.low(), covered.high()) };
        let (low, high) = (at(base.low(), least, self.level.low()), at(base.high(), most, self.level.high()));
        Interval::exact(best).widened_to(Interval::exact(low)).widened_to(Interval::exact(high))
    }
}

fn luminance(swatch: &Swatch) -> f64 {
    let [_, y, _] = swatch.best_sample();
    y
}

/// Goes on with the last stretch where the level is the same to half a level.
fn join(found: &mut Vec<LevelStretch>, next: LevelStretch) {
    let half = |level: &Interval<Level>| (level.best().number() * 2.0).round();
    match found.last_mut().filter(|last| half(&last.level) == half(&next.level)) {
        Some(last) => {
            let (long, more) = (last.to.cm() - last.from.cm(), next.to.cm() - next.from.cm());
            let mean = (last.level.best().number() * long + next.level.best().number() * more) / (long + more);
            let all = last.level.widened_to(next.level);
            last.level = Interval::ordered(all.low(), Level::clamped(mean), all.high());
            last.to = next.to;
        }
        None => found.push(next),
    }
}

/// The hair of a section that carries mixture, zone by zone; empty where its length is not stated.
pub(super) fn zones(request: &Request, work: &Work<'_>) -> Vec<ZoneHair> {
    let (Some(on_head), Some(share)) = (work.task.on_head, work.task.share) else { return Vec::new() };
    let own = request.amounts.stretch(work.task.zone);
    let part = |share: Share| request.amounts.head.part(share);
    let tress = part(share);
    let of = |zone: Zone| {
        let ((from, to), (_, end)) = request.amounts.stretch(zone).zip(own)?;
        let to_end = if to < end { to } else { end };
        let long = painted_between(&on_head.profile, from, to_end);
        let (mut hair, mut surface) = (tress.mass(long), tress.surface(long));
        if let Some(ends) = on_head.ends.filter(|ends| ends.from < to) {
            let (more, first) = (part(ends.share), if ends.from > from { ends.from } else { from });
            let long = Interval::exact(Length::nearest(to.cm() - first.cm()));
            hair = hair.combine(more.mass(long), |one: Mass, other| one + other);
            surface = surface.combine(more.surface(long), |one, other| Area::nearest(one.cm2() + other.cm2()));
        }
        Some(ZoneHair { zone, hair, surface })
    };
    ZONES.into_iter().filter_map(of).collect()
}

/// The length between two places that would hold as much product if it were covered in full: most of it where more is
/// covered, from nearer to the scalp on.
fn painted_between(profile: &Profile, from: Length, to: Length) -> Interval<Length> {
    let of = |covered: Share, start: Length, transition: Length| {
        let exact = Profile { covered: covered.into(), start: start.into(), transition: transition.into() };
        let painted = |to: Length| exact.painted(to.into()).best().cm();
        Length::nearest((painted(to) - painted(from)).max(0.0))
    };
    let Profile { covered, start, transition } = profile;
    Interval::ordered(
        of(covered.low(), start.high(), transition.high()),
        of(covered.best(), start.best(), transition.best()),
        of(covered.high(), start.low(), transition.low()),
    )
}

#[cfg(test)]
mod tests {
    use super::{LevelStretch, Light, join, luminance};
    use crate::{
        colour::{Level, Swatch, natural_luminance},
        quantity::{Length, Quantity, Share},
        source::Interval,
    };

    fn level(number: f64) -> Level {
        Level::clamped(number)
    }

    /// The level whose natural hair is as light, by halving.
    fn level_of(light: f64) -> f64 {
        let (mut low, mut high) = (1.0, 12.0);
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if natural_luminance(level(middle)) < light { low = middle } else { high = middle }
        }
        low
    }

    /// Light adds up by the share that is covered, at the best estimate and at either bound: of a base that is lighter than what covers it
    /// the most that is covered is the darkest. What the model is unsure of the covered hair counts as far as it is covered.
    #[test]
    fn covered_hair_and_its_base_read_as_their_light_together() {
        let swatch = Swatch::lightened(level(6.0), level(8.0));
        let model = Light::of(&swatch);
        let unsure = Interval::ordered(level(7.6), level(8.0), level(8.7));
        for of in [unsure, Interval::exact(level(8.0))] {
            let light = Light { level: of, ..model };
            for (low, best, high) in [(6.0, 6.0, 6.0), (5.5, 6.0, 6.5), (9.0, 9.5, 10.0), (9.0, 9.0, 9.0)] {
                for share in
                    [(0.0, 0.0, 0.0), (0.0, 20.0, 40.0), (50.0, 50.0, 50.0), (30.0, 70.0, 100.0), (100.0, 100.0, 100.0)]
                {
                    let base = Interval::ordered(low, best, high).map(level);
                    let covered = Interval::ordered(share.0, share.1, share.2).map(Share::nearest);
                    let at = |base: f64, percent: f64, bound: Level| {
                        let part = percent / 100.0;
                        let sum = natural_luminance(level(base)) * (1.0 - part) + luminance(&swatch) * part;
                        level_of(sum) + (bound.number() - 8.0) * part
                    };
                    let darkens = best > 8.0;
                    let (least, most) = if darkens { (share.2, share.0) } else { (share.0, share.2) };
                    let ends = [at(low, least, of.low()), at(best, share.1, of.best()), at(high, most, of.high())];
                    let want = if share.2 == 0.0 {
                        [low, best, high]
                    } else {
                        [ends[0].min(ends[1]).min(ends[2]), ends[1], ends[0].max(ends[1]).max(ends[2])]
                    };
                    let got = light.among(base, covered).to_array().map(Level::number);
                    for (got, want) in got.into_iter().zip(want) {
                        assert!((got - want).abs() < 1e-3, "{base:?}, {covered:?}: {got}, not {want}");
                    }
                }
            }
        }
    }

    /// Stretches of one level to half a level go on, at their mean by length and with the bounds of both.
    #[test]
    fn stretches_that_read_alike_are_one() {
        let cm = |from: f64, to: f64, levels: [f64; 3]| {
            let [low, best, high] = levels.map(level);
            LevelStretch {
                from: Length::nearest(from),
                to: Length::nearest(to),
                level: Interval::ordered(low, best, high),
            }
        };
        let mut found = Vec::new();
        // Half of twice 6.2 and of twice 6.1 is 6, of 6.3 it is 6.5; a last stretch may be shorter than a centimetre.
        let all = [
            cm(0.0, 1.0, [6.0, 6.0, 6.1]),
            cm(1.0, 2.0, [5.9, 6.2, 6.2]),
            cm(2.0, 3.0, [6.1, 6.1, 6.3]),
            cm(3.0, 4.0, [6.3, 6.3, 6.3]),
            cm(4.0, 4.5, [6.6, 6.6, 6.7]),
            cm(4.5, 5.0, [6.1, 6.1, 6.1]),
        ];
        for next in all {
            join(&mut found, next);
        }
        let told: Vec<(f64, f64, [f64; 3])> =
            found.iter().map(|one| (one.from.cm(), one.to.cm(), one.level.to_array().map(Level::number))).collect();
        let want = [(0.0, 3.0, [5.9, 6.1, 6.3]), (3.0, 4.5, [6.3, 6.4, 6.7]), (4.5, 5.0, [6.1; 3])];
        assert_eq!(told.len(), want.len(), "{told:?}");
        for (got, want) in told.iter().zip(want) {
            assert_eq!((got.0, got.1), (want.0, want.1), "{told:?}");
            assert!(got.2.iter().zip(want.2).all(|(got, want)| (got - want).abs() < 1e-9), "{told:?}");
        }
    }
}
