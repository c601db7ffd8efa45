"""Parquet and Arrow files through ``fill_table`` and ``foilwork fill``: every row is done, or kept apart with its
reason, or nothing is written."""

import doctest
import resource
import subprocess
from pathlib import Path
from typing import Any

import duckdb
import pyarrow as pa
import pytest
from pyarrow import ipc, parquet

import foilwork.tables
from foilwork import FoilworkError
from foilwork.arrow import col
from foilwork.peroxide import convert, density_interval, dilute, dilute_volume
from foilwork.tables import Filled, fill_table

# With texts, days, lists and a dictionary beside the numbers: what is not asked for goes through as it is.
TABLE = pa.table(
    {
        "bottle": pa.array(["a, b", "no label", "weak", None, "last"]).dictionary_encode(),
        "stock": pa.array([12.0, None, 3.0, 9.0, 9.0]),
        "target": pa.array([3, 3, 6, 6, 6], pa.int16()),
        "tags": pa.array([["x"], [], None, ["y", "z"], ["w"]]),
    }
).replace_schema_metadata({b"salon": b"Juniper & Tide"})


def write(path: Path, table: pa.Table, rows: int | None = None) -> Path:
    """The table in the format that its ending says; ``.stream`` is an Arrow stream."""
    if path.suffix == ".parquet":
        parquet.write_table(table, path, row_group_size=rows)
    else:
        made = ipc.new_stream if path.suffix == ".stream" else ipc.new_file
        with made(path, table.schema) as writer:
            writer.write_table(table, max_chunksize=rows)
    return path


def read(path: Path) -> pa.Table:
    return parquet.read_table(path) if path.suffix == ".parquet" else ipc.open_file(path).read_all()


def test_examples_run() -> None:
    tried = doctest.testmod(foilwork.tables)
    assert tried.attempted > 0 and tried.failed == 0


@pytest.mark.parametrize("given", [".parquet", ".arrow", ".stream"])
@pytest.mark.parametrize("ending", [".parquet", ".arrow"])
def test_every_row_is_done_or_kept_apart(tmp_path: Path, given: str, ending: str) -> None:
    table = write(tmp_path / f"bottles{given}", TABLE, rows=2)
    output, refused = tmp_path / f"weighed{ending}", tmp_path / f"apart{ending}"
    seen: list[int] = []
    filled = fill_table(
        table, dilute, col("stock"), col("target"), 60, to=["stock_g", "diluent_g"], output=output, refused=refused,
        progress=seen.append,
    )  # fmt: skip
    reason = "cannot reach 6 % w/w: the strongest stock is 3 % w/w, so anything from 0 % w/w to 3 % w/w is reachable"
    assert filled == Filled(rows=4, missing=1, refused=1, first=[(2, reason)])
    assert seen[-1] == 5
    found = read(output)
    # By hand: 60 x 3 / 12, 60 x 6 / 9.
    assert found.column("stock_g").to_pylist() == [15.0, None, 40.0, 40.0]
    assert found.column("diluent_g").to_pylist() == [45.0, None, 20.0, 20.0]
    assert found.select(TABLE.column_names).to_pylist() == TABLE.take([0, 1, 3, 4]).to_pylist()
    assert found.schema.metadata[b"salon"] == b"Juniper & Tide"
    assert found.schema.names == [*TABLE.column_names, "stock_g", "diluent_g"]
    assert [field.type for field in found.schema][: TABLE.num_columns] == TABLE.schema.types
    apart = read(refused)
    assert apart.schema.names == ["row", "reason", *TABLE.column_names]
    assert apart.to_pylist() == [{"row": 2, "reason": reason, **TABLE.take([2]).to_pylist()[0]}]


