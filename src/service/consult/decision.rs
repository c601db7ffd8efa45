use super::concern::{Concern, parties};
use crate::{
    choice::choice,
    finding::{Finding, Rule, Verdict},
    service::{Agreed, Plan, Start, shape::Party},
    text::{count, list},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// Whether to go on.
    Go: "decision" {
        /// Do not begin.
        Stop = "stop" => "STOP",
        /// Begin only when what is open is settled and agreed, and keep to what is said.
        Restrict = "restrict" => "RESTRICT",
        /// No check speaks against it. It does not say that anything is safe.
        Proceed = "proceed",
    }
}

/// Whether to go on, with the reasons: a fold over what the checks of the plan found, and no rule of its own.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Decision {
    /// Whether to go on.
    pub go: Go,
    /// In a sentence.
    pub text: String,
    /// What says stop.
    pub stops: Vec<Finding>,
    /// What restricts the service.
    pub restrictions: Vec<Finding>,
    /// What nobody knows yet; it never counts as fine.
    pub open: Vec<Finding>,
    /// Who has to agree.
    pub consents: Vec<Consent>,
    /// How many warnings concern the work at the bench alone; they stand on its sheet.
    pub for_the_bench: usize,
}

/// An agreement that is needed, of one party: what one agreement covers, or what nobody has agreed to yet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Consent {
    /// Who.
    pub who: Party,
    /// To what findings of which rules.
    pub to: Vec<Rule>,
    /// When it was given to these rules by name; absent where it is still to be asked for.
    pub agreed_on: Option<Start>,
    /// In which words it was given.
    pub words: Option<String>,
    /// Agreements of the same party that name no rule asked of it: somebody has to look whether they cover this.
    pub noted: Vec<Agreed>,
    /// Agreements of the same party to these rules that no longer count, with the reason: they are asked for anew.
    pub lapsed: Vec<LapsedAgreement>,
    /// Whether one of them says stop, which no agreement lifts: what it rests on has to change.
    pub stop_stands: bool,
}

/// An agreement that no longer counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LapsedAgreement {
    /// When it was given.
    pub on: Start,
    /// To the findings of which rule.
    pub rule: Rule,
    /// Why it no longer counts.
    pub why: String,
}

impl Decision {
    /// Of these agreements, those that settle nothing that is asked and are noted with nothing that is open.
    pub(crate) fn unused<'a>(&self, agreed: &'a [Agreed]) -> impl Iterator<Item = &'a Agreed> {
        agreed.iter().filter(|one| {
            let counts = |consent: &Consent| {
                consent.who == one.who
                    && (consent.noted.contains(one) || consent.to.iter().any(|rule| one.rules.contains(rule)))
            };
            !self.consents.iter().any(counts)
        })
    }
}

/// Whether to go on with a plan.
///
/// What says stop counts whatever it concerns. A warning or a thing that is not known restricts, unless it concerns the work
/// at the bench alone. An agreement lifts nothing: a stop stays a stop and a warning a restriction; what nobody has agreed to
/// yet is named. It settles only the rules that it names, and only while it counts: not where it is older than the house's rule, nor
/// where a test or a service came after it that the finding rests on.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{Go, decide, plan_text}};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let decision = decide(&plan);
/// assert_eq!(decision.go, Go::Restrict);
/// assert!(decision.stops.is_empty() && decision.open.iter().any(|found| found.rule.code() == "law"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn decide(plan: &Plan) -> Decision {
    let of = |verdict: Verdict| {
        let counts = move |found: &&Finding| {
            found.verdict == verdict && (verdict == Verdict::Stop || Concern::of(found.rule) != Concern::Work)
        };
        plan.findings.iter().filter(counts).cloned().collect::<Vec<_>>()
    };
    let (stops, restrictions, open) = (of(Verdict::Stop), of(Verdict::Warning), of(Verdict::NotJudged));
    let bench = |found: &&Finding| {
        matches!(found.verdict, Verdict::Warning | Verdict::NotJudged) && Concern::of(found.rule) == Concern::Work
    };
    let for_the_bench = plan.findings.iter().filter(bench).count();
    let consents = consents(plan, &stops, &restrictions);
    let go = match (stops.is_empty(), restrictions.is_empty() && open.is_empty()) {
        (false, _) => Go::Stop,
        (true, false) => Go::Restrict,
        (true, true) => Go::Proceed,
    };
    let text = in_words(go, [&stops, &restrictions, &open], &consents);
    Decision { go, text, stops, restrictions, open, consents, for_the_bench }
}

