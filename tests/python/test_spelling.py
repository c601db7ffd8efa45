"""The prose of book, notebooks and README is spelt as a dictionary spells it; words of the field stand in a list."""

import json
import re
from functools import cache
from pathlib import Path

import pytest
from spellchecker import SpellChecker

ROOT = Path(__file__).resolve().parents[2]
OWN = (Path(__file__).parent / "words_of_the_field.txt").read_text(encoding="utf-8").split()
PAGES = [
    ROOT / "README.md",
    ROOT / "docs" / "why.md",
    ROOT / "docs" / "job.md",
    *sorted((ROOT / "docs" / "book").rglob("*.md")),
]
PAGES += sorted((ROOT / "docs" / "notebooks").glob("*.ipynb"))
# What is no prose: blocks of code, code in a line, where a link leads, markup, what makes the Python reference.
NO_PROSE = [r"^ *```.*?^ *```", r"`[^`\n]*`", r"\]\([^)]*\)", r"<[^>\n]+>", r"^ *:::.*(?:\n {4,}.*)*", r"https?://\S+"]


@cache
def dictionary() -> SpellChecker:
    known = SpellChecker(language="en")
    known.word_frequency.load_words(OWN)
    return known


def prose(text: str) -> str:
    for pattern in NO_PROSE:
        text = re.sub(pattern, " ", text, flags=re.DOTALL | re.MULTILINE if "```" in pattern else re.MULTILINE)
    return text


def words(text: str) -> set[str]:
    """The words that begin like words: of two letters and more, no abbreviations in capitals."""
    found = re.findall(r"\b[A-Za-z][a-z]+(?:'[a-z]+)?\b", prose(text))
    return {word.lower().removesuffix("'s") for word in found}


def text_of(page: Path) -> str:
    text = page.read_text(encoding="utf-8")
    if page.suffix == ".ipynb":
        cells = json.loads(text)["cells"]
        return "\n\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")
    return text


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_every_word_is_spelt(page: Path) -> None:
    unknown = dictionary().unknown(words(text_of(page)))
    assert sorted(unknown) == [], "mend it; a word of the field goes into tests/python/words_of_the_field.txt"


def test_a_wrong_word_is_found() -> None:
    wrong = {"lightner", "dilutoin", "seperate", "devloper", "peroxyde", "neutralse"}
    assert dictionary().unknown(words(f"The {' and the '.join(sorted(wrong))}, `codde`, [a link](adress.md).")) == wrong


def test_the_list_holds_no_word_without_use() -> None:
    used = set().union(*(words(text_of(page)) for page in PAGES))
    plain = SpellChecker(language="en")
    assert sorted(OWN) == OWN
    assert [word for word in OWN if word not in used or word in plain] == []
