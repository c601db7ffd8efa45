//! Guests on one floor, held against every order laid out minute by minute.

use super::day::{min, plain, section};
use foilwork::day::{Effort, Floor, Piece, PieceKind, SharedFloor, Timeline, arrange, share_floor};

fn day(apply: f64, develop: f64, people: u32) -> Timeline {
    let work = [section("0", apply, develop, 200.0), section("1", apply + 2.0, develop + 3.0, 200.0)];
    arrange(&work[..people as usize], &[], &Floor { people, ..plain() }, Effort::Quick).unwrap()
}

/// What a day of whole minutes needs in each: hands and basins.
fn needs(day: &Timeline) -> Vec<[u32; 2]> {
    let minutes = day.finish.min() as usize;
    let in_minute = |minute: usize| {
        let at = minute as f64;
        let now = day.pieces.iter().filter(|one| one.from.min() <= at && at < one.to.min());
        now.fold([0, 0], |[hands, basins], one| [hands + 1, basins + u32::from(one.kind == PieceKind::Rinse)])
    };
    (0..minutes).map(in_minute).collect()
}

/// The starts of an order, each guest at the first minute that has room for all of the day.
fn starts(needs: &[Vec<[u32; 2]>], order: &[usize], have: [u32; 2]) -> Vec<usize> {
    let (mut taken, mut found) = (vec![[0, 0]; 2_000], vec![0; needs.len()]);
    for guest in order {
        let room = |start: &usize| {
            let mut minutes = needs[*guest].iter().zip(&taken[*start..]);
            minutes.all(|(need, there)| need[0] + there[0] <= have[0] && need[1] + there[1] <= have[1])
        };
        found[*guest] = (0..).find(room).unwrap();
        for (need, there) in needs[*guest].iter().zip(&mut taken[found[*guest]..]) {
            *there = [need[0] + there[0], need[1] + there[1]];
        }
    }
    found
}

fn orders(left: &[usize]) -> Vec<Vec<usize>> {
    if left.is_empty() {
        return vec![Vec::new()];
    }
    let first = |one: &usize| {
        let rest: Vec<usize> = left.iter().copied().filter(|other| other != one).collect();
        orders(&rest).into_iter().map(|order| [vec![*one], order].concat()).collect::<Vec<_>>()
    };
    left.iter().flat_map(first).collect()
}

/// Each piece is where its day has it, and is done by who did the last one of that pair of hands on that guest, or else by the first who
/// is free.
fn is_laid(days: &[Timeline], found: &SharedFloor, people: usize) {
    let mut all: Vec<(usize, Piece, Piece)> = Vec::new();
    for (guest, one) in found.guests.iter().enumerate() {
        assert_eq!((one.guest, one.pieces.len()), (guest, days[guest].pieces.len()));
        assert_eq!(one.finish.min(), one.start.min() + days[guest].finish.min());
        for (piece, own) in one.pieces.iter().zip(&days[guest].pieces) {
            assert_eq!(piece.from.min(), one.start.min() + own.from.min());
            assert_eq!(piece.to.min(), one.start.min() + own.to.min());
            assert_eq!((piece.kind, piece.section, piece.foils), (own.kind, own.section, own.foils));
            all.push((guest, *own, *piece));
        }
    }
    all.sort_by(|one, other| one.2.from.min().total_cmp(&other.2.from.min()));
    for (place, (guest, own, piece)) in all.iter().enumerate() {
        let free = |person: usize| {
            all[..place].iter().filter(|one| one.2.person == person).all(|one| one.2.to.min() <= piece.from.min())
        };
        let last = all[..place].iter().rfind(|one| one.0 == *guest && one.1.person == own.person);
        let by = last.map(|one| one.2.person).filter(|person| free(*person));
        assert_eq!(Some(piece.person), by.or_else(|| (0..people).find(|person| free(*person))), "{piece:?}");
    }
    let last = found.guests.iter().map(|one| one.finish.min()).fold(0.0, f64::max);
    assert_eq!(found.finish.min(), last);
    assert_eq!(found.in_turn.min(), days.iter().map(|day| day.finish.min()).sum::<f64>());
    let work: f64 = days.iter().flat_map(|day| &day.pieces).map(|one| one.to.min() - one.from.min()).sum();
    let longest = days.iter().map(|day| day.finish.min()).fold(0.0, f64::max);
    assert!((found.bound.min() - longest.max(work / people as f64)).abs() < 1e-9);
}

