"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from typing import Any, Literal, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "FoilworkError",
    "OutOfRangeWarning",
    "Plan",
    "ServiceFileError",
    "convert",
    "dilute",
    "main",
    "plan",
    "service_schema",
]

# --- errors ---------------------------------------------------------------------------------------------------------

class FoilworkError(ValueError): ...

class ServiceFileError(FoilworkError):
    problems: list[tuple[int | None, str, str]]

class OutOfRangeWarning(UserWarning):
    count: int

# --- command line ---------------------------------------------------------------------------------------------------

def main(args: Sequence[str]) -> int: ...

# --- peroxide -------------------------------------------------------------------------------------------------------

@overload
def convert(
    value: float,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: float = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: Literal["raise", "nan"] = "raise",
) -> float: ...
@overload
def convert(
    value: ArrayLike,
    from_unit: str,
    to_unit: str,
    *,
    temperature_c: ArrayLike = 20.0,
    molar_volume: str = "ideal-1atm",
    density_g_per_ml: float | None = None,
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def dilute(
    stock_ww: float, target_ww: float, total_g: float, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float]: ...
@overload
def dilute(
    stock_ww: ArrayLike, target_ww: ArrayLike, total_g: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[NDArray[float64], NDArray[float64]]: ...



# --- mix ------------------------------------------------------------------------------------------------------------



# --- limits ---------------------------------------------------------------------------------------------------------



# --- colour ---------------------------------------------------------------------------------------------------------



# --- money ----------------------------------------------------------------------------------------------------------



# --- service --------------------------------------------------------------------------------------------------------

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs."""

    @property
    def is_blocked(self) -> bool: ...
    def text(self) -> str: ...
    def json(self) -> str: ...
    def data(self) -> dict[str, Any]: ...
    def cards(self) -> list[dict[str, Any]]: ...
    def _repr_html_(self) -> str: ...

def plan(text: str, format: Literal["toml", "json"] = "toml") -> Plan: ...
def service_schema() -> dict[str, Any]: ...
