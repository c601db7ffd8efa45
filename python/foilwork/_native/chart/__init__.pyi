from foilwork._native.chart._drawn import *
from foilwork._native.chart._picture import *

__all__ = [
    "Picture",
    "cost_chart",
    "dilution_chart",
    "hue_wheel",
    "margin_chart",
    "pigment_chart",
]
