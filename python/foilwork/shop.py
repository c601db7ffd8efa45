"""The shop: what the salon has and what it charges, in a file of its own or inside a service file."""

from foilwork._native.shop import *
from foilwork._native.shop import __all__ as __all__
