"""The rooms keep to the map of DEVELOPERS.md: who uses whom, no cycles, one meaning for one name."""

import re
from collections import defaultdict

import pytest
import room_map
import rust_sources

PAGE = room_map.PAGE.read_text(encoding="utf-8")
ALLOWED = room_map.edges(PAGE)
FOUND = rust_sources.room_edges()


def test_every_room_is_in_the_table() -> None:
    assert sorted(ALLOWED) == rust_sources.rooms(), "one row for each room under `Who may use whom` in DEVELOPERS.md"


@pytest.mark.parametrize("room", rust_sources.rooms())
def test_room_uses_only_what_the_table_allows(room: str) -> None:
    extra = sorted(FOUND[room] - set(ALLOWED.get(room, [])))
    assert not extra, (
        f"`{room}` imports {extra}, which its row under `Who may use whom` in DEVELOPERS.md does not allow: move the "
        "code, or, if data still flows one way, add the room to the row and run tests/python/room_map.py"
    )


@pytest.mark.parametrize("room", list(ALLOWED))
def test_no_room_looks_back(room: str) -> None:
    order = list(ALLOWED)
    later = [used for used in ALLOWED[room] if order.index(used) >= order.index(room)]
    assert not later, f"`{room}` may use only rooms above it in the table, so that no cycle can form"


def test_the_drawing_is_that_of_the_table() -> None:
    assert room_map.drawn(PAGE) == PAGE, "run `python tests/python/room_map.py`"


def test_what_any_room_may_use_uses_none() -> None:
    users = {
        module.room for module in rust_sources.modules().values() if ("threads",) in rust_sources.file_edges(module)
    }
    assert users == {"column", "money"}
    assert not rust_sources.file_edges(rust_sources.modules()["threads",])


def test_files_of_a_room_form_no_cycle() -> None:
    modules = rust_sources.modules().values()
    edges = {
        module.path: {path for path in rust_sources.file_edges(module) if path[:1] == module.path[:1]}
        for module in modules
        if module.path
    }
    found = [["::".join(path) for path in group] for group in rust_sources.cycles(edges)]
    assert not found, "these files import from each other: move what they share to a file of its own"


def test_a_name_means_one_thing() -> None:
    where = defaultdict(list)
    for room in rust_sources.rooms():
        for name, module in rust_sources.public_names(room).items():
            where[name].append(module)
    # A function over slices has the name of the function over one value.
    scalar = {name: [module for module in modules if module != "column"] for name, modules in where.items()}
    twice = {name: modules for name, modules in scalar.items() if len(modules) > 1}
    assert not twice, "exported by two rooms: a reader of the prelude would not know which is meant"


@pytest.mark.parametrize(
    "module", [m for m in rust_sources.modules().values() if m.is_folder], ids=lambda m: str(m.path)
)
def test_mod_rs_only_declares_and_exports(module: rust_sources.Module) -> None:
    declared = module.own_code.replace("pub struct Readme;", "")
    assert not rust_sources._ITEM.search(declared), f"{module.file.name} of {'::'.join(module.path)} holds code"


# The reader of imports is itself shown to see what it is for.


def test_use_trees_are_expanded() -> None:
    tree = "crate::{mix::{Ratio, unit::{self, Unit as Part}}, source::Interval}"
    assert list(rust_sources.expanded(tree)) == [
        (("crate", "mix", "Ratio"), "Ratio"),
        (("crate", "mix", "unit"), "unit"),
        (("crate", "mix", "unit", "Unit"), "Part"),
        (("crate", "source", "Interval"), "Interval"),
    ]


def test_comments_and_strings_are_not_code() -> None:
    text = 'a(); // use crate::mix;\nb("use crate::mix;"); /* crate::mix */ c(\'"\'); d(r#"crate::"mix""#);'
    assert "mix" not in rust_sources.code(text)
    assert "d(" in rust_sources.code(text)


def test_cycles_are_found() -> None:
    a, b, c = ("a",), ("b",), ("c",)
    assert rust_sources.cycles({a: {b}, b: {c}, c: {a}}) == [[a, b, c]]
    assert rust_sources.cycles({a: {b, c}, b: {c}, c: set()}) == []


def test_what_a_re_export_names_is_found() -> None:
    modules = rust_sources.modules()
    reached = rust_sources.target(modules["cli", "dilute"], ("crate", "mix", "as_applied"))
    assert reached is not None
    assert reached.path == ("mix", "applied")


def test_the_drawing_shows_what_is_used_directly() -> None:
    table = {"a": [], "b": ["a"], "c": ["a", "b"]}
    assert room_map.drawing(table) == "a\n  b <- a\n    c <- b\n"


# Where rules are judged, and so where the words of what was found are made (docs/why.md says why). Every other place
# takes findings as they are.
JUDGES = (
    "finding",
    "limits",
    "mix",
    "colour",
    "toner",
    *(f"service/plan/{at}" for at in ("check", "toner", "findings")),
)
WORDED = r"\bFinding::new\(|\bFinding \{ *(?:rule|verdict|text)|\bFinding \{$"
READ_BACK = (
    r"\.text\s*\.(?:starts_with|ends_with|contains|find|split\w*|strip_\w+|parse|replace\w*)\("
    r"|\.text(?:\.as_str\(\))? [!=]="
)


def places(pattern: str) -> list[str]:
    """The files of the core, below ``src``, whose code matches."""
    found = (module for module in rust_sources.modules().values() if re.search(pattern, module.own_code, re.M))
    return sorted(module.file.relative_to(rust_sources.SRC).as_posix() for module in found)


def test_a_finding_is_worded_where_its_rule_is_judged() -> None:
    elsewhere = [place for place in places(WORDED) if not place.startswith(JUDGES)]
    assert not elsewhere, "a finding brings its own words: make it where the rule is judged (docs/why.md)"
    assert len(places(WORDED)) > 10, "the pattern finds them"


def test_no_code_reads_the_text_of_a_finding_back() -> None:
    with_findings = set(places(r"\b[Ff]indings?\b"))
    # The type itself sees to it that it says a thing once.
    reads = [place for place in places(READ_BACK) if place in with_findings and place != "finding/found.rs"]
    assert not reads, "what a program acts on is data: rule, verdict, sources (docs/why.md)"
    assert re.search(READ_BACK, 'finding.text.starts_with("hydrogen peroxide")')
