"""Writes the classes of a plan, ``foilwork/planned``, and the words of choices, ``foilwork/_words.pyi``.

The getters of ``Plan`` too: their list in ``python/src/service/plan.rs``, and their signatures in its stub. All come
from the JSON Schema of a plan, but for the words that functions take and no plan holds: those are read where
Rust declares them (``choice!``). Run it with ``make stubs`` after one of them changes; ``--check`` changes nothing and
ends with status 1 when the classes are not those of the schema.
"""

import argparse
import json
import re
import sys
import textwrap
from collections.abc import Iterable
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
SCHEMA = ROOT / "examples" / "plan.schema.json"
HISTORY = ROOT / "examples" / "history.schema.json"
PACKAGE = ROOT / "python" / "foilwork"
GETTERS = ROOT / "python" / "src" / "service" / "plan.rs"
STUB = PACKAGE / "_native" / "service" / "_plan.pyi"

WORDS = '''"""The words of choices, in a plan and of functions, by ``make stubs``; for type checkers alone."""

from typing import Literal, TypeAlias

'''

CLASSES = '''"""{what}, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

'''

WHOLE = '''"""What a plan is made of, written from its JSON Schema by ``make stubs``: ``plan.mixes[0].bowls``.

The objects are frozen, compare, hash, pickle, match and turn ``to_dict()``. Every name ends with the unit of its
numbers; what is estimated is ``foilwork.Bounds``.
"""

from __future__ import annotations

'''

# The files: what each holds, and the parts of a plan, or a class, whose classes stand in it. A class of several parts
# stands in the first of them. What no part names belongs to the bowls: their cards are made of a plan.
FILES = {
    "hair": ("The hair and the country's habits in a plan", ("hair", "habits")),
    "bowls": ("Bowls, their cards, and their order in a plan", ("mixes", "order", "chair", "first_steps")),
    "day": ("Hands, looks and basin in a plan", ("day",)),
    "colour": ("Colours in a plan", ("colour", "contrasts")),
    "lift": ("Lift and strengths in a plan", ("lift", "strengths", "together")),
    "sections": ("What the sections of the head take in a plan", ("SectionPlan",)),
    "head": ("The head in a plan", ("head",)),
    "stock": ("What a plan takes from the shelf", ("stock",)),
    "money": ("Cost and price in a plan", ("money", "booking")),
    "consultation": ("A consultation, come to its decision", ("consulted",)),
    "history": ("What is kept of services, and what it teaches", ()),
    "notes": ("What a plan says beside its numbers", ("cautions", "defaults", "not_computed", "stated_not_used")),
}

# What is made of a plan, not a part of it: the class, and its file.
BESIDE = {"ConsultationPlan": "consultation"}
# What is made of records of many services.
BESIDE |= dict.fromkeys(["KeptRecord", "Summary", "Lessons", "Rebooking", "HomeCare"], "history")

# Where a class stands that is imported by name.
HOMES = {
    "dataclass": "dataclasses",
    "Bounds": "foilwork._native",
    "Finding": "foilwork._native.finding",
    "Reason": "foilwork._native.finding",
    "Money": "foilwork._native.money",
    "Citation": "foilwork._native.source",
    "Record": "foilwork._record",
}


def definitions() -> dict[str, Any]:
    """Of a plan and of what is made of records."""
    plan, history = (json.loads(path.read_text(encoding="utf-8")) for path in (SCHEMA, HISTORY))
    kept = {key: value for key, value in history.items() if key != "$defs"}
    return {**plan["$defs"], **history["$defs"], "KeptRecord": kept}


DEFINITIONS: dict[str, Any] = definitions()
SCALARS = {"string": "str", "boolean": "bool", "integer": "int", "number": "float", "null": "None"}
# Classes that foilwork has in a room already.
KNOWN = {"Citation", "Finding", "Money", "Reason"}


