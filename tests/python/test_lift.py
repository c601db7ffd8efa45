"""Lift against SciPy: the law against an ODE solver, the estimates against least squares; columns against scalars."""

import csv
import pickle
import subprocess
import sys
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy import float64
from numpy.typing import NDArray
from scipy.integrate import solve_ivp
from scipy.optimize import least_squares
from scipy.stats import norm

from foilwork import FoilworkError, OutOfRangeWarning
from foilwork.lift import (
    Belief,
    Lightening,
    Situation,
    StrandReading,
    TimedSection,
    after_look,
    finish_together,
    read_strand_book,
    strand_line,
)

Array = NDArray[float64]
DATA = Path(__file__).resolve().parents[1] / "data" / "lift"

# The assumptions that the docs state: the share of the pigment that resists and how fast it goes; prior medians and
# spreads of ln k, ln kd and the ceiling; the 80 % interval is 1.28 standard deviations either way.
RESISTING, SLOWER = 0.09, 0.45
MEDIANS = np.array([np.log(0.041), np.log(0.030), 10.2])
SALON, PRODUCT, GUEST, OXIDANT, CEILING = 0.35, 0.42, 0.51, 0.5, 0.4
EYE, STUDENT = 0.35 * np.sqrt(2.0), 4.0  # both levels were read
Z80 = norm.ppf(0.9)
GAS = 8.314462618e-3


def integrated(start: float, k: float, kd: float, ceiling: float, times: Array) -> Array:
    """Two pigments and an oxidant that is used up, step by step: no closed form."""

    def change(_t: float, state: Array) -> list[float]:
        most, rest, oxidant = state
        return [-k * oxidant * most, -SLOWER * k * oxidant * rest, -kd * oxidant]

    first = [1.0 - RESISTING, RESISTING, 1.0]
    found = solve_ivp(change, (0.0, times[-1]), first, t_eval=times, rtol=1e-10, atol=1e-12, method="LSODA")
    return np.asarray(start + (ceiling - start) * (1.0 - found.y[0] - found.y[1]))


@pytest.mark.parametrize(
    ("strength", "celsius", "start"), [(4.0, 25.0, 4.0), (2.0, 20.0, 6.0), (6.0, 32.0, 2.0), (8.0, 25.0, 5.0)]
)
def test_median_is_the_solution_of_the_ode(strength: float, celsius: float, start: float) -> None:
    # Order 0.75 in the strength, 50 kJ/mol: the medians of the two levers that are off the reference here.
    times = np.array([0.0, 5.0, 15.0, 30.0, 45.0, 60.0, 120.0])
    k0, kd, ceiling = np.exp(MEDIANS[0]), np.exp(MEDIANS[1]), MEDIANS[2]
    heat = np.exp(50.0 / GAS * (1.0 / 298.15 - 1.0 / (celsius + 273.15)))
    k = k0 * (strength / 4.0) ** 0.75 * heat
    lightening = Lightening(Situation(strength, temperature_c=celsius), start)
    _, best, _ = lightening.level_after(times)
    want = integrated(start, k, kd, ceiling, times)
    assert np.abs(best - want).max() < 1e-6
    # And the inverse question leads back to the time.
    back = lightening.minutes_to(np.minimum(want[1:-1], 12.0))[1]
    assert np.allclose(back, times[1:-1], rtol=1e-5)


def test_fresh_applications_add_their_doses() -> None:
    k, kd, ceiling = np.exp(MEDIANS[0]), np.exp(MEDIANS[1]), MEDIANS[2]

    def change(_t: float, state: Array) -> list[float]:
        most, rest, oxidant = state
        return [-k * oxidant * most, -SLOWER * k * oxidant * rest, -kd * oxidant]

    first = solve_ivp(change, (0.0, 30.0), [1 - RESISTING, RESISTING, 1.0], rtol=1e-10, atol=1e-12)
    again = solve_ivp(change, (0.0, 20.0), [*first.y[:2, -1], 1.0], rtol=1e-10, atol=1e-12)
    want = 3.0 + (ceiling - 3.0) * (1.0 - again.y[0, -1] - again.y[1, -1])
    got = Lightening(Situation(4), 3).after(30).level_after(20.0)
    assert got.best == pytest.approx(want, abs=1e-6)


