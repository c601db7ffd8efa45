"""Colour against general-purpose libraries: colour-science for coordinates and differences, SciPy for toner optima.

The hair model is written again here in NumPy and SciPy from its documented formulas and constants, with the spectra of
colour-science, so that predictions are compared with something that shares no code with the library.
"""

import importlib
import itertools
import pickle
import subprocess
import sys
import warnings
from html.parser import HTMLParser
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, brute, differential_evolution, fsolve

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
    level_from_reading,
    level_on_scale,
    lift_needed,
    pre_pigmentation,
    read_shades,
    reflectance_to_lab,
    result_level,
    section_look,
    shade_level,
    srgb_to_lab,
    swatch,
    xyz_to_lab,
)
from foilwork.toner import find_toner, neutralising_dose, toned

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
    np.testing.assert_allclose(ciede2000(first, second), want, rtol=0, atol=1e-9)


def test_ciede2000_of_near_pairs_against_colour_science():
    first = random_lab(10_000)
    second = np.clip(first + RNG.normal(0, 2, first.shape), [0, -100, -100], [100, 100, 100])
    want = colour.delta_E(first, second, method="CIE 2000")
    np.testing.assert_allclose(ciede2000(first, second), want, rtol=0, atol=1e-9)


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
        shown = lab_to_srgb(srgb_to_lab(text), observer_degrees=2)
        assert (shown.hex, shown.in_gamut) == (text, True)


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
    assert Level(5).underlying_pigment().exposed == ("red-orange", "red-orange")
    assert complement(complement("blue-green")) == "blue-green"
    assert pre_pigmentation(9, 8) is None
    assert pre_pigmentation(9, 6).tone[0][0] == "yellow-orange"
    # A rule for lifting: going darker, the shade is the target itself.
    assert (shade_level(6, 8), shade_level(9, 5)) == (10.0, 5.0)


def test_shades_of_the_demo_chart():
    shades = read_shades(CHART)
    assert len(shades) == 12 and shades[2].code == "J9-mist" and shades[2].tones == [("violet", 100.0)]
    with pytest.raises(foilwork.FoilworkError, match=r'line 5: shade\[1\].tones\[1\]: unknown hue "purple"'):
        read_shades('name = "x"\n[[shade]]\ncode = "a"\nlevel = 9\ntones = ["purple"]\n')


# --- spectra --------------------------------------------------------------------------------------------------------

SHAPE = colour.SpectralShape(400, 700, 10)
NM = SHAPE.range()
OBSERVERS = {2: "CIE 1931 2 Degree Standard Observer", 10: "CIE 1964 10 Degree Standard Observer"}
D65 = colour.SDS_ILLUMINANTS["D65"].copy().align(SHAPE).values


def summed(observer: int) -> np.ndarray:
    """Light times matching functions of colour-science at each wavelength, scaled to the white."""
    weights = D65[:, None] * colour.MSDS_CMFS[OBSERVERS[observer]].copy().align(SHAPE).values
    return weights / weights.sum(axis=0) * WHITE[observer]


@pytest.mark.parametrize("observer", [2, 10])
def test_1000_random_spectra_against_colour_science(observer):
    knots = RNG.uniform(0, 1, (1000, 7))
    spectra = np.array([np.interp(NM, np.linspace(400, 700, 7), each) for each in knots])
    want = colour.XYZ_to_Lab(spectra @ summed(observer), colour.XYZ_to_xy(WHITE[observer]))
    got = [reflectance_to_lab(list(each), observer_degrees=observer) for each in spectra]
    np.testing.assert_allclose(got, want, rtol=0, atol=1e-6)


