"""Ratios beside fractions, units beside pint, weighing beside SciPy's mixed-integer solver.

Run ``python benches/python/mix.py`` (release build of the module); ``--quick`` makes few repetitions.
"""

import argparse
import time
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pint
from scipy.optimize import Bounds, LinearConstraint, milp

from foilwork.mix import Ratio, convert_amount, weigh

PARTS = [Decimal(part) for part in ("30", "15", "4.5", "67.5", "3", "2")]
TOTAL = Decimal(80)


def fractions_split() -> list[Fraction]:
    whole = sum(map(Fraction, PARTS))
    return [Fraction(TOTAL) * Fraction(part) / whole for part in PARTS]


def milp_weigh(masses: list[float], division: float) -> list[float]:
    """The same task for SciPy: whole divisions with a fixed sum, least largest relative error."""
    quotas = np.array(masses) / division
    quotas *= round(quotas.sum()) / quotas.sum()
    count = len(quotas)
    each = np.hstack([np.eye(count), -quotas[:, None]])
    solved = milp(
        np.array([0.0] * count + [1.0]),
        integrality=[1] * count + [0],
        bounds=Bounds(0, np.inf),
        constraints=[
            LinearConstraint(each, -np.inf, quotas),
            LinearConstraint(np.hstack([-np.eye(count), -quotas[:, None]]), -np.inf, -quotas),
            LinearConstraint(np.array([[1.0] * count + [0.0]]), round(quotas.sum()), round(quotas.sum())),
        ],
    )
    return [float(units) * division for units in solved.x[:-1]]


def seconds_each(function: Callable[[], object], repeats: int) -> float:
    """Shortest mean of five runs."""
    runs = []
    for _ in range(5):
        start = time.perf_counter()
        for _ in range(repeats):
            function()
        runs.append((time.perf_counter() - start) / repeats)
    return min(runs)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="few repetitions, for the tests")
    repeats = 20 if parser.parse_args().quick else 20_000
    ratio = Ratio(":".join(map(str, PARTS)))
    masses = [float(part) for part in PARTS]
    registry = pint.UnitRegistry(non_int_type=Decimal)
    lines = [
        (
            "split a total into six parts, exact",
            "fractions.Fraction",
            seconds_each(lambda: ratio.split_decimal(TOTAL), repeats),
            seconds_each(fractions_split, repeats),
        ),
        (
            "US fluid ounces to mL, exact",
            "pint (Decimal)",
            seconds_each(lambda: convert_amount(TOTAL, "US fl oz", "mL"), repeats),
            seconds_each(lambda: registry.Quantity(TOTAL, "fluid_ounce").to("milliliter"), repeats // 10),
        ),
        (
            "weigh six parts, least worst error",
            "SciPy milp (HiGHS)",
            seconds_each(lambda: weigh(masses, 1), repeats),
            seconds_each(lambda: milp_weigh(masses, 1), max(1, repeats // 1000)),
        ),
    ]
    print(f"{'task':<40} {'foilwork':>12} {'reference':>12} {'ratio':>8}  reference")
    for task, reference, ours, theirs in lines:
        print(f"{task:<40} {ours * 1e6:>9.2f} us {theirs * 1e6:>9.2f} us {theirs / ours:>7.1f}x  {reference}")


if __name__ == "__main__":
    main()
