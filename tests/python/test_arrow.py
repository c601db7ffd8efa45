"""Arrow in and out, as pyarrow, pandas, polars and DuckDB hand it over; foilwork inside polars and DuckDB."""

import doctest
import importlib
import math
import subprocess
import sys
from collections.abc import Callable
from typing import Any

import duckdb
import nanoarrow
import numpy as np
import pandas as pd
import polars as pl
import pyarrow as pa
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foilwork import FoilworkError, OutOfRangeWarning
from foilwork.arrow import add_columns, array, col, values
from foilwork.engines import polars_expression, register_duckdb
from foilwork.money import Money, labour_cost, overhead_cost, supply_cost
from foilwork.peroxide import convert, density, density_interval, dilute, dilute_volume, mix_two

NUMBERS = [
    pa.float64(), pa.float32(), pa.float16(), pa.int8(), pa.int16(), pa.int32(), pa.int64(), pa.uint8(), pa.uint16(),
    pa.uint32(), pa.uint64(),
]  # fmt: skip


@pytest.mark.parametrize("module", ["foilwork.arrow", "foilwork.engines"])
def test_examples_run(module: str) -> None:
    tried = doctest.testmod(importlib.import_module(module))
    assert tried.attempted > 0 and tried.failed == 0


@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_a_column_is_what_pyarrow_says_it_is(data: st.DataObject) -> None:
    kind = data.draw(st.sampled_from(NUMBERS))
    given_values = data.draw(st.lists(st.one_of(st.none(), st.integers(0, 100)), max_size=40))
    cut = data.draw(st.integers(0, len(given_values)))
    whole = pa.array(given_values, kind)
    start = data.draw(st.integers(0, len(given_values)))
    column = data.draw(st.sampled_from([whole[start:], pa.chunked_array([whole[:cut], whole[cut:]], kind)[start:]]))
    want = [math.nan if value is None else float(value) for value in column.to_pylist()]
    found = values(column)
    assert found.dtype == np.float64
    np.testing.assert_array_equal(found, want)


def test_doubles_are_not_copied() -> None:
    own = np.array([3.0, 6.0, 12.0])
    assert np.shares_memory(values(pa.array(own)), own)
    assert np.shares_memory(pa.array(array(own)).to_numpy(), own)


COLUMNS: dict[str, Callable[[list[float | None]], Any]] = {
    "pyarrow, array": pa.array,
    "pyarrow, chunks": lambda v: pa.chunked_array([v[:1], v[1:]]),
    "polars": pl.Series,
    "pandas": lambda v: pd.Series(v, dtype="float64"),
    "pandas with its own null": lambda v: pd.Series(v, dtype="Float64"),
    "pandas of whole numbers": lambda v: pd.Series(v, dtype="Int64"),
    "pandas over Arrow": lambda v: pd.Series(v, dtype=pd.ArrowDtype(pa.float64())),
    "nanoarrow": lambda v: nanoarrow.Array(v, nanoarrow.float64()),
    "the capsule alone": lambda v: OnlyCapsule(pa.array(v)),
}


class OnlyCapsule:
    """A column that knows no NumPy."""

    def __init__(self, column: Any) -> None:
        self._column = column

    def __arrow_c_array__(self, requested_schema: object = None) -> Any:
        return self._column.__arrow_c_array__(requested_schema)


@pytest.mark.parametrize("make", COLUMNS.values(), ids=COLUMNS)
def test_functions_take_columns_as_they_come(make: Callable[[list[float | None]], Any]) -> None:
    column = make([3.0, None, 6.0])
    want = [15.0, math.nan, 30.0]
    assert np.array_equal(dilute(12, column, 60).stock_g, want, equal_nan=True)
    found = density(column)
    assert np.array_equal(found, [density(3.0), math.nan, density(6.0)], equal_nan=True)


def test_results_go_to_every_library() -> None:
    found = array(np.array([15.0, math.nan, 30.0]))
    want = [15.0, None, 30.0]
    assert pa.array(found).to_pylist() == want
    assert pl.Series(found).to_list() == want
    frame = duckdb.from_arrow(pa.table({"stock_g": pa.array(found)}))
    assert frame.aggregate("count(*), count(stock_g), sum(stock_g)").fetchall() == [(3, 2, 45.0)]
    with pytest.raises(FoilworkError, match="2 dimensions"):
        array(np.ones((2, 2)))


