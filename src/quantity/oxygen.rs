use super::newtype::quantity;

quantity! {
    /// Volume of oxygen gas set free by one volume of solution, the "volume strength" of peroxide.
    ///
    /// A measured figure, not the trade label that borrows its name ([`TradeLabel`](super::TradeLabel)). The gas has
    /// to be counted at a stated temperature and pressure, which the caller names when converting.
    OxygenVolumes: "volume strength" in "volumes", key "volumes", from_volumes / volumes,
    0.0..=500.0, "from 0 to 500 volumes"
}

quantity! {
    /// Mass of releasable (active) oxygen over mass of solution, stored in percent w/w.
    ///
    /// One mole of peroxide holds one mole of active oxygen atoms; the pure substance is at 47 %.
    ActiveOxygen: "active oxygen" in "% active oxygen", key "active_oxygen_percent", from_ww_percent / ww_percent,
    0.0..=47.1, "from 0 to 47.1 % active oxygen (pure hydrogen peroxide holds 47.04 %)"
}
