"""The history of a chain of salons: use, waste, strength, limits, cost and margin of any number of bowls.

A record is a row for each bowl (``RECORD`` says its columns), kept as Parquet files. ``run`` works through them on one
machine; ``worked_batches`` is the same for ``mapInArrow`` of Spark. Needs pyarrow and NumPy, DuckDB or polars where
they are asked for; all load with the first call. ``python -m foilwork.chain`` does it from a terminal.
"""

from foilwork.chain._record import RECORD, Field
from foilwork.chain._run import BY, Progress, Report, run
from foilwork.chain._spark import spark_rows, spark_totals
from foilwork.chain._work import FOUND, found_schema, limit_ww_percent, work_out, worked_batches

__all__ = [
    "BY",
    "FOUND",
    "RECORD",
    "Field",
    "Progress",
    "Report",
    "found_schema",
    "limit_ww_percent",
    "run",
    "spark_rows",
    "spark_totals",
    "work_out",
    "worked_batches",
]
