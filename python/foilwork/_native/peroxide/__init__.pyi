from foilwork._native.peroxide._ageing import *
from foilwork._native.peroxide._assay import *
from foilwork._native.peroxide._dilution import *
from foilwork._native.peroxide._handling import *
from foilwork._native.peroxide._mixing import *
from foilwork._native.peroxide._shelf import *
from foilwork._native.peroxide._strength import *
from foilwork._native.peroxide._trace import *
from foilwork._native.peroxide._volume import *

__all__ = [
    "Dilution",
    "DilutionRow",
    "HandlingFact",
    "LabelReadings",
    "MakeUp",
    "Mixture",
    "Portion",
    "PouredMixture",
    "RoundedBlend",
    "ShelfBlend",
    "Stock",
    "StrengthBound",
    "TwoPartBlend",
    "VolumeDilution",
    "blend_shelf",
    "blend_two",
    "convert",
    "convert_interval",
    "density",
    "density_interval",
    "dilute",
    "dilute_volume",
    "dilution_table",
    "half_life_days",
    "handling_facts",
    "loss_rate",
    "loss_rate_from_half_life",
    "make_up",
    "mix_strengths",
    "mix_two",
    "mix_volumes",
    "molar_volumes",
    "permanganate_strength",
    "permanganate_titre",
    "read_label",
    "round_to_scale",
    "strength_after",
    "strength_after_make_up",
    "strength_units",
    "strength_ww_percent",
    "time_until",
    "trace_blend",
    "trace_conversion",
    "trace_mixture",
    "trace_titration",
    "trace_titre",
]
