"""Results are values: every class compares, hashes, copies and pickles; no signature hides its shape."""

import ast
import copy
import importlib
import inspect
import pickle
import re
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path

import pytest
import rust_sources
from public_api import CLASSES, PUBLIC, docstrings, run_example

import foilwork
from foilwork import Bounds, FoilworkError, _native
from foilwork._native import ROOMS

STUBS = Path(str(_native.__file__)).with_name("_native")
NO_VALUES = {
    "money.CostTable": "a table that grows",
    "money.CostColumns": "arrays, which do not compare as one",
}


def everything_in(value: object, seen: dict[int, object]) -> Iterator[object]:
    """A value, and what is in its fields and items."""
    if id(value) in seen:
        return
    seen[id(value)] = value
    yield value
    inner: Iterable[object] = ()
    if isinstance(value, list | tuple):
        inner = value
    elif isinstance(value, dict):
        inner = value.values()
    elif type(value) in CLASSES.values():
        inner = [getattr(value, name) for name, got in vars(type(value)).items() if inspect.isdatadescriptor(got)]
    for item in inner:
        yield from everything_in(item, seen)


def shown(text: str) -> list[object]:
    """What the calls in a docstring's example give."""
    kept: list[object] = []

    def keep(function: Callable[..., object], *args: object, **kwargs: object) -> object:
        kept.append(function(*args, **kwargs))
        return kept[-1]

    run_example(text, keep)
    return kept


@cache
def samples() -> dict[type, object]:
    """An instance of every class that some example shows."""
    found: dict[type, object] = {}
    for text in docstrings():
        for value in everything_in(shown(text), {}):
            found.setdefault(type(value), value)
    return found


@pytest.mark.parametrize("name", sorted(CLASSES.keys() - NO_VALUES.keys()))
def test_class_is_a_value(name: str) -> None:
    kind = CLASSES[name]
    assert kind in samples(), "no example makes one"
    value = samples()[kind]
    for same in (pickle.loads(pickle.dumps(value)), copy.copy(value), copy.deepcopy(value)):
        assert type(same) is kind
        assert same == value
        assert hash(same) == hash(value)
        assert repr(same) == repr(value)
    assert value != object()
    field = next((name for name, got in vars(kind).items() if inspect.isdatadescriptor(got) and name[0] != "_"), None)
    if field:
        with pytest.raises(AttributeError):
            setattr(value, field, None)


def test_results_match_by_position() -> None:
    match Bounds(1, 2, 3):
        case Bounds(low, best, high):
            assert (low, best, high) == (1, 2, 3)
    for kind in CLASSES.values():
        for name in getattr(kind, "__match_args__", ()):
            assert inspect.isdatadescriptor(getattr(kind, name))


def test_a_result_turns_into_plain_data() -> None:
    for kind, value in samples().items():
        if hasattr(kind, "__match_args__"):
            data = value.to_dict()  # type: ignore[attr-defined]
            assert tuple(data) == kind.__match_args__
            assert not any(hasattr(item, "to_dict") for item in data.values())


def test_bounds_are_what_a_tuple_is() -> None:
    bounds = Bounds(1.0, 2.0, 4.0)
    low, best, high = bounds
    assert [low, best, high] == list(bounds) == [bounds[0], bounds[1], bounds[-1]]
    assert (len(bounds), bounds == (1.0, 2.0, 4.0), hash(bounds)) == (3, True, hash((1.0, 2.0, 4.0)))
    assert bounds != (1.0, 2.0, 3.0) and bounds != 2.0
    assert {bounds: "kept"}[pickle.loads(pickle.dumps(bounds))] == "kept"
    assert copy.deepcopy(bounds) == bounds and bounds.to_dict() == {"low": 1.0, "best": 2.0, "high": 4.0}
    assert repr(bounds) == "Bounds(low=1.0, best=2.0, high=4.0)"
    assert (bounds.is_exact, Bounds(2, 2, 2).is_exact) == (False, True)
    assert Bounds[float].__origin__ is Bounds  # type: ignore[attr-defined]
    with pytest.raises(FoilworkError, match="bounds"):
        Bounds(2, 1, 3)
    with pytest.raises(IndexError):
        bounds[3]


def test_functions_pickle() -> None:
    for value in PUBLIC.values():
        if inspect.isbuiltin(value):
            assert pickle.loads(pickle.dumps(value)) is value


# --- signatures -----------------------------------------------------------------------------------------------------

# A JSON Schema has any shape.
# So have the parts of a file that is given as a mapping: the reader names every field that is wrong.
# Words of a command line are read by Rust alone, for one file of the package that gives them a shape at once.
SHAPELESS = {
    "__init__.pyi": {"fill_words"},
    "service/_plan.pyi": {"service_schema"},
    "shop/_file.pyi": {"shop_schema"},
}


