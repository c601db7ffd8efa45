//! Where a command writes and what it reads: devices, pipes, links, permissions, and texts that would act.

use super::foilwork;
use rstest::rstest;
use std::{
    fs,
    io::Write,
    path::Path,
    process::{Command, Output, Stdio},
};

const PLAN: [&str; 3] = ["plan", "soft-gradient.toml", "--output"];

fn plan_into(path: &Path) -> Output {
    foilwork(&[&PLAN[..], &[path.to_str().unwrap()]].concat())
}

fn refused(output: &Output) -> String {
    assert_eq!((output.status.code(), String::from_utf8_lossy(&output.stdout).as_ref()), (Some(2), ""));
    String::from_utf8(output.stderr.clone()).unwrap()
}

/// The sheet of the example, as the terminal gets it.
fn sheet() -> String {
    let output = foilwork(&PLAN[..2]);
    String::from_utf8(output.stdout).unwrap()
}

#[cfg(target_os = "linux")]
mod on_linux {
    use super::*;
    use std::os::unix::fs::{FileTypeExt, MetadataExt, PermissionsExt, symlink};

    /// A device stays the device it is: the full one says that it is full.
    #[test]
    fn a_device_is_written_into_and_stays_a_device() {
        let complaint = refused(&plan_into(Path::new("/dev/full")));
        assert!(complaint.starts_with("error: cannot write /dev/full: "), "{complaint}");
        assert_eq!(plan_into(Path::new("/dev/null")).status.code(), Some(0));
        for device in ["/dev/full", "/dev/null"] {
            assert!(fs::metadata(device).unwrap().file_type().is_char_device(), "{device}");
        }
    }

    #[test]
    fn the_device_of_the_standard_output_gets_the_sheet() {
        assert_eq!(String::from_utf8(plan_into(Path::new("/dev/stdout")).stdout).unwrap(), sheet());
    }

    #[test]
    fn a_full_standard_output_is_an_error() {
        let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
        let mut command = Command::new(env!("CARGO_BIN_EXE_foilwork"));
        let output = command.args(["schema"]).stdout(Stdio::from(full)).output().unwrap();
        assert_eq!(output.status.code(), Some(2));
        let complaint = String::from_utf8(output.stderr).unwrap();
        assert!(complaint.starts_with("error: cannot write to the standard output: "), "{complaint}");
    }

    #[test]
    fn a_pipe_gets_the_text_and_stays_a_pipe() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe");
        assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
        let reader = Command::new("cat").arg(&pipe).stdout(Stdio::piped()).spawn().unwrap();
        assert_eq!(plan_into(&pipe).status.code(), Some(0));
        let got = reader.wait_with_output().unwrap().stdout;
        assert_eq!(String::from_utf8(got).unwrap(), sheet());
        assert!(fs::metadata(&pipe).unwrap().file_type().is_fifo());
    }

    #[rstest]
    #[case::to_a_file(true)]
    #[case::to_a_file_that_is_not_there_yet(false)]
    fn a_link_is_followed(#[case] there: bool) {
        let folder = tempfile::tempdir().unwrap();
        let (target, link) = (folder.path().join("target.txt"), folder.path().join("link.txt"));
        if there {
            fs::write(&target, "old").unwrap();
        }
        symlink("target.txt", &link).unwrap();
        assert_eq!(plan_into(&link).status.code(), Some(0));
        assert!(fs::symlink_metadata(&link).unwrap().file_type().is_symlink());
        assert_eq!(fs::read_to_string(&target).unwrap(), sheet());
    }

    #[test]
    fn the_permissions_of_what_is_replaced_stay() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("sheet.txt");
        fs::write(&path, "old").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
        assert_eq!(plan_into(&path).status.code(), Some(0));
        assert_eq!(fs::metadata(&path).unwrap().mode() & 0o777, 0o640);
    }

    #[test]
    fn a_read_only_file_is_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("sheet.txt");
        fs::write(&path, "old").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
        assert!(refused(&plan_into(&path)).contains("it is read-only: name another file"));
        assert_eq!(fs::read_to_string(&path).unwrap(), "old");
    }

    /// What a killed command has left is cleared by the next one; what is being written now is not.
    #[test]
    fn old_parts_are_cleared_away() {
        let folder = tempfile::tempdir().unwrap();
        let (old, new) = (folder.path().join(".foilwork-aaaaaa.part"), folder.path().join(".foilwork-bbbbbb.part"));
        fs::write(&new, "").unwrap();
        let file = fs::File::create(&old).unwrap();
        file.set_modified(std::time::SystemTime::now() - std::time::Duration::from_secs(7_200)).unwrap();
        assert_eq!(plan_into(&folder.path().join("sheet.txt")).status.code(), Some(0));
        assert_eq!((old.exists(), new.exists()), (false, true));
    }

    #[test]
    fn an_endless_file_is_refused() {
        let complaint = refused(&foilwork(&["plan", "/dev/zero"]));
        assert_eq!(complaint, "error: cannot read /dev/zero: it is longer than 64 MiB: split it\n");
    }
}

