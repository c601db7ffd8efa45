//! Several guests on one floor: their days as arranged, begun so that hands and basins suffice.

use super::{
    Floor, Piece, PieceKind, Timeline, TooMuch,
    bounds::bounded_floor,
    floor::{many, seconds},
};
use crate::quantity::{Duration, Quantity};
use schemars::JsonSchema;
use serde::Serialize;

/// Up to so many guests every order is tried.
const EVERY_ORDER_UP_TO: usize = 6;
/// Up to so many hands, and basins, every smaller number is tried as well.
const ALL_TRIED_UP_TO: u32 = 8;
/// No floor is open longer, in minutes.
const LONGEST_DAY: usize = 7 * 24 * 60;

/// A guest's place on the floor.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct GuestOnFloor {
    /// The guest's place in the list, from 0.
    pub guest: usize,
    /// When the work on this guest begins.
    #[serde(rename = "start_min")]
    pub start: Duration,
    /// When the last section is rinsed.
    #[serde(rename = "finish_min")]
    pub finish: Duration,
    /// The pieces of work on the common clock, with the people of the floor.
    pub pieces: Vec<Piece>,
}

/// Guests who share people and basins.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SharedFloor {
    /// In the order of the list.
    pub guests: Vec<GuestOnFloor>,
    /// When the last of them is rinsed.
    #[serde(rename = "finish_min")]
    pub finish: Duration,
    /// A finish that nothing beats: the longest day of one guest, or all the work shared evenly; where a guest may have one of two
    /// days, the shorter one and the lesser work.
    #[serde(rename = "bound_min")]
    pub bound: Duration,
    /// What the same guests would take one after the other.
    #[serde(rename = "in_turn_min")]
    pub in_turn: Duration,
}

/// Why guests cannot share the floor.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NoHands {
    /// More than is laid on a floor.
    #[error(transparent)]
    TooMuch(#[from] TooMuch),
    /// A guest's own day needs more people than there are.
    #[error("guest {guest}: the work needs {needed} people at once, the floor has {people} (arrange it for fewer)")]
    People {
        /// The guest's place, from 0.
        guest: usize,
        /// How many are needed.
        needed: u32,
        /// How many there are.
        people: u32,
    },
    /// There is no basin to rinse at.
    #[error("the floor has no basin (give at least one)")]
    Basin,
}

/// What a guest needs in each minute: hands and basins.
type Needs = Vec<[u32; 2]>;

/// Begins each guest as early as hands and basins allow; the days themselves stay as they were arranged.
///
/// Of up to six guests every order is tried, of more the order of the list; of up to six no floor of up to eight hands and basins
/// ends later than one with fewer. Starts are whole minutes.
///
/// # Errors
///
/// [`NoHands`].
///
/// # Example
///
/// ```
/// use foilwork::{day::{Effort, Floor, SectionWork, arrange, share_floor}, quantity::Duration};
///
/// let min = |value| Duration::from_min(value);
/// let nape = SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?);
/// let day = arrange(&[nape], &[], &Floor::default(), Effort::Quick)?;
/// let floor = share_floor(&[day.clone(), day], &Floor { people: 2, ..Floor::default() })?;
/// // Other hands begin the second guest before the first one is rinsed.
/// assert!(floor.finish < floor.in_turn);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn share_floor(days: &[Timeline], floor: &Floor) -> Result<SharedFloor, NoHands> {
    if floor.basins == 0 {
        return Err(NoHands::Basin);
    }
    bounded_floor(days, floor)?;
    let have = [floor.people.max(1), floor.basins];
    let needs: Vec<Needs> = days.iter().map(needs).collect();
    for (guest, need) in needs.iter().enumerate() {
        let needed = need.iter().map(|[hands, _]| *hands).max().unwrap_or(0);
        if needed > have[0] {
            return Err(NoHands::People { guest, needed, people: have[0] });
        }
    }
    let mut best: Option<(usize, Vec<usize>)> = None;
    let mut left: Vec<usize> = (0..days.len()).collect();
    if days.len() <= EVERY_ORDER_UP_TO {
        let longest = needs.iter().map(Vec::len).max().unwrap_or(0);
        let most = |which: usize| needs.iter().flatten().filter_map(|need| need.get(which)).copied().max().unwrap_or(0);
        let mut search = Orders { needs: &needs, have, best: None };
        // Begun as early as can be, guests may end earlier with fewer hands or basins than with all of them.
        let fewer = |least: u32, have: u32| (least.max(1)..=have.min(ALL_TRIED_UP_TO)).rev();
        let further =
            fewer(most(0), have[0]).flat_map(|hands| fewer(most(1), have[1]).map(move |basins| [hands, basins]));
        for have in [have].into_iter().chain(further) {
            if search.best.as_ref().is_some_and(|(finish, _)| *finish <= longest) {
                break;
            }
            search.have = have;
            search.go(&mut left, &[], &mut vec![0; days.len()]);
        }
        best = search.best.take().or(best);
    } else {
        let mut taken = Needs::new();
        let mut starts = vec![0; days.len()];
        for guest in left {
            let (start, with) = begun(&taken, needs.get(guest).map_or(&[][..], Vec::as_slice), have);
            taken = with;
            if let Some(slot) = starts.get_mut(guest) {
                *slot = start;
            }
        }
        best = best.or(Some((taken.len(), starts)));
    }
    let (_, starts) = best.unwrap_or_default();
    Ok(laid(days, &starts, have[0]))
}

