//! The head of a service by the command line.

use super::{data, fine, foilwork, near, number};

/// By hand: the foils of the example are 12, 14 and 8, counted through in the order of the work.
#[test]
fn foils_are_numbered_through() {
    let found = data(&["head", "soft-gradient.toml"]);
    let ends: Vec<[f64; 2]> = found["sections"]
        .as_array()
        .unwrap()
        .iter()
        .map(|section| [number(&section["first_foil"]), number(&section["last_foil"])])
        .collect();
    assert_eq!(ends, [[1.0, 12.0], [13.0, 26.0], [27.0, 34.0]]);
}

#[test]
fn the_map_says_in_words_what_it_shows() {
    let svg = fine(&["head", "soft-gradient.toml", "--svg"]);
    assert!(svg.starts_with("<svg ") && svg.trim_end().ends_with("</svg>"), "{svg}");
    for words in ["foils 27-30", "not a photograph", "left side", "L* "] {
        assert!(svg.contains(words), "{words}");
    }
    assert!(fine(&["head", "soft-gradient.toml"]).contains("HEAD AND FOILS"));
}

#[test]
fn a_head_without_regions_has_no_map() {
    let output = foilwork(&["head", "grey-blend.toml", "--svg"]);
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(text.contains("--svg: no section says where it lies: name its `regions`"), "{text}");
}

/// By hand: the nape's 12 foils go over nape line, nape and back, which bear 2.1, 4.25 and 20.4 parts of the hair: 0.9, 1.9
/// and 9.2 of them, so 1, 2 and 9, numbered through in the order of the file.
#[test]
fn the_map_for_the_terminal_numbers_the_foils_of_each_region() {
    let text = fine(&["head", "soft-gradient.toml"]);
    for words in
        ["K nape line: L* ", "nape, foil 1", "J nape: L* ", "nape, foils 2-3", "I back: L* ", "nape, foils 4-12"]
    {
        assert!(text.contains(words), "{words}: {text}");
    }
    assert!(text.contains("+-----") && text.lines().all(|line| line.chars().count() <= 80));
}

/// Minutes are stated where the salon states all of its small work and the sections theirs, and assumed where one does not.
#[test]
fn times_of_a_day_rest_on_the_minutes_of_the_salon() {
    let text = include_str!("../../../examples/soft-gradient.toml");
    let small = "[salon]\nmix_bowl_min = 3\nlook_min = 1\nrinse_section_min = 3\nbasin_walk_min = 2\n";
    let folder = tempfile::tempdir().unwrap();
    let all = text.replace("[salon]\n", small);
    // The nape by its foils, at what is assumed for one.
    let by_foils = all.replace("apply_min = 18\n", "");
    assert!(all != text && by_foils != all);
    for (i, (text, basis)) in
        [(text.to_owned(), "assumed"), (all, "stated"), (by_foils, "assumed")].into_iter().enumerate()
    {
        let path = folder.path().join(format!("{i}.toml"));
        std::fs::write(&path, text).unwrap();
        let trail = data(&["day", path.to_str().unwrap(), "--trail"]);
        assert!(trail.as_array().unwrap().iter().all(|result| result["basis"] == basis), "{trail}");
    }
}

/// One pair of hands is through after 111 min, which is proven; with two, the first can still do it alone. Two guests by one pair of
/// hands each would be at the one basin at the same times: begun 3 min apart, for so long a rinse takes, they are not, and the
/// second is through at 114.
#[test]
fn further_hands_cost_no_minute() {
    for people in ["1", "2", "3"] {
        let day = data(&["day", "soft-gradient.toml", "--people", people]);
        assert_eq!(day["proposed"]["finish_min"], 111.0, "{people}");
    }
    let two = ["day", "soft-gradient.toml", "soft-gradient.toml", "--people", "2"];
    let floor = data(&two);
    // The standard input is there once.
    let piped = std::process::Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples"))
        .args(["day", "-", "soft-gradient.toml", "--people", "2", "--json"])
        .stdin(std::fs::File::open(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/soft-gradient.toml")).unwrap())
        .output()
        .unwrap();
    assert_eq!(serde_json::from_slice::<serde_json::Value>(&piped.stdout).unwrap(), floor);
    assert_eq!((floor["finish_min"].as_f64(), floor["bound_min"].as_f64()), (Some(114.0), Some(111.0)));
    let text = fine(&two);
    assert!(text.starts_with("THE FLOOR  2 pairs of hands, 1 basin\n"), "{text}");
    assert!(text.contains("of their days by all the hands or by one pair, nothing beats 111 min"), "{text}");
    let one = fine(&["day", "soft-gradient.toml", "soft-gradient.toml"]);
    assert!(one.starts_with("THE FLOOR  1 pair of hands, 1 basin\n"), "{one}");
}

/// What nothing beats: the longest of the shorter days, or the lesser work of each, shared evenly.
#[test]
fn what_nothing_beats_holds_for_every_choice_of_days() {
    let file = "soft-gradient.toml";
    let day = |people: &str| {
        let day = data(&["day", file, "--people", people]);
        let hands = day["proposed"]["hands_min"].as_array().unwrap().iter().map(|one| one.as_f64().unwrap());
        (day["proposed"]["finish_min"].as_f64().unwrap(), hands.sum::<f64>())
    };
    for (guests, people) in [(2.0, "2"), (5.0, "2"), (3.0, "3")] {
        let (all, one) = (day(people), day("1"));
        let want = all.0.min(one.0).max(guests * all.1.min(one.1) / people.parse::<f64>().unwrap());
        let files = vec![file; guests as usize];
        let floor = data(&[&["day"][..], &files, &["--people", people]].concat());
        near(floor["bound_min"].as_f64().unwrap(), want, 1e-9);
        assert!(floor["finish_min"].as_f64() >= floor["bound_min"].as_f64());
    }
}