@pytest.mark.parametrize("observer", [2, 10])
def test_spectra_against_the_integration_of_colour_science(observer):
    """Its own function, which knows neither our range nor our scaling of the white."""
    cmfs, illuminant = colour.MSDS_CMFS[OBSERVERS[observer]], colour.SDS_ILLUMINANTS["D65"]
    for step in range(20):
        # Smooth, as hair is: a fall towards the violet of some strength and place.
        bands = 0.6 / (1 + np.exp(-(NM - 420 - 10 * step) / 60))
        spectrum = colour.SpectralDistribution(bands, NM)
        xyz = quiet(colour.sd_to_XYZ, spectrum, cmfs, illuminant) / 100
        want = colour.XYZ_to_Lab(xyz, colour.XYZ_to_xy(WHITE[observer]))
        got = reflectance_to_lab(list(bands), observer_degrees=observer)
        assert float(colour.delta_E(np.array(got), want, method="CIE 2000")) < 0.3


# --- the hair model, written again ----------------------------------------------------------------------------------

# The best set of assumptions as documented in `assumptions.rs`: fitted by `python/tools/fit_hair.py`.
SURFACE, TILT, KERATIN, VIOLET, GAIN, EXPONENT = 0.0262, -0.1765, 0.44148, 0.73991, 1.6281, 0.625
OF_BLACK, HALVING, PHEO, RESISTANCE, OXIDISED, SURVIVAL, TAIL = 12.09, 1.2786, 0.05, 0.99928, 2.2851, 0.1, 71.572
UPTAKE, TONE_SHARE = 0.5, 0.85
XY = colour.XYZ_to_xy(WHITE[10])
TO_XYZ = summed(10)
FLOOR = SURFACE * (NM / 550) ** TILT
WHITE_HAIR = KERATIN * np.exp(-VIOLET * np.exp(-(NM - 400) / 60))
EUMELANIN, PHEOMELANIN = (NM / 550) ** -3.48, (NM / 550) ** -4.75
# The three primaries of the wheel: what cuts eumelanin into short, middle and long wavelengths.
SHORT, LONG = 1 / (1 + np.exp((NM - 505) / 15)), 1 - 1 / (1 + np.exp((NM - 580) / 15))
PRIMARIES = 3 * EUMELANIN * np.array([SHORT, 1 - SHORT - LONG, LONG])
WHEEL = {"red": (0, 1, 0), "orange": (1, 1, 0), "yellow": (1, 0, 0), "green": (1, 0, 1), "blue": (0, 0, 1)}
WHEEL |= {"violet": (0, 1, 1)}


def dye(hue: str) -> np.ndarray:
    """A hue is equal parts of its primaries; one between two others is their mean."""
    names = list(WHEEL)
    if hue in WHEEL:
        parts = np.array(WHEEL[hue]) / sum(WHEEL[hue])
        return parts @ PRIMARIES
    place = ["red-orange", "yellow-orange", "yellow-green", "blue-green", "blue-violet", "red-violet"].index(hue)
    return (dye(names[place]) + dye(names[(place + 1) % 6])) / 2


def melanin(level: float) -> np.ndarray:
    total = OF_BLACK * 2.0 ** (-(level - 1) / HALVING)
    return total * ((1 - PHEO) * EUMELANIN + PHEO * PHEOMELANIN)


def seen(sigma: np.ndarray, white: np.ndarray = WHITE_HAIR, floor: np.ndarray = FLOOR) -> np.ndarray:
    return floor + (white - floor) * np.exp(-GAIN * np.maximum(sigma, 0) ** EXPONENT)


def lab_of(sigma: np.ndarray) -> np.ndarray:
    return colour.XYZ_to_Lab(seen(sigma) @ TO_XYZ, XY)


def lightened(start: float, level: float) -> np.ndarray:
    """Absorption of natural hair lightened until it is as light as natural hair of the level."""
    total = OF_BLACK * 2.0 ** (-(start - 1) / HALVING)
    eumelanin, pheomelanin = total * (1 - PHEO), total * PHEO

    def after(dose: float) -> np.ndarray:
        oxidised = OXIDISED * eumelanin * (np.exp(-SURVIVAL * dose) - np.exp(-dose)) / (1 - SURVIVAL)
        left = eumelanin * np.exp(-dose) * EUMELANIN + pheomelanin * np.exp(-RESISTANCE * dose) * PHEOMELANIN
        return left + oxidised * np.exp(-(NM - 400) / TAIL)

    wanted = lab_of(melanin(level))[0]
    return after(brentq(lambda dose: lab_of(after(dose))[0] - wanted, 0, 60))


