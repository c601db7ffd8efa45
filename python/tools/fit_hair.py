"""Fits the hair model to published tresses and to the trade's list of exposed pigment.

Prints the sets of assumptions as they stand in ``src/colour/assumptions.rs``. Needs numpy, SciPy and colour-science;
takes about two minutes. The library never runs it: it shows where the fitted numbers come from.

The model: three absorbers in a fibre. Eumelanin absorbs as wavelength^-3.48 (published for melanosomes), pheomelanin as
wavelength^-4.75 (from memory). Oxidised melanin forms from the eumelanin that lightener takes and goes more slowly,
with an exponential tail from the violet (a chromophore and two steps are published, the spectrum is assumed).
Reflectance is
surface + (keratin - surface) exp(-gain absorption^exponent), seen under D65 by the 10 degree observer.
"""

import itertools
import warnings

import numpy as np
from scipy.optimize import least_squares

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour

SHAPE = colour.SpectralShape(400, 700, 10)
NM = SHAPE.range()
CMF = colour.MSDS_CMFS["CIE 1964 10 Degree Standard Observer"].copy().align(SHAPE).values
LIGHT = colour.SDS_ILLUMINANTS["D65"].copy().align(SHAPE).values[:, None] * CMF
WEIGHTS = LIGHT / LIGHT[:, 1].sum()
EUMELANIN, PHEOMELANIN = (NM / 550) ** -3.48, (NM / 550) ** -4.75

Numbers = dict[str, float]

# Where the search starts, and between which bounds it looks.
RANGES: dict[str, tuple[float, float, float]] = {
    "surface": (0.0237, 0.0252, 0.0262),
    "surface_tilt": (-0.6, -0.1, 0.0),
    "keratin": (0.40, 0.45, 0.62),
    "keratin_violet": (0.3, 0.75, 1.3),
    "gain": (0.3, 1.7, 6.0),
    "exponent": (0.5, 0.625, 0.75),
    "melanin_of_black": (3.0, 12.0, 60.0),
    "levels_per_halving": (0.9, 1.22, 2.0),
    "pheomelanin": (0.01, 0.05, 0.17),
    "resistance": (0.2, 0.85, 1.0),
    "oxidised": (0.2, 3.0, 12.0),
    "survival": (0.1, 0.2, 0.8),
    "tail_nm": (40.0, 75.0, 110.0),
}
# Level, L* a* b*, weights as standard deviations. Black and dark brown: J. Cosmet. Sci. 51(5):293, 2000 (which level
# they are is assumed); the two blonds are estimates of low confidence.
NATURAL = [
    (1, (18.1, 0.3, -0.4), (0.5, 0.5, 0.7)),
    (3, (22.9, 4.0, 4.8), (0.6, 0.5, 0.6)),
    (8, (55.0, 3.0, 18.0), (3, 2, 3)),
    (10, (63.0, 1.5, 18.0), (3, 2, 3)),
]
WHITE_HAIR = ((70.0, 0.0, 13.0), (2, 1.5, 2))
# From, to, hue angle: the words of the trade's list as angles, turned by the step that measured tresses show.
HUES = [(1, 3, 42), (1, 4, 44), (1, 5, 52), (2, 5, 53), (3, 6, 62), (1, 6, 61), (4, 7, 71), (1, 7, 70), (5, 8, 79)]
HUES += [(6, 9, 84), (7, 10, 87), (1, 10, 86)]
# From, to: brass, chroma over natural hair of the level by 6.6 at least and hardly more than 13 (common practice).
BRASS = [(1, 4), (2, 5), (3, 6), (4, 7), (5, 8), (6, 9), (7, 10), (1, 10)]
# What each bounding set holds fixed.
FIXED: list[Numbers] = [{}, {"exponent": 0.5}, {"exponent": 0.75}, {"pheomelanin": 0.01}, {"pheomelanin": 0.17}]
FIXED += [{"tail_nm": 55.0}, {"tail_nm": 95.0}, {"levels_per_halving": 1.1}, {"levels_per_halving": 1.5}]
FIXED += [{"survival": 0.35}]


