//! Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing.
