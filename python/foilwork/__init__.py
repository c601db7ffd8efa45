"""Hair-colour chemistry: facts about hair, products and money go in; a checked, explained, weighable plan comes out."""

from foilwork._native import FoilworkError, OutOfRangeWarning

__all__ = ["FoilworkError", "OutOfRangeWarning"]
