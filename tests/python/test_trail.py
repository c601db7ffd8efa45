"""Trails of what commands come to: what is arithmetic is worked here from the inputs, without foilwork; of models
(toner, lift, a head, the surface of hair) inputs, sources and bounds are checked.
"""

import csv
import json
import math
import re
import subprocess
import sys
from collections import Counter
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import foilwork
from foilwork import source

ROOT = Path(__file__).parents[2]
SOFT, SHOP = "examples/soft-gradient.toml", "examples/juniper_and_tide.toml"
COMMANDS: dict[str, list[str]] = {
    "convert": ["6 % w/w"],
    "dilute": ["--stock", "12 % w/w", "--target", "2.5 % w/w", "--total", "100"],
    "blend": ["--stock", "a=12 % w/w", "--stock", "b=3 % w/w", "--target", "6 % w/w", "--total", "90"],
    "scale": ["30 g ash + 45.5 g developer", "--total", "120"],
    "toner": [SHOP, "--natural", "5", "--lifted", "9", "--target", "8", "--tone", "violet"],
    "lift": ["--from", "4", "--developer", "6 % w/w", "--ratio", "1:2"],
    "hair": ["--length", "20", "--weeks", "8"],
    "foils": ["--width", "8", "--height", "6", "--length", "30", "--pick", "3", "--gap", "3"],
    "head": [SOFT],
    "price": ["--cost", "61.20", "--margin", "40", "--tax", "21", "--currency", "EUR"],
    "cost": ["examples/juniper_and_tide_services.csv", "--shop", SHOP],
    "day": [SOFT],
    "limits": ["--jurisdiction", "EU"],
}


@cache
def trail(command: str, *more: str) -> list[dict[str, Any]]:
    program = str(Path(sys.executable).with_name("foilwork"))
    arguments = [program, command, *COMMANDS[command], *more, "--trail", "--json"]
    run = subprocess.run(arguments, check=False, capture_output=True, text=True, cwd=ROOT)
    assert run.returncode in (0, 1) and not run.stderr, run.stderr
    found: list[dict[str, Any]] = json.loads(run.stdout)
    assert found
    return found


def given(result: dict[str, Any], what: str) -> Fraction:
    """The one input whose name begins so."""
    (value,) = [Fraction(one["value"]) for one in result["inputs"] if one["what"].startswith(what)]
    return value


def near(result: dict[str, Any], worked: float | Fraction, within: float = 1e-9) -> None:
    assert float(result["value"]) == pytest.approx(float(worked), rel=within), result


def in_the_book(*results: dict[str, Any]) -> None:
    """The page that lists the formulas has those of the results."""
    # Line breaks of the page are no part of a formula.
    book = " ".join((ROOT / "docs/book/guides/trail.md").read_text(encoding="utf-8").split())
    for result in results:
        for step in result["formula"].split("; "):
            # What a section adds to a formula of its own is said there.
            assert step.split(" + film")[0].split(" + ends")[0] in book, step


@pytest.mark.parametrize("command", COMMANDS)
def test_a_result_says_formula_inputs_basis_sources_and_version(command: str) -> None:
    ids = {citation.id for citation in source.register()}
    for result in trail(command):
        assert result["unit"] and result["inputs"] and result["basis"], result
        assert set(result["sources"]) <= ids and result["foilwork"] == foilwork.__version__
        in_the_book(result)
        if result["bounds"]:
            low, high = (float(bound) for bound in result["bounds"])
            assert low <= float(result["value"]) <= high


