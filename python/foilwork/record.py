"""During the service and after: what is noted, what it says to do, and plan against what happened."""

from foilwork._native.record import *
from foilwork._native.record import __all__ as __all__
