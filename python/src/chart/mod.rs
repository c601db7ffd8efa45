//! Wrappers of `foilwork::chart`.

mod drawn;
mod picture;

pub use picture::Picture;

crate::room::room! {
    /// Pictures: dilution grid, levels and pigment, colour wheel, costs, price against margin.
    chart {
        drawn { cost_chart, dilution_chart, hue_wheel, margin_chart, pigment_chart }
        picture { Picture }
    }
}
