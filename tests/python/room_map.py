"""The map of the rooms in DEVELOPERS.md: the table of allowed edges, and the drawing made from it.

``python tests/python/room_map.py`` draws it anew.
"""

import re
import sys
from pathlib import Path

PAGE = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"
_ROW = re.compile(r"^\| `([a-z]+)` \| ((?:`[a-z]+`(?:, )?)*|every room) \|$", re.MULTILINE)
_SECTION = re.compile(r"^### Who may use whom\n(.*?)(?=^##)", re.MULTILINE | re.DOTALL)
_DRAWING = re.compile(r"(<!-- drawing of the rooms[^>]*-->\n```text\n)(.*?)(```\n)", re.DOTALL)


def edges(page: str) -> dict[str, list[str]]:
    """The table: each room, with the rooms that it may use, in the order of the table."""
    section = _SECTION.search(page)
    if section is None:
        raise ValueError("DEVELOPERS.md has no section `Who may use whom`")
    table: dict[str, list[str]] = {}
    for room, used in _ROW.findall(section[1]):
        table[room] = list(table) if used == "every room" else re.findall(r"`([a-z]+)`", used)
    return table


def drawing(table: dict[str, list[str]]) -> str:
    """One line for each room, set in by its depth, with the rooms that it uses not merely through another."""
    beyond: dict[str, set[str]] = {}
    depth: dict[str, int] = {}
    for room, used in table.items():
        beyond[room] = set(used).union(*(beyond[other] for other in used))
        depth[room] = max((depth[other] + 1 for other in used), default=0)
    lines = []
    for room in sorted(table, key=lambda room: (depth[room], room)):
        direct = [other for other in table[room] if not any(other in beyond[via] for via in table[room])]
        arrow = f" <- {', '.join(sorted(direct))}" if direct else ""
        lines.append(f"{'  ' * depth[room]}{room}{arrow}")
    return "\n".join(lines) + "\n"


def drawn(page: str) -> str:
    """The page with the drawing that its table asks for."""
    new = drawing(edges(page))
    if not _DRAWING.search(page):
        raise ValueError("DEVELOPERS.md has no place for the drawing of the rooms")
    return _DRAWING.sub(lambda match: match[1] + new + match[3], page)


if __name__ == "__main__":
    PAGE.write_text(drawn(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
    sys.stdout.write("drawn\n")