def test_what_is_no_column_of_numbers_is_refused() -> None:
    for bad in (pa.array(["6"]), pa.array([True]), pa.array([1]).dictionary_encode(), pa.array([[1.0]])):
        with pytest.raises(TypeError, match="numbers"):
            values(bad)


TABLE = pa.table({"bottle": ["weak", "strong", None, "none"], "target_ww_percent": [3.0, 6.0, 9.0, None]})
STOCK_G, DILUENT_G = [15.0, 30.0, 45.0, None], [45.0, 30.0, 15.0, None]


def duckdb_relation() -> Any:
    return duckdb.connect().from_arrow(TABLE)


TABLES: dict[str, Callable[[], Any]] = {
    "pyarrow": lambda: TABLE,
    "pyarrow, cut and chunked": lambda: pa.concat_tables([TABLE[:1], TABLE[1:]]),
    "pyarrow, a batch": lambda: TABLE.to_batches()[0],
    "pyarrow, a reader": TABLE.to_reader,
    "polars": lambda: pl.DataFrame(TABLE),
    "DuckDB": duckdb_relation,
}


@pytest.mark.parametrize("make", TABLES.values(), ids=TABLES)
def test_tables_go_in_and_come_out(make: Callable[[], Any]) -> None:
    done: list[int] = []
    target = col("target_ww_percent")
    made = add_columns(make(), dilute, 12, target, 60, to=["stock_g", "diluent_g"], progress=done.append)
    found = pa.table(made)
    assert found.column("bottle").to_pylist() == TABLE.column("bottle").to_pylist()
    assert (found.column("stock_g").to_pylist(), found.column("diluent_g").to_pylist()) == (STOCK_G, DILUENT_G)
    assert done[-1] == 4


def test_tables_made_go_into_the_engines() -> None:
    made = add_columns(TABLE, dilute, 12, col("target_ww_percent"), 60, to=["stock_g", "diluent_g"])
    assert pl.DataFrame(made)["stock_g"].to_list() == STOCK_G
    assert duckdb.from_arrow(made).sum("stock_g").fetchall() == [(90.0,)]
    assert pd.DataFrame.from_arrow(made)["stock_g"].sum() == 90.0


def test_a_long_table_streams() -> None:
    schema = pa.schema([("t", pa.float64())])
    asked = 0

    def batches() -> Any:
        nonlocal asked
        while True:
            asked += 1
            yield pa.record_batch({"t": np.full(1000, 6.0)}, schema=schema)

    endless = pa.RecordBatchReader.from_batches(schema, batches())
    made = iter(add_columns(endless, convert, col("t"), "% w/w", "volumes", to="volumes"))
    for _ in range(3):
        assert len(next(made)) == 1000
    assert asked <= 4


def test_what_is_wrong_with_a_table_is_said() -> None:
    with pytest.raises(FoilworkError, match=r"no column 'target' \(the table has bottle, target_ww_percent"):
        list(add_columns(TABLE, density, col("target"), to="density"))
    with pytest.raises(FoilworkError, match="would have two columns 'bottle'"):
        list(add_columns(TABLE, density, col("target_ww_percent"), to="bottle"))
    with pytest.raises(FoilworkError, match="would have two columns 'stock_g'"):
        list(add_columns(TABLE, dilute, 12, col("target_ww_percent"), 60, to=["stock_g", "stock_g"]))
    with pytest.raises(FoilworkError, match="3 results and 2 names"):
        list(add_columns(TABLE, density_interval, col("target_ww_percent"), to=["low", "best"]))
    with pytest.raises(FoilworkError, match=r"results that are no columns \(VolumeDilution\): wrap the function"):
        list(add_columns(TABLE, dilute_volume, 35, col("target_ww_percent"), 60, to=["stock_ml", "water_ml"]))
    with pytest.raises(FoilworkError, match="in the batch that begins at row 0: index 1: cannot reach 6 % w/w"):
        list(add_columns(TABLE, dilute, 5, col("target_ww_percent"), 60, to=["stock_g", "diluent_g"]))


