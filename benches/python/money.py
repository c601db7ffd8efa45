"""Costs of service lines in columns beside pandas (Decimal, float), and one product cost beside decimal.

Run ``python benches/python/money.py`` (release build of the module); ``--quick`` takes short columns.

The three do the same sum: product with waste at the unrounded pack price, labour, overhead, each rounded half up to the
cent, and their total with the consumables. The float version is the fast habit, not the same answer: the bench counts
in how many rows it is a cent off.
"""

import argparse
import time
from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import numpy as np
import pandas as pd

from foilwork.money import Money, cost_columns, supply_cost

TERMS = {
    "currency": "EUR",
    "wage_per_h": "17.40",
    "on_costs_percent": 25,
    "paid_h": 38,
    "productive_h": 24,
    "overhead": "48000.00",
    "chairs": 4,
    "productive_h_per_chair": 1200,
    "margin_percent": 25,
}
# In cents for a minute: 17.40 x 1.25 x 38 / 24 / 60, and 48000 / (4 x 1200) / 60.
LABOUR = Fraction(1740) * Fraction(5, 4) * Fraction(38, 24) / 60
OVERHEAD = Fraction(4_800_000, 4 * 1200 * 60)
CENT = Decimal("0.01")
PACKS = [60, 100, 500, 900, 1000]


def services(rows: int) -> dict[str, np.ndarray]:
    """The same made-up lines at every run."""
    chance = np.random.default_rng(2026)
    return {
        "pack_price_minor": chance.integers(100, 5_000, rows),
        "pack_g": chance.choice(np.array(PACKS, float), rows),
        "used_g": chance.integers(0, 1_500, rows) / 10,
        "wasted_g": chance.integers(0, 150, rows) / 10,
        "consumables_minor": chance.integers(0, 500, rows),
        "hands_on_min": chance.integers(5, 180, rows).astype(float),
        "chair_min": chance.integers(10, 300, rows).astype(float),
    }


def with_float(lines: pd.DataFrame) -> pd.Series:
    """The whole sum in float64, amounts in euros, rounded half up by adding a half."""

    def half_up(euros: pd.Series) -> pd.Series:
        return np.floor(euros * 100 + 0.5) / 100

    price, consumables = lines["pack_price_minor"] / 100, lines["consumables_minor"] / 100
    product = half_up(price / lines["pack_g"] * (lines["used_g"] + lines["wasted_g"]))
    labour = half_up(lines["hands_on_min"] * float(LABOUR / 100))
    overhead = half_up(lines["chair_min"] * float(OVERHEAD / 100))
    return product + labour + overhead + consumables


def decimal_columns(lines: pd.DataFrame) -> pd.DataFrame:
    """Columns of ``Decimal``, as they come from a careful CSV reader; made before the clock starts."""
    return lines.map(lambda value: Decimal(repr(value.item() if isinstance(value, np.generic) else value)))


def with_decimal(lines: pd.DataFrame) -> pd.Series:
    """The whole sum in object columns of ``Decimal``: divide last, quantize each part."""

    def half_up(euros: pd.Series) -> pd.Series:
        return euros.map(lambda amount: amount.quantize(CENT, ROUND_HALF_UP))

    labour_over, labour_under = (Decimal(part) for part in (LABOUR / 100).as_integer_ratio())
    over, under = (Decimal(part) for part in (OVERHEAD / 100).as_integer_ratio())
    price, consumables = lines["pack_price_minor"] / 100, lines["consumables_minor"] / 100
    product = half_up(price * (lines["used_g"] + lines["wasted_g"]) / lines["pack_g"])
    labour = half_up(lines["hands_on_min"] * labour_over / labour_under)
    overhead = half_up(lines["chair_min"] * over / under)
    return product + labour + overhead + consumables


def best_of(function: Callable[[], object], repeats: int) -> float:
    """Shortest of several runs, in seconds."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        function()
        times.append(time.perf_counter() - start)
    return min(times)


def compare(rows: int) -> None:
    """One table of seconds and ratios, and a check that the exact two agree."""
    columns = services(rows)
    frame = pd.DataFrame(columns)
    exact = decimal_columns(frame)
    ours = cost_columns(**columns, terms=TERMS).cost_minor
    by_decimal = (with_decimal(exact) * 100).astype("int64").to_numpy()
    by_float = np.rint(with_float(frame).to_numpy() * 100).astype("int64")
    assert np.array_equal(ours, by_decimal), "foilwork and decimal must agree to the cent"

    mine = best_of(lambda: cost_columns(**columns, terms=TERMS), 5)
    runs = [
        ("pandas, Decimal", best_of(lambda: with_decimal(exact), 1)),
        ("pandas, float", best_of(lambda: with_float(frame), 5)),
    ]
    print(f"{rows:>10} rows   foilwork        {mine * 1e3:10.2f} ms   {mine / rows * 1e9:6.1f} ns a row")
    for name, seconds in runs:
        print(f"{'':>15}   {name:<15} {seconds * 1e3:10.2f} ms   {seconds / mine:8.2f} times foilwork")
    print(f"{'':>15}   float is a cent off in {np.count_nonzero(by_float != ours)} rows")


def scaling(largest: int) -> None:
    """Nanoseconds for one row must not grow with the number of rows."""
    rows = 10_000
    while rows <= largest:
        columns = services(rows)
        seconds = best_of(lambda columns=columns: cost_columns(**columns, terms=TERMS), 3)
        print(f"{rows:>10} rows   {seconds * 1e3:10.2f} ms   {seconds / rows * 1e9:6.1f} ns a row")
        rows *= 10


def scalar() -> None:
    """One cost: the typed call beside the bare arithmetic of ``decimal``."""
    pack, price, pack_g, used_g = Money("26.40", "EUR"), Decimal("26.40"), Decimal(500), Decimal("42.5")
    calls = 100_000

    def mine() -> None:
        for _ in range(calls):
            supply_cost(pack, 500, 42.5, unit="g")

    def bare() -> None:
        for _ in range(calls):
            (price * used_g / pack_g).quantize(CENT, ROUND_HALF_UP)

    ours, theirs = best_of(mine, 3) / calls, best_of(bare, 3) / calls
    ratio = f"{theirs / ours:8.2f} times foilwork"
    print(f"   one product cost   foilwork {ours * 1e9:.0f} ns   decimal {theirs * 1e9:.0f} ns {ratio}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="short columns only")
    quick = parser.parse_args().quick
    compare(10_000 if quick else 1_000_000)
    scaling(100_000 if quick else 10_000_000)
    scalar()


if __name__ == "__main__":
    main()
