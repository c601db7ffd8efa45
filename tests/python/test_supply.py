"""What others bring in: licences, where packages come from, and what we hand on ourselves."""

import json
import re
import subprocess
import sys
import tarfile
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from license_expression import get_spdx_licensing

ROOT = Path(__file__).resolve().parents[2]
SPDX = get_spdx_licensing()

# Each may be linked into a program under either of our own licences and asks for no more than its notice.
ALLOWED = {
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "MIT",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
}


def allows(expression: str) -> bool:
    """Whether a package can be taken under allowed licences alone; a slash is the old way of writing OR."""
    parsed = SPDX.parse(expression.replace("/", " OR "), validate=True)
    chosen = {licence: SPDX.TRUE if str(licence) in ALLOWED else SPDX.FALSE for licence in parsed.literals}
    return bool(parsed.subs(chosen).simplify() == SPDX.TRUE)


@cache
def graph() -> dict[str, Any]:
    told = subprocess.run(
        ["cargo", "metadata", "--locked", "--all-features", "--format-version", "1"],
        cwd=ROOT,
        capture_output=True,
        check=True,
    ).stdout
    found: dict[str, Any] = json.loads(told)
    return found


def direct(package: str) -> set[str]:
    (found,) = (entry for entry in graph()["packages"] if entry["name"] == package and entry["source"] is None)
    return {needed["name"] for needed in found["dependencies"]}


@pytest.mark.parametrize(
    ("expression", "expected"),
    [
        ("MIT OR Apache-2.0", True),
        ("MIT/Apache-2.0", True),
        ("(MIT OR Apache-2.0) AND Unicode-3.0", True),
        ("Apache-2.0 WITH LLVM-exception OR GPL-3.0-only", True),
        ("GPL-3.0-only", False),
        ("MIT AND LGPL-2.1-or-later", False),
        ("MPL-2.0", False),
    ],
)
def test_licences_are_judged_as_they_read(expression: str, expected: bool) -> None:
    assert allows(expression) is expected


def test_every_package_can_be_taken_under_an_allowed_licence() -> None:
    packages = graph()["packages"]
    assert len(packages) > 60
    assert [
        f"{package['name']} {package['version']}: {package['license']}"
        for package in packages
        if not package["license"] or not allows(package["license"])
    ] == []


def test_every_package_comes_from_the_registry_with_a_checksum() -> None:
    lock = (ROOT / "Cargo.lock").read_text(encoding="utf-8")
    ours = {"foilwork", "foilwork-python"}
    bare = [
        entry.splitlines()[0]
        for entry in lock.split("[[package]]\n")[1:]
        if "checksum = " not in entry and re.findall(r'name = "([^"]+)"', entry)[0] not in ours
    ]
    assert bare == []
    assert {package["name"] for package in graph()["packages"] if package["source"] is None} == ours


def test_every_dependency_is_explained() -> None:
    told = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    _, _, table = told.partition("\n## Dependencies\n")
    words = set(re.findall(r"[\w-]+", table.partition("\n## ")[0]))
    needed = direct("foilwork") | direct("foilwork-python") - {"foilwork"}
    assert "clap" in needed
    assert sorted(name for name in needed if name not in words) == []


def packaged() -> set[str]:
    listed = subprocess.run(
        ["cargo", "package", "--list", "--allow-dirty", "--quiet", "--package", "foilwork"],
        cwd=ROOT,
        capture_output=True,
        check=True,
    ).stdout.decode()
    return set(listed.splitlines())


def test_the_crate_holds_what_it_should_and_no_more() -> None:
    files = packaged()
    assert {"src/lib.rs", "README.md", "LICENSE-MIT", "LICENSE-APACHE", "CHANGELOG.md"} <= files
    # Texts that the code includes.
    for source in (ROOT / "src").rglob("*.rs"):
        for text in re.findall(r'include_str!\(\s*"([^"]+)"', source.read_text(encoding="utf-8")):
            assert str((source.parent / text).resolve().relative_to(ROOT)) in files, (source, text)
    folders = {name.split("/")[0] for name in files if "/" in name}
    assert folders == {"src", "tests", "benches", "examples", "docs"}
    assert not any(name.startswith("tests/python") for name in files)


def test_the_source_distribution_holds_what_it_should_and_no_more(tmp_path: Path) -> None:
    maturin = [sys.executable, "-m", "maturin", "sdist", "--out", str(tmp_path)]
    subprocess.run(maturin, cwd=ROOT, check=True, capture_output=True)
    (archive,) = tmp_path.glob("*.tar.gz")
    with tarfile.open(archive) as opened:
        names = {name.partition("/")[2] for name in opened.getnames()}
    assert {"PKG-INFO", "pyproject.toml", "Cargo.toml", "Cargo.lock", "src/lib.rs", "python/src/lib.rs"} <= names
    assert {"python/foilwork/__init__.py", "python/foilwork/py.typed", "LICENSE-MIT", "LICENSE-APACHE"} <= names
    strange = [
        name for name in names if name.startswith((".ci", "fuzz", "tests/python", "target")) or name.endswith(".so")
    ]
    assert strange == []


def test_fuzzing_says_what_is_missing_where_there_is_no_nightly() -> None:
    run = [str(ROOT / "fuzz" / "run"), "1"]
    said = subprocess.run(run, env={"PATH": "/usr/bin:/bin"}, capture_output=True, check=False)
    assert said.returncode == 1
    assert b"a nightly toolchain (rustup toolchain install nightly" in said.stderr
    assert b"cargo-fuzz (cargo install cargo-fuzz)" in said.stderr
