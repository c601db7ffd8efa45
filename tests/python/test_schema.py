"""The JSON Schema of a service file, judged by an independent validator (the ``jsonschema`` package).

What only foilwork knows (names that must exist, days of the calendar, sums) is no business of a schema: those broken
files must pass here and are refused by :func:`foilwork.plan_file`.
"""

import datetime
import json
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import foilwork

EXAMPLES = Path(__file__).parents[2] / "examples"
SCHEMA: dict[str, Any] = json.loads((EXAMPLES / "service.schema.json").read_text(encoding="utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
FINE = ["gloss-refresh.toml", "grey-blend.toml", "lowlights.json", "soft-gradient.toml", "staged-lightening.toml"]

# What a schema can know, with the place at which the validator sees it; "" is the file as a whole.
SEEN = {
    "empty.toml": "",
    "empty-title.toml": "service.title",
    "field-misspelt-optional.toml": "section.0",
    "field-misspelt.json": "shop.developer.0",
    "field-misspelt.toml": "section.0",
    "field-missing.toml": "service",
    "field-unknown.toml": "analysis",
    "format-2.toml": "format",
    "integer-wanted.toml": "section.0.foils",
    "choice-misspelt.toml": "section.0.technique",
    "choice-unknown.toml": "section.0.zone",
    "bom-and-crlf.toml": "section.0.develop_min",
    "list-at-top.json": "",
    "null-required.json": "analysis.natural_level",
    "number-in-quotes.json": "section.0.share_percent",
    "price-as-number.toml": "shop.developer.0.price",
    "price-null-and-type.json": "shop.developer.0.price",
    "range-level.toml": "analysis.natural_level",
    "range-negative.toml": "section.0.mix_g",
    "range-share.toml": "section.0.share_percent",
    "sections-empty.toml": "section",
    "sections-missing.toml": "",
    "table-missing.toml": "",
    "text-too-long.toml": "section.0.name",
    "type-flag-in-quotes.toml": "shop.lightener.0.on_scalp",
    "type-list-wanted.toml": "analysis.history",
    "type-number-in-quotes.toml": "analysis.natural_level",
    "type-table-wanted.toml": "section",
    "currency-unknown.toml": "shop.currency",
    "date-offset.toml": "service.start",
    "date-words.toml": "service.start",
    "developer-and-strength.toml": "section.0",
    "developer-outside-shop.toml": "",
    "head-capital.toml": "",
    "hue-unknown.toml": "shop.shade.0.tones.0",
    "jurisdiction-unknown.toml": "service.jurisdiction",
    "margin-and-markup.toml": "shop.terms",
    "mix-of-words.toml": "root_shadow.mix.0",
    "name-with-blank.toml": "shop.lightener.0.name",
    "name-with-plus.toml": "shop.shade.0.code",
    "no-product.toml": "section.0",
    "not-finite.toml": "section.0.mix_g",
    "price-comma.toml": "shop.developer.0.price",
    "price-grouped.toml": "shop.developer.0.price",
    "price-negative.toml": "shop.developer.0.price",
    "product-and-mix.toml": "section.0",
    "ratio-three-parts.toml": "shop.lightener.0.ratio",
    "ratio-words.toml": "shop.lightener.0.ratio",
    "root-shadow-list.toml": "root_shadow",
    "sections-plural.toml": "",
    "shop-twice.toml": "",
    "strength-bare-percent.toml": "shop.developer.0.strength",
    "strength-no-unit.toml": "shop.developer.0.strength",
    "target-and-mix.toml": "root_shadow",
    "time-only.toml": "service.start",
    "tone-natural.toml": "shop.shade.0.tones.0",
    "tone-of-charts.toml": "shop.shade.0.tones.0",
}

# Mistakes of many kinds: the schema sees some of them.
PARTLY = {"many.toml"}


def plain(value: Any) -> Any:
    """Dates as the text that the schema asks for."""
    if isinstance(value, dict):
        return {key: plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [plain(inner) for inner in value]
    if isinstance(value, datetime.date | datetime.time):
        return value.isoformat()
    return value


def read(path: Path) -> Any:
    """The file by Python's own readers; a ``ValueError`` for what is no TOML or JSON."""
    text = path.read_text(encoding="utf-8-sig")
    return json.loads(text) if path.suffix == ".json" else plain(tomllib.loads(text))


def places(error: jsonschema.ValidationError) -> set[str]:
    """Where a file is wrong; of a table that may be left out, inside the table and not that it is no ``null``."""
    if error.validator == "anyOf":
        return {place for inner in error.context or [] if inner.relative_schema_path[0] == 0 for place in places(inner)}
    return {".".join(str(step) for step in error.absolute_path)}


def broken() -> list[str]:
    names = sorted(path.name for path in (EXAMPLES / "broken").iterdir() if path.suffix in {".toml", ".json"})
    assert len(names) >= 36
    return names


def is_syntax(name: str) -> bool:
    message = (EXAMPLES / "broken" / f"{name}.expected").read_text(encoding="utf-8")
    return ": not valid " in message


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_the_module_gives_the_same_schema() -> None:
    assert foilwork.service_schema() == SCHEMA


@pytest.mark.parametrize("name", FINE)
def test_examples_are_valid(name: str) -> None:
    assert list(VALIDATOR.iter_errors(read(EXAMPLES / name))) == []


@pytest.mark.parametrize("name", sorted(SEEN))
def test_the_schema_refuses_what_it_can_know(name: str) -> None:
    errors = list(VALIDATOR.iter_errors(read(EXAMPLES / "broken" / name)))
    assert {place for error in errors for place in places(error)} == {SEEN[name]}


def test_the_schema_refuses_some_of_many_mistakes() -> None:
    errors = list(VALIDATOR.iter_errors(read(EXAMPLES / "broken" / "many.toml")))
    assert len(errors) >= 5


@pytest.mark.parametrize("name", broken())
def test_every_other_broken_file_is_refused_by_what_a_schema_cannot_know(name: str) -> None:
    if name in SEEN or name in PARTLY:
        return
    path = EXAMPLES / "broken" / name
    if is_syntax(name):
        with pytest.raises(ValueError):
            read(path)
        return
    # Python's reader of JSON takes the last of two equal keys.
    value = read(path)
    assert list(VALIDATOR.iter_errors(value)) == []
    with pytest.raises(ValueError, match=r"line \d+: "):
        foilwork.plan_file(path)


@pytest.mark.parametrize("name", broken())
def test_python_raises_the_text_of_the_command(name: str) -> None:
    path = EXAMPLES / "broken" / name
    printed = (EXAMPLES / "broken" / f"{name}.expected").read_text(encoding="utf-8")
    with pytest.raises(ValueError) as caught:
        foilwork.plan_file(path)
    assert "".join(f"error: {name}: {line}\n" for line in str(caught.value).splitlines()) == printed
