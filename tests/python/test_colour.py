"""Colour against general-purpose libraries: colour-science for coordinates and differences, SciPy for toner optima.

The melanin model is written again here in NumPy from the published constants, so that predictions are compared with
something that shares no code with the library.
"""

import importlib
import itertools
import subprocess
import sys
import warnings
from html.parser import HTMLParser
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, brute, differential_evolution

import foilwork
from foilwork.colour import (
    Level,
    Shade,
    ciede2000,
    complement,
    formula_level,
    lab_to_lch,
    lab_to_srgb,
    lab_to_xyz,
    lch_to_lab,
    lift_needed,
    pre_pigmentation,
    read_shades,
    result_level,
    srgb_to_lab,
    swatch,
    xyz_to_lab,
)
from foilwork.toner import toner

with warnings.catch_warnings():
    # It warns that it has no plotting library.
    warnings.simplefilter("ignore")
    colour = importlib.import_module("colour")

ROOT = Path(__file__).parents[2]
CHART = (ROOT / "examples/juniper_and_tide.toml").read_text()
# ASTM E308, D65: 2 degree and 10 degree observer.
WHITE = {2: np.array([0.95047, 1.0, 1.08883]), 10: np.array([0.94811, 1.0, 1.07304])}
RNG = np.random.default_rng(1943)


def random_lab(count: int) -> np.ndarray:
    return np.column_stack([RNG.uniform(0, 100, count), RNG.uniform(-100, 100, (count, 2))])


def quiet(function, *args, **kwargs):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return function(*args, **kwargs)


# --- coordinates and differences ---------------------------------------------------------------------------------


def test_ciede2000_of_10_000_random_pairs_against_colour_science():
    first, second = random_lab(10_000), random_lab(10_000)
    want = colour.delta_E(first, second, method="CIE 2000")
    np.testing.assert_allclose(ciede2000(first, second), want, rtol=0, atol=2e-4)


def test_ciede2000_of_near_pairs_against_colour_science():
    first = random_lab(10_000)
    second = np.clip(first + RNG.normal(0, 2, first.shape), [0, -100, -100], [100, 100, 100])
    want = colour.delta_E(first, second, method="CIE 2000")
    np.testing.assert_allclose(ciede2000(first, second), want, rtol=0, atol=2e-4)


def test_ciede2000_keeps_shapes_and_broadcasts():
    many = random_lab(6).reshape(2, 3, 3)
    assert ciede2000(many, many).shape == (2, 3)
    np.testing.assert_array_equal(ciede2000(many, many), 0)
    one = (50.0, 10.0, 10.0)
    assert ciede2000(one, many)[1, 2] == pytest.approx(ciede2000(one, tuple(many[1, 2])))
    assert isinstance(ciede2000(one, one), float)
    assert np.isnan(ciede2000([[np.nan, 0, 0]], [[50, 0, 0]])).all()
    with pytest.raises(foilwork.FoilworkError, match=r"index 1: invalid L\* \(got 120\): must be from 0 \(black\)"):
        ciede2000([[50, 0, 0], [120, 0, 0]], one)
    with pytest.raises(
        foilwork.FoilworkError, match=r"three coordinates in the last axis \(got an array of shape \[3, 4\]"
    ):
        ciede2000(np.zeros((3, 4)), one)


@pytest.mark.parametrize("observer", [2, 10])
def test_xyz_and_lab_against_colour_science(observer):
    lab = random_lab(1000)
    want = colour.Lab_to_XYZ(lab, colour.XYZ_to_xy(WHITE[observer]))
    inside = ((want >= 0) & (want <= 2)).all(axis=1)
    np.testing.assert_allclose(lab_to_xyz(lab, observer_degrees=observer), want, rtol=0, atol=1e-12)
    back = xyz_to_lab(want[inside], observer_degrees=observer)
    np.testing.assert_allclose(back, lab[inside], rtol=0, atol=1e-8)


