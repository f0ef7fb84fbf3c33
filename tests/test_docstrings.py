"""Docstrings of public functions say what they are, name every parameter they have, and give the
unit of every number, in brackets.
"""

import importlib
import inspect
import pkgutil
import re
import typing
from dataclasses import fields, is_dataclass
from functools import cache

import pytest

import fireplace_calc

FORMULA_ROOMS = (
    "base.units",
    "base.reading",
    "base.printing",
    "base.places",
    "base.tables",
    "geometry",
    "rules.comparing",
    "rules.handbook_rows",
    "assessment",
    "brickwork",
    "build",
    "draft",
    "explore",
    "pieces.joints",
    "pieces.standing",
    "proportion",
    "structure",
    "takeoff",
)
"""Rooms and modules where every number of a public function has its unit."""

UNITS = {
    *("-", "m", "m2", "m3", "mm", "rad", "deg", "K", "kg", "kg/m3", "kg/s", "Pa", "m/s", "m3/s"),
    *(
        "W",
        "W/m2",
        "W/(m K)",
        "W/(m2 K)",
        "m2 K/W",
        "J/kg",
        "J/(kg K)",
        "J/(mol K)",
        "kg/mol",
        "Pa s",
    ),
    *("N", "kg m", "N m", "N m2", "N/m", "N/m3", "m4", "1/m2", "1/m3", "m3/(s Pa^n)", "Pa s2/kg2"),
    *("C", "W/m", "J/(m3 K)"),
    *("s", "h", "d", "1/h", "1/min", "m3/h", "degF", "ft2", "SI", "unit"),
}
"""What may stand in the brackets. *SI*: in the SI unit of whatever kind it is; *unit*: in the unit
that another argument names.
"""


def modules():
    for info in pkgutil.walk_packages(fireplace_calc.__path__, "fireplace_calc."):
        if not info.name.endswith("__main__"):
            yield importlib.import_module(info.name)


def public(members, module):
    return {
        name: thing
        for name, thing in vars(members).items()
        if not name.startswith("_") and getattr(thing, "__module__", None) == module.__name__
    }


def functions():
    for module in modules():
        for name, thing in public(module, module).items():
            thing = inspect.unwrap(thing) if callable(thing) else thing
            if inspect.isfunction(thing):
                yield f"{module.__name__.removeprefix('fireplace_calc.')}.{name}", thing


def methods():
    """Methods and properties of public classes; a property is what reads it."""
    for module in modules():
        for owner, made in public(module, module).items():
            if not inspect.isclass(made):
                continue
            for name, thing in vars(made).items():
                read = getattr(thing, "fget", None) or getattr(thing, "func", None) or thing
                if inspect.isfunction(read) and not name.startswith("_"):
                    where = module.__name__.removeprefix("fireplace_calc.")
                    yield f"{where}.{owner}.{name}", read


def records():
    for module in modules():
        for name, thing in public(module, module).items():
            if inspect.isclass(thing) and is_dataclass(thing):
                yield f"{module.__name__.removeprefix('fireplace_calc.')}.{name}", thing


def strict(name):
    return any(name == room or name.startswith(f"{room}.") for room in FORMULA_ROOMS)


FUNCTIONS = dict(functions())
METHODS = dict(methods())
RECORDS = dict(records())


def each(found):
    """All of a room in one test: thousands of tests take longer to be counted than to run."""
    rooms = {}
    for name in sorted(found):
        rooms.setdefault(name.split(".")[0], []).append(name)
    return pytest.mark.parametrize("names", rooms.values(), ids=rooms)


def section(text, title):
    """One section of a docstring in numpy's form, without its title."""
    found = re.search(rf"^{title}\n-+\n(.*?)(?=^\w+\n-+\n|\Z)", text, re.MULTILINE | re.DOTALL)
    return found[1] if found else ""


def entries(text):
    """Parameters by name, each with all that is said about it."""
    found = {}
    for block in re.split(r"^(?=\S)", section(text, "Parameters"), flags=re.MULTILINE):
        names, colon, _ = block.partition(" : ")
        if colon:
            found |= {name.strip("* "): block for name in names.split(",")}
    return found


