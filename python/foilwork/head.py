"""The head as an area to work on: foils and what is in them, regions, gradient, and how it all will read."""

from foilwork._native.head import *
from foilwork._native.head import __all__ as __all__
