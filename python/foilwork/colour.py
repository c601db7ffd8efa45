"""Colour: levels, tones, shades, CIELAB and its differences, modelled swatches."""

from foilwork._native.colour import *
from foilwork._native.colour import __all__ as __all__
