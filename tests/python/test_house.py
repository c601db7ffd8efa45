"""The rules of the house that no compiler keeps."""

import re
import subprocess
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LONGEST = 400


def tracked() -> list[Path]:
    """Every file of the project that is, or is about to be, under version control."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        capture_output=True,
        check=True,
    ).stdout.decode()
    return [ROOT / name for name in listed.split("\0") if name and (ROOT / name).is_file()]


def text(path: Path) -> str:
    return path.read_text(encoding="utf-8", errors="replace")


FILES = tracked()
SOURCES = [path for path in FILES if path.suffix == ".rs" and path.is_relative_to(ROOT / "src")]
SOURCES += [path for path in FILES if path.suffix in {".rs", ".py", ".pyi"} and path.is_relative_to(ROOT / "python")]


def lines_with(pattern: str, paths: list[Path]) -> list[str]:
    """The offending lines, as ``file:line: text``."""
    wanted = re.compile(pattern)
    return [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()[:120]}"
        for path in paths
        for number, line in enumerate(text(path).splitlines(), 1)
        if wanted.search(line)
    ]


def test_there_is_something_to_check() -> None:
    assert ROOT / "src" / "lib.rs" in SOURCES
    assert ROOT / "python" / "src" / "lib.rs" in SOURCES


# The patterns are written so that they do not match themselves.
MACHINE_PATH = r"(?<![\w.<>$*-])/(?:root|work|home|Users)/[\w.]|\b[A-Z]:\\[A-Za-z]"
REGISTRY_HOST = r"(?i)(?:index|static)\.crates\.io|pypi\.org|pythonhosted\.org|npmjs\.org|index[-]url|find[-]links"


@pytest.mark.parametrize(
    ("pattern", "line"),
    [
        (MACHINE_PATH, "see /" + "home/someone/notes"),
        (MACHINE_PATH, "C:" + "\\Users"),
        (REGISTRY_HOST, "pip install --index" + "-url=elsewhere"),
        (REGISTRY_HOST, "https://pypi" + ".org/simple"),
    ],
)
def test_pattern_finds_what_it_is_for(pattern: str, line: str) -> None:
    assert re.search(pattern, line)


def test_no_file_names_a_machine_path() -> None:
    assert lines_with(MACHINE_PATH, FILES) == []


def test_no_file_names_a_registry_host() -> None:
    assert lines_with(REGISTRY_HOST, FILES) == []


def test_the_lock_file_names_one_registry() -> None:
    packages = tomllib.loads(text(ROOT / "Cargo.lock"))["package"]
    sources = {package["source"] for package in packages if "source" in package}
    assert len(sources) == 1
    assert sources.pop().endswith("rust-lang/crates.io-index")


def test_the_core_has_no_line_for_python() -> None:
    core = [path for path in FILES if path.is_relative_to(ROOT / "src")]
    assert lines_with("pyo3", core) == []


# Percent by mass is `..._ww_percent` in Rust, JSON, tables and Python alike, by volume `..._wv_percent`.
OTHER_ORDER = r"(?i)(?<![a-z])percent_w[wv]|\b(?:level|strength)s?_w[wv]\b|w[wv]_percent_(?:low|best|high)"


def test_percents_have_one_word_order() -> None:
    assert re.search(OTHER_ORDER, "fn from_" + "percent_ww(") and re.search(OTHER_ORDER, "level_" + "ww")
    named = [path for path in FILES if path.suffix in {".rs", ".py", ".pyi", ".csv", ".toml", ".json", ".md"}]
    assert lines_with(OTHER_ORDER, [path for path in named if path.name != "test_house.py"]) == []


# The words that DEVELOPERS.md asks for under Habits, where a word alone is enough to tell.
OTHER_WORDS = r"(?i)\b(?:clients?|customers?|gravest|whoever|so many times)\b"


def test_one_word_for_one_thing() -> None:
    said = [path for path in FILES if path.suffix in {".rs", ".py", ".pyi", ".md"} and "tests" not in path.parts]
    assert lines_with(OTHER_WORDS, [path for path in said if path.name != "DEVELOPERS.md"]) == []


def test_python_raises_one_kind_of_error() -> None:
    # An argument of a wrong type is a TypeError, what does not fit a MemoryError, everything else a FoilworkError.
    skin = [path for path in FILES if path.is_relative_to(ROOT / "python" / "src")]
    assert lines_with(r"\bPy(?!TypeError|MemoryError)\w+Error::new_err", skin) == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_source_file_is_short(path: Path) -> None:
    count = len(text(path).splitlines())
    assert count <= LONGEST, f"{count} lines, more than {LONGEST}: perhaps two ideas in one file"


def test_changelog_has_a_place_for_the_next_change() -> None:
    headings = [line for line in text(ROOT / "CHANGELOG.md").splitlines() if line.startswith("## ")]
    assert headings[0] == "## [Unreleased]"


@pytest.mark.parametrize("path", sorted((ROOT / "benches").glob("*.rs")), ids=lambda path: path.name)
def test_bench_measures_something(path: Path) -> None:
    # An empty group runs, and succeeds.
    assert re.search(r"\.(?:iter|iter_batched\w*|iter_with_\w+)\(", text(path)), "no bench in this file"


DEVELOPERS = text(ROOT / "DEVELOPERS.md")


@pytest.mark.parametrize("room", sorted(path.name for path in (ROOT / "src").iterdir() if (path / "mod.rs").is_file()))
def test_room_is_on_the_map(room: str) -> None:
    assert f"| `src/{room}/` |" in DEVELOPERS


@pytest.mark.parametrize("name", re.findall(r"`((?:\.ci|benches|examples|python|src|tests)/[\w./-]*)`", DEVELOPERS))
def test_path_named_to_developers_exists(name: str) -> None:
    assert (ROOT / name).exists()


def test_every_test_file_is_compiled() -> None:
    """A file of tests that no module lists passes by never running."""
    found = {path for path in FILES if path.suffix == ".rs" and path.is_relative_to(ROOT / "tests")}
    reached: set[Path] = set()
    waiting = [ROOT / "tests" / "integration.rs"]
    while waiting:
        file = waiting.pop()
        reached.add(file)
        folder = file.parent if file.stem in {"mod", "integration"} else file.with_suffix("")
        for name in re.findall(r"^\s*(?:pub(?:\(crate\))? )?mod (\w+);", text(file), re.MULTILINE):
            waiting += [path for path in (folder / f"{name}.rs", folder / name / "mod.rs") if path in found]
    assert sorted(str(path.relative_to(ROOT)) for path in found - reached) == []


def made_by_name() -> list[str]:
    """The targets of make that a text names."""
    texts = [*ROOT.glob("*.md"), *(ROOT / "docs").rglob("*.md")]
    found = {name for path in texts for name in re.findall(r"`make ([a-z][a-z-]*)", path.read_text(encoding="utf-8"))}
    return sorted(found)


@pytest.mark.parametrize("target", made_by_name())
def test_what_is_named_for_make_does_something(target: str) -> None:
    told = subprocess.run(["make", "-n", target], cwd=ROOT, capture_output=True, text=True, check=False)
    assert told.returncode == 0, told.stderr
    assert "Nothing to be done" not in told.stdout
