"""Every public call with arguments that nobody should give: it answers, or raises what its documentation names.

The calls are those of the examples in the docstrings. One argument of a call is exchanged for something else: a wrong
type, an extreme, an odd array, an object that lies about itself. Then the same calls are made from eight threads, in
a forked process, and again and again while the memory of the process is looked at.
"""

import contextlib
import gc
import math
import os
import re
import shutil
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from public_api import CLASSES, PUBLIC, Call, shown_calls

from foilwork import FoilworkError, business, mix, peroxide, plan, shop

pytestmark = pytest.mark.filterwarnings("ignore")

# How often each call is tried with something odd; `make fuzz` asks for more.
TRIES = int(os.environ.get("FOILWORK_TRIES", "12"))
# How many calls are made to see whether memory grows.
LEAK_CALLS = int(os.environ.get("FOILWORK_LEAK_CALLS", "40000"))


class LiarError(Exception):
    """What a hostile object raises; it may come through as it is."""


class Liar:
    """Says it is everything, and is nothing."""

    def _raise(self, *_: object) -> Any:
        raise LiarError

    __float__ = __index__ = __len__ = __iter__ = __getitem__ = __array__ = __fspath__ = __str__ = __bool__ = _raise
    __arrow_c_array__ = __arrow_c_stream__ = keys = _raise

    def __repr__(self) -> str:
        return "Liar()"


class WrongFloat(float):
    """A number whose conversion is none."""

    def __float__(self) -> Any:
        return math.nan


def endless() -> Iterator[float]:
    while True:
        yield 1.0


def deep(levels: int) -> list[Any]:
    inner: list[Any] = []
    for _ in range(levels):
        inner = [inner]
    return inner


NUMBERS = st.sampled_from(
    [
        *(0, -0.0, 1, -1, True, 0.5, 100, 101, -1e-300, 5e-324, 1e16, 1e300, math.inf, -math.inf, math.nan),
        *(
            2**31,
            2**63,
            -(2**63) - 1,
            2**64,
            10**400,
            10**5000,
            Decimal("NaN"),
            Decimal("1e999999"),
            Decimal("-0.005"),
            1j,
        ),
        *(Fraction(1, 3), np.float32(0.1), np.int8(-1), np.uint64(2**64 - 1), np.bool_(True), WrongFloat(3)),
    ]
)
TEXTS = st.sampled_from(
    [
        *("", " ", "\0", "nan", "inf", "-1", "1e999", "٣", "½", "12 %", "1:1.5", "6 % w/w", "20 volumes", "\ud800"),
        *("x" * 5000, "a\nb", "\u202e", "=1+1", "💇" * 40, "../..", "/dev/null", "EUR", "2026-02-30", "24:00", b"6 %"),
    ]
)
ARRAYS = st.sampled_from(
    [
        np.array([]),
        np.array(5.0),
        np.array([np.nan, np.inf, -1.0]),
        np.zeros((2, 0, 3)),
        np.arange(12.0).reshape(3, 4)[::2, ::-1],
        np.array([1, 2], dtype=">i2"),
        np.array([True, False]),
        np.array([1 + 2j]),
        np.array(["6 %", None], dtype=object),
        np.array(["2026-01-01"], dtype="datetime64[D]"),
        np.zeros(2, dtype=[("a", "f8")]),
        np.ma.masked_array([1.0, 2.0], mask=[True, False]),
        np.broadcast_to(1.0, (3, 3)),
        np.ones((1,) * 32),
        np.array([1, 2], dtype="float16"),
    ]
)
THINGS = st.sampled_from(
    [
        *(None, ..., object, Liar(), [], (), {}, [None], [[1.0], [2.0, 3.0]], {"a": 1}, {1: 2}, {"name": []}, set()),
        *(deep(3000), [1.0] * 3000, range(5), slice(1), memoryview(b"abc"), bytearray(8), print, ["x"] * 50),
        *(Path("nowhere"), [Liar()], {"format": Liar()}, [math.nan], [("a", 1)], {"format": 1, "section": [{}]}),
    ]
)


def like(value: object) -> st.SearchStrategy[Any]:
    """Something odd of the same kind, which goes deeper than what is refused at the door."""
    if isinstance(value, bool):
        return st.booleans()
    if isinstance(value, int | float):
        return st.one_of(st.floats(), st.integers(-10, 1000), st.floats(0, 100), NUMBERS)
    if isinstance(value, str):
        cut = st.integers(0, len(value)).map(lambda at: value[:at])
        put = st.tuples(st.integers(0, len(value)), st.characters()).map(lambda p: value[: p[0]] + p[1] + value[p[0] :])
        return st.one_of(cut, put, TEXTS)
    if isinstance(value, list | tuple) and value:
        items, kind = list(value), type(value)
        inner = st.tuples(st.integers(0, len(items) - 1), odd(items[0]))
        one_exchanged = inner.map(lambda p: kind([*items[: p[0]], p[1], *items[p[0] + 1 :]]))
        return st.one_of(one_exchanged, st.just(kind(items[:1])), st.just(kind([*items, *items])))
    if isinstance(value, dict) and value:
        entry = st.tuples(st.sampled_from(list(value)), odd(next(iter(value.values()))))
        return st.one_of(entry.map(lambda p: {**value, p[0]: p[1]}), st.just({}))
    return st.nothing()


def odd(value: object) -> st.SearchStrategy[Any]:
    return st.one_of(like(value), NUMBERS, TEXTS, ARRAYS, THINGS)


@cache
def calls() -> dict[str, list[Call]]:
    """What the examples call, by name."""
    found: dict[str, list[Call]] = {}
    for call in shown_calls():
        found.setdefault(call.name, []).append(call)
    return found


