//! The plan as text for the bench.
