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

ROOMS = [found.name for found in pkgutil.iter_modules(foilwork.__path__) if not found.name.startswith("_")]


def cargo(manifest: Path) -> dict[str, Any]:
    package: dict[str, Any] = tomllib.loads(manifest.read_text(encoding="utf-8"))["package"]
    return package


@pytest.mark.parametrize("name", ["foilwork", *(f"foilwork.{room}" for room in ROOMS)])
def test_public_module_lists_its_names(name: str) -> None:
    module = importlib.import_module(name)
    listed = module.__all__
    assert len(listed) == len(set(listed))
    assert all(hasattr(module, entry) for entry in listed)


def test_every_compiled_name_is_public_exactly_once() -> None:
    homes = Counter(entry for room in ROOMS for entry in importlib.import_module(f"foilwork.{room}").__all__)
    homes.update(entry for entry in foilwork.__all__ if entry not in homes)
    compiled = set(_native.__all__) - {"main"}
    assert {name: homes[name] for name in compiled} == dict.fromkeys(compiled, 1)


@pytest.mark.parametrize("name", ["foilwork", "foilwork._cli", *(f"foilwork.{room}" for room in ROOMS)])
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
