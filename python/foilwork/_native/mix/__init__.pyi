from foilwork._native.mix._bowl import *
from foilwork._native.mix._composition import *
from foilwork._native.mix._recipe import *

__all__ = [
    "Additive",
    "Bowl",
    "BowlPlan",
    "Composition",
    "Ingredient",
    "Product",
    "Ratio",
    "Recipe",
    "Weighing",
    "as_applied",
    "bowls",
    "convert_amount",
    "handling_advice",
    "minimum_bowl",
    "minimum_mass",
    "mixing_card",
    "natural_share",
    "weigh",
]
