"""What a mask of NumPy says of the rows to work on, and of the place for results: of every function that takes both."""

import inspect
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from public_api import PUBLIC
from test_columns import CASES, LIGHTENING, as_rows, bits

from foilwork import FoilworkError
from foilwork.colour import ciede2000, lab_to_lch, lab_to_xyz, lch_to_lab, xyz_to_lab
from foilwork.peroxide import convert, convert_interval, density

LABS = np.array([[40.0, 3.0, 4.0], [60.0, 5.0, 12.0], [70.0, 1.0, 1.0]])
XYZ = LABS / 100

# The first case of each function, over three rows within what is usual of it; then what is no plain column.
CALLS: dict[str, Callable[..., Any]] = {
    "convert": lambda **how: convert([3.0, 6.0, 9.0], "% w/w", "volumes", **how),
    "convert_interval": lambda **how: convert_interval([3.0, 6.0, 9.0], "% w/w", "volumes", **how),
    "ciede2000": lambda **how: ciede2000(LABS, LABS[::-1], **how),
    "lab_to_lch": lambda **how: lab_to_lch(LABS, **how),
    "lab_to_xyz": lambda **how: lab_to_xyz(LABS, **how),
    "lch_to_lab": lambda **how: lch_to_lab(LABS, **how),
    "xyz_to_lab": lambda **how: xyz_to_lab(XYZ, **how),
    "level_after": lambda **how: LIGHTENING.level_after([10.0, 20.0, 30.0], **how),
    "minutes_to": lambda **how: LIGHTENING.minutes_to([5.0, 6.0, 7.0], **how),
}
USUAL = {"dilute_volume": (12.0, 3.0, 60.0, 20.0), "dilute": (12.0, 3.0, 60.0), "blend_two": (12.0, 3.0, 6.0, 60.0)}
USUAL |= {"make_up": (12.0, 3.0, 60.0), "strength_after_make_up": (12.0, 60.0, 90.0)}
USUAL |= {"loss_rate": (6.0, 3.0, 60.0), "time_until": (6.0, 3.0, 0.01), "weeks_to_grow": (3.0, 1.0)}
UNITS = {"make_up in g/L": "make_up", "make_up's strength in g/L": "strength_after_make_up"}
UNITS |= {f"{name} in g/L": name for name in ("strength_after", "loss_rate", "time_until")}


def over_columns(case: Any, row: tuple[float, ...]) -> Callable[..., Any]:
    """The call over three rows that are alike."""
    return lambda **how: case.call(*(np.full(3, value) for value in row), **how)


for case in CASES:
    name = UNITS.get(case.name, case.name)
    row = USUAL.get(name.split(",")[0], tuple(low + (high - low) / 4 for low, high in case.usual))
    CALLS.setdefault(name, over_columns(case, row))


def test_every_function_with_a_place_for_results_is_here() -> None:
    taking = set[str]()
    for name, value in PUBLIC.items():
        members = vars(value) if inspect.isclass(value) else {name.rsplit(".")[-1]: value}
        taking |= {
            key for key, one in members.items() if "where=None" in (getattr(one, "__text_signature__", "") or "")
        }
    assert len(taking) > 25 and taking <= set(CALLS), taking - set(CALLS)


@pytest.mark.parametrize("call", CALLS.values(), ids=CALLS)
def test_a_masked_row_is_not_worked_on(call: Callable[..., Any]) -> None:
    # A masked truth is unknown: no row that somebody asked for.
    rows = np.ma.array([True, True, False], mask=[False, True, False])
    got, plain, want = (as_rows(call(where=where)) for where in (rows, [True, False, False], None))
    for found, without_mask, all_rows in zip(got, plain, want, strict=True):
        assert np.array_equal(bits(found), bits(without_mask)) and type(found) is np.ndarray
        assert np.isnan(found[1:]).all() and np.array_equal(found[0], all_rows[0])


@pytest.mark.parametrize("call", CALLS.values(), ids=CALLS)
def test_a_mask_that_would_stay_is_no_place_for_results(call: Callable[..., Any]) -> None:
    want = as_rows(call())
    for mask in (False, True):
        out = tuple(np.ma.array(np.full_like(one, -1.0), mask=np.broadcast_to(mask, one.shape)) for one in want)
        given = out if len(out) > 1 else out[0]
        for where in (None, [True, False, True]):
            with pytest.raises(FoilworkError, match=r"^out is a masked array, .* \(give out\.data, and"):
                call(out=given, where=where)
        assert all((one.data == -1.0).all() for one in out)
    # The way out: the values without the mask, and what is missing in them hidden afterwards.
    values = tuple(one.data for one in out)
    call(out=values if len(out) > 1 else values[0])
    assert all(np.array_equal(bits(one.data), bits(wanted)) for one, wanted in zip(out, want, strict=True))


def test_a_mask_over_what_is_no_truth_is_refused() -> None:
    with pytest.raises(TypeError, match="booleans"):
        density([6.0, 9.0], where=np.ma.array([1, 0], mask=[False, True]))
    nothing = np.ma.array([True, True], mask=True)
    assert np.isnan(density([6.0, 900.0], where=nothing)).all()
    out = np.full(2, -1.0)
    assert density([6.0, 900.0], out=out, where=nothing).tolist() == [-1.0, -1.0]
