//! The arranged day as pieces of work and as times of each section.

use super::{
    Floor, FoilGroup, Piece, PieceKind, SectionWork,
    floor::{many, minutes, seconds},
    step::{Does, Step, Steps},
    tables::{Job, Stretch, Tables},
};
use crate::quantity::Duration;
use schemars::JsonSchema;
use serde::Serialize;

/// When everything is done, in minutes from the first work on the guest: mixing the first bowl.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Timeline {
    /// The sections in the order in which they are put on.
    pub sections: Vec<SectionTimes>,
    /// Every piece of work, in the order of its begin.
    pub pieces: Vec<Piece>,
    /// How often the guest goes to the basin.
    pub visits: usize,
    /// When the last section is rinsed.
    #[serde(rename = "finish_min")]
    pub finish: Duration,
    /// How long nobody works on the guest: only the mix does.
    #[serde(rename = "idle_min")]
    pub idle: Duration,
    /// How long each person works on the guest.
    #[serde(rename = "hands_min")]
    pub hands: Vec<Duration>,
    /// A finish that no order of these people can beat.
    #[serde(rename = "bound_min")]
    pub bound: Duration,
    /// Whether this finish is proven to be the earliest.
    pub proven: bool,
}

/// The times of one section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionTimes {
    /// Its place in the list of the work, from 0.
    pub section: usize,
    /// Its name.
    pub name: String,
    /// At which visit to the basin it is rinsed, from 1.
    pub visit: usize,
    /// Who puts it on, from 0.
    pub person: usize,
    /// When each of its bowls is begun.
    #[serde(rename = "mix_at_min")]
    pub mix_at: Vec<Duration>,
    /// Its first strand.
    #[serde(rename = "start_min")]
    pub start: Duration,
    /// Its last strand is on, its last foil closed.
    #[serde(rename = "applied_min")]
    pub applied: Duration,
    /// When it is looked at: from the first look on that is due for its own first strand.
    #[serde(rename = "look_at_min")]
    pub looks: Vec<Duration>,
    /// When it is rinsed.
    #[serde(rename = "rinse_min")]
    pub rinse: Duration,
    /// When it is rinsed out.
    #[serde(rename = "rinsed_min")]
    pub rinsed: Duration,
    /// How long its first strand carries the mix.
    #[serde(rename = "on_hair_min")]
    pub on_hair: Duration,
    /// How much longer it might.
    #[serde(rename = "spare_min")]
    pub spare: Duration,
}

impl Timeline {
    /// `bound` is a finish that no order beats.
    pub(super) fn of(work: &[SectionWork], tables: &Tables, floor: &Floor, day: &Steps, bound: i64) -> Self {
        let mut pieces = Vec::new();
        let mut sections: Vec<SectionTimes> =
            tables.started.on.iter().flat_map(|on| already_on(work, tables, on)).collect();
        // When the guest was at the basin last, unless hands have done something else since.
        let (mut visits, mut at_basin) = (0, None);
        for step in &day.steps {
            let Some(unit) = tables.unit(step.unit) else { continue };
            match step.does {
                Does::PutOn => {
                    at_basin = None;
                    let mut at = step.begin;
                    for job in &unit.jobs {
                        let Some(one) = work.get(job.section) else { continue };
                        sections.push(put_on(&mut pieces, one, job, step, at));
                        at += job.takes;
                    }
                }
                Does::Rinse => {
                    // Who has to wait for longer than the way back and forth waits in the chair.
                    let stays = at_basin.is_some_and(|left| step.begin - left < (2 * tables.walk).max(1));
                    if !stays {
                        visits += 1;
                        pieces.push(piece(PieceKind::Walk, None, 0, (step.begin - tables.walk, step.begin)));
                    }
                    for (i, job) in unit.jobs.iter().enumerate() {
                        let at = step.begin + many(i) * tables.rinse;
                        pieces.push(piece(PieceKind::Rinse, Some(job.section), 0, (at, at + tables.rinse)));
                        if let Some(one) = sections.iter_mut().find(|one| one.section == job.section) {
                            one.visit = visits;
                            one.rinse = minutes(at);
                            one.rinsed = minutes(at + tables.rinse);
                            let on_hair = at - seconds(one.start);
                            one.on_hair = minutes(on_hair);
                            one.spare = minutes((job.longest - on_hair).max(0));
                        }
                    }
                    at_basin = Some(step.begin + unit.rinse);
                }
            }
        }
        idle_looks(&mut pieces, &sections, floor, tables.started.at);
        pieces.retain(|piece| piece.to > piece.from);
        pieces.sort_by(|a, b| a.from.min().total_cmp(&b.from.min()).then(a.person.cmp(&b.person)));
        for one in &mut sections {
            let due = one.start.min() + floor.first_look.min() - 1e-9;
            let looks = pieces.iter().filter(|piece| piece.kind == PieceKind::Look).map(|piece| piece.from);
            one.looks = looks.filter(|at| at.min() >= due && *at < one.rinse).collect();
            one.looks.dedup();
        }
        sections.sort_by(|a, b| a.start.min().total_cmp(&b.start.min()));
        let bound = bound.max(tables.bound()).min(day.finish);
        let hands = (0..tables.people).map(|person| {
            let own = pieces.iter().filter(|piece| piece.person == person);
            Duration::from_min(own.map(|piece| piece.to.min() - piece.from.min()).sum()).unwrap_or(Duration::ZERO)
        });
        Self {
            visits,
            finish: minutes(day.finish),
            idle: idle(&pieces, (tables.started.at, day.finish)),
            hands: hands.collect(),
            bound: minutes(bound),
            proven: day.finish <= bound,
            sections,
            pieces,
        }
    }
}

