from foilwork._native.colour._level import *
from foilwork._native.colour._shade import *
from foilwork._native.colour._space import *
from foilwork._native.colour._swatches import *

__all__ = [
    "Level",
    "Shade",
    "Swatch",
    "ciede2000",
    "complement",
    "formula_level",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "lift_needed",
    "pre_pigmentation",
    "read_shades",
    "result_level",
    "srgb_to_lab",
    "swatch",
    "xyz_to_lab",
]
