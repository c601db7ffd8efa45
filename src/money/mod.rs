//! Whole minor units: costs, prices, tax, margin and mark-up, break-even.
