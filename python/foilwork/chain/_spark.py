"""The same inside Spark: nothing but ``mapInArrow`` of the worker's own batches."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from importlib import import_module
from typing import Any

from foilwork._native import FoilworkError
from foilwork.chain import _totals
from foilwork.chain._record import KEYS, columns_there
from foilwork.chain._totals import Grouping
from foilwork.chain._work import FOUND, worked_batches

_TYPES = {"text": "string", "number": "double", "whole": "bigint", "day": "date"}


def spark_rows(records: Any, terms: Mapping[str, Any]) -> Any:
    """What is found of each bowl of a Spark data frame, by ``mapInArrow``.

    Write it once before summing it up several ways: Spark works a frame out anew for each use. Its workers need
    foilwork, NumPy and pyarrow. A task that fails is tried again by Spark; its rows are those of the last try.

    Args:
        records: a ``pyspark.sql.DataFrame`` with the columns of ``RECORD``; read older files together with newer ones
            by ``spark.read.option("mergeSchema", "true")``.
        terms: the terms of the chain, as in ``foilwork.business.price_services``.

    Returns:
        A data frame: salon, colourist and product, then the columns of ``FOUND``.

    Raises:
        FoilworkError: a column is missing.
    """
    wanted = columns_there(records.columns, "the data frame")
    columns = ", ".join([*(f"{name} string" for name in KEYS), *(f"{name} {_TYPES[kind]}" for name, kind in FOUND)])
    return records.select(*wanted).mapInArrow(partial(worked_batches, terms=dict(terms)), columns)


def spark_totals(rows: Any, grouping: Grouping) -> Any:
    """Totals of what ``spark_rows`` gives, by some of its keys; bad rows are left out.

    Args:
        rows: the data frame.
        grouping: keys, of salon, colourist, product and week; none for everything together.

    Returns:
        A data frame with a line for each.

    Raises:
        FoilworkError: a key that it does not go by; pyspark is missing.
    """
    try:
        sql: Any = import_module("pyspark.sql.functions")
    except ImportError as error:
        raise FoilworkError("pyspark is missing (pip install pyspark, and a Java runtime)") from error
    keys = _totals.groupings([grouping])[-1]
    on_hair = "on_hair_ww_percent"
    return (
        rows.where("refused IS NULL")
        .groupBy(*keys)
        .agg(
            sql.count("*").alias("bowls"),
            *(sql.sum(name).alias(name) for name in _totals.SUMS),
            sql.min(on_hair).alias("on_hair_weakest_ww_percent"),
            sql.max(on_hair).alias("on_hair_strongest_ww_percent"),
        )
    )