def test_a_conversion_follows_from_density_and_molar_mass() -> None:
    found = {result["unit"]: result for result in trail("convert")}
    density = given(found["% w/v"], "density")
    # 6 % w/w is 60 g in a kilogram of solution, in 1 / density litres; 34.01 g/mol and two molecules for one of oxygen.
    near(found["% w/v"], 6 * density)
    grams = 60 * density
    moles = grams / given(found["mol/L"], "M,")
    near(found["g/L"], grams)
    near(found["mol/L"], moles)
    near(found["N"], 2 * moles)
    near(found["volumes"], moles / 2 * given(found["volumes"], "molar volume"))
    # In 940 g of water.
    near(found["mol/kg"], 60 / given(found["mol/kg"], "M,") / Fraction(940, 1000))
    active = found["% active oxygen"]
    near(active, 6 * given(active, "molar mass of oxygen") / given(active, "M,"))
    assert all(Fraction(found[unit]["bounds"][0]) < Fraction(found[unit]["value"]) for unit in ("% w/v", "volumes"))


def test_a_blend_conserves_peroxide() -> None:
    stock, water, strength = trail("dilute")
    near(stock, Fraction(25, 10) / 12 * 100)
    near(water, 100 - Fraction(25, 10) / 12 * 100)
    for result in (strength, *trail("blend")):
        weighed = [Fraction(one["value"]) for one in result["inputs"] if one["what"].endswith("weighed")]
        percent = [Fraction(one["value"]) for one in result["inputs"] if one["what"].endswith("peroxide")]
        near(result, sum(g * p for g, p in zip(weighed, percent, strict=True)) / sum(weighed))


def test_a_recipe_keeps_its_ratio() -> None:
    for result, amount in zip(trail("scale"), (Fraction(30), Fraction(91, 2)), strict=True):
        near(result, amount * 120 / Fraction(151, 2))


def test_hair_is_a_product_of_what_is_known_of_it() -> None:
    hairs, mass, surface, grown = trail("hair")
    near(hairs, given(hairs, "hair-bearing") * given(hairs, "density"))
    near(mass, given(mass, "mass by length") * 20)
    near(grown, given(grown, "rate") * 8 * 7 / Fraction("30.4375"))
    assert surface["unit"] == "cm2" and given(surface, "hairs") == Fraction(hairs["value"])


def test_foils_are_whole_rows() -> None:
    foils, picks = trail("foils")
    rows = (given(foils, "height") + given(foils, "left")) / (given(foils, "subsection") + given(foils, "left"))
    near(foils, math.floor(rows) * given(foils, "foils in a row"))
    near(
        picks, math.floor((given(picks, "width") + given(picks, "gap")) / (given(picks, "pick") + given(picks, "gap")))
    )


def cents(value: Fraction) -> Decimal:
    exact = Decimal(value.numerator) / Decimal(value.denominator)
    return exact.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)


def test_money_is_worked_to_the_cent() -> None:
    net, profit, margin, markup, gross = trail("price")
    assert Decimal(net["value"]) == cents(Fraction("61.20") / Fraction(60, 100))
    assert Decimal(profit["value"]) == Decimal(net["value"]) - Decimal("61.20")
    near(margin, Fraction(profit["value"]) / Fraction(net["value"]) * 100, 1e-6)
    near(markup, Fraction(profit["value"]) / Fraction("61.20") * 100, 1e-6)
    assert Decimal(gross["value"]) == Decimal(net["value"]) + cents(Fraction(net["value"]) * 21 / 100)


def test_a_discount_is_worked_to_what_it_must_bring() -> None:
    off, after, before_each, after_each, sales, more = trail("price", "--discount", "15", "--sold", "30")[-6:]
    full, cost = cents(Fraction("61.20") / Fraction(60, 100)), Decimal("61.20")
    assert Decimal(off["value"]) == cents(Fraction(full) * 15 / 100)
    assert Decimal(after["value"]) == full - Decimal(off["value"])
    assert Decimal(before_each["value"]) == full - cost
    assert Decimal(after_each["value"]) == Decimal(after["value"]) - cost
    ratio = Fraction(before_each["value"]) / Fraction(after_each["value"])
    assert int(sales["value"]) == math.ceil(30 * ratio)
    near(more, (ratio - 1) * 100, 1e-6)
    in_the_book(off, after, before_each, after_each, sales, more)


