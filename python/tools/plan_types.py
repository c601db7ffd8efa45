"""Writes the types of a plan's plain data, ``foilwork/_plan_data.pyi``, from the JSON Schema of a plan.

``Plan.data()`` is typed with them. Run it with ``make stubs`` after the plan changes its shape; ``--check`` changes
nothing and ends with status 1 when the types are not those of the schema.
"""

import argparse
import json
import sys
import textwrap
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
SCHEMA = ROOT / "examples" / "plan.schema.json"
TYPES = ROOT / "python" / "foilwork" / "_plan_data.pyi"

HEAD = '''"""The shape of a plan as plain data, written from its JSON Schema by ``make stubs``; for type checkers alone.

Every name ends with the unit of its numbers. A field that may be missing is ``NotRequired``.
"""

from typing import Literal, NotRequired, TypeAlias, TypedDict, type_check_only
'''

DEFINITIONS: dict[str, Any] = json.loads(SCHEMA.read_text(encoding="utf-8"))["$defs"]
SCALARS = {"string": "str", "boolean": "bool", "integer": "int", "number": "float", "null": "None"}


def is_estimate(shape: dict[str, Any]) -> bool:
    """Whether these are bounds of numbers."""
    bounds = shape.get("properties", {})
    return set(bounds) == {"low", "best", "high"} and {kind(bound) for bound in bounds.values()} == {"float"}


def named(name: str) -> str:
    """The name of a definition: bounds have one, and an alias is private, since the interpreter has none."""
    if name != "PlanData" and is_estimate(DEFINITIONS[name]):
        return "Estimate"
    return name if name == "PlanData" or "properties" in DEFINITIONS[name] else f"_{name}"


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
        items = shape.get("items") or {"anyOf": shape["prefixItems"]}
        return f"list[{kind(items)}]"
    if shape.get("type") == "object":
        inner = shape.get("additionalProperties")
        if is_estimate(shape):
            return "Estimate"
        return f"dict[str, {kind(inner) if isinstance(inner, dict) else 'object'}]"
    return SCALARS.get(shape.get("type", ""), "object")


def union(kinds: Any) -> str:
    """One of several types; words of a choice in one ``Literal``."""
    parts = list(dict.fromkeys(kinds))
    words = [part.removeprefix("Literal[").removesuffix("]") for part in parts if part.startswith("Literal[")]
    others = [part for part in parts if not part.startswith("Literal[")]
    return " | ".join(([f"Literal[{', '.join(words)}]"] if words else []) + others)


def class_of(name: str, shape: dict[str, Any]) -> str:
    """An object as a ``TypedDict``, anything else as an alias."""
    if "properties" not in shape:
        return alias(named(name), kind(shape))
    fields = []
    for field, value in shape["properties"].items():
        said = kind(value)
        needed = field in shape.get("required", ())
        fields.append(f"    {field}: {said if needed else f'NotRequired[{said}]'}\n")
    return f"@type_check_only\nclass {name}(TypedDict):\n" + "".join(fields or ["    pass\n"])


def alias(name: str, said: str) -> str:
    """A name for a type; many words on lines of their own."""
    line = f"{name}: TypeAlias = {said}\n"
    if len(line) <= 120:
        return line
    words = textwrap.fill(said.removeprefix("Literal[").removesuffix("]") + ",", 116, break_on_hyphens=False)
    return f"{name}: TypeAlias = Literal[\n{textwrap.indent(words, '    ')}\n]\n"


def written(schema: dict[str, Any]) -> str:
    """The module."""
    estimate = "@type_check_only\nclass Estimate(TypedDict):\n    low: float\n    best: float\n    high: float\n"
    shapes = {**schema["$defs"], "PlanData": schema}
    # Words first: an alias needs what it names.
    order = sorted(shapes, key=lambda name: ("properties" in shapes[name], "$ref" in json.dumps(shapes[name]), name))
    aliases = "".join(class_of(name, shapes[name]) for name in order if "properties" not in shapes[name])
    objects = [name for name in order if "properties" in shapes[name] and not is_estimate(shapes[name])]
    classes = [class_of(name, shapes[name]) for name in objects]
    return "\n".join([HEAD, aliases, estimate, *classes])


def main() -> int:
    """Writes the types, or checks them."""
    parser = argparse.ArgumentParser(description="Write the types of a plan from its schema.")
    parser.add_argument("--check", action="store_true", help="change nothing; status 1 when the types are not current")
    arguments = parser.parse_args()
    text = written(json.loads(SCHEMA.read_text(encoding="utf-8")))
    if arguments.check:
        current = TYPES.exists() and TYPES.read_text(encoding="utf-8") == text
        if not current:
            print("the types of a plan are not those of its schema (run make stubs)", file=sys.stderr)
        return 0 if current else 1
    TYPES.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
