"""Columns and tables of the Arrow world: whatever shows the PyCapsule interface goes in, and comes out.

pyarrow, polars, pandas, DuckDB and others hand their columns on by this interface. Needs nanoarrow and NumPy
(``pip install 'foilwork[arrow]'``), which load with the first call, not before.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from importlib import import_module
from typing import TYPE_CHECKING, Any, NamedTuple

from foilwork._native import FoilworkError

if TYPE_CHECKING:
    from numpy import float64
    from numpy.typing import ArrayLike, NDArray

__all__ = ["AddedColumns", "Col", "add_columns", "array", "col", "values"]

# Formats of the Arrow C data interface that are numbers, and the same in NumPy.
_NUMBERS = {
    "DOUBLE": "float64",
    "FLOAT": "float32",
    "HALF_FLOAT": "float16",
    "INT8": "int8",
    "INT16": "int16",
    "INT32": "int32",
    "INT64": "int64",
    "UINT8": "uint8",
    "UINT16": "uint16",
    "UINT32": "uint32",
    "UINT64": "uint64",
}


def _nanoarrow() -> Any:
    try:
        return import_module("nanoarrow")
    except ImportError as error:
        raise FoilworkError("Arrow needs nanoarrow (pip install 'foilwork[arrow]')") from error


def values(column: object) -> NDArray[float64]:
    """The numbers of an Arrow column as float64; a null is NaN.

    Every function of foilwork that takes arrays does this by itself with what is no array of NumPy.

    Args:
        column: anything with ``__arrow_c_array__`` or ``__arrow_c_stream__`` of one column of numbers.

    Returns:
        A float64 array. One chunk of doubles without nulls is not copied, and cannot be written to.

    Raises:
        FoilworkError: nanoarrow is missing.
        TypeError: a column of something else than numbers.

    Examples:
        >>> import pyarrow
        >>> from foilwork.arrow import values
        >>> values(pyarrow.array([6, None, 12])).tolist()
        [6.0, nan, 12.0]
    """
    import numpy

    parts = [_chunk(chunk) for chunk in _nanoarrow().Array(column).iter_chunks()]
    if len(parts) == 1:
        return parts[0]
    return numpy.concatenate(parts) if parts else numpy.empty(0)


def _chunk(chunk: Any) -> NDArray[float64]:
    import numpy

    kind = chunk.schema.type.name
    rows = len(chunk)
    if kind == "NULL":
        return numpy.full(rows, numpy.nan)
    if kind not in _NUMBERS:
        raise TypeError(f"expected a column of numbers, not one of {chunk.schema}: cast it first")
    first = chunk.offset
    validity, data = chunk.buffers
    found = numpy.frombuffer(data, dtype=_NUMBERS[kind])[first : first + rows] if rows else numpy.empty(0)
    if len(bytes(memoryview(validity)[:1])) == 0:
        return found.astype(numpy.float64, copy=False)
    bits = numpy.unpackbits(numpy.frombuffer(validity, dtype=numpy.uint8), bitorder="little")[first : first + rows]
    found = found.astype(numpy.float64)
    found[bits == 0] = numpy.nan
    return found


def array(numbers: ArrayLike) -> Any:
    """Numbers as an Arrow array of doubles that any library of the Arrow world takes; NaN is a null.

    Args:
        numbers: one column. float64 in one piece is not copied.

    Returns:
        A ``nanoarrow.Array``.

    Raises:
        FoilworkError: nanoarrow is missing, or an array that is no column.

    Examples:
        >>> import polars
        >>> from foilwork.arrow import array
        >>> polars.Series("stock_g", array([15.0, float("nan")])).to_list()
        [15.0, None]
    """
    nanoarrow = _nanoarrow()
    return nanoarrow.Array(_doubles(nanoarrow, numbers))


def _doubles(nanoarrow: Any, numbers: ArrayLike) -> Any:
    import numpy

    column = numpy.ascontiguousarray(numbers, dtype=numpy.float64)
    if column.ndim != 1:
        raise FoilworkError(f"an array of {column.ndim} dimensions is no column: give one dimension")
    missing = numpy.isnan(column)
    count = int(missing.sum())
    validity = numpy.packbits(~missing, bitorder="little") if count else None
    return nanoarrow.c_array_from_buffers(nanoarrow.float64(), len(column), [validity, column], null_count=count)


class Col(NamedTuple):
    """A column of the table by its name; made by ``col``."""

    name: str


def col(name: str) -> Col:
    """A column of the table, as an argument of ``add_columns``.

    Args:
        name: its name.

    Returns:
        The column, to be looked up in each batch.

    Examples:
        >>> from foilwork.arrow import col
        >>> col("target_ww_percent")
        Col(name='target_ww_percent')
    """
    return Col(name)


def add_columns(
    table: object,
    function: Callable[..., Any],
    *arguments: object,
    to: str | Sequence[str],
    progress: Callable[[int], None] | None = None,
    **keywords: object,
) -> AddedColumns:
    """A table with the results of a function as further columns, batch by batch.

    Nothing is read before the first batch is asked for, and no batch is kept: memory does not grow with the table as
    long as its source streams. To stop, ask for no further batch.

    Args:
        table: anything with ``__arrow_c_stream__`` or ``__arrow_c_array__``: a table, a data frame, a DuckDB relation,
            a reader of Parquet batches.
        function: a function of foilwork that takes arrays, for example ``foilwork.peroxide.dilute``.
        arguments: its arguments: ``col("name")`` for a column, anything else as it is.
        to: the name of the new column, or a name for each result.
        progress: called with the number of rows done after each batch.
        keywords: its keywords; ``errors="nan"`` makes a null of a row that cannot be.

    Returns:
        The table to be: an iterable of record batches, with ``__arrow_c_stream__`` for whatever takes a table.

    Raises:
        FoilworkError: nanoarrow is missing; a column that is not there or would be there twice; not one name for each
            result; what the function raises, with the row its batch begins at.

    Examples:
        >>> import pyarrow
        >>> from foilwork.arrow import add_columns, col
        >>> from foilwork.peroxide import dilute
        >>> bottles = pyarrow.table({"target_ww_percent": [3.0, 6.0]})
        >>> weighed = add_columns(bottles, dilute, 12, col("target_ww_percent"), 60, to=["stock_g", "diluent_g"])
        >>> pyarrow.table(weighed).column("stock_g").to_pylist()
        [15.0, 30.0]
    """
    names = [to] if isinstance(to, str) else list(to)
    return AddedColumns(table, function, arguments, names, progress, keywords)


class AddedColumns:
    """A table with further columns, worked out as it is read; made by ``add_columns``."""

    def __init__(
        self,
        table: object,
        function: Callable[..., Any],
        arguments: Sequence[object],
        to: Sequence[str],
        progress: Callable[[int], None] | None,
        keywords: dict[str, object],
    ) -> None:
        self._table = table
        self._function = function
        self._arguments = tuple(arguments)
        self._to = tuple(to)
        self._progress = progress
        self._keywords = keywords

    def __iter__(self) -> Iterator[Any]:
        """Record batches as ``nanoarrow.Array``."""
        nanoarrow = _nanoarrow()
        done = 0
        for batch in nanoarrow.ArrayStream(self._table):
            for chunk in batch.iter_chunks():
                yield self._with_results(nanoarrow, chunk, done)
                done += len(chunk)
                if self._progress is not None:
                    self._progress(done)

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """The same for whatever takes a table: batch by batch where pyarrow is installed, else all batches at once."""
        try:
            pyarrow: Any = import_module("pyarrow")
        except ImportError:
            return self._whole(requested_schema)
        if hasattr(self._table, "__arrow_c_stream__"):
            source = pyarrow.RecordBatchReader.from_stream(self._table)
        else:
            source = pyarrow.table(pyarrow.record_batch(self._table)).to_reader()
        schema = source.schema
        for name in self._to:
            schema = schema.append(pyarrow.field(name, pyarrow.float64()))
        batches = AddedColumns(source, self._function, self._arguments, self._to, self._progress, self._keywords)
        made = (pyarrow.record_batch(batch).cast(schema) for batch in batches)
        return pyarrow.RecordBatchReader.from_batches(schema, made).__arrow_c_stream__(requested_schema)

    def _whole(self, requested_schema: object) -> object:
        nanoarrow = _nanoarrow()
        batches = [nanoarrow.c_array(batch) for batch in self]
        if not batches:
            raise FoilworkError("a table without batches has no columns to add to: give one, or install pyarrow")
        return nanoarrow.CArrayStream.from_c_arrays(batches, batches[0].schema).__arrow_c_stream__(requested_schema)

    def _with_results(self, nanoarrow: Any, batch: Any, done: int) -> Any:
        fields = [field for field in batch.schema.fields]
        names = [field.name for field in fields]
        for name in self._to:
            if name in names or self._to.count(name) > 1:
                raise FoilworkError(f"the table would have two columns {name!r}: give another name")
        held = nanoarrow.c_array(batch)
        rows, first = len(batch), held.offset
        children = [held.child(place)[first : first + rows] for place in range(len(names))]

        def given(argument: object) -> object:
            if not isinstance(argument, Col):
                return argument
            if argument.name not in names:
                raise FoilworkError(f"no column {argument.name!r} (the table has {', '.join(names)})")
            return values(children[names.index(argument.name)])

        try:
            found = self._function(*(given(argument) for argument in self._arguments), **self._keywords)
        except FoilworkError as error:
            raise FoilworkError(f"in the batch that begins at row {done}: {error}") from error
        results = self._columns(found, rows)
        schema = nanoarrow.struct([*fields, *(_named(nanoarrow, name) for name in self._to)])
        made = [*children, *(_doubles(nanoarrow, column) for column in results)]
        return nanoarrow.Array(nanoarrow.c_array_from_buffers(schema, rows, [None], children=made))

    def _columns(self, found: Any, rows: int) -> list[Any]:
        import numpy

        return [numpy.broadcast_to(result, rows) for result in one_for_each_name(found, self._to)]


def one_for_each_name(found: Any, names: Sequence[str]) -> list[Any]:
    """The results of a function that gives one column, or several together; of this package only."""
    import numpy

    try:
        results = [found] if isinstance(found, float | numpy.ndarray) else list(found)
    except TypeError as error:
        raise FoilworkError(
            f"results that are no columns ({type(found).__name__}): wrap the function, so that it returns one array "
            "for each name"
        ) from error
    if len(results) != len(names):
        raise FoilworkError(f"{len(results)} results and {len(names)} names: give one name for each result")
    return results


def _named(nanoarrow: Any, name: str) -> Any:
    return nanoarrow.Schema(nanoarrow.Type.DOUBLE, name=name)