/// The times of sections that are on the hair when the day is arranged.
fn already_on(work: &[SectionWork], tables: &Tables, (unit, begun): &(usize, i64)) -> Vec<SectionTimes> {
    let Some(unit) = tables.unit(*unit) else { return Vec::new() };
    let mut at = *begun;
    let one = |job: &Job| {
        let start = at + tables.mix;
        at += job.takes;
        let section = work.get(job.section)?;
        Some(SectionTimes {
            section: job.section,
            name: section.name.clone(),
            visit: 0,
            person: 0,
            mix_at: Vec::new(),
            start: minutes(start),
            applied: minutes(at),
            looks: Vec::new(),
            rinse: minutes(at),
            rinsed: minutes(at),
            on_hair: Duration::ZERO,
            spare: Duration::ZERO,
        })
    };
    unit.jobs.iter().filter_map(one).collect()
}

fn piece(kind: PieceKind, section: Option<usize>, person: usize, (from, to): (i64, i64)) -> Piece {
    Piece { kind, section, person, from: minutes(from), to: minutes(to), foils: None }
}

/// The pieces of mixing and putting a section on, and its times so far.
fn put_on(pieces: &mut Vec<Piece>, work: &SectionWork, job: &Job, step: &Step, begin: i64) -> SectionTimes {
    let (mut at, mut painted, mut start, mut mix_at) = (begin, 0, None, Vec::new());
    let apply = seconds(work.apply);
    for stretch in &job.does {
        let ends = at + stretch.length();
        let (kind, section) = match stretch {
            Stretch::Mix(_) => (PieceKind::Mix, Some(job.section)),
            Stretch::Apply(_) => (PieceKind::Apply, Some(job.section)),
            Stretch::Look(_) => (PieceKind::Look, None),
        };
        let mut one = piece(kind, section, step.person, (at, ends));
        match stretch {
            Stretch::Mix(_) => mix_at.push(minutes(at)),
            Stretch::Apply(length) => {
                start.get_or_insert(at);
                let was = painted;
                painted += length;
                one.foils = work.foils.and_then(|foils| group(foils, was, painted, apply));
            }
            Stretch::Look(_) => {}
        }
        pieces.push(one);
        at = ends;
    }
    SectionTimes {
        section: job.section,
        name: work.name.clone(),
        visit: 0,
        person: step.person,
        mix_at,
        start: minutes(start.unwrap_or(at)),
        applied: minutes(at),
        looks: Vec::new(),
        rinse: minutes(at),
        rinsed: minutes(at),
        on_hair: Duration::ZERO,
        spare: Duration::ZERO,
    }
}

/// Foils that are closed between two points of the application.
fn group(foils: u32, was: i64, done: i64, apply: i64) -> Option<FoilGroup> {
    let closed = |work: i64| u32::try_from(i64::from(foils) * work / apply.max(1)).unwrap_or(foils);
    let (first, last) = (closed(was) + 1, closed(done));
    (first <= last).then_some(FoilGroup { first, last })
}

/// Looks of the first person while nobody works and something is on: every so often after the last piece of work.
fn idle_looks(pieces: &mut Vec<Piece>, sections: &[SectionTimes], floor: &Floor, start: i64) {
    let (look, every) = (seconds(floor.look), seconds(floor.look_every));
    if look == 0 || every == 0 {
        return;
    }
    let mut spans: Vec<(i64, i64)> = pieces.iter().map(|piece| (seconds(piece.from), seconds(piece.to))).collect();
    spans.sort_unstable();
    let is_on = |at: i64| sections.iter().any(|one| seconds(one.start) <= at && at < seconds(one.rinse));
    let mut until = start;
    for (from, to) in spans {
        // A look every so often in the gap, where it is over before the next work.
        let mut at = until + every;
        while at + look <= from {
            if is_on(at) {
                pieces.push(piece(PieceKind::Look, None, 0, (at, at + look)));
            }
            at += every + look;
        }
        until = until.max(to);
    }
}

/// How long nobody works: what no piece covers.
fn idle(pieces: &[Piece], (start, finish): (i64, i64)) -> Duration {
    let (mut until, mut idle) = (minutes(start).min(), 0.0);
    for piece in pieces {
        idle += (piece.from.min() - until).max(0.0);
        until = until.max(piece.to.min());
    }
    idle += (minutes(finish).min() - until).max(0.0);
    Duration::from_min(idle).unwrap_or(Duration::ZERO)
}

