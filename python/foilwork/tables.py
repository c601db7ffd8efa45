"""Parquet and Arrow files of any length: a function of foilwork over every row, bad rows kept apart, nothing lost.

Needs pyarrow and NumPy (``pip install pyarrow``), which load with the first call, not before. ``foilwork fill`` does
the same from a terminal.
"""

from __future__ import annotations

import os
import warnings
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager, suppress
from importlib import import_module
from os import PathLike
from typing import TYPE_CHECKING, Any, NamedTuple

from foilwork._native import FoilworkError, OutOfRangeWarning
from foilwork._written import Pending, same_file
from foilwork.arrow import Col, one_for_each_name

if TYPE_CHECKING:
    from numpy import float64
    from numpy.typing import NDArray

__all__ = ["Filled", "fill_table"]

# Rows worked on at a time, which become a group of rows in a Parquet file.
_BATCH = 1 << 17
# How many refused rows are told.
_TOLD = 10
# How files begin.
_PARQUET, _ARROW, _STREAM = b"PAR1", b"ARROW1\0\0", b"\xff\xff\xff\xff"
_ENDINGS = {".parquet": _PARQUET, ".arrow": _ARROW, ".feather": _ARROW, ".ipc": _ARROW}


class Filled(NamedTuple):
    """What became of the rows of a table."""

    #: Rows in the output.
    rows: int
    #: Of these, those with a null for a result, since a value is missing.
    missing: int
    #: Rows kept apart.
    refused: int
    #: The first of them: the row, counted from 0, and the reason.
    first: list[tuple[int, str]]


def fill_table(
    table: str | PathLike[str],
    function: Callable[..., Any],
    *arguments: object,
    to: str | Sequence[str],
    output: str | PathLike[str],
    refused: str | PathLike[str] | None = None,
    progress: Callable[[int], None] | None = None,
    **keywords: object,
) -> Filled:
    """A Parquet or Arrow file with the results of a function as further columns, in a file of its own.

    The rows stream: a batch is in memory at a time, with its group of rows where that is larger. Each row of the table
    is in the output, with its columns as they are and the results, or among the refused rows, with its columns as they
    are and the reason. Both files appear under their names when all went well, and not before.

    Args:
        table: a Parquet file, an Arrow file or an Arrow stream; which of them it is, it says by how it begins.
        function: a function of foilwork that takes arrays and the keyword ``errors="nan"``.
        arguments: its arguments: ``foilwork.arrow.col("name")`` for a column of numbers, anything else as it is.
        to: the name of the new column, or a name for each result. Results are float64, a null where a value is missing.
        output: where the table goes: a name that ends in ``.parquet``, or in ``.arrow``, ``.feather`` or ``.ipc``.
        refused: where rows go that the function refuses, with ``row`` (counted from 0) and ``reason`` before their own
            columns; an ending as of ``output``. Without it one such row is an error, and nothing is written.
        progress: called with the number of rows done after each batch.
        keywords: further keywords of the function; a ``col`` is a column here too.

    Returns:
        What became of the rows.

    Raises:
        FoilworkError: pyarrow is missing; a table that cannot be read; a column that is not there, holds no numbers or
            would be there twice; rows that are refused and have no place; files that cannot be written.

    Examples:
        >>> import tempfile, pyarrow
        >>> from pyarrow import parquet
        >>> from foilwork.arrow import col
        >>> from foilwork.peroxide import dilute
        >>> from foilwork.tables import fill_table
        >>> folder = tempfile.mkdtemp()
        >>> bottles = pyarrow.table({"bottle": ["front", "back", "top"], "target_ww_percent": [3.0, 14.0, None]})
        >>> parquet.write_table(bottles, f"{folder}/bottles.parquet")
        >>> filled = fill_table(
        ...     f"{folder}/bottles.parquet", dilute, 12, col("target_ww_percent"), 60, to=["stock_g", "diluent_g"],
        ...     output=f"{folder}/weighed.parquet", refused=f"{folder}/apart.parquet",
        ... )
        >>> filled.rows, filled.missing, filled.refused
        (2, 1, 1)
        >>> parquet.read_table(f"{folder}/weighed.parquet").to_pylist()[0]
        {'bottle': 'front', 'target_ww_percent': 3.0, 'stock_g': 15.0, 'diluent_g': 45.0}
        >>> parquet.read_table(f"{folder}/apart.parquet").column("bottle").to_pylist()
        ['back']
    """
    names = [to] if isinstance(to, str) else list(to)
    given = [*arguments, *keywords.values()]
    filling = Filling(function, given, list(keywords), names)
    return fill(table, filling, output, refused, progress)


