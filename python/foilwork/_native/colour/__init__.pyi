from foilwork._native.colour._gradient import *
from foilwork._native.colour._level import *
from foilwork._native.colour._reading import *
from foilwork._native.colour._shade import *
from foilwork._native.colour._space import *
from foilwork._native.colour._swatches import *
from foilwork._native.colour._trace import *

__all__ = [
    "Contrast",
    "Difference",
    "Level",
    "PrePigmentation",
    "SectionLook",
    "Shade",
    "Srgb",
    "Swatch",
    "Transition",
    "UnderlyingPigment",
    "WhiteBlend",
    "blended_level",
    "check_depth_at_root",
    "check_hairline",
    "ciede2000",
    "complement",
    "contrast_between",
    "formula_level",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "level_from_reading",
    "level_on_scale",
    "lift_needed",
    "pre_pigmentation",
    "read_shades",
    "reflectance_to_lab",
    "result_level",
    "section_look",
    "shade_level",
    "srgb_to_lab",
    "strip",
    "swatch",
    "trace_lift",
    "trace_reading",
    "trace_result_level",
    "trace_shade_level",
    "trace_swatch",
    "trace_underlying_pigment",
    "transition_between",
    "underlying_pigment",
    "white_blend",
    "xyz_to_lab",
]
