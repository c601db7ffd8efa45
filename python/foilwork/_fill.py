"""``foilwork fill`` over Parquet and Arrow files: the words of the compiled command line, the rows by pyarrow."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from typing import Any

from foilwork import colour, peroxide
from foilwork._native import FoilworkError, fill_words, number_for_all_rows, poured_cautions
from foilwork.arrow import Col
from foilwork.tables import Filled, Filling, begins, fill


def fill_by_words(args: list[str]) -> int | None:
    """Does what the words ask for and gives the exit status; None for what the compiled command line reads itself."""
    words = fill_words(args)
    if words is None or not _is_ours(words["table"]):
        return None
    if words["guard"]:
        print("error: --guard: no program calculates from the texts of such a table (leave it out)", file=sys.stderr)
        return 2
    function = _function(words["rule"], len(words["results"]), dict(words["further"]))
    filling = _ByWords(function, words["inputs"], words["results"])
    try:
        filled = fill(words["table"], filling, words["output"], words["refused"], None)
    except FoilworkError as error:
        for line in str(error).splitlines():
            print(f"error: {line}", file=sys.stderr)
        return 2
    strengths = [filling.greatest[place] for place in range(words["poured"]) if place in filling.greatest]
    lines = _said(filled, words["output"], words["refused"])
    for line in [*lines, *(poured_cautions(max(strengths)) if strengths else [])]:
        print(line)
    return 0


def _is_ours(table: str) -> bool:
    try:
        return begins(table) is not None
    except OSError:
        return False


def _function(rule: str, results: int, further: dict[str, str]) -> Callable[..., Any]:
    """The function of a rule, of its values alone."""
    if rule == "convert":
        # Units are words of a list for a type checker; these were read by the compiled command line.
        function: Any = peroxide.convert if results == 1 else peroxide.convert_interval
        units = further["--from"], further["--to"]
        conditions: dict[str, Any] = {"temperature_c": float(further["--temperature"])}
        if "--molar-volume" in further:
            conditions["molar_volume"] = further["--molar-volume"]
        if "--density" in further:
            conditions["density_g_per_ml"] = float(further["--density"])
        if results > 1:
            conditions["medium"] = "emulsion" if "--cream" in further else "aqueous"
        return lambda value, **how: function(value, *units, **conditions, **how)
    if rule == "dilute":
        return peroxide.blend_two
    return peroxide.density_interval if rule == "density" else colour.lift_needed


class _ByWords(Filling):
    """A function of values that the command line names: a column, or a number for all rows."""

    def __init__(self, function: Callable[..., Any], inputs: Sequence[tuple[str, str]], to: Sequence[str]) -> None:
        super().__init__(function, [], [], to)
        self._inputs = inputs

    def columns_in(self, schema: Any) -> None:
        """Finds out which values are columns."""
        self._given = [self._value(option, value, schema.names) for option, value in self._inputs]
        super().columns_in(schema)

    @staticmethod
    def _value(option: str, value: str, names: Sequence[str]) -> Col | float:
        if names.count(value) > 1:
            raise FoilworkError(f"{option}: the table has {names.count(value)} columns {value!r}: rename them")
        if value in names:
            return Col(value)
        return number_for_all_rows(option, value, names)


def _said(filled: Filled, output: str, refused: str | None) -> list[str]:
    """What became of the rows, as the compiled command line says it."""
    lines = [f"{_rows(filled.rows)} in {output}"]
    if filled.missing:
        lines[0] += f", {filled.missing} of them without a result: a value is missing"
    if refused is not None:
        lines.append(f"{_rows(filled.refused)} kept apart in {refused}")
    lines += [f"  row {row}: {why}" for row, why in filled.first]
    if filled.refused > len(filled.first):
        lines.append(f"  and {filled.refused - len(filled.first)} more")
    return lines


def _rows(count: int) -> str:
    return f"{count} row" if count == 1 else f"{count} rows"
