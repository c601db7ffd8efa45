import os
from collections.abc import Mapping
from typing import Any, Literal, final

from foilwork._native.colour import Shade

__all__ = [
    "Shop",
    "read",
    "read_file",
    "shop_schema",
]

@final
class Shop:
    """"""

    @property
    def name(self) -> str | None:
        """"""
    @property
    def currency(self) -> str | None:
        """"""
    @property
    def shades(self) -> list[Shade]:
        """"""
    def data(self) -> dict[str, Any]:
        """"""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __reduce__(self) -> tuple[Any, tuple[dict[str, Any]]]: ...
    __hash__: None  # type: ignore[assignment]

def read(file: str | Mapping[str, Any], format: Literal["toml", "json"] = "toml") -> Shop:
    """"""

def read_file(path: str | os.PathLike[str]) -> Shop:
    """"""

def shop_schema() -> dict[str, Any]:
    """"""
