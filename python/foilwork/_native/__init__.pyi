"""Types of the compiled half. Docstrings here are copied from the compiled functions by ``make stubs``."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any, Literal, TypeAlias, type_check_only

from _typeshed import SupportsKeysAndGetItem

__all__ = [
    "FoilworkError",
    "OutOfRangeWarning",
    "main",
]

# A strength or level in % w/w, or its (low, best, high).
_Percent: TypeAlias = float | tuple[float, float, float]

_Errors: TypeAlias = Literal["raise", "nan"]

_Bounds: TypeAlias = tuple[float, float, float]

_Reading: TypeAlias = float | tuple[float, float]

_Exact: TypeAlias = Decimal | int | str

_Number: TypeAlias = Decimal | float | str

_Mapping: TypeAlias = SupportsKeysAndGetItem[str, Any]

@type_check_only
class _Answer:
    """What every result can do: it compares and hashes by its fields, copies, pickles and turns into plain data."""

    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

class FoilworkError(ValueError):
    """Bad input: the text says which value, its unit, the allowed range and the way out."""

class OutOfRangeWarning(UserWarning):
    """Values out of range became NaN because ``errors="nan"`` was given; ``count`` says how many."""

    count: int

def main(args: Sequence[str]) -> int:
    """Run the command line with ``args`` (the first is the program's name) and return its exit status.

    0 fine, 1 the plan has findings that say stop, 2 bad input. Prints to the process's own standard output.

    Args:
        args: the words of the command line.

    Returns:
        The exit status.

    Examples:
        >>> from foilwork._native import main
        >>> main(["foilwork", "plan", "no-such-file.toml"])
        2
    """
