"""Pages and pictures without a browser: valid, whole, readable, and closed to everything from outside."""

import base64
import datetime
import hashlib
import itertools
import json
import math
import re
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import html5lib
import pytest
from lxml import etree

import foilwork
from foilwork import chart
from foilwork.day import SectionWork, arrange
from foilwork.lift import Lightening, Situation
from foilwork.money import CostTable, Money
from foilwork.teach import checklist, worksheet

ROOT = Path(__file__).resolve().parents[2]
STYLE = (ROOT / "src" / "page" / "style.css").read_text(encoding="utf-8")
SOFT = foilwork.plan_file(ROOT / "examples" / "soft-gradient.toml")


def pages() -> Iterator[tuple[str, str]]:
    yield "bench", SOFT.html()
    yield "guest", SOFT.guest_html()
    yield "agreement", SOFT.agreement_html()
    for name in ["finish-together", "gloss-refresh", "grey-blend"]:
        plan = foilwork.plan_file(ROOT / "examples" / f"{name}.toml")
        yield f"bench {name}", plan.html()
        yield f"guest {name}", plan.guest_html()
    yield "worksheet", worksheet(seed=3, count=26).html(choices=True)
    yield "worksheet without choices", worksheet(seed=3, count=26).html()
    yield "key", worksheet(seed=3, count=26).html("key")
    yield "checklist", checklist().html()


def pictures() -> Iterator[tuple[str, str]]:
    costs = CostTable("EUR")
    costs.add("product", "powder & <cream>", Money("10.00", "EUR"))
    yield "dilution", chart.dilution_chart([12, 9, 6], [6, 3], 60, title="<wall> & 'class'").svg
    yield "pigment", chart.pigment_chart(4, "us").svg
    yield "wheel", chart.hue_wheel("orange").svg
    yield "costs", chart.cost_chart(costs).svg
    yield "margin", chart.margin_chart(Money("60.00", "EUR"), 40).svg
    yield "lift", Lightening(Situation(4), 4).svg(target_level=8)
    yield "head", str(SOFT.head_map())
    yield "day", arrange([SectionWork("<nape> & 'crown'", apply_min=18, develop_min=30, longest_min=60)]).svg()
    for place, found in enumerate(re.findall(r"<svg .*?</svg>", SOFT.html(), re.DOTALL)):
        yield f"on the page {place}", found


PAGES, PICTURES = dict(pages()), dict(pictures())


@pytest.mark.parametrize("name", PAGES)
def test_page_is_valid_html(name: str) -> None:
    # A strict parser refuses whatever the standard calls a parse error.
    html5lib.HTMLParser(strict=True).parse(PAGES[name])


@pytest.mark.parametrize("name", PAGES)
def test_page_runs_and_loads_only_its_own(name: str) -> None:
    page = PAGES[name]
    policy = re.findall(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)
    assert len(policy) == 1
    for tag in ["style", "script"]:
        found = re.findall(rf"<{tag}>(.*?)</{tag}>", page, re.DOTALL)
        hashes = [base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in found]
        assert re.findall(rf"{tag}-src '([^']*)'", policy[0]) == [f"sha256-{value}" for value in hashes], (
            f"{tag}: put the new hash into src/page/frame.rs"
        )
    assert policy[0].startswith("default-src 'none'; ")
    assert not re.search(r"""\b(?:src|srcset|action|data|poster)=|href="[^#]|url\(|@import| on\w+=|style=""", page)


@pytest.mark.parametrize("name", PAGES)
def test_headings_go_down_one_at_a_time(name: str) -> None:
    levels = [int(level) for level in re.findall(r"<h([1-6])[ >]", PAGES[name])]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))


@pytest.mark.parametrize("name", PICTURES)
def test_picture_is_well_formed_and_says_itself_in_words(name: str) -> None:
    root = etree.fromstring(PICTURES[name].encode())
    spaces = {"s": "http://www.w3.org/2000/svg"}
    assert root.tag == "{http://www.w3.org/2000/svg}svg" and root.get("role") == "img" and root.get("aria-label")
    for said in ["title", "desc"]:
        assert root.xpath(f"string(s:{said})", namespaces=spaces).strip()
    assert root.xpath("count(s:text)", namespaces=spaces) > 1
    known = {"svg", "title", "desc", "rect", "circle", "polyline", "polygon", "path", "text"}
    assert {etree.QName(element).localname for element in root.iter()} <= known
    names = {name for element in root.iter() for name in element.attrib}
    assert not any(name.startswith("on") or "href" in name or name == "style" for name in names)


@pytest.mark.parametrize("name", PICTURES)
def test_nothing_of_a_picture_lies_outside(name: str) -> None:
    root = etree.fromstring(PICTURES[name].encode())
    width, height = (float(root.get(side)) for side in ("width", "height"))
    for element in root.iter("{*}rect", "{*}text"):
        x, y = float(element.get("x")), float(element.get("y"))
        assert -0.5 <= x <= width + 0.5 and -0.5 <= y <= height + 0.5, etree.tostring(element)
        if element.get("text-anchor") == "start":
            # Sans-serif letters are about half as wide as high.
            assert x + 0.5 * float(element.get("font-size")) * len(element.text) <= width + 12, element.text


