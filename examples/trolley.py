"""What to put on the trolley: the grams of each product that the services of a day need, and what is open before them.

python examples/trolley.py examples/soft-gradient.toml examples/lowlights.json
"""

import sys
from collections import defaultdict

import foilwork


def trolley(files: list[str]) -> str:
    """The list for the service files of a day."""
    grams: dict[str, float] = defaultdict(float)
    unsettled = []
    for file in files:
        plan = foilwork.plan_file(file)
        for mix in plan.mixes:
            for bowl in mix.bowls:
                for part in bowl.parts:
                    grams[part.product] += part.weigh_g * bowl.count
        unsettled += [
            f"{plan.title}: {finding.text}"
            for finding in plan.findings
            if finding.verdict in {"stop", "warning", "not-judged"}
        ]
    lines = ["on the trolley", *(f"{mass:8.1f} g  {product}" for product, mass in sorted(grams.items()))]
    if unsettled:
        lines += ["before anything is mixed", *(f"  {finding}" for finding in unsettled)]
    return "\n".join(lines)


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit("name the service files of the day")
    print(trolley(sys.argv[1:]))