/// Of up to six guests every order is tried, with every smaller number of hands and basins as well: none ends earlier.
#[test]
fn guests_share_the_floor_as_every_order_tried_says() {
    let one = |apply: f64, develop: f64| day(apply, develop, 1);
    let two = |apply: f64, develop: f64| day(apply, develop, 2);
    let floors = [
        vec![one(15.0, 35.0), one(15.0, 35.0)],
        vec![one(10.0, 20.0), one(30.0, 25.0), one(12.0, 40.0)],
        vec![one(8.0, 12.0), one(9.0, 30.0), one(20.0, 15.0), one(5.0, 45.0)],
        vec![two(10.0, 20.0), one(14.0, 30.0), two(6.0, 25.0)],
        vec![two(10.0, 20.0), two(10.0, 20.0)],
        vec![one(40.0, 5.0)],
        vec![],
    ];
    for days in &floors {
        let needs: Vec<_> = days.iter().map(needs).collect();
        let most = |which: usize| needs.iter().flatten().map(|need| need[which]).max().unwrap_or(1);
        let guests: Vec<usize> = (0..days.len()).collect();
        for (people, basins) in [(2, 1), (2, 2), (3, 1), (3, 2), (4, 3)] {
            let found = share_floor(days, &Floor { people, basins, ..plain() }).unwrap();
            is_laid(days, &found, people as usize);
            let mut ends = Vec::new();
            for hands in most(0)..=people {
                for basins in most(1)..=basins {
                    for order in orders(&guests) {
                        let begun = starts(&needs, &order, [hands, basins]);
                        ends.push(begun.iter().zip(&needs).map(|(start, need)| start + need.len()).max().unwrap_or(0));
                    }
                }
            }
            assert_eq!(found.finish.min(), *ends.iter().min().unwrap() as f64, "{people} people, {basins} basins");
        }
    }
}

/// Of more than six, the order of the list.
#[test]
fn many_guests_begin_in_the_order_of_the_list() {
    let days: Vec<Timeline> =
        [5.0, 20.0, 8.0, 30.0, 11.0, 14.0, 6.0].iter().map(|apply| day(*apply, 20.0, 1)).collect();
    let needs: Vec<_> = days.iter().map(needs).collect();
    for (people, basins) in [(1, 1), (2, 1), (3, 2)] {
        let found = share_floor(&days, &Floor { people, basins, ..plain() }).unwrap();
        is_laid(&days, &found, people as usize);
        let want = starts(&needs, &[0, 1, 2, 3, 4, 5, 6], [people, basins]);
        let got: Vec<usize> = found.guests.iter().map(|one| one.start.min() as usize).collect();
        assert_eq!(got, want);
    }
}

/// By hand: hands from 0 to 5 and 6 to 7.5, the basin from 6 to 7.5, which is in the minutes 6 and 7. Alone, the second guest begins at 8; with
/// a second pair of hands at 2, when the basin is free at 8. Pieces that follow each other within a minute are done by one pair of hands.
#[test]
fn a_minute_begun_is_a_minute_taken() {
    let whole = day(15.0, 35.0, 1);
    let piece = |kind: PieceKind, from: f64, to: f64| Piece { kind, from: min(from), to: min(to), ..whole.pieces[0] };
    let pieces = vec![
        piece(PieceKind::Mix, 0.0, 0.25),
        piece(PieceKind::Apply, 0.25, 0.5),
        piece(PieceKind::Mix, 0.5, 2.5),
        piece(PieceKind::Apply, 2.5, 5.0),
        piece(PieceKind::Rinse, 6.0, 7.5),
    ];
    let short = Timeline { pieces, finish: min(7.5), hands: vec![min(6.5)], ..whole };
    let shared = |people: u32, basins: u32, count: usize| {
        let days = vec![short.clone(); count];
        let found = share_floor(&days, &Floor { people, basins, ..plain() }).unwrap();
        is_laid(&days, &found, people as usize);
        found
    };
    let begun = |found: &SharedFloor| found.guests.iter().map(|one| one.start.min()).collect::<Vec<_>>();
    let alone = shared(1, 1, 2);
    assert_eq!((begun(&alone), alone.finish.min(), alone.bound.min()), (vec![0.0, 8.0], 15.5, 13.0));
    let helped = shared(2, 1, 2);
    assert_eq!((begun(&helped), helped.finish.min(), helped.in_turn.min()), (vec![0.0, 2.0], 9.5, 15.0));
    assert_eq!((begun(&shared(2, 2, 2)), shared(2, 2, 2).finish.min()), (vec![0.0, 0.0], 7.5));
    // A third pair of hands and one basin: at 0, 2 and 4.
    assert_eq!(begun(&shared(3, 1, 3)), [0.0, 2.0, 4.0]);
    let people: Vec<Vec<usize>> =
        helped.guests.iter().map(|one| one.pieces.iter().map(|piece| piece.person).collect()).collect();
    assert_eq!(people, [[0; 5], [1; 5]]);
    // A guest for whom more hands are needed at once than there are.
    let twice = Timeline { pieces: [short.pieces.clone(), vec![piece(PieceKind::Look, 4.5, 5.5)]].concat(), ..short };
    let refused = share_floor(std::slice::from_ref(&twice), &Floor { people: 1, ..plain() }).unwrap_err().to_string();
    assert_eq!(refused, "guest 0: the work needs 2 people at once, the floor has 1 (arrange it for fewer)");
    assert!(share_floor(&[twice], &Floor { people: 2, ..plain() }).is_ok());
}