def test_a_long_table_is_what_the_function_and_plain_sql_say(tmp_path: Path) -> None:
    rows = 300_000
    connection = duckdb.connect()
    connection.execute(
        f"COPY (SELECT i, i % 80 AS ww, CASE WHEN i % 7 = 0 THEN NULL ELSE i % 50 + 0.5 END AS celsius "
        f"FROM range({rows}) t(i)) TO '{tmp_path}/long.parquet' (FORMAT parquet)"
    )
    filled = fill_table(
        tmp_path / "long.parquet", density_interval, col("ww"), temperature_c=col("celsius"),
        to=["low", "best", "high"], output=tmp_path / "done.parquet", refused=tmp_path / "apart.parquet",
    )  # fmt: skip
    # Density is known up to 70 % w/w; a row without a temperature has nothing to be refused for.
    refused, missing = connection.sql(
        f"SELECT count(*) FILTER (ww > 70 AND celsius IS NOT NULL), count(*) FILTER (celsius IS NULL) "
        f"FROM '{tmp_path}/long.parquet'"
    ).fetchall()[0]
    assert (filled.refused, filled.missing, filled.rows) == (refused, missing, rows - refused)
    together = f"SELECT i FROM '{tmp_path}/done.parquet' UNION ALL SELECT i FROM '{tmp_path}/apart.parquet'"
    assert connection.sql(f"SELECT count(*), count(DISTINCT i), sum(i) FROM ({together})").fetchall() == [
        (rows, rows, rows * (rows - 1) // 2)
    ]
    done = parquet.read_table(tmp_path / "done.parquet").slice(200_000, 50).to_pylist()
    for row in done:
        if row["celsius"] is not None:
            bounds = density_interval(float(row["ww"]), float(row["celsius"]))
            assert (row["low"], row["best"], row["high"]) == tuple(bounds)
    first = connection.sql(f"SELECT \"row\", i FROM '{tmp_path}/apart.parquet' ORDER BY 1 LIMIT 3").fetchall()
    assert all(row == i for row, i in first) and first[0][0] == filled.first[0][0]


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({}, r"^row 2: cannot reach 6 % w/w: .*\n1 row cannot be: mend it, or keep it apart"),
        ({"to": ["stock_g", "stock"]}, "the table has a column stock already: rename it"),
        ({"to": "stock_g"}, "2 results and 1 names"),
        ({"table": "none.parquet"}, "cannot read .*none.parquet: No such file"),
        ({"table": "text.parquet"}, "it is no Parquet or Arrow file"),
        ({"table": "torn.parquet"}, "cannot read .*torn.parquet: "),
        ({"table": "damaged.parquet"}, "cannot read .*damaged.parquet: "),
        ({"table": "named.parquet"}, "it is no Parquet or Arrow file"),
        ({"table": "begun.parquet"}, "it is no Parquet or Arrow file"),
        ({"table": "accented.parquet"}, "it is no Parquet or Arrow file"),
        ({"output": "weighed.csv"}, r"the ending says how it is written \(give one of .parquet, .arrow"),
        ({"output": "bottles.parquet"}, "this command reads it: name another file"),
        ({"output": "no/such/weighed.parquet"}, "there is no such folder: make it first"),
        ({"refused": "./weighed.parquet"}, "is the output: name another file"),
        ({"stock": "bottle"}, "the column 'bottle' holds dictionary.*, no numbers: cast it first"),
        ({"stock": "strength"}, "no column 'strength', or several: the table has bottle, stock, target, tags"),
    ],
)
def test_what_cannot_be_leaves_no_trace(tmp_path: Path, change: dict[str, Any], reason: str) -> None:
    write(tmp_path / "bottles.parquet", TABLE)
    (tmp_path / "text.parquet").write_text("stock,target\n12,3\n")
    (tmp_path / "torn.parquet").write_bytes((tmp_path / "bottles.parquet").read_bytes()[:400])
    # The header of its first page is none; the end of the file, which is read first, is whole.
    whole = (tmp_path / "bottles.parquet").read_bytes()
    (tmp_path / "damaged.parquet").write_bytes(whole[:4] + b"\xff" * 40 + whole[44:])
    (tmp_path / "named.parquet").write_text("PAR1,target\n12,3\n")
    (tmp_path / "begun.parquet").write_text("PAR1_g,target\n12,3\n")
    (tmp_path / "accented.parquet").write_text("PAR1\u00e9,target\n12,3\n", encoding="utf-8")
    (tmp_path / "weighed.parquet").write_text("what stood here")
    before = {path: path.read_bytes() for path in tmp_path.iterdir()}
    words = {"table": "bottles.parquet", "output": "weighed.parquet", "refused": None, "stock": "stock"} | change
    with pytest.raises(FoilworkError, match=reason):
        fill_table(
            tmp_path / words["table"], dilute, col(words["stock"]), col("target"), 60,
            to=words.get("to", ["stock_g", "diluent_g"]), output=tmp_path / words["output"],
            refused=words["refused"] and tmp_path / words["refused"],
        )  # fmt: skip
    assert {path: path.read_bytes() for path in tmp_path.iterdir()} == before


