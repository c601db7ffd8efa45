"""What goes through the kernels of columns: each row is the scalar function's, bit for bit, however the arrays lie."""

import math
import subprocess
import sys
import threading
import warnings
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from foilwork import Bounds, FoilworkError, OutOfRangeWarning
from foilwork.colour import (
    ciede2000,
    formula_level,
    lab_to_lch,
    lab_to_srgb,
    lab_to_xyz,
    level_on_scale,
    lift_needed,
    result_level,
)
from foilwork.hair import by_caliper, grown, hair_cut, weeks_to_grow
from foilwork.lift import Lightening, Situation
from foilwork.mix import minimum_mass
from foilwork.money import cost_columns
from foilwork.peroxide import (
    blend_two,
    convert,
    convert_interval,
    density,
    density_interval,
    dilute,
    dilute_volume,
    half_life_days,
    loss_rate,
    loss_rate_from_half_life,
    make_up,
    mix_two,
    strength_after,
    strength_after_make_up,
    strength_units,
    time_until,
)

Floats = NDArray[np.float64]

TERMS = {
    "currency": "EUR",
    "wage_per_h": "15.00",
    "on_costs_percent": 20,
    "paid_h": 40,
    "productive_h": 30,
    "overhead": "60000",
    "chairs": 4,
    "productive_h_per_chair": 1500,
    "margin_percent": 25,
}

SPECIAL = [0.0, -0.0, 1.0, 12.0, 70.0, 70.0000001, 100.0, 200.0, 2000.0, 1e9, -1.0, 1e300, 5e-324, 7.4e-322]
MISSING = [math.nan, math.inf, -math.inf]


class Case(NamedTuple):
    """A function of some columns, and what a reasonable row of them is."""

    name: str
    call: Callable[..., Any]
    usual: tuple[tuple[float, float], ...]


def in_unit(function: Callable[..., Any], unit: str, place: int) -> Callable[..., Any]:
    """The function with its unit filled in."""
    return lambda *values, **how: function(*values[:place], unit, *values[place:], **how)


PERCENT, GRAMS, CELSIUS, DAYS, RATE, LEVEL = (
    (0.0, 60.0),
    (1.0, 500.0),
    (0.0, 50.0),
    (0.0, 900.0),
    (0.0, 0.01),
    (1.0, 12.0),
)
DIAMETER, GROWTH = (5.0, 300.0), (0.1, 3.0)
BY_VOLUME = ["% w/v", "g/L", "mol/L", "N", "volumes"]
LIGHTENING = Lightening(Situation(on_hair_ww_percent=4), 4)


def by_cylinder(*values: Any, **how: Any) -> list[Any]:
    """What ``dilute_volume`` gives, bound by bound."""
    made = dilute_volume(*values[:3], temperature_c=values[3], **how)
    return [*made.stock_ml, *made.water_ml, *made.contraction_ml]


