"""Writes tests/data/teach/worked.csv, which holds the sheets of the core to sums worked by hand: run it to renew it.

Which problem a seed gives is a promise, so that what is given is noted as it was drawn; answers and errors are those of
``teach_by_hand`` and ``teach_mistakes``, as fractions or words.
"""

import csv
import io
import json
from collections import Counter
from fractions import Fraction
from itertools import count
from pathlib import Path
from typing import Any

from teach_by_hand import WORKED, Numbers, Worked, worked
from teach_mistakes import mistaken

from foilwork.teach import worksheet

TABLE = Path(__file__).parents[1] / "data/teach/worked.csv"
EACH = 5


def said(value: Worked) -> str:
    """A fraction as two whole numbers, so that nothing is rounded on the way."""
    return f"{value.numerator}/{value.denominator}" if isinstance(value, Fraction) else value


def row(seed: int, topic: str, problem: dict[str, Any]) -> list[str]:
    kind, given = problem["kind"], problem["given"]
    wrong = {option["mistake"] for option in problem["options"]} - {None}
    leads = {name: "|".join(map(said, mistaken(kind, name, Numbers(given)))) for name in sorted(wrong)}
    shown = [";".join(f"{name}={value}" for name, value in pairs.items()) for pairs in (given, leads)]
    return [str(seed), topic, kind, shown[0], said(worked(kind, given)), shown[1]]


def table(topics: list[Any]) -> str:
    """The first problems of each kind, one for each seed and topic."""
    met: Counter[str] = Counter()
    out = io.StringIO()
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["seed", "topic", "kind", "given", "answer", "errors"])
    for seed in count():
        for topic in topics:
            (problem,) = json.loads(worksheet(seed=seed, topics=[topic], count=1).json())["exercises"]
            if met[problem["kind"]] < EACH:
                met[problem["kind"]] += 1
                rows.writerow(row(seed, topic, problem))
        if len(met) == len(WORKED) and min(met.values()) == EACH:
            return out.getvalue()
    raise AssertionError("every kind is met sooner or later")


if __name__ == "__main__":
    import test_teach

    TABLE.write_text(table(test_teach.TOPICS), encoding="utf-8")