def deposit(level: float, tones: list[tuple[str, float]]) -> np.ndarray:
    neutral = melanin(level)
    if not tones:
        return neutral
    amount = OF_BLACK * 2.0 ** (-(level - 1) / HALVING)
    toned = amount * sum(dye(hue) * percent / 100 for hue, percent in tones)
    mixed = neutral * (1 - TONE_SHARE) + TONE_SHARE * toned
    wanted = lab_of(neutral)[0]
    return mixed * brentq(lambda scale: lab_of(mixed * scale)[0] - wanted, 0.05, 20)


@pytest.mark.parametrize("level", [1, 2, 3.5, 5, 6.5, 8, 10, 12])
def test_natural_hair_against_the_model_written_again(level):
    np.testing.assert_allclose(swatch(level).lab, lab_of(melanin(level)), rtol=0, atol=0.01)


@pytest.mark.parametrize(("start", "level"), [(1, 4), (2, 6), (4, 7), (5, 9), (6, 8.5), (7, 10), (3, 3.5)])
def test_lightened_hair_against_the_model_written_again(start, level):
    got = np.array(swatch(level, lightened_from=start).lab)
    want = lab_of(lightened(start, level))
    assert float(colour.delta_E(got, want, method="CIE 2000")) < 0.05


@pytest.mark.parametrize("tones", [[], ["violet"], ["yellow", "violet"], ["blue-green"], ["red", "red-orange"]])
def test_shades_on_white_hair_against_the_model_written_again(tones):
    shares = Shade("x", 8, tones).tones
    np.testing.assert_allclose(swatch(8, tones=tones).lab, lab_of(deposit(8, shares)), rtol=0, atol=0.05)


def test_levels_from_readings():
    # Measurement of hair luster, J. Cosmet. Sci. 51(5):293, 2000: dark brown and black tresses.
    for lab, level in [((22.7, 4.0, 4.8), 3), ((18.2, 0.0, -0.9), 1)]:
        low, best, high = level_from_reading(lab)
        assert low <= level <= high and low <= best < high
    wide = level_from_reading((50, 3, 19), instrument="calibrated-photograph")
    narrow = level_from_reading((50, 3, 19))
    assert wide.low < narrow.low and narrow.high < wide.high
    with pytest.raises(foilwork.FoilworkError, match="photographs of hair read about 33 units too light"):
        level_from_reading((50, 3, 19), instrument="photograph")


def test_levels_on_other_scales():
    # The anchors are the rows of both lists that name the same underlying pigment (common practice).
    assert level_on_scale(7.5, scale="japanese-20") == (4.0, 5.0, 6.0)
    own = level_on_scale(6, scale="us-10", anchors=[(5, 4), (7, 6)], uncertainty_levels=0.25)
    assert own == (4.75, 5.0, 5.25)
    for reading, keywords, text in [
        (3, {"scale": "japanese-20"}, "lies outside the stated mapping"),
        (6, {"scale": "us-10"}, "this mapping is for the Japanese 1-20 scale"),
        (6, {"scale": "us-10", "anchors": [(5, 4)]}, "at least 2 anchors"),
        (25, {"scale": "japanese-20"}, "must be from 1 to 20"),
    ]:
        with pytest.raises(foilwork.FoilworkError, match=text):
            level_on_scale(reading, **keywords)


def test_a_section_reads_between_its_two_colours():
    look = section_look(swatch(6), swatch(9, lightened_from=6), 40)
    assert 6 < look.perceived_level.best < 9 and not look.reads_as_one
    assert section_look(swatch(7), swatch(7.1), 50).reads_as_one


def test_side_by_side_is_the_mean_of_the_light():
    dark, light = swatch(4), swatch(9)
    xyz = [lab_to_xyz(each.lab) for each in (dark, light)]
    want = xyz_to_lab(tuple(0.75 * a + 0.25 * b for a, b in zip(*xyz, strict=True)))
    np.testing.assert_allclose(dark.beside(light, 25).lab, want, rtol=0, atol=1e-6)


