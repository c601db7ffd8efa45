from foilwork._native.colour._level import *
from foilwork._native.colour._shade import *
from foilwork._native.colour._space import *
from foilwork._native.colour._swatches import *

__all__ = [
    "Difference",
    "Level",
    "PrePigmentation",
    "SectionLook",
    "Shade",
    "Swatch",
    "UnderlyingPigment",
    "ciede2000",
    "complement",
    "formula_level",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "level_from_reading",
    "lift_needed",
    "pre_pigmentation",
    "read_shades",
    "reflectance_to_lab",
    "result_level",
    "section_look",
    "shade_level",
    "srgb_to_lab",
    "swatch",
    "xyz_to_lab",
]