# --- the numbers of a page are those of the plan -----------------------------------------------------------------


def rounded(value: float, decimals: int) -> str:
    """A number as a sheet writes it: so many decimals, none of them a closing zero."""
    text = f"{value:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def spread(bounds: dict[str, float], decimals: int) -> str:
    low, best, high = (rounded(bounds[key], decimals) for key in ("low", "best", "high"))
    return best if low == high else f"{best} ({low} to {high})"


def rows_of(tree: etree._Element, caption: str) -> list[list[str]]:
    """The rows of the table with this caption."""
    spaces = {"h": "http://www.w3.org/1999/xhtml"}
    [table] = tree.xpath("//h:table[starts-with(h:caption, $caption)]", namespaces=spaces, caption=caption)
    rows = table.xpath("./h:tbody/h:tr", namespaces=spaces)
    return [["".join(cell.itertext()) for cell in row] for row in rows]


def words_of(element: etree._Element) -> str:
    return " ".join("".join(element.itertext()).split())


EXAMPLES = ["soft-gradient", "finish-together", "gloss-refresh", "grey-blend", "staged-lightening"]


@pytest.fixture(scope="module", params=EXAMPLES)
def both(request: pytest.FixtureRequest) -> tuple[dict[str, Any], Any]:
    """A plan as data, and its bench page as a tree."""
    plan = foilwork.plan_file(ROOT / "examples" / f"{request.param}.toml")
    tree = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("lxml"), strict=True).parse(plan.html())
    return json.loads(plan.json()), tree


def bowls_of(tree: Any) -> list[Any]:
    bowls: list[Any] = tree.xpath("//*[local-name()='section'][@class='bowl']")
    return bowls


def test_clock_times_of_the_page_are_start_plus_minutes(both: tuple[dict[str, Any], Any]) -> None:
    plan, tree = both
    at_a_time = "T" in plan["start"]
    start = datetime.datetime.fromisoformat(plan["start"])
    for bowl, step in zip(bowls_of(tree), plan["order"], strict=True):
        # What follows the rinses is counted anew from the last of them.
        rinsed = max(each["rinse_by_min"] for each in plan["order"] if each["stage"] == "section")
        later = 0 if step["stage"] == "section" else rinsed
        minutes = (
            [step[f"{what}_min"] for what in ("begin", "applied", "rinse_by", "off_by")]
            + step["mix_at_min"]
            + step["look_at_min"]
        )
        # To the minute below, and no later: a rinse that is due is not told late.
        wanted = {minute + (later if at_a_time else 0) for minute in minutes}
        told = [words_of(clock) for clock in bowl.xpath(".//*[@class='clock']")]
        if at_a_time:
            clocks = {(start + datetime.timedelta(minutes=minute)).strftime("%H:%M") for minute in wanted}
            assert set(told) == clocks, step["name"]
        else:
            assert {float(minute) for minute in told} == {math.floor(minute) for minute in wanted}, step["name"]


def test_strengths_of_the_page_are_those_of_the_plan(both: tuple[dict[str, Any], Any]) -> None:
    plan, tree = both
    for bowl, mix in zip(bowls_of(tree), plan["mixes"], strict=True):
        told = words_of(bowl)
        strength = re.search(r"([\d.]+)(?: \(([\d.]+) to ([\d.]+)\))? % w/w on the hair", told)
        assert strength, told
        bounds = mix["on_hair_ww_percent"]
        for text, key in zip(strength.groups(), ("best", "low", "high"), strict=True):
            # As many decimals as it is told with: half of the last is what rounding takes.
            if text is not None:
                half = 0.5 * 10 ** -len(text.partition(".")[2])
                assert abs(float(text) - bounds[key]) <= half + 1e-9, (mix["name"], key)
        assert strength.group(2) or bounds["high"] - bounds["low"] < 0.2
        assert f"{spread(mix['needed_g'], 0)} g needed" in told


def test_levels_of_the_page_are_those_of_the_plan(both: tuple[dict[str, Any], Any]) -> None:
    plan, tree = both
    if not plan["lift"]:
        pytest.skip("nothing is lightened")
    rows = rows_of(tree, "Levels at the planned rinse")
    for row, lift in zip(rows, plan["lift"], strict=True):
        first, last = (spread(lift[f"{which}_strand_level"], 1) for which in ("first", "last"))
        assert row[:4] == [lift["section"], rounded(lift["target_level"], 1), first, last]


