//! The smallest circle of things that wait for each other.

use std::collections::HashMap;

/// The fewest of these that wait for each other, in order; empty where none do. By a search in breadth from each of them.
pub(super) fn smallest_circle(all: &[usize], follow: impl Fn(usize) -> Vec<usize>) -> Vec<usize> {
    let follow: HashMap<usize, Vec<usize>> = all.iter().map(|one| (*one, follow(*one))).collect();
    let mut smallest: Vec<usize> = Vec::new();
    for start in all {
        let circle = circle_from(*start, &follow, smallest.len());
        if !circle.is_empty() {
            smallest = circle;
        }
        // A pair is the least.
        if smallest.len() == 2 {
            break;
        }
    }
    smallest
}

/// The smallest circle through one of them, with fewer than so many; any where that is 0.
fn circle_from(start: usize, follow: &HashMap<usize, Vec<usize>>, fewer_than: usize) -> Vec<usize> {
    let mut before: HashMap<usize, usize> = HashMap::new();
    let mut reached = vec![start];
    for length in 1.. {
        if reached.is_empty() || (fewer_than > 0 && length >= fewer_than) {
            return Vec::new();
        }
        let mut next = Vec::new();
        for one in reached {
            for follower in follow.get(&one).into_iter().flatten() {
                if *follower == start {
                    let mut circle = vec![one];
                    while let Some(earlier) = circle.last().and_then(|last| before.get(last)) {
                        circle.push(*earlier);
                    }
                    circle.reverse();
                    return circle;
                }
                if !before.contains_key(follower) {
                    before.insert(*follower, one);
                    next.push(*follower);
                }
            }
        }
        reached = next;
    }
    Vec::new()
}
