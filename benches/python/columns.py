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

from foilwork.colour import lab_to_srgb, level_on_scale, lift_needed, result_level
from foilwork.hair import by_caliper, grown, hair_cut, weeks_to_grow
from foilwork.mix import minimum_mass
from foilwork.money import cost_columns
from foilwork.peroxide import convert, density, dilute, dilute_volume, loss_rate, mix_two, strength_after

Array = NDArray[float64]

G_PER_MOL = 34.014
TERMS = {
    "currency": "EUR", "wage_per_h": "17.40", "on_costs_percent": 25, "paid_h": 38, "productive_h": 24,
    "overhead": "48000.00", "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
}  # fmt: skip
# In cents for a minute: 17.40 x 1.25 x 38 / 24 / 60, and 48000 / (4 x 1200) / 60.
LABOUR, OVERHEAD = 1740 * 1.25 * 38 / 24 / 60, 4_800_000 / (4 * 1200 * 60)
# A camera reads hair wider than a caliper does; weeks in a month; X, Y, Z of D65 to linear sRGB, IEC 61966-2-1.
CAMERA, WEEKS = 1.41, 365.2425 / 12 / 7
# Anchors of the levels of twenty, as foilwork states them.
JAPANESE, LEVELS = np.array([4.0, 5.5, 7.5, 9.5, 13.5, 15.0]), np.array([1.0, 4.0, 5.0, 7.0, 8.0, 9.0])
WHITE = np.array([0.95047, 1.0, 1.08883])
TO_RGB = np.array([[3.2406, -1.5372, -0.4986], [-0.9689, 1.8758, 0.0415], [0.0557, -0.2040, 1.0570]])


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

    product, labour, overhead, cost = (np.empty(rows, dtype=np.int64) for _ in range(4))
    whole = product, labour, overhead, cost
    minor, major, rates = chance.uniform(40, 70, rows), chance.uniform(70, 100, rows), chance.uniform(0.8, 1.4, rows)
    readings = chance.uniform(4.0, 15.0, rows)
    divisions, shares = chance.choice(np.array([0.01, 0.1, 1.0]), rows), chance.uniform(0.5, 5.0, rows)
    labs = np.stack([chance.uniform(10, 90, rows), chance.uniform(-20, 20, rows), chance.uniform(-5, 40, rows)], -1)

    def density_of(x: Array) -> Array:
        return 0.998207 + x * (0.353169 + x * (0.069834 + x * 0.027641))

    def their_density() -> Array:
        return density_of(ww / 100.0)

    def their_cut() -> tuple[Array, Array]:
        a, b = major / 2.0, minor / 2.0
        h = ((a - b) / (a + b)) ** 2
        return np.pi / 4.0 * minor * major, np.pi * (a + b) * (1.0 + 3.0 * h / (10.0 + np.sqrt(4.0 - 3.0 * h))) * 1e-4

    def their_volumes() -> list[Array]:
        share = ww / 30.0
        of_target, of_stock = density_of(ww / 100.0), density_of(np.full(1, 0.3))
        found = []
        for off in (-0.0005, 0.0, 0.0005):
            stock = days * (of_target + off) * share / (of_stock - off)
            water = days * (of_target + off) * (1.0 - share) / 0.998207
            found += [stock, water, stock + water - days]
        return found

    def their_level() -> list[Array]:
        level = np.interp(readings, JAPANESE, LEVELS)
        return [np.clip(level + off, 1.0, 12.0) for off in (-1.0, 0.0, 1.0)]

    def their_screen() -> Array:
        fy = (labs[:, 0] + 16.0) / 116.0
        f = np.stack([fy + labs[:, 1] / 500.0, fy, fy - labs[:, 2] / 200.0], -1)
        linear = (np.where(f > 6 / 29, f**3, (f - 4 / 29) * 3 * (6 / 29) ** 2) * WHITE) @ TO_RGB.T
        shown: Array = np.where(
            linear <= 0.0031308, 12.92 * linear, 1.055 * np.maximum(linear, 0.0) ** (1 / 2.4) - 0.055
        )
        return shown

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
        Task(
            "strength of two parts, out=",
            lambda: mix_two(0.0, 30.0, ww, days, out=out),
            lambda: np.divide(days * ww, 30.0 + days, out=out),
            24,
        ),
        Task("dilute by volume, with bounds", lambda: dilute_volume(30.0, ww, days), their_volumes, 88),
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
            "level on a scale of twenty, with bounds",
            lambda: level_on_scale(readings, scale="japanese-20"),
            their_level,
            32,
        ),
        Task("least mass", lambda: minimum_mass(divisions, shares), lambda: divisions * 50.0 / shares, 24),
        Task("diameter by caliper", lambda: by_caliper(major, "scalp-camera"), lambda: major / CAMERA, 16),
        Task(
            "the same, out=",
            lambda: by_caliper(major, "scalp-camera", out=out),
            lambda: np.divide(major, CAMERA, out=out),
            16,
        ),
        Task("cut through a hair", lambda: hair_cut(minor, major), their_cut, 32),
        Task(
            "regrowth, with bounds",
            lambda: grown(days, rates),
            lambda: [days * rates / WEEKS for _ in range(3)],
            40,
        ),
        Task(
            "weeks to grow, with bounds",
            lambda: weeks_to_grow(ww, rates),
            lambda: [ww * WEEKS / rates for _ in range(3)],
            40,
        ),
        Task("L*, a*, b* to a screen", lambda: lab_to_srgb(labs, observer_degrees=2), their_screen, 48),
        Task(
            "costs, exact beside float, out=",
            lambda: cost_columns(price, pack, used, wasted, extra, minutes, minutes, TERMS, out=whole),
            costs,
            88,
        ),
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