@pytest.mark.parametrize("ending", [".parquet", ".arrow"])
def test_a_disk_that_is_full_says_so(tmp_path: Path, ending: str) -> None:
    # No more than 2000 bytes can be written to a file; a thousand numbers of 8 are more.
    write(tmp_path / "t.parquet", pa.table({"ww": [0.03 * i for i in range(1000)]}))
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (2000, limits[1]))
    try:
        with pytest.raises(FoilworkError, match=f"^cannot write .*o{ending}: .*[Ff]ile too large"):
            fill_table(tmp_path / "t.parquet", dilute, 30, col("ww"), 60, to=["a", "b"], output=tmp_path / f"o{ending}")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert [path.name for path in tmp_path.iterdir()] == ["t.parquet"]


def test_results_that_are_no_columns_are_refused(tmp_path: Path) -> None:
    bottles = write(tmp_path / "bottles.parquet", TABLE)
    with pytest.raises(FoilworkError, match=r"results that are no columns \(VolumeDilution\): wrap the function"):
        fill_table(bottles, dilute_volume, 12, col("target"), 60, to="stock_ml", output=tmp_path / "o.parquet")
    assert [path.name for path in tmp_path.iterdir()] == ["bottles.parquet"]


def test_a_stop_leaves_no_trace(tmp_path: Path) -> None:
    write(tmp_path / "bottles.parquet", TABLE)

    def stop(_: int) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        fill_table(
            tmp_path / "bottles.parquet", dilute, 12, col("target"), 60, to=["a", "b"], output=tmp_path / "o.parquet",
            progress=stop,
        )  # fmt: skip
    assert [path.name for path in tmp_path.iterdir()] == ["bottles.parquet"]


