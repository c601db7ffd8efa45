use super::writing::Writing;
use crate::{
    service::{Hair, Plan},
    text::{Sheet, range},
};

/// The hair as stated, fact by fact.
pub(super) fn hair(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("The hair, as stated by you");
    let rows = facts(&plan.hair, Writing::of(plan.habits)).into_iter().map(|(name, value)| vec![name, value]).collect();
    sheet.table(&["", ""], &[], rows);
}

fn facts(hair: &Hair, writing: Writing) -> Vec<(String, String)> {
    let mut facts = Vec::new();
    let mut say = |name: &str, value: Option<String>| facts.extend(value.map(|value| (name.to_owned(), value)));
    let natural = hair.natural_level.best().number();
    let name = |level| writing.level_name(level).map(|name| format!(" ({name})")).unwrap_or_default();
    let named = name(hair.natural_level.best());
    say(
        "natural level",
        Some(match hair.natural_level_margin_levels {
            Some(margin) => format!("{natural}{named} +/- {}", margin.levels()),
            None => format!("{natural}{named} (no margin stated; a reading by eye is seldom better than half a level)"),
        }),
    );
    say("white", Some(white(hair)));
    say("texture", hair.texture.map(words));
    say("curl", hair.curl.map(words));
    say("density", hair.density.map(words));
    say("porosity", hair.porosity.map(words));
    say("elasticity", hair.elasticity.map(words));
    say("scalp", hair.scalp.map(words));
    say("length", hair.length.map(|length| length.to_string()));
    for existing in &hair.existing {
        let tone = existing.tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        let kind = match existing.artificial {
            true => "artificial colour",
            false if existing.level > hair.natural_level.high() => "lighter than it grows, no artificial colour",
            false => "natural",
        };
        say(&existing.to_string(), Some(format!("{}{}{tone}, {kind}", existing.level, name(existing.level))));
    }
    say(
        "history",
        hair.history.as_ref().map(|flags| match flags.as_slice() {
            [] => "nothing to tell".to_owned(),
            flags => flags.iter().map(|flag| words(*flag)).collect::<Vec<_>>().join(", "),
        }),
    );
    facts
}

/// The word by which the file names a choice, with spaces.
fn words<T: serde::Serialize>(choice: T) -> String {
    match serde_json::to_value(choice) {
        Ok(serde_json::Value::String(word)) => word.replace('-', " "),
        _ => String::new(),
    }
}

/// The share of white hair, and where it was counted.
fn white(hair: &crate::service::Hair) -> String {
    let share = format!("{} %", range(&hair.white, 0));
    match hair.white_counted {
        None => share,
        Some(counted) => {
            format!("{share}, counted on {counted:.0} of the hair: {}", hair.white_counted_in.join(", "))
        }
    }
}