def fit(readings: list[tuple[float, float, float]]) -> tuple[Array, Array]:
    """The most likely numbers and their covariance, by SciPy: prior, and readings with Student-like loss."""
    sds = np.array([SALON, OXIDANT, CEILING, GUEST, PRODUCT])
    centre = np.array([*MEDIANS, 0.0, 0.0])

    def residuals(x: Array) -> Array:
        rate, kd = np.exp(x[0] + x[3] + x[4]), np.exp(x[1])
        found = [(x - centre) / sds]
        for time, before, after in readings:
            dose = rate / kd * (1.0 - np.exp(-kd * time))
            left = (1 - RESISTING) * np.exp(-dose) + RESISTING * np.exp(-SLOWER * dose)
            found.append(np.array([(before + (x[2] - before) * (1.0 - left) - after) / EYE]))
        return np.concatenate(found)

    def loss(z: Array) -> Array:
        # The prior counts as it is; a reading as 4 ln(1 + r^2 / 4), which is twice Student's.
        rho = np.vstack([z, np.ones_like(z), np.zeros_like(z)])
        far = z[5:]
        rho[:, 5:] = STUDENT * np.log1p(far / STUDENT), 1 / (1 + far / STUDENT), -1 / STUDENT / (1 + far / STUDENT) ** 2
        return rho

    options: dict[str, Any] = {"xtol": 1e-14, "ftol": 1e-14, "gtol": 1e-12}
    found = least_squares(residuals, centre, loss=loss, **options)
    jacobian = least_squares(residuals, found.x, **{**options, "max_nfev": 1}).jac
    r = residuals(found.x)
    weight = np.where(np.arange(len(r)) < 5, 1.0, 1.0 / (1.0 + r**2 / STUDENT))
    return found.x, np.linalg.inv(jacobian.T @ (weight[:, None] * jacobian))


SERIES = {
    "one": [(30.0, 4.0, 8.0)],
    "two": [(15.0, 5.0, 6.5), (40.0, 5.0, 8.0)],
    "one of them bad": [(15.0, 5.0, 6.5), (30.0, 5.0, 7.5), (40.0, 5.0, 8.0), (35.0, 5.0, 5.0)],
    "twenty": [(10.0 + 2 * i, 3.0 + i % 4, 6.0 + (i % 5) * 0.5) for i in range(20)],
}


@pytest.mark.parametrize("name", SERIES)
def test_estimates_are_those_of_least_squares(name: str) -> None:
    readings = SERIES[name]
    x, covariance = fit(readings)
    strands = [
        StrandReading(Situation(4), time_min=time, before_level=before, after_level=after, guest="g", product="p")
        for time, before, after in readings
    ]
    belief = Belief(strands, guest="g", product="p")
    rate = np.array([1.0, 0.0, 0.0, 1.0, 1.0])
    assert np.log(belief.pigment_per_min.best) == pytest.approx(rate @ x, abs=2e-5)
    assert np.log(belief.oxidant_per_min.best) == pytest.approx(x[1], abs=2e-5)
    assert belief.ceiling.best == pytest.approx(min(x[2], 12.0), abs=2e-5)
    spread = np.log(belief.pigment_per_min.high / belief.pigment_per_min.best) / Z80
    assert spread == pytest.approx(np.sqrt(rate @ covariance @ rate), rel=1e-3)


def test_series_of_levels_is_met_within_one_step() -> None:
    # Two steps of that scale count as one level; the page is named in tests/data/lift/sources.csv.
    with (DATA / "level_series.csv").open() as file:
        rows = [(float(row["min"]), float(row["level_of_20"]) / 2) for row in csv.DictReader(file)]
    start = rows[0][1]
    strands = [StrandReading(Situation(4), time_min=t, before_level=start, after_level=a) for t, a in rows[1:]]
    lightening = Lightening(Situation(4), start, Belief(strands))
    times, levels = np.array(rows).T
    assert np.abs(lightening.level_after(times)[1] - levels).max() <= 0.5


# --- columns --------------------------------------------------------------------------------------------------------


def test_columns_are_the_scalars_row_by_row() -> None:
    lightening = Lightening(Situation((3, 4, 4.5), temperature_c=30), 4.5)
    times = np.linspace(0, 180, 50_000)
    low, best, high = lightening.level_after(times)
    assert (low <= best).all() and (best <= high).all()
    for row in range(0, len(times), 4999):
        assert lightening.level_after(float(times[row])) == (low[row], best[row], high[row])
    levels = np.linspace(4.5, 10, 200).reshape(20, 10)
    early, median, late = lightening.minutes_to(levels)
    assert early.shape == (20, 10)
    for place in [(0, 0), (5, 5), (19, 9)]:
        time = lightening.time_to(levels[place])
        want = [np.inf if at is None else at for at in (time.early_min, time.median_min, time.late_min)]
        assert [early[place], median[place], late[place]] == want
    chance = lightening.chance_by(np.array([[6.0], [8.0]]), np.array([10.0, 40.0, 60.0]))
    assert chance.shape == (2, 3) and chance[1, 2] == lightening.chance_by(8.0, 60.0)


