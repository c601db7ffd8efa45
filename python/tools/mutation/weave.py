"""Writes faults into a copy of the sources: the body of a function once for each of them, behind a switch."""

import re
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path

from .listed import Mutant, Place

TOKEN = re.compile(
    r"""
    //[^\n]* | /\*.*?\*/                              # comments
    | b?r(?P<hashes>\#*)".*?"(?P=hashes)              # raw texts
    | b?"(?:\\.|[^"\\])*"                             # texts
    | b?'(?:\\.[^'\n]*|[^\\'\n])'                     # characters
    | '\w+                                            # lifetimes
    | \w+ | \s+ | .
    """,
    re.DOTALL | re.VERBOSE,
)

# Chosen by the environment when a test runs; `0` is none. With MUTANT_REACHED a function that is entered adds its
# number to that file once. A constant is evaluated by the compiler, where nothing is chosen.
SWITCH = """\
//! Which fault is on.
use std::io::Write;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering::Relaxed};

const UNREAD: u32 = u32::MAX;
const RECORDING: u32 = u32::MAX - 1;
static CHOSEN: AtomicU32 = AtomicU32::new(UNREAD);
static REACHED: [AtomicBool; SITES] = [const { AtomicBool::new(false) }; SITES];

#[inline(always)]
pub(crate) const fn chosen(site: u32) -> u32 {
    core::intrinsics::const_eval_select((site,), compiled, running)
}

const fn compiled(_site: u32) -> u32 {
    0
}

#[inline]
fn running(site: u32) -> u32 {
    let chosen = CHOSEN.load(Relaxed);
    if chosen < RECORDING { chosen } else { slowly(site, chosen) }
}

#[cold]
fn slowly(site: u32, chosen: u32) -> u32 {
    if chosen == UNREAD {
        let number = std::env::var("MUTANT").ok().and_then(|text| text.parse().ok()).unwrap_or(0);
        CHOSEN.store(if std::env::var_os("MUTANT_REACHED").is_some() { RECORDING } else { number }, Relaxed);
        return running(site);
    }
    if !REACHED[site as usize].swap(true, Relaxed) {
        let path = std::env::var_os("MUTANT_REACHED").unwrap();
        let mut file = std::fs::OpenOptions::new().append(true).create(true).open(path).unwrap();
        file.write_all(format!("{site}\\n").as_bytes()).unwrap();
    }
    0
}
"""
HEAD = "#![allow(warnings, internal_features)]\n#![feature(core_intrinsics, const_eval_select)]\n"


class NotFound(Exception):
    """A body that is not where it was said to be."""


@dataclass
class Woven:
    """What was written: the number of every fault and function, and the lines at which a fault stands."""

    numbers: dict[int, Mutant] = field(default_factory=dict)
    site_of: dict[int, int] = field(default_factory=dict)
    # For each file: first line, last line, number of the fault (0 for the unchanged body), number of the function.
    lines: dict[str, list[tuple[int, int, int, int]]] = field(default_factory=lambda: defaultdict(list))
    sites: int = 0

    def at(self, file: str, line: int) -> tuple[int, int] | None:
        """Fault and function at a line."""
        return next(((n, site) for first, last, n, site in self.lines[file] if first <= line <= last), None)


def offset(starts: list[int], place: Place) -> int:
    """Characters before a place."""
    return starts[place[0] - 1] + place[1] - 1


def line_starts(text: str) -> list[int]:
    """Where each line begins."""
    return [0] + [m.end() for m in re.finditer("\n", text)]


def body(text: str, start: int, end: int) -> tuple[int, int]:
    """The places after the opening and at the closing brace of the function that stands between two places."""
    depth, named, opened, at = 0, False, -1, start
    while at < end:
        match = TOKEN.match(text, at)
        assert match, "every character is a token"
        token = match.group()
        if token == "fn":
            named = True
        elif token in ("(", "[", "{"):
            if token == "{" and depth == 0 and named and opened < 0:
                opened = match.end()
            depth += 1
        elif token in (")", "]", "}"):
            depth -= 1
            if depth == 0 and opened >= 0 and token == "}":
                if match.end() != end:
                    raise NotFound(text[start:end][:80])
                return opened, at
        at = match.end()
    raise NotFound(text[start:end][:80])


def outermost(mutant: Mutant, all_of: list[Mutant]) -> tuple[Place, Place]:
    """The function around a fault that is in no other."""
    assert mutant.function
    around = mutant.function
    for other in all_of:
        if other.function and other.function[0] <= around[0] and around[1] <= other.function[1]:
            around = other.function
    return around


def weave(source: Path, copy: Path, numbers: dict[int, Mutant], every: list[Mutant]) -> Woven:
    """Writes the faults into the copy; files without one are as they were."""
    woven = Woven(numbers=numbers)
    of_file: dict[str, dict[tuple[Place, Place], list[int]]] = defaultdict(lambda: defaultdict(list))
    listed: dict[str, list[Mutant]] = defaultdict(list)
    for mutant in every:
        listed[mutant.file].append(mutant)
    for number, mutant in numbers.items():
        of_file[mutant.file][outermost(mutant, listed[mutant.file])].append(number)
    for file, functions in of_file.items():
        text = (source / file).read_text(encoding="utf-8")
        starts, out, copied = line_starts(text), "", 0
        for function, own in sorted(functions.items()):
            opened, closed = body(text, offset(starts, function[0]), offset(starts, function[1]))
            out += text[copied:opened]
            out += f"\nmatch crate::switch::chosen({woven.sites}) {{\n"
            for number in [*own, 0]:
                inside = text[opened:closed]
                if number:
                    mutant = numbers[number]
                    begin, end = (offset(starts, place) - opened for place in (mutant.start, mutant.end))
                    inside = inside[:begin] + f" {mutant.replacement} " + inside[end:]
                    woven.site_of[number] = woven.sites
                first = out.count("\n") + 1
                out += f"{number or '_'} => {{\n{inside}\n}}\n"
                woven.lines[file].append((first, out.count("\n"), number, woven.sites))
            out += "}\n"
            copied = closed
            woven.sites += 1
        write(copy / file, out + text[copied:])
    for path in (source / "src").rglob("*.rs"):
        file = path.relative_to(source).as_posix()
        if file not in of_file and file != "src/lib.rs":
            write(copy / file, path.read_text(encoding="utf-8"))
    root = (source / "src/lib.rs").read_text(encoding="utf-8")
    write(copy / "src/lib.rs", HEAD + root + "\nmod switch;\n")
    write(copy / "src/switch.rs", SWITCH.replace("SITES", str(max(woven.sites, 1))))
    return woven


def write(path: Path, text: str) -> None:
    """Only what differs, so that nothing is built twice."""
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
