"""Every public name says what it does, and every example in a docstring runs."""

import ast
import doctest
import importlib
import inspect
import pkgutil
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import foilwork
from foilwork import _native

MODULES = [
    importlib.import_module(found.name)
    for found in pkgutil.iter_modules(foilwork.__path__, "foilwork.")
    if found.name != "foilwork._native"
]
STUBS = Path(str(_native.__file__)).with_name("_native")


def members(owner: type, name: str) -> Iterator[tuple[str, object]]:
    """The methods and properties a class itself defines, without those that have two leading underscores."""
    # In one order, so that all workers collect the same tests.
    for member, value in sorted(vars(owner).items(), key=lambda pair: pair[0]):
        plain = not member.startswith("_")
        if plain and (inspect.isroutine(value) or inspect.isdatadescriptor(value) or isinstance(value, property)):
            yield f"{name}.{member}", value


def public_names() -> Iterator[tuple[str, object]]:
    """Modules, their public names, and the members of public classes."""
    for module in [foilwork, *MODULES]:
        yield module.__name__, module
        for name in getattr(module, "__all__", []):
            value = getattr(module, name)
            if callable(value):
                yield f"{module.__name__}.{name}", value
            if inspect.isclass(value):
                yield from members(value, f"{module.__name__}.{name}")
    for name in _native.__all__:
        yield f"foilwork._native.{name}", getattr(_native, name)


PUBLIC = dict(public_names())
# The command line prints; the README shows what.
FUNCTIONS = [name for name, value in PUBLIC.items() if inspect.isbuiltin(value) and not name.endswith(".main")]


def runtime_examples() -> Iterator[tuple[str, str]]:
    """The docstrings of the installed module that hold an example, each once."""
    seen: set[str] = set()
    for name, value in PUBLIC.items():
        text = inspect.getdoc(value) or ""
        if ">>>" in text and text not in seen:
            seen.add(text)
            yield name, text


def stub_examples() -> Iterator[tuple[str, str]]:
    """The docstrings of the stubs that hold an example."""
    for stub in sorted(STUBS.rglob("*.pyi")):
        for node in ast.walk(ast.parse(stub.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef | ast.ClassDef) and ">>>" in (text := ast.get_docstring(node) or ""):
                yield f"{stub.relative_to(STUBS)}:{node.lineno}:{node.name}", text


EXAMPLES = dict([*runtime_examples(), *stub_examples()])


@pytest.mark.parametrize("name", PUBLIC)
def test_public_name_has_a_docstring(name: str) -> None:
    value = PUBLIC[name]
    own = value.__doc__ if inspect.isclass(value) else inspect.getdoc(value)
    assert own and own.strip(), f"{name} has no docstring"


@pytest.mark.parametrize("name", FUNCTIONS)
def test_compiled_function_has_an_example(name: str) -> None:
    assert ">>>" in (inspect.getdoc(PUBLIC[name]) or ""), f"{name} has no example"


SECTIONS = ["Args", "Returns", "Raises", "Examples", "Source"]


@pytest.mark.parametrize("name", PUBLIC)
def test_docstring_has_the_dialect_of_the_house(name: str) -> None:
    text = inspect.getdoc(PUBLIC[name]) or ""
    heads = re.findall(r"^(\w+):$", text, re.MULTILINE)
    assert set(heads) <= set(SECTIONS), "a section of another name"
    assert len(heads) == len(set(heads)), "a section stands twice"
    if inspect.isbuiltin(PUBLIC[name]):
        assert not re.search(r"^>>>", text, re.MULTILINE), "an example stands outside of `Examples:`"


@pytest.mark.parametrize("name", EXAMPLES)
def test_example_runs(name: str) -> None:
    # Nothing is imported for the example: what the reader copies is the whole of it.
    example = doctest.DocTestParser().get_doctest(EXAMPLES[name], {}, name, name, 0)
    report: list[str] = []
    results = doctest.DocTestRunner(verbose=False).run(example, out=report.append)
    assert results.attempted > 0
    assert results.failed == 0, "".join(report)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_example_is_skipped(name: str) -> None:
    assert "+SKIP" not in EXAMPLES[name]


def sync(*arguments: str | Path, root: Path) -> subprocess.CompletedProcess[str]:
    tool = root / "python" / "tools" / "sync_stubs.py"
    return subprocess.run([sys.executable, tool, *arguments], capture_output=True, text=True, check=False)


def test_stubs_repeat_the_compiled_modules(root: Path) -> None:
    checked = sync("--check", root=root)
    assert checked.returncode == 0, checked.stderr


def test_a_changed_stub_is_found_and_put_right(root: Path, tmp_path: Path) -> None:
    shutil.copytree(root / "python" / "foilwork" / "_native", tmp_path, dirs_exist_ok=True)
    stub = tmp_path / "__init__.pyi"
    good = stub.read_text(encoding="utf-8")
    changed = good.replace("Run the command line", "Walk the command line").replace('    "FoilworkError",\n', "")
    stub.write_text(changed, encoding="utf-8")
    found = sync("--check", tmp_path, root=root)
    assert (found.returncode, "main" in found.stderr, "__all__" in found.stderr) == (1, True, True)
    assert sync(tmp_path, root=root).returncode == 0
    assert stub.read_text(encoding="utf-8") == good