def test_polars_works_out_an_expression() -> None:
    frame = pl.DataFrame({"target": [3.0, 6.0, None, 14.0], "total": [60, 60, 60, 60]})
    weigh = polars_expression(dilute, 12, pl.col("target"), pl.col("total"), to=["stock_g", "diluent_g"], errors="nan")
    want = {"stock_g": [15.0, 30.0, None, None], "diluent_g": [45.0, 30.0, None, None]}
    with pytest.warns(OutOfRangeWarning):
        assert frame.select(weigh).unnest("stock_g").to_dict(as_series=False) == want
    volumes = polars_expression(convert, pl.col("target"), "% w/w", "volumes", to="volumes", temperature_c=pl.lit(20))
    lazy = frame.lazy().filter(pl.col("target") < 10).select(volumes)
    assert lazy.collect()["volumes"].to_list() == [convert(3.0, "% w/w", "volumes"), convert(6.0, "% w/w", "volumes")]
    with pytest.raises(Exception, match="cannot reach 14 % w/w"):
        frame.select(polars_expression(dilute, 12, pl.col("target"), 60, to=["stock_g", "diluent_g"]))
    with pytest.raises(Exception, match="2 results and 1 names"):
        frame.select(polars_expression(dilute, 15, pl.col("target"), 60, to="stock_g"))
    with pytest.raises(FoilworkError, match=r"results that are no columns \(VolumeDilution\): wrap"):
        frame.select(polars_expression(dilute_volume, 15, pl.col("target"), 60, to=["stock_ml", "water_ml"]))
    named = polars_expression(density, pl.col("target"), to=["density"])
    assert frame.select(named).unnest("density")["density"].to_list()[0] == density(3.0)
    with pytest.raises(FoilworkError, match="no argument is a polars expression"):
        polars_expression(density, 6, to="density")


def test_duckdb_calls_the_functions() -> None:
    connection = duckdb.connect()
    names = register_duckdb(connection)
    assert len(names) == 8
    query = """
        SELECT foilwork_convert(w, '% w/w', unit, 20), foilwork_density(w, 20), foilwork_stock_g(12, w, 60),
               foilwork_strength_after(w, '% w/w', 0.001, 90), foilwork_lift_needed(5, w),
               foilwork_ciede2000(w, 1, 1, w, 1, 1)
        FROM (VALUES (3.0, 'volumes'), (6.0, 'g/L'), (14.0, 'g/L'), (NULL, 'g/L'), (6.0, NULL)) AS bottles(w, unit)
    """
    rows = connection.sql(query).fetchall()
    assert rows[0][0] == convert(3.0, "% w/w", "volumes") and rows[1][0] == convert(6.0, "% w/w", "g/L")
    assert [row[1] for row in rows] == [density(3.0), density(6.0), density(14.0), None, density(6.0)]
    assert [row[2] for row in rows] == [15.0, 30.0, None, None, 30.0]
    assert rows[4][0] is None and rows[2][4] is None and rows[0][4] == -2.0 and rows[0][5] == 0.0
    # Worked by hand: at a tenth a day, e is what ten days take.
    left = connection.sql("SELECT foilwork_strength_after(1.0, 'mol/L', 0.1, 10)").fetchall()[0][0]
    assert left == pytest.approx(1 / math.e, rel=1e-15)
    assert [row[3] is None for row in rows] == [False, False, False, True, False]
    with pytest.raises(duckdb.Error, match="unknown unit"):
        connection.sql("SELECT foilwork_density(6, 20), foilwork_convert(6, '% w/w', 'cups', 20)").fetchall()
    total = connection.sql("SELECT sum(foilwork_stock_g(12, 6.0 * (range % 2), 60)) FROM range(100000)").fetchall()
    assert total == [(50_000 * 30.0,)]


