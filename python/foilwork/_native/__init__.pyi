"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from types import GenericAlias, ModuleType
from typing import Any, Generic, Literal, SupportsIndex, TypeAlias, TypeVar, final, overload, type_check_only

from _typeshed import SupportsKeysAndGetItem

__all__ = [
    "Bounds",
    "FoilworkError",
    "OutOfRangeWarning",
    "fill_words",
    "main",
    "number_for_all_rows",
    "open_room",
    "poured_cautions",
]

__version__: str

ROOMS: tuple[str, ...]

# A strength or level in % w/w, or its (low, best, high).
_Percent: TypeAlias = float | Bounds[float] | tuple[float, float, float]

# A stated range.
_Span: TypeAlias = Bounds[float] | tuple[float, float, float]

_Errors: TypeAlias = Literal["raise", "nan"]

# What is measured in money: mass, volume or a count.
_MeasureUnit: TypeAlias = Literal["g", "mL", "piece"]

# L*, a*, b*, then X, Y, Z, then L*, C*, h: coordinates of one colour, not bounds.
_Lab: TypeAlias = tuple[float, float, float]

_Xyz: TypeAlias = tuple[float, float, float]

_Lch: TypeAlias = tuple[float, float, float]

_Reading: TypeAlias = float | tuple[float, float]

_Exact: TypeAlias = Decimal | int | str

_Number: TypeAlias = Decimal | float | str

_Mapping: TypeAlias = SupportsKeysAndGetItem[str, Any]

_T = TypeVar("_T")
_S = TypeVar("_S", covariant=True)

@final
class Bounds(Generic[_S]):
    """Lower bound, best estimate and upper bound of one thing, in one unit.

    It unpacks, iterates, compares and hashes as the tuple ``(low, best, high)``, and can be given wherever a value with
    bounds is asked for.

    Args:
        low: the lower bound.
        best: the best estimate, not below it.
        high: the upper bound, not below the best estimate.

    Raises:
        FoilworkError: bounds out of order.

    Examples:
        >>> from foilwork import Bounds
        >>> low, best, high = Bounds(2.5, 3.0, 3.5)
        >>> best, Bounds(3, 3, 3).is_exact
        (3.0, True)
        >>> Bounds(3, 2, 1)
        Traceback (most recent call last):
        foilwork.FoilworkError: invalid interval: the bounds must enclose the best estimate (give low <= best <= high)
    """

    __match_args__ = ("low", "best", "high")
    def __new__(cls, low: _T, best: _T, high: _T) -> Bounds[_T]: ...
    @property
    def low(self) -> _S:
        """The lower bound."""
    @property
    def best(self) -> _S:
        """The best estimate."""
    @property
    def high(self) -> _S:
        """The upper bound."""
    @property
    def is_exact(self) -> bool:
        """Whether the three are one value."""
    def to_dict(self) -> dict[str, object]:
        """``{"low": .., "best": .., "high": ..}``."""
    def __iter__(self) -> Iterator[_S]: ...
    def __len__(self) -> int: ...
    @overload
    def __getitem__(self, index: SupportsIndex, /) -> _S: ...
    @overload
    def __getitem__(self, index: slice, /) -> tuple[_S, ...]: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...
    @classmethod
    def __class_getitem__(cls, item: object) -> GenericAlias: ...

@type_check_only
class _Answer:
    """What every result can do: it compares and hashes by its fields, copies, pickles and turns into plain data."""

    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

@type_check_only
class _Tuple(_Answer, Generic[_S]):
    """A result that unpacks as well; its fields are of one kind."""

    def __iter__(self) -> Iterator[_S]: ...
    @classmethod
    def __class_getitem__(cls, item: object) -> GenericAlias: ...

class FoilworkError(ValueError):
    """Bad input: the text says which value, its unit, the allowed range and the way out."""

class OutOfRangeWarning(UserWarning):
    """Values out of range became NaN because ``errors="nan"`` was given; ``count`` says how many."""

    count: int

def open_room(name: str) -> ModuleType:
    """The compiled half of a room, by its name among ``ROOMS``; ``import foilwork._native.<room>`` asks for it.

    Raises:
        FoilworkError: no room has this name.

    Examples:
        >>> from foilwork._native import open_room
        >>> open_room("peroxide").__name__
        'foilwork._native.peroxide'
    """

def main(args: Sequence[str]) -> int:
    """Run the command line with ``args`` (the first is the program's name) and return its exit status.

    0 fine, 1 the plan or the log says stop, 2 bad input. Prints to the process's own standard output.

    Args:
        args: the words of the command line.

    Returns:
        The exit status.

    Examples:
        >>> from foilwork._native import main
        >>> main(["foilwork", "plan", "no-such-file.toml"])
        2
    """

def fill_words(args: Sequence[str]) -> dict[str, Any] | None:
    """What the words of ``foilwork fill`` ask for, without doing it; for tables that the compiled command line does not read.

    Args:
        args: the words of the command line.

    Returns:
        The rule, the paths, whether texts are guarded, the values with their options, the names of the new columns, how
        many of the values are strengths that are poured, and further options; None unless ``main`` would begin a ``fill`` by these words.

    Examples:
        >>> from foilwork._native import fill_words
        >>> words = ["foilwork", "fill", "lift", "a.parquet", "--from", "level", "--target", "9", "--output", "b.parquet"]
        >>> fill_words(words)["inputs"]
        [('--from', 'level'), ('--target', '9')]
    """
def poured_cautions(strongest_ww_percent: float) -> list[str]:
    """What the command line says of the strongest peroxide that a table tells to pour, line by line.

    Args:
        strongest_ww_percent: its strength in % w/w.

    Returns:
        The lines.

    Raises:
        FoilworkError: a strength out of range.

    Examples:
        >>> from foilwork._native import poured_cautions
        >>> poured_cautions(12)[-1]
        'diluent that their maker allows. Never close the container.'
    """

def number_for_all_rows(option: str, value: str, names: Sequence[str]) -> float:
    """What a value of ``foilwork fill`` is that is the name of no column: a number for all rows.

    Args:
        option: the option it was given for.
        value: the text.
        names: the columns there are.

    Returns:
        The number.

    Raises:
        FoilworkError: it is no number, beyond those that can be held, or a column that is not there.

    Examples:
        >>> from foilwork._native import number_for_all_rows
        >>> number_for_all_rows("--total", "60", ["stock"])
        60.0
    """
