"""The day at the chair: who does what when, in which order, and when the guest can leave."""

from foilwork._native.day import *
from foilwork._native.day import __all__ as __all__
