//! What the commands that note and keep write, and what they refuse to write.

use crate::api::noted::run;
use rstest::rstest;
use std::fs;

/// Nothing is written to the end of a file that holds something else.
#[test]
fn a_file_of_another_kind_is_not_written_to() {
    let folder = tempfile::tempdir().unwrap();
    let place = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (service, log, records) = (place("service.toml"), place("today.jsonl"), place("records.jsonl"));
    fs::copy("examples/soft-gradient.toml", &service).unwrap();
    fs::copy("examples/soft-gradient.jsonl", &log).unwrap();
    fs::copy("examples/juniper_and_tide_records.jsonl", &records).unwrap();
    for (target, command) in [
        (&service, vec!["note", &service, "--at", "5", "--incident", "none"]),
        (&records, vec!["note", &records, "--at", "5", "--incident", "none"]),
        (&service, vec!["record", "examples/soft-gradient.toml", "examples/soft-gradient.jsonl", "--keep", &service]),
        (&log, vec!["record", "examples/soft-gradient.toml", "examples/soft-gradient.jsonl", "--keep", &log]),
    ] {
        let before = fs::read(target).unwrap();
        let (status, said) = run(&command);
        assert!(status == 2 && said.contains("it holds something else"), "{command:?}: {said}");
        assert_eq!(fs::read(target).unwrap(), before);
    }
    // Of its own kind it grows, also after a line that was torn, and where it is new.
    for begin in [
        "",
        "{\"format\":1,\"at_m",
        "{\"format\":1,\"at_m\n{\"format\":1,\"at_min\":1.0,\"what\":\"incident\",\"note\":\"x\"}\n",
    ] {
        fs::write(&log, begin).unwrap();
        run(&["note", &log, "--at", "5", "--incident", "dizzy"]);
        assert!(fs::read_to_string(&log).unwrap().ends_with("\"note\":\"dizzy\"}\n"), "{begin}");
    }
}

/// What could not be read of the log, or not be read back of the record, is told and not kept without it.
#[rstest]
#[case::torn(
    "{\"format\":1,\"at_min\":30,\"what\":\"incident\",\"note\":\"swelling of the ey",
    "not all of the log can be read"
)]
#[case::a_lost_point(
    "{\"format\":1,\"at_min\":30,\"what\":\"weighed\",\"section\":\"nape\",\"mass_g\":5200}\n",
    "what the log says cannot be"
)]
fn what_cannot_be_kept_whole_is_not_kept(#[case] line: &str, #[case] want: &str) {
    let folder = tempfile::tempdir().unwrap();
    let (log, records) = (folder.path().join("today.jsonl"), folder.path().join("records.jsonl"));
    fs::write(&log, line).unwrap();
    let (log, kept) = (log.to_str().unwrap(), records.to_str().unwrap());
    let (status, said) = run(&["record", "examples/soft-gradient.toml", log, "--keep", kept]);
    assert!(status == 2 && said.contains(want), "{said}");
    assert!(!records.exists());
}

/// A service kept again after something was added counts once, with what was added.
#[test]
fn a_service_kept_again_counts_once() {
    let folder = tempfile::tempdir().unwrap();
    let (log, records) = (folder.path().join("today.jsonl"), folder.path().join("records.jsonl"));
    let (log, records) = (log.to_str().unwrap(), records.to_str().unwrap());
    let keep = || run(&["record", "examples/soft-gradient.toml", log, "--keep", records]);
    run(&["note", log, "--at", "0", "--section", "nape", "--begun"]);
    keep();
    run(&["note", log, "--at", "45", "--section", "nape", "--rinsed"]);
    keep();
    let (_, said) = run(&["history", records]);
    // Where lines end depends on how long the name of the folder is.
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.starts_with("HISTORY 1 service") && said.contains("kept twice, not alike: the later line counts"),
        "{said}"
    );
}

/// A plan that says stop is no plan for the rest of a day.
#[test]
fn a_blocked_plan_is_not_gone_on_with() {
    let folder = tempfile::tempdir().unwrap();
    let (service, log) = (folder.path().join("service.toml"), folder.path().join("today.jsonl"));
    let text = fs::read_to_string("examples/soft-gradient.toml").unwrap();
    assert!(text.contains("result = \"clear\""));
    fs::write(&service, text.replacen("result = \"clear\"", "result = \"reaction\"", 1)).unwrap();
    fs::write(&log, "{\"format\":1,\"at_min\":0.0,\"what\":\"begun\",\"section\":\"nape\"}\n").unwrap();
    let (service, log) = (service.to_str().unwrap(), log.to_str().unwrap());
    let (status, said) = run(&["day", service, "--log", log]);
    assert!(status == 1 && said.contains("nothing more is begun") && !said.contains("Piece by piece"), "{said}");
    let entries = run(&["note", log, "--at", "5", "--comfort", "fine", "--plan", service]);
    assert_eq!(entries.0, 1);
}

