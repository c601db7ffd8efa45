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
    """What the salon has and what it charges.

    Made by :func:`read` and :func:`read_file`. ``shop.to_dict()`` is the whole shop as plain Python data.

    Examples:
        >>> from foilwork.shop import read
        >>> shop = read({"name": "Juniper & Tide", "diluent": [{"name": "thinning base", "in_hand_g": 400}]})
        >>> shop.name, shop.to_dict()["diluent"][0]["in_hand_g"]
        ('Juniper & Tide', 400.0)
    """

    @property
    def name(self) -> str | None:
        """What the shop is called."""
    @property
    def currency(self) -> str | None:
        """The ISO 4217 code of the currency of every price."""
    @property
    def shades(self) -> list[Shade]:
        """The shades, as the search for a toner takes them."""
    def to_dict(self) -> dict[str, object]:
        """The shop as dicts, lists, strings and numbers, in the shape of a shop file."""
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

def read(file: str | Mapping[str, Any], format: Literal["toml", "json"] = "toml") -> Shop:
    """Read a shop from the text of a shop file, or from the same as a mapping.

    Args:
        file: the file's text, or a mapping of its shape.
        format: ``"toml"`` or ``"json"`` for a text; both have the same shape.

    Returns:
        The shop.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.

    Examples:
        >>> from foilwork.shop import read
        >>> read('name = "Juniper & Tide"')
        <foilwork.shop.Shop "Juniper & Tide", 0 developers, 0 shades>
    """

def read_file(path: str | os.PathLike[str]) -> Shop:
    """Read a shop file, TOML or JSON (told by what is in it).

    Args:
        path: the shop file, UTF-8.

    Returns:
        The shop.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line.
        OSError: the file cannot be read.

    Examples:
        >>> from foilwork.shop import read_file
        >>> shop = read_file("examples/juniper_and_tide.toml")
        >>> shop.currency, len(shop.shades)
        ('EUR', 12)
    """

def shop_schema() -> dict[str, Any]:
    """The JSON Schema of a shop file (draft 2020-12), as plain Python data.

    Returns:
        The schema.

    Examples:
        >>> from foilwork.shop import shop_schema
        >>> shop_schema()["title"]
        'ShopFile'
    """
