use crate::{
    finding::{Finding, Rule, Verdict},
    quantity::Mass,
    source::COMMON_PRACTICE,
};

/// Warns of a lightener that holds more powder than developer: a ratio written developer first, or a slip.
///
/// A powder lightener is written powder first, `1:2` is one part of powder to two of developer, and it is never the larger
/// part: the mixture would be too dry to spread. A cream lightener can be; ask only for powders.
///
/// # Example
///
/// ```
/// use foilwork::{finding::Verdict, mix::check_lightener, quantity::Mass};
///
/// // 18 g of lightener at a ratio written 2:1 instead of 1:2.
/// let finding = check_lightener(Mass::from_g(12.0)?, Mass::from_g(6.0)?).unwrap();
/// assert_eq!(finding.verdict, Verdict::Warning);
/// assert!(finding.text.starts_with("more powder than developer: 12 g powder to 6 g developer"));
/// assert_eq!(check_lightener(Mass::from_g(6.0)?, Mass::from_g(12.0)?), None);
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Common practice.
#[must_use]
pub fn check_lightener(powder: Mass, developer: Mass) -> Option<Finding> {
    let text = || {
        format!(
            "more powder than developer: {powder} powder to {developer} developer; the ratio is written powder first, \
             1:2 is one part of powder to two of developer"
        )
    };
    (powder > developer).then(|| Finding::new(Rule::Ratio, Verdict::Warning, text(), COMMON_PRACTICE))
}
