"""The day at the chair: who does what when, in which order, and when the guest can leave."""

from foilwork._native.day._arrange import *
from foilwork._native.day._share import *
from foilwork._native.day._timeline import *
from foilwork._native.day._underway import *
from foilwork._native.day._work import *

__all__ = [
    "Before",
    "Floor",
    "FoilGroup",
    "GuestOnFloor",
    "OnHair",
    "Piece",
    "RestOfDay",
    "SectionTimes",
    "SectionWork",
    "SharedFloor",
    "Timeline",
    "arrange",
    "go_on",
    "in_this_order",
    "share_floor",
]