/// Party by party: what each agreement covers, the latest first, then what is still to be asked.
fn consents(plan: &Plan, stops: &[Finding], restrictions: &[Finding]) -> Vec<Consent> {
    let mut needed: Vec<Consent> = Vec::new();
    let agreed = || plan.consulted.iter().flat_map(|one| &one.agreed);
    let asked_of = |who: Party, rule: Rule| {
        parties(rule).contains(&who) && stops.iter().chain(restrictions).any(|found| found.rule == rule)
    };
    for found in stops.iter().chain(restrictions) {
        for who in parties(found.rule) {
            let stop_stands = found.verdict == Verdict::Stop;
            let of_party = || agreed().filter(|one| one.who == *who);
            let given = of_party().filter(|one| one.settles(found.rule)).max_by_key(|one| one.on.earliest());
            let (on, words) = (given.map(|given| given.on), given.and_then(|given| given.to.as_ref()));
            let of_rule = |one: &Agreed| {
                let lapsed = one.lapsed.iter().find(|lapsed| lapsed.rule == found.rule)?;
                Some(LapsedAgreement { on: one.on, rule: found.rule, why: lapsed.why.clone() })
            };
            let lapsed: Vec<_> = if given.is_some() { Vec::new() } else { of_party().filter_map(of_rule).collect() };
            let same = |one: &&mut Consent| one.who == *who && one.agreed_on == on && one.words.as_ref() == words;
            match needed.iter_mut().find(same) {
                Some(known) => {
                    known.stop_stands |= stop_stands;
                    if !known.to.contains(&found.rule) {
                        known.lapsed.extend(lapsed);
                        known.to.push(found.rule);
                    }
                }
                None => {
                    let elsewhere = |one: &&Agreed| one.rules.iter().any(|rule| asked_of(*who, *rule));
                    let noted = of_party().filter(|one| given.is_none() && !elsewhere(one));
                    needed.push(Consent {
                        who: *who,
                        to: vec![found.rule],
                        agreed_on: on,
                        words: words.cloned(),
                        noted: noted.cloned().collect(),
                        lapsed,
                        stop_stands,
                    });
                }
            }
        }
    }
    needed.sort_by_key(|consent| (consent.who, std::cmp::Reverse(consent.agreed_on.map(Start::earliest))));
    needed
}

fn in_words(go: Go, [stops, restrictions, open]: [&[Finding]; 3], consents: &[Consent]) -> String {
    let rules = |found: &[Finding]| {
        let mut names: Vec<String> = found.iter().map(|one| one.rule.words().to_owned()).collect();
        names.dedup();
        list(&names, "and")
    };
    let asked: Vec<String> =
        consents.iter().filter(|one| one.agreed_on.is_none()).map(|one| one.who.to_string()).collect();
    match go {
        Go::Stop => format!("do not begin: {}; no agreement lifts that", rules(stops)),
        Go::Restrict => {
            let mut parts = Vec::new();
            if !restrictions.is_empty() {
                let many = count(restrictions.len(), "restriction", "restrictions");
                parts.push(format!("keep to {many} ({})", rules(restrictions)));
            }
            if !open.is_empty() {
                parts.push(format!("settle what is not known first ({})", rules(open)));
            }
            if !asked.is_empty() {
                parts.push(format!("still to agree: {}", list(&asked, "and")));
            }
            parts.join("; ")
        }
        Go::Proceed => "no check speaks against it; that does not say that anything is safe".to_owned(),
    }
}
