"""The small changes of which mutation testing is made, and how each is put into a running process.

The operators are those of cosmic-ray (``pip install cosmic-ray``).
"""

from __future__ import annotations

import difflib
import random
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from inspect import CO_OPTIMIZED
from itertools import islice
from pathlib import Path
from types import CodeType, FunctionType, ModuleType
from typing import Any

from cosmic_ray.ast import ast_nodes, get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

ROOT = Path(__file__).parents[2]

BINARY = ("Add_Sub", "Sub_Add", "Mul_Div", "Div_Mul", "FloorDiv_Mul", "Mod_Mul", "Pow_Mul")
"""One other operator for each: more of them would be noticed by the same tests."""

LEFT_OUT = ("_Is", "UAdd", "Invert", "USub_Not", "Not_USub", "Variable", "Decorator")
"""What says the same again (``is`` for ``==``), is no Python, or is the type checker's affair."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """One change of a module: the n-th place in it that an operator changes."""

    path: str
    operator: str
    occurrence: int
    line: int

    @property
    def old(self) -> str:
        """The module as it is."""
        return (ROOT / self.path).read_text(encoding="utf-8")

    @property
    def new(self) -> str:
        """The changed module."""
        return str(mutate_code(self.old, get_operator(self.operator)(), self.occurrence))

    @property
    def module(self) -> ModuleType:
        """The module, imported unchanged."""
        return import_module(self.path.removesuffix(".py").replace("/", "."))

    def describe(self) -> str:
        """The changed lines, as a reader of the module finds them."""
        changes = difflib.unified_diff(self.old.splitlines(), self.new.splitlines(), lineterm="", n=0)
        shown = [each for each in changes if each[:1] in "+-" and each[:3] not in ("+++", "---")]
        return "\n".join([f"{self.path}:{self.line} {self.operator}/{self.occurrence}", *shown])


@dataclass(frozen=True, slots=True)
class Change:
    """A mutant in a process that has imported everything.

    ``name`` is that of the changed function, None where importing the module changes.
    """

    name: str | None
    puts: tuple[Callable[[], None], ...]

    def put_in(self) -> None:
        """Make the change, for good."""
        for put in self.puts:
            put()


def find_mutants(pattern: str) -> list[Mutant]:
    """Every change of every module of templater that a pattern of paths names."""
    return [
        Mutant(str(path.relative_to(ROOT)), name, occurrence, line)
        for path in sorted((ROOT / "templater").glob(pattern))
        for name in sorted(operator_names())
        if _is_tried(name.removeprefix("core/"))
        for occurrence, line in enumerate(_find_lines(path, name))
    ]


def _is_tried(operator: str) -> bool:
    kind, _, change = operator.partition("_")
    if kind == "ReplaceBinaryOperator":
        return change in BINARY
    return change in ("Is_IsNot", "IsNot_Is") or not any(part in operator for part in LEFT_OUT)


def _find_lines(path: Path, operator: str) -> Iterator[int]:
    """The line of each place that an operator changes."""
    change = get_operator(operator)()
    for node in ast_nodes(get_ast(path.read_text(encoding="utf-8"))):
        for start, _ in change.mutation_positions(node):
            yield start[0]


def draw(mutants: list[Mutant], count: int, seed: int) -> list[Mutant]:
    """So many mutants at random, without those that are no Python after all."""
    shuffled = random.Random(seed).sample(mutants, len(mutants))
    return list(islice(filter(_compiles, shuffled), count))


def _compiles(mutant: Mutant) -> bool:
    try:
        compile(mutant.new, mutant.path, "exec")
    except (SyntaxError, AttributeError):  # the latter of the operator, at an exception's dotted name
        return False
    return True


def find_change(mutant: Mutant) -> Change | None:
    """How to put a mutant in; None where it changes only classes, or nothing."""
    path = str(ROOT / mutant.path)
    old, new = _list_code_by_name(mutant.old, path), _list_code_by_name(mutant.new, path)
    changed = {name for name in old if name not in new or _strip(old[name]) != _strip(new[name])}
    outer = {name.split(".<locals>")[0] for name in changed}
    function = _find_function(mutant.module, min(outer)) if len(outer) == 1 else None
    if function is not None and all(old[name].co_flags & CO_OPTIMIZED for name in changed):
        (name,) = outer
        return Change(name, (partial(setattr, function, "__code__", new[name]),))
    try:
        puts = tuple(_set_values(mutant)) if changed else ()
    except Exception as error:  # the module cannot be imported any more, which every test notices
        puts = (partial(_fail, error),)
    return Change(None, puts) if puts else None


def _fail(error: Exception) -> None:
    raise error


def _list_code_by_name(source: str, path: str) -> dict[str, CodeType]:
    """The code of every function, class and of the module itself, by qualified name."""
    return {each.co_qualname: each for each in _list_code(compile(source, path, "exec"))}


def _list_code(code: CodeType) -> Iterator[CodeType]:
    yield code
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            yield from _list_code(inner)


def _strip(code: CodeType) -> tuple[object, ...]:
    """What a piece of code does by itself, without the functions in it."""
    own = tuple((type(each), repr(each)) for each in code.co_consts if not isinstance(each, CodeType))
    return code.co_code, own, code.co_names, code.co_varnames


def _find_function(module: ModuleType, name: str) -> FunctionType | None:
    """The function of a module by its qualified name, out of its property or cache."""
    value: Any = module
    for part in name.split("."):
        value = vars(value).get(part) if hasattr(value, "__dict__") else None
        for wrapper in ("fget", "func", "__func__", "__wrapped__"):
            value = getattr(value, wrapper, value)
    return value if isinstance(value, FunctionType) else None


def _set_values(mutant: Mutant) -> Iterator[Callable[[], None]]:
    """What sets changed constants, wherever they were imported, and changed default values."""
    new: dict[str, Any] = {"__name__": mutant.module.__name__, "__file__": mutant.module.__file__}
    exec(compile(mutant.new, mutant.path, "exec"), new)
    for name, value in list(vars(mutant.module).items()):
        fresh = new.get(name)
        if isinstance(value, FunctionType) and isinstance(fresh, FunctionType):
            for key in ("__defaults__", "__kwdefaults__"):
                if getattr(value, key) != getattr(fresh, key):
                    yield partial(setattr, value, key, getattr(fresh, key))
        elif not name.startswith("__") and not callable(value) and repr(value) != repr(fresh):
            for user in list(sys.modules.values()):
                if user.__name__.startswith(("templater", "tests")) and vars(user).get(name) is value:
                    yield partial(setattr, user, name, fresh)
