from foilwork._native.toner._find import *

__all__ = [
    "TonerAnswer",
    "toner",
]
