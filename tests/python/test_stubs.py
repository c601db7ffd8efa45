"""The stub says what the compiled module is; a stub that does not is found out."""

import ast
import re
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


# The stub, what stands there, what is put in its place, and what has to be said of it.
WRONG = [
    ("__init__.pyi", "args: Sequence[str])", "args: Sequence[str], deep: bool = ...)", '"deep"'),
    ("__init__.pyi", "def main(args:", "def absent() -> int: ...\ndef main(args:", "foilwork._native.absent"),
    ("__init__.pyi", '    "FoilworkError",\n', "", "foilwork._native.__all__"),
    ("peroxide/_strength.pyi", "def convert(\n    value:", "def convert(\n    number:", '"number"'),
]


def test_wrong_stubs_are_found(tmp_path: Path) -> None:
    copy = tmp_path / "foilwork"
    shutil.copytree(PACKAGE, copy, ignore=shutil.ignore_patterns("*.so", "*.pyd", "__pycache__"))
    for stub, right, wrong, _ in WRONG:
        path = copy / "_native" / stub
        text = path.read_text(encoding="utf-8")
        assert right in text
        path.write_text(text.replace(right, wrong, 1), encoding="utf-8")
    # All at once, for a run reads the whole package.
    checked = stubtest(tmp_path)
    assert checked.returncode == 1
    for *_, finding in WRONG:
        assert finding in checked.stdout


def test_the_types_of_a_plan_are_those_of_its_schema(root: Path) -> None:
    tool = root / "python" / "tools" / "plan_types.py"
    checked = subprocess.run([sys.executable, tool, "--check"], capture_output=True, text=True, check=False)
    assert checked.returncode == 0, checked.stderr


# An argument of one of these names takes a word from a list, and its type says which. `product` is not among them: that
# of a strand, a recipe or a list is a name that the user gives.
OF_A_LIST = {
    "audience", "booster", "denominator", "from_unit", "hazards", "hue", "instrument", "jurisdiction", "medium",
    "molar_volume", "naming", "objective", "purpose", "reader", "rounding", "scale", "stated_as", "target_tones",
    "to_unit", "tones", "toward", "unit", "uptake",
}  # fmt: skip


def test_an_argument_that_takes_a_word_of_a_list_names_the_list() -> None:
    loose = []
    for stub in sorted((PACKAGE / "_native").rglob("*.pyi")):
        for node in ast.walk(ast.parse(stub.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef):
                arguments = node.args.posonlyargs + node.args.args + node.args.kwonlyargs
                for argument in arguments:
                    said = ast.unparse(argument.annotation) if argument.annotation else ""
                    if argument.arg in OF_A_LIST and re.search(r"\bstr\b", said):
                        loose.append(f"{stub.name}: {node.name}({argument.arg}: {said})")
    assert not loose, "give it a type of foilwork._words"


def test_a_type_checker_finds_each_wrong_word(tmp_path: Path) -> None:
    wrong = [
        'peroxide.convert(6.0, "% w/w", "volume")',
        'colour.complement("ash")',
        'limits.Table("Germany")',
        'mix.convert_amount(2, "oz", "mL")',
    ]
    program = tmp_path / "program.py"
    lines = ["from foilwork import colour, limits, mix, peroxide", 'peroxide.convert(6.0, "% w/w", "volumes")', *wrong]
    program.write_text("\n".join(lines) + "\n", encoding="utf-8")
    checked = subprocess.run(
        [sys.executable, "-m", "mypy", "--no-incremental", program], capture_output=True, text=True, check=False
    )
    found = [found.split(":")[1] for found in checked.stdout.splitlines() if "error:" in found]
    assert found == ["3", "4", "5", "6"], checked.stdout
