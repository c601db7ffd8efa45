from foilwork._native.teach._checklist import *
from foilwork._native.teach._exercise import *
from foilwork._native.teach._sheet import *

__all__ = [
    "Checklist",
    "ChecklistPoint",
    "Exercise",
    "ExerciseAnswer",
    "ExercisePicture",
    "MappedElement",
    "OfferedAnswer",
    "Working",
    "Worksheet",
    "checklist",
    "worksheet",
]
