"""Toners: which deposit reaches a target from the exposed pigment."""

from foilwork._native.toner import *
from foilwork._native.toner import __all__ as __all__
