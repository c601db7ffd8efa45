"""The bowl against Python's own exact arithmetic and against pint; the wrappers as they are used."""

import json
from decimal import Decimal
from fractions import Fraction
from math import gcd, lcm
from typing import Any

import numpy as np
import pint
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

import foilwork
from foilwork import mix

amounts = st.decimals(min_value="0.1", max_value="999", places=2)
units: pint.UnitRegistry[Decimal] = pint.UnitRegistry(non_int_type=Decimal)


@given(st.lists(amounts, min_size=2, max_size=7), amounts)
def test_split_is_that_of_fractions(parts: list[Decimal], total: Decimal) -> None:
    ratio = mix.Ratio(":".join(map(str, parts)))
    assert ratio.parts == parts
    exact = [Fraction(total) * Fraction(part) / sum(map(Fraction, parts)) for part in parts]
    for got, want in zip(ratio.split_decimal(total), exact, strict=True):
        # 28 digits, of which at most 28 stand after the point.
        assert abs(Fraction(got) - want) <= want / 10**24 + Fraction(1, 10**28)
    for got_g, want in zip(ratio.split_total(float(total)), exact, strict=True):
        assert got_g == pytest.approx(float(want), rel=1e-14, abs=1e-27)


@given(st.lists(amounts, min_size=2, max_size=7))
def test_lowest_terms_are_those_of_fractions(parts: list[Decimal]) -> None:
    fractions = [Fraction(part) for part in parts]
    scale = lcm(*(fraction.denominator for fraction in fractions))
    whole = [int(fraction * scale) for fraction in fractions]
    want = [number // gcd(*whole) for number in whole]
    assert mix.Ratio(":".join(map(str, parts))).lowest_terms() == want


NAMES: dict[Any, str] = {"mL": "milliliter", "US fl oz": "fluid_ounce", "UK fl oz": "imperial_fluid_ounce"}


@given(amounts, st.sampled_from(sorted(NAMES)), st.sampled_from(sorted(NAMES)))
def test_volumes_are_those_of_pint(value: Decimal, from_unit: Any, to_unit: Any) -> None:
    want = units.Quantity(value, NAMES[from_unit]).to(NAMES[to_unit]).magnitude
    assert mix.convert_amount(value, from_unit, to_unit) == pytest.approx(want, rel=Decimal("1e-25"))


@given(amounts, st.sampled_from(["0.98", "1.02", "1.04"]))
def test_mass_is_volume_times_density(value: Decimal, density: str) -> None:
    got = mix.convert_amount(value, "UK fl oz", "g", density_g_per_ml=float(density))
    assert got == value * Decimal("28.4130625") * Decimal(density)


@given(st.lists(st.floats(0.2, 200), min_size=1, max_size=8), st.sampled_from([0.1, 0.5, 1, 2]))
def test_weighed_parts_add_up(masses: list[float], division: float) -> None:
    assume(sum(masses) > division)
    bowl = mix.weigh(masses, division)
    assert sum(bowl.masses_g) == pytest.approx(bowl.total_g)
    assert abs(bowl.total_g - sum(masses)) <= division / 2 + 1e-9
    assert bowl.worst_ratio_error_percent == pytest.approx(max(map(abs, bowl.ratio_errors_percent)))


def test_recipe_reads_scales_and_prints() -> None:
    recipe = mix.Recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6%")
    assert str(recipe) == "30 g J7-mist + 15 g J8-oat + 67.5 g 6%"
    assert recipe.parts[2].to_dict() == {"value": Decimal("67.5"), "unit": "g", "product": "6%"}
    assert recipe.total() == Decimal("112.5")
    assert recipe.masses_g() == [30.0, 15.0, 67.5]
    assert recipe.ratio().lowest_terms() == [4, 2, 9]
    assert str(recipe.to_part("J8-oat", Decimal(20))) == "40 g J7-mist + 20 g J8-oat + 90 g 6%"
    assert str(recipe.times(2)) == "60 g J7-mist + 30 g J8-oat + 135 g 6%"
    assert str(recipe.to_packs("J7-mist", 60, 1)) == str(recipe.times(2))
    assert recipe.packs_needed("6%", 60) == 2
    assert recipe == mix.Recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6%")
    assert recipe != recipe.times(2)
    first, second = recipe.split(mix.Ratio("2:1"))
    assert first.combined(second) == recipe.times(1)
    assert str(mix.Recipe("60 mL 6% + 30 g J7-mist").in_grams({"6%": 1.02})) == "61.2 g 6% + 30 g J7-mist"


@pytest.mark.parametrize(
    ("text", "position"),
    [("30 g J7-mist+15 g J8-oat", 13), ("30 x J7-mist", 4), ("30 g", 5), ("", 1), ("1,5 g J7-mist", 2)],
)
def test_bad_recipe_points_at_the_character(text: str, position: int) -> None:
    with pytest.raises(foilwork.FoilworkError, match=f"at character {position}, expected"):
        mix.Recipe(text)


def test_bowls_with_additives() -> None:
    plan = mix.bowls(152, 84, 60, 4, residue_g=4)
    additives = [
        mix.Addition.per_bowl("bond builder", 2),
        mix.Addition.of_product("thickener", "lightener", 12),
    ]
    recipes = plan.recipes(mix.Recipe("1 g lightener + 2 g 9%"), additives)
    assert [str(recipe) for recipe in recipes] == [
        "25 g lightener + 50 g 9% + 2 g bond builder + 3 g thickener",
    ] * 2
    assert plan.leftover_g == pytest.approx(8)
    leftovers = plan.leftovers(mix.Recipe("1 g lightener + 2 g 9%"), additives)
    wasted = {left.product: left.wasted_g for left in leftovers}
    assert wasted["9%"] == pytest.approx(5)
    assert [bowl.mix_at_min for bowl in plan.bowls] == pytest.approx([0, 19])
    with pytest.raises(foilwork.FoilworkError, match="working life is 0 min"):
        mix.bowls(100, 50, 0, 2)


def test_strength_takes_numbers_and_bounds() -> None:
    assert mix.as_applied([30, 60], [0, (8.5, 9, 9.6)]) == pytest.approx((17 / 3, 6, 6.4))
    with pytest.raises(foilwork.FoilworkError, match="2 masses and 1 strengths"):
        mix.as_applied([30, 60], [0])
    with pytest.raises(foilwork.FoilworkError, match="low <= best <= high"):
        mix.as_applied([30], [(9, 8, 10)])
    with pytest.raises(TypeError, match="low, best, high"):
        mix.as_applied([30], ["9"])  # type: ignore[list-item]


def test_card_turns_into_plain_data() -> None:
    recipe = mix.Recipe("30 g J7-mist + 45 g 6%")
    card = mix.mixing_card("chair 2", "roots", recipe, [0, 6], 1, "2026-11-25T23:40", 40, remarks=["gloves on"])
    assert json.loads(json.dumps(card.to_dict()))["total_g"] == 75
    assert str(card) == card.text
    assert card.text.endswith("mixed 2026-11-25 23:40, use by 2026-11-26 00:20\n! gloves on")
    unknown = mix.mixing_card("chair 2", "roots", recipe, [None, 6], 1, "2026-11-25T23:40", 40)
    assert unknown.strength_as_applied_ww_percent is None
    assert unknown.strength_unknown_in == ["J7-mist"]
    with pytest.raises(foilwork.FoilworkError):
        mix.mixing_card("chair 2", "roots", recipe, [0, 6], 1, "tonight", 40)


def test_composition_names_what_it_does_not_know() -> None:
    developer = mix.Product("6%", [mix.Ingredient("hydrogen peroxide", 6, cas="7722-84-1")])
    bowl = mix.Composition([(90, developer), (10, mix.Product("oil", [], fully_declared=False))])
    assert bowl.total_g == 100
    assert bowl.undeclared == ["oil"]
    assert bowl.hazards == ["peroxide", "unknown"]
    (peroxide,) = bowl.constituents
    assert tuple(peroxide.level_ww_percent) == pytest.approx((5.4, 5.4, 5.4))
    assert peroxide.undeclared_at_most_ww_percent == pytest.approx(10)
    with pytest.raises(foilwork.FoilworkError, match="check digit should be 1"):
        mix.Ingredient("hydrogen peroxide", 6, cas="7722-84-2")


def test_handling_never_says_safe() -> None:
    points = mix.handling_advice(["peroxide", "persulfate", "ammonia", "oxidative-dye", "resorcinol", "unknown"])
    assert len(points) > len(mix.handling_advice([]))
    assert not any("safe" in point.text for point in points)
    with pytest.raises(foilwork.FoilworkError, match="unknown hazard"):
        mix.handling_advice(["dust"])  # type: ignore[list-item]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.3, 60), min_size=2, max_size=7), st.sampled_from([0.5, 1, 5]))
def test_no_integer_programme_weighs_better(masses: list[float], division: float) -> None:
    # The largest relative error of a share, minimised by SciPy's mixed-integer solver over whole divisions.
    assume(sum(masses) > 2 * division)
    bowl = mix.weigh(masses, division)
    units = round(bowl.total_g / division)
    quotas = np.array(masses) / sum(masses) * units
    count = len(masses)
    column = -quotas[:, None]
    solved = milp(
        np.array([0.0] * count + [1.0]),
        integrality=[1] * count + [0],
        bounds=Bounds(0, np.inf),
        constraints=[
            LinearConstraint(np.hstack([np.eye(count), column]), -np.inf, quotas),
            LinearConstraint(np.hstack([-np.eye(count), column]), -np.inf, -quotas),
            LinearConstraint(np.array([[1.0] * count + [0.0]]), units, units),
        ],
    )
    assert solved.success
    # HiGHS stops within its own tolerance of the optimum.
    assert bowl.worst_ratio_error_percent == pytest.approx(100 * solved.fun, rel=2e-3, abs=1e-3)
