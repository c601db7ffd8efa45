use super::{ServiceLine, Taken};
use crate::quantity::{InvalidQuantity, Mass};

/// What a list takes of each product that it names, as often as its services were sold; in the order of first mention.
///
/// A pack that is given by its price and mass has no name, and is not in it.
///
/// # Units
///
/// Masses in g.
///
/// # Errors
///
/// [`InvalidQuantity`] when it all is more than a mass can be.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::{Packs, parse_csv, taken}, money::{Currency, Money, PackPrice}, quantity::Mass};
///
/// let eur = Currency::from_code("EUR")?;
/// let powder = PackPrice::new(Money::parse("31.50", eur)?, Mass::from_g(500.0)?)?;
/// let text = "service,product,product_g,product_waste_g,hands_on_min,chair_min,sold\n\
///             half head,powder,32,4,65,120,30\nfull head,powder,55,5,105,170,10\n";
/// let list = parse_csv(text, Packs::new(eur, [("powder".to_owned(), powder)]))?;
/// assert_eq!(taken(&list)?[0].mass.g(), 1680.0); // 36 x 30 + 60 x 10
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Arithmetic.
pub fn taken(list: &[ServiceLine]) -> Result<Vec<Taken>, InvalidQuantity> {
    let mut sums: Vec<Taken> = Vec::new();
    for (line, one) in list.iter().flat_map(|line| line.takes.iter().map(move |one| (line, one))) {
        let all = one.mass.times(f64::from(line.sold))?;
        match sums.iter_mut().find(|sum| sum.product == one.product) {
            Some(sum) => sum.mass = Mass::from_g(sum.mass.g() + all.g())?,
            None => sums.push(Taken { product: one.product.clone(), mass: all }),
        }
    }
    Ok(sums)
}
