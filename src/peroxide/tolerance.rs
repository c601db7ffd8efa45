use crate::{
    quantity::{MassFraction, Quantity},
    source::Interval,
};

/// What a bottle may hold whose strength is known from its label or its supplier's sheet alone.
///
/// The pharmacopoeial solution of 6 % may hold from 5.0 to 7.0 % w/v: a sixth less or more. No published tolerance of
/// salon developers is known to us; that of the pharmacopoeia is taken in proportion until the bottle is assayed.
///
/// # Source
///
/// [`BP_LIMITS`](crate::source::citations::peroxide::BP_LIMITS), in proportion: assumed.
pub(crate) fn as_labelled(nominal: Interval<MassFraction>) -> Interval<MassFraction> {
    let times = |strength: MassFraction, factor: f64| MassFraction::nearest(strength.ww_percent() * factor);
    Interval::ordered(times(nominal.low(), 5.0 / 6.0), nominal.best(), times(nominal.high(), 7.0 / 6.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: a sixth less of the least and a sixth more of the most; pure peroxide cannot be stronger.
    #[test]
    fn a_label_may_be_a_sixth_off() {
        let span = |low, best, high| Interval::ordered(low, best, high).map(MassFraction::nearest);
        let found =
            |nominal| as_labelled(nominal).map(MassFraction::ww_percent).to_array().map(|x| (x * 1e9).round() / 1e9);
        assert_eq!(found(span(6.0, 6.0, 6.0)), [5.0, 6.0, 7.0]);
        assert_eq!(found(span(5.4, 6.0, 7.2)), [4.5, 6.0, 8.4]);
        assert_eq!(found(span(96.0, 96.0, 96.0)), [80.0, 96.0, 100.0]);
    }
}