class Filling:
    """A function over a batch; counts what became of the rows. Of this package only."""

    def __init__(
        self, function: Callable[..., Any], given: Sequence[object], keywords: Sequence[str], to: Sequence[str]
    ) -> None:
        self._function, self._given, self._keywords, self.to = function, list(given), list(keywords), list(to)
        self.rows = self.missing = self.refused = 0
        self.first: list[tuple[int, str]] = []
        # The greatest value of each argument among the rows with results.
        self.greatest: dict[int, float] = {}

    def columns_in(self, schema: Any) -> None:
        """Refuses a table that lacks a column, or has one of the results already."""
        for value in self._given:
            if isinstance(value, Col) and schema.names.count(value.name) != 1:
                has = ", ".join(schema.names)
                raise FoilworkError(f"no column {value.name!r}, or several: the table has {has}")
        for name in self.to:
            if name in schema.names or self.to.count(name) > 1:
                raise FoilworkError(f"the table has a column {name} already: rename it")

    def over(self, batch: Any) -> tuple[list[NDArray[float64]], list[tuple[int, str]]]:
        """The results of a batch, and the places of the rows that are refused in it, with the reasons."""
        import numpy

        rows = batch.num_rows
        given = [_numbers(batch, value.name) if isinstance(value, Col) else value for value in self._given]
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", OutOfRangeWarning)
            found = one_for_each_name(self._call(given, errors="nan"), self.to)
        results = [numpy.broadcast_to(numpy.asarray(result, numpy.float64), rows) for result in found]
        empty = numpy.zeros(rows, dtype=bool)
        for result in results:
            empty |= numpy.isnan(result)
        lacking = numpy.zeros(rows, dtype=bool)
        for value in given:
            if isinstance(value, numpy.ndarray):
                lacking |= numpy.isnan(value)
        refused = [(int(place), self._why(given, int(place))) for place in numpy.flatnonzero(empty & ~lacking)]
        good = ~empty
        for place, value in enumerate(given):
            if isinstance(value, numpy.ndarray) and good.any():
                value = float(value[good].max())
            if isinstance(value, int | float) and good.any():
                self.greatest[place] = max(value, self.greatest.get(place, value))
        self.first += [(self.rows + self.refused + place, why) for place, why in refused[: _TOLD - len(self.first)]]
        self.missing += int((empty & lacking).sum())
        self.rows += rows - len(refused)
        self.refused += len(refused)
        return results, refused

    def _call(self, given: Sequence[object], **how: object) -> Any:
        positional = len(given) - len(self._keywords)
        named = dict(zip(self._keywords, given[positional:], strict=True))
        return self._function(*given[:positional], **named, **how)

    def _why(self, given: Sequence[Any], place: int) -> str:
        """What the function says of the numbers of one row."""
        import numpy

        try:
            self._call([float(value[place]) if isinstance(value, numpy.ndarray) else value for value in given])
        except FoilworkError as error:
            return str(error)
        return "no result"


