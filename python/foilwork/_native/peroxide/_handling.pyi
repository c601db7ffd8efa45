from typing import final

from foilwork._native import _Answer, _Percent

__all__ = [
    "HandlingFact",
    "StrengthBound",
    "handling_facts",
]

@final
class StrengthBound(_Answer):
    """x"""

    __match_args__ = ("ww_percent", "included")
    @property
    def ww_percent(self) -> float:
        """x"""
    @property
    def included(self) -> bool:
        """x"""

@final
class HandlingFact(_Answer):
    """x"""

    __match_args__ = ("jurisdiction", "scheme", "class_name", "code", "lower", "upper", "note", "source", "bearing")
    @property
    def jurisdiction(self) -> str:
        """x"""
    @property
    def scheme(self) -> str:
        """x"""
    @property
    def class_name(self) -> str:
        """x"""
    @property
    def code(self) -> str:
        """x"""
    @property
    def lower(self) -> StrengthBound | None:
        """x"""
    @property
    def upper(self) -> StrengthBound | None:
        """x"""
    @property
    def note(self) -> str:
        """x"""
    @property
    def source(self) -> str:
        """x"""
    @property
    def bearing(self) -> str:
        """x"""

def handling_facts(strength_ww_percent: _Percent) -> list[HandlingFact]:
    """x"""