# Choices that functions take and no plan holds. Of an amount the printed words count too, since recipes have them.
TAKEN = {"Audience", "Booster", "Denominator", "Form", "Hazard", "MolarVolume", "Objective", "Purpose", "Reader"}
TAKEN |= {"DiameterMethod", "Group", "Rest", "Scale", "SolutionKind", "StrengthUnit", "Topic", "Toward", "Unit"}
TAKEN |= {"ObservedStage", "TrainingUnit", "Uptake"}
_CHOICE = re.compile(r"^    (?P<name>\w+): \"[^\"]+\" \{\n(?P<body>.*?)^    \}$", re.M | re.S)
_CODE = re.compile(r"^        [A-Z]\w* = \"(?P<code>[^\"]+)\"(?: => \"(?P<words>[^\"]+)\")?", re.M)


def declared() -> dict[str, list[str]]:
    """The codes of every choice that Rust declares, and the words of ``Unit``."""
    texts = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "src").rglob("*.rs"))]
    found = [match for text in texts if "choice! {" in text for match in _CHOICE.finditer(text)]
    texts_of = {match["name"]: _CODE.findall(match["body"]) for match in found}
    printed = [words for _, words in texts_of["Unit"] if words]
    codes = {name: [code for code, _ in pairs] for name, pairs in texts_of.items()}
    return {**codes, "Unit": codes["Unit"] + printed}


def is_estimate(shape: dict[str, Any]) -> bool:
    """Whether these are bounds of numbers."""
    bounds = shape.get("properties", {})
    return set(bounds) == {"low", "best", "high"} and {kind(bound) for bound in bounds.values()} <= {"float", "int"}


def named(name: str) -> str:
    """The name of a definition, private for a choice, since the interpreter has none; the type itself for the rest."""
    if is_estimate(DEFINITIONS[name]):
        return f"Bounds[{kind(DEFINITIONS[name]['properties']['best'])}]"
    if "properties" in DEFINITIONS[name]:
        return name
    said = kind(DEFINITIONS[name])
    return f"_{name}" if said.startswith("Literal[") and "]" not in said[:-1] else said


def kind(shape: dict[str, Any]) -> str:
    """The type of a value."""
    if "$ref" in shape:
        return named(str(shape["$ref"]).rsplit("/", 1)[1])
    if "const" in shape:
        return f"Literal[{json.dumps(shape['const'])}]"
    if "enum" in shape:
        return f"Literal[{', '.join(map(json.dumps, shape['enum']))}]"
    for key in ("oneOf", "anyOf"):
        if key in shape:
            return union(kind(one) for one in shape[key])
    if isinstance(shape.get("type"), list):
        return union(kind({**shape, "type": one}) for one in shape["type"])
    if shape.get("type") == "array":
        if "prefixItems" in shape:
            return f"tuple[{', '.join(map(kind, shape['prefixItems']))}]"
        return f"tuple[{kind(shape['items'])}, ...]"
    if shape.get("type") == "object":
        return f"Bounds[{kind(shape['properties']['best'])}]" if is_estimate(shape) else "dict[str, object]"
    return SCALARS.get(shape.get("type", ""), "object")


def union(kinds: Iterable[str]) -> str:
    """One of several types; words of a choice in one ``Literal``."""
    parts = list(dict.fromkeys(kinds))
    words = [part.removeprefix("Literal[").removesuffix("]") for part in parts if part.startswith("Literal[")]
    others = [part for part in parts if not part.startswith("Literal[")]
    return " | ".join(([f"Literal[{', '.join(words)}]"] if words else []) + others)


def class_of(name: str, shape: dict[str, Any]) -> str:
    """An object as a frozen class."""
    said = "".join(f"    {field}: {kind(value)}\n" for field, value in shape["properties"].items())
    docs = "".join(f'        "{field}": {quoted(value, field)},\n' for field, value in shape["properties"].items())
    doc = textwrap.fill(f'"""{first(shape, name)}', 116).replace("\n", "\n    ")
    close = '"""' if "\n" not in doc else '\n    """'
    slots = f"    __slots__ = {{\n{docs}    }}\n"
    return f"@dataclass(frozen=True)\nclass {name}(Record):\n    {doc}{close}\n\n{slots}{said}"


