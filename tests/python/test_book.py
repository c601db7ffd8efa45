"""The book tells the truth: its commands and its Python run, in the order in which a reader meets them."""

import csv
import doctest
import importlib
import io
import re
import shlex
import shutil
import subprocess
from pathlib import Path
from typing import NamedTuple

import pytest

from foilwork import source

ROOT = Path(__file__).resolve().parents[2]
BOOK = ROOT / "docs" / "book"
PAGES = sorted(path.relative_to(BOOK).as_posix() for path in BOOK.rglob("*.md"))


class Block(NamedTuple):
    """A fenced block of a page."""

    page: str
    language: str
    line: int
    text: str


def blocks(page: str) -> list[Block]:
    text = (BOOK / page).read_text(encoding="utf-8")
    found = re.finditer(r"^( *)```(.*)\n((?:.*\n)*?)\1```$", text, re.MULTILINE)
    return [
        Block(page, match[2], text.count("\n", 0, match.start()) + 1, re.sub(f"^{match[1]}", "", match[3], flags=re.M))
        for match in found
    ]


BLOCKS = [block for page in PAGES for block in blocks(page)]
PYTHON = [block for block in BLOCKS if block.language == "python"]
WITH_COMMANDS = [page for page in PAGES if any(block.language == "console" for block in blocks(page))]


def ids(block: Block) -> str:
    return f"{block.page}:{block.line}"


def test_the_book_shows_both() -> None:
    assert len(PYTHON) >= 5 and len(WITH_COMMANDS) >= 4


@pytest.mark.parametrize("block", BLOCKS, ids=ids)
def test_block_says_what_it_is(block: Block) -> None:
    assert block.language in {"console", "python"}, "nothing checks a block of another kind"
    assert block.language != "console" or all(
        line.startswith("$ foilwork ") for line in block.text.splitlines() if line.startswith("$")
    )


@pytest.mark.parametrize("page", WITH_COMMANDS)
def test_commands_print_what_is_shown(page: str, command: Path, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    for block in blocks(page):
        if block.language != "console":
            continue
        for part in re.split(r"^\$ ", block.text, flags=re.M)[1:]:
            words, _, output = part.partition("\n")
            run = [str(command), *shlex.split(words)[1:]]
            done = subprocess.run(run, cwd=tmp_path, capture_output=True, text=True, check=False)
            assert done.returncode == 0, (words, done.stderr)
            if output.strip():
                assert done.stdout.rstrip() == output.rstrip(), words


@pytest.mark.parametrize("block", PYTHON, ids=ids)
def test_python_runs(block: Block, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    example = doctest.DocTestParser().get_doctest(block.text, {}, block.page, block.page, block.line)
    report: list[str] = []
    results = doctest.DocTestRunner(verbose=False).run(example, out=report.append)
    assert results.attempted > 0 and results.failed == 0, "".join(report)


def test_every_guide_says_where_it_ends() -> None:
    """A page that leads to work on a guest names its bounds and cautions."""
    for task in ["lift", "toners", "heads", "days", "consultation", "records", "costing"]:
        text = (BOOK / "guides" / f"{task}.md").read_text(encoding="utf-8")
        assert len(re.findall(r"^- ", text.partition("## Where it ends\n")[2], re.MULTILINE)) >= 4, task
        kinds = {block.language for block in blocks(f"guides/{task}.md")}
        assert kinds == {"console", "python"}, task


def test_every_room_of_python_has_its_page() -> None:
    rooms = {path.stem for path in (ROOT / "python" / "foilwork").glob("*.py") if not path.stem.startswith("_")} | {
        "chain"
    }
    assert {Path(page).stem for page in PAGES if page.startswith("python/")} - {"index"} == rooms


def test_all_that_is_from_memory_is_on_one_page(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(ROOT / "docs"))
    page = importlib.import_module("from_memory").page()
    unseen = [citation.id for citation in source.register() if not citation.is_verified]
    assert len(unseen) > 10
    for name in unseen:
        line = next(line for line in page.splitlines() if line.startswith(f"| {name} |"))
        assert line.split(" | ")[-1].strip(" |"), f"nothing rests on {name}"
    table = (ROOT / "src" / "limits" / "data" / "limits.csv").read_text(encoding="utf-8")
    rows = [row["id"] for row in csv.DictReader(io.StringIO(table)) if row["how"] == "from-memory"]
    assert len(rows) > 5 and all(f"\n| {row} |" in page for row in rows)
    assert "Hamilton's method of apportionment" in page
    assert "`SEEN`: limits seen in two public code tables" in page and "subsidiary hazard, are from memory" in page
