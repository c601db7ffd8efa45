use super::{Mark, PricedLine, ServiceLine};

/// The marks of one service, given those that stand before it.
pub(super) fn marks(line: &ServiceLine, priced: &PricedLine, before: &[ServiceLine]) -> Vec<Mark> {
    let same = |other: &ServiceLine| (&other.service, &other.class) == (&line.service, &line.class);
    let loses = priced.profit.is_negative();
    [
        (loses, Mark::LosesMoney),
        (priced.contribution_per_chair_hour.per_unit.is_sign_negative(), Mark::LessThanEmptyChair),
        (!loses && line.price.is_some() && priced.net < priced.target_net, Mark::BelowTarget),
        (line.hands_on > line.in_chair, Mark::HandsOnExceedsChair),
        (before.iter().any(same), Mark::ListedTwice),
    ]
    .into_iter()
    .filter_map(|(is_so, mark)| is_so.then_some(mark))
    .collect()
}