def first(shape: dict[str, Any], name: str) -> str:
    """What a definition or a field is, in its first paragraph."""
    said = str(shape.get("description", name)).split("\n\n")[0].replace("\n", " ")
    # A link of the Rust documentation is its words alone here.
    return re.sub(r"\[([^\]]+)\](?:\([^)]*\))?", r"\1", said)


def quoted(shape: dict[str, Any], name: str) -> str:
    """The same as a text of Python, on lines that fit."""
    whole = json.dumps(first(shape, name), ensure_ascii=False)
    if len(f'        "{name}": {whole},') <= 120:
        return whole
    lines = [first(shape, name)] if len(whole) <= 108 else textwrap.wrap(first(shape, name), 105)
    said = [json.dumps(line + (" " if line is not lines[-1] else ""), ensure_ascii=False) for line in lines]
    return "(\n" + "".join(f"            {line}\n" for line in said) + "        )"


def alias(name: str, said: str) -> str:
    """A name for a type; many words on lines of their own."""
    line = f"{name}: TypeAlias = {said}\n"
    if len(line) <= 120:
        return line
    words = said.removeprefix("Literal[").removesuffix("]").split(", ")
    return f"{name}: TypeAlias = Literal[\n" + "".join(f"    {word},\n" for word in words) + "]\n"


def uses(name: str, shapes: dict[str, Any]) -> set[str]:
    """The definitions that a definition names."""
    return set(re.findall(r'"#/\$defs/(\w+)"', json.dumps(shapes[name])))


def file_of_each(schema: dict[str, Any], order: list[str]) -> dict[str, str]:
    """The file in which every class stands."""
    found: dict[str, str] = {}

    def visit(name: str, file: str) -> None:
        if name not in found:
            found[name] = file
            for used in uses(name, schema["$defs"]):
                visit(used, file)

    for file, (_, parts) in FILES.items():
        for part in parts:
            shape = schema["properties"].get(part, {"$ref": f"#/$defs/{part}"})
            for name in re.findall(r'"#/\$defs/(\w+)"', json.dumps(shape)):
                visit(name, file)
    for name, file in BESIDE.items():
        visit(name, file)
    for name in order:
        visit(name, "bowls")
    return {name: found[name] for name in order}


def imports(text: str, homes: dict[str, str]) -> str:
    """What a file takes from others; the words of choices for type checkers alone."""
    by_home: dict[str, list[str]] = {}
    # What a field says of hair is no use of the class.
    code = re.sub(r'"[^"\n]*"', "", text)
    for name in sorted(homes):
        if re.search(rf"\b{name}\b", code):
            by_home.setdefault(homes[name], []).append(name)
    words = by_home.pop("foilwork._words", [])
    if words:
        by_home["typing"] = ["TYPE_CHECKING"]
    lines = [one_import(home, by_home[home]) for home in sorted(by_home)]
    standard = [line for line in lines if line.startswith(("from dataclasses", "from typing"))]
    ours = [line for line in lines if line not in standard]
    said = "".join(standard) + ("\n" if standard and ours else "") + "".join(ours)
    if words:
        said += "\nif TYPE_CHECKING:\n" + textwrap.indent(one_import("foilwork._words", words, 116), "    ")
    return said


def one_import(home: str, names: list[str], width: int = 120) -> str:
    """One statement, on lines of its own where it is long."""
    names = sorted(names, key=str.lower)
    line = f"from {home} import {', '.join(names)}\n"
    return line if len(line) <= width else f"from {home} import (\n" + "".join(f"    {one},\n" for one in names) + ")\n"


def listed(names: list[str]) -> str:
    """The list of public names."""
    line = f"__all__ = [{', '.join(json.dumps(name) for name in sorted(names))}]\n"
    return line if len(line) <= 121 else "__all__ = [\n" + "".join(f'    "{name}",\n' for name in sorted(names)) + "]\n"


