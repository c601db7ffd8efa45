from foilwork._native.toner._dose import *
from foilwork._native.toner._find import *
from foilwork._native.toner._predict import *

__all__ = [
    "NeutralisingDose",
    "PorousToning",
    "PrePigmentMix",
    "TonerAnswer",
    "TonerMix",
    "TonerPart",
    "check_toner",
    "find_toner",
    "neutralising_dose",
    "pre_pigment",
    "toned",
]
