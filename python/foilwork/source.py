"""What numbers rest on: the register of every citation in use, and results with what they were made of."""

from foilwork._native.source import *
from foilwork._native.source import __all__ as __all__
