/// The place between two bounds where a falling function is zero.
///
/// Newton's steps, halved into the bracket whenever one would leave it; the function gives its value and slope.
pub(super) fn solve(guess: f64, low: f64, high: f64, f: impl Fn(f64) -> (f64, f64)) -> f64 {
    let (mut low, mut high) = (low, high);
    let mut x = guess.clamp(low, high);
    for _ in 0..40 {
        #[cfg(test)]
        looks::one_more();
        let (value, slope) = f(x);
        if value > 0.0 {
            low = x;
        } else {
            high = x;
        }
        let newton = x - value / slope;
        let next = if newton > low && newton < high { newton } else { f64::midpoint(low, high) };
        let step = (next - x).abs();
        x = next;
        // The error of a Newton step is about the square of the step before it.
        if step < 1e-5 {
            break;
        }
    }
    x
}

/// How often a function is looked at until its zero is found: a wrong slope or a far guess ends at the same place, only later.
#[cfg(test)]
pub(super) mod looks {
    use std::cell::Cell;

    thread_local! { static LOOKS: Cell<u32> = const { Cell::new(0) } }

    pub(in crate::colour) fn one_more() {
        LOOKS.set(LOOKS.get() + 1);
    }

    /// Those of a piece of work.
    pub(in crate::colour) fn of<T>(work: impl FnOnce() -> T) -> u32 {
        LOOKS.set(0);
        work();
        LOOKS.get()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // exp(-x) = 0.3 at ln(10 / 3) = 1.203972804...
    #[test]
    fn finds_the_zero_from_a_bad_guess() {
        for guess in [0.0, 1.0, 9.0] {
            let found = solve(guess, 0.0, 10.0, |x: f64| ((-x).exp() - 0.3, -(-x).exp()));
            assert!((found - 1.203_972_804_325_936).abs() < 1e-9, "{found}");
        }
    }
}
