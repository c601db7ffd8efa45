"""Pictures: dilution grid, levels and pigment, colour wheel, costs, price against margin."""

from foilwork._native.chart import *
from foilwork._native.chart import __all__ as __all__
