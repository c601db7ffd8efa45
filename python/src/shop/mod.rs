//! Wrappers of `foilwork::shop`.

mod file;

pub use file::Shop as PyShop;

crate::room::room! {
    /// The shop: what the salon has and what it charges.
    shop {
        file { Shop, read, read_file, shop_schema }
    }
}
