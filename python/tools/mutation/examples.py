"""The examples of the documentation as tests: all are one program, which runs the one whose number it is given."""

import re
import subprocess
from pathlib import Path

from .build import environment

PROGRAM = "examples"
NAME = re.compile(r'new_doctest\(\s*"((?:[^"\\]|\\.)*)", false')


def program(copy: Path, target: Path, folder: Path) -> tuple[Path, list[str]]:
    """Builds the examples against the copy; each name begins with its number."""
    env = environment(target) | {"RUSTDOCFLAGS": f"-Z unstable-options --persist-doctests {folder} --no-run"}
    subprocess.run(["cargo", "test", "--quiet", "--doc", "--features", "cli"], cwd=copy, env=env, check=True)
    (runner,) = folder.glob("*/doctest_runner_2024.rs")
    text = runner.read_text(encoding="utf-8")
    return runner.parent / "rust_out", [f"{number} {name}" for number, name in enumerate(NAME.findall(text))]


def choice(name: str) -> dict[str, str]:
    """What tells the program which example to run."""
    return {"RUSTDOC_DOCTEST_RUN_NB_TEST": name.split()[0]}