def test_lch_against_colour_science():
    lab = random_lab(1000)
    lch = lab_to_lch(lab)
    np.testing.assert_allclose(lch, colour.Lab_to_LCHab(lab), rtol=0, atol=1e-10)
    np.testing.assert_allclose(lch_to_lab(lch), lab, rtol=0, atol=1e-10)


def test_srgb_against_colour_science():
    for code in RNG.integers(0, 256, (300, 3)):
        text = "#{:02x}{:02x}{:02x}".format(*code)
        xyz = colour.sRGB_to_XYZ(code / 255)
        want = colour.XYZ_to_Lab(xyz, colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"])
        # The two use whites and matrices rounded to different digits: below what eight bits can show.
        np.testing.assert_allclose(srgb_to_lab(text), want, rtol=0, atol=0.05)
        assert lab_to_srgb(srgb_to_lab(text)) == (text, True)


# --- levels and tones ----------------------------------------------------------------------------------------------


def test_arithmetic_as_printed():
    # CK-12 Foundation: natural 6, target 8, formula 10. Colour educator's blog (2022): natural 2, shade 6, result 4.
    assert formula_level(6, 8) == 10.0
    assert result_level(2, 6) == 4.0
    np.testing.assert_array_equal(lift_needed([5, 7], [9, 6]), [4, -1])


def test_refusals_name_the_reason():
    with pytest.raises(foilwork.FoilworkError, match="no formula level for lightener"):
        formula_level(6, 8, product="lightener")
    with pytest.raises(foilwork.FoilworkError, match="artificial pigment does not lighten under colour"):
        formula_level(6, 8, coloured=True)
    with pytest.raises(foilwork.FoilworkError, match="the shade would have to be level 11, outside 1 to 10"):
        formula_level(5, 8)
    with pytest.raises(foilwork.FoilworkError, match='unknown product "bleach"'):
        formula_level(5, 8, product="bleach")
    with pytest.warns(foilwork.OutOfRangeWarning):
        assert np.isnan(formula_level([5.0], [8.0], errors="nan")).all()


@given(st.floats(1, 10), st.floats(1, 10))
@settings(max_examples=200)
def test_formula_level_and_mean_are_inverse(natural, applied):
    target = result_level(natural, applied)
    assert formula_level(natural, target) == pytest.approx(applied, abs=1e-9)


def test_level_objects():
    assert Level("7,5") == Level(7.5) < Level(8)
    assert len({Level(7), Level("7"), Level(Level(7))}) == 1
    assert float(Level(7)) == 7.0 and str(Level(7)) == "level 7" and repr(Level(6.5)) == "Level(6.5)"
    with pytest.raises(foilwork.FoilworkError, match="invalid level"):
        Level(0)
    with pytest.raises(TypeError):
        Level(None)
    assert Level(5).underlying_pigment()["hues"] == ["red-orange", "red-orange"]
    assert complement(complement("blue-green")) == "blue-green"
    assert pre_pigmentation(9, 8) is None
    assert next(iter(pre_pigmentation(9, 6)["tones"])) == "yellow-orange"


def test_shades_of_the_demo_chart():
    shades = read_shades(CHART)
    assert len(shades) == 12 and shades[2].code == "J9-mist" and shades[2].tones == [("violet", 100.0)]
    with pytest.raises(foilwork.FoilworkError, match=r'line 5: shade\[1\].tones\[1\]: unknown hue "purple"'):
        read_shades('name = "x"\n[[shade]]\ncode = "a"\nlevel = 9\ntones = ["purple"]\n')


# --- the melanin model, written again ------------------------------------------------------------------------------

# pbrt version 3, hair.cpp, SigmaAFromConcentration; Physically Based Rendering, 4th ed., Fig. 9.47: black is 8.0, brown
# 2.0; open 3D-figure project: exp(-2.7 sigma^0.7); surface floor of black hair L* 18.0 (J. Cosmet. Sci. 51(5):293).
EUMELANIN, PHEOMELANIN = np.array([0.419, 0.697, 1.37]), np.array([0.187, 0.4, 1.05])
GAIN, EXPONENT, FLOOR, PHEO = 2.7, 0.7, ((18.0 + 16) / 116) ** 3, 0.05
TO_XYZ = colour.RGB_COLOURSPACES["sRGB"].matrix_RGB_to_XYZ
XY = colour.XYZ_to_xy(WHITE[2])
WHITE_HAIR = np.linalg.solve(TO_XYZ, colour.Lab_to_XYZ(np.array([70.0, 0.0, 13.0]), XY))
# Munsell renotation angles of the twelve hues (colour-science 0.4.7), as documented.
MUNSELL = {
    "red": "5R", "red-orange": "10R", "orange": "5YR", "yellow-orange": "10YR", "yellow": "5Y", "yellow-green": "5GY",
    "green": "5G", "blue-green": "5BG", "blue": "2.5PB", "blue-violet": "7.5PB", "violet": "10PB", "red-violet": "10P",
}  # fmt: skip


def munsell_angle(name: str) -> float:
    """Mean CIELAB hue angle of the chips of value 5 and 6, chroma 6, adapted from C to D65."""
    source = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["C"]
    angles = []
    for value in (5, 6):
        xyz = colour.xyY_to_XYZ(quiet(colour.munsell_colour_to_xyY, f"{name} {value}/6"))
        xyz = colour.chromatic_adaptation(
            xyz, colour.xy_to_XYZ(source), WHITE[2], method="Von Kries", transform="Bradford"
        )
        angles.append(colour.Lab_to_LCHab(colour.XYZ_to_Lab(xyz, XY))[2])
    return float(np.mean(angles))


ANGLES = {hue: munsell_angle(name) for hue, name in MUNSELL.items()}


def melanin(level: float) -> np.ndarray:
    total = 8.0 * 2.0 ** (-(level - 1) / 1.5)
    return total * ((1 - PHEO) * EUMELANIN + PHEO * PHEOMELANIN)


def lab_of(sigma: np.ndarray) -> np.ndarray:
    rgb = FLOOR + (WHITE_HAIR - FLOOR) * np.exp(-GAIN * sigma**EXPONENT)
    return colour.XYZ_to_Lab(rgb @ TO_XYZ.T, XY)


def depth(sigma: np.ndarray) -> float:
    return float(sigma @ TO_XYZ[1])


def dye(hue: str) -> np.ndarray:
    angle = np.radians(ANGLES[hue])
    rgb = np.linalg.solve(TO_XYZ, colour.Lab_to_XYZ(np.array([60, 25 * np.cos(angle), 25 * np.sin(angle)]), XY))
    return np.log(rgb.max() / rgb)


MEAN_DEPTH = np.mean([depth(dye(hue)) for hue in MUNSELL])


def deposit(level: float, tones: list[tuple[str, float]]) -> np.ndarray:
    neutral = melanin(level)
    if not tones:
        return neutral
    mixed = sum(dye(hue) * percent / 100 for hue, percent in tones) * 0.5 * depth(neutral) / MEAN_DEPTH
    mixed = neutral * max(0, 1 - depth(mixed) / depth(neutral)) + mixed
    wanted = lab_of(neutral)[0]
    return mixed * brentq(lambda scale: lab_of(mixed * scale)[0] - wanted, 0.1, 10)


@pytest.mark.parametrize("level", [1, 2, 3.5, 5, 6.5, 8, 10, 12])
def test_natural_hair_against_the_model_written_again(level):
    np.testing.assert_allclose(swatch(level).lab, lab_of(melanin(level)), rtol=0, atol=0.05)


@pytest.mark.parametrize("tones", [[], ["violet"], ["yellow", "violet"], ["blue-green"], ["red", "red-orange"]])
def test_shades_on_white_hair_against_the_model_written_again(tones):
    shares = Shade("x", 8, tones).tones
    np.testing.assert_allclose(swatch(8, tones=tones).lab, lab_of(deposit(8, shares)), rtol=0, atol=0.1)


def test_side_by_side_is_the_mean_of_the_light():
    dark, light = swatch(4), swatch(9)
    xyz = [lab_to_xyz(each.lab) for each in (dark, light)]
    want = xyz_to_lab(tuple(0.75 * a + 0.25 * b for a, b in zip(*xyz, strict=True)))
    np.testing.assert_allclose(dark.beside(light, 25).lab, want, rtol=0, atol=1e-6)


def test_swatches_say_what_they_are():
    assert swatch(7).notice == "model, not a photograph" and swatch(7).basis == "assumed"
    measured = swatch(lab=(55, 3, 18))
    assert measured.basis == "measured by you" and measured.lab == (55, 3, 18)
    low, high = swatch(7).bounds["l"]
    assert low < swatch(7).lab[0] < high and swatch(7).uncertainty > 0
    with pytest.raises(foilwork.FoilworkError, match="exclude each other"):
        swatch(7, lab=(50, 0, 0))


class Text(HTMLParser):
    def __init__(self, html: str) -> None:
        super().__init__()
        self.hidden, self.text, self.open = 0, "", []
        self.feed(html)
        assert not self.open, f"unclosed {self.open}"

    def handle_starttag(self, tag, attrs):
        self.open.append(tag)
        self.hidden += dict(attrs).get("aria-hidden") == "true"

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text += data


def test_html_tells_in_words_what_the_patch_shows():
    shown = swatch(6, lightened_from=3)
    page = Text(shown._repr_html_())
    assert page.hidden == 1
    for words in (shown.srgb, shown.hue, "model, not a photograph", "level 3 lightened to level 6", "between L*"):
        assert words in page.text
    shades = [Shade("<b>&", 9, ["violet"]), Shade("9-0", 9)]
    answer = toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])
    page = Text(answer._repr_html_())
    assert "<b>&" in page.text and "target" in page.text and "predicted" in page.text


