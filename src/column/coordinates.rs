use super::{
    ColumnError, ColumnOutcome,
    split::in_parts,
    triples::{FOUR_ROWS, columns},
};
use crate::{
    choice::choice,
    colour::{
        Lanes, Ranges, White, lab_to_lch_lanes, lab_to_xyz_lanes, lch_to_lab_lanes, white_point, xyz_to_lab_lanes,
    },
};

choice! {
    /// From which colour coordinates to which.
    Coordinates: "coordinates" {
        /// CIELAB to X, Y, Z.
        LabToXyz = "lab-to-xyz" => "L*, a*, b* to X, Y, Z",
        /// X, Y, Z to CIELAB.
        XyzToLab = "xyz-to-lab" => "X, Y, Z to L*, a*, b*",
        /// CIELAB to lightness, chroma and hue angle.
        LabToLch = "lab-to-lch" => "L*, a*, b* to L*, C*, h",
        /// Lightness, chroma and hue angle to CIELAB.
        LchToLab = "lch-to-lab" => "L*, C*, h to L*, a*, b*",
    }
}

/// Colour coordinates of rows of three numbers that lie one after the other, turned into others, four rows at a time.
///
/// A row with a missing (not-a-number) value gives missing values. A row that the types of the coordinates refuse does too,
/// and is counted. Long columns are worked off by all processors.
///
/// # Errors
///
/// [`ColumnError::Length`] unless both have the same length.
///
/// # Example
///
/// ```
/// use foilwork::{colour::White, column::{Coordinates, coordinates}};
///
/// let (labs, mut lchs) = ([50.0, 3.0, 4.0, 120.0, 0.0, 0.0], [0.0; 6]);
/// let outcome = coordinates(Coordinates::LabToLch, White::D65TenDegree, &labs, &mut lchs)?;
/// assert_eq!((lchs[1], lchs[4].is_nan(), outcome.first), (5.0, true, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
///
/// # Source
///
/// CIE 1976, as the types [`Lab`](crate::colour::Lab), [`Lch`](crate::colour::Lch), [`Xyz`](crate::colour::Xyz); within 1e-12
/// of them.
pub fn coordinates(
    turn: Coordinates,
    white: White,
    input: &[f64],
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let white = white_point(white);
    match turn {
        Coordinates::LabToXyz => fours(input, out, Ranges::LAB, |lab| lab_to_xyz_lanes(lab, white)),
        Coordinates::XyzToLab => fours(input, out, Ranges::XYZ, |xyz| xyz_to_lab_lanes(xyz, white)),
        Coordinates::LabToLch => fours(input, out, Ranges::LAB, lab_to_lch_lanes),
        Coordinates::LchToLab => fours(input, out, Ranges::LCH, lch_to_lab_lanes),
    }
}

#[inline]
fn fours(
    input: &[f64],
    out: &mut [f64],
    ranges: Ranges,
    rule: impl Fn([Lanes; 3]) -> [Lanes; 3] + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    if input.len() != out.len() {
        return Err(ColumnError::Length { got: input.len(), want: out.len() });
    }
    Ok(in_parts(out, 3, |start, slots| {
        let mut outcome = ColumnOutcome::default();
        let given = input.get(3 * start..).unwrap_or_default().chunks(FOUR_ROWS);
        for ((chunk, slots), given) in slots.chunks_mut(FOUR_ROWS).enumerate().zip(given) {
            let input = columns(given).map(Lanes::from);
            let found = rule(input).map(Lanes::to_array);
            if let Some(slots) = slots.first_chunk_mut().filter(|_| ranges.hold_all(input)) {
                *slots = rows(found);
                continue;
            }
            let first_row = start + chunk * Lanes::WIDTH;
            let given = given.as_chunks::<3>().0;
            for ((row, slot), (given, value)) in
                (first_row..).zip(slots.as_chunks_mut::<3>().0).zip(given.iter().zip(rows(found).as_chunks::<3>().0))
            {
                *slot = if ranges.hold(*given) {
                    *value
                } else {
                    outcome.refuse_unless_missing(row, given);
                    [f64::NAN; 3]
                };
            }
        }
        outcome
    }))
}

/// Three columns as four rows.
#[inline]
const fn rows([a, b, c]: [[f64; Lanes::WIDTH]; 3]) -> [f64; FOUR_ROWS] {
    let ([a0, a1, a2, a3], [b0, b1, b2, b3], [c0, c1, c2, c3]) = (a, b, c);
    [a0, b0, c0, a1, b1, c1, a2, b2, c2, a3, b3, c3]
}
