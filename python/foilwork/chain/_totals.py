"""Sums of what bowls come to, exact and in any order: grams as whole milligrams, money as whole minor units."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from foilwork._native import FoilworkError
from foilwork.chain._record import arrow

# What a line of totals is about: `by` names the columns that are filled in.
KEYS = ("salon", "colourist", "product", "week")

SUMS = (
    "used_mg",
    "wasted_mg",
    "off_ratio",
    "exceeded",
    "not_judged",
    "consumables_unknown",
    "cost_minor",
    "net_minor",
    "margin_minor",
)

Grouping = tuple[str, ...]


def groupings(by: Sequence[str | Sequence[str]]) -> list[Grouping]:
    """Groupings as tuples of keys in one order, and the grouping of everything first."""
    found: list[Grouping] = [()]
    for group in by:
        names = (group,) if isinstance(group, str) else tuple(group)
        for name in names:
            if name not in KEYS:
                raise FoilworkError(f"no totals by {name!r} (they go by {', '.join(KEYS)})")
        ordered = tuple(name for name in KEYS if name in names)
        if ordered not in found:
            found.append(ordered)
    return found


def label(grouping: Grouping) -> str:
    """What `by` says of a grouping."""
    return "+".join(grouping) if grouping else "all"


def schema() -> Any:
    """The columns of totals."""
    pyarrow = arrow()
    whole, number = pyarrow.int64(), pyarrow.float64()
    return pyarrow.schema(
        [
            ("by", pyarrow.string()),
            ("salon", pyarrow.string()),
            ("colourist", pyarrow.string()),
            ("product", pyarrow.string()),
            ("week", pyarrow.date32()),
            ("bowls", whole),
            *((name, whole) for name in SUMS),
            ("on_hair_weakest_ww_percent", number),
            ("on_hair_strongest_ww_percent", number),
        ]
    )


def of_rows(worked: Any, by: list[Grouping]) -> Any:
    """Totals of a table of worked rows, bad ones left out."""
    pyarrow = arrow()
    compute: Any = pyarrow.compute
    good = worked.filter(compute.is_null(worked.column("refused")))
    ones = pyarrow.array([1], pyarrow.int64()).take(pyarrow.array([0] * good.num_rows, pyarrow.int8()))
    good = good.append_column("bowls", ones)
    on_hair = good.column("on_hair_ww_percent")
    for name in ("on_hair_weakest_ww_percent", "on_hair_strongest_ww_percent"):
        good = good.append_column(name, on_hair)
    return pyarrow.concat_tables([_grouped(good, grouping) for grouping in by])


def merged(totals: Sequence[Any]) -> Any:
    """Totals of several parts as one table, in the order of `by` and the keys."""
    pyarrow = arrow()
    whole = pyarrow.concat_tables([table.select(schema().names) for table in totals] or [schema().empty_table()])
    kinds = whole.column("by").unique().to_pylist()
    compute: Any = pyarrow.compute
    parts = []
    for kind in sorted(kinds, key=lambda kind: (kind != "all", kind)):
        of_kind = whole.filter(compute.equal(whole.column("by"), kind))
        grouping = () if kind == "all" else tuple(kind.split("+"))
        lines = _grouped(of_kind, grouping)
        parts.append(lines.sort_by([(name, "ascending") for name in grouping]) if grouping else lines)
    return pyarrow.concat_tables(parts) if parts else whole


def regrouped(rows: Any, grouping: Grouping) -> Any:
    """Totals by fewer keys."""
    return _grouped(rows, grouping)


def _grouped(rows: Any, grouping: Grouping) -> Any:
    pyarrow = arrow()
    asked = [
        ("bowls", "sum"),
        *((name, "sum") for name in SUMS),
        ("on_hair_weakest_ww_percent", "min"),
        ("on_hair_strongest_ww_percent", "max"),
    ]
    found = rows.group_by(list(grouping)).aggregate(asked)
    columns = []
    for field in schema():
        if field.name == "by":
            column = pyarrow.array([label(grouping)] * found.num_rows, field.type)
        elif field.name in KEYS:
            there = field.name in grouping
            column = found.column(field.name) if there else pyarrow.nulls(found.num_rows, field.type)
        else:
            kind = next(how for name, how in asked if name == field.name)
            column = found.column(f"{field.name}_{kind}")
        columns.append(column)
    lines = pyarrow.table(columns, schema=schema())
    # The sum of no row at all is none, not zero.
    compute: Any = pyarrow.compute
    return lines.filter(compute.greater(compute.fill_null(lines.column("bowls"), 0), 0))
