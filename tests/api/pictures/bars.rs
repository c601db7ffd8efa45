//! The day: rows, ticks, bars with their words, bowls and names.

use super::{elements, line, minutes, outlined, rect, said, same, stroke, text};
use foilwork::{
    chart::{DayChart, day_chart},
    day::{Piece, PieceKind, SectionTimes, Timeline},
};
use rstest::rstest;

fn section(name: &str, [mix, start, applied, rinse, rinsed]: [f64; 5]) -> SectionTimes {
    SectionTimes {
        section: 0,
        name: name.to_owned(),
        visit: 0,
        person: 0,
        mix_at: vec![minutes(mix)],
        start: minutes(start),
        applied: minutes(applied),
        looks: Vec::new(),
        rinse: minutes(rinse),
        rinsed: minutes(rinsed),
        on_hair: minutes(rinse - start),
        spare: minutes(0.0),
    }
}

fn piece(kind: PieceKind, person: usize, from: f64, to: f64) -> Piece {
    Piece { kind, section: Some(0), person, from: minutes(from), to: minutes(to), foils: None }
}

fn day(sections: Vec<SectionTimes>, pieces: Vec<Piece>, hands: usize, finish: f64) -> Timeline {
    Timeline {
        sections,
        pieces,
        visits: 1,
        finish: minutes(finish),
        idle: minutes(0.0),
        hands: vec![minutes(1.0); hands],
        bound: minutes(finish),
        proven: true,
    }
}

/// 70 minutes on 700 pixels from 150 on. The row of the section begins at 56, those of the hands at 82 and 108; the ticks end at 138. A
/// sliver is narrower than 7 and has its letter above; 2 minutes are too narrow for a word.
#[test]
fn a_day_in_full() {
    let sections = vec![section("top", [0.0, 5.0, 25.0, 55.0, 60.0])];
    let pieces = vec![
        piece(PieceKind::Mix, 0, 0.0, 0.5),
        piece(PieceKind::Apply, 0, 5.0, 25.0),
        piece(PieceKind::Look, 1, 30.0, 31.0),
        piece(PieceKind::Walk, 0, 53.0, 55.0),
        piece(PieceKind::Rinse, 1, 55.0, 60.0),
        // What takes no time is not drawn.
        piece(PieceKind::Look, 1, 65.0, 65.0),
    ];
    let day = day(sections, pieces, 2, 70.0);
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    let mut want = vec![
        rect([0.0, 0.0, 870.0, 178.0], "fill=\"#fff\""),
        text((12.0, 24.0), "start", 15.0, "day"),
        text((12.0, 42.0), "start", 11.0, "m mix, a apply, d develop, l look, w walk, r rinse"),
    ];
    for tick in 0..=14 {
        let (x, minute) = (150.0 + 50.0 * f64::from(tick), 5 * tick);
        want.push(line(&[(x, 56.0), (x, 138.0)], &stroke("#ddd", 1.0)));
        want.push(text((x, 152.0), "middle", 11.0, &minute.to_string()));
    }
    want.push(text((500.0, 170.0), "middle", 12.0, "minutes"));
    let bar = |[left, y, width]: [f64; 3], colour: &str, words: &str| {
        let shape = rect([left, y + 2.0, width, 18.0], &outlined(colour, "#222", 0.5));
        let middle = left + width / 2.0;
        let word = if width >= 7.0 {
            text((middle, y + 15.0), "middle", 10.5, words)
        } else {
            text((middle, y + 1.0), "middle", 7.0, words)
        };
        [shape, word]
    };
    want.push(text((142.0, 71.0), "end", 12.0, "top"));
    want.push(line(&[(150.0, 58.0), (150.0, 76.0)], &stroke("#cc79a7", 2.5)));
    want.push(text((150.0, 57.0), "middle", 7.0, "m"));
    want.extend(bar([200.0, 56.0, 200.0], "#e69f00", "apply"));
    want.extend(bar([400.0, 56.0, 300.0], "#f6deb0", "develop"));
    want.extend(bar([700.0, 56.0, 50.0], "#56b4e9", "r"));
    want.push(text((142.0, 97.0), "end", 12.0, "hands 1"));
    want.extend(bar([150.0, 82.0, 5.0], "#cc79a7", "m"));
    want.extend(bar([200.0, 82.0, 200.0], "#e69f00", "a"));
    want.extend(bar([680.0, 82.0, 20.0], "#fff", "w"));
    want.push(text((142.0, 123.0), "end", 12.0, "hands 2"));
    want.extend(bar([450.0, 108.0, 10.0], "#bbb", "l"));
    want.extend(bar([700.0, 108.0, 50.0], "#56b4e9", "r"));
    same(&svg, &want);
    assert_eq!(said(&svg), ["day", "In minutes. top: first strand 5, all on 25, rinse 55. Finished 70."]);
}

