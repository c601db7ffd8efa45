"""What the Rust sources import, read without a compiler: rooms, files, and the names that each room exports."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SRC = ROOT / "src"

Path_ = tuple[str, ...]

_NOT_CODE = re.compile(
    r"""
    (?P<comment> //[^\n]* | /\*.*?\*/ )
  | (?P<string> b?r(?P<hashes>\#*)".*?"(?P=hashes) | b?"(?:\\.|[^"\\])*" )
  | (?P<char> b?'(?:\\.[^']*|[^'\\])' )
    """,
    re.DOTALL | re.VERBOSE,
)
_TEST_MODULE = re.compile(r"#\[cfg\(test\)\]\s*mod \w+ \{.*", re.DOTALL)
_USE = re.compile(r"(?P<attributes>(?:#\[[^\]]*\]\s*)*)(?P<pub>pub(?:\([^)]*\))?\s+)?\buse\s+(?P<tree>[^;]+);")
_INLINE = re.compile(r"(?<![$\w:])(crate|super|self)((?:::\w+)+)")
_ITEM = re.compile(
    r"^(?:pub(?:\([^)]*\))? )?(?:const |unsafe |async )*(?:fn|struct|enum|trait|impl|type|static)\b", re.M
)


def code(text: str) -> str:
    """The text without comments and tests, its strings emptied; line breaks stay."""

    def blank(match: re.Match[str]) -> str:
        breaks = "\n" * match[0].count("\n")
        return breaks if match["comment"] else f'"{breaks}"'

    return _TEST_MODULE.sub("", _NOT_CODE.sub(blank, text))


def expanded(tree: str) -> Iterator[tuple[Path_, str]]:
    """Each path of a ``use`` tree, with the name under which it is known."""
    tree = tree.strip()
    if "{" in tree:
        head, rest = tree.split("{", 1)
        depth, start, body = 0, 0, rest.rsplit("}", 1)[0]
        for at, character in enumerate(body + ","):
            depth += {"{": 1, "}": -1}.get(character, 0)
            if character == "," and depth == 0:
                if branch := body[start:at].strip():
                    yield from expanded(head.strip() + branch)
                start = at + 1
        return
    path, _, alias = tree.partition(" as ")
    parts = tuple(part.strip() for part in path.split("::"))
    if parts[-1] == "self":
        parts = parts[:-1]
    yield parts, alias.strip() or parts[-1]


@dataclass
class Module:
    """One file, as a module of the crate."""

    file: Path
    path: Path_
    own_code: str
    private: list[tuple[Path_, str]] = field(default_factory=list)
    exported: list[tuple[Path_, str, str]] = field(default_factory=list)
    children: set[str] = field(default_factory=set)
    inline: list[Path_] = field(default_factory=list)

    @property
    def room(self) -> str:
        return self.path[0] if self.path else "lib"

    @property
    def is_folder(self) -> bool:
        return self.file.name in {"mod.rs", "lib.rs"}

    @property
    def holds_items(self) -> bool:
        return bool(_ITEM.search(self.own_code))


def read(file: Path) -> Module:
    relative = file.relative_to(SRC).with_suffix("").parts
    path = relative[:-1] if relative[-1] in {"mod", "lib"} else relative
    text = code(file.read_text(encoding="utf-8"))
    module = Module(file, path, text)
    module.children = set(re.findall(r"^\s*(?:pub(?:\([^)]*\))? )?mod (\w+);", text, re.M))
    for use in _USE.finditer(text):
        for parts, name in expanded(use["tree"]):
            if use["pub"]:
                module.exported.append((parts, name, use["pub"].strip()))
            else:
                module.private.append((parts, name))
    rest = re.sub(r"pub\([^)]*\)", "pub", _USE.sub("", text))
    module.inline = [(root, *tail.split("::")[1:]) for root, tail in _INLINE.findall(rest)]
    return module


@cache
def modules() -> dict[Path_, Module]:
    """Every module of the crate, by its path."""
    files = sorted(path for path in SRC.rglob("*.rs") if path.parent.name != "bin")
    found = [read(file) for file in files]
    return {module.path: module for module in found}


def rooms() -> list[str]:
    """The folders of the crate that are modules."""
    return sorted(path.parent.name for path in SRC.glob("*/mod.rs"))


def target(module: Module, parts: Path_, seen: frozenset[tuple[Path_, Path_]] = frozenset()) -> Module | None:
    """The module whose file says what a path names; ``None`` for what is not of the crate."""
    if (module.path, parts) in seen:
        return None
    seen |= {(module.path, parts)}
    at: Path_ = module.path
    head, rest = parts[0], parts[1:]
    if head == "crate":
        at = ()
    elif head == "super":
        at = at[:-1]
    elif head != "self":
        if head in module.children:
            at = (*at, head)
        else:
            known = [*module.private, *[(path, name) for path, name, _ in module.exported]]
            via = next((path for path, name in known if name == head and path != parts), None)
            found = target(module, via, seen) if via and via[0] != head else None
            return target(found, ("self", *rest), seen) if found and rest else found
    for index, part in enumerate(rest):
        here = modules()[at]
        if part == "super":
            at = at[:-1]
        elif part in here.children:
            at = (*at, part)
        else:
            known = [*[(path, name) for path, name, _ in here.exported], *here.private]
            via = next((path for path, name in known if name == part), None)
            if via is None:
                return here
            found = target(here, via, seen)
            after = rest[index + 1 :]
            return target(found, ("self", *after), seen) if found and after and found.is_folder else found
    return modules().get(at)


def file_edges(module: Module) -> set[Path_]:
    """The modules of the crate whose files this file imports from."""
    if module.is_folder and not module.holds_items:
        return set()
    paths = [path for path, _ in module.private] + module.inline
    found = {reached.path for path in paths if (reached := target(module, path)) is not None}
    return found - {module.path}


@cache
def room_edges() -> dict[str, set[str]]:
    """Which room imports from which others."""
    known = rooms()
    edges: dict[str, set[str]] = {room: set() for room in known}
    for module in modules().values():
        if module.room in edges:
            paths = [path for path, _ in module.private] + [path for path, *_ in module.exported] + module.inline
            edges[module.room] |= {path[1] for path in paths if path[0] == "crate" and len(path) > 1}
    return {room: (used & set(known)) - {room} for room, used in edges.items()}


def cycles(edges: dict[Path_, set[Path_]]) -> list[list[Path_]]:
    """The groups of nodes that reach each other (strongly connected, of two or more)."""

    def reached(start: Path_) -> set[Path_]:
        seen: set[Path_] = set()
        waiting = [start]
        while waiting:
            for after in edges.get(waiting.pop(), set()) - seen:
                seen.add(after)
                waiting.append(after)
        return seen

    reach = {node: reached(node) for node in edges}
    groups: list[list[Path_]] = []
    for node in sorted(edges):
        group = sorted(other for other in reach[node] if node in reach.get(other, set()))
        if len(group) > 1 and group not in groups:
            groups.append(group)
    return groups


def public_names(room: str) -> dict[str, str]:
    """What a room exports to users of the crate: the name, and the module that exports it."""
    names: dict[str, str] = {}

    def walk(path: Path_) -> None:
        module = modules()[path]
        here = "::".join(path)
        for _, name, how in module.exported:
            if how == "pub":
                names.setdefault(name, here)
        for kind in re.finditer(r"^pub mod (\w+);", module.own_code, re.M):
            walk((*path, kind[1]))
        if path != (room,) or module.holds_items:
            items = r"^pub (?:const )?(?:fn|struct|enum|trait|type|const|static) (\w+)"
            for item in re.finditer(items, module.own_code, re.M):
                names.setdefault(item[1], here)

    walk((room,))
    return names
