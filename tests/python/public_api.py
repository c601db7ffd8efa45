"""What the Python module offers, and the calls that its own examples show."""

import ast
import doctest
import importlib
import inspect
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

from foilwork import FoilworkError
from foilwork._native import ROOMS

PUBLIC = {
    f"{room}.{name}": getattr(module, name)
    for room in ROOMS
    for module in [importlib.import_module(f"foilwork.{room}")]
    for name in module.__all__
}
CLASSES = {
    name: value for name, value in PUBLIC.items() if inspect.isclass(value) and not issubclass(value, BaseException)
}


def docstrings() -> list[str]:
    """Every docstring of a public name and of its members, each once, in an order that does not change."""
    texts = {inspect.getdoc(value) or "" for value in PUBLIC.values()}
    for kind in CLASSES.values():
        texts |= {inspect.getdoc(member) or "" for member in vars(kind).values()}
    return sorted(texts)


class _HandOver(ast.NodeTransformer):
    """Lets ``_call`` make each call, also in the midst of an expression."""

    def visit_Call(self, node: ast.Call) -> ast.AST:
        self.generic_visit(node)
        call = ast.Name("_call", ast.Load())
        return ast.copy_location(ast.Call(call, [node.func, *node.args], node.keywords), node)


def run_example(text: str, call: Callable[..., object]) -> None:
    """Runs the examples of a docstring; ``call`` gets each function with its arguments and has to make the call."""
    names: dict[str, Any] = {"_call": call}
    for example in doctest.DocTestParser().get_examples(text):
        tree = ast.fix_missing_locations(_HandOver().visit(ast.parse(example.source)))
        try:
            exec(compile(tree, "example", "exec"), names)
        except (FoilworkError, TypeError):
            assert example.exc_msg, example.source


class Call(NamedTuple):
    """A call as an example shows it."""

    name: str
    function: Callable[..., object]
    args: tuple[object, ...]
    kwargs: dict[str, object]

    def __call__(self) -> object:
        return self.function(*self.args, **self.kwargs)


def shown_calls() -> Iterator[Call]:
    """The calls of foilwork's own functions, classes and methods that the examples show."""
    found: list[Call] = []

    def call(function: Any, *args: object, **kwargs: object) -> object:
        owner = getattr(function, "__self__", None)
        owner = owner if inspect.isclass(owner) else type(owner)
        ours = function in PUBLIC.values() if inspect.isbuiltin(function) or inspect.isclass(function) else False
        if ours or owner in CLASSES.values():
            name = function.__name__ if ours else f"{owner.__name__}.{function.__name__}"
            found.append(Call(name, function, args, kwargs))
        return function(*args, **kwargs)

    for text in docstrings():
        run_example(text, call)
    yield from found
