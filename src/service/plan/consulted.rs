//! What was said before the service, held against the plan: earlier services with their gaps, wishes, who has agreed.

use super::{Hair, Lapsed, SectionLift, Start, canvas::Stretch, lapsed::Facts, sections::Sections};
use crate::{
    colour::{Level, LevelChange},
    finding::Rule,
    hair::{GrowthRate, Weeks, grown, weeks_to_grow},
    quantity::{Length, Quantity},
    service::{
        file::Moment,
        request::{Asked, Request},
        shape::{HistoryFlag, Party, PastPlace, PastWork, Zone},
    },
    source::Interval,
    text::list,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What was said before the service, and how the plan holds to it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SaidBefore {
    /// Earlier services, the latest first; those without a day last.
    pub past: Vec<PastService>,
    /// How old the ends of the hair are: all of it has grown since; absent where its length is not stated.
    #[serde(rename = "oldest_weeks")]
    pub oldest: Option<Interval<Weeks>>,
    /// Stretches of that time of which nobody knows what was done.
    pub gaps: Vec<HistoryGap>,
    /// What the guest wants, zone by zone.
    pub wishes: Vec<WishHeld>,
    /// Who has agreed, and when.
    pub agreed: Vec<Agreed>,
}

/// An earlier service.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PastService {
    /// The day; absent where nobody knows it.
    pub on: Option<Start>,
    /// What was done.
    pub what: PastWork,
    /// The formula in words; absent where nobody knows it.
    pub formula: Option<String>,
    /// Where along the strand.
    pub zone: Option<Zone>,
    /// Where it was done.
    pub place: Option<PastPlace>,
    /// Weeks from that day to the start of this service.
    #[serde(rename = "ago_weeks")]
    pub ago: Option<Weeks>,
    /// What has grown in since: what was put on at the root then begins here now.
    #[serde(rename = "grown_out_cm")]
    pub grown_out: Option<Interval<Length>>,
}

/// A stretch of time of which nobody knows what was done to the hair.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HistoryGap {
    /// From when; absent where that is not known either.
    pub since: Option<Start>,
    /// Until when; absent where that is not known.
    pub until: Option<Start>,
    /// What is not known, and what to ask.
    pub text: String,
}

/// A wish of the guest, and how the plan holds to it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WishHeld {
    /// The zone.
    pub zone: Zone,
    /// The level wanted.
    pub level: Level,
    /// How far from it the guest is still content, either way.
    pub tolerance_levels: LevelChange,
    /// The tone wanted, in words.
    pub tone: Option<String>,
    /// What the guest dislikes there now.
    pub dislikes: Option<String>,
    /// What is there now: the darkest of it, with its bounds.
    pub now_level: Interval<Level>,
    /// The sections that work there.
    pub sections: Vec<WishSection>,
    /// Why the plan does not hold to it; absent where it does.
    pub why_not: Option<String>,
    /// Whether the low end of every forecast holds to it, too; where nobody works, both bounds of what is there.
    pub is_sure: bool,
}

/// A section that works in the zone of a wish.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WishSection {
    /// Its name.
    pub section: String,
    /// The level that it aims at.
    pub target_level: Level,
    /// The level of its last strand by the forecast, where it is lightened: it is on the hair for the shortest time.
    pub forecast_level: Option<Interval<Level>>,
}

/// Somebody's agreement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Agreed {
    /// Who.
    pub who: Party,
    /// The day.
    pub on: Start,
    /// To what, in words.
    pub to: Option<String>,
    /// To the findings of which rules; where none is named it settles nothing.
    pub rules: Vec<Rule>,
    /// Of these rules, those that it no longer settles.
    pub lapsed: Vec<Lapsed>,
}

impl Agreed {
    /// Whether it settles the findings of a rule.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Rule, service::{Agreed, Lapsed, Start, shape::Party}};
    /// use jiff::civil::date;
    ///
    /// let (who, on, rules) = (Party::Guest, Start::Day(date(2026, 11, 1)), vec![Rule::Lift, Rule::Health]);
    /// let lapsed = vec![Lapsed { rule: Rule::Lift, why: "strand test of 2026-11-20 came after it".to_owned() }];
    /// let agreed = Agreed { who, on, to: None, rules, lapsed };
    /// assert!(agreed.settles(Rule::Health) && !agreed.settles(Rule::Lift));
    /// ```
    #[must_use]
    pub fn settles(&self, rule: Rule) -> bool {
        self.rules.contains(&rule) && !self.lapsed.iter().any(|one| one.rule == rule)
    }
}

