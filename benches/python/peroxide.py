"""Peroxide beside the reference libraries: one table of times and ratios.

Run it on an optimised build (``maturin develop --release``). The best of several rounds counts, and the two sides take
turns so that a busy machine slows both. ``--quick`` uses small inputs, to check that the script still runs.
"""

import argparse
import time
from collections.abc import Callable
from typing import NamedTuple

import numpy as np
import pint
from numpy import float64
from numpy.typing import NDArray
from scipy.optimize import linprog

from foilwork.peroxide import Stock, blend_shelf, convert, dilute

Array = NDArray[float64]

G_PER_MOL = 34.014
VOLUMES_PER_MOL_PER_L = 8.31446261815324 * 273.15 / 101.325 / 2
# The density law at 20 C, as a plain expression would have it.
T = 20.0
A = (
    999.83952 + T * (16.945176 + T * (-7.9870401e-3 + T * (-46.170461e-6 + T * (105.56302e-9 + T * -280.54253e-12))))
) / (1000.0 + 16.87985 * T)
B = 0.39763 + T * (-2.8732e-3 + T * (3.2488e-5 + T * -1.6363e-7))
C = 0.02206 + T * (3.5357e-3 + T * (-6.0947e-5 + T * 3.6165e-7))
D = 0.05187 + T * (-1.9414e-3 + T * (3.9061e-5 + T * -2.55e-7))


class Row(NamedTuple):
    """One comparison: seconds for each side, and what each side did."""

    task: str
    reference: str
    ours_s: float
    theirs_s: float


def race(task: str, reference: str, ours: Callable[[], object], theirs: Callable[[], object], rounds: int) -> Row:
    """Best time of each side, taking turns."""
    best = [float("inf"), float("inf")]
    for _ in range(rounds):
        for side, run in enumerate((ours, theirs)):
            start = time.perf_counter()
            run()
            best[side] = min(best[side], time.perf_counter() - start)
    return Row(task, reference, best[0], best[1])


def wv_to_volumes(wv: Array) -> Array:
    """% w/v to volumes as a plain expression."""
    return wv * 10.0 / G_PER_MOL * VOLUMES_PER_MOL_PER_L


def ww_to_volumes(ww: Array) -> Array:
    """% w/w to volumes as a plain expression."""
    x = ww / 100.0
    return 1000.0 * x * (A + x * (B + x * (C + x * D))) / G_PER_MOL * VOLUMES_PER_MOL_PER_L


def wv_to_ww(wv: Array) -> Array:
    """% w/v to % w/w as plain expressions: three Newton steps from the density of water."""
    y = wv / 100.0
    x = y / (A + B * y)
    for _ in range(3):
        x = x - (x * (A + x * (B + x * (C + x * D))) - y) / (A + x * (2.0 * B + x * (3.0 * C + x * 4.0 * D)))
    return 100.0 * x


def columns(rows: int, rounds: int) -> list[Row]:
    """Whole columns, all in range."""
    wv = np.random.default_rng(1).uniform(0.0, 60.0, rows)
    units = pint.UnitRegistry()
    mass = units.Quantity(wv * 10.0, "g/L")
    per_mole = units.Quantity(G_PER_MOL, "g/mol")
    name = f"{rows:,} rows"
    for ours, theirs in [
        (convert(wv, "% w/v", "volumes"), wv_to_volumes(wv)),
        (convert(wv, "% w/w", "volumes"), ww_to_volumes(wv)),
        (convert(wv, "% w/v", "% w/w"), wv_to_ww(wv)),
        (convert(wv, "% w/v", "mol/L"), (mass / per_mole).m_as("mol/L")),
    ]:
        np.testing.assert_allclose(ours, theirs, rtol=1e-9)
    return [
        race(
            f"% w/v to volumes, {name}",
            "NumPy",
            lambda: convert(wv, "% w/v", "volumes"),
            lambda: wv_to_volumes(wv),
            rounds,
        ),
        race(
            f"% w/w to volumes, {name}",
            "NumPy",
            lambda: convert(wv, "% w/w", "volumes"),
            lambda: ww_to_volumes(wv),
            rounds,
        ),
        race(f"% w/v to % w/w, {name}", "NumPy", lambda: convert(wv, "% w/v", "% w/w"), lambda: wv_to_ww(wv), rounds),
        race(
            f"g/L to mol/L, {name}",
            "pint",
            lambda: convert(wv, "g/L", "mol/L"),
            lambda: (mass / per_mole).m_as("mol/L"),
            rounds,
        ),
        race(
            f"dilute, {name}",
            "NumPy",
            lambda: dilute(60.0, wv, 100.0),
            lambda: (100.0 * wv / 60.0, 100.0 - 100.0 * wv / 60.0),
            rounds,
        ),
    ]


def scalars(repeats: int, rounds: int) -> list[Row]:
    """One value at a time, from Python."""
    units = pint.UnitRegistry()
    mass, per_mole = units.Quantity(60.0, "g/L"), units.Quantity(G_PER_MOL, "g/mol")

    def ours() -> None:
        for _ in range(repeats):
            convert(60.0, "g/L", "mol/L")

    def theirs() -> None:
        for _ in range(repeats):
            (mass / per_mole).m_as("mol/L")

    row = race("g/L to mol/L, one value", "pint", ours, theirs, rounds)
    return [row._replace(ours_s=row.ours_s / repeats, theirs_s=row.theirs_s / repeats)]


def shelves(repeats: int, rounds: int) -> list[Row]:
    """Least cost, on shelves of invented bottles."""
    found = []
    for count in (5, 12):
        strengths = np.array([i * 7 % 13 for i in range(count)], dtype=float)
        prices = np.array([4.0 + i * 5 % 11 for i in range(count)])
        bottles = zip(strengths, prices, strict=True)
        stocks = [Stock(str(i), w, in_hand_g=40, price_per_kg=p) for i, (w, p) in enumerate(bottles)]
        rows, right = np.vstack([np.ones(count), strengths - 6.0]), np.array([60.0, 0.0])

        def ours(stocks: list[Stock] = stocks) -> float:
            return blend_shelf(stocks, 6.0, 60.0).cost

        def theirs(prices: Array = prices, rows: Array = rows, right: Array = right) -> float:
            answer = linprog(prices / 1000.0, A_eq=rows, b_eq=right, bounds=(0.0, 40.0), method="highs")
            return float(answer.fun)

        assert abs(ours() - theirs()) < 1e-9
        row = race(
            f"cheapest blend of {count} stocks",
            "SciPy linprog",
            lambda ours=ours: [ours() for _ in range(repeats)],  # type: ignore[misc]
            lambda theirs=theirs: [theirs() for _ in range(repeats)],  # type: ignore[misc]
            rounds,
        )
        found.append(row._replace(ours_s=row.ours_s / repeats, theirs_s=row.theirs_s / repeats))
    return found


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="small inputs, few rounds")
    quick = parser.parse_args().quick
    table = [
        *columns(10_000 if quick else 10_000_000, 2 if quick else 7),
        *scalars(100 if quick else 20_000, 2 if quick else 7),
        *shelves(2 if quick else 50, 2 if quick else 7),
    ]
    print(f"{'task':<40} {'foilwork':>12} {'reference':>12}  {'ratio':>8}  beside")
    for row in table:
        print(
            f"{row.task:<40} {row.ours_s * 1e6:>9.2f} us {row.theirs_s * 1e6:>9.2f} us"
            f"  {row.theirs_s / row.ours_s:>7.1f}x  {row.reference}"
        )


if __name__ == "__main__":
    main()
