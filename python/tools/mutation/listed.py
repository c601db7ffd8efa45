"""The faults that cargo-mutants would put into the core, and a drawn sample of them for every room."""

import json
import random
import subprocess
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path

# Line and column, both from one, the column in characters.
Place = tuple[int, int]
# Rooms that are no core: the command line is tested by running it.
DOORS = frozenset({"cli", "bin"})


@dataclass(frozen=True)
class Mutant:
    """One fault: the text between two places of a file, replaced."""

    name: str
    file: str
    room: str
    start: Place
    end: Place
    replacement: str
    # The function it stands in, from its first attribute to its brace; none for one of a constant.
    function: tuple[Place, Place] | None
    returns: str

    @property
    def switchable(self) -> bool:
        """A constant has no moment at which to choose; two bodies of a function that returns `impl` are two types."""
        return self.function is not None and not self.returns.startswith("-> impl")


def _span(value: dict[str, dict[str, int]]) -> tuple[Place, Place]:
    start, end = value["start"], value["end"]
    return (start["line"], start["column"]), (end["line"], end["column"])


def listed(root: Path) -> list[Mutant]:
    """All faults of the core."""
    command = ["cargo", "mutants", "--list", "--json", "--package", "foilwork", "--dir", str(root)]
    text = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    found = []
    for entry in json.loads(text):
        parts = entry["file"].split("/")
        if len(parts) < 3 or parts[1] in DOORS:
            continue
        start, end = _span(entry["span"])
        function = entry["function"]
        found.append(
            Mutant(
                name=entry["name"],
                file=entry["file"],
                room=parts[1],
                start=start,
                end=end,
                replacement=entry["replacement"],
                function=_span(function["span"]) if function else None,
                returns=function["return_type"] if function else "",
            )
        )
    return found


def drawn(mutants: list[Mutant], share: float, least: int, seed: int) -> list[Mutant]:
    """A share of each room, but no fewer than `least` (or all there are), shuffled within the room.

    Rooms alternate in proportion, so that any beginning of the list is a sample too.
    """
    rooms: dict[str, list[Mutant]] = defaultdict(list)
    for mutant in mutants:
        rooms[mutant.room].append(mutant)
    placed: list[tuple[float, Mutant]] = []
    for room, all_of in sorted(rooms.items()):
        chance = random.Random(f"{seed} {room}")
        count = min(len(all_of), max(least, round(share * len(all_of))))
        sample = chance.sample(all_of, count)
        placed += [((n + chance.random()) / count, mutant) for n, mutant in enumerate(sample)]
    return [mutant for _, mutant in sorted(placed, key=lambda pair: pair[0])]