impl PastWork {
    /// What a work of the past says of the history, where there is a word for it.
    pub(super) const fn flag(self) -> Option<HistoryFlag> {
        Some(match self {
            Self::Lightener => HistoryFlag::Lightened,
            Self::PermanentColour => HistoryFlag::PermanentColour,
            Self::Henna => HistoryFlag::Henna,
            Self::MetallicColour => HistoryFlag::MetallicSalts,
            Self::Straightened | Self::Permed => HistoryFlag::StraightenedOrPermed,
            Self::Toner | Self::SemiPermanent | Self::ColourRemover | Self::Unknown => return None,
        })
    }
}

impl SaidBefore {
    /// Where the file has a consultation.
    pub(super) fn of(
        request: &Request,
        hair: &Hair,
        sections: &Sections<'_>,
        rate: Interval<GrowthRate>,
        lift: &[SectionLift],
    ) -> Option<Self> {
        let asked = request.asked.as_ref()?;
        let oldest = hair.length.map(|length| weeks_to_grow(length.into(), rate));
        let past = past(asked, request.start, rate);
        let dated = past.iter().filter_map(|one| Some((one.on?, one.what.to_string())));
        let facts = Facts { hair, past: dated.collect(), salon: &request.file.salon, start: request.start };
        Some(Self {
            gaps: gaps(asked, request.start, oldest),
            oldest,
            wishes: wishes(asked, hair, sections, lift),
            agreed: asked
                .agreed
                .iter()
                .map(|(on, one)| Agreed {
                    who: one.who,
                    on: Start::of(*on),
                    to: one.to.clone(),
                    rules: one.rules.clone(),
                    lapsed: facts.lapsed(*on, &one.rules),
                })
                .collect(),
            past,
        })
    }
}

/// Whole days from a day to another, as weeks.
fn weeks_from(then: Moment, now: Moment) -> Weeks {
    let days = now.earliest.date().duration_since(then.earliest.date()).as_hours() / 24;
    Weeks::nearest(days as f64 / 7.0)
}

fn past(asked: &Asked, start: Moment, rate: Interval<GrowthRate>) -> Vec<PastService> {
    let services = asked.past.iter().map(|(on, entry)| {
        let ago = on.map(|on| weeks_from(on, start));
        PastService {
            on: on.map(Start::of),
            what: entry.what,
            formula: entry.formula.clone(),
            zone: entry.zone,
            place: entry.place,
            ago,
            grown_out: ago.map(|weeks| grown(weeks.into(), rate)),
        }
    });
    services.collect()
}

fn gaps(asked: &Asked, start: Moment, oldest: Option<Interval<Weeks>>) -> Vec<HistoryGap> {
    let mut gaps = Vec::new();
    let age = oldest.map_or_else(
        || "how old the ends are is not known either: enter `analysis.length_cm`".to_owned(),
        |weeks| {
            let [low, best, high] = weeks.to_array().map(|weeks| weeks.weeks() / (365.25 / 12.0 / 7.0));
            format!("the ends are about {best:.0} months old ({low:.0} to {high:.0})")
        },
    );
    match asked.known_since {
        None => gaps.push(HistoryGap {
            since: None,
            until: None,
            text: format!(
                "whether the list of earlier services is complete is not said: ask, then enter `consultation.known_since`; {age}"
            ),
        }),
        // At the slowest growth the ends are oldest: only then is it sure that all of the hair is younger.
        Some(since) if oldest.is_none_or(|oldest| oldest.high() > weeks_from(since, start)) => gaps.push(HistoryGap {
            since: None,
            until: Some(Start::of(since)),
            text: format!("before {} nothing is known: take the ends as coloured by an unknown hand; {age}", since.earliest.date()),
        }),
        Some(_) => {}
    }
    for (on, entry) in &asked.past {
        let lacks = match (on, entry.what, &entry.formula) {
            (None, what, _) => format!("{what}: when is not known"),
            (Some(on), PastWork::Unknown, _) => format!("{}: what was done is not known", on.earliest.date()),
            (Some(on), what, None) => format!("{what} on {}: the formula is not known", on.earliest.date()),
            _ => continue,
        };
        let day = on.map(Start::of);
        gaps.push(HistoryGap { since: day, until: day, text: format!("{lacks}: test a strand there first") });
    }
    gaps
}