#[test]
fn a_file_that_is_read_is_not_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let (plan, shop) = (folder.path().join("plan.toml"), folder.path().join("juniper_and_tide.toml"));
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    fs::copy(examples.join("gloss-refresh.toml"), &plan).unwrap();
    fs::copy(examples.join("juniper_and_tide.toml"), &shop).unwrap();
    for target in [&plan, &shop] {
        let before = fs::read_to_string(target).unwrap();
        let output = foilwork(&["plan", plan.to_str().unwrap(), "--output", target.to_str().unwrap()]);
        assert!(refused(&output).contains("this command reads it: name another file"));
        assert_eq!(fs::read_to_string(target).unwrap(), before);
    }
}

#[test]
fn what_cannot_be_read_says_why_and_what_to_do() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("latin.toml");
    fs::write(&path, b"format = 1\nshop_file = \"caf\xe9.toml\"\n").unwrap();
    let complaint = refused(&foilwork(&["plan", path.to_str().unwrap()]));
    assert!(complaint.ends_with("line 2 is not UTF-8 text: save the file as plain text in UTF-8\n"), "{complaint}");
    let complaint = refused(&foilwork(&["plan", "no-such-file.toml"]));
    assert!(complaint.ends_with("there is no such file: check the name and the folder\n"), "{complaint}");
}

/// A name from a file may not clear the screen, set the window's title, turn the direction, or forge a line.
#[rstest]
#[case::escape("A\\u001b[2J", "character 2 is U+001B")]
#[case::second_set("A\\u009b2J", "character 2 is U+009B")]
#[case::direction("A\\u202eB", "character 2 is U+202E")]
#[case::nul("A\\u0000", "character 2 is U+0000")]
#[case::separator("A\\u2028B", "character 2 is U+2028")]
#[case::forged_line("A\\n[ok]   law: all is well", "character 2 is a line break")]
fn a_text_that_acts_is_refused(#[case] title: &str, #[case] said: &str) {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    let text = fs::read_to_string(examples.join("gloss-refresh.toml")).unwrap();
    let begin = text.find("title = ").unwrap();
    let end = begin + text[begin..].find('\n').unwrap();
    let text = format!("{}title = \"{title}\"{}", &text[..begin], &text[end..]);
    let mut child = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .current_dir(examples)
        .args(["plan", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(text.as_bytes()).unwrap();
    let complaint = refused(&child.wait_with_output().unwrap());
    assert!(complaint.contains(said) && complaint.lines().count() == 1, "{complaint}");
}

/// What is echoed in a refusal is shown, not obeyed, and a long one is cut in its middle.
#[test]
fn what_is_echoed_is_inert_and_short() {
    let complaint = refused(&foilwork(&["scale", "\u{1b}]0;owned\u{7}", "--total", "60"]));
    assert!(complaint.contains("␛]0;owned␇") && !complaint.contains('\u{1b}'), "{complaint}");
    let long = "x".repeat(20_000);
    let complaint = refused(&foilwork(&["scale", &long, "--total", "60"]));
    assert!(complaint.chars().count() < 2_500, "{}", complaint.chars().count());
    // Rust refuses a width above 65 535 at run time.
    let blank = " ".repeat(70_000);
    let complaint = refused(&foilwork(&["scale", &blank, "--total", "60"]));
    assert!(complaint.contains("ends at character"), "{complaint}");
}

#[test]
fn a_hundred_problems_are_enough() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("list.csv");
    let rows = "cut,x,45\n".repeat(5_000);
    fs::write(&path, format!("service,hands_on_min,chair_min\n{rows}")).unwrap();
    let complaint = refused(&foilwork(&["cost", path.to_str().unwrap(), "--shop", "juniper_and_tide.toml"]));
    assert_eq!(complaint.lines().count(), 101);
    assert!(complaint.ends_with("and 4900 more problems: mend these first\n"), "{complaint}");
}

#[test]
fn a_key_given_twice_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("list.json");
    let item = r#"{"service": "a", "hands_on_min": 15, "chair_min": 40, "price": "35.00", "price": "3.50"}"#;
    fs::write(&path, format!("[{item}]")).unwrap();
    let complaint = refused(&foilwork(&["cost", path.to_str().unwrap(), "--shop", "juniper_and_tide.toml"]));
    assert!(complaint.contains("price: given twice in one table: keep one"), "{complaint}");
}

#[test]
fn a_table_for_the_wall_has_a_limit() {
    let many = (1..=40).map(|n| n.to_string()).collect::<Vec<_>>().join(",") + " % w/w";
    let complaint = refused(&foilwork(&["table", "--stocks", &many, "--targets", &many, "--total", "60"]));
    assert!(complaint.contains("1600 cells: ask for at most 1000"), "{complaint}");
}

/// A number below zero is a value, refused for what it is.
#[rstest]
#[case::total(&["scale", "30 g a + 15 g b", "--total", "-5"], "error: cannot scale by or to -5: must be above 0")]
#[case::not_a_number(
    &["dilute", "--stock", "9 % w/w", "--target", "3 % w/w", "--total", "nan"],
    "error: --total: invalid mass (got NaN g)"
)]
#[case::division(
    &["blend", "--stock", "12 % w/w", "--stock", "3 % w/w", "--target", "6 % w/w", "--total", "60", "--division", "1e-300"],
    "no balance shows less than 0.0000001 g"
)]
fn a_number_out_of_range_is_named(#[case] args: &[&str], #[case] said: &str) {
    let complaint = refused(&foilwork(args));
    assert!(complaint.contains(said) && complaint.len() < 300, "{complaint}");
}
