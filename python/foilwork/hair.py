"""How much hair there is, how fast it grows, and what colour lies where along a strand."""

from foilwork._native.hair import *
from foilwork._native.hair import __all__ as __all__
