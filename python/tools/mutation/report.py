"""Killed of viable, room by room, with Wilson's interval of 95 %."""

import json
import math
from collections import Counter, defaultdict
from pathlib import Path


def wilson(hits: int, of: int, z: float = 1.959964) -> tuple[float, float]:
    """Bounds of a share that was seen as `hits` of `of`."""
    share, weight = hits / of, z * z / of
    middle = (share + weight / 2) / (1 + weight)
    half = z / (1 + weight) * math.sqrt(share * (1 - share) / of + weight / (4 * of))
    return middle - half, middle + half


def table(results: Path) -> str:
    """One line for each room, the sum, and the faults that no test noticed."""
    rooms: dict[str, Counter[str]] = defaultdict(Counter)
    lines = map(json.loads, results.read_text(encoding="utf-8").splitlines())
    # What was tried again counts as it came out last.
    entries = list({entry["name"]: entry for entry in lines}.values())
    for entry in entries:
        rooms[entry["room"]][entry["outcome"]] += 1
        rooms["all"][entry["outcome"]] += 1
    rows = []
    for room, counts in sorted(rooms.items(), key=lambda pair: (pair[0] == "all", pair[0])):
        killed, viable = counts["killed"], counts["killed"] + counts["survived"]
        if not viable:
            continue
        low, high = wilson(killed, viable)
        rows.append(f"{room:10} {killed:5} of {viable:5}  {killed / viable:6.1%}  {low:.1%} to {high:.1%}")
    missed = [entry["name"] for entry in entries if entry["outcome"] == "survived"]
    return "\n".join([*rows, "", "not noticed:", *sorted(missed)])
