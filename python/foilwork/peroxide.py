"""Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing."""

from foilwork._native import convert, dilute

__all__ = ["convert", "dilute"]