CASES = [
    Case("dilute_volume", by_cylinder, (PERCENT, PERCENT, GRAMS, CELSIUS)),
    Case("mix_two", mix_two, (PERCENT, GRAMS, PERCENT, GRAMS)),
    Case("dilute", dilute, (PERCENT, PERCENT, GRAMS)),
    Case("dilute, stock", lambda s, t, m, **how: dilute(s, t, stock_g=m, **how), (PERCENT, PERCENT, GRAMS)),
    Case("dilute, diluent", lambda s, t, m, **how: dilute(s, t, diluent_g=m, **how), (PERCENT, PERCENT, GRAMS)),
    Case("blend_two", blend_two, (PERCENT, PERCENT, PERCENT, GRAMS)),
    Case("density", density, (PERCENT, CELSIUS)),
    Case("density_interval", density_interval, (PERCENT, CELSIUS)),
    Case("half_life_days", half_life_days, (RATE,)),
    Case("loss_rate_from_half_life", loss_rate_from_half_life, (DAYS,)),
    Case("lift_needed", lift_needed, (LEVEL, LEVEL)),
    Case("result_level", result_level, (LEVEL, LEVEL)),
    Case("formula_level", formula_level, (LEVEL, LEVEL)),
    Case("formula_level of twelve", lambda *v, **how: formula_level(*v, top_level=12, **how), (LEVEL, LEVEL)),
    Case("formula_level, coloured", lambda *v, **how: formula_level(*v, coloured=True, **how), (LEVEL, LEVEL)),
    Case("by_caliper", lambda read, **how: by_caliper(read, "scalp-camera", **how), (DIAMETER,)),
    Case("by_caliper, as read", lambda read, **how: by_caliper(read, "caliper", **how), (DIAMETER,)),
    Case("hair_cut", hair_cut, (DIAMETER, DIAMETER)),
    Case("grown", grown, ((0.0, 100.0), GROWTH)),
    Case("grown as people's hair does", grown, ((0.0, 100.0),)),
    Case("grown at a rate with bounds", lambda weeks, **how: grown(weeks, (0.8, 1.1, 1.4), **how), ((0.0, 100.0),)),
    Case("grown in weeks with bounds", lambda rate, **how: grown(Bounds(6, 8, 9), rate, **how), (GROWTH,)),
    Case("weeks_to_grow", weeks_to_grow, ((0.0, 60.0), GROWTH)),
    Case("level_on_scale", lambda read, **how: level_on_scale(read, scale="japanese-20", **how), ((3.0, 16.0),)),
    Case(
        "level_on_scale by anchors",
        lambda read, **how: level_on_scale(read, scale="us-10", anchors=[(1, 1), (6, 7), (10, 10)], **how),
        (LEVEL,),
    ),
    Case("minimum_mass", minimum_mass, ((0.01, 2.0), (0.01, 10.0))),
    Case("chance_by", LIGHTENING.chance_by, (LEVEL, (0.0, 60.0))),
    *(Case(f"make_up in {unit}", in_unit(make_up, unit, 2), (PERCENT, PERCENT, GRAMS)) for unit in BY_VOLUME),
    *(
        Case(
            f"make_up in {unit}, stock",
            lambda s, t, m, unit=unit, **how: make_up(s, t, unit, stock_ml=m, **how),
            (PERCENT, PERCENT, GRAMS),
        )
        for unit in BY_VOLUME[:2]
    ),
    *(
        Case(f"make_up's strength in {unit}", in_unit(strength_after_make_up, unit, 1), (PERCENT, GRAMS, GRAMS))
        for unit in BY_VOLUME
    ),
    *(
        Case(f"strength_after in {unit}", in_unit(strength_after, unit, 1), (PERCENT, RATE, DAYS))
        for unit in strength_units()
    ),
    *(Case(f"loss_rate in {unit}", in_unit(loss_rate, unit, 2), (PERCENT, PERCENT, DAYS)) for unit in strength_units()),
    *(
        Case(f"time_until in {unit}", in_unit(time_until, unit, 2), (PERCENT, PERCENT, RATE))
        for unit in strength_units()
    ),
]


def as_rows(found: Any) -> list[Any]:
    """The results of one call, whether it gives one or several."""
    return list(found) if not isinstance(found, float | np.ndarray) else [found]


