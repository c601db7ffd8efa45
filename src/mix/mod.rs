//! The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair.
