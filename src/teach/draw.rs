use rust_decimal::Decimal;

/// Numbers that look drawn and are the same for the same seed, on every machine and for ever.
///
/// A generator of its own, because the sheet of a seed has to stay what it was when a dependency changes its streams.
///
/// # Source
///
/// `SplitMix64`: Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014, figure 17 (from
/// memory; the tests compare with its published output for the seed 1234567).
#[derive(Debug, Clone)]
pub(super) struct Draw(u64);

const GAMMA: u64 = 0x9e37_79b9_7f4a_7c15;

impl Draw {
    /// The stream of one exercise of a seed. All streams lie on the one cycle of the generator; each begins at another
    /// place of its 2^64 steps, and takes a few hundred.
    pub(super) fn new(seed: u64, stream: u64) -> Self {
        Self(mixed(seed ^ mixed(stream.wrapping_mul(GAMMA))))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(GAMMA);
        mixed(self.0)
    }

    /// A number below `end`, each as often; the few draws that would favour some are left out.
    pub(super) fn below(&mut self, end: u64) -> u64 {
        let end = end.max(1);
        let whole = u64::MAX - u64::MAX % end;
        loop {
            let drawn = self.next();
            if drawn < whole {
                return drawn % end;
            }
        }
    }

    /// A whole number from `low` to `high`, both included.
    pub(super) fn between(&mut self, low: i64, high: i64) -> i64 {
        let count = high.abs_diff(low).saturating_add(1);
        low.saturating_add(i64::try_from(self.below(count)).unwrap_or(0))
    }

    /// A multiple of `step` from `low` to `high`, as a decimal: `step` is `(digits, decimals)`.
    pub(super) fn multiple(&mut self, low: i64, high: i64, step: (i64, u32)) -> Decimal {
        (Decimal::from(self.between(low, high)) * Decimal::new(step.0, step.1)).normalize()
    }

    /// One of these.
    pub(super) fn pick<T: Copy>(&mut self, of: &[T]) -> Option<T> {
        of.get(self.below(of.len() as u64) as usize).copied()
    }

    /// In another order.
    pub(super) fn shuffle<T>(&mut self, items: &mut [T]) {
        for last in (1..items.len()).rev() {
            items.swap(last, self.below(last as u64 + 1) as usize);
        }
    }
}

fn mixed(state: u64) -> u64 {
    let z = (state ^ (state >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::Draw;

    // Source: the output that is commonly printed for SplitMix64 with the seed 1234567 (from memory).
    #[test]
    fn the_generator_gives_its_published_numbers() {
        let mut draw = Draw(1_234_567);
        let drawn: Vec<u64> = (0..5).map(|_| draw.next()).collect();
        let published = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(drawn, published);
    }

    #[test]
    fn every_number_of_a_range_comes_about_as_often() {
        let mut draw = Draw::new(7, 0);
        let mut counts = [0_u32; 6];
        for _ in 0..6_000 {
            counts[draw.below(6) as usize] += 1;
        }
        assert!(counts.iter().all(|count| (850..1_150).contains(count)), "{counts:?}");
    }
}