def lab(reflectance: np.ndarray) -> np.ndarray:
    """CIELAB of a reflectance."""
    t = reflectance @ WEIGHTS / WEIGHTS.sum(0)
    f = np.where(t > 216 / 24389, np.cbrt(np.maximum(t, 1e-9)), (24389 / 27 * t + 16) / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def reflectance(eumelanin: float, pheomelanin: float, oxidised: float, p: Numbers) -> np.ndarray:
    """Reflectance of hair with so much of each pigment."""
    keratin = p["keratin"] * np.exp(-p["keratin_violet"] * np.exp(-(NM - 400) / 60))
    sigma = eumelanin * EUMELANIN + pheomelanin * PHEOMELANIN + oxidised * np.exp(-(NM - 400) / p["tail_nm"])
    surface = p["surface"] * (NM / 550) ** p["surface_tilt"]
    seen: np.ndarray = surface + (keratin - surface) * np.exp(-p["gain"] * sigma ** p["exponent"])
    return seen


def pigment(level: float, p: Numbers) -> tuple[float, float]:
    """The two melanins of natural hair."""
    total = p["melanin_of_black"] * 2 ** (-(level - 1) / p["levels_per_halving"])
    return total * (1 - p["pheomelanin"]), total * p["pheomelanin"]


def natural(level: float, p: Numbers) -> np.ndarray:
    """Colour of natural hair."""
    return lab(reflectance(*pigment(level, p), 0.0, p))


def lightened(start: float, level: float, p: Numbers) -> np.ndarray:
    """Colour of natural hair lightened until it is as light as natural hair of a level."""
    (eumelanin, pheomelanin), survival = pigment(start, p), p["survival"]
    wanted = reflectance(*pigment(level, p), 0.0, p) @ WEIGHTS[:, 1]

    def after(dose: float) -> np.ndarray:
        formed = p["oxidised"] * eumelanin * (np.exp(-survival * dose) - np.exp(-dose)) / (1 - survival)
        left = (eumelanin * np.exp(-dose), pheomelanin * np.exp(-p["resistance"] * dose))
        return reflectance(*left, formed, p)

    low, high = 0.0, 80.0
    for _ in range(36):
        middle = (low + high) / 2
        low, high = (middle, high) if after(middle) @ WEIGHTS[:, 1] < wanted else (low, middle)
    return lab(after(high))


def hue(colour_of: np.ndarray) -> float:
    """Hue angle in degrees."""
    return float(np.degrees(np.arctan2(colour_of[2], colour_of[1])))


def chroma(colour_of: np.ndarray) -> float:
    """Distance from the grey axis."""
    return float(np.hypot(colour_of[1], colour_of[2]))


def residuals(p: Numbers) -> np.ndarray:
    """How far the model is from everything it should meet, in units of its weights."""
    out: list[float] = []
    for level, measured, spread in NATURAL:
        out += list((natural(level, p) - measured) / np.array(spread))
    out += list((lab(reflectance(0, 0, 0, p)) - WHITE_HAIR[0]) / np.array(WHITE_HAIR[1]))
    out += [(hue(lightened(start, level, p)) - angle) / 4 for start, level, angle in HUES]
    for start, level in BRASS:
        over = chroma(lightened(start, level, p)) - chroma(natural(level, p))
        out += [min(0.0, over - 6.6) / 0.3, max(0.0, over - 13) / 2]
    pale = lightened(4, 10, p)
    out += [(pale[2] - 23) / 2, min(0.0, chroma(lightened(4, 8, p)) - chroma(pale) - 6)]
    for start in (2, 3, 4, 5, 6):
        # The hue never turns back while hair is lightened.
        angles = [hue(natural(start, p)), *(hue(lightened(start, start + step, p)) for step in (0.25, 0.5, 1))]
        out += [min(0.0, later - earlier - 0.3) / 0.3 for earlier, later in itertools.pairwise(angles)]
    return np.array(out)


def fit(fixed: Numbers, start: Numbers) -> tuple[Numbers, float]:
    """The numbers that meet everything best while some are held fixed."""
    free = [name for name in RANGES if name not in fixed]
    low, high = ([RANGES[name][end] for name in free] for end in (0, 2))
    first = np.clip([start[name] for name in free], np.add(low, 1e-6), np.subtract(high, 1e-6))

    def off(x: np.ndarray) -> np.ndarray:
        return residuals({**start, **fixed, **dict(zip(free, map(float, x), strict=True))})

    scale = [max(abs(RANGES[name][1]), 0.1) for name in free]
    found = least_squares(off, first, bounds=(low, high), x_scale=scale, max_nfev=60)
    return {**start, **fixed, **dict(zip(free, map(float, found.x), strict=True))}, float(found.cost)


def main() -> None:
    """Prints every set, the best first."""
    best = {name: start for name, (_, start, _) in RANGES.items()}
    for fixed in FIXED:
        held = {"exponent": 0.625, "pheomelanin": 0.05} | fixed
        numbers, cost = fit(held, best)
        best = numbers if not fixed else best
        print(fixed or "best", "cost", round(cost, 1))
        print("   ", ", ".join(f"{name}: {value:.5g}" for name, value in numbers.items()))


if __name__ == "__main__":
    main()
