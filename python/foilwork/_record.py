"""What the classes of ``foilwork.planned`` share, and how a plan becomes them."""

import builtins
import sys
from dataclasses import fields, is_dataclass
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, get_args, get_origin

from foilwork._native import Bounds
from foilwork._native.finding import Finding, Reason
from foilwork._native.money import Money
from foilwork._native.source import Citation, resolve

_Kind = TypeVar("_Kind")


class Record:
    """A part of a plan."""

    __slots__ = ()

    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: objects in it become dicts too, tuples lists."""
        return {field.name: _plain(getattr(self, field.name)) for field in fields(self)}  # type: ignore[arg-type]

    def __reduce__(self) -> tuple[type[object], tuple[object, ...]]:
        return type(self), tuple(getattr(self, field.name) for field in fields(self))  # type: ignore[arg-type]


def _plain(value: Any) -> object:
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value.to_dict() if hasattr(value, "to_dict") else value


class _Names(dict[str, Any]):
    """What an annotation of ``foilwork.planned`` can name; the words of a choice are for type checkers alone."""

    def __missing__(self, name: str) -> object:
        return object


_HINTS: dict[type, dict[str, Any]] = {}


def _hints(kind: type) -> dict[str, Any]:
    """The fields of a class, with their types."""
    if kind not in _HINTS:
        names = _Names(vars(builtins) | vars(sys.modules[kind.__module__]))
        _HINTS[kind] = {field.name: eval(str(field.type), {}, names) for field in fields(kind)}
    return _HINTS[kind]


def built(kind: type[_Kind], data: Any) -> _Kind:
    """Plain data as objects of a class."""
    return _built(kind, data)  # type: ignore[no-any-return]


def _built(kind: Any, data: Any) -> Any:
    if data is None:
        return None
    origin = get_origin(kind)
    if origin is tuple:
        inner = get_args(kind)
        kinds = inner[:1] * len(data) if inner[-1] is ... else inner
        return tuple(_built(each, item) for each, item in zip(kinds, data, strict=True))
    if origin in (Union, UnionType):
        return _built(next(each for each in get_args(kind) if each is not NoneType), data)
    if origin is Bounds:
        return Bounds(data["low"], data["best"], data["high"])
    if kind is Money:
        return Money(data["amount"], data["currency"])
    if kind is Citation:
        return resolve(data["id"])
    if kind in (Finding, Reason):
        values = {**data, "sources": [_built(Reason, item) for item in data.get("sources", ())]}
        return kind._restore(*(values.get(name) for name in kind.__match_args__))
    if isinstance(kind, type) and is_dataclass(kind):
        return kind(**{name: _built(inner, data.get(name)) for name, inner in _hints(kind).items()})
    return data
