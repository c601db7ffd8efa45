"""The head as an area to work on: foils and what is in them, regions, gradient, and how it all will read."""

from foilwork._native.head._decide import *
from foilwork._native.head._demand import *
from foilwork._native.head._gradient import *
from foilwork._native.head._layout import *
from foilwork._native.head._look import *
from foilwork._native.head._lowlights import *
from foilwork._native.head._outline import *
from foilwork._native.head._strand import *
from foilwork._native.head._template import *

__all__ = [
    "Change",
    "ClassDecision",
    "Demand",
    "Gradient",
    "HeadLook",
    "InFoils",
    "Layout",
    "LightFoils",
    "LowlightPlace",
    "Lowlights",
    "OutlineChange",
    "OutlineLook",
    "OutlinePart",
    "OverDirection",
    "Placed",
    "Profile",
    "Region",
    "RegionFoils",
    "RegionLook",
    "Rejected",
    "RejectedTechnique",
    "ShadowStep",
    "StepNeeds",
    "TechniqueDecision",
    "Template",
    "by_hand",
    "choose_technique",
    "demand",
    "film",
    "hair_by_use",
    "level_along",
    "line_shows_after",
    "lowlight_places",
    "lowlights",
    "minutes_per_foil",
    "partition",
    "product_class",
    "profile",
    "read_head",
    "read_outline",
    "root_shadow_length",
    "service_class",
    "shadow_steps",
    "step_needs",
    "take_up",
    "trace_product_class",
    "trace_service_class",
    "trace_technique",
]
