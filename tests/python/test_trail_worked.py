"""Every formula of a trail with its numbers put in, worked out here by fractions: no code of foilwork takes part.

``x`` is times, ``^`` a power, ``whole`` rounds down, ``up`` rounds up to a whole number, ``largest`` takes the largest.
"""

import ast
import json
import math
import re
import subprocess
import sys
import tomllib
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import foilwork
from foilwork import service, source

ROOT = Path(__file__).parents[2]
SOFT, SHOP, LIST = (
    "examples/soft-gradient.toml",
    "examples/juniper_and_tide.toml",
    "examples/juniper_and_tide_services.csv",
)
RECORDS = "examples/juniper_and_tide_records.jsonl"
TITRATE = ["titrate", "--titrant", "0.02+-0.0001 mol/L", "--aliquot", "10+-0.02"]
DILUTED = ["--taken", "10+-0.02", "--made-up-to", "100+-0.1"]
EUR = ["--currency", "EUR"]
RENT = ["--rent", "200", "--own-costs", "50", "--variable", "12", "--wage", "480", "--commission", "15"]
STOCK = ["--on-hand", "900 g", "--daily", "120 g", "--pack", "500 g", "--reserve", "300 g"]
ORDERED = ["--sold-in-days", "30", "--reserve-days", "3"]
QUOTES = ["business", "quote", "examples/juniper_and_tide_quote.csv", "--shop", SHOP]
COMMANDS: list[list[str]] = [
    ["plan", SOFT],
    ["convert", "6 % w/w"],
    ["dilute", "--stock", "12 % w/w", "--target", "2.5 % w/w", "--total", "100"],
    ["table", "--stocks", "12, 9 % w/w", "--targets", "6, 3 % w/w", "--total", "100"],
    ["blend", "--stock", "a=12 % w/w", "--stock", "b=3 % w/w", "--target", "6 % w/w", "--total", "90"],
    [*TITRATE, "--titre", "12.0+-0.03"],
    [*TITRATE, *DILUTED, "--titre", "12.0+-0.03"],
    [*TITRATE, *DILUTED, "--expect", "6 % w/w"],
    [*TITRATE, *DILUTED, "--expect", "20 vol"],
    ["table", "--stocks", "20 vol, 30 volumes", "--targets", "3 % w/w", "--total", "100"],
    ["scale", "30 g ash + 45.5 g developer", "--total", "120"],
    ["level", "--natural", "6", "--target", "8", "--applied", "9"],
    ["level", "--natural", "9", "--target", "5", "--applied", "5"],
    ["level", "--measured", "22.7,4.0,4.8", "--target", "6"],
    ["swatch", "8", "--from", "4"],
    ["swatch", "8"],
    ["swatch", "8", "--tone", "violet"],
    [
        "choose",
        "--start",
        "diffuse",
        "--upkeep",
        "12",
        "--length",
        "40",
        "--from",
        "5",
        "--to",
        "9",
        "--treats",
        "weave=55",
    ],
    ["toner", SHOP, "--natural", "5", "--lifted", "9", "--target", "8", "--tone", "violet"],
    ["lift", "--from", "4", "--developer", "6 % w/w", "--ratio", "1:2"],
    ["hair", "--length", "20", "--weeks", "8"],
    ["hair", "--length", "20", "--used", "60", "--used-on", "20"],
    ["hair", "--length", "20", "--used", "150", "--used-technique", "regrowth", "--regrowth", "2"],
    ["foils", "--width", "8", "--height", "6", "--length", "30", "--pick", "3", "--gap", "3"],
    ["head", SOFT],
    ["price", "--cost", "61.20", "--margin", "40", "--tax", "21", *EUR],
    ["price", "--price", "100", "--markup", "40", *EUR],
    ["price", "--margin", "40"],
    ["price", "--markup", "37.5"],
    ["price", "--cost", "20", "--price", "49.95", "--discount", "15", "--sold", "30", *EUR],
    ["price", "--cost", "61.20", "--margin", "40", "--discount", "12.5", "--tax", "21", *EUR],
    ["cost", LIST, "--shop", SHOP],
    ["day", SOFT],
    ["limits", "--jurisdiction", "EU"],
    ["business", "break-even", "--fixed", "3000", "--profit", "410", "--price", "35", "--variable", "20", *EUR],
    ["business", "break-even", "--list", LIST, "--shop", SHOP, "--fixed", "4000"],
    ["business", "commission", "--takings", "1540", "--percent", "5", "--over", "500", "--base", "120", *EUR],
    ["business", "commission", "--takings", "400", "--percent", "5", "--over", "500", *EUR],
    ["business", "commission", "--takings", "1300", "--tier", "800=8", "--tier", "14", *EUR],
    ["business", "commission", "--takings", "1300", "--percent", "7.5", *EUR],
    ["business", "tips", "--tips", "50", "--hours", "8,8,5", *EUR],
    ["business", "rent", "--takings", "1200", *RENT, *EUR],
    ["business", "productivity", "--productive", "30", "--of", "40", "--time", "paid-time"],
    ["business", "reorder", *STOCK, "--lead-days", "5", "--cover-days", "14"],
    [
        "business",
        "reorder",
        "--list",
        "examples/juniper_and_tide_month.csv",
        "--shop",
        SHOP,
        *ORDERED,
        "--lead-days",
        "5",
        "--cover-days",
        "14",
    ],
    QUOTES,
    ["consult", "examples/staged-lightening.toml"],
    ["record", SOFT, "examples/soft-gradient.jsonl"],
    ["history", RECORDS, "--by", "colourist"],
    ["history", RECORDS, "--guest", "J-088"],
]

