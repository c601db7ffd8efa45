"""The history of a chain inside Spark in local mode: `make test-engines` runs it, in an environment of its own."""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import chain_of_salons
import pytest
from chain_of_salons import TERMS

from foilwork import FoilworkError
from foilwork.chain import run, spark_rows, spark_totals


@pytest.fixture(scope="module")
def spark() -> Iterator[Any]:
    from pyspark.sql import SparkSession

    patch = pytest.MonkeyPatch()
    patch.setenv("PYSPARK_PYTHON", sys.executable)
    # Two at a time, and three tries for each task, as on a cluster.
    made = SparkSession.builder.master("local[2,3]").config("spark.ui.enabled", "false")
    session = made.config("spark.driver.host", "localhost").config("spark.sql.session.timeZone", "UTC").getOrCreate()
    yield session
    session.stop()
    patch.undo()


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("chain") / "records"
    chain_of_salons.generate(folder, 100_000, salons=40)
    return folder


def test_spark_comes_to_the_same_totals(spark: Any, records: Path, tmp_path: Path) -> None:
    report = run(records, tmp_path / "to", TERMS)
    # Older files lack a column that newer ones have.
    frame = spark.read.option("mergeSchema", "true").parquet(str(records))
    spark_rows(frame, TERMS).write.parquet(str(tmp_path / "found"))
    found = spark.read.parquet(str(tmp_path / "found"))
    assert found.count() == 100_000
    assert found.where("refused IS NOT NULL").count() == report.refused > 0
    want = report.totals.to_pylist()
    for grouping in ((), ("salon",), ("product",), ("colourist",), ("week",)):
        totals = spark_totals(found, grouping)
        lines = [line.asDict() for line in (totals.orderBy(*grouping) if grouping else totals).collect()]
        by = "+".join(grouping) or "all"
        asked = [{name: line[name] for name in lines[0]} for line in want if line["by"] == by]
        assert lines == asked


def test_a_task_that_fails_is_tried_again_and_counts_once(spark: Any, records: Path, tmp_path: Path) -> None:
    """A worker that ends once in the middle of its rows: Spark begins that part again."""
    from foilwork.chain import worked_batches

    marker = str(tmp_path / "failed-once")
    files = sorted(str(path) for path in records.rglob("*.parquet"))[4:6]
    frame = spark.read.parquet(*files)
    schema = spark_rows(frame, TERMS).schema

    def failing_once(batches: Iterator[Any]) -> Iterator[Any]:
        from pathlib import Path

        for number, batch in enumerate(worked_batches(batches, TERMS)):
            if number == 1 and not Path(marker).exists():
                Path(marker).touch()
                raise OSError("the worker is gone")
            yield batch

    retried = spark.newSession().read.parquet(*files).mapInArrow(failing_once, schema)
    retried.write.parquet(str(tmp_path / "found"))
    assert Path(marker).exists()
    again = spark_totals(spark.read.parquet(str(tmp_path / "found")), ("week",)).orderBy("week").collect()
    assert again == spark_totals(spark_rows(frame, TERMS), ("week",)).orderBy("week").collect()


def test_what_is_missing_is_said(spark: Any, records: Path) -> None:
    with pytest.raises(FoilworkError, match="no column 'left_g'"):
        spark_rows(spark.read.parquet(str(records)).drop("left_g"), TERMS)
    with pytest.raises(FoilworkError, match="no totals by 'guest'"):
        spark_totals(spark.range(1), ("guest",))