def test_duckdb_mixes_and_pours_as_the_function_of_one_row() -> None:
    connection = duckdb.connect()
    register_duckdb(connection)
    # Two parts by strength and mass; a mass that is none, and one that is missing.
    parts = "(12.0, 30.0, 3.0, 60.0), (0.0, 45.5, 9.0, 70.1), (12.0, -1.0, 3.0, 60.0), (12.0, NULL, 3.0, 60.0)"
    mixed = connection.sql(f"SELECT foilwork_mix_two(a, b, c, d) FROM (VALUES {parts}) AS rows(a, b, c, d)").fetchall()
    assert mixed == [(mix_two(12.0, 30.0, 3.0, 60.0),), (mix_two(0.0, 45.5, 9.0, 70.1),), (None,), (None,)]
    # Stock, target, volume and temperature; a target above its stock, and one that is missing.
    wanted = "(35.0, 3.0, 1000.0, 20.0), (12.0, 6.0, 250.0, 31.5), (3.0, 6.0, 80.0, 20.0), (12.0, NULL, 80.0, 20.0)"
    query = f"SELECT foilwork_dilute_volume(a, b, c, d) FROM (VALUES {wanted}) AS rows(a, b, c, d)"
    made = [dilute_volume(35.0, 3.0, 1000.0), dilute_volume(12.0, 6.0, 250.0, temperature_c=31.5)]
    bounds = [{name: getattr(one, name) for name in ("stock_ml", "water_ml", "contraction_ml")} for one in made]
    want = [{name: {"low": b.low, "best": b.best, "high": b.high} for name, b in one.items()} for one in bounds]
    assert connection.sql(query).fetchall() == [(want[0],), (want[1],), (None,), (None,)]


def test_duckdb_costs_as_the_functions_of_one_row() -> None:
    terms = {
        "currency": "EUR", "wage_per_h": "17.40", "on_costs_percent": 25, "paid_h": 38, "productive_h": 24,
        "overhead": "48000.00", "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
    }  # fmt: skip
    connection = duckdb.connect()
    assert register_duckdb(connection, terms=terms)[-1] == "foilwork_costs"
    good = [(2640, 500.0, 40.3, 5.0, 210, 70.0, 120.0), (980, 60.0, 30.0, 0.0, 35, 15.5, 40.0)]
    rows: list[tuple[float | None, ...]] = [
        *good, (980, 60.0, -1.0, 0.0, 35, 15.0, 40.0), (None, 60.0, 30.0, 0.0, 35, 15.0, 40.0),
        (980, 60.0, 30.0, 0.0, None, 15.0, 40.0), (980, 60.0, 30.0, 0.0, 35, None, 40.0),
    ]  # fmt: skip
    names = "pack_price_minor, pack_g, used_g, wasted_g, consumables_minor, hands_on_min, chair_min"
    table = {name: [row[at] for row in rows] for at, name in enumerate(names.split(", "))}
    connection.from_arrow(pa.table(table)).create("rows")
    found = [row[0] for row in connection.sql(f"SELECT foilwork_costs({names}) FROM rows").fetchall()]
    assert [cost is None for cost in found] == [False, False, True, True, True, True]
    eur, wage, overhead = Money.from_minor, Money("17.40", "EUR"), Money("48000.00", "EUR")
    for cost, (price, pack, used, wasted, extra, hands_on, chair) in zip(found[:2], good, strict=True):
        product = supply_cost(eur(price, "EUR"), pack, used + wasted, unit="g").minor
        labour, rent = labour_cost(hands_on, wage, 25, 38, 24).minor, overhead_cost(chair, overhead, 4, 1200).minor
        parts = {"product_minor": product, "labour_minor": labour, "overhead_minor": rent}
        assert cost == parts | {"cost_minor": product + labour + rent + extra}
    with pytest.raises(FoilworkError, match="wage_per_h"):
        register_duckdb(duckdb.connect(), terms=terms | {"wage_per_h": "-1"})


def test_nothing_of_this_loads_before_it_is_asked_for() -> None:
    program = (
        "import sys, foilwork, foilwork.arrow, foilwork.engines\n"
        "print([name for name in ('numpy', 'nanoarrow', 'pyarrow', 'polars', 'duckdb') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
