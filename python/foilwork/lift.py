"""Lightening against time: how light, how fast, how sure, and what a strand test teaches."""

from foilwork._native.lift import *
from foilwork._native.lift import __all__ as __all__
