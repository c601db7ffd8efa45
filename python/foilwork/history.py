"""Many services: what is kept of each, summed up, learned from, and forgotten when a guest asks for it."""

from foilwork._native.history import *
from foilwork._native.history import __all__ as __all__
