"""What a check found: one shape and one ladder of verdicts."""

from foilwork._native.finding import *
from foilwork._native.finding import __all__ as __all__