/// The second section has the second row, and then come the hands; a bar of 3 min is 30 wide, too narrow for `apply` with its 32.5.
#[test]
fn rows_follow_each_other() {
    let sections = vec![section("top", [0.0, 5.0, 25.0, 55.0, 60.0]), section("nape", [2.0, 40.0, 43.0, 47.0, 70.0])];
    let day = day(sections, vec![piece(PieceKind::Look, 0, 0.0, 1.0)], 1, 70.0);
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    let all = elements(&svg);
    let row = all.iter().position(|one| one.ends_with(">nape</text>")).unwrap();
    let want = [
        text((142.0, 97.0), "end", 12.0, "nape"),
        line(&[(170.0, 84.0), (170.0, 102.0)], &stroke("#cc79a7", 2.5)),
        text((170.0, 83.0), "middle", 7.0, "m"),
        rect([550.0, 84.0, 30.0, 18.0], &outlined("#e69f00", "#222", 0.5)),
        text((565.0, 97.0), "middle", 10.5, "a"),
        rect([580.0, 84.0, 40.0, 18.0], &outlined("#f6deb0", "#222", 0.5)),
        text((600.0, 97.0), "middle", 10.5, "d"),
        rect([620.0, 84.0, 230.0, 18.0], &outlined("#56b4e9", "#222", 0.5)),
        text((735.0, 97.0), "middle", 10.5, "r"),
        text((142.0, 123.0), "end", 12.0, "hands 1"),
    ];
    assert_eq!(all[row..row + want.len()], want);
    let told = "In minutes. top: first strand 5, all on 25, rinse 55; nape: first strand 40, all on 43, rinse 47. Finished 70.";
    assert_eq!(said(&svg)[1], told);
}

/// Ticks in steps of which there are at most sixteen, from the first multiple on: the picture begins with the first work, or with the first
/// strand where that is on already.
#[rstest]
#[case(0.0, 0.0, 80.0, &[0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80])]
#[case(0.0, 0.0, 81.0, &[0, 10, 20, 30, 40, 50, 60, 70, 80])]
#[case(0.0, 12.0, 161.0, &[0, 15, 30, 45, 60, 75, 90, 105, 120, 135, 150])]
#[case(0.0, 12.0, 241.0, &[0, 30, 60, 90, 120, 150, 180, 210, 240])]
#[case(0.0, 12.0, 481.0, &[0, 60, 120, 180, 240, 300, 360, 420, 480])]
#[case(0.0, 12.0, 961.0, &[0, 120, 240, 360, 480, 600, 720, 840, 960])]
#[case(12.0, 31.0, 43.0, &[15, 20, 25, 30, 35, 40])]
#[case(31.0, 12.0, 43.0, &[15, 20, 25, 30, 35, 40])]
fn ticks_of_a_day(#[case] work: f64, #[case] strand: f64, #[case] finish: f64, #[case] want: &[u32]) {
    let sections = vec![section("top", [0.0, strand, finish, finish, finish])];
    let day = day(sections, vec![piece(PieceKind::Look, 0, work, finish)], 1, finish);
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    let from = work.min(strand);
    let ticks: Vec<String> =
        elements(&svg).into_iter().filter(|one| one.contains("font-size=\"11\"")).skip(1).map(str::to_owned).collect();
    let x = |minute: u32| 150.0 + (f64::from(minute) - from) / (finish - from) * 700.0;
    // Two rows: the last ends at 108, and numbers stand 18 below it.
    let want: Vec<String> =
        want.iter().map(|minute| text((x(*minute), 126.0), "middle", 11.0, &minute.to_string())).collect();
    assert_eq!(ticks, want);
}

/// A day that is over in no time has a scale of a minute.
#[test]
fn a_day_of_no_length_is_drawn() {
    let day = day(vec![section("top", [30.0; 5])], Vec::new(), 0, 30.0);
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    let all = elements(&svg);
    assert!(all.contains(&text((150.0, 100.0), "middle", 11.0, "30").as_str()), "{svg}");
    assert!(!svg.contains("apply</text>") && !svg.contains("NaN"), "{svg}");
}

/// There is room for 11.5 heights of letters: what is exactly as wide stands in full, and what is cut has 10.5 and the sign of the cut.
#[rstest]
#[case("wwwwwwwwwwAA", "wwwwwwwwwwAA")]
#[case("wwwwwwwwwwAAi", "wwwwwwwwww\u{2026}")]
#[case("AAAAAAAAAAAAAAAA", "AAAAAAAAAAAAAA\u{2026}")]
#[case("iiiiiiiiiiiiiiiiiiiiiiiiiiii", "iiiiiiiiiiiiiiiiiiiiiiiiiiii")]
#[case(
    "\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}",
    "\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{e9}\u{2026}"
)]
#[case("aaaaaaaaaaaaaaaaaaa", "aaaaaaaaaaaaaaaa\u{2026}")]
fn names_fit_beside_the_bars(#[case] name: &str, #[case] want: &str) {
    let day = day(vec![section(name, [0.0, 5.0, 25.0, 55.0, 60.0])], Vec::new(), 0, 70.0);
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    assert!(elements(&svg).contains(&text((142.0, 71.0), "end", 12.0, want).as_str()), "{svg}");
    assert!(said(&svg)[1].contains(name), "the words have the name in full");
}
