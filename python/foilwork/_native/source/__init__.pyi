from foilwork._native.source._citation import *
from foilwork._native.source._trail import *

__all__ = [
    "Citation",
    "TracedInput",
    "TracedResult",
    "register",
    "resolve",
]
