"""A plan as objects: the same as its plain data, frozen, hashable, and typed after its schema."""

import copy
import json
import pickle
from collections.abc import Iterator
from dataclasses import FrozenInstanceError, fields, is_dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import foilwork
from foilwork import Bounds, planned
from foilwork._record import Record

ROOT = Path(__file__).resolve().parents[2]
FILES = sorted(path for path in (ROOT / "examples").iterdir() if path.name in {"soft-gradient.toml", "lowlights.json"})
# A default has a value of any kind, and that is a mapping.
NOT_HASHABLE = {"DefaultUsed", "PlanData"}


@cache
def plan_of(path: Path) -> foilwork.Plan:
    return foilwork.plan_file(path)


def plain(value: object) -> Any:
    """An object as the plan's JSON has it."""
    if isinstance(value, foilwork.money.Money):
        return {"amount": str(value.amount), "currency": value.currency}
    if isinstance(value, foilwork.source.Citation):
        return {"id": value.id, "text": value.text, "consulted": value.consulted}
    if isinstance(value, tuple | list):
        return [plain(item) for item in value]
    if is_dataclass(value):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    names = getattr(value, "__match_args__", None)
    return {name: plain(getattr(value, name)) for name in names} if names else value


def without_none(data: Any) -> Any:
    """JSON leaves some fields out; here they are None."""
    if isinstance(data, dict):
        return {key: without_none(value) for key, value in data.items() if value is not None}
    return [without_none(item) for item in data] if isinstance(data, list) else data


def records(value: object) -> Iterator[Record]:
    """Every object of a plan."""
    if isinstance(value, tuple | list):
        for item in value:
            yield from records(item)
    elif isinstance(value, Record):
        yield value
        for field in fields(value):  # type: ignore[arg-type]
            yield from records(getattr(value, field.name))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_the_objects_say_what_the_json_says(path: Path) -> None:
    plan = plan_of(path)
    data = json.loads(plan.json())
    assert data == plan.to_dict()
    names = [field.name for field in fields(planned.PlanData)]
    assert set(data) <= set(names)
    for name in names:
        assert without_none(plain(getattr(plan, name))) == without_none(data.get(name)), name


def test_every_part_is_a_value() -> None:
    seen = set()
    for path in FILES:
        plan = plan_of(path)
        for value in records([plan.cards(), *(getattr(plan, field.name) for field in fields(planned.PlanData))]):
            kind = type(value).__name__
            seen.add(kind)
            assert value == copy.copy(value) == pickle.loads(pickle.dumps(value))
            assert kind in NOT_HASHABLE or hash(value) == hash(copy.deepcopy(value))
            json.dumps(value.to_dict(), default=str)
            with pytest.raises(FrozenInstanceError):
                setattr(value, fields(value)[0].name, None)  # type: ignore[arg-type]
    assert {"Bowl", "Mix", "Step", "BowlCard", "CardClock", "SectionColour"} <= seen <= set(planned.__all__)


def test_no_class_is_bounds_by_another_name() -> None:
    for name in planned.__all__:
        assert {field.name for field in fields(getattr(planned, name))} != {"low", "best", "high"}, name


def test_an_estimate_is_bounds() -> None:
    mix = plan_of(ROOT / "examples" / "soft-gradient.toml").mixes[0]
    assert isinstance(mix.on_hair_ww_percent, Bounds)
    match mix.bowls[0].parts[0]:
        case planned.WeighedPart(product=product, weigh_g=grams):
            assert (product, grams) == ("Foam Line powder", 15.0)


def test_a_shop_beside_a_file_with_one_inside_is_refused_in_both_forms() -> None:
    shop = foilwork.shop.read({"currency": "EUR"})
    for file in ('format = 1\nshop = { currency = "CHF" }', {"format": 1, "shop": {"currency": "CHF"}}):
        with pytest.raises(foilwork.ServiceFileError) as refused:
            foilwork.plan(file, shop=shop)
        [(_, field, message)] = refused.value.problems
        assert field == "shop"
        assert message.startswith("a shop is given beside the file, and the file has one inside: leave one of them out")


def test_a_shop_beside_a_mapping_takes_the_place_of_its_path() -> None:
    shop = foilwork.shop.read({"currency": "EUR"})
    with pytest.raises(foilwork.ServiceFileError) as refused:
        foilwork.plan({"format": 1, "shop_file": "shop.toml"}, shop=shop)
    assert not any("shop" in field for _, field, _ in refused.value.problems)


def test_one_level_seen_that_is_no_list_says_so() -> None:
    with pytest.raises(TypeError, match="expected a list, not a text"):
        foilwork.plan_file(ROOT / "examples" / "soft-gradient.toml", seen="nape=7@30")


def test_a_file_is_read_as_what_is_in_it(tmp_path: Path) -> None:
    (tmp_path / "juniper_and_tide.json").write_text((ROOT / "examples" / "juniper_and_tide.toml").read_text("utf-8"))
    service = (ROOT / "examples" / "gloss-refresh.toml").read_text("utf-8")
    path = tmp_path / "service.json"
    path.write_text(service.replace("juniper_and_tide.toml", "juniper_and_tide.json"))
    assert foilwork.plan_file(path) == foilwork.plan_file(ROOT / "examples" / "gloss-refresh.toml")
    other = tmp_path / "lowlights.txt"
    other.write_text((ROOT / "examples" / "lowlights.json").read_text("utf-8"))
    assert foilwork.plan_file(other).title == plan_of(ROOT / "examples" / "lowlights.json").title
