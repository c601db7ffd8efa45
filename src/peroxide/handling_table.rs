//! The rows of the handling facts, in the order of the texts they are from.

use super::handling::{HandlingFact, StrengthBound};
use crate::{
    quantity::MassFraction,
    source::{
        Citation,
        citations::peroxide::{CLP, PRECURSORS_EU, PRECURSORS_UK, TRANSPORT},
    },
};

/// A limit of the table. One that were no strength would become zero, and differ from the published row that the tests
/// hold it against.
const fn percent(ww_percent: f64) -> MassFraction {
    match MassFraction::from_ww_percent(ww_percent) {
        Ok(strength) => strength,
        Err(_) => MassFraction::ZERO,
    }
}

/// A limit that is itself inside the range.
const fn with(ww_percent: f64) -> Option<StrengthBound> {
    Some(StrengthBound { strength: percent(ww_percent), included: true })
}

/// A limit that is itself outside the range.
const fn without(ww_percent: f64) -> Option<StrengthBound> {
    Some(StrengthBound { strength: percent(ww_percent), included: false })
}

/// A row of the harmonised classification of hydrogen peroxide solutions.
const fn clp(
    class: &'static str,
    code: &'static str,
    lower: Option<StrengthBound>,
    upper: Option<StrengthBound>,
    note: &'static str,
) -> HandlingFact {
    fact("EU", "CLP, Regulation (EC) No 1272/2008, Annex VI, index 008-003-00-9", class, code, lower, upper, note, &CLP)
}

/// A row of the transport list.
const fn adr(
    class: &'static str,
    code: &'static str,
    lower: Option<StrengthBound>,
    upper: Option<StrengthBound>,
    note: &'static str,
) -> HandlingFact {
    fact("UN", "UN / ADR transport of dangerous goods, Table A", class, code, lower, upper, note, &TRANSPORT)
}

#[expect(clippy::too_many_arguments, reason = "the columns of a table")]
const fn fact(
    jurisdiction: &'static str,
    scheme: &'static str,
    class: &'static str,
    code: &'static str,
    lower: Option<StrengthBound>,
    upper: Option<StrengthBound>,
    note: &'static str,
    citation: &'static Citation,
) -> HandlingFact {
    HandlingFact { jurisdiction, scheme, class, code, lower, upper, note, citation }
}

const NOTE_B: &str = "specific concentration limit, lower bound included; Note B";
const TO_TEST: &str =
    "specific concentration limit, lower bound included; Note B; the physical hazard is to be confirmed by test";
const SEEN: &str = "limits seen in two public code tables that cite ADR Table A and the IMDG code; which end of a range \
                    is inside it, and the subsidiary hazard, are from memory";

/// Every fact there is, in the order of the texts.
pub const HANDLING_FACTS: &[HandlingFact] = &[
    clp("Ox. Liq. 1", "H271", with(70.0), None, TO_TEST),
    clp("Ox. Liq. 2", "H272", with(50.0), without(70.0), TO_TEST),
    clp("Skin Corr. 1A", "H314", with(70.0), None, NOTE_B),
    clp("Skin Corr. 1B", "H314", with(50.0), without(70.0), NOTE_B),
    clp("Skin Irrit. 2", "H315", with(35.0), without(50.0), NOTE_B),
    clp("Eye Dam. 1", "H318", with(8.0), without(50.0), NOTE_B),
    clp("Eye Irrit. 2", "H319", with(5.0), without(8.0), NOTE_B),
    clp("STOT SE 3", "H335", with(35.0), None, NOTE_B),
    clp(
        "no harmonised skin or eye class",
        "",
        with(0.0),
        without(5.0),
        "inference from the lowest limit above; other components may classify the mixture",
    ),
    clp(
        "Acute Tox. 4 (oral and inhalation)",
        "H302; H332",
        None,
        None,
        "minimum classification of the substance, no specific limit in the entry",
    ),
    adr("not regulated as 5.1 hydrogen peroxide", "", with(0.0), without(8.0), SEEN),
    adr("5.1, packing group III", "UN 2984", with(8.0), without(20.0), SEEN),
    adr("5.1 (8), packing group II", "UN 2014", with(20.0), with(60.0), SEEN),
    adr("5.1 (8), packing group I", "UN 2015", without(60.0), with(100.0), SEEN),
    fact(
        "EU",
        "explosives precursors, Regulation (EU) 2019/1148, Annex I",
        "restricted to the general public above",
        "",
        without(12.0),
        None,
        "12 % itself may be sold to the public; licence possible up to 35 % w/w",
        &PRECURSORS_EU,
    ),
    fact(
        "EU",
        "explosives precursors, Regulation (EU) 2019/1148, Article 5(3)",
        "licence ceiling",
        "",
        without(12.0),
        with(35.0),
        "",
        &PRECURSORS_EU,
    ),
    fact(
        "UK",
        "explosives precursors, Poisons Act 1972",
        "regulated above",
        "",
        without(12.0),
        None,
        "professional use exempt from the licence",
        &PRECURSORS_UK,
    ),
];
