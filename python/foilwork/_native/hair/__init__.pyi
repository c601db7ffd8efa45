"""How much hair there is, how fast it grows, and what colour lies where along a strand."""

from foilwork._native.hair._facts import *
from foilwork._native.hair._growth import *
from foilwork._native.hair._strand import *
from foilwork._native.hair._white import *

__all__ = [
    "Band",
    "BandedStrand",
    "HairFacts",
    "HeadOfHair",
    "Tress",
    "WhiteShare",
    "by_caliper",
    "calibrated",
    "fibre_density",
    "grown",
    "growth",
    "hair_cut",
    "warm_band",
    "weeks_to_grow",
    "white_share",
]
