from foilwork._native.toner._find import *

__all__ = [
    "Finding",
    "NeutralisingDose",
    "TonerAnswer",
    "TonerMix",
    "TonerPart",
    "find_toner",
    "neutralising_dose",
]