def quietly(call: Callable[..., Any], *values: Any, **how: Any) -> list[Any]:
    """The results with what cannot be as NaN."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", OutOfRangeWarning)
        return as_rows(call(*values, errors="nan", **how))


def bits(values: Any) -> NDArray[np.uint64]:
    """Every NaN alike, all else bit by bit."""
    array = np.array(values, dtype=np.float64)
    array[np.isnan(array)] = np.nan
    return array.view(np.uint64)


def columns(case: Case, most: int = 12) -> st.SearchStrategy[list[list[float]]]:
    """Columns of one length: mostly usual values, some at the edges, some that are no value."""
    row = st.tuples(
        *(
            st.one_of(st.floats(low, high), st.floats(low, high), st.sampled_from(SPECIAL), st.sampled_from(MISSING))
            for low, high in case.usual
        )
    )
    return st.lists(row, min_size=1, max_size=most).map(
        lambda rows: [list(column) for column in zip(*rows, strict=True)]
    )


def row_by_row(call: Callable[..., Any], lists: list[list[float]]) -> list[list[float]]:
    """What the scalar function gives, NaN where it refuses or a value is missing."""
    rows: list[list[float]] = []
    results = 0
    for row in zip(*lists, strict=True):
        try:
            rows.append(as_rows(call(*row)))
            results = len(rows[-1])
        except FoilworkError:
            rows.append([])
    width = results or 1
    return [[row[place] if row else math.nan for row in rows] for place in range(width)]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_a_column_is_the_scalar_function(case: Case, data: st.DataObject) -> None:
    lists = data.draw(columns(case))
    want = row_by_row(case.call, lists)
    got = quietly(case.call, *(np.array(column) for column in lists))
    for column, expected in zip(got, want, strict=False):
        assert np.array_equal(bits(column), bits(expected)), (lists, column, expected)
    if not any(len(row) for row in want):
        assert all(np.isnan(column).all() for column in got)


@pytest.mark.parametrize("from_unit", strength_units())
@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_a_conversion_is_the_scalar_one(from_unit: str, data: st.DataObject) -> None:
    to_unit = data.draw(st.sampled_from(strength_units()))
    keywords = data.draw(
        st.fixed_dictionaries(
            {}, optional={"density_g_per_ml": st.floats(0.9, 1.3), "molar_volume": st.just("ideal-1bar")}
        )
    )

    def best(value: Any, celsius: Any, **how: Any) -> Any:
        return convert(value, from_unit, to_unit, temperature_c=celsius, **keywords, **how)  # type: ignore[call-overload]

    def bounds(value: Any, celsius: Any, **how: Any) -> Any:
        medium = "emulsion" if "molar_volume" in keywords else "aqueous"
        return convert_interval(value, from_unit, to_unit, temperature_c=celsius, medium=medium, **keywords, **how)  # type: ignore[call-overload]

    for call in (best, bounds):
        lists = data.draw(columns(Case("", call, (PERCENT, CELSIUS))))
        want = row_by_row(call, lists)
        got = quietly(call, *(np.array(column) for column in lists))
        for column, expected in zip(got, want, strict=False):
            assert np.array_equal(bits(column), bits(expected)), (lists, keywords)


def test_a_temperature_that_holds_for_no_row_is_missing_where_missing_is_asked_for() -> None:
    with pytest.raises(FoilworkError, match="no density at 80 C"):
        convert([3.0, 6.0], "% w/w", "g/L", temperature_c=80)
    for celsius in (80.0, -300.0):
        with pytest.warns(OutOfRangeWarning, match="^2 values"):
            found = convert([3.0, math.nan, 6.0], "% w/w", "g/L", temperature_c=celsius, errors="nan")
        assert np.isnan(found).all()
        with pytest.warns(OutOfRangeWarning, match="^1 value "):
            assert math.isnan(convert(3.0, "% w/w", "g/L", temperature_c=celsius, errors="nan"))


LONG = np.random.default_rng(17).uniform(0.5, 11.5, 4000)


def test_more_rows_than_one_block_and_one_thread() -> None:
    rows = 700_001
    targets = np.random.default_rng(3).uniform(0.0, 12.0, rows)
    targets[[5, 600_000]] = [13.0, math.nan]
    with pytest.warns(OutOfRangeWarning, match="^1 value .* index 5: "):
        stock_g, diluent_g = dilute(12.0, targets, 60.0, errors="nan")
    good = np.ones(rows, bool)
    good[[5, 600_000]] = False
    # NumPy is the reference: the same two operations.
    assert np.array_equal(stock_g[good], 60.0 * (targets / 12.0)[good])
    assert np.array_equal(diluent_g[good], 60.0 - stock_g[good])
    assert np.isnan(stock_g[~good]).all()
    targets[5] = 1.0
    targets[[4, 650_000]] = 13.0
    with pytest.raises(FoilworkError, match=r"^index 4: .*\(2 values refused"):
        dilute(12.0, targets, 60.0)


@pytest.mark.parametrize(
    "lay",
    [
        lambda a: a[::3],
        lambda a: a[1::2],
        lambda a: a[3:-1:4],
        lambda a: a[2::5][7:700:2],
        lambda a: a.reshape(400, 10)[:, 9],
        lambda a: a[::-1],
        lambda a: a.reshape(40, 100).T,
        lambda a: a.reshape(10, 20, 20)[:, ::2, ::-1],
        lambda a: np.asfortranarray(a.reshape(40, 100)),
        lambda a: np.broadcast_to(a[:100], (30, 100)),
        lambda a: np.broadcast_to(a[:40, None], (40, 100)),
        lambda a: a[:0],
        lambda a: a.reshape(4, 1000)[:, :0],
        lambda a: a.astype(np.float32),
        lambda a: a.astype(np.int16)[::2],
        lambda a: a.astype(np.uint8),
        lambda a: a.astype(">f8"),
        lambda a: a.astype(np.float16),
        lambda a: np.frombuffer(b"." + a.tobytes(), dtype=np.float64, offset=1),
    ],
)
def test_however_the_values_lie(lay: Callable[[Floats], Any]) -> None:
    laid = lay(LONG)
    plain = np.array(laid, dtype=np.float64, order="C")
    for found, want in (
        (density(laid), density(plain)),
        (dilute(12.0, laid, 60.0).stock_g, dilute(12.0, plain, 60.0).stock_g),
        (convert(laid, "% w/w", "volumes"), convert(plain, "% w/w", "volumes")),
    ):
        assert found.shape == laid.shape and found.dtype == np.float64
        assert np.array_equal(found, want)


def test_arguments_broadcast_as_those_of_numpy() -> None:
    stock, target, total = LONG[:40, None] + 20.0, LONG[None, :50], LONG[:2, None, None]
    stock_g, diluent_g = dilute(stock, target, total)
    assert stock_g.shape == np.broadcast_shapes(stock.shape, target.shape, total.shape)
    np.testing.assert_allclose(stock_g, total * target / stock, rtol=1e-15)
    np.testing.assert_allclose(stock_g + diluent_g, np.broadcast_to(total, stock_g.shape), rtol=1e-15)


def test_results_go_where_they_are_told_to() -> None:
    want = convert(LONG, "% w/w", "g/L")
    out = np.empty_like(LONG)
    assert convert(LONG, "% w/w", "g/L", out=out) is out
    assert np.array_equal(out, want)
    gaps = np.zeros((LONG.size, 2))
    convert(LONG, "% w/w", "g/L", out=gaps[:, 1])
    assert np.array_equal(gaps[:, 1], want) and not gaps[:, 0].any()
    own = LONG.copy()
    convert(own, "% w/w", "g/L", out=own)
    assert np.array_equal(own, want)
    # Out of the first half of an array into its second.
    halves = LONG.copy()
    convert(halves[:2000:2], "% w/w", "g/L", out=halves[2000:3000])
    assert np.array_equal(halves[2000:3000], want[:2000:2]) and np.array_equal(halves[:2000], LONG[:2000])
    turned = LONG.copy()
    convert(turned[::-1], "% w/w", "g/L", out=turned)
    assert np.array_equal(turned, want[::-1])
    pair = (np.empty_like(LONG), np.empty_like(LONG))
    found = dilute(12.0, LONG, 60.0, out=pair)
    assert found.stock_g is pair[0] and found.diluent_g is pair[1]
    assert np.array_equal(pair[0] + pair[1], np.full(LONG.size, 60.0))
    three = (out, np.empty_like(LONG), np.empty_like(LONG))
    assert density_interval(LONG, out=three).low is out
    assert np.array_equal(three[1], density(LONG))
    with pytest.raises(FoilworkError, match="out has the shape"):
        convert(LONG, "% w/w", "g/L", out=np.empty(3))
    with pytest.raises(FoilworkError, match="cannot be written"):
        convert(LONG[:3], "% w/w", "g/L", out=np.broadcast_to(1.0, 3))
    with pytest.raises(FoilworkError, match="out has one array for two results: give one for each"):
        dilute(12.0, LONG, 60.0, out=(out, out))
    with pytest.raises(FoilworkError, match="tuple of 2 arrays"):
        dilute(12.0, LONG, 60.0, out=out)  # type: ignore[call-overload]
    with pytest.raises(TypeError, match="array of float64, not of float32"):
        convert(LONG, "% w/w", "g/L", out=np.empty(LONG.size, np.float32))


@pytest.mark.parametrize(
    ("shape", "lay"),
    [
        (6, lambda z: (z, z)),
        (12, lambda z: (z[::2], z[::2])),
        (12, lambda z: (z[::2], z[10::-2])),
        (9, lambda z: (z[:6], z[3:])),
        ((2, 3), lambda z: (np.asfortranarray(z),) * 2),
        ((3, 2), lambda z: (z.T, z.reshape(2, 3))),
    ],
)
@pytest.mark.parametrize("rows", [None, True])
def test_two_results_never_share_a_place(shape: Any, lay: Callable[[Floats], Any], rows: bool | None) -> None:
    out = lay(np.zeros(shape))
    with pytest.raises(FoilworkError, match="out has one array for two results: give one for each"):
        dilute(np.full(out[0].shape, 12.0), 3.0, 60.0, out=out, where=rows)
    assert not out[0].any() and not out[1].any()


def test_columns_of_one_table_share_no_place() -> None:
    for table in (np.full((4, 3), -1.0), np.full((4, 3), -1.0, order="F"), np.full((8, 3), -1.0)[::2]):
        density_interval(LONG[:4], out=(table[:, 0], table[:, 1], table[:, 2]), where=[True, True, True, False])
        np.testing.assert_array_equal(table[:3], np.column_stack(tuple(density_interval(LONG[:3]))))
        assert (table[3] == -1.0).all()


@pytest.mark.parametrize("strength_ww_percent", [12.0, np.full(2, 12.0)])
def test_what_is_no_place_for_results_is_refused_alike(strength_ww_percent: Any) -> None:
    no_pairs: list[Any] = [(), [], "x", "xy", np.zeros(3)]
    for several in no_pairs:
        with pytest.raises(FoilworkError, match="out must be a tuple of 2 arrays"):
            dilute(strength_ww_percent, 3.0, 60.0, out=several)
    for one, named in (((), "tuple"), ([], "list"), ("x", "str"), (np.zeros(2, ">f8"), "of >f8")):
        with pytest.raises(TypeError, match=f"out must be an array of float64, not .*{named}"):
            density(strength_ww_percent, out=one)  # type: ignore[arg-type]


def test_without_numpy_numbers_do_and_arrays_say_what_they_need() -> None:
    """Bad input is a ``FoilworkError``, not a panic, where NumPy cannot be imported."""
    program = """