# --- toner ----------------------------------------------------------------------------------------------------------

CASES = [
    ((55.0, 2.5, 21.0), (51.0, 3.0, 12.0)),
    ((58.0, 2.0, 24.0), (50.0, 0.0, 8.0)),
    ((48.0, 5.0, 24.0), (42.0, 4.0, 16.0)),
    ((60.0, 1.0, 20.0), (45.0, 8.0, 18.0)),
]


def rest_of_model(exposed):
    """Predicted colour of a mix on measured hair: absorptions add up, half of the mix is taken up."""
    rgb = np.linalg.solve(TO_XYZ, colour.Lab_to_XYZ(np.array(exposed), XY))
    white = np.maximum(WHITE_HAIR, rgb * 1.001)
    hair = (-np.log((rgb - FLOOR) / (white - FLOOR)) / GAIN) ** (1 / EXPONENT)

    def predict(shares, deposits):
        sigma = hair + 0.5 * np.asarray(shares) @ np.asarray(deposits)
        seen = FLOOR + (white - FLOOR) * np.exp(-GAIN * sigma**EXPONENT)
        return colour.XYZ_to_Lab(seen @ TO_XYZ.T, XY)

    return predict


@pytest.mark.parametrize(("exposed", "target"), CASES)
def test_toner_optimum_against_scipy(exposed, target):
    """No mix of up to three of five shades, of any masses, is nearer than the one found to 0.01 g in 30 g."""
    shades = read_shades(CHART)[2:7]
    deposits = [deposit(shade.level, shade.tones) for shade in shades]
    predict = rest_of_model(exposed)

    def miss(shares, chosen):
        return float(colour.delta_E(predict(shares, [deposits[i] for i in chosen]), target, method="CIE 2000"))

    best = min(miss([1.0], [i]) for i in range(len(shades)))
    for chosen in itertools.combinations(range(len(shades)), 3):

        def of_square(x, chosen=chosen):
            # The unit square folded onto the shares of three shades.
            first, second = sorted(x)
            return miss([first, second - first, 1 - second], chosen)

        found = differential_evolution(of_square, [(0, 1)] * 2, seed=7, tol=1e-6, maxiter=60, popsize=8)
        best = min(best, found.fun)
    answer = toner(shades, lifted_level=9, exposed_lab=exposed, target_lab=target, observer_degrees=2, division_g=0.01)
    nearest = min([answer.residual, *(left for _, left in answer.alternatives)])
    assert nearest == pytest.approx(best, abs=0.02)
    # A further shade must be worth a quarter of a unit.
    assert answer.residual <= best + 0.25 * 2 + 0.02


