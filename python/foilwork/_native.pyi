"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from typing import Literal, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "FoilworkError",
    "OutOfRangeWarning",
    "convert",
    "dilute",
    "main",
]

# --- errors ---------------------------------------------------------------------------------------------------------

class FoilworkError(ValueError): ...

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
