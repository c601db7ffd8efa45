"""The stub says what the compiled module is; a stub that does not is found out."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import foilwork

PACKAGE = Path(str(foilwork.__file__)).parent


def stubtest(*search_path: Path) -> subprocess.CompletedProcess[str]:
    """Holds the stubs found first on ``search_path`` against the installed module."""
    return subprocess.run(
        [sys.executable, "-m", "mypy.stubtest", "foilwork"],
        capture_output=True,
        text=True,
        check=False,
        env={"MYPYPATH": ":".join(map(str, search_path)), "PATH": str(Path(sys.executable).parent)},
    )


@pytest.mark.parametrize("name", ["_native/__init__.pyi", "_native/peroxide/_strength.pyi", "py.typed"])
def test_types_are_installed(name: str) -> None:
    # stubtest reports success when there is no stub at all.
    assert (PACKAGE / name).is_file()


def test_stub_agrees_with_the_module() -> None:
    checked = stubtest()
    assert checked.returncode == 0, checked.stdout


@pytest.mark.parametrize(
    ("stub", "right", "wrong", "finding"),
    [
        pytest.param(
            "__init__.pyi",
            "args: Sequence[str])",
            "args: Sequence[str], deep: bool = ...)",
            '"deep"',
            id="one argument more",
        ),
        pytest.param(
            "__init__.pyi",
            "def main(args:",
            "def absent() -> int: ...\ndef main(args:",
            "absent",
            id="absent at run time",
        ),
        pytest.param("__init__.pyi", '    "FoilworkError",\n', "", "__all__", id="a name missing from __all__"),
        pytest.param(
            "peroxide/_strength.pyi",
            "def convert(\n    value:",
            "def convert(\n    number:",
            '"number"',
            id="in a room",
        ),
    ],
)
def test_a_wrong_stub_is_found(tmp_path: Path, stub: str, right: str, wrong: str, finding: str) -> None:
    copy = tmp_path / "foilwork"
    shutil.copytree(PACKAGE, copy, ignore=shutil.ignore_patterns("*.so", "*.pyd", "__pycache__"))
    path = copy / "_native" / stub
    text = path.read_text(encoding="utf-8")
    assert right in text
    path.write_text(text.replace(right, wrong, 1), encoding="utf-8")
    checked = stubtest(tmp_path)
    assert checked.returncode == 1
    assert finding in checked.stdout


def test_the_types_of_a_plan_are_those_of_its_schema(root: Path) -> None:
    tool = root / "python" / "tools" / "plan_types.py"
    checked = subprocess.run([sys.executable, tool, "--check"], capture_output=True, text=True, check=False)
    assert checked.returncode == 0, checked.stderr
