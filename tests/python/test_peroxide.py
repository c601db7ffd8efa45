"""Peroxide from Python, against SciPy's constants and plain NumPy."""

import math

import numpy as np
import pandas as pd
import pytest

from foilwork import FoilworkError, OutOfRangeWarning
from foilwork.peroxide import convert, dilute


def test_numbers_in_a_number_out() -> None:
    assert type(convert(6.0, "% w/v", "g/L")) is float
    assert convert(np.float64(6.0), "% w/v", "g/L") == 60.0


def test_arrays_broadcast_as_ufuncs_do() -> None:
    strengths = np.array([[3.0], [6.0], [12.0]])
    temperatures = np.array([10.0, 20.0, 30.0, 40.0])
    table = convert(strengths, "% w/w", "volumes", temperature_c=temperatures)
    assert table.shape == np.broadcast_shapes(strengths.shape, temperatures.shape)
    assert table.dtype == np.float64
    for (i, j), value in np.ndenumerate(table):
        assert value == convert(float(strengths[i, 0]), "% w/w", "volumes", temperature_c=float(temperatures[j]))


@pytest.mark.parametrize("view", [np.s_[::2], np.s_[::-1], np.s_[1:5]])
def test_views_and_integers(view: slice) -> None:
    whole = np.arange(12)
    assert np.array_equal(convert(whole[view], "% w/v", "g/L"), 10.0 * whole[view])
    turned = np.asfortranarray(np.arange(6.0).reshape(2, 3))
    assert np.array_equal(convert(turned, "% w/v", "g/L"), 10.0 * turned)


def test_missing_stays_missing() -> None:
    values = np.array([1.0, np.nan, 3.0])
    assert np.array_equal(np.isnan(convert(values, "% w/w", "volumes")), [False, True, False])
    stock, _ = dilute(12.0, values, 60.0)
    assert np.array_equal(np.isnan(stock), [False, True, False])
    masked = np.ma.array([1.0, 500.0], mask=[False, True])
    assert math.isnan(convert(masked, "% w/w", "volumes")[1])


def test_refused_rows_raise_or_are_counted() -> None:
    values = [3.0, -1.0, 6.0, 101.0]
    with pytest.raises(FoilworkError, match=r"^index 1: invalid strength \(got -1 % w/w\).*2 values refused"):
        convert(values, "% w/w", "volumes")
    with pytest.warns(OutOfRangeWarning, match="^2 values out of range became NaN; the first at index 1") as caught:
        found = convert(values, "% w/w", "volumes", errors="nan")
    assert caught[0].message.count == 2  # type: ignore[union-attr]
    assert np.array_equal(np.isnan(found), [False, True, False, True])


def test_a_series_comes_back_in_the_order_of_its_rows_without_an_index() -> None:
    bottles = pd.DataFrame({"label_wv_percent": [3.0, 6.0, 12.0]}, index=["weak", "middle", "strong"])
    found = convert(bottles["label_wv_percent"], "% w/v", "g/L")
    assert type(found) is np.ndarray
    bottles["g_per_l"] = found
    assert bottles.loc["strong", "g_per_l"] == 120.0


def test_what_is_no_number_is_a_type_error() -> None:
    for bad in ("6", None, True, ["a"], [None], [1j], np.array([True])):
        with pytest.raises(TypeError, match="number"):
            convert(bad, "% w/w", "volumes")  # type: ignore[call-overload]
    with pytest.raises(FoilworkError, match="do not broadcast"):
        dilute([12.0, 12.0], [1.0, 2.0, 3.0], 60.0)