def fill(
    table: str | PathLike[str],
    filling: Filling,
    output: str | PathLike[str],
    refused: str | PathLike[str] | None,
    progress: Callable[[int], None] | None,
) -> Filled:
    """The work of ``fill_table``; of this package only."""
    pyarrow = _pyarrow()
    if refused is not None and same_file(output, refused):
        raise FoilworkError(f"{os.fspath(refused)} is the output: name another file for the refused rows")
    try:
        with ExitStack() as open_files:
            with _reading(pyarrow, table):
                schema, batches = _read(pyarrow, table, open_files)
            filling.columns_in(schema)
            new = [pyarrow.field(name, pyarrow.float64()) for name in filling.to]
            good = _Written(pyarrow, table, output, _longer(pyarrow, schema, [], new), open_files)
            told = [pyarrow.field("row", pyarrow.int64()), pyarrow.field("reason", pyarrow.string())]
            apart = None
            if refused is not None:
                apart = _Written(pyarrow, table, refused, _longer(pyarrow, schema, told, []), open_files)
            done = 0
            for batch in _each(pyarrow, table, batches):
                results, bad = filling.over(batch)
                columns = [pyarrow.array(result, from_pandas=True) for result in results]
                good.write([*batch.columns, *columns], None if not bad else [place for place, _ in bad])
                if bad and apart is not None:
                    kept = batch.take(pyarrow.array([place for place, _ in bad], pyarrow.int64()))
                    places = pyarrow.array([done + place for place, _ in bad], pyarrow.int64())
                    apart.write([places, pyarrow.array([why for _, why in bad]), *kept.columns], None)
                done += batch.num_rows
                if progress is not None:
                    progress(done)
            if filling.refused and apart is None:
                raise FoilworkError(_nowhere(filling))
            # First what was kept apart: a table without it would have lost rows.
            for written in (apart, good):
                if written is not None:
                    written.finish()
    except pyarrow.ArrowException as error:
        raise FoilworkError(f"cannot read {os.fspath(table)}: {error}") from error
    return Filled(filling.rows, filling.missing, filling.refused, filling.first)


def _nowhere(filling: Filling) -> str:
    lines = [f"row {row}: {why}" for row, why in filling.first]
    rows, them = ("1 row", "it") if filling.refused == 1 else (f"{filling.refused} rows", "them")
    return "\n".join([*lines, f"{rows} cannot be: mend {them}, or keep {them} apart (rows count from 0)"])


def _pyarrow() -> Any:
    try:
        return import_module("pyarrow")
    except ImportError as error:
        raise FoilworkError("Parquet and Arrow files need pyarrow (pip install pyarrow)") from error


def begins(path: str | PathLike[str]) -> bytes | None:
    """How a file begins, where it is one that is read here; of this package only."""
    with open(path, "rb") as file:
        head = file.read(8)
    # The first name of a CSV may begin so, too: then a letter, a separator or the end of the line follows, with none of
    # which a page of Parquet begins.
    if head.startswith(_PARQUET):
        following = head[len(_PARQUET) : len(_PARQUET) + 1]
        if not following or following in b"\t\r\n" or following >= b" ":
            return None
    return next((begin for begin in (_PARQUET, _ARROW, _STREAM) if head.startswith(begin)), None)


def _read(pyarrow: Any, table: str | PathLike[str], open_files: ExitStack) -> tuple[Any, Iterator[Any]]:
    """The schema of a table and its batches."""
    path = os.fspath(table)
    try:
        begin = begins(path)
    except OSError as error:
        raise FoilworkError(f"cannot read {path}: {error.strerror or error}") from error
    if begin is None:
        raise FoilworkError(
            f"cannot read {path}: it is no Parquet or Arrow file (foilwork fill reads CSV and workbooks)"
        )
    if begin == _PARQUET:
        file = open_files.enter_context(import_module("pyarrow.parquet").ParquetFile(path))
        return file.schema_arrow, file.iter_batches(batch_size=_BATCH)
    source = open_files.enter_context(pyarrow.OSFile(path))
    if begin == _STREAM:
        stream = open_files.enter_context(pyarrow.ipc.open_stream(source))
        return stream.schema, _cut(iter(stream))
    held = open_files.enter_context(pyarrow.ipc.open_file(source))
    return held.schema, _cut(held.get_batch(place) for place in range(held.num_record_batches))


