from collections.abc import Iterable
from typing import final

from foilwork._native import Bounds, _Answer
from foilwork._native.lift._choose import Visit
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan

__all__ = [
    "AgainRejected",
    "SecondApplication",
    "second_applications",
]

@final
class AgainRejected(_Answer):
    """x"""

    __match_args__ = ()
    @property
    def what(self) -> str:
        """x"""
    @property
    def why(self) -> str:
        """x"""

@final
class SecondApplication(_Answer):
    """x"""

    __match_args__ = ()
    @property
    def section(self) -> str:
        """x"""
    @property
    def level(self) -> float:
        """x"""
    @property
    def target_level(self) -> float:
        """x"""
    @property
    def decision(self) -> str:
        """x"""
    @property
    def reasons(self) -> list[str]:
        """x"""
    @property
    def rejected(self) -> list[AgainRejected]:
        """x"""
    @property
    def applications(self) -> int:
        """x"""
    @property
    def on_hair_min(self) -> float:
        """x"""
    @property
    def fresh_min(self) -> Bounds[float] | None:
        """x"""
    @property
    def fresh_chance_percent(self) -> Bounds[float]:
        """x"""
    @property
    def strain_with_fresh(self) -> str:
        """x"""
    @property
    def wait_weeks(self) -> Bounds[float]:
        """x"""
    @property
    def not_before(self) -> str:
        """x"""
    @property
    def visits(self) -> list[Visit]:
        """x"""
    @property
    def basis(self) -> str:
        """x"""

def second_applications(plan: Plan, entries: Iterable[LogEntry]) -> list[SecondApplication]:
    """x"""