# What a model, a list or a decision says is no arithmetic; each begins so.
NO_ARITHMETIC = (
    "as stated",
    "best fit",
    "level after the time by the lift law",
    "of all whole weights",
    "CIEDE2000 between",
    "spectrum of",
    "hairs x circumference x length",
    "net price that is asked for, with its tax, moved to",
    "the same rule at the cost of fewer bowls",
    "the act's own figure",
    "level whose natural hair is as light",
    "pigment that the trade lists",
    "the plainest technique",
    "the gentlest class",
    "regrowth where nothing else is done",
    "STOP where a check says stop",
    "price of the list, or of the costs",
    "none while on hand",
    "regrowth that shows above such a start",
    "yes where the bounds by use",
    "mixture without the share that the ends between take",
)
DRAWN = ", drawn to what was used before"


def worked(text: str) -> Fraction:
    """The number that the text comes to."""
    python = re.sub(r"\bx\b", "*", text).replace("^", "**")
    return value(ast.parse(re.sub(r"\b(whole|up|largest) \(", r"\1(", python), mode="eval").body)


def value(node: ast.expr) -> Fraction:
    match node:
        case ast.Constant(value=int() | float() as number):
            # As it is written, not as the nearest binary number.
            return Fraction(str(number))
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -value(inner)
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return Fraction(float(value(left)) ** float(value(right)))
        case ast.BinOp(left=left, op=op, right=right):
            one, two = value(left), value(right)
            match op:
                case ast.Add():
                    return one + two
                case ast.Sub():
                    return one - two
                case ast.Mult():
                    return one * two
                case ast.Div():
                    return one / two
        case ast.Call(func=ast.Name(id=name), args=args):
            all_of = [value(arg) for arg in args]
            match name:
                case "largest":
                    return max(all_of)
                case "whole":
                    return Fraction(math.floor(all_of[0] + Fraction(1, 10**9)))
                case "up":
                    return Fraction(math.ceil(all_of[0] - Fraction(1, 10**9)))
    raise AssertionError(f"not arithmetic: {ast.dump(node)}")


@cache
def trail(command: tuple[str, ...]) -> list[dict[str, Any]]:
    program = str(Path(sys.executable).with_name("foilwork"))
    arguments = [program, *command, "--trail", "--json"]
    run = subprocess.run(arguments, check=False, capture_output=True, text=True, cwd=ROOT)
    assert run.returncode in (0, 1) and not run.stderr, run.stderr
    found: list[dict[str, Any]] = json.loads(run.stdout)
    assert found
    return found


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: " ".join(command[:2]))
def test_the_numbers_put_into_a_formula_come_to_its_value(command: list[str]) -> None:
    ids = {citation.id for citation in source.register()}
    for result in trail(tuple(command)):
        assert result["unit"] and result["inputs"] and set(result["sources"]) <= ids, result
        if result["worked"] is None:
            assert result["formula"].startswith(NO_ARITHMETIC) or result["formula"].endswith(DRAWN), result
            continue
        comes_to, told = worked(result["worked"]), Fraction(result["value"])
        money = re.fullmatch("[A-Z]{3}", result["unit"])
        # Amounts are whole cents, and a cent left over of tips goes to one; percentages have two decimals or six.
        cents = Fraction(1, 100) if "add up" in result["formula"] else Fraction(1, 200)
        slack = (
            cents if money else abs(comes_to) / 10**9 + (Fraction(1, 200) if result["unit"].startswith("% of") else 0)
        )
        assert abs(comes_to - told) <= slack + Fraction(1, 10**9), (result["worked"], float(comes_to), result["value"])
        if result["bounds"]:
            low, high = (Fraction(bound) for bound in result["bounds"])
            assert low <= told <= high


def test_what_is_stated_measured_or_assumed_says_so() -> None:
    (strength, *_) = trail((*TITRATE, "--titre", "12.0+-0.03"))
    assert {one["what"]: one["basis"] for one in strength["inputs"]} == {
        "titrant": "stated",
        "aliquot": "stated",
        "titre": "measured",
    }
    assert strength["basis"] == "measured"


def test_estimated_minutes_bound_the_day_of_one_section() -> None:
    # One section, one person: a minute more of putting on is one more for its first strand and to the finish, and with
    # every five begun comes a look of a minute.
    data = tomllib.loads((ROOT / SOFT).read_text(encoding="utf-8"))
    section = data["section"][0]
    del section["apply_min"], data["toner"]
    data["section"] = [{name: value for name, value in section.items() if name not in ("toner", "root_shadow")}]
    carried, finish = service.trace_day(foilwork.plan(data))
    (least, most), best = (tuple(map(float, finish.bounds or ())), float(finish.value))
    by_foil = next(one for one in finish.inputs if one.what.endswith("putting on"))
    (low, high), minutes = (tuple(map(float, by_foil.bounds or ())), float(by_foil.value))
    busy = [time + math.ceil(time / 5) - 1 for time in (low, minutes, high)]
    assert (best - least, most - best) == pytest.approx((busy[1] - busy[0], busy[2] - busy[1])), finish
    assert by_foil.basis == "assumed"
    (least, most), best = (tuple(map(float, carried.bounds or ())), float(carried.value))
    assert (best - least, most - best) == pytest.approx((busy[1] - busy[0], busy[2] - busy[1])), carried
    # Stated minutes are as they are.
    data["section"][0]["apply_min"] = 16
    assert all(one.bounds is None for one in service.trace_day(foilwork.plan(data)))
