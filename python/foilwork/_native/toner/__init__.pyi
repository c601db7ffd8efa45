from foilwork._native.toner._find import *

__all__ = [
    "Finding",
    "MixPart",
    "NeutralisingDose",
    "TonerAnswer",
    "TonerMix",
    "find_toner",
    "neutralising_dose",
]
