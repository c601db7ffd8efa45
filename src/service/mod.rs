//! The service: what the user states, and the plan foilwork makes of it.