def said(command: Path, folder: Path, *words: str) -> tuple[int, str, str]:
    done = subprocess.run([command, "fill", *words], cwd=folder, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, done.stderr


def test_the_command_says_the_same_of_parquet_as_of_csv(tmp_path: Path, command: Path) -> None:
    lines = ["bottle,stock,target", "a,12,3", "b,,3", "c,3,6", "d,9,6"]
    (tmp_path / "bottles.csv").write_text("\n".join(lines) + "\n")
    table = TABLE.slice(0, 0).select(["stock", "target"]).schema
    write(tmp_path / "bottles.parquet", pa.table({"stock": [12.0, None, 3.0, 9.0], "target": [3, 3, 6, 6]}, table))
    words = ["--stock", "stock", "--target", "target", "--total", "60", "--output"]
    by_csv = said(command, tmp_path, "dilute", "bottles.csv", *words, "w.csv", "--refused", "a.csv")
    by_parquet = said(command, tmp_path, "dilute", "bottles.parquet", *words, "w.parquet", "--refused", "a.arrow")
    assert by_csv[0] == by_parquet[0] == 0 and by_csv[2] == by_parquet[2] == ""
    # A row of a file of lines is a line; one of Parquet is counted from 0.
    assert by_parquet[1] == by_csv[1].replace("w.csv", "w.parquet").replace("a.csv", "a.arrow").replace(
        "line 4", "row 2"
    )
    assert "Never close the container" in by_parquet[1]
    weighed = read(tmp_path / "w.parquet").to_pylist()
    csv = [line.split(",")[1:] for line in (tmp_path / "w.csv").read_text().splitlines()[1:]]
    assert [["" if v is None else f"{v:g}" for v in row.values()] for row in weighed] == csv


def test_the_command_takes_every_rule(tmp_path: Path, command: Path) -> None:
    write(tmp_path / "t.parquet", pa.table({"ww": [6.0, 12.0], "level": [5, 6]}))
    rules = {
        "cream": ["convert", "t.parquet", "--value", "ww", "--from", "% w/w", "--to", "volumes", "--cream"],
        "active": ["convert", "t.parquet", "--value", "ww", "--from", "% w/w", "--to", "% active oxygen"],
        "blend": ["dilute", "t.parquet", "--stock", "12", "--with", "3", "--target", "ww", "--total", "90"],
        "density": ["density", "t.parquet", "--strength", "ww", "--temperature", "25"],
        "lift": ["lift", "t.parquet", "--from", "level", "--target", "9"],
    }
    rows: dict[str, list[dict[str, float]]] = {}
    for name, words in rules.items():
        status, _, complaint = said(command, tmp_path, *words, "--output", f"{name}.parquet")
        assert (status, complaint) == (0, "")
        rows[name] = read(tmp_path / f"{name}.parquet").to_pylist()
    bounds = rows["cream"][0]
    assert bounds["low_strength_volumes"] < bounds["strength_volumes"] < bounds["high_strength_volumes"]
    assert rows["active"][1]["strength_active_oxygen_percent"] == convert(12, "% w/w", "% active oxygen")
    # By hand: 90 x (6 - 3) / (12 - 3).
    assert (rows["blend"][0]["first_g"], rows["blend"][0]["second_g"]) == (30.0, 60.0)
    assert [row["lift_levels"] for row in rows["lift"]] == [4.0, 3.0]
    low, best, high = density_interval(6.0, 25.0)
    density = rows["density"][0]
    assert [density[f"{bound}density_g_per_ml"] for bound in ("low_", "", "high_")] == [low, best, high]


def test_the_command_tells_what_is_wrong(tmp_path: Path, command: Path) -> None:
    write(tmp_path / "t.parquet", pa.table({"ww": [6.0, 120.0]}))
    words = ["density", "t.parquet", "--output", "o.parquet", "--strength"]
    status, out, complaint = said(command, tmp_path, *words, "ww")
    assert (status, out) == (2, "") and complaint.startswith("error: row 1: ") and "mend it" in complaint
    status, _, complaint = said(command, tmp_path, *words, "strength")
    has = '--strength: no column "strength": the table has ww; a number holds for all rows'
    assert status == 2 and f"{has}\n" in complaint
    # Numbers are those of the compiled command line, not those of Python.
    ways_out = {"6,5": " (write the point, 6.5)", "1_0": "\n", "1e309": " (give a column, or a number for all rows)"}
    for value, way_out in ways_out.items():
        status, _, complaint = said(command, tmp_path, *words, value)
        assert status == 2 and complaint.startswith("error: --strength: ") and way_out in complaint, complaint
    status, _, complaint = said(command, tmp_path, *words, "ww", "--guard")
    assert status == 2 and complaint.startswith("error: --guard: no program calculates from the texts of such a table")
    status, _, complaint = said(command, tmp_path, *words[:-1])
    assert status == 2 and "--strength" in complaint
    assert [path.name for path in tmp_path.iterdir()] == ["t.parquet"]
