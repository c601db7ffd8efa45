"""A whole history, file by file: what is done stays done, what failed can be tried again, and no row counts twice."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any, Literal, NamedTuple

from foilwork._native import FoilworkError
from foilwork.chain import _totals
from foilwork.chain._engines import Part, engine_of, parquet
from foilwork.chain._store import Store, files_of, fingerprint
from foilwork.chain._work import check_terms

BY = ("salon", "product", "colourist", "week")


class Progress(NamedTuple):
    """How far a run is."""

    rows: int
    all_rows: int
    files: int
    all_files: int


@dataclass(frozen=True)
class Report:
    """What became of a history."""

    files: int
    """How many files there are."""
    done: int
    """How many are worked out, those of earlier runs with them."""
    kept: int
    """How many of those an earlier run had done."""
    rows: int
    """Rows in the files that are done."""
    refused: int
    """Bad rows among them: kept apart, in no total."""
    failed: dict[str, str] = field(default_factory=dict)
    """Files that could not be worked out, with the last reason; in no total."""
    stopped: bool = False
    """Whether it was asked to stop before it was through."""
    totals: Any = None
    """Everything together and each grouping, as a ``pyarrow.Table``; ``by`` says what a line is about."""

    @property
    def complete(self) -> bool:
        """Whether every file is in the totals."""
        return self.done == self.files


def run(
    records: str | os.PathLike[str],
    to: str | os.PathLike[str],
    terms: Mapping[str, Any],
    *,
    by: Sequence[str | Sequence[str]] = BY,
    engine: Literal["arrow", "duckdb", "polars"] = "arrow",
    attempts: int = 2,
    progress: Callable[[Progress], object] | None = None,
    stop: Callable[[], bool] | None = None,
) -> Report:
    """Use, waste, strength, limits, cost and margin of every bowl of a history, summed up.

    Each Parquet file is worked out alone, in batches, and its totals are written in one piece when it is through. So
    a file that failed is tried again from its beginning without counting a row twice; a run that was stopped, or
    ended with the machine, goes on where it was when it is called again. Memory goes by the size of a file and by how
    many lines of totals there are, not by how many files.

    Args:
        records: a folder of Parquet files (in folders of it too) with the columns of ``RECORD``, or one such file.
        to: a folder for the results: ``parts`` and ``apart`` with a file for each file of records, and
            ``totals.parquet``.
        terms: the terms of the chain, as in ``foilwork.business.price_services``.
        by: what to sum up by: of salon, colourist, product and week, alone or several together.
        engine: ``"arrow"``, ``"duckdb"`` or ``"polars"``: the same kernels, called from each.
        attempts: how often a file is tried before it counts as failed.
        progress: called after each batch.
        stop: asked between batches; True ends the run, and what is done is kept.

    Returns:
        What became of it, with the totals of all files that are done.

    Raises:
        FoilworkError: no such files; a folder with results of other terms, groupings or of another version; pyarrow
            or the engine is missing; terms that are wrong.

    Examples:
        >>> import datetime, tempfile, pyarrow, pyarrow.parquet
        >>> from foilwork.chain import run
        >>> bowl = {
        ...     "salon": "JT-0001", "colourist": "JT-0001-2", "day": datetime.date(2024, 3, 6), "product": "Tide gloss",
        ...     "jurisdiction": "EU", "use": "oxidative-colour", "developer_label": 6.0, "developer_unit": "% w/w",
        ...     "developer_parts": 2.0, "product_g": 20.0, "developer_g": 40.0, "left_g": 6.0,
        ...     "product_pack_price_minor": 1490, "product_pack_g": 250.0, "developer_pack_price_minor": 790,
        ...     "developer_pack_g": 1000.0, "hands_on_min": 30.0, "chair_min": 60.0, "net_minor": 6500,
        ...     "currency": "EUR",
        ... }
        >>> terms = {
        ...     "currency": "EUR", "wage_per_h": "15.00", "on_costs_percent": 20, "paid_h": 40, "productive_h": 30,
        ...     "overhead": "60000", "chairs": 4, "productive_h_per_chair": 1500, "margin_percent": 25,
        ... }
        >>> folder = tempfile.mkdtemp()
        >>> pyarrow.parquet.write_table(pyarrow.Table.from_pylist([bowl]), f"{folder}/bowls.parquet")
        >>> found = run(f"{folder}/bowls.parquet", f"{folder}/totals", terms)
        >>> everything = found.totals.to_pylist()[0]
        >>> everything["used_mg"], everything["on_hair_strongest_ww_percent"], everything["consumables_unknown"]
        (54000, 4.0, 1)
        >>> everything["cost_minor"], everything["margin_minor"]
        (2351, 4149)
    """
    groups = _totals.groupings(by)
    work = engine_of(engine)
    # Wrong terms are told at once, not once for each file.
    check_terms(terms)
    files = files_of(Path(records), Path(to))
    store = Store(Path(to), terms, groups)
    all_rows = sum(_rows_of(path) for path in files.values())
    rows, refused, kept = 0, 0, 0
    done: list[str] = []
    failed: dict[str, str] = {}
    stopped = False
    for name, path in files.items():
        watch = _Watch(progress, stop, Progress(rows, all_rows, len(done), len(files)))
        known = store.known(name, path)
        kept += known is not None
        if known is None:
            try:
                of, part = _tried(partial(_read, work, path, terms, groups, watch), watch, attempts)
                known = store.keep(name, path, of, part)
            except _Stop:
                stopped = True
                break
            except _Failed as failure:
                failed[name] = str(failure)
                continue
        done.append(name)
        rows, refused = rows + known.rows, refused + known.refused
        if progress is not None:
            progress(Progress(rows, all_rows, len(done), len(files)))
    return Report(len(files), len(done), kept, rows, refused, failed, stopped, store.totals(done))


class _Stop(Exception):
    """Between batches, when it was asked for."""


class _Failed(Exception):
    """A file that could not be worked out."""


class _Watch:
    """What an engine calls between batches; one for each file."""

    def __init__(
        self, progress: Callable[[Progress], object] | None, stop: Callable[[], bool] | None, at: Progress
    ) -> None:
        self._progress, self._stop, self._at = progress, stop, at
        self.rows = 0
        self.stopped = False

    def __call__(self, rows: int) -> None:
        if self._stop is not None and self._stop():
            self.stopped = True
            raise _Stop
        self.rows += rows
        if self._progress is not None:
            self._progress(self._at._replace(rows=self._at.rows + self.rows))


def _read(work: Callable[..., Part], path: str, *arguments: object) -> tuple[list[int], Part]:
    """The fingerprint before the work: a file that is replaced meanwhile is worked anew by the next run."""
    return fingerprint(path), work(path, *arguments)


def _tried(work: Callable[[], tuple[list[int], Part]], watch: _Watch, attempts: int) -> tuple[list[int], Part]:
    """One file, again where it failed."""
    watch(0)
    for attempt in range(max(1, attempts)):
        watch.rows = 0
        try:
            return work()
        except Exception as error:
            # An engine wraps what its function raises.
            if watch.stopped:
                raise _Stop from error
            if attempt + 1 >= attempts or isinstance(error, FoilworkError):
                raise _Failed(f"{type(error).__name__}: {error}".strip()) from error
    raise _Failed("not tried")


def _rows_of(path: str) -> int:
    """Rows of a file by its footer; of one that cannot be read, none."""
    try:
        return int(parquet().read_metadata(path).num_rows)
    except Exception:
        return 0
