from foilwork._native.teach._exercise import *
from foilwork._native.teach._sheet import *

__all__ = [
    "Exercise",
    "ExerciseAnswer",
    "OfferedAnswer",
    "Working",
    "Worksheet",
    "worksheet",
]
