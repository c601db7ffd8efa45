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
