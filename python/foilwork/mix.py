"""The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair."""

from foilwork._native.mix import *
from foilwork._native.mix import __all__ as __all__
