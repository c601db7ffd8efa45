"""Pages and pictures without a browser: valid, whole, readable, and closed to everything from outside."""

import base64
import hashlib
import itertools
import re
from collections.abc import Iterator
from pathlib import Path

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
