//! Guests of whom each may have one of two days: all the hands, or a single pair, so that another guest has the others.

use super::{
    floor::Floor,
    share::{NoHands, SharedFloor, nothing_beats, share_floor},
    timeline::Timeline,
};

/// Up to so many guests every choice of days is tried.
const EVERY_CHOICE_UP_TO: usize = 4;

/// The choice that ends first, the first days of all where none is better; its bound holds for every choice.
pub(crate) fn share_either(first: &[Timeline], second: &[Timeline], floor: &Floor) -> Result<SharedFloor, NoHands> {
    let mut found = share_floor(first, floor)?;
    for other in choices(first, second) {
        let other = share_floor(&other, floor)?;
        if other.finish < found.finish {
            found = other;
        }
    }
    Ok(SharedFloor { bound: nothing_beats(first, second, floor.people), ..found })
}

/// Every choice between two days of each guest but the first days of all; of many guests only the second days of all.
fn choices(first: &[Timeline], second: &[Timeline]) -> Vec<Vec<Timeline>> {
    let all = (1_usize << first.len().min(EVERY_CHOICE_UP_TO)) - 1;
    let chosen = if first.len() > EVERY_CHOICE_UP_TO { vec![usize::MAX] } else { (1..=all).collect() };
    let day = |choice: usize, guest: usize| {
        let days = if guest >= EVERY_CHOICE_UP_TO || choice >> guest & 1 == 1 { second } else { first };
        days.get(guest).cloned()
    };
    chosen.into_iter().map(|choice| (0..first.len()).filter_map(|guest| day(choice, guest)).collect()).collect()
}

#[cfg(test)]
mod tests {
    use super::{Floor, Timeline, choices, share_either, share_floor};
    use crate::{
        day::{Effort, Piece, SectionWork, arrange},
        quantity::Duration,
    };

    fn min(value: f64) -> Duration {
        Duration::from_min(value).unwrap()
    }

    /// A day of one section, with so many pairs of hands beside the first for as long as that one paints.
    fn day(apply: f64, develop: f64, helpers: usize) -> Timeline {
        let work = SectionWork::new("", min(apply), min(develop), min(200.0));
        let mut day = arrange(&[work], &[], &Floor::default(), Effort::Quick).unwrap();
        let first = day.pieces[0];
        day.pieces.extend((1..=helpers).map(|person| Piece { person, ..first }));
        day
    }

    /// Every choice of a few guests, laid out one by one: the earliest end of all, and the first days where none is earlier.
    #[test]
    fn of_two_days_of_each_guest_the_choice_that_ends_first_is_taken() {
        let floor = Floor { people: 2, basins: 1, ..Floor::default() };
        for (first, second) in [
            (
                [day(10.0, 20.0, 1), day(12.0, 20.0, 1), day(8.0, 25.0, 1)],
                [day(14.0, 20.0, 0), day(15.0, 20.0, 0), day(9.0, 25.0, 0)],
            ),
            (
                [day(10.0, 20.0, 0), day(12.0, 20.0, 0), day(8.0, 25.0, 0)],
                [day(30.0, 20.0, 0), day(40.0, 20.0, 0), day(50.0, 25.0, 0)],
            ),
            (
                [day(40.0, 20.0, 0), day(12.0, 20.0, 1), day(30.0, 25.0, 0)],
                [day(10.0, 20.0, 1), day(50.0, 20.0, 0), day(8.0, 25.0, 1)],
            ),
        ] {
            let found = share_either(&first, &second, &floor).unwrap();
            let mut ends = Vec::new();
            for one in [&first, &second] {
                for other in [&first, &second] {
                    for third in [&first, &second] {
                        let days = [one[0].clone(), other[1].clone(), third[2].clone()];
                        ends.push(share_floor(&days, &floor).unwrap());
                    }
                }
            }
            let least = ends.iter().map(|one| one.finish.min()).fold(f64::INFINITY, f64::min);
            assert_eq!(found.finish.min(), least);
            if ends[0].finish.min() == least {
                assert_eq!(found.guests, ends[0].guests, "the first days of all");
            }
            // What no choice beats: of each guest the shorter day, and the lesser work shared by two.
            let each = || first.iter().zip(&second);
            let longest = each().map(|(a, b)| a.finish.min().min(b.finish.min())).fold(0.0, f64::max);
            let work: f64 = each().map(|(a, b)| a.hands[0].min().min(b.hands[0].min())).sum();
            assert!((found.bound.min() - longest.max(work / 2.0)).abs() < 1e-9);
            assert!(found.bound <= found.finish);
        }
    }

    /// By hand: of two guests three choices beside the first days of both; of four 15; of five the second days of all, and no more.
    #[test]
    fn of_many_guests_all_have_their_second_day() {
        let days = |apply: f64, count: usize| vec![day(apply, 20.0, 0); count];
        let chosen = |count: usize| -> Vec<String> {
            let (first, second) = (days(10.0, count), days(20.0, count));
            let sign = |day: &Timeline| if *day == first[0] { '1' } else { '2' };
            choices(&first, &second).iter().map(|days| days.iter().map(sign).collect()).collect()
        };
        assert_eq!(chosen(1), ["2"]);
        assert_eq!(chosen(2), ["21", "12", "22"]);
        let four = chosen(4);
        assert_eq!((four.len(), four[0].as_str(), four[14].as_str()), (15, "2111", "2222"));
        assert_eq!((chosen(5), chosen(6)), (vec!["22222".to_owned()], vec!["222222".to_owned()]));
        assert!(chosen(0).is_empty());
    }
}