def test_money_of_the_page_is_that_of_the_plan(both: tuple[dict[str, Any], Any]) -> None:
    plan, tree = both
    money = plan["money"]
    if not money:
        pytest.skip("no prices")
    said = words_of(tree.getroot())
    lines = [Decimal(line["amount"]["amount"]) for line in money["cost"]["lines"]]
    currency = money["cost"]["lines"][0]["amount"]["currency"]
    german = plan["habits"]["country"] == "DE"

    def told(amount: Decimal) -> str:
        # As German shops write it (CLDR, de-DE).
        return f"{amount:.2f} \N{EURO SIGN}".replace(".", ",") if german else f"{amount:.2f} {currency}"

    # The sum is made anew, in decimals.
    assert f"Cost {told(sum(lines, Decimal(0)))} (" in said
    by_kind: dict[str, Decimal] = {}
    for line, amount in zip(money["cost"]["lines"], lines, strict=True):
        by_kind[line["kind"]] = by_kind.get(line["kind"], Decimal(0)) + amount
    for kind, amount in by_kind.items():
        assert f"{kind.replace('-', ' ')} {told(amount)}" in said, kind
    if money["taxed"]:
        net, tax, gross = (Decimal(money["taxed"][key]["amount"]) for key in ("net", "tax", "gross"))
        assert net + tax == gross
        fee = Decimal(money["priced_by"]["card_fee"]["amount"])
        # The guest pays what the price list says, where it has a price.
        listed = plan["booking"]["price"]
        without_fee = said.replace(f"card fee {told(fee)}, a cost too; ", "")
        assert f"{'by its costs: ' if listed else '; '}net price {told(net)}" in without_fee
        taxed = f"with tax {told(gross)} by its costs" if listed else f"the guest pays {told(gross)}"
        assert f"tax {told(tax)}, {taxed}" in said
        assert not listed or f"The guest pays {told(Decimal(listed['amount']))}, by the price list" in said
        # Margin and mark-up follow from what the page names: net price, cost and card fee.
        spent = sum(lines, fee)
        margin, markup = ((net - spent) / of * 100 for of in (net, spent))
        shown = re.search(r"margin ([\d.]+) % of the price, which is mark-up ([\d.]+) % of", said)
        assert shown and abs(Decimal(shown[1]) - margin) <= Decimal("0.005") >= abs(Decimal(shown[2]) - markup)
        assert not fee or f"card fee {told(fee)}" in said


# --- contrast: WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (what is not text, 3) -------------------------


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour, as WCAG 2.2 defines it."""
    digits = colour.lstrip("#")
    digits = "".join(digit * 2 for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_contrast_is_that_of_the_standard() -> None:
    # Black on white is 21:1, and #767676 the lightest grey that text on white may have.
    assert contrast("#000", "#fff") == pytest.approx(21)
    assert contrast("#767676", "#fff") == pytest.approx(4.54, abs=0.01)


def themes() -> dict[str, dict[str, str]]:
    """The colours of the page in light, in dark and on paper; each theme changes those that it names."""
    blocks = re.findall(r":root \{(.*?)\}", STYLE, re.DOTALL)
    assert len(blocks) == 3
    light, dark, paper = (dict(re.findall(r"--([\w-]+): (#\w+)", block)) for block in blocks)
    return {"light": light, "dark": light | dark, "print": light | paper}


TEXT = [("ink", "paper"), ("soft", "paper"), ("ink", "tint"), ("stop-ink", "stop-paper"), ("warn-ink", "warn-paper")]
TEXT += [("mark", "paper")]


@pytest.mark.parametrize("theme", ["light", "dark", "print"])
def test_text_can_be_read(theme: str) -> None:
    colours = themes()[theme]
    for ink, paper in TEXT:
        assert contrast(colours[ink], colours[paper]) >= 4.5, (ink, paper)
    assert contrast(colours["line"], colours["paper"]) >= 3


@pytest.mark.parametrize("name", PICTURES)
def test_words_of_a_picture_can_be_read(name: str) -> None:
    # Words are dark; they stand on white, or on white seen through over a swatch.
    assert set(re.findall(r'<text [^>]*fill="([^"]*)"', PICTURES[name])) == {"#222"}
    assert contrast("#222", "#fff") >= 7


# --- names as they come ---------------------------------------------------------------------------------------------

NAMES = [
    "ماسة ونورا",
    "נועה בן־דוד",
    "Ω" * 60,
    "<b>bold</b> & \"quoted\" 'name'",
    "=cmd|' /C calc'!A0",
    ("wide " * 12).strip(),
]


def renamed(name: str) -> foilwork.Plan:
    text = (ROOT / "examples" / "soft-gradient.toml").read_text(encoding="utf-8")
    said = '"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"'
    return foilwork.plan(text.replace('"nape"', said).replace('"J-014"', said))


@pytest.mark.parametrize("name", NAMES)
def test_any_name_is_shown_as_it_is(name: str) -> None:
    plan = renamed(name)
    for page in [plan.html(), plan.guest_html()]:
        tree = html5lib.HTMLParser(strict=True).parse(page)
        words = " ".join("".join(tree.itertext()).split())
        assert " ".join(name.split()) in words


def test_a_notebook_shows_the_page_in_a_frame() -> None:
    shown = SOFT._repr_html_()
    tree = html5lib.parseFragment(shown, namespaceHTMLElements=False)
    frame = tree.find("iframe")
    assert frame.get("sandbox") == "" and frame.get("srcdoc") == SOFT.html()