def test_what_is_refused_or_missing_in_a_column() -> None:
    lightening = Lightening(Situation(4), 4)
    with pytest.raises(FoilworkError, match="index 1: invalid duration"):
        lightening.level_after(np.array([10.0, -1.0]))
    with pytest.warns(OutOfRangeWarning):
        low, best, high = lightening.level_after(np.array([10.0, -1.0, np.nan]), errors="nan")
    assert np.isnan([low[1:], best[1:], high[1:]]).all() and best[0] > 4
    with pytest.raises(FoilworkError, match="invalid level"):
        lightening.minutes_to(13.0)


def test_a_book_is_read_back() -> None:
    strands = [
        StrandReading(Situation((3.5, 4, 4.2), ph=10, texture="fine"), time_min=31.5, before_level=4.5,
                      after_level=8, reader="instrument", guest='J-0"14, b', product="Foam Line powder"),
        StrandReading(Situation(2), time_min=20, before_level=6, after_level=7),
    ]  # fmt: skip
    text = strand_line(None) + "".join(strand_line(strand) for strand in strands)
    book = read_strand_book(text)
    assert (book.readings, book.problems) == (strands, [])
    torn = read_strand_book(text[:-15])
    assert (torn.readings, [problem.line for problem in torn.problems]) == (strands[:1], [3])


def test_a_look_narrows_the_forecast() -> None:
    look = after_look(Belief(), Situation(4), start_level=5, target_level=8, at_min=20, seen_level=6.5, limit_min=50)
    assert look.next == "go-on" and look.belief.readings == 1

    def width(belief: Belief) -> float:
        low, _, high = Lightening(Situation(4), 5, belief).level_after(50.0)
        return high - low

    assert width(look.belief) < width(Belief())
    assert Lightening(Situation(4), 5, look.belief).time_to(8) == look.reached


def test_a_notebook_shows_a_picture() -> None:
    svg = Lightening(Situation(4), 4)._repr_svg_()
    assert svg.startswith("<svg ") and "a strand decides" in svg and "<script" not in svg


def test_the_bench_runs() -> None:
    # It also checks that foilwork and the references solve the same task.
    script = Path(__file__).resolve().parents[2] / "benches/python/lift.py"
    done = subprocess.run([sys.executable, str(script), "--quick"], capture_output=True, text=True, check=True)
    assert "12 sections" in done.stdout


def test_a_start_with_bounds_widens_what_rests_on_it() -> None:
    known, read = Lightening(Situation(4), 4), Lightening(Situation(4), (3.5, 4, 4.5))
    assert read.start_level == (3.5, 4, 4.5) and known.start_level.is_exact
    assert pickle.loads(pickle.dumps(read)) == read != known
    times = np.linspace(0, 60, 7)
    (low, best, high), (lower, same, higher) = known.level_after(times), read.level_after(times)
    assert (lower < low).all() and (same == best).all() and (higher >= high).all()
    chance = read.chance_between(8, 40)
    assert chance.low < chance.best == known.chance_by(8, 40) < chance.high

    def section(start: Any) -> TimedSection:
        return TimedSection(Situation(4), [4], start_level=start, target_level=7, apply_min=5, longest_min=60)

    one, other = (finish_together([section(start)], 10).sections[0].level for start in (5, (4.5, 5, 5.5)))
    assert other.low < one.low and other.best == one.best and other.high > one.high
    assert pickle.loads(pickle.dumps(section((4.5, 5, 5.5)))).start_level == (4.5, 5, 5.5)
    with pytest.raises(FoilworkError, match="invalid interval"):
        section((5, 4, 6))


def test_open_air_is_an_oxidant_that_is_lost_faster() -> None:
    # The docs' rate with half of the water gone in 70 min: two losses add up.
    times = np.array([0.0, 10.0, 30.0, 60.0])
    _, best, _ = Lightening(Situation(4, cover="open-air"), 4).level_after(times)
    want = integrated(4.0, float(np.exp(MEDIANS[0])), float(np.exp(MEDIANS[1])) + 0.010, MEDIANS[2], times)
    assert np.abs(best - want).max() < 1e-6
