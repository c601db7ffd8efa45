"""Builds the copy with its faults, leaving out those that do not compile."""

import json
import os
import shutil
import subprocess
from dataclasses import dataclass, field
from pathlib import Path

from .listed import Mutant
from .weave import Woven, weave


@dataclass
class Built:
    """The test programs, and what became of the faults."""

    woven: Woven
    programs: dict[str, Path]
    # Those that do not compile, by number.
    unviable: set[int] = field(default_factory=set)
    # Those in a function that does not compile when its body stands there twice.
    unswitched: set[int] = field(default_factory=set)


def environment(target: Path) -> dict[str, str]:
    """The compiler lets stable code ask whether it runs or is compiled only when told so; tests without debug lines."""
    return os.environ | {
        "CARGO_TARGET_DIR": str(target),
        "RUSTC_BOOTSTRAP": "1",
        "CARGO_INCREMENTAL": "1",
        "CARGO_PROFILE_DEV_DEBUG": "0",
        "CARGO_PROFILE_TEST_DEBUG": "0",
        "CARGO_PROFILE_DEV_OPT_LEVEL": "1",
        "CARGO_PROFILE_TEST_OPT_LEVEL": "1",
        "RUSTC_WORKSPACE_WRAPPER": str(target.parent / "rustc"),
    }


# Rules that are optimised run nine times as fast; the tests would take ten minutes to build so, and gain little.
WRAPPER = """\
#!/bin/sh
case "$*" in
*"--crate-name integration"*) exec "$@" -C opt-level=0 ;;
*) exec "$@" ;;
esac
"""


def copied(root: Path, copy: Path) -> None:
    """The files under version control, as they are now; the sources of Rust are for `weave`."""
    names = subprocess.run(["git", "-C", str(root), "ls-files"], capture_output=True, text=True, check=True).stdout
    for name in names.splitlines():
        source, to = root / name, copy / name
        if name.startswith("src/") and name.endswith(".rs"):
            continue
        if source.is_file() and (not to.exists() or to.read_bytes() != source.read_bytes()):
            to.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(source, to)


def cargo(copy: Path, target: Path, *arguments: str) -> list[dict[str, object]]:
    """The messages of a build."""
    command = ["cargo", *arguments, "--features", "cli", "--message-format=json"]
    done = subprocess.run(command, cwd=copy, env=environment(target), stdout=subprocess.PIPE, text=True, check=False)
    return [json.loads(line) for line in done.stdout.splitlines() if line.startswith("{")]


def errors(messages: list[dict[str, object]]) -> list[tuple[str, list[tuple[str, int]]]]:
    """The text of each error, and the places it is told at, the main ones first."""
    found = []
    for entry in messages:
        message = entry.get("message")
        if entry.get("reason") != "compiler-message" or not isinstance(message, dict) or message["level"] != "error":
            continue
        spans = sorted(message["spans"], key=lambda span: not span["is_primary"])
        places = []
        for span in spans:
            while span:
                places.append((span["file_name"], span["line_start"]))
                span = (span.get("expansion") or {}).get("span")
        found.append((message["message"], places))
    return found


def built(root: Path, work: Path, numbers: dict[int, Mutant], every: list[Mutant]) -> Built:
    """Takes faults out until the rest compiles, then builds the tests."""
    copy, target = work / "tree", work / "target"
    copied(root, copy)
    (work / "rustc").write_text(WRAPPER, encoding="utf-8")
    (work / "rustc").chmod(0o755)
    numbers, unviable, unswitched = dict(numbers), set[int](), set[int]()
    for _ in range(30):
        woven = weave(root, copy, numbers, every)
        wrong = errors(cargo(copy, target, "check", "--lib"))
        out: set[int] = set()
        for text, places in wrong:
            hits = [hit for file, line in places if (hit := woven.at(file, line))]
            blamed = [n for n, _ in hits if n]
            if blamed:
                out.add(blamed[0])
            elif hits:
                whole = {n for n, site in woven.site_of.items() if site == hits[0][1]}
                unswitched |= whole
                out |= whole
            elif places:
                raise RuntimeError(f"{text}: {places}")
        print(f"{len(numbers)} faults, {len(wrong)} errors, {len(out)} taken out", flush=True)
        if not out:
            break
        unviable |= out - unswitched
        numbers = {n: mutant for n, mutant in numbers.items() if n not in out}
    messages = cargo(copy, target, "test", "--no-run", "--lib", "--bins", "--test", "integration")
    programs = {}
    for entry in messages:
        path, where = entry.get("executable"), entry.get("target")
        if path and isinstance(where, dict) and where["kind"] != ["bin"]:
            programs[str(where["name"])] = Path(str(path))
    if "integration" not in programs:
        raise RuntimeError(str(errors(messages)[:3]))
    return Built(woven, programs, unviable, unswitched)
