from foilwork._native.mix._advice import *
from foilwork._native.mix._bowl import *
from foilwork._native.mix._card import *
from foilwork._native.mix._composition import *
from foilwork._native.mix._ratio import *
from foilwork._native.mix._recipe import *
from foilwork._native.mix._weighing import *

__all__ = [
    "Addition",
    "BowlPlan",
    "Card",
    "CardLine",
    "Composition",
    "Constituent",
    "FreshBowl",
    "HandlingAdvice",
    "Ingredient",
    "Leftover",
    "MinimumBowl",
    "NaturalShare",
    "Part",
    "Product",
    "Ratio",
    "Recipe",
    "StrengthShift",
    "TareStep",
    "Weighing",
    "as_applied",
    "bowls",
    "check_lightener",
    "convert_amount",
    "handling_advice",
    "minimum_bowl",
    "minimum_mass",
    "mixing_card",
    "natural_share",
    "weigh",
]