def test_differences_have_the_bounds_of_the_model():
    low, best, high = swatch(5).difference_bounds(swatch(7))
    want = float(colour.delta_E(np.array(swatch(5).lab), np.array(swatch(7).lab), method="CIE 2000"))
    assert best == pytest.approx(want, abs=1e-9) and low <= best <= high and high - low > 1
    measured = swatch(lab=(55, 3, 18)), swatch(lab=(50, 3, 18))
    assert measured[0].difference_bounds(measured[1]).is_exact


def test_swatches_say_what_they_are():
    assert swatch(7).notice == "model, not a photograph" and swatch(7).basis == "assumed"
    measured = swatch(lab=(55, 3, 18))
    assert measured.basis == "measured by you" and measured.lab == (55, 3, 18)
    low, best, high = swatch(7).lightness
    assert low < best < high and swatch(7).uncertainty > 0 and best == pytest.approx(swatch(7).lab[0])
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
    shades = [Shade("<b>&", 9, ["violet"]), Shade("J9", 9)]
    answer = find_toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])
    page = Text(answer._repr_html_())
    assert "<b>&" in page.text and "target" in page.text and "predicted" in page.text


# --- toner ----------------------------------------------------------------------------------------------------------

CASES = [
    ((55.0, 2.5, 21.0), (51.0, 3.0, 12.0)),
    ((58.0, 2.0, 24.0), (50.0, 0.0, 8.0)),
    ((48.0, 5.0, 24.0), (42.0, 4.0, 16.0)),
    ((60.0, 1.0, 20.0), (45.0, 8.0, 18.0)),
]


def behind(exposed):
    """Absorption and fibre of measured hair: a smooth spectrum with its X, Y, Z, natural hair bent by a parabola."""
    wanted = colour.Lab_to_XYZ(np.array(exposed), XY)
    pigment = brentq(lambda e: seen(EUMELANIN * np.exp(-e)) @ TO_XYZ[:, 1] - wanted[1], -6, 12)
    start, place = seen(EUMELANIN * np.exp(-pigment)), (NM - 550) / 150
    bend = np.array([np.ones_like(place), place, place**2])
    found = fsolve(lambda c: (start * np.exp(c @ bend)) @ TO_XYZ - wanted, np.zeros(3), xtol=1e-12)
    spectrum = start * np.exp(found @ bend)
    floor, white = np.minimum(FLOOR, 0.9 * spectrum), np.maximum(WHITE_HAIR, 1.001 * spectrum)
    sigma = (-np.log((spectrum - floor) / (white - floor)) / GAIN) ** (1 / EXPONENT)
    return sigma, white, floor


def predictor(hair):
    """Predicted colour of a mix on hair: absorptions add up, half of the mix is taken up."""
    sigma, white, floor = hair

    def predict(shares, deposits):
        toned = sigma + UPTAKE * np.asarray(shares) @ np.asarray(deposits)
        return colour.XYZ_to_Lab(seen(toned, white, floor) @ TO_XYZ, XY)

    return predict


@pytest.mark.parametrize(("exposed", "target"), CASES)
def test_toner_optimum_against_scipy(exposed, target):
    """No mix of up to three of five shades, of any masses, is nearer than the one found to 0.01 g in 30 g."""
    shades = read_shades(CHART)[2:7]
    deposits = [deposit(shade.level, shade.tones) for shade in shades]
    predict = predictor(behind(exposed))

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
    answer = find_toner(shades, lifted_level=12, exposed_lab=exposed, target_lab=target, division_g=0.01)
    nearest = min(mix.residual.ciede2000 for mix in [answer.best, *answer.alternatives])
    assert nearest == pytest.approx(best, abs=0.02)
    # A further shade must be worth a quarter of a unit.
    assert answer.best.residual.ciede2000 <= best + 0.25 * 2 + 0.02