/// One line is enough to tell what a file holds, and lines that were torn tell nothing against it.
#[test]
fn a_file_is_known_by_one_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("file.jsonl");
    let name = path.to_str().unwrap();
    let one_record =
        fs::read_to_string("examples/juniper_and_tide_records.jsonl").unwrap().lines().next().unwrap().to_owned();
    let note = ["note", name, "--at", "5", "--incident", "dizzy"];
    let keep = ["record", "examples/soft-gradient.toml", "examples/soft-gradient.jsonl", "--keep", name];
    let log = "{\"format\":1,\"at_min\":1.0,\"what\":\"incident\",\"note\":\"x\"}\n";
    let json = fs::read_to_string("examples/lowlights.json").unwrap();
    for (holds, command) in [
        (one_record.as_str(), &note[..]),
        (log, &keep[..]),
        (json.as_str(), &keep[..]),
        ("{\"title\": \"Soft\"}\n", &note[..]),
        ("\"title\",\"guest\",\"on\"\n", &keep[..]),
    ] {
        fs::write(&path, holds).unwrap();
        let (status, said) = run(command);
        assert!(status == 2 && said.contains("it holds something else"), "{holds}: {said}");
        assert_eq!(fs::read_to_string(&path).unwrap(), holds);
    }
    for holds in ["", "\n\n", "\u{feff}", "{\"form\n{\"format\":1,\"at", &log.replace('\n', "\r\n")] {
        fs::write(&path, holds).unwrap();
        run(&note);
        assert!(fs::read_to_string(&path).unwrap().ends_with("\"note\":\"dizzy\"}\n"), "{holds:?}");
    }
    fs::copy("examples/soft-gradient.toml", &path).unwrap();
    let strand = "--before 6 --after 8 --minutes 30 --developer 6%w/w --ratio 1:2";
    let (status, said) = run(&[&["strand-test", name], &strand.split(' ').collect::<Vec<_>>()[..]].concat());
    assert!(status == 2 && said.contains("it holds something else"), "{said}");
}

/// What went wrong is told of a service that is kept again without it, in whatever order the lines stand.
#[test]
fn what_went_wrong_stays_in_a_service_that_is_kept_twice() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (burned, fine) = (path("burned.jsonl"), path("fine.jsonl"));
    for (records, comfort) in [(&burned, "burning"), (&fine, "fine")] {
        let log = path(&format!("log-{comfort}.jsonl"));
        run(&["note", &log, "--at", "0", "--section", "nape", "--begun"]);
        run(&["note", &log, "--at", "20", "--comfort", comfort]);
        let strand = if comfort == "burning" { "reduced" } else { "good" };
        run(&["note", &log, "--at", "21", "--section", "nape", "--elasticity", strand]);
        run(&["record", "examples/soft-gradient.toml", &log, "--keep", records]);
    }
    for order in [[&burned, &fine], [&fine, &burned]] {
        let (_, said) = run(&["history", order[0], order[1]]);
        assert!(said.starts_with("HISTORY  1 service") && said.contains("burning or pain at minute 20"), "{said}");
        assert!(said.contains("WEAK HAIR"), "{said}");
    }
}

/// A result with a slipped minute is told when it is noted anew with an earlier one.
#[test]
fn a_later_note_that_counts_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let log = folder.path().join("today.jsonl");
    let log = log.to_str().unwrap();
    run(&["note", log, "--at", "500", "--section", "nape", "--result", "8"]);
    let (_, said) = run(&["note", log, "--at", "50", "--section", "nape", "--result", "9"]);
    assert!(
        said.contains("(late: minute 500 is noted and taken as now; take its line out of the log where it is wrong)"),
        "{said}"
    );
}

/// A pipe has no end to write at: it is refused, and not waited for.
#[cfg(unix)]
#[test]
fn a_pipe_is_refused_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe");
    assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let (status, said) = run(&["note", pipe.to_str().unwrap(), "--at", "5", "--incident", "dizzy"]);
    assert!(status == 2 && said.contains("cannot write"), "{said}");
}

/// No heading stands over an empty table: a log that says nothing of a section has nothing to hold against the plan, or to repeat.
#[test]
fn a_record_with_nothing_to_compare_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let log = folder.path().join("today.jsonl");
    let log = log.to_str().unwrap();
    run(&["note", log, "--at", "3", "--comfort", "fine"]);
    let (status, said) = run(&["record", "examples/soft-gradient.toml", log]);
    assert_eq!(status, 0, "{said}");
    assert!(said.contains("Nothing is noted that can be held against the plan.\n"), "{said}");
    assert!(said.contains("Nothing is noted of a section of the plan.\n") && !said.contains("actual  "), "{said}");
    run(&["note", log, "--at", "4", "--section", "nape", "--weighed", "52"]);
    let (_, said) = run(&["record", "examples/soft-gradient.toml", log]);
    assert!(said.contains("mix, g") && !said.contains("Nothing is noted"), "{said}");
}
