"""The table of the job says what serves each row; every name in it exists."""

import json
import re
import subprocess
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest
import rust_sources

ROOT = Path(__file__).resolve().parents[2]
PAGE = (ROOT / "docs" / "job.md").read_text(encoding="utf-8")
SCHEMA = json.loads((ROOT / "examples" / "service.schema.json").read_text(encoding="utf-8"))


class Row(NamedTuple):
    """One piece of the work."""

    number: int
    work: str
    served: str
    by: str
    missing: str


ROWS = [
    Row(int(cells[0]), *cells[1:])
    for line in PAGE.splitlines()
    if (cells := [cell.strip() for cell in line.strip("|").split("|")])[0].isdigit()
]
NAMES = sorted({name for row in ROWS for name in re.findall(r"`([^`]+)`", row.by + row.missing)})


def test_there_are_a_hundred_rows() -> None:
    assert [row.number for row in ROWS] == list(range(1, 101))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row.number))
def test_row_says_how_far_it_is_served(row: Row) -> None:
    assert row.served in {"yes", "in part", "not yet"}
    assert bool(row.by) == (row.served != "not yet"), "a row that is served names what serves it"
    assert row.missing or row.served != "in part", "a row served in part says what is missing"


@cache
def help_of(command: Path, *words: str) -> str:
    done = subprocess.run([command, *words, "--help"], capture_output=True, text=True, check=True)
    return done.stdout


def has_field(schema: dict[str, Any], path: list[str]) -> bool:
    """Whether a file of this schema can have the field."""
    if not path:
        return True
    if "$ref" in schema:
        return has_field(SCHEMA["$defs"][schema["$ref"].rsplit("/", 1)[1]], path)
    branches = [*schema.get("anyOf", []), *schema.get("oneOf", []), *schema.get("allOf", [])]
    if "items" in schema:
        branches.append(schema["items"])
    if path[0] in schema.get("properties", {}):
        return has_field(schema["properties"][path[0]], path[1:])
    return any(has_field(branch, path) for branch in branches)


def has_item(path: list[str]) -> bool:
    """Whether a room exports the name, and its code declares what comes after it."""
    room, name, *rest = path
    if room not in rust_sources.rooms() or name not in rust_sources.public_names(room):
        return False
    code = "\n".join(module.own_code for module in rust_sources.modules().values() if module.room == room)
    return all(re.search(rf"\b(?:fn {part}\b|{part}\s*(?:=|,|\(|\{{))", code) for part in rest)


@pytest.mark.parametrize("name", NAMES)
def test_name_exists(name: str, command: Path) -> None:
    if name.startswith("foilwork "):
        word, *options = name.split()[1:]
        shown = help_of(command, word)
        assert all(re.search(rf"{option}\b", shown) for option in options)
    elif "::" in name:
        assert has_item(name.split("::")), "no room exports it"
    else:
        assert has_field(SCHEMA, name.split(".")), "no field of a service file"


def test_names_that_do_not_exist_are_refused() -> None:
    assert not has_item(["mix", "bowlz"])
    assert not has_item(["colour", "Swatch", "besides"])
    assert not has_field(SCHEMA, ["section", "lift"])
