"""The record of a bowl: what its columns are called, and what of older and newer files is taken for one."""

from __future__ import annotations

from importlib import import_module
from typing import Any, Literal, NamedTuple

from foilwork._native import FoilworkError


class Field(NamedTuple):
    """One column of a record."""

    name: str
    kind: Literal["text", "number", "whole", "day"]
    needed: bool
    means: str


RECORD = (
    Field("salon", "text", True, "code of the salon"),
    Field("colourist", "text", True, "code of who did it, never a name"),
    Field("day", "day", True, "the day of the service"),
    Field("product", "text", True, "the colour or lightener in the bowl"),
    Field("jurisdiction", "text", True, "whose table of limits holds, such as EU"),
    Field("use", "text", True, "what the bowl is for, as in foilwork.limits: lightening, oxidative-colour"),
    Field("developer_label", "number", True, "strength on the bottle of developer"),
    Field("developer_unit", "text", True, "its unit, as in foilwork.peroxide: % w/w, volumes"),
    Field("developer_parts", "number", True, "parts of developer to one of product that the recipe asks for"),
    Field("product_g", "number", True, "product weighed into the bowl, in g"),
    Field("developer_g", "number", True, "developer weighed into it, in g"),
    Field("left_g", "number", True, "what was left of the two and thrown away, in g"),
    Field("product_pack_price_minor", "whole", True, "price of the pack of product without tax, whole minor units"),
    Field("product_pack_g", "number", True, "what it holds, in g"),
    Field("developer_pack_price_minor", "whole", True, "price of the pack of developer without tax, whole minor units"),
    Field("developer_pack_g", "number", True, "what it holds, in g"),
    Field("hands_on_min", "number", True, "time with hands on the guest, in min"),
    Field("chair_min", "number", True, "time the chair is taken, in min"),
    Field("net_minor", "whole", True, "what the bowl brought without tax, whole minor units"),
    Field("currency", "text", True, "of all amounts of the row"),
    Field("consumables_minor", "whole", False, "foils, gloves and the like; missing means not known, and costs 0"),
)

KEYS = ("salon", "colourist", "product")


def arrow() -> Any:
    """pyarrow, or what to do without it."""
    try:
        return import_module("pyarrow")
    except ImportError as error:
        raise FoilworkError("the history of a chain needs pyarrow (pip install pyarrow)") from error


def columns_there(names: list[str], where: str) -> list[str]:
    """The columns of the record that a file has; one that was added later may be missing, others are not read."""
    for field in RECORD:
        if field.needed and field.name not in names:
            raise FoilworkError(f"{where} has no column {field.name!r} ({field.means}): a record needs it")
    return [field.name for field in RECORD if field.name in names]


def as_record(rows: Any) -> dict[str, Any]:
    """The columns of a batch in the types of a record, each an array of pyarrow in one piece."""
    pyarrow = arrow()
    types = {
        "text": pyarrow.string(),
        "number": pyarrow.float64(),
        "whole": pyarrow.int64(),
        "day": pyarrow.date32(),
    }
    names = columns_there(rows.schema.names, "the table")
    record: dict[str, Any] = {}
    for field in RECORD:
        if field.name not in names:
            record[field.name] = pyarrow.nulls(len(rows), types[field.kind])
            continue
        column = rows.column(field.name)
        try:
            column = column.cast(types[field.kind])
        except (pyarrow.ArrowInvalid, pyarrow.ArrowNotImplementedError) as error:
            raise FoilworkError(f"column {field.name!r} ({field.means}) cannot be read: {error}") from error
        record[field.name] = column.combine_chunks() if isinstance(column, pyarrow.ChunkedArray) else column
    return record
