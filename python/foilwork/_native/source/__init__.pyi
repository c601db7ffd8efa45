from foilwork._native.source._citation import *

__all__ = [
    "Citation",
    "register",
    "resolve",
]
