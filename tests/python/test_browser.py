"""Pages in a real browser: quiet, alone, within the screen, reached by the keyboard, printed on few sheets.

Without Chromium these tests are skipped and say so. With ``FOILWORK_BROWSER=required`` that is an error instead, which
is how continuous integration runs them.
"""

import io
import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, sync_playwright
from pypdf import PdfReader
from test_pages import NAMES, PAGES, renamed

ROOT = Path(__file__).resolve().parents[2]
AXE = ROOT / "target" / "checks" / "npm" / "node_modules" / "axe-core" / "axe.min.js"
SEEN = PAGES | {"right to left": renamed(NAMES[0]).html(), "long names": renamed(NAMES[5]).html()}
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# Sheets of paper for each kind of page, at most.
SHEETS = {"bench": 2, "guest": 1, "agreement": 1, "worksheet": 8, "key": 4, "checklist": 5, "right": 2, "long": 3}
# What the colours of the dark change; the rest of a page is the same.
COLOURS = ["color-contrast", "link-in-text-block"]


# What lies left or right of the screen, which no scroll bar tells of on the left, and words that leave their picture;
# what scrolls in a frame of its own is let be.
OUTSIDE = """width => {
    const outside = (box, left, right) => box.width > 0 && (box.left < left - 1 || box.right > right + 1);
    const told = element => element.tagName + ' ' + element.textContent.slice(0, 40);
    const all = [...document.querySelectorAll('main *')].filter(e => e.checkVisibility());
    const page = all.filter(e => !e.closest('.scroll, svg') && outside(e.getBoundingClientRect(), 0, width));
    const words = [...document.querySelectorAll('svg text')].filter(e => {
        const picture = e.ownerSVGElement.getBoundingClientRect();
        return e.checkVisibility() && outside(e.getBoundingClientRect(), picture.left, picture.right);
    });
    return [...page, ...words].map(told);
}"""


def missing(what: str) -> Any:
    """A test that cannot be made here: skipped, unless everything has to be there."""
    if os.environ.get("FOILWORK_BROWSER") == "required":
        pytest.fail(what)
    pytest.skip(what)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if not found:
        missing("NO BROWSER: the pages were not looked at (apt-get install chromium)")
    # As root Chromium refuses its sandbox; what it is shown here is our own.
    alone = ["--no-sandbox"] if os.geteuid() == 0 else []
    # Containers seldom have room in shared memory.
    alone.append("--disable-dev-shm-usage")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=found, args=alone)
        yield started
        started.close()


Shown = tuple[Page, list[str], list[str]]


def opened(browser: Browser, path: Path, **options: Any) -> Shown:
    """A page, and what the browser has to say about it: complaints, and what it asked for."""
    page = browser.new_page(**options)
    complaints: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(path.as_uri())
    return page, complaints, asked


@pytest.fixture
def shown(browser: Browser, tmp_path: Path) -> Iterator[Any]:
    """Shows a text as a page of its own, for a test that changes it."""
    pages = []

    def show(text: str, **options: Any) -> Shown:
        path = tmp_path / "page.html"
        path.write_text(text, encoding="utf-8")
        pages.append(opened(browser, path, **options))
        return pages[-1]

    yield show
    for page, _, _ in pages:
        page.close()


