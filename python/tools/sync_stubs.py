"""Copies what the compiled modules say of themselves into their hand-written stubs.

A docstring is said once, above the Rust function, and the names of a module once, in its ``room!``. Each compiled
module has a stub at its place under ``_native/``: there the signatures stay as they were written by hand
(``mypy.stubtest`` holds them against the module), the docstrings and ``__all__`` are copied. Run it with
``make stubs``; ``--check`` changes nothing and ends with status 1 when a stub says something else than its module.
"""

import argparse
import ast
import importlib
import inspect
import re
import sys
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType

STUBS = Path(__file__).resolve().parents[1] / "foilwork" / "_native"
MODULE = "foilwork._native"

Documented = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


@dataclass(frozen=True)
class Entry:
    """One definition of the stub, with what the compiled module says of it."""

    name: str
    node: Documented
    runtime: str | None

    @property
    def stub(self) -> str | None:
        """The docstring in the stub."""
        return ast.get_docstring(self.node)

    @property
    def is_current(self) -> bool:
        """Whether stub and module say the same."""
        return self.stub == self.runtime


def entries(tree: ast.Module, module: object) -> list[Entry]:
    """Every definition of the stub, classes with their members, in the order of the file.

    Names with a leading underscore are left out: they are of the interpreter, or of the stub alone. Of several
    overloads only the first is documented.
    """
    found: list[Entry] = []
    collect(tree.body, module, "", found)
    return found


def collect(body: list[ast.stmt], owner: object, prefix: str, found: list[Entry]) -> None:
    """Adds the definitions of one level, then those of the classes in it."""
    seen: set[str] = set()
    for node in body:
        if not isinstance(node, Documented) or node.name.startswith("_") or node.name in seen:
            continue
        seen.add(node.name)
        name = prefix + node.name
        value = inspect.getattr_static(owner, node.name, None)
        if value is None:
            raise SystemExit(f"the stub has {name}, the compiled module has not (remove it, or export it in its room!)")
        found.append(Entry(name, node, docstring(value)))
        if isinstance(node, ast.ClassDef):
            collect(node.body, value, name + ".", found)


def docstring(value: object) -> str | None:
    """The text of a compiled function, class, method or property, as ``ast.get_docstring`` would give it."""
    # A static method has a text of its own, on static methods in general.
    text = getattr(getattr(value, "__func__", value), "__doc__", None)
    return inspect.cleandoc(text) if text else None


def literal(text: str, indent: str) -> list[str]:
    """The docstring as lines of source."""
    if '"""' in text:
        raise SystemExit('a docstring holds """ and cannot be written into the stub')
    prefix = 'r"""' if "\\" in text else '"""'
    lines = text.split("\n")
    if len(lines) == 1:
        return [f'{indent}{prefix}{text}"""']
    return [indent + prefix + lines[0], *(indent + line if line else "" for line in lines[1:]), indent + '"""']


def rewrite(source: str, found: list[Entry]) -> str:
    """The stub with every docstring that differs replaced, from the last to the first so that line numbers hold."""
    lines = source.split("\n")
    for entry in sorted(found, key=lambda entry: entry.node.lineno, reverse=True):
        if entry.is_current:
            continue
        indent = " " * (entry.node.col_offset + 4)
        text = literal(entry.runtime, indent) if entry.runtime else []
        first = entry.node.body[0]
        if is_constant(first, str) or is_constant(first, type(...)):
            start, end = first.lineno - 1, first.end_lineno or first.lineno
            # `def name() -> None: ...` is one line: what stands before the body stays.
            head = lines[start][: first.col_offset].rstrip()
            left = len(entry.node.body) > 1 or text
            lines[start:end] = [*([head] if head else []), *text, *([] if left else [indent + "..."])]
        else:
            decorators = first.decorator_list if isinstance(first, Documented) else []
            start = min([first.lineno, *(decorator.lineno for decorator in decorators)]) - 1
            lines[start:start] = text
    return "\n".join(lines)


