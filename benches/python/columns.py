"""Columns beside the plain NumPy expression, and beside the memory: one table of ratios, each pair from one run.

Run it on an optimised build (``maturin develop --release``). The best of several rounds counts, and the two sides take
turns so that a busy machine slows both. ``--quick`` uses short columns, to check that the script still runs; ``--rows``
says how many.
"""

import argparse
import time
from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np
from numpy import float64
from numpy.typing import NDArray

from foilwork.colour import lift_needed, result_level
from foilwork.money import cost_columns
from foilwork.peroxide import convert, density, dilute, loss_rate, mix_two, strength_after

Array = NDArray[float64]

G_PER_MOL = 34.014
TERMS = {
    "currency": "EUR", "wage_per_h": "17.40", "on_costs_percent": 25, "paid_h": 38, "productive_h": 24,
    "overhead": "48000.00", "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
}  # fmt: skip
# In cents for a minute: 17.40 x 1.25 x 38 / 24 / 60, and 48000 / (4 x 1200) / 60.
LABOUR, OVERHEAD = 1740 * 1.25 * 38 / 24 / 60, 4_800_000 / (4 * 1200 * 60)


class Task(NamedTuple):
    """What is worked out, by foilwork and by an expression, and how many bytes have to move for a row."""

    name: str
    ours: Callable[[], Any]
    theirs: Callable[[], Any]
    bytes_a_row: int


def tasks(rows: int) -> list[Task]:
    """Columns of made-up values, all in range."""
    chance = np.random.default_rng(17)
    ww, days = chance.uniform(1.0, 12.0, rows), chance.uniform(1.0, 900.0, rows)
    levels, later = chance.uniform(1.0, 10.0, rows), ww * chance.uniform(0.5, 1.0, rows)
    out, other = np.empty(rows), np.empty(rows)
    pack, used, wasted = (
        chance.choice(np.array([60.0, 500.0]), rows),
        chance.integers(0, 1500, rows) / 10,
        np.ones(rows),
    )
    price, extra = chance.integers(100, 5000, rows), chance.integers(0, 500, rows)
    minutes = chance.integers(5, 180, rows).astype(float)

    def half_up(cents: Array) -> Array:
        return np.floor(cents + 0.5)

    def costs() -> Array:
        product = half_up(price / pack * (used + wasted))
        return product + half_up(minutes * LABOUR) + half_up(minutes * OVERHEAD) + extra

    def their_density() -> Array:
        x = ww / 100.0
        return 0.998207 + x * (0.353169 + x * (0.069834 + x * 0.027641))

    return [
        Task(
            "g/L to mol/L", lambda: convert(ww, "g/L", "mol/L", out=out), lambda: np.divide(ww, G_PER_MOL, out=out), 16
        ),
        Task(
            "g/L to mol/L, every second value",
            lambda: convert(ww[::2], "g/L", "mol/L", out=out[: (rows + 1) // 2]),
            lambda: np.divide(ww[::2], G_PER_MOL, out=out[: (rows + 1) // 2]),
            12,
        ),
        Task(
            "dilute",
            lambda: dilute(12.0, ww, 100.0),
            lambda: (100.0 * ww / 12.0, 100.0 - 100.0 * ww / 12.0),
            24,
        ),
        Task(
            "dilute, three columns",
            lambda: dilute(levels + 12.0, ww, days, out=(out, other)),
            lambda: (days * ww / (levels + 12.0), days - days * ww / (levels + 12.0)),
            40,
        ),
        Task("strength of two parts", lambda: mix_two(0.0, 30.0, ww, days), lambda: days * ww / (30.0 + days), 24),
        Task("density", lambda: density(ww), their_density, 16),
        Task(
            "strength after storage",
            lambda: strength_after(ww, "mol/L", 0.0005, days),
            lambda: ww * np.exp(-0.0005 * days),
            24,
        ),
        Task("loss rate", lambda: loss_rate(ww, later, "mol/L", days), lambda: -np.log(later / ww) / days, 32),
        Task("lift needed", lambda: lift_needed(levels, ww), lambda: np.round(ww - levels, 13), 24),
        Task("resulting level", lambda: result_level(levels, ww), lambda: (levels + ww) / 2.0, 24),
        Task(
            "costs, exact beside float",
            lambda: cost_columns(price, pack, used, wasted, extra, minutes, minutes, TERMS),
            costs,
            88,
        ),
    ]


def race(task: Task, rounds: int) -> tuple[float, float]:
    """Best time of each side in seconds, taking turns."""
    best = [float("inf"), float("inf")]
    for _ in range(rounds):
        for side, run in enumerate((task.ours, task.theirs)):
            start = time.perf_counter()
            run()
            best[side] = min(best[side], time.perf_counter() - start)
    return best[0], best[1]


def bandwidth(rows: int, rounds: int) -> float:
    """Bytes in a second, read and written, of a copy within the memory."""
    source, target = np.ones(rows), np.zeros(rows)
    copy = Task("copy", lambda: np.copyto(target, source), lambda: None, 16)
    return 16 * rows / race(copy, rounds)[0]


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="short columns, few rounds")
    parser.add_argument("--rows", type=int, nargs="+", default=[1_000, 100_000, 1_000_000, 10_000_000])
    arguments = parser.parse_args()
    for rows in [1_000] if arguments.quick else arguments.rows:
        rounds = 2 if arguments.quick else max(7, min(300, 20_000_000 // rows))
        copied = bandwidth(rows, rounds)
        print(f"{rows:,} rows; a copy moves {copied / 1e9:.1f} GB/s")
        for task in tasks(rows):
            ours, theirs = race(task, rounds)
            print(
                f"  {task.name:<34} {ours / rows * 1e9:>8.2f} ns a row   {theirs / ours:>5.2f} times the expression"
                f"   {task.bytes_a_row * rows / ours / copied:>5.2f} of the copy"
            )


if __name__ == "__main__":
    main()
