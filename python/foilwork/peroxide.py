"""Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing."""

from foilwork._native.peroxide import *
from foilwork._native.peroxide import __all__ as __all__
