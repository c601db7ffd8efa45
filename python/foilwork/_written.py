"""Writing a file so that nobody loses one: a reader sees the old file or the new one, never half of one."""

from __future__ import annotations

import os
from contextlib import suppress
from os import PathLike
from typing import IO

from foilwork._native import FoilworkError

# As the compiled half names its own; it clears away what killed commands have left.
_PREFIX, _SUFFIX = ".foilwork-", ".part"


def same_file(one: str | PathLike[str], other: str | PathLike[str]) -> bool:
    """Whether both would stand under one name, however it is written."""
    return os.path.realpath(one) == os.path.realpath(other)


class Pending:
    """A file that is written beside its target: under its name when it is finished, and without a trace before."""

    def __init__(self, path: str | PathLike[str], reads: str | PathLike[str]) -> None:
        self._named, self._target = os.fspath(path), os.path.realpath(path)
        if same_file(path, reads):
            raise self._cannot("this command reads it: name another file")
        if os.path.isdir(self._target):
            raise self._cannot("it is a folder: name a file in it")
        self._there = os.path.exists(self._target)
        if self._there and not os.access(self._target, os.W_OK):
            raise self._cannot("it is read-only: name another file, or change its permissions")
        folder = os.path.dirname(self._target)
        self._part = os.path.join(folder, f"{_PREFIX}{os.urandom(8).hex()}{_SUFFIX}")
        try:
            self.file: IO[bytes] = open(self._part, "xb")  # noqa: SIM115
        except FileNotFoundError as error:
            raise self._cannot("there is no such folder: make it first") from error
        except OSError as error:
            raise self._cannot(error.strerror or str(error)) from error

    def __enter__(self) -> Pending:
        return self

    def finish(self) -> None:
        """Puts the file under its name, with what the old one may do."""
        try:
            self.file.flush()
            os.fsync(self.file.fileno())
            self.file.close()
            if self._there:
                os.chmod(self._part, os.stat(self._target).st_mode & 0o7777)
            os.replace(self._part, self._target)
        except OSError as error:
            raise self._cannot(error.strerror or str(error)) from error

    def __exit__(self, *_: object) -> None:
        # What is still to be written to a full disk is not missed: the file goes.
        with suppress(OSError):
            self.file.close()
        if os.path.exists(self._part):
            os.unlink(self._part)

    def _cannot(self, why: str) -> FoilworkError:
        return FoilworkError(f"cannot write {self._named}: {why}")