@pytest.fixture(scope="module")
def seen(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """Every page opened once, for the tests that only look at it."""
    folder, pages = tmp_path_factory.mktemp("seen"), dict[str, Shown]()

    def see(name: str) -> Shown:
        if name not in pages:
            path = folder / f"{len(pages)}.html"
            path.write_text(SEEN[name], encoding="utf-8")
            pages[name] = opened(browser, path)
        return pages[name]

    yield see
    for page, complaints, asked in pages.values():
        # Nor did it say or ask for anything while it was looked at.
        assert complaints == [] and len(asked) == 1
        page.close()


@pytest.mark.parametrize("name", SEEN)
def test_page_is_quiet_and_alone(name: str, seen: Any) -> None:
    page, complaints, asked = seen(name)
    assert complaints == []
    assert len(asked) == 1 and asked[0].startswith("file:")
    # The style is the page's own, so its hash is right.
    assert page.evaluate("getComputedStyle(document.querySelector('main')).maxWidth") == "960px"


@pytest.mark.parametrize("name", SEEN)
def test_nothing_sticks_out(name: str, seen: Any) -> None:
    page, _, _ = seen(name)
    for width in [320, 390, 768, 1280]:
        page.set_viewport_size({"width": width, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.evaluate(OUTSIDE, width) == []


@pytest.mark.parametrize("name", ["bench", "guest", "agreement", "worksheet", "key", "checklist", "right to left"])
def test_page_breaks_no_rule_of_accessibility(name: str, shown: Any) -> None:
    if not AXE.is_file():
        missing("NO AXE-CORE: accessibility was not checked by rule (npm install axe-core, as .ci/page-rules does)")
    page, _, _ = shown(SEEN[name], color_scheme="light")
    page.evaluate("document.querySelectorAll('details').forEach(part => { part.open = true; })")
    page.evaluate(AXE.read_text(encoding="utf-8") + "; undefined")
    for scheme, only in [("light", {"type": "tag", "values": RULES}), ("dark", {"type": "rule", "values": COLOURS})]:
        page.emulate_media(color_scheme=scheme)
        found = page.evaluate("only => axe.run(document, { runOnly: only })", only)
        assert found["passes"], "axe looked at nothing"
        told = [(rule["id"], [node["html"][:120] for node in rule["nodes"]]) for rule in found["violations"]]
        assert told == [], scheme


def test_axe_finds_what_is_wrong(shown: Any) -> None:
    if not AXE.is_file():
        missing("NO AXE-CORE")
    page, _, _ = shown(
        "<!doctype html><title>t</title><img src='data:,'><p style='color:#bbb;background:#fff'>pale</p>"
    )
    page.evaluate(AXE.read_text(encoding="utf-8") + "; undefined")
    found = page.evaluate("rules => axe.run(document, { runOnly: { type: 'tag', values: rules } })", RULES)
    assert {"image-alt", "color-contrast", "html-has-lang"} <= {rule["id"] for rule in found["violations"]}


@pytest.mark.parametrize("name", SEEN)
def test_page_prints_on_few_sheets(name: str, seen: Any) -> None:
    page, _, _ = seen(name)
    most = next(sheets for kind, sheets in SHEETS.items() if name.startswith(kind))
    for paper in ["A4", "Letter"]:
        assert 1 <= len(PdfReader(io.BytesIO(page.pdf(format=paper))).pages) <= most, paper


def test_the_costs_are_on_the_paper(seen: Any) -> None:
    page, _, _ = seen("bench")
    words = "".join(sheet.extract_text() for sheet in PdfReader(io.BytesIO(page.pdf(format="A4"))).pages)
    assert "labour" in words and "the guest pays" in words


def test_the_key_prints_on_a_sheet_of_its_own(seen: Any) -> None:
    page, _, _ = seen("worksheet")
    sheets = [sheet.extract_text() for sheet in PdfReader(io.BytesIO(page.pdf(format="A4"))).pages]
    with_key = ["Key to worksheet" in sheet for sheet in sheets]
    assert with_key.count(True) == 1
    first = sheets[with_key.index(True)]
    assert first.strip().startswith("Key to worksheet")


@pytest.mark.parametrize("name", SEEN)
def test_the_keyboard_reaches_everything_in_order(name: str, seen: Any) -> None:
    page, _, _ = seen(name)
    reachable = "a[href], button:not([hidden]), input, summary, [tabindex='0']"
    number = "all => all.filter(e => e.checkVisibility()).map((e, i) => { e.dataset.n = i; }).length"
    count = page.eval_on_selector_all(reachable, number)
    met = []
    for _ in range(count):
        page.keyboard.press("Tab")
        met.append(page.evaluate("Number(document.activeElement.dataset.n)"))
        seen = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        assert seen != "none", page.evaluate("document.activeElement.outerHTML")
    assert met == list(range(count))
    assert name != "bench" or count > 30


def test_the_bench_counts_down_from_the_first_brush(shown: Any, browser: Browser, tmp_path: Path) -> None:
    path = tmp_path / "bench.html"
    path.write_text(SEEN["bench"], encoding="utf-8")
    page = browser.new_page()
    page.clock.install()
    page.goto(path.as_uri())
    looks = page.locator("li[data-minute='15'] .left").first
    assert looks.inner_text() == ""
    page.click("#begin")
    page.clock.run_for(5 * 60_000)
    assert looks.inner_text() == "in 10 min"
    page.clock.run_for(10 * 60_000)
    assert looks.inner_text() == "now"
    # What is due in the same minute is said together, and no longer once it is past.
    due = page.locator("li[data-minute='15']").evaluate_all("all => all.map(e => e.dataset.what)")
    said = page.locator("#spoken").inner_text()
    assert said.endswith(": now") and all(what in said for what in due)
    page.clock.run_for(3 * 60_000)
    assert looks.inner_text() == "3 min ago"
    past = page.locator("#spoken").inner_text()
    assert not any(what in past for what in due)
    page.click("#begin")
    page.clock.run_for(15 * 60_000)
    assert page.locator("#spoken").inner_text() == said
    page.locator("li[data-minute='15'] input").first.check()
    page.clock.run_for(10_000)
    assert looks.inner_text() == ""
    page.close()


def test_ticks_outlive_a_reload_and_nothing_else_is_kept(shown: Any, tmp_path: Path) -> None:
    page, complaints, _ = shown(SEEN["bench"])
    page.locator("li[data-minute='15'] input").first.check()
    page.click("#begin")
    page.reload()
    ticked = page.locator(".times input").evaluate_all("all => all.map(e => e.checked)")
    assert ticked.count(True) == 1 and page.locator("li[data-minute='15'] input").first.is_checked()
    assert "counting" in page.locator("#begin").inner_text()
    # Numbers alone, with this entry of this tab: no storage, no cookie, no text.
    kept = page.evaluate("history.state")
    assert set(kept) == {"plan", "ticks", "begin", "at"} and set(kept["ticks"]) == {0, 1}
    assert all(isinstance(kept[name], (int, float)) for name in ("plan", "begin", "at"))
    assert page.evaluate("[localStorage.length, sessionStorage.length, document.cookie]") == [0, 0, ""]
    # Another plan at the same place begins without ticks, and so does the next day.
    path = tmp_path / "page.html"
    path.write_text(SEEN["bench"].replace('data-minute="15"', 'data-minute="16"'), encoding="utf-8")
    page.reload()
    assert not any(page.locator(".times input").evaluate_all("all => all.map(e => e.checked)"))
    path.write_text(SEEN["bench"], encoding="utf-8")
    page.evaluate("kept => history.replaceState({...kept, at: kept.at - 13 * 3600000}, '')", kept)
    page.reload()
    assert not any(page.locator(".times input").evaluate_all("all => all.map(e => e.checked)"))
    assert complaints == []


def test_the_basis_shows_beside_its_number(shown: Any) -> None:
    page, _, _ = shown(SEEN["bench"])
    basis = page.locator(".basis").first
    assert not basis.is_visible()
    link = page.locator("sup a").first
    link.focus()
    note = page.locator(link.get_attribute("href")).inner_text()
    assert basis.is_visible() and basis.inner_text().strip() == note
    link.blur()
    assert not basis.is_visible()
    link.hover()
    assert basis.is_visible()
    page.emulate_media(media="print")
    assert not basis.is_visible()


def test_without_script_the_page_is_as_paper(shown: Any) -> None:
    page, complaints, _ = shown(SEEN["bench"], java_script_enabled=False)
    assert complaints == []
    assert not page.locator("#begin").is_visible()
    assert page.locator(".clock").first.is_visible() and page.locator("input").first.is_enabled()


def test_a_name_keeps_its_direction(shown: Any) -> None:
    page, _, _ = shown(SEEN["right to left"])
    heading = page.locator("p[dir=auto]", has_text=NAMES[0]).first
    assert heading.evaluate("e => getComputedStyle(e).direction") == "ltr"  # "guest" comes first
    cells = page.locator("h3, th, td", has_text=NAMES[0])
    # A cell that begins with the name reads from the right.
    begins = [cell for cell in cells.all() if cell.inner_text().startswith(NAMES[0])]
    assert begins
    assert {cell.evaluate("e => getComputedStyle(e).direction") for cell in begins} == {"rtl"}


def test_no_script_but_the_own_runs(shown: Any) -> None:
    text = SEEN["bench"].replace("</main>", "<script>document.title='taken'</script><img src='x'></main>")
    page, complaints, _ = shown(text)
    assert page.title() != "taken"
    assert any("Content Security Policy" in complaint for complaint in complaints)