@pytest.mark.parametrize(("exposed", "target"), CASES[:2])
def test_toner_prediction_and_grid_optimum_of_pairs(exposed, target):
    """On a coarse scale the best pair is that of an exhaustive grid, and its prediction that of the model again."""
    shades = read_shades(CHART)[:6]
    deposits = [deposit(shade.level, shade.tones) for shade in shades]
    predict = predictor(behind(exposed))

    def miss(x, first, second):
        share = float(np.squeeze(x))
        lab = predict([share, 1 - share], [deposits[first], deposits[second]])
        return float(colour.delta_E(lab, target, method="CIE 2000"))

    grid = slice(0, 1 + 1e-9, 1 / 30)
    best = min(
        brute(miss, (grid,), args=pair, finish=None, full_output=True)[1]
        for pair in itertools.combinations(range(6), 2)
    )
    answer = find_toner(shades, lifted_level=12, exposed_lab=exposed, target_lab=target, most_shades=2)
    nearest = min(mix.residual.ciede2000 for mix in [answer.best, *answer.alternatives])
    assert nearest == pytest.approx(best, abs=0.02)
    codes = [shade.code for shade in shades]
    shares = [part.mass_g / 30 for part in answer.best.parts]
    again = predict(shares, [deposits[codes.index(part.code)] for part in answer.best.parts])
    np.testing.assert_allclose(answer.best.predicted.lab, again, rtol=0, atol=0.1)


def test_toner_optimum_from_a_modelled_start_against_scipy():
    """From the model's own start, with the shades that the trade names, no share of a pair is nearer."""
    hair = (lightened(5, 9), WHITE_HAIR, FLOOR)
    violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
    target = swatch(8.5).lab
    predict, deposits = predictor(hair), [deposit(9, violet.tones), deposit(9, plain.tones)]

    def miss(share):
        lab = predict([share, 1 - share], deposits)
        return float(colour.delta_E(lab, target, method="CIE 2000"))

    want = min((miss(share), share) for share in np.linspace(0, 1, 3001))
    answer = find_toner([violet, plain], lifted_level=9, natural_level=5, target_level=8.5, division_g=0.01)
    assert answer.best.residual.ciede2000 == pytest.approx(want[0], abs=0.02)
    violet_g = sum(part.mass_g for part in answer.best.parts if part.code == "J9-mist")
    assert violet_g == pytest.approx(30 * want[1], abs=0.3)
    assert answer.summary.startswith("violet against pale yellow: ")


def test_toned_hair_against_the_model_written_again():
    violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
    deposits = [deposit(9, violet.tones), deposit(9, plain.tones)]
    predict = predictor((lightened(5, 9), WHITE_HAIR, FLOOR))
    for share in (0, 25, 60, 100):
        got = toned([(violet, share), (plain, 100 - share)], lifted_level=9, natural_level=5)
        np.testing.assert_allclose(got.lab, predict([share / 100, 1 - share / 100], deposits), rtol=0, atol=0.05)
        assert got.notice == "model, not a photograph" and got.uncertainty > 1
    porous = toned([(violet, 60), (plain, 40)], lifted_level=9, natural_level=5, porous=True)
    assert porous.lightness.best < toned([(violet, 60), (plain, 40)], lifted_level=9, natural_level=5).lightness.best
    measured = swatch(9, lightened_from=5).lab
    np.testing.assert_allclose(toned([], lifted_level=9, exposed_lab=measured).lab, measured, rtol=0, atol=1e-6)
    with pytest.raises(foilwork.FoilworkError, match="invalid share"):
        toned([(violet, 120)], lifted_level=9, natural_level=5)


def test_modelled_starts_are_toned_against_the_warmth_that_the_list_names():
    """Natural 1-6 lifted to 5-10, a neutral target: no search leaves the hair as it is."""
    shades = [Shade(f"J{level}-plain", level) for level in range(3, 11)]
    shades += [
        Shade(f"J{level}-{hue}", level, [hue]) for hue in ("blue", "blue-violet", "violet") for level in range(4, 11)
    ]
    # Common practice, level by level.
    complements = {5: "blue-green", 6: "blue", 7: "blue-violet", 8: "violet", 9: "violet", 10: "violet"}
    shades += [Shade("J5-blue-green", 5, ["blue-green"])]
    starts = [(natural, lifted) for natural in range(1, 7) for lifted in range(5, 11) if lifted > natural]
    assert len(starts) == 33
    for natural, lifted in starts:
        answer = find_toner(shades, lifted_level=lifted, natural_level=natural, target_level=lifted - 0.5)
        assert answer.outcome not in ("already-nearer", "too-close-to-tell"), (natural, lifted)
        assert answer.summary.startswith(f"{complements[lifted]} against "), (natural, lifted, answer.summary)


