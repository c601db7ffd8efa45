"""What the law allows on the hair, by jurisdiction, with the source of every figure. No table is complete."""

from foilwork._native.limits import *
from foilwork._native.limits import __all__ as __all__
