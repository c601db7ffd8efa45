use super::newtype::quantity;

quantity! {
    /// The volume number printed on a developer bottle.
    ///
    /// By trade convention N vol stands for 0.3 N percent: 10, 20, 30 and 40 vol for 3, 6, 9 and 12. The label states neither
    /// whether the percent is by weight or by volume nor a measured oxygen yield, so it is a type of its own: it has to be
    /// read before it is a strength ([`read_label`](crate::peroxide::read_label)). Stronger solutions are no developers;
    /// they are stated in percent or in oxygen volumes.
    TradeLabel: "trade label" in "vol label", key "vol", from_vol / vol,
    1.0..=60.0, "from 1 to 60 vol (state a stronger solution in % w/w, % w/v or volumes)"
}

impl TradeLabel {
    /// 10 vol, 3 percent.
    pub const VOL_10: Self = Self(10.0);
    /// 20 vol, 6 percent.
    pub const VOL_20: Self = Self(20.0);
    /// 30 vol, 9 percent.
    pub const VOL_30: Self = Self(30.0);
    /// 40 vol, 12 percent.
    pub const VOL_40: Self = Self(40.0);

    /// The percent that the trade pairs with the number, read neither as w/w nor as w/v.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::quantity::TradeLabel;
    ///
    /// assert_eq!(TradeLabel::from_vol(6.5)?.percent(), 1.95);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub const fn percent(self) -> f64 {
        self.0 * 3.0 / 10.0
    }
}