#[cfg(test)]
mod tests {
    use super::{Floor, FoilGroup, Piece, PieceKind, SectionTimes, group, idle, idle_looks, minutes, piece};
    use crate::quantity::{Duration, Quantity};

    /// Whole minutes from one to another.
    fn work((from, to): (i64, i64)) -> Piece {
        piece(PieceKind::Apply, None, 0, (from * 60, to * 60))
    }

    fn on(start: i64, rinse: i64) -> SectionTimes {
        let (start, rinse) = (minutes(start * 60), minutes(rinse * 60));
        SectionTimes {
            section: 0,
            name: String::new(),
            visit: 1,
            person: 0,
            mix_at: Vec::new(),
            start,
            applied: start,
            looks: Vec::new(),
            rinse,
            rinsed: rinse,
            on_hair: Duration::ZERO,
            spare: Duration::ZERO,
        }
    }

    /// By hand: hands are idle from 10 to 28; a look of a minute after 5 of them, and 5 after each.
    #[test]
    fn idle_hands_look_where_there_is_time() {
        let looks = |spans: &[(i64, i64)], sections: &[SectionTimes], [look, every]: [f64; 2], start: i64| {
            let min = Duration::nearest;
            let floor = Floor { look: min(look), look_every: min(every), ..Floor::default() };
            let mut pieces: Vec<Piece> = spans.iter().copied().map(work).collect();
            idle_looks(&mut pieces, sections, &floor, start * 60);
            let found = pieces.split_off(spans.len());
            let told = |one: &Piece| {
                assert_eq!((one.kind, one.section, one.person, one.foils), (PieceKind::Look, None, 0, None));
                assert_eq!(one.to.min() - one.from.min(), look);
                one.from.min()
            };
            found.iter().map(told).collect::<Vec<_>>()
        };
        let (day, nape) = ([(0, 3), (3, 10), (28, 30), (30, 33)], [on(3, 30)]);
        assert_eq!(looks(&day, &nape, [1.0, 5.0], 0), [15.0, 21.0, 27.0]);
        // The third would not be over when work begins.
        assert_eq!(looks(&[(0, 3), (3, 10), (27, 30)], &nape, [1.0, 5.0], 0), [15.0, 21.0]);
        assert_eq!(looks(&day, &nape, [2.0, 5.0], 0), [15.0, 22.0]);
        // Only while something is on: from its first strand to its rinse.
        assert_eq!(looks(&day, &[on(3, 21)], [1.0, 5.0], 0), [15.0]);
        assert_eq!(looks(&day, &[on(15, 22)], [1.0, 5.0], 0), [15.0, 21.0]);
        assert_eq!(looks(&day, &[on(16, 27), on(27, 40)], [1.0, 5.0], 0), [21.0, 27.0]);
        // Two pairs of hands, in whatever order: idle is what neither covers.
        assert_eq!(looks(&[(28, 30), (0, 12), (3, 10)], &nape, [1.0, 5.0], 0), [17.0, 23.0]);
        // A day in its midst begins when hands are free.
        assert_eq!(looks(&[(28, 30)], &nape, [1.0, 5.0], 14), [19.0, 25.0]);
        assert!(looks(&day, &nape, [0.0, 5.0], 0).is_empty() && looks(&day, &nape, [1.0, 0.0], 0).is_empty());
    }

    /// By hand: none from 10 to 12 and from 20 to 25; from 5 on it is none from 5 to 8 too.
    #[test]
    fn idle_is_what_no_piece_covers() {
        let pieces = |spans: &[(i64, i64)]| spans.iter().copied().map(work).collect::<Vec<_>>();
        let day = pieces(&[(0, 3), (0, 10), (4, 9), (12, 15), (14, 20)]);
        assert_eq!(idle(&day, (0, 25 * 60)).min(), 7.0);
        assert_eq!(idle(&day, (0, 20 * 60)).min(), 2.0);
        assert_eq!(idle(&pieces(&[(8, 11)]), (5 * 60, 12 * 60)).min(), 4.0);
        assert_eq!(idle(&[], (5 * 60, 12 * 60)).min(), 7.0);
    }

    /// By hand: of 8 foils in 12 min, 3 are closed after 5 min (8 x 5 / 12 = 3.3), 4 after 6, 6 after 10 (6.7).
    #[test]
    fn foils_are_closed_as_the_painting_goes_on() {
        let group =
            |was: i64, done: i64| group(8, was * 60, done * 60, 12 * 60).map(|one: FoilGroup| (one.first, one.last));
        assert_eq!(
            [group(0, 5), group(5, 6), group(6, 10), group(10, 12)].map(Option::unwrap),
            [(1, 3), (4, 4), (5, 6), (7, 8)]
        );
        assert_eq!((group(6, 7), group(0, 1)), (None, None));
        assert_eq!(super::group(3, 0, 0, 0), None);
    }
}
