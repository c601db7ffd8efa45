"""The README tells the truth: its commands and its Python example run. `cargo test --doc` runs its Rust example."""

import doctest
import re
import shlex
import subprocess
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")

# Shown but not run here: they fetch from outside, or would run these tests within themselves.
NOT_RUN = ("git clone ", "cd ", "pip install ", "cargo add ")


class Block(NamedTuple):
    """A fenced block."""

    language: str
    line: int
    text: str


class Command(NamedTuple):
    """A line after ``$`` and the output printed below it."""

    words: str
    output: str


def blocks() -> list[Block]:
    found = re.finditer(r"^```(.*)\n((?:.*\n)*?)^```$", README, re.MULTILINE)
    return [Block(match[1], README.count("\n", 0, match.start()) + 1, match[2]) for match in found]


def commands() -> list[Command]:
    shown = [block.text for block in blocks() if block.language == "console"]
    pairs = [re.split(r"\n", part, maxsplit=1) for text in shown for part in re.split(r"^\$ ", text, flags=re.M)[1:]]
    return [Command(words, output) for words, output in pairs]


BLOCKS = blocks()
COMMANDS = commands()
RUN = [entry for entry in COMMANDS if entry.words.startswith("foilwork ")]
MADE = [entry for entry in COMMANDS if entry.words.startswith("make ")]
TEXT = [block for block in BLOCKS if block.language == "text"]
PYTHON = [block for block in BLOCKS if block.language == "python"]


@pytest.fixture(scope="module")
def salon(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the README's own files are written; its commands run in their order."""
    return tmp_path_factory.mktemp("salon")


def ids(entry: Block | Command) -> str:
    return entry.words if isinstance(entry, Command) else f"line {entry.line}"


def test_readme_shows_the_two_commands_and_both_languages() -> None:
    assert {"make demo", "make test"} <= {shown.words for shown in MADE}
    assert {"rust", "python"} <= {block.language for block in BLOCKS}


@pytest.mark.parametrize("block", BLOCKS, ids=ids)
def test_block_says_its_language(block: Block) -> None:
    # A block without a language is Rust to rustdoc.
    assert block.language in {"console", "json", "python", "rust", "text", "toml"}


@pytest.mark.parametrize("shown", COMMANDS, ids=ids)
def test_every_command_is_run_or_known(shown: Command) -> None:
    assert shown in RUN or shown in MADE or shown.words.startswith(NOT_RUN), f"nothing checks `{shown.words}`"


@pytest.mark.parametrize("shown", RUN, ids=ids)
def test_command_prints_what_is_shown(shown: Command, command: Path, salon: Path) -> None:
    words = shlex.split(shown.words)[1:]
    folder = salon if "my-salon" in shown.words else ROOT
    done = subprocess.run([command, *words], cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode in {0, 1}, done.stderr
    if shown.output.strip():
        assert done.stdout.rstrip() == shown.output.rstrip()


@pytest.mark.parametrize("shown", MADE, ids=ids)
def test_make_does_what_is_shown(shown: Command) -> None:
    # A dry run, but for the demo: `make test` would otherwise run itself.
    dry = [] if shown.words == "make demo" else ["--dry-run"]
    words = ["make", "--no-print-directory", *dry, *shlex.split(shown.words)[1:]]
    done = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    if shown.output.strip():
        assert not dry, f"nothing checks the output of `{shown.words}`"
        assert done.stdout.rstrip() == shown.output.rstrip()


@pytest.mark.parametrize("block", TEXT, ids=ids)
def test_text_is_a_part_of_the_demo(block: Block) -> None:
    demo = ["make", "--no-print-directory", "demo"]
    done = subprocess.run(demo, cwd=ROOT, capture_output=True, text=True, check=True)
    assert block.text in done.stdout


@pytest.mark.parametrize("block", PYTHON, ids=ids)
def test_python_example_runs(block: Block, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    example = doctest.DocTestParser().get_doctest(block.text, {}, "README.md", "README.md", block.line)
    report: list[str] = []
    results = doctest.DocTestRunner(verbose=False).run(example, out=report.append)
    assert results.attempted > 0, "the Python example shows no `>>>`"
    assert results.failed == 0, "".join(report)
