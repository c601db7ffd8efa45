"""Lift forecasts, inverse questions and learning beside NumPy and SciPy, and sections that finish together.

Run ``python benches/python/lift.py`` (release build of the module); ``--quick`` takes small columns. Both sides solve
the same task in one run: the reference spells out the law with foilwork's stated assumptions. Times are processor time,
over all threads, of the best of several runs.
"""

import argparse
import time
from collections.abc import Callable

import numpy as np
from numpy import float64
from numpy.typing import NDArray
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, least_squares

from foilwork.lift import Belief, Lightening, Situation, StrandReading, TimedSection, finish_together

Array = NDArray[float64]

K, KD, CEILING = 0.041, 0.030, 10.2
# Variances of ln k (salon, product, guest), of ln kd, and the spread of the ceiling.
RATE, LOSS, TOP = 0.35**2 + 0.42**2 + 0.51**2, 0.5**2, 0.4
RESISTING, SLOWER = 0.09, 0.45
Z80 = 1.2815515655446004
LONG_ENOUGH = 0.01  # s


def best_of(function: Callable[[], object], repeats: int) -> float:
    """Least processor time of several runs, in seconds; a short one is repeated until the clock can tell it."""
    times = []
    for _ in range(repeats):
        calls, start = 0, time.process_time()
        while calls == 0 or time.process_time() - start < LONG_ENOUGH:
            function()
            calls += 1
        times.append((time.process_time() - start) / calls)
    return min(times)


def left(dose: Array) -> Array:
    return np.asarray((1 - RESISTING) * np.exp(-dose) + RESISTING * np.exp(-SLOWER * dose))


def numpy_levels(times: Array, start: float) -> tuple[Array, Array, Array]:
    """Median and 80 % interval of the level of untested hair, as NumPy has it."""
    spent = KD * times
    used = -np.expm1(-spent)
    dose = K / KD * used
    sensitivity = np.where(spent > 1e-8, spent * (1 - used) / np.maximum(used, 1e-300) - 1, -spent / 2)
    spread = np.exp(Z80 * np.sqrt(RATE + sensitivity**2 * LOSS))
    way = CEILING - start
    low, best, high = (way * (1 - left(one)) for one in (dose / spread, dose, dose * spread))
    ceiling = Z80 * TOP * best / way
    least = 2.0 * np.minimum(times / 10, 1)
    down, up = (np.maximum(np.hypot(one, ceiling), least) for one in (best - low, high - best))
    top = start + way + Z80 * TOP
    return np.maximum(start + best - down, start), start + best, np.minimum(start + best + up, min(top, 12.0))


def scipy_minutes(target: float, start: float) -> float:
    """Min to a level by integrating the law and finding the root."""

    def change(_t: float, state: Array) -> list[float]:
        most, rest, oxidant = state
        return [-K * oxidant * most, -SLOWER * K * oxidant * rest, -KD * oxidant]

    first = [1 - RESISTING, RESISTING, 1.0]
    found = solve_ivp(change, (0.0, 240.0), first, dense_output=True, rtol=1e-8, atol=1e-10)

    def miss(at: float) -> float:
        most, rest, _ = found.sol(at)
        return float(start + (CEILING - start) * (1 - most - rest) - target)

    return float(brentq(miss, 0.0, 240.0))


def scipy_fit(readings: list[tuple[float, float, float]]) -> object:
    """The same estimate by least squares: two rates, the ceiling, a deviation each for guest and product."""
    centre = np.array([np.log(K), np.log(KD), CEILING, 0.0, 0.0])
    sds = np.array([0.35, 0.5, 0.4, 0.51, 0.42])
    times, before, after = np.array(readings).T

    def residuals(x: Array) -> Array:
        rate, kd = np.exp(x[0] + x[3] + x[4]), np.exp(x[1])
        lifted = (x[2] - before) * (1 - left(rate / kd * -np.expm1(-kd * times)))
        return np.concatenate([(x - centre) / sds, (before + lifted - after) / (0.35 * np.sqrt(2))])

    def loss(z: Array) -> Array:
        rho = np.vstack([z, np.ones_like(z), np.zeros_like(z)])
        far = z[5:]
        rho[:, 5:] = 4 * np.log1p(far / 4), 1 / (1 + far / 4), -0.25 / (1 + far / 4) ** 2
        return rho

    return least_squares(residuals, centre, loss=loss)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="small columns, for the tests")
    quick = parser.parse_args().quick
    rows, repeats = (10_000, 1) if quick else (1_000_000, 7)
    times = np.random.default_rng(1).uniform(0, 90, rows)
    lightening = Lightening(Situation(4), 4)
    ours, theirs = lightening.level_after(times), numpy_levels(times, 4.0)
    assert all(np.allclose(one, other, atol=1e-9) for one, other in zip(ours, theirs, strict=True))
    assert abs(lightening.minutes_to(7.0).best - scipy_minutes(7.0, 4.0)) < 1e-4
    readings = [(10.0 + 2 * i, 3.0 + i % 4, 6.0 + (i % 5) * 0.5) for i in range(20)]
    strands = [
        StrandReading(Situation(4), time_min=t, before_level=b, after_level=a, guest="g", product="p")
        for t, b, a in readings
    ]
    strengths = [1.5, 2, 3, 4, 5, 6]
    sections = [
        TimedSection(
            Situation(4), strengths, start_level=4 + i * 0.2, target_level=7, apply_min=3, longest_min=50,
            tolerance_levels=1,
        )
        for i in range(12)
    ]  # fmt: skip
    levels = [5 + i / 100 for i in range(200)]
    lines = [
        (
            f"level with its bounds, {rows} times",
            "NumPy",
            best_of(lambda: lightening.level_after(times), repeats),
            best_of(lambda: numpy_levels(times, 4.0), repeats),
        ),
        (
            "minutes to a level",
            "solve_ivp, brentq",
            best_of(lambda: [lightening.minutes_to(level) for level in levels], repeats) / len(levels),
            best_of(lambda: scipy_minutes(7.0, 4.0), repeats),
        ),
        (
            "learn from 20 strands",
            "least_squares",
            best_of(lambda: Belief(strands, guest="g", product="p"), repeats),
            best_of(lambda: scipy_fit(readings), repeats),
        ),
    ]
    print(f"{'task':<40} {'foilwork':>12} {'reference':>12} {'ratio':>8}  reference")
    for task, reference, mine, other in lines:
        print(f"{task:<40} {mine * 1e6:>9.1f} us {other * 1e6:>9.1f} us {other / mine:>7.1f}x  {reference}")
    together = best_of(lambda: finish_together(sections, 10), repeats)
    print(f"{'12 sections, 6 strengths, together':<40} {together * 1e6:>9.1f} us")


if __name__ == "__main__":
    main()
