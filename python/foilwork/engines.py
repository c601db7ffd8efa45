"""Functions of foilwork inside data-frame engines: expressions for polars, scalar functions for DuckDB.

Each engine is loaded by the call that needs it. foilwork depends on none of them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from importlib import import_module
from typing import TYPE_CHECKING, Any

from foilwork import colour, money, peroxide
from foilwork._native import FoilworkError

if TYPE_CHECKING:
    import duckdb
    import polars

__all__ = ["polars_expression", "register_duckdb"]


def polars_expression(
    function: Callable[..., Any], *arguments: object, to: str | Sequence[str], **keywords: object
) -> polars.Expr:
    """A function of foilwork as a polars expression, by ``map_batches``.

    Nulls go in as NaN and NaN comes out as null. polars hands whole columns over, or a chunk of them when it streams;
    the function gives way to other threads while it works. It is opaque to polars: not pushed down, not merged.

    Args:
        function: one that takes arrays, for example ``foilwork.peroxide.density``.
        arguments: its arguments: a polars expression for a column, anything else as it is.
        to: the name of the result; several names for a function of several results, which become the fields of a struct
            (``unnest`` makes columns of them).
        keywords: its keywords, where a polars expression is a column too; ``errors="nan"`` makes a null of a row that
            cannot be.

    Returns:
        An expression of ``Float64``, or of a struct of them.

    Raises:
        FoilworkError: polars is missing, or no argument is an expression; when it runs, what the function raises.

    Examples:
        >>> import polars
        >>> from foilwork.engines import polars_expression
        >>> from foilwork.peroxide import dilute
        >>> bottles = polars.DataFrame({"target_ww_percent": [3.0, 6.0, None]})
        >>> weigh = polars_expression(dilute, 12, polars.col("target_ww_percent"), 60, to=["stock_g", "diluent_g"])
        >>> bottles.select(weigh).unnest("stock_g").to_dict(as_series=False)
        {'stock_g': [15.0, 30.0, None], 'diluent_g': [45.0, 30.0, None]}
    """
    try:
        import polars
    except ImportError as error:
        raise FoilworkError("polars is missing (pip install polars)") from error
    from foilwork.arrow import one_for_each_name

    names = [to] if isinstance(to, str) else list(to)
    given = [*arguments, *keywords.values()]
    columns = {place: value for place, value in enumerate(given) if isinstance(value, polars.Expr)}
    if not columns:
        raise FoilworkError(
            "no argument is a polars expression: give at least one column, such as polars.col('target')"
        )

    def run(rows: polars.Series) -> polars.Series:
        filled = list(given)
        for place in columns:
            filled[place] = rows.struct.field(str(place)).cast(polars.Float64).to_numpy()
        found = function(*filled[: len(arguments)], **dict(zip(keywords, filled[len(arguments) :], strict=True)))
        results = one_for_each_name(found, names)
        made = [polars.Series(name, result, nan_to_null=True) for name, result in zip(names, results, strict=True)]
        return made[0] if isinstance(to, str) else polars.DataFrame(made).to_struct(names[0])

    field = polars.Float64() if isinstance(to, str) else polars.Struct({name: polars.Float64() for name in names})
    packed = polars.struct([expression.alias(str(place)) for place, expression in columns.items()])
    return packed.map_batches(run, return_dtype=field, is_elementwise=True).alias(names[0])


def register_duckdb(connection: duckdb.DuckDBPyConnection, *, terms: Mapping[str, Any] | None = None) -> list[str]:
    """Registers functions of foilwork as scalar functions of a DuckDB connection. Needs pyarrow as well.

    - ``foilwork_convert(value, from_unit, to_unit, temperature_c)``: ``foilwork.peroxide.convert``
    - ``foilwork_density(strength_ww_percent, temperature_c)``: ``foilwork.peroxide.density``
    - ``foilwork_stock_g(stock_ww_percent, target_ww_percent, total_g)``: the stock of ``foilwork.peroxide.dilute``
    - ``foilwork_mix_two(first_ww_percent, first_g, second_ww_percent, second_g)``: ``foilwork.peroxide.mix_two``
    - ``foilwork_dilute_volume(stock_ww_percent, target_ww_percent, total_ml, temperature_c)``:
      ``foilwork.peroxide.dilute_volume``, a STRUCT of ``stock_ml``, ``water_ml`` and ``contraction_ml``, each a STRUCT
      of ``low``, ``best`` and ``high``
    - ``foilwork_strength_after(fresh, unit, rate_per_day, days)``: ``foilwork.peroxide.strength_after``
    - ``foilwork_lift_needed(from_level, target_level)``: ``foilwork.colour.lift_needed``
    - ``foilwork_ciede2000(l1, a1, b1, l2, a2, b2)``: ``foilwork.colour.ciede2000``
    - with ``terms``, ``foilwork_costs(pack_price_minor, pack_g, used_g, wasted_g, consumables_minor, hands_on_min,
      chair_min)``: ``foilwork.money.cost_columns``, a STRUCT of ``product_minor``, ``labour_minor``, ``overhead_minor``
      and ``cost_minor``; amounts are whole minor units, BIGINT. Amounts of one batch whose sum is beyond about 9.2e18
      minor units are an error

    A row with a NULL, and one that cannot be (out of range), gives NULL, not an error: count them with
    ``count(*) - count(..)``. An unknown unit is an error. DuckDB hands over some thousand rows at a time and
    calls Python functions from one thread.

    Args:
        connection: the connection, ``duckdb.default_connection()`` for the one in memory.
        terms: the salon's terms, as for ``foilwork.money.cost_columns``; they hold for every row.

    Returns:
        The names.

    Raises:
        FoilworkError: DuckDB or pyarrow is missing, or the terms are wrong.

    Examples:
        >>> import duckdb
        >>> from foilwork.engines import register_duckdb
        >>> connection = duckdb.connect()
        >>> names = register_duckdb(connection)
        >>> wanted = "(VALUES (3.0), (14.0), (NULL)) AS wanted(t)"
        >>> connection.sql(f"SELECT foilwork_stock_g(12, t, 60) FROM {wanted}").fetchall()
        [(15.0,), (None,), (None,)]
        >>> poured = "foilwork_dilute_volume(35, 3, 1000, 20).stock_ml"
        >>> connection.sql(f"SELECT round({poured}.low, 1), round({poured}.high, 1) FROM range(1)").fetchall()
        [(76.4, 76.5)]
    """
    try:
        import duckdb.sqltypes as sql
        from duckdb import struct_type
        from duckdb.func import FunctionNullHandling, PythonUDFType

        pyarrow: Any = import_module("pyarrow")
    except ImportError as error:
        raise FoilworkError("DuckDB or pyarrow is missing (pip install duckdb pyarrow)") from error

    kinds: dict[str, Any] = {"f": sql.DOUBLE, "t": sql.VARCHAR, "i": sql.BIGINT}
    bounds = struct_type(dict.fromkeys(_BOUNDS, sql.DOUBLE))
    functions: dict[str, tuple[Callable[..., Any], str, Any]] = {
        "foilwork_convert": (_each_unit(_convert, "fttf"), "fttf", sql.DOUBLE),
        "foilwork_density": (_density, "ff", sql.DOUBLE),
        "foilwork_stock_g": (_stock_g, "fff", sql.DOUBLE),
        "foilwork_mix_two": (_mix_two, "ffff", sql.DOUBLE),
        "foilwork_dilute_volume": (_dilute_volume, "ffff", struct_type(dict.fromkeys(_VOLUMES, bounds))),
        "foilwork_strength_after": (_each_unit(_strength_after, "ftff"), "ftff", sql.DOUBLE),
        "foilwork_lift_needed": (_lift_needed, "ff", sql.DOUBLE),
        "foilwork_ciede2000": (_ciede2000, "ffffff", sql.DOUBLE),
    }
    if terms is not None:
        said = dict(terms)
        money.cost_columns([], [], [], [], [], [], [], said)

        def costs(*columns: Any) -> Any:
            return _costs(said, *columns)

        functions["foilwork_costs"] = (costs, "ifffiff", struct_type(dict.fromkeys(_COSTS, sql.BIGINT)))
    for name, (function, given, found) in functions.items():
        connection.create_function(
            name,
            _over_arrow(pyarrow, function, given),
            [kinds[kind] for kind in given],
            found,
            type=PythonUDFType.ARROW,
            null_handling=FunctionNullHandling.SPECIAL,
        )
    return list(functions)


def _over_arrow(pyarrow: Any, function: Callable[..., Any], kinds: str) -> Callable[..., Any]:
    """The function over Arrow columns; what it has to say of rows that cannot be is left out."""
    import inspect
    import warnings

    import numpy

    from foilwork._native import OutOfRangeWarning
    from foilwork.arrow import values

    def given(column: Any, kind: str) -> Any:
        if kind == "f":
            return values(column)
        if kind == "t":
            return numpy.array(column.to_pylist(), dtype=object)
        # None of the whole numbers is a NaN.
        return numpy.ma.array(numpy.asarray(column.fill_null(0)), mask=numpy.asarray(column.is_null()))

    def run(*columns: Any) -> Any:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", OutOfRangeWarning)
            return _as_arrow(pyarrow, function(*map(given, columns, kinds)))

    # DuckDB counts the parameters.
    names = [inspect.Parameter(f"a{place}", inspect.Parameter.POSITIONAL_ONLY) for place in range(len(kinds))]
    run.__signature__ = inspect.Signature(names)  # type: ignore[attr-defined]
    return run


def _as_arrow(pyarrow: Any, found: Any) -> Any:
    """An array, or fields by their names; a row that is missing in one of them is missing in all."""
    import numpy

    if not isinstance(found, dict):
        whole = isinstance(found, numpy.ma.MaskedArray)
        return pyarrow.array(found.data, mask=found.mask) if whole else pyarrow.array(found, from_pandas=True)
    fields = [_as_arrow(pyarrow, field) for field in found.values()]
    return pyarrow.StructArray.from_arrays(fields, list(found), mask=fields[0].is_null())


def _each_unit(function: Callable[..., Any], kinds: str) -> Callable[..., Any]:
    """A function whose texts hold for all rows, over columns of texts: asked once for all rows that share them."""
    texts = [place for place, kind in enumerate(kinds) if kind == "t"]

    def run(*columns: Any) -> Any:
        import numpy

        rows = len(columns[0])
        found = numpy.full(rows, numpy.nan)
        for said in set(zip(*(columns[place] for place in texts), strict=True)):
            if None in said:
                continue
            chosen = numpy.ones(rows, dtype=bool)
            for word, place in zip(said, texts, strict=True):
                chosen &= columns[place] == word
            words = iter(said)
            found[chosen] = function(
                *(next(words) if kind == "t" else columns[place][chosen] for place, kind in enumerate(kinds))
            )
        return found

    return run


def _convert(value: Any, from_unit: Any, to_unit: Any, temperature_c: Any) -> Any:
    return peroxide.convert(value, from_unit, to_unit, temperature_c=temperature_c, errors="nan")


def _density(strength_ww_percent: Any, temperature_c: Any) -> Any:
    return peroxide.density(strength_ww_percent, temperature_c, errors="nan")


def _stock_g(stock_ww_percent: Any, target_ww_percent: Any, total_g: Any) -> Any:
    return peroxide.dilute(stock_ww_percent, target_ww_percent, total_g, errors="nan").stock_g


def _mix_two(first_ww_percent: Any, first_g: Any, second_ww_percent: Any, second_g: Any) -> Any:
    return peroxide.mix_two(first_ww_percent, first_g, second_ww_percent, second_g, errors="nan")


_VOLUMES, _BOUNDS = ("stock_ml", "water_ml", "contraction_ml"), ("low", "best", "high")


def _dilute_volume(stock_ww_percent: Any, target_ww_percent: Any, total_ml: Any, temperature_c: Any) -> Any:
    made = peroxide.dilute_volume(
        stock_ww_percent, target_ww_percent, total_ml, temperature_c=temperature_c, errors="nan"
    )
    return {name: {bound: getattr(getattr(made, name), bound) for bound in _BOUNDS} for name in _VOLUMES}


_COSTS = ("product_minor", "labour_minor", "overhead_minor", "cost_minor")


def _costs(terms: dict[str, Any], *columns: Any) -> Any:
    """A row that lacks a whole number cannot be costed, as one that lacks another number is none."""
    import numpy

    missing = numpy.ma.getmaskarray(columns[0]) | numpy.ma.getmaskarray(columns[4])
    price, pack, used, wasted, extra, hands_on, chair = map(numpy.ma.getdata, columns)
    found = money.cost_columns(price, pack, used, wasted, extra, hands_on, chair, terms, errors="apart")
    missing[[row for row, _ in found.refused]] = True
    return {name: numpy.ma.array(getattr(found, name), mask=missing) for name in _COSTS}


def _strength_after(fresh: Any, unit: Any, rate_per_day: Any, days: Any) -> Any:
    return peroxide.strength_after(fresh, unit, rate_per_day, days, errors="nan")


def _lift_needed(from_level: Any, target_level: Any) -> Any:
    return colour.lift_needed(from_level, target_level, errors="nan")


def _ciede2000(*coordinates: Any) -> Any:
    import numpy

    first, second = numpy.stack(coordinates[:3], axis=-1), numpy.stack(coordinates[3:], axis=-1)
    return colour.ciede2000(first, second, errors="nan")