import sys
sys.modules["numpy"] = None
from fractions import Fraction
from foilwork import FoilworkError
from foilwork.colour import lab_to_lch
from foilwork.money import cost_columns
from foilwork.peroxide import density, dilute
assert dilute(12, 3, Fraction(60)).stock_g == 15 and lab_to_lch((50, 3, 4))[1] == 5
for call in (
    lambda: density([6.0]), lambda: density(6.0, out="x"), lambda: density(6.0, where=[True]),
    lambda: lab_to_lch([[50, 3, 4]]), lambda: lab_to_lch((50, 3)), lambda: cost_columns(*[[1]] * 7, TERMS),
):
    try:
        call()
    except FoilworkError as error:
        assert "need numpy (pip install" in str(error), error
    else:
        raise AssertionError
print("done")
"""
    done = subprocess.run([sys.executable, "-c", program.replace("TERMS", repr(TERMS))], capture_output=True, text=True)
    assert done.stdout == "done\n", done.stderr


def test_an_array_that_another_thread_writes_to_is_refused() -> None:
    """Until it is, the writer goes on; a panic would not be a ``FoilworkError``."""
    values, out = np.full(400_000, 6.0), np.zeros(400_000)
    refused = threading.Event()

    def write() -> None:
        for _ in range(2_000):
            if not refused.is_set():
                convert(values, "% w/w", "volumes", out=out)

    writer = threading.Thread(target=write)
    writer.start()
    reading: list[Callable[[], Any]] = [
        lambda: density(out[:3]),
        lambda: lab_to_lch(out[:6].reshape(2, 3)),
        lambda: ciede2000((50.0, 0.0, 0.0), out[:6].reshape(2, 3)),
        lambda: cost_columns([1], out[:1], [1], [0], [0], [1], [1], TERMS),
    ]
    try:
        for read in reading:
            told = ""
            while writer.is_alive() and not told:
                try:
                    read()
                except FoilworkError as error:
                    told = str(error) if "thread" in str(error) else ""
            assert told == "an argument is being written to by another thread: wait for it, or give a copy"
    finally:
        refused.set()
        writer.join()


def test_masked_colours_are_missing_and_no_colour_is_made_of_anything_else() -> None:
    labs = np.ma.array(LABS, mask=False)
    labs[3, 1] = np.ma.masked
    plain = LABS.copy()
    plain[3] = math.nan
    one = (50.0, 10.0, -10.0)
    np.testing.assert_array_equal(lab_to_lch(labs), lab_to_lch(plain))
    np.testing.assert_array_equal(ciede2000(one, labs), ciede2000(one, plain))
    assert np.isnan(ciede2000(labs, one)).tolist() == [row == 3 for row in range(40)]
    with pytest.raises(FoilworkError, match=r"a\* .*NaN"):
        lab_to_lch(labs[3])
    wrong: list[Any] = [
        (True, False, True),
        (50.0, True, 2.0),
        ("50", "1", "2"),
        "abc",
        b"abc",
        (None, 1.0, 2.0),
        (1j, 1.0, 2.0),
        LABS > 0,
        LABS.astype(str),
        LABS.astype(complex),
        LABS.astype("m8[s]"),
        np.ma.array(LABS > 0, mask=LABS > 50),
    ]
    for colour in wrong:
        with pytest.raises(TypeError, match=r"expected (a number|numbers)"):
            lab_to_lch(colour)
        with pytest.raises(TypeError, match=r"expected (a number|numbers)"):
            ciede2000(one, colour)
    with pytest.raises(TypeError, match="not an array of bool"):
        density(np.ma.array([True, False], mask=[False, True]))


LABS = np.random.default_rng(5).uniform((0, -60, -60), (100, 60, 60), (40, 3))


def test_colours_for_a_screen_are_the_scalar_ones() -> None:
    labs = LABS.copy()
    labs[3], labs[7, 1] = (120.0, 0.0, 0.0), math.nan
    with pytest.warns(OutOfRangeWarning, match=r"^1 value .* index \(0, 3\)"):
        channels, in_gamut = lab_to_srgb(labs.reshape(4, 10, 3), errors="nan")
    assert channels.shape == (4, 10, 3) and in_gamut.shape == (4, 10) and in_gamut.dtype == bool
    for place, (lab, shown, itself) in enumerate(zip(labs, channels.reshape(40, 3), in_gamut.ravel(), strict=True)):
        if place in (3, 7):
            assert np.isnan(shown).all() and not itself
        else:
            one = lab_to_srgb(tuple(lab))
            assert "#" + "".join(f"{int(channel):02x}" for channel in shown) == one.hex and itself == one.in_gamut
    with pytest.raises(FoilworkError, match=r"^index 3: .*L\*"):
        lab_to_srgb(labs)


def test_colours_and_levels_go_where_they_are_told_to() -> None:
    want = lab_to_lch(LABS)
    out, rows = np.full_like(LABS, -1.0), np.arange(40) % 2 == 0
    assert lab_to_lch(LABS, out=out, where=rows) is out
    assert np.array_equal(out[::2], want[::2]) and (out[1::2] == -1.0).all()
    own = LABS.copy()
    assert lab_to_lch(own, out=own) is own and np.array_equal(own, want)
    some = lab_to_xyz(LABS, where=rows)
    assert np.array_equal(some[::2], lab_to_xyz(LABS)[::2]) and np.isnan(some[1::2]).all()
    one = (50.0, 10.0, -10.0)
    apart = ciede2000(one, LABS)
    found = np.zeros(40)
    assert ciede2000(LABS, one, out=found) is found and np.array_equal(found, ciede2000(LABS, one))
    pairs: list[Any] = [(one, LABS), (LABS, one), (LABS, LABS[::-1].copy())]
    for pair in pairs:
        found = np.full(40, -1.0)
        ciede2000(*pair, out=found, where=rows)
        assert np.array_equal(found[::2], ciede2000(*pair)[::2]) and (found[1::2] == -1.0).all()
    np.testing.assert_allclose(apart, ciede2000(LABS, one), rtol=1e-12)
    with pytest.raises(FoilworkError, match="out has the shape"):
        ciede2000(LABS, one, out=np.zeros(3))
    minutes, bounds = np.linspace(0.0, 50.0, 40), (np.full(40, -1.0), np.full(40, -1.0), np.full(40, -1.0))
    low, best, high = LIGHTENING.level_after(minutes, out=bounds, where=rows)
    assert low is bounds[0] and np.array_equal(best[::2], LIGHTENING.level_after(minutes)[1][::2])
    assert (high[1::2] == -1.0).all()
    assert np.isnan(LIGHTENING.minutes_to(np.full(3, 6.0), where=[True, False, True])[0]).tolist() == [
        False,
        True,
        False,
    ]


def test_hair_over_columns_is_plane_geometry_and_growth() -> None:
    """By NumPy and SciPy: the law of growth, and the perimeter of an ellipse by its elliptic integral."""
    from scipy.special import ellipe

    minor, major = np.linspace(40.0, 80.0, 50), np.linspace(80.0, 120.0, 50)
    area_um2, circumference_mm = hair_cut(minor, major)
    np.testing.assert_allclose(area_um2, np.pi / 4 * minor * major, rtol=1e-14)
    perimeter_um = 2 * major * ellipe(1 - (minor / major) ** 2)
    np.testing.assert_allclose(circumference_mm, perimeter_um / 1000, rtol=1e-6)
    weeks, rates = np.linspace(1.0, 50.0, 40), np.linspace(0.5, 1.6, 40)
    out = tuple(np.empty(40) for _ in range(3))
    found = grown(weeks, rates, out=out)  # type: ignore[arg-type]
    assert found.best is out[1] and np.array_equal(found.low, found.high)
    # A month of a year of 365.25 days.
    np.testing.assert_allclose(found.best, weeks * 7 / (365.25 / 12) * rates, rtol=1e-14)
    np.testing.assert_allclose(weeks_to_grow(found.best, rates).best, weeks, rtol=1e-14)
    bounds = grown(weeks, (0.8, 1.1, 1.4))
    np.testing.assert_allclose(bounds.high / bounds.low, 1.4 / 0.8, rtol=1e-14)
    kept = by_caliper([108.78, 999.0], "scalp-camera", where=[True, False])
    assert round(kept[0], 1) == 77.1 and math.isnan(kept[1])
    with pytest.raises(FoilworkError, match=r"^index 1: .*weeks"):
        grown([1, -1])
    with pytest.raises(TypeError, match="low, best, high"):
        grown((1, 2))


def test_rows_can_be_left_out() -> None:
    values = np.array([3.0, 500.0, 6.0, np.nan])
    rows = np.array([True, False, True, True])
    found = convert(values, "% w/w", "volumes", where=rows)
    want = [convert(3.0, "% w/w", "volumes"), np.nan, convert(6.0, "% w/w", "volumes"), np.nan]
    assert np.array_equal(found, want, equal_nan=True)
    out = np.full(4, -1.0)
    convert(values, "% w/w", "volumes", out=out, where=rows)
    assert np.array_equal(out, [want[0], -1.0, want[2], np.nan], equal_nan=True)
    assert np.array_equal(lift_needed(5.0, 9.0, where=[True, False]), [4.0, np.nan], equal_nan=True)
    spread = dilute(12.0, LONG[:3, None], 60.0, where=np.array([True, False])).stock_g
    assert spread.shape == (3, 2) and np.isnan(spread[:, 1]).all() and not np.isnan(spread[:, 0]).any()
    with pytest.raises(TypeError, match="booleans"):
        convert(values, "% w/w", "volumes", where=[1, 0, 1, 1])
    with pytest.raises(FoilworkError, match="where has the shape"):
        convert(values, "% w/w", "volumes", where=[True, False])


def test_other_threads_run_meanwhile() -> None:
    started, seen = threading.Event(), threading.Event()

    def watch() -> None:
        started.wait()
        seen.set()

    watcher = threading.Thread(target=watch)
    values, out = np.full(3_000_000, 6.0), np.empty(3_000_000)
    interval = sys.getswitchinterval()
    try:
        watcher.start()
        sys.setswitchinterval(60.0)  # so that only a call that gives way lets the other thread run
        started.set()
        convert(values, "% w/w", "volumes", out=out)
        assert seen.is_set()
    finally:
        sys.setswitchinterval(interval)
        watcher.join()


def test_the_bench_still_runs(root: Path) -> None:
    bench = [sys.executable, str(root / "benches/python/columns.py"), "--quick"]
    done = subprocess.run(bench, capture_output=True, text=True, check=False)
    assert done.returncode == 0 and "costs, exact beside float" in done.stdout, done.stderr
