"""Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing."""

__all__: list[str] = []
