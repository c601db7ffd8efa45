"""What is kept of a run on the disk: the totals and the bad rows of each file, each written in one piece."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import quote

from foilwork._native import FoilworkError, __version__
from foilwork.chain import _totals
from foilwork.chain._engines import Part, parquet
from foilwork.chain._record import arrow
from foilwork.chain._totals import Grouping

# How many files of totals are merged at a time.
_AT_ONCE = 64


class Known(NamedTuple):
    """How many rows a file has, and how many of them are bad."""

    rows: int
    refused: int


def files_of(records: Path, to: Path) -> dict[str, str]:
    """The files of a history by their names within it; the folder of the results is none of it."""
    if records.is_file():
        return {records.name: str(records)}
    if records.resolve() == to.resolve():
        raise FoilworkError(f"{to} holds the records: give another folder for the results")
    found = {
        path.relative_to(records).as_posix(): str(path)
        for path in sorted(records.rglob("*.parquet"))
        if to.resolve() not in path.resolve().parents
    }
    if not found:
        raise FoilworkError(f"no Parquet files in {records} (a folder with files named *.parquet)")
    return found


class Store:
    """The folder of the results."""

    def __init__(self, to: Path, terms: Mapping[str, Any], by: list[Grouping]) -> None:
        self._to = to
        self._parts, self._apart = to / "parts", to / "apart"
        for folder in (self._parts, self._apart):
            folder.mkdir(parents=True, exist_ok=True)
        asked = {
            "foilwork": __version__,
            "terms": {name: str(terms[name]) for name in sorted(terms)},
            "by": [_totals.label(grouping) for grouping in by],
        }
        text = json.dumps(asked, indent=2)
        run = to / "run.json"
        if not run.exists():
            _in_one_piece(run, lambda path: path.write_text(text, encoding="utf-8"))
        elif run.read_text(encoding="utf-8") != text:
            raise FoilworkError(
                f"{to} holds results of other terms, groupings or another version: give an empty folder"
            )

    def known(self, name: str, path: str) -> Known | None:
        """What an earlier run found of a file; none of one that has changed since."""
        kept = self._parts / _safe(name)
        if not kept.exists():
            return None
        said = json.loads(parquet().read_schema(kept).metadata[b"foilwork"])
        return Known(said["rows"], said["refused"]) if said["of"] == fingerprint(path) else None

    def keep(self, name: str, path: str, of: list[int], part: Part) -> Known:
        """Keeps what was found of a file: its bad rows first, then the totals, which say that it is done.

        ``of`` is the fingerprint that the file had before it was read.
        """
        said = {"of": of, "rows": part.rows, "refused": len(part.refused)}
        apart = self._apart / _safe(name)
        apart.unlink(missing_ok=True)
        if part.refused:
            _in_one_piece(apart, lambda temporary: _write_apart(temporary, name, path, part.refused))
        totals = part.totals.replace_schema_metadata({b"foilwork": json.dumps(said).encode()})
        _in_one_piece(self._parts / _safe(name), lambda temporary: parquet().write_table(totals, temporary))
        return Known(part.rows, len(part.refused))

    def totals(self, names: Sequence[str]) -> Any:
        """The totals of these files, on the disk as well; so many files at a time, so that few are in memory."""
        found = _totals.merged([])
        for start in range(0, len(names), _AT_ONCE):
            parts = [parquet().read_table(self._parts / _safe(name)) for name in names[start : start + _AT_ONCE]]
            found = _totals.merged([found, *parts])
        _in_one_piece(self._to / "totals.parquet", lambda temporary: parquet().write_table(found, temporary))
        return found


def _write_apart(to: Path, name: str, path: str, refused: Sequence[tuple[int, str]]) -> None:
    """The bad rows as they are in the file, with the file, the row counted from 0, and the reason."""
    pyarrow = arrow()
    with parquet().ParquetFile(path) as source:
        writer = None
        first = 0
        for group in range(source.num_row_groups):
            held = source.metadata.row_group(group).num_rows
            here = [(row - first, reason) for row, reason in refused if first <= row < first + held]
            if here:
                rows = source.read_row_group(group).take([row for row, _ in here])
                rows = rows.append_column("file", pyarrow.array([name] * len(here)))
                rows = rows.append_column("row", pyarrow.array([first + row for row, _ in here], pyarrow.int64()))
                rows = rows.append_column("refused", pyarrow.array([reason for _, reason in here]))
                writer = writer or parquet().ParquetWriter(to, rows.schema)
                writer.write_table(rows)
            first += held
        if writer is not None:
            writer.close()


def fingerprint(path: str) -> list[int]:
    """By which a file that has changed is known: its size, and when it was written."""
    there = os.stat(path)
    return [there.st_size, there.st_mtime_ns]


def _safe(name: str) -> str:
    """A name for what is kept of a file: one for each, whatever folders it lies in."""
    quoted = quote(name, safe="")
    if len(quoted) > 200:
        quoted = f"{quoted[:120]}-{hashlib.sha256(name.encode()).hexdigest()}"
    return quoted if quoted.endswith(".parquet") else f"{quoted}.parquet"


def _in_one_piece(path: Path, write: Any) -> None:
    """A file that is there whole or not at all."""
    temporary = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        write(temporary)
        os.replace(temporary, path)
    finally:
        temporary.unlink(missing_ok=True)
