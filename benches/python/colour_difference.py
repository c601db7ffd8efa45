"""CIEDE2000 over columns beside colour-science, and a toner search beside SciPy.

Run ``python benches/python/colour_difference.py`` (release build of the module); ``--quick`` takes small columns.
"""

import argparse
import itertools
import time
import warnings
from collections.abc import Callable
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

from foilwork.colour import ciede2000, lab_to_lch, lab_to_xyz, lch_to_lab, read_shades, xyz_to_lab
from foilwork.toner import find_toner

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour

CHART = (Path(__file__).parents[2] / "examples/juniper_and_tide.toml").read_text()


def best_of(function: Callable[[], object], repeats: int) -> float:
    """Least processor time of several runs, in seconds: of all threads together, and whatever else the machine does."""
    times = []
    for _ in range(repeats):
        start = time.process_time()
        function()
        times.append(time.process_time() - start)
    return min(times)


def scipy_toner(exposed: np.ndarray, dyes: np.ndarray, target: np.ndarray) -> float:
    """The same task for SciPy: every choice of three dyes, shares by SLSQP on CIEDE2000."""

    def miss(shares: np.ndarray, chosen: tuple[int, ...]) -> float:
        rgb = 0.025 + 0.4 * np.exp(-2.7 * (exposed + 0.5 * shares @ dyes[list(chosen)]) ** 0.7)
        lab = colour.XYZ_to_Lab(TO_XYZ @ rgb)
        return float(colour.delta_E(lab, target, method="CIE 2000"))

    best = np.inf
    for chosen in itertools.combinations(range(len(dyes)), 3):
        found = minimize(
            miss,
            np.full(3, 1 / 3),
            args=(chosen,),
            method="SLSQP",
            bounds=[(0, 1)] * 3,
            constraints={"type": "eq", "fun": lambda shares: shares.sum() - 1},
        )
        best = min(best, found.fun)
    return best


TO_XYZ = colour.RGB_COLOURSPACES["sRGB"].matrix_RGB_to_XYZ


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="small columns, for the tests")
    quick = parser.parse_args().quick
    rows, repeats = (10_000, 1) if quick else (1_000_000, 5)
    rng = np.random.default_rng(1)
    first, second = (np.column_stack([rng.uniform(0, 100, rows), rng.uniform(-100, 100, (rows, 2))]) for _ in range(2))
    xyz, lch = np.clip(colour.Lab_to_XYZ(first), 0, 2), colour.models.Lab_to_LCHab(first)
    shades = read_shades(CHART)
    dyes = rng.uniform(0.01, 0.3, (4 if quick else 12, 3))
    exposed, target = np.array([0.08, 0.13, 0.27]), np.array([50.0, 2.0, 10.0])

    def find() -> object:
        return find_toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])

    lines = [
        (
            f"CIEDE2000, {rows} pairs",
            "colour-science",
            best_of(lambda: ciede2000(first, second), repeats),
            best_of(lambda: colour.delta_E(first, second, method="CIE 2000"), repeats),
        ),
        (
            f"Lab to XYZ, {rows} colours",
            "colour-science",
            best_of(lambda: lab_to_xyz(first), repeats),
            best_of(lambda: colour.Lab_to_XYZ(first), repeats),
        ),
        (
            f"XYZ to Lab, {rows} colours",
            "colour-science",
            best_of(lambda: xyz_to_lab(xyz, errors="nan"), repeats),
            best_of(lambda: colour.XYZ_to_Lab(xyz), repeats),
        ),
        (
            f"Lab to LCh, {rows} colours",
            "colour-science",
            best_of(lambda: lab_to_lch(first), repeats),
            best_of(lambda: colour.models.Lab_to_LCHab(first), repeats),
        ),
        (
            f"LCh to Lab, {rows} colours",
            "colour-science",
            best_of(lambda: lch_to_lab(lch), repeats),
            best_of(lambda: colour.models.LCHab_to_Lab(lch), repeats),
        ),
        (
            f"toner, {len(shades)} shades, up to 3" + (" (SciPy: 4 dyes)" if quick else ""),
            "SciPy SLSQP",
            best_of(find, repeats),
            best_of(lambda: scipy_toner(exposed, dyes, target), 1),
        ),
    ]
    print(f"{'task':<40} {'foilwork':>12} {'reference':>12} {'ratio':>8}  reference")
    for task, reference, ours, theirs in lines:
        print(f"{task:<40} {ours * 1e3:>9.2f} ms {theirs * 1e3:>9.2f} ms {theirs / ours:>7.1f}x  {reference}")


if __name__ == "__main__":
    main()
