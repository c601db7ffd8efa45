"""Lightening against time: how light, how fast, how sure, and what a strand test teaches."""

from foilwork._native.lift._belief import *
from foilwork._native.lift._book import *
from foilwork._native.lift._choose import *
from foilwork._native.lift._finish import *
from foilwork._native.lift._lightening import *
from foilwork._native.lift._situation import *
from foilwork._native.lift._watch import *

__all__ = [
    "Advice",
    "AfterLook",
    "Belief",
    "BookProblem",
    "Condition",
    "Factor",
    "FinishTogether",
    "Lightening",
    "Situation",
    "StrandBook",
    "StrandReading",
    "StrengthChance",
    "TimeTo",
    "TimedChoice",
    "TimedSection",
    "Visit",
    "advice",
    "after_look",
    "chances",
    "condition",
    "finish_together",
    "gentlest",
    "looks",
    "read_strand_book",
    "series",
    "strand_json_line",
    "strand_line",
]
