use super::decision::{Go, decide};
use crate::{
    choice::choice,
    finding::{Finding, Verdict},
    lift::TimeTo,
    reader::Problems,
    service::{
        Evidence, Plan, ServiceFile, Start,
        plan::plan_without_day,
        shape::{Elasticity, HistoryFlag, Porosity, Test, TestResult},
    },
};
use jiff::SignedDuration;
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// A test before the service.
    TestKind: "test" {
        /// The skin, with the products of the service.
        Skin = "skin",
        /// A strand, with its mixes.
        Strand = "strand",
        /// Cut hair, for metal salts.
        Incompatibility = "incompatibility",
        /// Stretch and return of a damp strand.
        Elasticity = "elasticity",
        /// How readily the hair takes up liquid.
        Porosity = "porosity",
    }
}

/// What one result of a test changes: the service planned anew with it, held against the plan as it stands.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TestEffect {
    /// The test.
    pub test: TestKind,
    /// The result; absent where the test is not done or not stated.
    pub result: Option<String>,
    /// Whether this is what the file states.
    pub stated: bool,
    /// Whether to go on then.
    pub go: Go,
    /// What says stop, warns or is open then, and not now.
    pub adds: Vec<Finding>,
    /// What says stop, warns or is open now, and not then.
    pub lifts: Vec<Finding>,
    /// When the slowest section, by the median, reaches its target then, counted from its own first strand; absent where nothing
    /// is lightened or a target is not reached at all.
    pub slowest: Option<TimeTo>,
    /// Its median over what it is as stated: the factor of this result.
    pub time_factor: Option<f64>,
}

/// A test that is applied now is read after two days where no rule of the house says how long to wait.
const WAIT_H: f64 = 48.0;

/// What every result of every test changes, in the order of the tests: each plan is held against `base`, made without a day as
/// they are. What the file states is decided already: `go`.
///
/// # Errors
///
/// [`Problems`], as for a plan.
pub(super) fn what_tests_change(
    file: &ServiceFile,
    evidence: &Evidence,
    base: &Plan,
    go: Go,
) -> Result<Vec<TestEffect>, Problems> {
    let mut effects = Vec::new();
    let mut tried = |test, result: Option<String>, stated, changed: ServiceFile| -> Result<(), Problems> {
        let then = if stated { None } else { Some(plan_without_day(&changed, evidence)?) };
        let then = then.as_ref().unwrap_or(base);
        let (slowest, now) = (slowest(then), slowest(base));
        effects.push(TestEffect {
            test,
            result,
            stated,
            go: if stated { go } else { decide(then).go },
            adds: only_in(then, base),
            lifts: only_in(base, then),
            slowest,
            time_factor: slowest.zip(now).and_then(|(then, now)| times(then, now)),
        });
        Ok(())
    };
    let applied = in_time(base, file.salon.skin_test_wait_h.unwrap_or(WAIT_H));
    let results = TestResult::ALL.iter().copied().map(Some).chain([None]);
    for (kind, of) in TESTS {
        for result in results.clone() {
            let mut changed = file.clone();
            let place = of(&mut changed);
            let stated = place.as_ref().map(|test| test.result);
            let day = place.as_ref().map_or_else(|| applied.clone(), |test| test.applied.clone());
            *place = result.map(|result| Test { applied: day, result });
            tried(kind, result.map(|result| result.to_string()), stated == result, changed)?;
        }
    }
    for result in Elasticity::ALL.iter().copied().map(Some).chain([None]) {
        let mut changed = file.clone();
        changed.analysis.elasticity = result;
        let words = result.map(|result| result.to_string());
        tried(TestKind::Elasticity, words, result == file.analysis.elasticity, changed)?;
    }
    for result in Porosity::ALL.iter().copied().map(Some).chain([None]) {
        let mut changed = file.clone();
        changed.analysis.porosity = result;
        let words = result.map(|result| result.to_string());
        tried(TestKind::Porosity, words, result == file.analysis.porosity, changed)?;
    }
    // A test that nobody needs changes little: without metal salts in the history only its failure counts.
    let metal = base.hair.has(HistoryFlag::MetallicSalts) || base.hair.has(HistoryFlag::Henna);
    effects.retain(|one| {
        metal || one.test != TestKind::Incompatibility || one.stated || one.result.as_deref() == Some("reaction")
    });
    Ok(effects)
}

type Place = fn(&mut ServiceFile) -> &mut Option<Test>;

/// Where the file keeps each test.
const TESTS: [(TestKind, Place); 3] = [
    (TestKind::Skin, |file| &mut file.analysis.skin_test),
    (TestKind::Strand, |file| &mut file.analysis.strand_test),
    (TestKind::Incompatibility, |file| &mut file.analysis.incompatibility_test),
];

/// The moment at which a test would have been applied that is read at the start of the service.
fn in_time(plan: &Plan, wait_h: f64) -> String {
    let wait = SignedDuration::try_from_secs_f64(wait_h * 3600.0).unwrap_or_default();
    // A bare day begins at midnight: the day before is early enough for any hour of it.
    let at = Start::At(plan.start.earliest().saturating_sub(wait));
    at.earliest().strftime("%Y-%m-%dT%H:%M:%S").to_string()
}

fn only_in(one: &Plan, other: &Plan) -> Vec<Finding> {
    let counts = |found: &&Finding| found.verdict <= Verdict::NotJudged && !other.findings.contains(found);
    one.findings.iter().filter(counts).cloned().collect()
}

/// When the slowest lightened section reaches its target, by the median.
fn slowest(plan: &Plan) -> Option<TimeTo> {
    let mut slowest: Option<TimeTo> = None;
    for lift in &plan.lift {
        lift.reached.median?;
        slowest = Some(slowest.filter(|known| known.median > lift.reached.median).unwrap_or(lift.reached));
    }
    slowest
}

fn times(then: TimeTo, now: TimeTo) -> Option<f64> {
    let (then, now) = (then.median?.min(), now.median?.min());
    (now > 0.0).then(|| then / now)
}
