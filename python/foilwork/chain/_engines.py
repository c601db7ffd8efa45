"""One file of records worked out by an engine: its totals, and the places of its bad rows with the reasons."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any, NamedTuple

from foilwork._native import FoilworkError
from foilwork.chain import _totals
from foilwork.chain._record import KEYS, RECORD, arrow, columns_there
from foilwork.chain._totals import Grouping
from foilwork.chain._work import FOUND, work_out

# Rows in a batch: enough for the kernels, little for the memory.
BATCH = 1 << 16

# Called with the number of rows whenever some have been worked out; ends the file by an exception.
Tick = Callable[[int], None]


class Part(NamedTuple):
    """What one file comes to."""

    rows: int
    totals: Any
    # Place of each bad row in the file, and the reason.
    refused: list[tuple[int, str]]


def engine_of(name: str) -> Callable[[str, Mapping[str, Any], list[Grouping], Tick], Part]:
    """The function that works a file out."""
    engines = {"arrow": by_arrow, "duckdb": by_duckdb, "polars": by_polars}
    if name not in engines:
        raise FoilworkError(f"unknown engine {name!r} (known: {', '.join(engines)})")
    return engines[name]


def parquet() -> Any:
    """The reader of Parquet files."""
    arrow()
    return import_module("pyarrow.parquet")


def by_arrow(file: str, terms: Mapping[str, Any], by: list[Grouping], tick: Tick) -> Part:
    """Batch by batch with pyarrow alone."""
    pyarrow = arrow()
    partial: list[Any] = []
    refused: list[tuple[int, str]] = []
    done = 0
    with parquet().ParquetFile(file) as source:
        names = columns_there(source.schema_arrow.names, file)
        for batch in source.iter_batches(BATCH, columns=names):
            found = work_out(batch, terms)
            refused += _bad_rows(found, done)
            done += len(batch)
            keys = [batch.column(name).cast(pyarrow.string()) for name in KEYS]
            worked = pyarrow.table([*keys, *found.columns], names=[*KEYS, *found.schema.names])
            partial.append(_totals.of_rows(worked, by))
            if len(partial) == 8:
                partial = [_totals.merged(partial)]
            tick(len(batch))
    return Part(done, _totals.merged(partial), refused)


def _bad_rows(found: Any, first: int) -> list[tuple[int, str]]:
    reasons = found.column("refused")
    if reasons.null_count == len(reasons):
        return []
    return [(first + row, reason) for row, reason in enumerate(reasons.to_pylist()) if reason is not None]


def by_duckdb(file: str, terms: Mapping[str, Any], by: list[Grouping], tick: Tick) -> Part:
    """The kernels as a scalar function of DuckDB, all groupings in one pass of its own GROUPING SETS."""
    try:
        import duckdb
        import duckdb.sqltypes as sql
        from duckdb.func import FunctionNullHandling, PythonUDFType
    except ImportError as error:
        raise FoilworkError("DuckDB is missing (pip install duckdb)") from error
    pyarrow = arrow()
    names = columns_there(parquet().read_schema(file).names, file)
    kinds: dict[str, Any] = {"text": sql.VARCHAR, "number": sql.DOUBLE, "whole": sql.BIGINT, "day": sql.DATE}

    def bowl(*columns: Any) -> Any:
        rows = pyarrow.table(list(columns), names=names)
        found = work_out(rows, terms)
        tick(len(rows))
        return pyarrow.StructArray.from_arrays(found.columns, names=found.schema.names)

    with duckdb.connect() as connection:
        # Of DuckDB, on the standard output.
        connection.execute("SET enable_progress_bar = false")
        connection.create_function(
            "foilwork_bowl",
            _counted(bowl, len(names)),
            [kinds[field.kind] for field in RECORD if field.name in names],
            duckdb.struct_type({name: kinds[kind] for name, kind in FOUND}),
            type=PythonUDFType.ARROW,
            null_handling=FunctionNullHandling.SPECIAL,
        )
        sets = ", ".join(f"({', '.join(grouping)})" for grouping in by)
        used = [name for name in _totals.KEYS if any(name in grouping for grouping in by)]
        which = f"GROUPING({', '.join(used)})" if used else "0"
        labels = " ".join(f"WHEN {_set_of(grouping, used)} THEN '{_totals.label(grouping)}'" for grouping in by)
        keys = ", ".join(name if name in used else f"NULL AS {name}" for name in _totals.KEYS)
        good = "FILTER (refused IS NULL)"
        query = f"""
            WITH found AS NOT MATERIALIZED (
                SELECT salon, colourist, product, file_row_number AS row, foilwork_bowl({", ".join(names)}) AS bowl
                FROM read_parquet(?, file_row_number = true)
            ), worked AS (SELECT salon, colourist, product, row, unnest(bowl) FROM found)
            SELECT
                CASE {which} {labels} END AS by, {keys}, count(*) {good} AS bowls,
                {", ".join(f"sum({name})::BIGINT AS {name}" for name in _totals.SUMS)},
                min(on_hair_ww_percent) AS on_hair_weakest_ww_percent,
                max(on_hair_ww_percent) AS on_hair_strongest_ww_percent,
                count(*) AS rows,
                CASE WHEN {which} = {_set_of((), used)}
                    THEN list({{'row': row, 'reason': refused}} ORDER BY row) FILTER (refused IS NOT NULL) END AS bad
            FROM worked GROUP BY GROUPING SETS ({sets})
        """
        lines = connection.sql(query, params=[file]).to_arrow_table()
    everything = lines.filter(pyarrow.compute.equal(lines.column("by"), "all")).to_pylist()
    rows = everything[0]["rows"] if everything else 0
    bad = (everything[0]["bad"] or []) if everything else []
    totals = lines.select(_totals.schema().names).cast(_totals.schema())
    totals = totals.filter(pyarrow.compute.greater(totals.column("bowls"), 0))
    return Part(rows, _totals.merged([totals]), [(line["row"], line["reason"]) for line in bad])


def _set_of(grouping: Grouping, used: list[str]) -> int:
    """What GROUPING says of a set: a bit for each key that is not in it."""
    return sum(1 << (len(used) - 1 - at) for at, name in enumerate(used) if name not in grouping)


def _counted(function: Callable[..., Any], count: int) -> Callable[..., Any]:
    """The function with as many parameters as DuckDB asks for."""
    import inspect

    def run(*columns: Any) -> Any:
        return function(*columns)

    names = [inspect.Parameter(f"a{place}", inspect.Parameter.POSITIONAL_ONLY) for place in range(count)]
    run.__signature__ = inspect.Signature(names)  # type: ignore[attr-defined]
    return run


def by_polars(file: str, terms: Mapping[str, Any], by: list[Grouping], tick: Tick) -> Part:
    """The kernels as an expression of polars, in its streaming engine."""
    try:
        import polars
    except ImportError as error:
        raise FoilworkError("polars is missing (pip install polars)") from error
    pyarrow = arrow()
    names = columns_there(parquet().read_schema(file).names, file)
    types: dict[str, Any] = {
        "text": polars.String(),
        "number": polars.Float64(),
        "whole": polars.Int64(),
        "day": polars.Date(),
    }

    def bowl(rows: polars.Series) -> polars.Series:
        found = work_out(rows.struct.unnest().to_arrow(), terms)
        tick(len(rows))
        made: Any = polars.from_arrow(pyarrow.table(found))
        return made.to_struct("bowl")  # type: ignore[no-any-return]

    struct = polars.Struct({name: types[kind] for name, kind in FOUND})
    found = polars.struct(names).map_batches(bowl, return_dtype=struct, is_elementwise=True).alias("bowl")
    worked = polars.scan_parquet(file, row_index_name="row").select(*KEYS, "row", found).unnest("bowl")
    finest = worked.group_by(_totals.KEYS, maintain_order=False).agg(
        polars.col("refused").is_null().sum().cast(polars.Int64).alias("bowls"),
        polars.len().alias("rows"),
        *(polars.col(name).sum() for name in _totals.SUMS),
        polars.col("on_hair_ww_percent").min().alias("on_hair_weakest_ww_percent"),
        polars.col("on_hair_ww_percent").max().alias("on_hair_strongest_ww_percent"),
        polars.struct("row", "refused").filter(polars.col("refused").is_not_null()).alias("bad"),
    )
    lines = finest.collect(engine="streaming")
    bad = lines.select("bad").explode("bad").drop_nulls().unnest("bad").sort("row") if len(lines) else None
    fine = lines.filter(polars.col("bowls") > 0).drop("rows", "bad").with_columns(polars.lit("finest").alias("by"))
    table = fine.select(_totals.schema().names).to_arrow().cast(_totals.schema())
    totals = [_totals.regrouped(table, grouping) for grouping in by]
    refused = list(bad.iter_rows()) if bad is not None else []
    rows = int(lines["rows"].sum()) if len(lines) else 0
    return Part(rows, _totals.merged(totals), refused)
