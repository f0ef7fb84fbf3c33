"""The rooms of the house and the arrow of imports between them (DEVELOPERS.md)."""

import ast
import inspect
from functools import cache
from graphlib import CycleError, TopologicalSorter
from importlib import import_module
from pathlib import Path

import pytest

import fireplace_calc

PACKAGE = Path(fireplace_calc.__file__).parent

FLOORS = [
    ["base"],
    ["pieces"],
    ["design"],
    ["geometry"],
    ["editing"],
    ["brickwork"],
    ["rules"],
    ["takeoff"],
    ["build", "draft", "heat", "structure"],
    ["assessment"],
    ["explore", "proportion"],
    ["report"],
    ["scene"],
    ["survey"],
    ["lessons"],
    ["drawing"],
    ["exports"],
    ["panels"],
    ["__init__", "__main__"],
]
"""From the bottom up; a module imports only from floors below its own, or from its own room."""

ALONE = {"jupyter"}
"""Loaded by the notebook server and by the command, not by the package."""

HOUSE_RULES = {
    "pint": {"base"},
    "matplotlib": {"drawing"},
    "ipywidgets": {"panels"},
    "anywidget": {"panels"},
    "manifold3d": {"geometry", "scene"},
}
OPENS_FILES = {"base", "editing", "report", "drawing", "exports", "takeoff", "__main__"}
"""Data, design files, price lists, exports and the command line; the rest of the house opens no
file.
"""

LONGEST = 300
"""Lines of a module after formatting; a longer one is two ideas."""
MOST_FILES = 12
"""Modules in one folder, its ``__init__`` not counted."""


LARGER = {
    "rules/us": (14, "one module to a family of the chapter, as its keys are lettered"),
    "design": (17, "one module to a page of the form"),
    "takeoff": (13, "one module to a way of counting"),
    "geometry": (16, "one module to a step from an outline to a skin"),
}
"""Folders that may hold more, and why."""


def room(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def dotted(path: Path) -> str:
    name = ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts)
    return name.removesuffix(".__init__")


@cache
def nodes(path: Path) -> tuple[ast.AST, ...]:
    return tuple(ast.walk(ast.parse(path.read_text())))


@cache
def imports(path: Path) -> frozenset[str]:
    found = set()
    for node in nodes(path):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            found.add(node.module)
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
    return frozenset(found)


MODULES = sorted(PACKAGE.rglob("*.py"))
NAMES = {dotted(path) for path in MODULES}
FLOOR_OF = {name: floor for floor, names in enumerate(FLOORS) for name in names}


ROOMS = {}
for path in MODULES:
    ROOMS.setdefault(room(path), []).append(path)

each_room = pytest.mark.parametrize("here", ROOMS)
"""All modules of a room in one test: thousands of tests take longer to be counted than to run."""


def label(path):
    return str(path.relative_to(PACKAGE))


@each_room
def test_a_module_imports_only_from_below(here):
    if here in ALONE:
        return
    assert here in FLOOR_OF, f"{here} has no floor yet: put it into FLOORS and into DEVELOPERS.md"
    for path in ROOMS[here]:
        for name in imports(path) & NAMES - {"fireplace_calc"}:
            there = name.split(".")[1]
            if there not in ALONE:
                below = FLOOR_OF[there] < FLOOR_OF[here]
                assert there == here or below, f"{label(path)} imports {there}"


def test_no_circle_between_modules():
    """Imports for type checkers count: who needs them there needs them to be understood.

    A package's ``__init__`` hands names on; whoever asks it for a module asks that module.
    """
    arrows = {}
    for path in MODULES:
        found = imports(path) & NAMES
        deepest = {n for n in found if not any(m != n and m.startswith(f"{n}.") for m in found)}
        arrows[dotted(path)] = deepest - {dotted(path), "fireplace_calc"}
    try:
        TopologicalSorter(arrows).prepare()
    except CycleError as error:
        pytest.fail(" -> ".join(error.args[1]))


@each_room
def test_heavy_libraries_keep_to_their_room(here):
    for path in ROOMS[here]:
        for name in imports(path):
            rooms = HOUSE_RULES.get(name.split(".")[0])
            assert rooms is None or here in rooms, f"{label(path)} imports {name}"


@each_room
def test_files_are_opened_in_few_rooms(here):
    if here in OPENS_FILES | ALONE:
        return
    opening = {"open", "read_text", "read_bytes", "write_text", "write_bytes"}
    for path in ROOMS[here]:
        for node in nodes(path):
            if isinstance(node, ast.Call):
                called = getattr(node.func, "attr", "") or getattr(node.func, "id", "")
                on_self = isinstance(node.func, ast.Attribute) and getattr(
                    node.func.value, "id", ""
                ) in ("self", "panel")
                assert called not in opening or on_self, f"{label(path)} opens a file"


def test_a_module_stays_one_idea_long():
    lines = {label(path): len(path.read_text().splitlines()) for path in MODULES}
    too_long = {path: number for path, number in lines.items() if number > LONGEST}
    assert not too_long, "split them: aim at 40 to 300 lines"


def test_a_folder_holds_a_dozen_modules():
    for folder in {path.parent for path in MODULES}:
        most = LARGER.get(label(folder), (MOST_FILES, ""))[0]
        held = [p for p in folder.glob("*.py") if p.stem != "__init__"]
        assert len(held) <= most, (
            f"{label(folder)} is full: {len(held)} modules, {most} allowed. Put the new one into a"
            " folder that fits, or begin one for what it is about"
        )


def modules():
    return [
        m
        for m in sorted(NAMES)
        if m.split(".")[-1] != "__main__" and m.split(".")[1:2] != ["jupyter"]
    ]


def test_no_function_bears_its_modules_name():
    """``from fireplace_calc.x import x`` would hide the module behind the function."""
    for name in modules():
        twin = vars(import_module(name)).get(name.split(".")[-1])
        assert not inspect.isfunction(twin), f"rename the function or the module {name}"


def test_class_names_are_given_once():
    named = {}
    for path in MODULES:
        for node in nodes(path):
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                named.setdefault(node.name, []).append(label(path))
    assert {name: where for name, where in named.items() if len(where) > 1} == {}


@pytest.mark.parametrize("room", ["", ".panels", ".drawing", ".takeoff", ".draft", ".structure"])
def test_a_name_that_a_room_hands_out_is_no_folder(room):
    """``client`` was the page until its folder was read, and then the folder: a cell run again said
    that a module is not callable.
    """
    handed_out = import_module(f"fireplace_calc{room}")
    for name in modules():
        import_module(name)
    assert [n for n in handed_out.__all__ if inspect.ismodule(getattr(handed_out, n))] == []
