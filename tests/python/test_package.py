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
    compiled = {name.split(".")[2] for name in sys.modules if name.startswith("foilwork._native.")}
    assert compiled == set(ROOMS)


def test_no_name_is_in_two_rooms() -> None:
    homes = Counter(name for room in ROOMS for name in importlib.import_module(f"foilwork.{room}").__all__)
    assert [name for name, count in homes.items() if count > 1] == []


def test_every_compiled_name_is_public() -> None:
    # The command line is called by the console script alone.
    assert set(_native.__all__) - {"main", "fill_words", "poured_cautions"} <= set(foilwork.__all__)


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
