"""The order of the day: foilwork against a mixed-integer program of SciPy, and a thousand whole plans.

Run ``python benches/python/day.py`` (release build of the module) for the table. Time is processor time of this
process. The program is the one of the tests; it knows nothing of how foilwork searches, and both find the same finish.
"""

import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

import foilwork
from foilwork.day import Floor, SectionWork, arrange

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests" / "python"))
EXAMPLE = (ROOT / "examples" / "soft-gradient.toml").read_text(encoding="utf-8")
PLANS = 1_000


def seconds(work: Callable[[], object]) -> float:
    """Processor time of one run."""
    start = time.process_time()
    work()
    return time.process_time() - start


def sections(count: int) -> list[SectionWork]:
    return [
        SectionWork(f"s{i}", apply_min=6 + i % 4, develop_min=20 + i * 7 % 13, longest_min=50) for i in range(count)
    ]


def head(count: int) -> str:
    """The head of the example with so many sections, no two alike."""
    before, after = EXAMPLE.split("[[section]]", 1)[0], EXAMPLE[EXAMPLE.index("# --- money") :]
    section = """[[section]]
name = "{0}"
technique = "weave"
share_percent = 5
zone = "lengths"
target_level = 9
product = "Foam Line powder"
developer = "developer 6"
mix_g = 45
foils = 6
apply_min = {1}
develop_min = {2}

"""
    return before + "".join(section.format(i, 6 + i % 4, 20 + i * 7 % 13) for i in range(count)) + after


def plans(text: str) -> None:
    for _ in range(PLANS):
        foilwork.plan(text)


def main() -> None:
    from test_day import optimum  # SciPy takes a second to import

    floor = Floor(look_min=0)
    print(f"{'the best order':34}{'foilwork ms':>12}{'milp ms':>12}{'ratio':>10}")
    for count in (2, 3, 4):
        work = sections(count)
        found = arrange(work, floor=floor)
        assert abs(found.finish_min - optimum(work, [], floor)) < 1e-4
        ours = min(seconds(partial(arrange, work, floor=floor)) for _ in range(20))
        theirs = seconds(partial(optimum, work, [], floor))
        print(f"{count} sections{'':24}{ours * 1e3:12.3f}{theirs * 1e3:12.1f}{theirs / ours:10.0f}")
    for count in (3, 6, 12):
        text = head(count)
        took = seconds(partial(plans, text))
        print(f"{PLANS} plans of {count} sections: {took:.2f} s, {took / PLANS * 1e3:.2f} ms each")


if __name__ == "__main__":
    main()