@pytest.mark.parametrize(("given", "worked"), [("--margin", "66.666667"), ("--markup", "28.571429")])
def test_one_percentage_is_worked_from_the_other(given: str, worked: str) -> None:
    # 40 / (100 - 40) and 40 / (100 + 40).
    program = str(Path(sys.executable).with_name("foilwork"))
    run = subprocess.run([program, "price", given, "40", "--trail", "--json"], check=True, capture_output=True)
    (result,) = json.loads(run.stdout)
    assert result["value"] == worked
    in_the_book(result)


def percent(result: dict[str, Any], what: str) -> Fraction:
    return given(result, what) / 100


def test_a_list_is_worked_to_the_cent() -> None:
    names = [result["what"] for result in trail("cost")]
    assert len(set(names)) == len(names) and "face-frame lights, long: cost" in names
    met: Counter[str] = Counter()
    for result in trail("cost"):
        service, what = result["what"].rsplit(": ", 1)
        if what == "cost":
            worked = sum((Fraction(one["value"]) for one in result["inputs"]), Fraction(0))
        elif what == "profit":
            worked = given(result, "net price") - given(result, "cost")
        elif what == "net price":
            worked = given(result, "gross price") / (1 + percent(result, "tax"))
        elif what == "net price that is asked for":
            kept = 1 - percent(result, "margin") - percent(result, "card fee") * (1 + percent(result, "tax"))
            worked = (given(result, "cost") + given(result, "fixed card fee")) / kept
        elif what == "gross price":
            # The first price of the list that is not below it: 0.50, 1.50, 2.50 and so on.
            asked = given(result, "net price") * (1 + percent(result, "tax"))
            worked = math.ceil(asked - Fraction(1, 2)) + Fraction(1, 2)
        else:
            continue
        assert Decimal(result["value"]) == cents(worked), result
        met[what] += 1
    # Nine services; half a head of foils on long hair, and root shadow and toner, have no price on the list.
    assert met == {"cost": 9, "profit": 9, "net price": 9, "net price that is asked for": 2, "gross price": 2}


def test_a_strand_carries_its_mixture_from_its_first_stroke() -> None:
    *carried, finish = trail("day")
    for result in carried:
        near(result, given(result, "rinse") - given(result, "first strand on"))
    near(finish, max(Fraction(one["value"]) for one in finish["inputs"]))


@pytest.mark.parametrize(
    ("substance", "entry", "some"),
    [
        # Annex III of Regulation (EC) No 1223/2009, entries 12 and 8a, from the lists of the Commission and of ECHA.
        ("hydrogen peroxide", "12", {"hair product": "12", "eyelash colouring": "2"}),
        ("p-phenylenediamine", "8a", {"hair dye, oxidative (on head)": "2"}),
    ],
)
def test_a_limit_is_the_figure_of_its_act(substance: str, entry: str, some: dict[str, str]) -> None:
    with (ROOT / "tests/data/limits/figures.csv").open(encoding="utf-8", newline="") as table:
        rows = [row for row in csv.DictReader(table) if row["row_id"].startswith(f"EU-III-{entry}-")]
    figures = {row["use"]: row["limit_value"] for row in rows}
    found = {
        result["what"].rsplit(": ", 1)[1]: result["value"]
        for result in trail("limits", "--substance", substance)
        if re.search(rf"Annex III, entry {entry}\b", result["inputs"][1]["value"])
    }
    assert found == figures and some.items() <= found.items()


def test_toner_and_lift_name_their_model() -> None:
    *shades, left = trail("toner")
    assert sum(Fraction(shade["value"]) for shade in shades) == 30
    assert left["sources"] == ["sharma-wu-dalal-2005"] and left["unit"] == "CIEDE2000"
    (level,) = trail("lift")
    assert level["bounds"] and level["sources"] == ["lightening-series"] and given(level, "level at the start") == 4


def test_a_label_has_no_trail() -> None:
    program = str(Path(sys.executable).with_name("foilwork"))
    run = subprocess.run([program, "convert", "20 vol", "--trail"], check=False, capture_output=True, text=True)
    assert run.returncode == 2 and "label and no strength (write it as it is read" in run.stderr