def shapeless(path: Path) -> Iterator[str]:
    """The definitions of a stub that take or give data without a shape."""
    wanted = re.compile(r"dict\[str, Any\]|tuple\[float, float, float\]|_Bounds\b|staticmethod\(function\)")
    tree = ast.parse(path.read_text(encoding="utf-8"))
    owners: list[ast.Module | ast.ClassDef] = [tree, *(node for node in tree.body if isinstance(node, ast.ClassDef))]
    for owner in owners:
        prefix = f"{owner.name}." if isinstance(owner, ast.ClassDef) else ""
        for node in owner.body:
            if isinstance(node, ast.FunctionDef):
                said = ast.unparse(node.args) + ast.unparse(node.returns or ast.Constant(None))
                if wanted.search(said):
                    yield prefix + node.name


@pytest.mark.parametrize("stub", sorted(path.relative_to(STUBS).as_posix() for path in STUBS.rglob("*.pyi")))
def test_signatures_say_their_shape(stub: str) -> None:
    assert set(shapeless(STUBS / stub)) - SHAPELESS.get(stub, set()) == set()


# --- names ----------------------------------------------------------------------------------------------------------

# Names of Python that Rust does not have, and why.
METHOD = "a method of a Rust type, which Python has no use for alone"
DOOR = "Rust reads and writes no files, and takes no mappings"
ONLY_IN_PYTHON = {
    "colour": {
        "Contrast": "a tuple in Rust",
        "complement": METHOD,
        "lab_to_lch": METHOD,
        "lab_to_srgb": METHOD,
        "lab_to_xyz": METHOD,
        "lch_to_lab": METHOD,
        "level_on_scale": METHOD,
        "read_shades": "the shades of a shop alone",
        "reflectance_to_lab": METHOD,
        "srgb_to_lab": METHOD,
        "swatch": METHOD,
        "xyz_to_lab": METHOD,
    },
    "chart": {"Picture": "a text in Rust"},
    "hair": {"by_caliper": METHOD, "hair_cut": "Rust has Cut"},
    "head": {"profile": METHOD, "step_needs": METHOD},
    "limits": {
        "jurisdictions": "Rust has Jurisdiction::ALL",
        "salt_factor": "Rust has Conversion::of",
    },
    "business": {
        "price_services_csv": "Rust has one reader for both, with the format as an argument",
        "price_services_json": "as price_services_csv",
        "rent_or_wage": METHOD,
        "reorder": METHOD,
        "ProductOrder": "Rust has it in the shop, which Python takes as a mapping",
        "reorder_list": METHOD,
        "trace_quote": METHOD,
        "trace_rent_or_wage": METHOD,
        "trace_reorder": METHOD,
        "trace_services": METHOD,
    },
    "history": {"trace_rebooking": METHOD},
    "mix": {
        "convert_amount": METHOD,
        "mixing_card": METHOD,
    },
    "money": {
        "end_price": METHOD,
        "labour_cost": METHOD,
        "margin_and_markup": METHOD,
        "margin_to_markup": METHOD,
        "markup_to_margin": METHOD,
        "overhead_cost": METHOD,
    },
    "peroxide": {
        "density_interval": "Rust's density gives the interval; Python's gives a number or an array",
        "half_life_days": METHOD,
        "loss_rate_from_half_life": METHOD,
        "molar_volumes": METHOD,
        "permanganate_strength": METHOD,
        "permanganate_titre": METHOD,
        "strength_units": METHOD,
        "strength_ww_percent": METHOD,
    },
    "service": {
        "ServiceFileError": "an exception; Rust returns Problems",
        "plan_file": DOOR,
        "trace_consultation": METHOD,
        "trace_day": METHOD,
        "service_schema": "schema in Rust: at the top of foilwork it needs its room",
    },
    "shop": {"read": DOOR, "read_file": DOOR, "shop_schema": "as service_schema"},
    "source": {"resolve": "the register is asked with an id at run time"},
}
# A room of Python whose names are of another module of Rust as well.
ALSO_OF = {"colour": ["column"], "mix": ["scale"], "service": ["sheet"]}


@pytest.mark.parametrize("room", ROOMS)
def test_python_names_are_the_rust_names(room: str) -> None:
    rust = {name for module in [room, *ALSO_OF.get(room, [])] for name in rust_sources.public_names(module)}
    only = set(importlib.import_module(f"foilwork.{room}").__all__) - rust
    assert only - set(ONLY_IN_PYTHON.get(room, {})) == set()


def test_version_is_said() -> None:
    assert re.fullmatch(r"\d+\.\d+\.\d+", foilwork.__version__)