# Raised by foilwork itself, by Python for a wrong type, number or text, by the system for files, by the object given.
DOCUMENTED = (FoilworkError, TypeError, OverflowError, UnicodeEncodeError, MemoryError, OSError, LiarError)


def tried(function: Callable[..., object], *args: object, **kwargs: object) -> object:
    try:
        return function(*args, **kwargs)
    except DOCUMENTED as error:
        # Whatever is shown of the value is short: a thousand characters are said to be the most.
        assert len(str(error)) < 20_000, function
        assert str(error) or isinstance(error, LiarError | MemoryError), f"{function} refuses without a word"
        return None


@pytest.fixture(autouse=True, scope="module")
def a_folder_of_its_own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Whatever is written is written here, and the examples are found."""
    folder = tmp_path_factory.mktemp("hostile")
    shutil.copytree("examples", folder / "examples")
    with contextlib.chdir(folder):
        yield


NAMES = sorted(calls())


def test_the_examples_call_everything() -> None:
    made = {name.split(".")[0] for name in NAMES}
    functions = {
        name.split(".")[1] for name, value in PUBLIC.items() if callable(value) and value not in CLASSES.values()
    }
    errors = {name.split(".")[1] for name, value in PUBLIC.items() if isinstance(value, type) and name not in CLASSES}
    assert functions - errors - made == set()


@pytest.mark.parametrize("name", NAMES)
def test_odd_arguments_are_answered_or_refused(name: str) -> None:
    shown = calls()[name]

    @settings(
        max_examples=TRIES, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck)
    )
    @given(st.data())
    def attempt(data: st.DataObject) -> None:
        call = data.draw(st.sampled_from(shown))
        places: list[int | str] = [*range(len(call.args)), *call.kwargs]
        args, kwargs = list(call.args), dict(call.kwargs)
        if places:
            at = data.draw(st.sampled_from(places))
            if isinstance(at, int):
                args[at] = data.draw(odd(args[at]))
            else:
                kwargs[at] = data.draw(odd(kwargs[at]))
        else:
            args.append(data.draw(odd(None)))
        tried(call.function, *args, **kwargs)

    attempt()


@pytest.mark.parametrize("given", [endless, lambda: deep(200_000)], ids=["endless", "deep"])
def test_what_has_no_end_is_refused(given: Callable[[], Any]) -> None:
    """Each would take all memory, or all of the stack, of a reader that believes what it is given."""
    for read in (
        lambda: plan({"format": 1, "section": given()}),
        lambda: shop.read({"currency": given()}),
        lambda: mix.Ratio("1:2").split_total(given()),
        lambda: peroxide.mix_strengths(given(), [1.0]),
        lambda: business.price_services(given(), {"currency": "EUR"}),
    ):
        with pytest.raises((FoilworkError, TypeError)):
            read()


def bare(value: object) -> object:
    """Arrays as lists: how NumPy prints is set for each thread apart."""
    if isinstance(value, np.ndarray):
        return value.tolist()
    return tuple(map(bare, value)) if type(value) is tuple else value


def outcome(call: Call) -> str:
    """What a call gives, without the place in memory that a table shows, and without blanks: how NumPy aligns a column
    is a setting of each thread."""
    try:
        return re.sub(r" at 0x[0-9a-f]+|\s+", "", repr(bare(call())))
    except DOCUMENTED as error:
        return f"{type(error).__name__}: {error}"


@cache
def quick() -> tuple[list[Call], list[str], list[float]]:
    """The calls that take little time, what each gives, and the seconds it took."""
    found = []
    for call in (call for shown in calls().values() for call in shown if call.name not in CHANGE):
        start = time.perf_counter()
        found.append((call, outcome(call), time.perf_counter() - start))
    calls_, answers, seconds = zip(*(each for each in found if each[2] < 0.05), strict=True)
    return list(calls_), list(answers), list(seconds)


# What changes its object: the answer is another one each time.
CHANGE = {"CostTable.add", "CostTable.extend"}


def test_eight_threads_get_the_same_answers() -> None:
    shown, alone, _ = quick()
    with ThreadPoolExecutor(8) as pool:
        rounds = [pool.submit(lambda: [outcome(call) for call in shown]) for _ in range(8)]
        for found in rounds:
            for call, said, once in zip(shown, found.result(), alone, strict=True):
                assert said == once, call.name


@pytest.mark.skipif(not hasattr(os, "fork"), reason="the system has no fork")
def test_a_forked_process_gets_the_same_answers() -> None:
    shown, alone, _ = quick()
    child = os.fork()
    if child == 0:
        # Whatever happens, the child must not go on as a second run of these tests.
        same = False
        try:
            same = [outcome(call) for call in shown] == alone
        finally:
            os._exit(0 if same else 1)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0


def resident_kb() -> int:
    return int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1]) * os.sysconf("SC_PAGE_SIZE") // 1024


@pytest.mark.skipif(sys.platform != "linux", reason="memory is read as Linux shows it")
def test_nothing_leaks() -> None:
    """Two rounds of the same calls: what a call does not give back shows in the second, when all caches are filled."""
    shown, _, seconds = quick()
    cheap = [call for call, took in zip(shown, seconds, strict=True) if took < 1e-3]
    assert len(cheap) > 200

    def round_of(times: int) -> int:
        for _ in range(times):
            for call in cheap:
                outcome(call)
        gc.collect()
        return resident_kb()

    times = max(1, LEAK_CALLS // len(cheap) // 2)
    round_of(max(1, times // 4))
    first = round_of(times)
    second = round_of(times)
    # A leak of 64 bytes a call would be this much of each round, and more.
    assert second - first < 64 * times * len(cheap) / 1024 / 4, f"{second - first} kB in {times * len(cheap)} calls"
