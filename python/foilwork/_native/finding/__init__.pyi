from foilwork._native.finding._found import *

__all__ = [
    "Finding",
    "Reason",
]