@cache
def type_names():
    """Every class of the package by its name, and those that only type checkers import."""
    import numpy as np
    import pint
    import xarray
    from manifold3d import Manifold
    from numpy.typing import ArrayLike, NDArray

    names = {"np": np, "NDArray": NDArray, "ArrayLike": ArrayLike, "xarray": xarray}
    names |= {"Manifold": Manifold, "UnitRegistry": pint.UnitRegistry}
    for module in modules():
        names |= {k: v for k, v in public(module, module).items() if inspect.isclass(v)}
    return names


@cache
def hints(thing):
    """Annotations as types, also those that only a type checker reads."""
    names = type_names() | vars(inspect.getmodule(thing))
    return typing.get_type_hints(thing, names, names)


def is_number(hint):
    """Whether numbers stand somewhere in a type: a float, an array, a polygon, a dict of levels."""
    import numpy as np

    if hint in (float, int):
        return True
    if hint is np.ndarray or typing.get_origin(hint) is np.ndarray:
        return "bool" not in str(hint)
    return any(is_number(part) for part in typing.get_args(hint))


def units_in(text):
    return [unit for unit in re.findall(r"\[([^\[\]]+)\](?!\()", text) if unit in UNITS]


@each(FUNCTIONS)
def test_public_functions_say_what_they_are(names):
    for name in names:
        text = inspect.getdoc(FUNCTIONS[name])
        assert text and len(text.split("\n")[0]) > 10, f"{name}: a first sentence"


@each({n for n, f in FUNCTIONS.items() if "Parameters\n---" in (inspect.getdoc(f) or "")})
def test_parameter_sections_agree_with_the_signature(names):
    for name in names:
        text, signature = inspect.getdoc(FUNCTIONS[name]), inspect.signature(FUNCTIONS[name])
        assert set(entries(text)) == set(signature.parameters), name


@each({n for n in FUNCTIONS if strict(n)})
def test_every_number_of_a_function_has_its_unit(names):
    for name in names:
        text, found = inspect.getdoc(FUNCTIONS[name]), hints(FUNCTIONS[name])
        said = entries(text)
        for parameter, hint in found.items():
            if is_number(hint) and parameter != "return":
                has_unit = units_in(said.get(parameter, ""))
                assert has_unit, f"{name}, {parameter}: a unit under Parameters"
        if is_number(found["return"]):
            assert units_in(section(text, "Returns")), f"{name}: a unit under Returns"


@each({n for n in METHODS if strict(n)})
def test_every_number_of_a_method_has_its_unit(names):
    for name in names:
        text, found = inspect.getdoc(METHODS[name]) or "", hints(METHODS[name])
        if any(is_number(hint) for hint in found.values()):
            assert units_in(text), f"{name}: a unit in brackets"


def test_the_search_finds_what_it_should():
    """A test that finds nothing would pass: so it names a few that it must have found."""
    assert {"base.reading.to_si", "geometry.polygons.area", "geometry.bore.flue_bore"} <= set(
        FUNCTIONS
    )
    assert {"geometry.frame.Frame.half_at", "geometry.solids.Loft.volume"} <= set(METHODS)
    assert is_number(tuple[tuple[float, str], ...]) and not is_number(dict[str, bool])
    assert is_number(float | None) and not is_number(str)
    assert "geometry.arches.ArchRing" in RECORDS and "geometry.frame.Frame" in RECORDS
    assert is_number(hints(RECORDS["geometry.mesh.Mesh"])["points"])
    assert units_in("Depth, see [1]. [m]") == ["m"]


@each({n for n in RECORDS if strict(n)})
def test_every_record_of_numbers_names_its_units(names):
    """In the class's docstring, or in the one behind the field."""
    for name in names:
        record = RECORDS[name]
        if any(is_number(hints(record)[field.name]) for field in fields(record)):
            assert units_in(inspect.getdoc(record)), f"{name}: a unit in brackets"
