"""The page of all that was not looked up: sources, what rests on them, rows of the limits table, figures in passing."""

import csv
import re
from pathlib import Path

SRC = Path(__file__).resolve().parents[1] / "src"
DECLARED = re.compile(r'(?:pub const )?(\w+) = "([a-z0-9-]+)", FromMemory,\s*"((?:[^"\\]|\\.)*)"', re.DOTALL)
NOTE = re.compile(r'^(?:pub )?const (\w+): &str =\s*"((?:[^"\\]|\\.)*)"', re.MULTILINE | re.DOTALL)
ITEM = re.compile(r"^\s*(?:pub(?:\([^)]*\))? )?(?:const fn|fn|const|static|struct|enum) (\w+)", re.MULTILINE)


def plain(text: str) -> str:
    """Text of a Rust comment or literal as one line of a page."""
    text = re.sub(r"\\\s*\n\s*", "", text)
    text = re.sub(r"\[([^\]]+)\]\(crate::[^)]*\)", r"\1", text)
    return re.sub(r"\s+", " ", text).replace("|", "\\|").strip()


def files() -> list[tuple[str, str]]:
    """Every file of the core as ``room/file.rs``, with its text."""
    return [(path.relative_to(SRC).as_posix(), path.read_text(encoding="utf-8")) for path in sorted(SRC.rglob("*.rs"))]


def rests_on(name: str, sources: list[tuple[str, str]]) -> list[str]:
    """What names a citation: the item whose documentation or whose code does."""
    found = []
    for path, text in sources:
        if path.startswith("source/"):
            continue
        for mention in re.finditer(rf"\b{name}\b", text):
            line = text[text.rfind("\n", 0, mention.start()) + 1 : mention.start()]
            if line.lstrip().startswith("use "):
                continue
            # A comment stands before its item, code within it.
            items = [item for item in ITEM.finditer(text) if item.start() < mention.start()]
            after = ITEM.search(text, mention.end())
            item = after if line.lstrip().startswith("//") and after else (items[-1] if items else None)
            found.append(f"`{path}`" + (f", `{item[1]}`" if item else ""))
    return sorted(set(found))


def tables_with(source: str) -> list[str]:
    """The data files of the core that name a source by its id."""
    named = re.compile(rf"(?<![\w-]){source}(?![\w-])")
    paths = (path for path in sorted(SRC.rglob("*.csv")) if named.search(path.read_text(encoding="utf-8")))
    return [f"rows of `{path.relative_to(SRC).as_posix()}`" for path in paths]


def page() -> str:
    sources = files()
    declared = [match for path, text in sources if path.startswith("source/") for match in DECLARED.finditer(text)]
    lines = [
        "# From memory",
        "",
        "What was remembered and not looked up. It is marked so wherever it is shown, and no finding turns green on",
        "it. Look it up before you rely on it.",
        "",
        "## Sources that were not seen",
        "",
        "| source | what it is | what rests on it |",
        "| --- | --- | --- |",
    ]
    for match in declared:
        resting = "; ".join(rests_on(match[1], sources) + tables_with(match[2]))
        lines.append(f"| {match[2]} | {plain(match[3])} | {resting} |")
    lines += [
        "",
        "## Limits",
        "",
        "| row | where | substance | use | figure | rule | what was seen |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    with (SRC / "limits" / "data" / "limits.csv").open(encoding="utf-8", newline="") as table:
        for row in csv.DictReader(table):
            if row["how"] != "from-memory" and "from memory" not in row["cross_check"]:
                continue
            figure = f"{row['comparison']} {row['figure']} {row['unit']}" if row["figure"] else "none"
            cells = [row["id"], row["issued_by"], row["substance"], row["use_as_worded"], figure, row["rule"]]
            lines.append("| " + " | ".join(plain(cell) for cell in [*cells, row["cross_check"]]) + " |")
    lines += ["", "## In the code", "", "Figures and rules whose documentation says so.", ""]
    for path, text in sources:
        # Not where the words for it are defined, and not what the program says about it.
        if path.startswith(("source/", "limits/", "finding/", "cli/")):
            continue
        for comment in re.finditer(r"(?:^[ \t]*//[/!]?.*\n)+", text, re.MULTILINE):
            said = re.sub(r"^[ \t]*//[/!]? ?", "", comment[0], flags=re.MULTILINE)
            said = plain(re.sub(r"^```.*?^```|^# \w+$", "", said, flags=re.MULTILINE | re.DOTALL))
            for sentence in re.split(r"(?<=[.;]) (?=[A-Z`\[])", said):
                if "from memory" in sentence:
                    lines.append(f"- `{path}`: {sentence}")
        lines += [
            f"- `{path}`, `{note[1]}`: {plain(note[2])}" for note in NOTE.finditer(text) if "from memory" in note[2]
        ]
    return "\n".join(lines) + "\n"