def test_doses_by_level_strength_and_bowl():
    violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
    dose = neutralising_dose(violet, plain, lifted_level=9, natural_level=5, bowl_g=40)
    assert dose.share_percent.low <= dose.share_percent.best <= dose.share_percent.high
    assert dose.mass_g.best == pytest.approx(0.4 * dose.share_percent.best)
    assert dose.warmth_left.best < dose.warmth_before.best
    weak = neutralising_dose(violet, plain, lifted_level=9, seen="very pale yellow", bowl_g=40)
    strong = neutralising_dose(violet, plain, lifted_level=9, seen="strong yellow", bowl_g=40)
    assert weak.mass_g.best <= strong.mass_g.best
    # Porous hair takes up more, so less is enough.
    porous = neutralising_dose(violet, plain, lifted_level=9, natural_level=5, bowl_g=40, porous=True)
    assert porous.mass_g.best <= dose.mass_g.best


def test_a_start_as_seen_and_white_hair():
    shades = [Shade("J6-plain", 6), Shade("J6-ink", 6, ["blue"]), Shade("J6-moss", 6, ["green"])]
    seen_orange = find_toner(shades, lifted_level=6, seen="orange", target_level=6)
    assert seen_orange.summary.startswith("blue against orange: ")
    # On white hair a shade gives its own level.
    shades = [Shade(f"J{level}-plain", level) for level in (5, 6, 7, 8)]
    white = find_toner(shades, lifted_level=None, target_level=7, most_shades=2)
    assert [part.code for part in white.best.parts] == ["J7-plain"] and white.best.residual.ciede2000 < 0.5


def test_toner_answers_and_refusals():
    shades = read_shades(CHART)
    answer = find_toner(
        shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"], division_g=0.5
    )
    masses = [part.mass_g for part in answer.best.parts]
    assert sum(masses) == pytest.approx(30.0) and all(mass * 2 == round(mass * 2) and mass > 0 for mass in masses)
    assert len(masses) <= 3
    copied = pickle.loads(pickle.dumps(answer))
    assert copied == answer and hash(copied) == hash(answer) and copied.to_dict()["best"]["parts"][0]["code"]
    there = find_toner(shades, lifted_level=9, exposed_lab=swatch(9).lab, target_level=9)
    assert there.outcome == "already-nearer" and str(there).startswith("leave it: untoned hair is")
    far = find_toner(shades, lifted_level=8, natural_level=3, target_level=3)
    assert (
        far.outcome == "nearest-only"
        and "cannot be reached from these shades; taken, against the warmth, is" in str(far)
    )
    far = find_toner(shades, lifted_level=6, natural_level=3, target_level=10)
    assert any(finding.rule == "toner-level" for finding in far.findings)
    for keywords, text in [
        ({"most_shades": 5}, "must be from 1 to 4"),
        ({"bowl_g": 30.0, "division_g": 7.0}, "whole divisions"),
        ({"target_level": None}, "give one target"),
        ({"natural_level": None}, "nothing says how the lightened hair looks"),
    ]:
        keywords = {"natural_level": 5, "target_level": 8} | keywords
        with pytest.raises(foilwork.FoilworkError, match=text):
            find_toner(shades, lifted_level=9, **keywords)
    with pytest.raises(foilwork.FoilworkError, match="no shades to choose from"):
        find_toner([], lifted_level=9, natural_level=5, target_level=8)


def test_the_comparison_bench_runs():
    script = ROOT / "benches/python/colour_difference.py"
    done = subprocess.run([sys.executable, script, "--quick"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "CIEDE2000, 10000 pairs" in done.stdout
