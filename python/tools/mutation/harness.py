"""The tests one by one: how long each takes and which functions it enters; then only those that can notice a fault."""

import os
import re
import resource
import signal
import subprocess
import tempfile
import time
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from . import examples

FAILED = re.compile(rb"^test .*FAILED", re.MULTILINE)
# Seconds of tests that are begun together; the first are few, since most faults are noticed at once.
PORTIONS = (1.0, 3.0, 8.0, 20.0, 60.0)


@dataclass
class Test:
    """A test of one program, the seconds it takes and the functions it enters."""

    program: str
    name: str
    seconds: float = 0.0
    reached: frozenset[int] = frozenset()
    passed: bool = True

    def of(self, room: str) -> bool:
        """Whether the test bears the name of a room."""
        return room in re.split(r"::|/", self.name)


def names(program: Path, copy: Path) -> list[str]:
    """The tests of a program."""
    listed = subprocess.run([program, "--list"], cwd=copy, capture_output=True, text=True, check=True).stdout
    return [line.removesuffix(": test") for line in listed.splitlines() if line.endswith(": test")]


def command(program: Path, tests: list[Test]) -> list[str]:
    """Runs these tests one after the other; an example is chosen by the environment."""
    if tests[0].program == examples.PROGRAM:
        return [str(program)]
    return [str(program), "--exact", *(test.name for test in tests), "--test-threads=1"]


def chosen(test: Test) -> dict[str, str]:
    """What else the program has to be told."""
    return examples.choice(test.name) if test.program == examples.PROGRAM else {}


def surroundings(mutant: int, reached: Path | None, folder: str) -> dict[str, str]:
    """What a test is started with: no fault is looked for in a smaller case, none is kept for the next run."""
    env = os.environ | {
        "MUTANT": str(mutant),
        "TMPDIR": folder,
        "PROPTEST_MAX_SHRINK_ITERS": "0",
        "PROPTEST_DISABLE_FAILURE_PERSISTENCE": "1",
        "RUST_BACKTRACE": "0",
    }
    return env | ({"MUTANT_REACHED": str(reached)} if reached else {})


def measured(test: Test, program: Path, copy: Path, folder: Path) -> Test:
    """One test in a process of its own, recording."""
    reached = folder / f"reached-{os.getpid()}-{abs(hash((test.program, test.name)))}"
    reached.unlink(missing_ok=True)
    start = time.monotonic()
    done = subprocess.run(
        command(program, [test]),
        cwd=copy,
        env=surroundings(0, reached, str(folder)) | chosen(test),
        capture_output=True,
        check=False,
        timeout=900,
    )
    test.seconds = time.monotonic() - start
    test.passed = done.returncode == 0
    if reached.exists():
        test.reached = frozenset(int(line) for line in reached.read_text().split())
        reached.unlink()
    return test


def portions(tests: Iterable[Test], room: str) -> list[list[Test]]:
    """Quick tests of the room first, then all others by their time."""
    waiting = sorted(tests, key=lambda test: (not (test.of(room) and test.seconds < 0.5), test.seconds))
    parts: list[list[Test]] = []
    while waiting:
        limit, total, part = PORTIONS[min(len(parts), len(PORTIONS) - 1)], 0.0, list[Test]()
        # An example is a run of its own.
        while waiting and (not part or (total + waiting[0].seconds <= limit and joins(part[0], waiting[0]))):
            total += waiting[0].seconds
            part.append(waiting.pop(0))
        parts.append(part)
    return parts


def joins(one: Test, other: Test) -> bool:
    """Whether one run of a program can do both."""
    return one.program == other.program != examples.PROGRAM


def noticed(mutant: int, part: list[Test], program: Path, copy: Path) -> str | None:
    """The test that fails with a fault, or `timeout`, or what ended the program; none if all pass."""
    allowed = 15 + 8 * sum(test.seconds for test in part)
    with tempfile.TemporaryDirectory() as folder:
        run = subprocess.Popen(
            command(program, part),
            cwd=copy,
            env=surroundings(mutant, None, folder) | chosen(part[0]),
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
            preexec_fn=_bounded,
        )
        assert run.stdout
        os.set_blocking(run.stdout.fileno(), False)
        output, end = b"", time.monotonic() + allowed
        try:
            while True:
                piece = run.stdout.read()
                if piece:
                    output += piece
                    if found := FAILED.search(output):
                        return found.group().decode().split()[1]
                elif run.poll() is not None:
                    output += run.stdout.read() or b""
                    break
                if time.monotonic() > end:
                    return "timeout"
                time.sleep(0.01)
        finally:
            if run.poll() is None:
                os.killpg(run.pid, signal.SIGKILL)
            run.wait()
    if found := FAILED.search(output):
        return found.group().decode().split()[1]
    return None if run.returncode == 0 else f"ended with {run.returncode}"


def _bounded() -> None:
    """A fault may ask for memory without an end."""
    resource.setrlimit(resource.RLIMIT_AS, (6 << 30, 6 << 30))
