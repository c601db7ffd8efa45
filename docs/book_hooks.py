"""Pages of the book that the program itself writes: its commands, its sources, and the pages that Rust shows too."""

import importlib
import re
import subprocess
import sys
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

DOCS = Path(__file__).resolve().parent
PROGRAM = Path(sys.executable).with_name("foilwork")


def said(*words: str) -> str:
    """What the program prints."""
    return subprocess.run([PROGRAM, *words], capture_output=True, text=True, check=True).stdout


def named(help_text: str) -> list[str]:
    """The commands that a help lists."""
    listed = re.search(r"^Commands:\n(.*?)\n\n", help_text, re.MULTILINE | re.DOTALL)
    names = re.findall(r"^  ([a-z][a-z-]*)\b", listed[1] if listed else "", re.MULTILINE)
    return [name for name in names if name != "help"]


def commands() -> str:
    """The help of every command, and of what stands below it."""
    parts = ["# Commands\n\nAs the program prints them; units stand at the end of each.\n"]
    for name in named(said("--help")):
        text = said(name, "--help")
        parts.append(f"## {name}\n\n```text\n{text}```\n")
        parts += [f"### {name} {below}\n\n```text\n{said(name, below, '--help')}```\n" for below in named(text)]
    return "\n".join(parts)


def sources() -> str:
    """Every citation in use."""
    return f"# Sources\n\nEvery source that a number can rest on.\n\n```text\n{said('sources')}```\n"


def misfits() -> str:
    """The page of the colour room that its tests write, with links of Rust as plain names."""
    text = (DOCS.parent / "src" / "colour" / "misfits.md").read_text(encoding="utf-8")
    text = re.sub(r"\[([^\]]+)\]\(crate::[^)]*\)", r"\1", text)
    return "# Where the colour model does not fit\n\n" + re.sub("^# ", "## ", text, flags=re.MULTILINE)


def from_memory_page() -> str:
    """All that was not looked up."""
    # Only while it is read: mkdocs knows this file by its path and not its neighbours.
    sys.path.append(str(DOCS))
    try:
        return str(importlib.import_module("from_memory").page())
    finally:
        sys.path.remove(str(DOCS))


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Adds what is made; mkdocs calls it."""
    made = {
        "commands.md": commands(),
        "sources.md": sources(),
        "misfits.md": misfits(),
        "from_memory.md": from_memory_page(),
    }
    made |= {name: (DOCS / name).read_text(encoding="utf-8") for name in ("why.md", "job.md")}
    for name, text in made.items():
        files.append(File.generated(config, name, content=text))
    return files
