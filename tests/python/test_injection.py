"""Names, notes and titles are text and nothing else, whatever they look like, in every output."""

import copy
import csv
import io
import unicodedata
from collections import Counter
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from typing import Any

import pytest
from payloads import PAYLOADS

import foilwork
from foilwork import business, lift, limits, mix
from foilwork.colour import Level, Shade
from growth import EXAMPLE, TERMS

HARMLESS = "mist"
# The code of a shade has at most so many characters.
SHADE_CODE = 20
LIMIT_COLUMNS = "id,rule,substance,applies_to,user,figure,unit,measured\n"
LIMIT = "h1,maximum,hydrogen peroxide,hair,all,12,% w/w,as applied\n"


class Structure(HTMLParser):
    """The tags of a page and the names of their attributes, as a browser's parser finds them."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[tuple[str, ...]] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, *(name for name, _ in attrs)))

    def handle_endtag(self, tag: str) -> None:
        self.found.append((f"/{tag}",))

    def handle_comment(self, data: str) -> None:
        self.found.append(("comment", data))

    def handle_decl(self, decl: str) -> None:
        self.found.append(("declaration", decl))

    def handle_pi(self, data: str) -> None:
        self.found.append(("instruction", data))


# The marks that Unicode Standard Annex 9 counts as formatting characters of the direction.
TURNS = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
MARKS = {"ARABIC LETTER MARK", "LEFT-TO-RIGHT MARK", "RIGHT-TO-LEFT MARK"}


def acts(character: str) -> bool:
    """Whether a terminal obeys a character, or the line around it does."""
    return (
        (unicodedata.category(character) == "Cc" and character not in "\n\t")
        or unicodedata.category(character) in {"Zl", "Zp"}
        or unicodedata.bidirectional(character) in TURNS
        or unicodedata.name(character, "") in MARKS
    )


def heads(text: str) -> Counter[str]:
    """How often each line begins with what our own lines begin with."""
    starts = ("[ok]", "[WARN]", "[STOP]", "[OPEN]", "STOP", "WARN", "OPEN", "error", "warning")
    return Counter(line.strip()[:6] for line in text.splitlines() if line.strip().startswith(starts))


def cell(text: str) -> str:
    """A text as one cell of a CSV line."""
    line = io.StringIO()
    csv.writer(line, quoting=csv.QUOTE_ALL).writerow([text])
    return line.getvalue().strip()


def assert_inert(text: str) -> None:
    assert [character for character in text if acts(character)] == []


def with_words(payload: str) -> dict[str, Any]:
    """The example with a text where words are free."""
    file = copy.deepcopy(EXAMPLE)
    file["service"].update(title=payload, guest=payload, colourist=payload, notes=payload)
    for section in file["section"]:
        section.update(area=payload, target_tone=payload)
    file["salon"]["skin_test_source"] = payload
    return file


def with_names(payload: str) -> dict[str, Any]:
    """The example with a text for the names of sections, toners and products."""
    file = copy.deepcopy(EXAMPLE)
    old = {"nape", "lengths", "Foam Line powder", "developer 6", "bond additive"}
    if len(payload) < SHADE_CODE:
        old.add("J9-mist")

    def renamed(value: Any, key: str | None = None) -> Any:
        if isinstance(value, dict):
            return {name: inner if name == "regions" else renamed(inner, name) for name, inner in value.items()}
        if isinstance(value, list):
            return [renamed(inner, key) for inner in value]
        if isinstance(value, str) and value in old and key not in {"zone", "zones"}:
            return f"{payload}{sorted(old).index(value)}"
        return value

    result: dict[str, Any] = renamed(file)
    return result


def outputs(plan: foilwork.Plan) -> Iterator[tuple[str, str]]:
    yield "text", plan.text()
    yield "html", plan._repr_html_()
    for card in plan.cards():
        yield "card", repr(card)


@pytest.fixture(scope="module")
def usual() -> dict[str, list[tuple[str, str]]]:
    return {fill.__name__: list(outputs(foilwork.plan(fill(HARMLESS)))) for fill in (with_words, with_names)}


def test_the_corpus_is_large_and_would_act() -> None:
    assert len(PAYLOADS) >= 200
    assert sum(any(map(acts, payload)) for payload in PAYLOADS) > 50
    assert sum(bool(Structure(payload).found) for payload in PAYLOADS) > 60


@pytest.mark.parametrize("fill", [with_words, with_names])
@pytest.mark.parametrize("payload", PAYLOADS)
def test_a_plan_shows_text_as_text(payload: str, fill: Any, usual: dict[str, list[tuple[str, str]]]) -> None:
    try:
        plan = foilwork.plan(fill(payload))
    except foilwork.FoilworkError as error:
        assert_inert(str(error))
        return
    for (kind, shown), (_, harmless) in zip(outputs(plan), usual[fill.__name__], strict=True):
        assert_inert(shown)
        if kind == "html":
            assert Structure(shown).found == Structure(harmless).found
        else:
            assert heads(shown) == heads(harmless)


# A spreadsheet calculates what begins with one of these, the full-width forms included.
CALCULATED = tuple("=+-@\t\r\uff1d\uff0b\uff0d\uff20")


@pytest.mark.parametrize("payload", PAYLOADS)
def test_a_table_for_a_spreadsheet_calculates_nothing(payload: str) -> None:
    rows = [{"service": payload, "class": payload, "note": payload, "hands_on_min": 15, "chair_min": 40}]
    try:
        text = business.price_services(rows, TERMS).csv
    except foilwork.FoilworkError as error:
        assert_inert(str(error))
        return
    read = list(csv.reader(io.StringIO(text)))
    # A header, the service and the total.
    assert len(read) == 3
    assert len({len(row) for row in read}) == 1
    assert [
        cell for row in read for cell in row if cell.startswith(CALCULATED) and not cell.lstrip("-").isdigit()
    ] == []
    # Split at semicolons or tabs, as some spreadsheets do, no piece is bare either.
    for bare in csv.reader(io.StringIO(text), delimiter=";"):
        assert [piece for piece in bare[1:] if piece.startswith(CALCULATED)] == []


@pytest.mark.parametrize("payload", PAYLOADS)
def test_what_is_refused_or_drawn_is_inert(payload: str) -> None:
    tried: list[Callable[[], str]] = [
        lambda: str(mix.Recipe(f"30 g {payload} + 60 g developer")),
        lambda: str(mix.Ratio(payload)),
        lambda: repr(Shade(payload, Level(9), ["violet"])),
        lambda: limits.Table.from_csv(payload, f"{LIMIT_COLUMNS}{LIMIT}").text(),
        lambda: limits.Table.from_csv(
            "house", LIMIT_COLUMNS + LIMIT.replace("hydrogen peroxide", cell(payload))
        ).text(),
        lambda: str(lift.read_strand_book(payload)),
        lambda: str(foilwork.plan(payload)),
        lambda: foilwork.plan({payload: 1}).text(),
        lambda: str(Level(payload)),
    ]
    for act in tried:
        try:
            shown = act()
        except (foilwork.FoilworkError, TypeError, ValueError) as error:
            shown = str(error)
        assert_inert(shown)


def test_the_title_of_a_table_stays_on_its_line() -> None:
    shown = limits.Table.from_csv("house\nSTOP: nothing", f"{LIMIT_COLUMNS}{LIMIT}").text()
    assert [line for line in shown.splitlines() if line.startswith("STOP")] == []


def accepted(act: Callable[[str], object]) -> int:
    """How many payloads reach an output: a reader that refuses all of them would show that nothing is inert."""
    count = 0
    for payload in PAYLOADS:
        try:
            act(payload)
        except foilwork.FoilworkError:
            continue
        count += 1
    return count


def services(payload: str) -> object:
    return business.price_services([{"service": payload, "hands_on_min": 15, "chair_min": 40}], TERMS)


@pytest.mark.parametrize(
    "act",
    [
        lambda payload: foilwork.plan(with_words(payload)),
        lambda payload: foilwork.plan(with_names(payload)),
        services,
        lambda payload: limits.Table.from_csv(payload, f"{LIMIT_COLUMNS}{LIMIT}"),
    ],
    ids=["words", "names", "services", "title of a table"],
)
def test_most_payloads_are_taken_as_text(act: Callable[[str], object]) -> None:
    assert accepted(act) > len(PAYLOADS) / 2