fn wishes(asked: &Asked, hair: &Hair, sections: &Sections<'_>, lift: &[SectionLift]) -> Vec<WishHeld> {
    let held = asked.wishes.iter().map(|(level, tolerance, entry)| {
        let now = hair.at(Stretch { zone: entry.zone, cm: None }).level;
        let there = sections.iter().filter(|work| work.is_section() && work.task.zone.overlaps(entry.zone));
        let there: Vec<WishSection> = there
            .filter_map(|work| {
                Some(WishSection {
                    section: work.name().to_owned(),
                    target_level: work.task.target?,
                    forecast_level: lift.iter().find(|lift| lift.section == work.name()).map(|lift| lift.last_strand),
                })
            })
            .collect();
        let mut wish = WishHeld {
            zone: entry.zone,
            level: *level,
            tolerance_levels: *tolerance,
            tone: entry.tone.clone(),
            dislikes: entry.dislikes.clone(),
            now_level: now,
            sections: there,
            why_not: None,
            is_sure: false,
        };
        wish.why_not = why_not(&wish);
        wish.is_sure = wish.why_not.is_none() && is_sure(&wish);
        wish
    });
    held.collect()
}

/// A hair's breadth beyond the tolerance is the tolerance: levels are decimals.
const TOUCH: f64 = 1e-9;

/// What keeps the plan from a wish: nobody works there, another level is aimed at, or the forecast falls short.
fn why_not(wish: &WishHeld) -> Option<String> {
    let (want, tolerance) = (wish.level.number(), wish.tolerance_levels.levels());
    let off = |level: Level| level.number() - want;
    if wish.sections.is_empty() {
        let there = off(wish.now_level.best()).abs() <= tolerance + TOUCH;
        return (!there).then(|| format!("no section works there, and it is at {} now", wish.now_level.best()));
    }
    for one in &wish.sections {
        if off(one.target_level).abs() > tolerance + TOUCH {
            return Some(format!("{} aims at {}", one.section, one.target_level));
        }
        let short = one.forecast_level.filter(|forecast| off(forecast.best()) < -tolerance - TOUCH);
        if let Some(forecast) = short {
            let [low, best, high] = forecast.to_array().map(Level::number);
            return Some(format!("{} is expected at level {best:.1} ({low:.1} to {high:.1})", one.section));
        }
    }
    None
}

/// Whether the plan holds to a wish by its bounds: both of what is there where nobody works, the low end of every forecast where
/// somebody does.
fn is_sure(wish: &WishHeld) -> bool {
    let (want, tolerance) = (wish.level.number(), wish.tolerance_levels.levels() + TOUCH);
    let off = |level: Level| level.number() - want;
    if wish.sections.is_empty() {
        return off(wish.now_level.low()) >= -tolerance && off(wish.now_level.high()) <= tolerance;
    }
    // What gets lighter than wanted is rinsed when the level is seen: only what falls short cannot be helped. What has no
    // forecast holds by none.
    wish.sections.iter().all(|one| one.forecast_level.is_some_and(|forecast| off(forecast.low()) >= -tolerance))
}

impl WishHeld {
    /// The sections that aim there without a forecast: of lightener alone there is one.
    pub(super) fn not_forecast(&self) -> Vec<String> {
        let open = self.sections.iter().filter(|one| one.forecast_level.is_none());
        open.map(|one| one.section.clone()).collect()
    }

    /// How the plan holds to it, in words.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::{parse_with_shop, plan}, shop::parse_shop};
    ///
    /// let read = |name: &str| std::fs::read_to_string(format!("examples/{name}.toml"));
    /// let shop = parse_shop(&read("juniper_and_tide")?, Format::Toml)?;
    /// let file = parse_with_shop(&read("staged-lightening")?, Format::Toml, &shop)?;
    /// let said = plan(&file)?.consulted.ok_or("no consultation")?;
    /// let held = said.wishes.iter().map(|wish| wish.in_words()).collect::<Vec<_>>();
    /// assert!(held.iter().any(|words| words.starts_with("not held: ")), "{held:?}");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn in_words(&self) -> String {
        match &self.why_not {
            Some(why) => format!("not held: {why}"),
            None if self.is_sure && self.sections.is_empty() => "held".to_owned(),
            None if self.is_sure => "held by the low end of the forecast".to_owned(),
            None if !self.not_forecast().is_empty() => {
                format!(
                    "aimed at by {}, and colour has no forecast to hold it against",
                    list(self.not_forecast(), "and")
                )
            }
            None => "held by the estimate, not by all of its bounds".to_owned(),
        }
    }
}