@pytest.mark.parametrize(("exposed", "target"), CASES[:2])
def test_toner_prediction_and_grid_optimum_of_pairs(exposed, target):
    """On a coarse scale the best pair is that of an exhaustive grid, and its prediction that of the model again."""
    shades = read_shades(CHART)[:6]
    deposits = [deposit(shade.level, shade.tones) for shade in shades]
    predict = rest_of_model(exposed)

    def miss(x, first, second):
        share = float(np.squeeze(x))
        lab = predict([share, 1 - share], [deposits[first], deposits[second]])
        return float(colour.delta_E(lab, target, method="CIE 2000"))

    grid = slice(0, 1 + 1e-9, 1 / 30)
    best = min(
        brute(miss, (grid,), args=pair, finish=None, full_output=True)[1]
        for pair in itertools.combinations(range(6), 2)
    )
    answer = toner(shades, lifted_level=9, exposed_lab=exposed, target_lab=target, observer_degrees=2, most_shades=2)
    nearest = min([answer.residual, *(left for _, left in answer.alternatives)])
    assert nearest == pytest.approx(best, abs=0.02)
    codes = [shade.code for shade in shades]
    shares = [mass / 30 for _, mass in answer.mix_g]
    again = predict(shares, [deposits[codes.index(code)] for code, _ in answer.mix_g])
    np.testing.assert_allclose(answer.predicted.lab, again, rtol=0, atol=0.1)


