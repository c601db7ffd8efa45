//! What stands under everything that is mixed by weight: how to, and from which strength on the law calls it a hazard.

use super::{Bearing, handling_facts};
use crate::{quantity::MassFraction, source::Interval};

const CAUTION: &str = "Weigh it; volumes add up only nearly. Blend developers with developers or with a diluent that their \
                       maker allows. Never close the container.";

/// From here on the solution is classified as damaging eyes, and named in the transport list.
const CLASSIFIED_FROM: f64 = 8.0;
/// Above this the public may not buy it, and it is no salon's business to handle it.
const NO_SALON_ABOVE: f64 = 12.0;

/// What is said of a strength on the hair that no salon has business with.
#[cfg(feature = "cli")]
pub(crate) fn too_strong(on_hair: Interval<MassFraction>) -> Option<&'static str> {
    (on_hair.high().ww_percent() > NO_SALON_ABOVE).then_some(
        "TOO STRONG: more than 12 % w/w on the hair: foilwork gives no advice on that in a salon; check the strength, and whether \
         it is that of the bottle",
    )
}

/// The paragraphs for the strongest thing on the bench.
pub(crate) fn cautions(strongest: Interval<MassFraction>) -> Vec<String> {
    let high = strongest.high().ww_percent();
    if high < CLASSIFIED_FROM {
        return vec![CAUTION.to_owned()];
    }
    let facts: Vec<String> = handling_facts(strongest)
        .filter(|(fact, bearing)| {
            let restricted = fact.scheme.contains("precursors") && fact.upper.is_none();
            *bearing != Bearing::Substance && (!fact.code.is_empty() || restricted)
        })
        .map(|(fact, bearing)| {
            let code = if fact.code.is_empty() { String::new() } else { format!("{}, ", fact.code) };
            let may = if bearing == Bearing::MayApply { ", may apply" } else { "" };
            let above = if fact.code.is_empty() { " 12 %" } else { "" };
            let memory = if fact.note.contains("from memory") { "; in part from memory, unverified" } else { "" };
            format!("{}{above} ({code}{}{may}{memory})", fact.class, fact.jurisdiction)
        })
        .collect();
    let classes =
        format!("Hazard classes at {strongest_text}: {}.", facts.join("; "), strongest_text = words(strongest));
    let last = if high > NO_SALON_ABOVE {
        "Stronger than 12 % w/w: foilwork gives no advice on handling it in a salon. Follow the safety data sheet of its \
         supplier."
    } else {
        CAUTION
    };
    vec![classes, last.to_owned()]
}

/// The stronger of two.
pub(crate) fn stronger(one: Interval<MassFraction>, other: Interval<MassFraction>) -> Interval<MassFraction> {
    if other.high() > one.high() { other } else { one }
}

fn words(strength: Interval<MassFraction>) -> String {
    format!("{} % w/w", crate::text::range(&strength, 2))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Quantity;

    fn span(low: f64, high: f64) -> Interval<MassFraction> {
        Interval::ordered(low, high, high).map(MassFraction::nearest)
    }

    const STRONG: &str = "Stronger than 12 % w/w: foilwork gives no advice on handling it in a salon. Follow the safety data sheet of \
                          its supplier.";

    /// The sentences from the rows of `tests/data/peroxide/oxidising_classification.csv`, put together by hand.
    #[test]
    fn a_strength_says_its_classes_from_8_percent() {
        assert_eq!(cautions(span(0.0, 7.99)), [CAUTION]);
        let eye_and_transport =
            "Eye Dam. 1 (H318, EU); 5.1, packing group III (UN 2984, UN; in part from memory, unverified)";
        let both = "restricted to the general public above 12 % (EU); regulated above 12 % (UK)";
        for (percent, classes, last) in [
            (8.0, format!("Hazard classes at 8 % w/w: {eye_and_transport}."), CAUTION),
            (12.0, format!("Hazard classes at 12 % w/w: {eye_and_transport}."), CAUTION),
            (12.01, format!("Hazard classes at 12.01 % w/w: {eye_and_transport}; {both}."), STRONG),
            (
                40.0,
                format!(
                    "Hazard classes at 40 % w/w: Skin Irrit. 2 (H315, EU); Eye Dam. 1 (H318, EU); STOT SE 3 (H335, EU); 5.1 (8), \
                     packing group II (UN 2014, UN; in part from memory, unverified); {both}."
                ),
                STRONG,
            ),
        ] {
            assert_eq!(cautions(span(percent, percent)), [classes, last.to_owned()]);
        }
        assert_eq!(
            cautions(span(7.5, 8.0)),
            [
                "Hazard classes at 8 (7.5 to 8) % w/w: Eye Dam. 1 (H318, EU, may apply); Eye Irrit. 2 (H319, EU, may apply); 5.1, \
                 packing group III (UN 2984, UN, may apply; in part from memory, unverified).",
                CAUTION
            ]
        );
    }

    #[test]
    #[cfg(feature = "cli")]
    fn more_than_12_percent_on_the_hair_is_too_strong() {
        assert_eq!(too_strong(span(12.0, 12.0)), None);
        for on_hair in [span(12.01, 12.01), span(3.0, 12.01)] {
            assert!(
                too_strong(on_hair)
                    .is_some_and(|said| said.starts_with("TOO STRONG: more than 12 % w/w on the hair: "))
            );
        }
    }

    /// By the most that each can be; of two alike the first.
    #[test]
    fn of_two_the_one_that_can_be_stronger_counts() {
        assert_eq!(stronger(span(3.0, 6.0), span(1.0, 9.0)), span(1.0, 9.0));
        assert_eq!(stronger(span(1.0, 9.0), span(3.0, 6.0)), span(1.0, 9.0));
        assert_eq!(stronger(span(1.0, 9.0), span(8.0, 9.0)), span(1.0, 9.0));
    }
}
