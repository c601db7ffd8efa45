//! The built program under hostile hands: runs that are right, with words of the command line dropped, doubled, swapped and
//! replaced, and the files they read changed. Whatever comes, it answers as documented.

use super::help::{RUNS, commands, folder, help};
use crate::properties::hostile::{
    changed::{Dice, ODD, changed, words},
    trials,
};
use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::Path,
    process::{Command, Stdio},
    time::{Duration, Instant},
};

/// What stands in a run that is right.
fn values() -> Vec<String> {
    let all: BTreeSet<&str> = RUNS.iter().flat_map(|(_, _, args)| args.iter().copied()).collect();
    all.into_iter().map(str::to_owned).collect()
}

/// The options of a command, by its help.
fn options(command: &str) -> Vec<String> {
    let help = help(command);
    let words = help.split(|c: char| c.is_whitespace() || ",[]=".contains(c));
    words.filter(|word| word.len() > 2 && word.starts_with("--")).map(str::to_owned).collect()
}

/// Numbers at the ends of what anything takes, and between.
const NUMBERS: [&str; 12] = ["0", "0.1", "1", "1.5", "2", "3", "7", "10", "20", "40", "100", "1000"];

/// One to three changes of the words after a command: mostly a number for a number, so that much is taken.
fn other_words(args: &[&str], (options, values): (&[String], &[String]), dice: &mut Dice) -> Vec<String> {
    let mut args: Vec<String> = args.iter().map(|word| (*word).to_owned()).collect();
    let odd: Vec<&str> = ODD.into_iter().filter(|word| !word.contains('\0')).collect();
    for _ in 0..*dice.pick(&[1, 1, 2, 3]) {
        let at = dice.below(args.len());
        let new = if dice.below(2) == 0 { (*dice.pick(&odd)).to_owned() } else { dice.pick(values).clone() };
        let numbers: Vec<usize> = (0..args.len()).filter(|at| args[*at].parse::<f64>().is_ok()).collect();
        match dice.below(10) {
            0..=3 if !numbers.is_empty() => args[*dice.pick(&numbers)] = (*dice.pick(&NUMBERS)).to_owned(),
            4 if !args.is_empty() => args[at] = new,
            5 if !args.is_empty() => drop(args.remove(at)),
            6 if !args.is_empty() => args.insert(at, args[at].clone()),
            7 if args.len() > 1 => {
                let other = dice.below(args.len());
                args.swap(at, other);
            }
            8 => args.push(dice.pick(options).clone()),
            _ => args.extend([dice.pick(options).clone(), new]),
        }
    }
    args
}

/// Changes the first file that a run reads; `None` where it reads none of the folder.
fn other_file(folder: &Path, args: &[&str], dice: &mut Dice) -> Option<String> {
    let name = args.iter().find(|word| folder.join(word).is_file())?;
    let whole = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)).ok()?;
    let vocabulary: Vec<String> = words(&whole).into_iter().map(|(start, end)| whole[start..end].to_owned()).collect();
    Some(((*name).to_owned(), changed(&whole, &vocabulary, dice))).map(|(name, text)| {
        fs::write(folder.join(&name), &text).unwrap();
        name
    })
}

/// Puts the example back.
fn restore(folder: &Path, name: &str) {
    fs::copy(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name), folder.join(name)).unwrap();
}

/// Documented: 0, 1 or 2; what fails says why, briefly and in signs that no terminal obeys, and prints nothing else.
#[test]
fn any_command_line_is_answered() {
    let (folder, values) = (folder("hostile"), values());
    let options: BTreeMap<String, Vec<String>> =
        commands().into_iter().map(|name| (name.clone(), options(&name))).collect();
    let mut seen = [0_u64; 3];
    for trial in 0..trials(160) {
        let mut dice = Dice(trial);
        let (command, _, args) = dice.pick(RUNS);
        let file = if dice.below(3) == 0 { other_file(&folder, args, &mut dice) } else { None };
        let args = if file.is_none() {
            other_words(args, (&options[*command], &values), &mut dice)
        } else {
            args.iter().map(|word| (*word).to_owned()).collect()
        };
        let began = Instant::now();
        let output = Command::new(env!("CARGO_BIN_EXE_foilwork"))
            .current_dir(&folder)
            .arg(command)
            .args(&args)
            .stdin(Stdio::null())
            .output()
            .unwrap();
        let told = format!("trial {trial}: {command} {args:?}, {file:?}");
        let (out, complaint) = (String::from_utf8(output.stdout), String::from_utf8(output.stderr));
        let (out, complaint) = (out.expect(&told), complaint.expect(&told));
        let Some(status @ 0..=2) = output.status.code() else { panic!("{told}: {:?}\n{complaint}", output.status) };
        seen[usize::try_from(status).unwrap()] += 1;
        let acts = |c: char| c.is_control() && c != '\n' || ('\u{202a}'..='\u{202e}').contains(&c);
        assert!(!complaint.contains(acts) && !out.contains(acts), "{told}: a sign that a terminal obeys");
        if status == 2 {
            assert!(out.is_empty() && !complaint.trim().is_empty() && complaint.len() < 200_000, "{told}: {complaint}");
        }
        assert!(began.elapsed() < Duration::from_secs(300), "{told}: hangs");
        // What a run wrote is no part of the next one, and what it could have spoilt is put back.
        for name in ["strands.csv", "new.jsonl"] {
            let _ = fs::remove_file(folder.join(name));
        }
        let _ = fs::remove_dir_all(folder.join("my-salon"));
        file.iter().for_each(|name| restore(&folder, name));
    }
    let [fine, stop, refused] = seen;
    assert!(6 * (fine + stop) > refused, "hardly anything was taken: {seen:?}");
}
