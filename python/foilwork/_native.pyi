"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from typing import Any, Literal, final, overload

from numpy import float64
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "FoilworkError",
    "Level",
    "OutOfRangeWarning",
    "Plan",
    "ServiceFileError",
    "Shade",
    "Swatch",
    "TonerAnswer",
    "ciede2000",
    "complement",
    "convert",
    "dilute",
    "formula_level",
    "lab_to_lch",
    "lab_to_srgb",
    "lab_to_xyz",
    "lch_to_lab",
    "lift_needed",
    "main",
    "plan",
    "pre_pigmentation",
    "read_shades",
    "result_level",
    "service_schema",
    "srgb_to_lab",
    "swatch",
    "toner",
    "xyz_to_lab",
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

@final
class Level:
    def __new__(cls, level: float | str | Level) -> Level: ...
    @property
    def number(self) -> float: ...
    def name(self, naming: Literal["european", "us"] = "european") -> str | None: ...
    def underlying_pigment(self) -> dict[str, Any]: ...
    def __float__(self) -> float: ...
    def __hash__(self) -> int: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __lt__(self, value: Level, /) -> bool: ...
    def __le__(self, value: Level, /) -> bool: ...
    def __gt__(self, value: Level, /) -> bool: ...
    def __ge__(self, value: Level, /) -> bool: ...

@final
class Shade:
    def __new__(
        cls, code: str, level: float | str | Level, tones: Sequence[str] = (), strength_percent: float = 100.0
    ) -> Shade: ...
    @property
    def code(self) -> str: ...
    @property
    def level(self) -> float: ...
    @property
    def tones(self) -> list[tuple[str, float]]: ...
    @property
    def strength_percent(self) -> float: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...

@final
class Swatch:
    @property
    def lab(self) -> tuple[float, float, float]: ...
    @property
    def bounds(self) -> dict[str, tuple[float, float]]: ...
    @property
    def uncertainty(self) -> float: ...
    @property
    def srgb(self) -> str: ...
    @property
    def hue(self) -> str | None: ...
    @property
    def basis(self) -> str: ...
    @property
    def notice(self) -> str: ...
    def difference(self, other: Swatch) -> dict[str, float]: ...
    def beside(self, other: Swatch, share_percent: float) -> Swatch: ...
    def _repr_html_(self) -> str: ...

@final
class TonerAnswer:
    @property
    def reached(self) -> bool: ...
    @property
    def mix_g(self) -> list[tuple[str, float]]: ...
    @property
    def predicted(self) -> Swatch: ...
    @property
    def target(self) -> Swatch: ...
    @property
    def residual(self) -> float: ...
    @property
    def before(self) -> float: ...
    @property
    def alternatives(self) -> list[tuple[list[tuple[str, float]], float]]: ...
    def findings(self) -> list[dict[str, str]]: ...
    def _repr_html_(self) -> str: ...

def complement(hue: str) -> str: ...
def pre_pigmentation(
    lightened_level: float | str | Level, target_level: float | str | Level
) -> dict[str, Any] | None: ...
def read_shades(text: str) -> list[Shade]: ...
def swatch(
    level: float | str | Level | None = None,
    *,
    lightened_from: float | str | Level | None = None,
    tones: Sequence[str] | None = None,
    white_percent: float = 0.0,
    lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
) -> Swatch: ...
def toner(
    shades: Sequence[Shade],
    *,
    lifted_level: float | str | Level,
    natural_level: float | str | Level | None = None,
    exposed_lab: tuple[float, float, float] | None = None,
    target_level: float | str | Level | None = None,
    target_tones: Sequence[str] | None = None,
    target_lab: tuple[float, float, float] | None = None,
    observer_degrees: int = 10,
    porous: bool = False,
    most_shades: int = 3,
    bowl_g: float = 30.0,
    division_g: float = 1.0,
) -> TonerAnswer: ...
def lab_to_srgb(lab: tuple[float, float, float], *, observer_degrees: int = 2) -> tuple[str, bool]: ...
def srgb_to_lab(srgb: str) -> tuple[float, float, float]: ...
@overload
def formula_level(
    natural_level: float,
    target_level: float,
    *,
    product: str = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise",
) -> float: ...
@overload
def formula_level(
    natural_level: ArrayLike,
    target_level: ArrayLike,
    *,
    product: str = "permanent",
    coloured: bool = False,
    top_level: int = 10,
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def result_level(
    natural_level: float, applied_level: float, *, product: str = "permanent", errors: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def result_level(
    natural_level: ArrayLike,
    applied_level: ArrayLike,
    *,
    product: str = "permanent",
    errors: Literal["raise", "nan"] = "raise",
) -> NDArray[float64]: ...
@overload
def lift_needed(from_level: float, target_level: float, *, errors: Literal["raise", "nan"] = "raise") -> float: ...
@overload
def lift_needed(
    from_level: ArrayLike, target_level: ArrayLike, *, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def ciede2000(  # type: ignore[overload-overlap]
    lab_1: tuple[float, float, float], lab_2: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> float: ...
@overload
def ciede2000(lab_1: ArrayLike, lab_2: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lab_to_xyz(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lab_to_xyz(
    lab: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def xyz_to_lab(  # type: ignore[overload-overlap]
    xyz: tuple[float, float, float], *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def xyz_to_lab(
    xyz: ArrayLike, *, observer_degrees: int = 2, errors: Literal["raise", "nan"] = "raise"
) -> NDArray[float64]: ...
@overload
def lab_to_lch(  # type: ignore[overload-overlap]
    lab: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lab_to_lch(lab: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...
@overload
def lch_to_lab(  # type: ignore[overload-overlap]
    lch: tuple[float, float, float], *, errors: Literal["raise", "nan"] = "raise"
) -> tuple[float, float, float]: ...
@overload
def lch_to_lab(lch: ArrayLike, *, errors: Literal["raise", "nan"] = "raise") -> NDArray[float64]: ...

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
    def _repr_html_(self) -> str: ...

def plan(text: str, format: Literal["toml", "json"] = "toml") -> Plan: ...
def service_schema() -> dict[str, Any]: ...
