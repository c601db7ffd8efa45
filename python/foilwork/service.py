"""The service: read a service file, plan it, print the bench sheet."""

from foilwork._native.service import *
from foilwork._native.service import __all__ as __all__
