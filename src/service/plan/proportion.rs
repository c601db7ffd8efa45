use crate::{mix::Ratio, quantity::Mass};

/// Product and developer of a bowl. Without a ratio there is no developer.
pub(super) fn split(ratio: Option<&Ratio>, bowl: Mass) -> Result<(Mass, Mass), Box<dyn std::error::Error>> {
    let Some(ratio) = ratio else { return Ok((bowl, Mass::ZERO)) };
    match ratio.split_total(bowl)?.as_slice() {
        [product, developer] => Ok((*product, *developer)),
        _ => Err("the ratio must have two parts, product to developer".into()),
    }
}
