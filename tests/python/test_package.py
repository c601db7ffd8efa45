"""The package as it is installed: names, types, versions, and no dependency that was not asked for."""

import importlib
import pkgutil
import subprocess
import sys
import tomllib
from collections import Counter
from importlib import metadata
from pathlib import Path
from typing import Any

import pytest

import foilwork
from foilwork import _native

# No rooms: the classes of a plan, made when a plan is asked for its parts, and what joins foilwork to other libraries.
MODULES = [found.name for found in pkgutil.iter_modules(foilwork.__path__) if not found.name.startswith("_")]
ROOMS = [name for name in MODULES if name not in {"planned", "arrow", "chain", "engines", "tables"}]


def cargo(manifest: Path) -> dict[str, Any]:
    package: dict[str, Any] = tomllib.loads(manifest.read_text(encoding="utf-8"))["package"]
    return package


@pytest.mark.parametrize("name", ["foilwork", *(f"foilwork.{name}" for name in MODULES)])
def test_public_module_lists_its_names(name: str) -> None:
    module = importlib.import_module(name)
    listed = module.__all__
    assert len(listed) == len(set(listed))
    assert all(hasattr(module, entry) for entry in listed)


@pytest.mark.parametrize("room", ROOMS)
def test_room_is_its_compiled_module(room: str) -> None:
    public, compiled = importlib.import_module(f"foilwork.{room}"), importlib.import_module(f"foilwork._native.{room}")
    assert public.__all__ == compiled.__all__
    assert {name: getattr(compiled, name).__module__ for name in compiled.__all__} == dict.fromkeys(
        compiled.__all__, f"foilwork.{room}"
    )


def test_every_compiled_room_is_public() -> None:
    assert set(_native.ROOMS) == set(ROOMS)
    assert set(ROOMS) <= set(dir(foilwork))
    assert {"ROOMS", "TYPE_CHECKING"}.isdisjoint(dir(foilwork))


def run_alone(program: str) -> str:
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_rooms_are_made_on_demand() -> None:
    made = "sorted(name for name in sys.modules if name.startswith('foilwork._native.') and name.count('.') == 2)"
    assert run_alone(f"import sys, foilwork; print({made})") == "[]"
    assert run_alone(f"import sys, foilwork.peroxide; print({made})") == "['foilwork._native.peroxide']"
    assert run_alone(f"import sys, foilwork; foilwork.money; print({made})") == "['foilwork._native.money']"


def test_unknown_room_is_told() -> None:
    with pytest.raises(ModuleNotFoundError, match=r"foilwork\._native\.bath"):
        importlib.import_module("foilwork._native.bath")
    with pytest.raises(foilwork.FoilworkError, match='no room is called "bath"'):
        _native.open_room("bath")
    with pytest.raises(AttributeError, match="no attribute 'bath'"):
        foilwork.bath  # noqa: B018


def test_answer_of_a_room_that_nobody_imported_is_whole() -> None:
    # Findings and money are classes of other rooms; a pickle asks for them by their public place.
    program = """
import pickle, sys
from foilwork.service import plan_file
plan = plan_file("examples/soft-gradient.toml")
found = plan.findings
assert found and {type(one).__module__ for one in found} == {"foilwork.finding"}
assert "foilwork.finding" not in sys.modules
assert pickle.loads(pickle.dumps(found)) == found
print(sorted(name for name in sys.modules if name == "foilwork.finding"))
"""
    assert run_alone(program) == "['foilwork.finding']"


def test_rooms_open_once_from_many_threads() -> None:
    program = """
import concurrent.futures as many
from foilwork._native import ROOMS, open_room
with many.ThreadPoolExecutor(8) as pool:
    seen = list(pool.map(lambda place: open_room(ROOMS[place % len(ROOMS)]), range(200)))
assert len({id(room) for room in seen}) == len(ROOMS) > 10
names = [room.__all__ for room in seen[: len(ROOMS)]]
print(all(names), [name for room in names for name in set(room) if room.count(name) > 1])
"""
    assert run_alone(program) == "True []"


def test_no_name_is_in_two_rooms() -> None:
    homes = Counter(name for room in ROOMS for name in importlib.import_module(f"foilwork.{room}").__all__)
    assert [name for name, count in homes.items() if count > 1] == []


def test_every_compiled_name_is_public() -> None:
    # The command line is called by the console script alone, rooms are opened by an import.
    inner = {"main", "fill_words", "number_for_all_rows", "open_room", "poured_cautions"}
    assert set(_native.__all__) - inner <= set(foilwork.__all__)


@pytest.mark.parametrize("name", ["foilwork", "foilwork._cli", *(f"foilwork.{name}" for name in MODULES)])
def test_module_imports_without_numpy(name: str) -> None:
    # None in sys.modules makes `import numpy` fail as if it were not installed.
    program = f"import sys; sys.modules['numpy'] = None; import {name}"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_wheel_requires_nothing() -> None:
    requirements = metadata.requires("foilwork") or []
    assert [line for line in requirements if "extra ==" not in line] == []


def test_versions_agree(root: Path) -> None:
    core, skin = cargo(root / "Cargo.toml"), cargo(root / "python" / "Cargo.toml")
    for key in ("version", "edition", "rust-version", "license"):
        assert core[key] == skin[key]
    assert metadata.version("foilwork") == core["version"]


def test_console_script_answers(command: Path) -> None:
    done = subprocess.run([command, "--help"], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")
