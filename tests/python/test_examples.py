"""The program under ``examples/`` runs on the installed module."""

import subprocess
import sys
from pathlib import Path


def run(root: Path, *files: str) -> subprocess.CompletedProcess[str]:
    words = [sys.executable, "examples/trolley.py", *files]
    return subprocess.run(words, cwd=root, capture_output=True, text=True, check=False)


def test_the_trolley_of_a_day(root: Path) -> None:
    done = run(root, "examples/soft-gradient.toml", "examples/lowlights.json")
    assert done.returncode == 0, done.stderr
    first, *products = done.stdout.splitlines()
    assert first == "on the trolley"
    assert any(line.endswith(" g  Foam Line powder") for line in products)


def test_without_files_it_says_what_to_give(root: Path) -> None:
    done = run(root)
    assert done.returncode == 1
    assert done.stderr == "name the service files of the day\n"