def written(schema: dict[str, Any]) -> dict[Path, str]:
    """The files, whole."""
    shapes = {**schema["$defs"], "PlanData": {key: value for key, value in schema.items() if key != "$defs"}}
    words = [name for name in sorted(schema["$defs"]) if named(name) == f"_{name}"]
    # What is made of others comes after them.
    order: list[str] = []

    def place(name: str) -> None:
        if "properties" in shapes[name] and name not in order and name not in KNOWN and not is_estimate(shapes[name]):
            for used in sorted(uses(name, shapes) - {name}):
                place(used)
            order.append(name)

    for name in sorted(schema["$defs"]):
        place(name)
    files = file_of_each(schema, order)
    homes = {**HOMES, **{named(name): "foilwork._words" for name in words}}
    made = {}
    for file, (what, _) in FILES.items():
        own = [name for name in order if files[name] == file]
        classes = "\n\n".join(class_of(name, shapes[name]) for name in own)
        others = {name: f"foilwork.planned.{files[name]}" for name in order if files[name] != file}
        taken = imports(classes, {**homes, **others})
        made[PACKAGE / "planned" / f"{file}.py"] = f"{CLASSES.format(what=what)}{taken}\n{listed(own)}\n\n{classes}"
    whole = class_of("PlanData", shapes["PlanData"])
    # The package names every class, whether the plan itself does or one of its parts.
    taken = imports(whole + " ".join(order), {**homes, **{name: f"foilwork.planned.{files[name]}" for name in order}})
    made[PACKAGE / "planned" / "__init__.py"] = f"{WHOLE}{taken}\n{listed([*order, 'PlanData'])}\n\n{whole}"
    used = {name for name in KNOWN if any(re.search(rf"\b{name}\b", text) for text in made.values())}
    assert used == KNOWN, f"no longer in a plan: {KNOWN - used}"
    choices = declared()
    said = {name: kind(shapes[name]) for name in words}
    said |= {name: f"Literal[{', '.join(map(json.dumps, choices[name]))}]" for name in sorted(TAKEN - set(words))}
    made[PACKAGE / "_words.pyi"] = WORDS + "".join(alias(f"_{name}", said[name]) for name in sorted(said))
    return {**made, **getters(schema)}


def getters(schema: dict[str, Any]) -> dict[Path, str]:
    """The getters of ``Plan``, in Rust and in its stub."""
    parts = [(field, first(shape, field), kind(shape)) for field, shape in schema["properties"].items()]
    listed_parts = ",\n".join(f"    /// {doc}\n    {field}" for field, doc, _ in parts)
    rust, stub = (path.read_text(encoding="utf-8") for path in (GETTERS, STUB))
    signatures = ""
    for field, doc, shown in parts:
        signatures += f'    @property\n    def {field}(self) -> {said_there(shown)}:\n        """{doc}"""\n'
    known = r"(?<=\n)    @property\n.*?(?=    def text)"
    return {
        GETTERS: re.sub(r"(?<=\nparts! \{\n).*?(?=;\n)", lambda _: listed_parts, rust, flags=re.S),
        STUB: re.sub(known, lambda _: signatures, stub, count=1, flags=re.S),
    }


def said_there(said: str) -> str:
    """A type of ``planned`` as its stub names it from outside."""
    said = re.sub(r"\b_(?=[A-Z])", "_words._", said)
    classes = {name for name, shape in DEFINITIONS.items() if "properties" in shape} - KNOWN
    return re.sub(r"(?<![.\w])[A-Z]\w+", lambda name: f"planned.{name[0]}" if name[0] in classes else name[0], said)


def main() -> int:
    """Writes the classes, or checks them."""
    parser = argparse.ArgumentParser(description="Write the classes of a plan from its schema.")
    parser.add_argument("--check", action="store_true", help="change nothing; status 1 when they are not current")
    arguments = parser.parse_args()
    schema = {**json.loads(SCHEMA.read_text(encoding="utf-8")), "$defs": DEFINITIONS}
    for path, text in written(schema).items():
        if not arguments.check:
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
        elif not path.exists() or path.read_text(encoding="utf-8") != text:
            print("the classes of a plan are not those of its schema (run make stubs)", file=sys.stderr)
            return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
