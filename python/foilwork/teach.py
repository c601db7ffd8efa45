"""Worksheets for a class: problems in words, worked by the library, with a key and the usual wrong answers."""

from foilwork._native.teach import *
from foilwork._native.teach import __all__ as __all__