def test_toner_answers_and_refusals():
    shades = read_shades(CHART)
    answer = toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"], division_g=0.5)
    assert sum(mass for _, mass in answer.mix_g) == pytest.approx(30.0)
    assert all((mass * 2) == round(mass * 2) and mass > 0 for _, mass in answer.mix_g)
    assert len(answer.mix_g) <= 3 and len(answer.alternatives) >= 3
    costs = [miss + 0.25 * len(mix) for mix, miss in answer.alternatives]
    assert answer.residual + 0.25 * len(answer.mix_g) <= min(costs) and costs == sorted(costs)
    there = toner(shades, lifted_level=9, natural_level=5, target_level=9)
    assert not there.reached and there.before < there.residual and str(there).startswith("leave it: untoned hair is")
    far = toner(shades, lifted_level=8, natural_level=3, target_level=3)
    assert not far.reached and "cannot be reached from these shades, nearest is" in str(far)
    far = toner(shades, lifted_level=5, natural_level=3, target_level=10)
    assert any(finding["rule"] == "toner-level" for finding in far.findings())
    for keywords, text in [
        ({"most_shades": 5}, "must be from 1 to 4"),
        ({"bowl_g": 30.0, "division_g": 7.0}, "whole divisions"),
        ({"target_level": None}, "give one target"),
        ({"natural_level": None}, "give natural_level"),
    ]:
        keywords = {"natural_level": 5, "target_level": 8} | keywords
        with pytest.raises(foilwork.FoilworkError, match=text):
            toner(shades, lifted_level=9, **keywords)
    with pytest.raises(foilwork.FoilworkError, match="no shades to choose from"):
        toner([], lifted_level=9, natural_level=5, target_level=8)


def test_the_comparison_bench_runs():
    script = ROOT / "benches/python/colour_difference.py"
    done = subprocess.run([sys.executable, script, "--quick"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "CIEDE2000, 10000 pairs" in done.stdout
