//! Ratios, weighing and mixing against printed answers.

use foilwork::mix::Ratio;
use foilwork::quantity::Mass;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

// Source: practice items on colour and developer ratios; the arithmetic is re-checked in the notes of the table
// (weak sources: a question page for 1:1, an examination preparation page for 3:1, both consulted).
#[rstest]
#[case::one_to_one("1:1", 0, 2.0, &[2.0, 2.0])]
#[case::three_to_one("3:1", 0, 1.5, &[1.5, 0.5])]
fn a_known_part_gives_the_others(
    #[case] ratio: &str,
    #[case] known: usize,
    #[case] grams: f64,
    #[case] want: &[f64],
) -> Outcome {
    let parts = ratio.parse::<Ratio>()?.from_part(known, Mass::from_g(grams)?)?;
    let got: Vec<f64> = parts.iter().map(|p| p.g()).collect();
    assert_eq!(got, want);
    Ok(())
}