def is_constant(node: ast.stmt, kind: type) -> bool:
    """A statement that is nothing but a literal: a docstring, or ``...``."""
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) and isinstance(node.value.value, kind)


def stubs(folder: Path) -> dict[ModuleType, Path]:
    """Every compiled module and the place of its stub: a package for one that has modules of its own."""
    for room in importlib.import_module(MODULE).ROOMS:
        importlib.import_module(f"{MODULE}.{room}")
    names = sorted(name for name in sys.modules if name == MODULE or name.startswith(MODULE + "."))
    found = {}
    for name in names:
        path = folder.joinpath(*name.split(".")[2:])
        nested = any(other.startswith(name + ".") for other in names)
        found[sys.modules[name]] = path / "__init__.pyi" if nested else path.with_suffix(".pyi")
    return found


def current(source: str, module: ModuleType) -> tuple[str, list[str]]:
    """The stub as it should be, and what was different."""
    stale = []
    names = "__all__ = [\n" + "".join(f'    "{name}",\n' for name in sorted(module.__all__)) + "]\n"
    listed = re.sub(r"^__all__ = \[.*?\]\n", lambda _: names, source, count=1, flags=re.MULTILINE | re.DOTALL)
    if names not in listed:
        raise SystemExit(f"the stub of {module.__name__} has no __all__")
    if listed != source:
        stale.append("__all__")
    found = entries(ast.parse(listed), module)
    if missing := unwritten(listed, module):
        raise SystemExit(f"the stub of {module.__name__} has no signature of {', '.join(missing)}")
    stale += [entry.name for entry in found if not entry.is_current]
    documented = rewrite(listed, found)
    written = matched(documented, module)
    if written != documented:
        stale.append("__match_args__")
    if lost := [entry.name for entry in entries(ast.parse(written), module) if not entry.is_current]:
        raise SystemExit(f"cannot write these docstrings into the stub: {', '.join(lost)}")
    return written, stale


def matched(source: str, module: ModuleType) -> str:
    """The stub with the ``__match_args__`` of every class that has some, below its docstring."""
    lines = source.split("\n")
    for node in reversed(ast.parse(source).body):
        if not isinstance(node, ast.ClassDef):
            continue
        names = vars(getattr(module, node.name, object)).get("__match_args__")
        if names is None:
            continue
        line = f"    __match_args__ = {names!r}".replace("'", '"')
        for own in node.body:
            if isinstance(own, ast.Assign) and ast.unparse(own.targets[0]) == "__match_args__":
                lines[own.lineno - 1 : own.end_lineno] = [line]
                break
        else:
            start = (node.body[0].end_lineno or 0) if is_constant(node.body[0], str) else node.body[0].lineno - 1
            lines[start:start] = ["", line]
    return "\n".join(lines)


def unwritten(source: str, module: ModuleType) -> list[str]:
    """The names of a module that its stub neither defines nor takes from the stub of a part."""
    if re.search(r"^from \S+ import \*$", source, re.MULTILINE):
        return []
    defined = {node.name for node in ast.parse(source).body if isinstance(node, Documented)}
    return sorted(set(module.__all__) - defined)


def main() -> int:
    """Rewrites the stubs, or checks them."""
    parser = argparse.ArgumentParser(description="Copy names and docstrings of the compiled modules into their stubs.")
    parser.add_argument("--check", action="store_true", help="change nothing; status 1 when a stub is not current")
    parser.add_argument("stubs", nargs="?", type=Path, default=STUBS, help="the folder of the stubs")
    arguments = parser.parse_args()

    stale = []
    for module, path in stubs(arguments.stubs).items():
        source = path.read_text(encoding="utf-8")
        written, found = current(source, module)
        stale += [f"{module.__name__}.{name}" for name in found]
        if found and not arguments.check:
            path.write_text(written, encoding="utf-8")
    if stale and arguments.check:
        print(f"the stubs differ from the compiled modules (run make stubs): {', '.join(stale)}", file=sys.stderr)
        return 1
    if stale:
        print(f"copied {len(stale)} names and docstrings")
    return 0


if __name__ == "__main__":
    sys.exit(main())