@contextmanager
def _reading(pyarrow: Any, table: str | PathLike[str]) -> Iterator[None]:
    # A damaged page is an OSError.
    try:
        yield
    except (pyarrow.ArrowException, OSError) as error:
        raise FoilworkError(f"cannot read {os.fspath(table)}: {error}") from error


def _each(pyarrow: Any, table: str | PathLike[str], batches: Iterator[Any]) -> Iterator[Any]:
    """The batches; what goes wrong with one is said of the table, and of nothing that is done with it."""
    while True:
        with _reading(pyarrow, table):
            batch = next(batches, None)
        if batch is None:
            return
        yield batch


def _cut(batches: Iterator[Any]) -> Iterator[Any]:
    """Long batches in pieces."""
    for batch in batches:
        for start in range(0, batch.num_rows, _BATCH):
            yield batch.slice(start, _BATCH)


def _numbers(batch: Any, name: str) -> NDArray[float64]:
    """A column as float64, a null as NaN."""
    pyarrow: Any = import_module("pyarrow")
    column = batch.column(name)
    kinds = pyarrow.types
    if kinds.is_null(column.type):
        column = column.cast(pyarrow.float64())
    if not (kinds.is_integer(column.type) or kinds.is_floating(column.type) or kinds.is_decimal(column.type)):
        raise FoilworkError(f"the column {name!r} holds {column.type}, no numbers: cast it first")
    numbers: NDArray[float64] = column.cast(pyarrow.float64(), safe=False).to_numpy(zero_copy_only=False)
    return numbers


def _longer(pyarrow: Any, schema: Any, before: Sequence[Any], after: Sequence[Any]) -> Any:
    for field in before:
        if field.name in schema.names:
            raise FoilworkError(f"the table has a column {field.name} already, which the refused rows need: rename it")
    return pyarrow.schema([*before, *schema, *after], metadata=_metadata(schema.metadata))


def _metadata(metadata: Mapping[bytes, bytes] | None) -> dict[bytes, bytes] | None:
    return None if metadata is None else dict(metadata)


class _Written:
    """A file of rows that is being written."""

    def __init__(
        self, pyarrow: Any, table: str | PathLike[str], path: str | PathLike[str], schema: Any, open_files: ExitStack
    ) -> None:
        ending = os.path.splitext(os.fspath(path))[1].lower()
        if ending not in _ENDINGS:
            known = ", ".join(_ENDINGS)
            raise FoilworkError(f"{os.fspath(path)}: the ending says how it is written (give one of {known})")
        self._pyarrow, self._schema, self._named = pyarrow, schema, os.fspath(path)
        self._pending = open_files.enter_context(Pending(path, reads=table))
        with self._writing():
            if _ENDINGS[ending] == _PARQUET:
                parquet = import_module("pyarrow.parquet")
                self._writer = parquet.ParquetWriter(self._pending.file, schema, compression="zstd")
            else:
                self._writer = pyarrow.ipc.new_file(self._pending.file, schema)
        self._open = True
        # Before the file it writes to.
        open_files.callback(self._abandon)

    def write(self, columns: Sequence[Any], without: Sequence[int] | None) -> None:
        batch = self._pyarrow.RecordBatch.from_arrays(list(columns), schema=self._schema)
        if without is not None:
            import numpy

            keep = numpy.ones(batch.num_rows, dtype=bool)
            keep[list(without)] = False
            batch = batch.filter(self._pyarrow.array(keep))
        if batch.num_rows:
            with self._writing():
                self._writer.write_batch(batch)

    def _close(self) -> None:
        if self._open:
            self._open = False
            with self._writing():
                self._writer.close()

    def _abandon(self) -> None:
        # What went wrong before is told, not that the end of such a file cannot be written either.
        with suppress(FoilworkError):
            self._close()

    @contextmanager
    def _writing(self) -> Iterator[None]:
        try:
            yield
        except (self._pyarrow.ArrowException, OSError) as error:
            why = getattr(error, "strerror", None) or error
            raise FoilworkError(f"cannot write {self._named}: {why}") from error

    def finish(self) -> None:
        self._close()
        self._pending.finish()
