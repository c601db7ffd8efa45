"""Draws faults of the core, builds them all into one copy, and runs each against the tests that enter its function.

One build holds them all: a body stands there once for each of its faults, and the environment says which is run. What
does not compile is left out, as cargo-mutants does. Constants, and functions that return ``impl``, cannot be switched
and are no part of the sample. Results are kept line by line, so that a run that was broken off goes on.
"""

import argparse
import json
import pickle
import tempfile
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from . import examples, harness, listed, report
from .build import Built, built
from .harness import Test
from .listed import Mutant

ROOT = Path(__file__).resolve().parents[3]
Sample = dict[int, Mutant]


def arguments() -> argparse.Namespace:
    """What is asked for."""
    parser = argparse.ArgumentParser(prog="mutation", description="Tries drawn faults of the core against its tests.")
    parser.add_argument("--share", type=float, default=0.05, help="share of the faults of each room")
    parser.add_argument("--least", type=int, default=8, help="faults of a room at least, or all there are")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--room", action="append", help="only this room; may be given again")
    parser.add_argument("--again", action="store_true", help="those not noticed before, by the tests that are new")
    parser.add_argument("--workers", type=int, default=2, help="tests that run at a time")
    parser.add_argument("--work", type=Path, default=ROOT / "target/mutation", help="where the copy is built")
    return parser.parse_args()


def build(args: argparse.Namespace) -> tuple[Built, Sample]:
    """Builds the sample, or what was built of it before."""
    kept = args.work / "built.pickle"
    tested = args.work / "tests.json"
    if args.again and not (kept.exists() and tested.exists()):
        raise SystemExit(f"nothing to try again in {args.work}: run the sample to its end first, without --again")
    asked = (args.share, args.least, args.seed, args.room)
    if kept.exists():
        before, done, sample = pickle.loads(kept.read_bytes())
        if before == asked and args.again:
            every = listed.listed(ROOT)
            if not set(sample.values()) <= set(every):
                raise SystemExit("the rules have changed since the sample was drawn: draw another")
            return built(ROOT, args.work, sample, every), sample
        if before == asked:
            return done, sample
        if args.again:
            raise SystemExit(
                f"another sample is kept in {args.work}: ask for it, or draw this one first, without --again"
            )
    every = listed.listed(ROOT)
    rooms = {mutant.room for mutant in every}
    if unknown := set(args.room or ()) - rooms:
        raise SystemExit(f"no faults in {', '.join(sorted(unknown))}: the rooms are {', '.join(sorted(rooms))}")
    # What is kept of another sample goes only for one that can be drawn.
    for file in (args.work / "results.jsonl", tested) if kept.exists() else ():
        file.unlink(missing_ok=True)
    wanted = [mutant for mutant in every if mutant.switchable and (not args.room or mutant.room in args.room)]
    sample = dict(enumerate(listed.drawn(wanted, args.share, args.least, args.seed), 1))
    done = built(ROOT, args.work, sample, every)
    kept.write_bytes(pickle.dumps((asked, done, sample)))
    return done, sample


def reach(args: argparse.Namespace, done: Built) -> list[Test]:
    """All tests and examples, or the tests that are new, with what each of them enters.

    Those that fail without a fault are left out, and told.
    """
    copy, folder = args.work / "tree", args.work / "examples"
    tests = list[Test]()
    if not args.again:
        program, names = examples.program(copy, args.work / "target", folder)
        done.programs[examples.PROGRAM] = program
        tests = [Test(examples.PROGRAM, name) for name in names]
    for name, path in done.programs.items():
        if name != examples.PROGRAM:
            tests += [Test(name, test) for test in harness.names(path, copy)]
    old = tried(args)
    tests = [test for test in tests if (test.program, test.name) not in old]
    with tempfile.TemporaryDirectory() as some, ThreadPoolExecutor(args.workers) as pool:
        list(pool.map(lambda test: harness.measured(test, done.programs[test.program], copy, Path(some)), tests))
    for test in tests:
        if not test.passed:
            print(f"left out, fails without a fault: {test.name}")
    tests = [test for test in tests if test.passed]
    print(f"{len(tests)} tests and examples, {sum(test.seconds for test in tests):.0f} s", flush=True)
    return tests


def tried(args: argparse.Namespace) -> set[tuple[str, str]]:
    """The tests that every fault which is left has passed, where they are not tried again."""
    if not args.again:
        return set()
    return {(program, name) for program, name in json.loads((args.work / "tests.json").read_text(encoding="utf-8"))}


def run(args: argparse.Namespace, done: Built, sample: Sample, tests: list[Test]) -> Path:
    """Each fault against the tests that enter its function, until one fails."""
    results: Path = args.work / "results.jsonl"
    before = map(json.loads, results.read_text().splitlines() if results.exists() else [])
    seen = {entry["name"] for entry in before if not (args.again and entry["outcome"] == "survived")}
    lock = threading.Lock()

    def one(number: int) -> tuple[str, str | None]:
        if number in done.unviable or number in done.unswitched:
            return ("unviable" if number in done.unviable else "unswitched"), None
        able = [test for test in tests if done.woven.site_of[number] in test.reached]
        for part in harness.portions(able, sample[number].room):
            if by := harness.noticed(number, part, done.programs[part[0].program], args.work / "tree"):
                return "killed", by
        return "survived", None

    def told(number: int) -> None:
        mutant = sample[number]
        if mutant.name not in seen:
            outcome, by = one(number)
            line = json.dumps({"name": mutant.name, "room": mutant.room, "outcome": outcome, "by": by})
            with lock, results.open("a", encoding="utf-8") as out:
                out.write(line + "\n")

    with ThreadPoolExecutor(args.workers) as pool:
        list(pool.map(told, sample))
    # Only now has each been tried against all of them.
    known = tried(args) | {(test.program, test.name) for test in tests}
    (args.work / "tests.json").write_text(json.dumps(sorted(known)), encoding="utf-8")
    return results


def main() -> None:
    """Builds, measures, runs, and says how many were noticed and which were not."""
    args = arguments()
    args.work.mkdir(parents=True, exist_ok=True)
    done, sample = build(args)
    results = run(args, done, sample, reach(args, done))
    print(report.table(results))


main()