/// The most hands and basins in each minute.
fn needs(day: &Timeline) -> Needs {
    let length = (seconds(day.finish) as usize).div_ceil(60);
    let mut needs = vec![[0, 0]; length];
    let spans: Vec<(i64, i64, bool)> = day
        .pieces
        .iter()
        .map(|piece| (seconds(piece.from), seconds(piece.to), piece.kind == PieceKind::Rinse))
        .collect();
    for (minute, need) in needs.iter_mut().enumerate() {
        let (begins, ends) = (many(minute) * 60, many(minute) * 60 + 60);
        let within = || spans.iter().filter(move |(from, to, _)| *from < ends && *to > begins);
        // The number changes only where a piece begins.
        for at in within().map(|(from, ..)| (*from).max(begins)) {
            let now = || within().filter(move |(from, to, _)| *from <= at && *to > at);
            let hands = u32::try_from(now().count()).unwrap_or(u32::MAX);
            let basins = u32::try_from(now().filter(|(.., rinse)| *rinse).count()).unwrap_or(u32::MAX);
            *need = [need[0].max(hands), need[1].max(basins)];
        }
    }
    needs
}

/// The earliest minute at which these needs fit beside what is taken, and what is taken then.
fn begun(taken: &[[u32; 2]], need: &[[u32; 2]], have: [u32; 2]) -> (usize, Needs) {
    let fits = |start: usize| {
        need.iter().enumerate().all(|(minute, need)| {
            let there = taken.get(start + minute).copied().unwrap_or_default();
            there[0] + need[0] <= have[0] && there[1] + need[1] <= have[1]
        })
    };
    let start = (0..=taken.len().min(LONGEST_DAY)).find(|start| fits(*start)).unwrap_or(taken.len());
    let mut with = taken.to_vec();
    with.resize(with.len().max(start + need.len()), [0, 0]);
    for (slot, need) in with.iter_mut().skip(start).zip(need) {
        slot[0] += need[0];
        slot[1] += need[1];
    }
    (start, with)
}

/// All orders of the guests, cut off where one is no better already.
struct Orders<'n> {
    needs: &'n [Needs],
    have: [u32; 2],
    best: Option<(usize, Vec<usize>)>,
}

impl Orders<'_> {
    fn go(&mut self, left: &mut Vec<usize>, taken: &[[u32; 2]], starts: &mut Vec<usize>) {
        if self.best.as_ref().is_some_and(|(finish, _)| taken.len() >= *finish) {
            return;
        }
        if left.is_empty() {
            self.best = Some((taken.len(), starts.clone()));
            return;
        }
        for i in 0..left.len() {
            let guest = left.remove(i);
            let need = self.needs.get(guest).map_or(&[][..], Vec::as_slice);
            let (start, with) = begun(taken, need, self.have);
            if let Some(slot) = starts.get_mut(guest) {
                *slot = start;
            }
            self.go(left, &with, starts);
            left.insert(i, guest);
        }
    }
}

/// The pieces on the common clock; each is done by the person who did the last one on that guest, or else by the first who is free.
fn laid(days: &[Timeline], starts: &[usize], people: u32) -> SharedFloor {
    let shift = |guest: usize, at: Duration| {
        let start = starts.get(guest).copied().unwrap_or(0) as f64;
        Duration::nearest(start + at.min())
    };
    let mut all: Vec<(usize, Piece)> = days
        .iter()
        .enumerate()
        .flat_map(|(guest, day)| {
            let moved =
                move |piece: &Piece| Piece { from: shift(guest, piece.from), to: shift(guest, piece.to), ..*piece };
            day.pieces.iter().map(move |piece| (guest, moved(piece)))
        })
        .collect();
    all.sort_by(|(_, a), (_, b)| a.from.min().total_cmp(&b.from.min()));
    let mut free = vec![0i64; people as usize];
    // Who did the last piece of each person of each guest's own day.
    let mut who: Vec<((usize, usize), usize)> = Vec::new();
    for (guest, piece) in &mut all {
        let (from, to) = (seconds(piece.from), seconds(piece.to));
        let own = (*guest, piece.person);
        let known = who.iter().position(|(key, _)| *key == own);
        let before = known.and_then(|i| who.get(i)).map(|(_, person)| *person);
        let is_free = |person: &usize| free.get(*person).is_some_and(|until| *until <= from);
        let person = before.filter(is_free).or_else(|| (0..free.len()).find(is_free)).unwrap_or(0);
        if let Some(slot) = free.get_mut(person) {
            *slot = to;
        }
        match known.and_then(|i| who.get_mut(i)) {
            Some((_, last)) => *last = person,
            None => who.push((own, person)),
        }
        piece.person = person;
    }
    let guests = days.iter().enumerate().map(|(guest, day)| GuestOnFloor {
        guest,
        start: shift(guest, Duration::ZERO),
        finish: shift(guest, day.finish),
        pieces: all.iter().filter(|(of, _)| *of == guest).map(|(_, piece)| *piece).collect(),
    });
    let guests: Vec<GuestOnFloor> = guests.collect();
    let finish = guests.iter().map(|guest| guest.finish.min()).fold(0.0, f64::max);
    SharedFloor {
        guests,
        finish: Duration::nearest(finish),
        bound: nothing_beats(days, days, people),
        in_turn: days.iter().map(|day| day.finish).sum(),
    }
}

/// What no choice between two days of each guest beats, the same ones where there is none: of each the shorter day, and of each the
/// lesser work, shared evenly.
pub(super) fn nothing_beats(first: &[Timeline], second: &[Timeline], people: u32) -> Duration {
    let work = |day: &Timeline| day.hands.iter().map(|hands| hands.min()).sum::<f64>();
    let each = || first.iter().zip(second);
    let longest = each().map(|(one, other)| one.finish.min().min(other.finish.min())).fold(0.0, f64::max);
    let all: f64 = each().map(|(one, other)| work(one).min(work(other))).sum();
    Duration::nearest(longest.max(all / f64::from(people)))
}
