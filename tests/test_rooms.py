"""The rooms of the house and the arrow of imports between them (DEVELOPERS.md)."""

import ast
from pathlib import Path

import pytest

import fireplace_calc

PACKAGE = Path(fireplace_calc.__file__).parent

FLOORS = [
    ["places", "units"], ["tables"], ["inputs"], ["sitework", "surroundings"], ["design"], ["solids"], ["clip", "frame"],
    ["consistency", "parts"], ["geometry"], ["change", "mesh"], ["designfile", "facts"], ["brickwork", "rules"],
    ["takeoff"], ["build", "draft", "structure"],
    ["assess"],
    ["airwords", "books", "frames", "explore", "proportion"], ["report"], ["alternatives", "lessons"], ["drawing"], ["exports"], ["panels"],
    ["__init__", "__main__", "nomenclature"],
]
"""From the bottom up; a module imports only from floors below its own, or from its own room."""

ALONE = {
    "server": "stands apart: it is loaded by the notebook server, not by the package",
}

HOUSE_RULES = {"pint": {"units"}, "matplotlib": {"drawing"}, "ipywidgets": {"panels"}, "anywidget": {"panels"}, "manifold3d": {"mesh"}}


def room(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imports(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            found |= {node.module} if node.module != "fireplace_calc" else {f"fireplace_calc.{a.name}" for a in node.names}
    return found


MODULES = sorted(PACKAGE.rglob("*.py"))
FLOOR_OF = {name: floor for floor, names in enumerate(FLOORS) for name in names}


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_module_imports_only_from_below(path):
    here = room(path)
    if here in ALONE:
        return
    assert here in FLOOR_OF, f"{here} has no floor yet: put it into FLOORS and into DEVELOPERS.md"
    for name in imports(path):
        if name.startswith("fireplace_calc."):
            there = name.split(".")[1]
            if there in FLOOR_OF:
                assert there == here or FLOOR_OF[there] < FLOOR_OF[here], f"{here} imports {there}"


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_heavy_libraries_keep_to_their_room(path):
    for name in imports(path):
        rooms = HOUSE_RULES.get(name.split(".")[0])
        assert rooms is None or room(path) in rooms, f"{room(path)} imports {name}"


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_files_are_opened_in_few_rooms(path):
    """Data by tables, design files by designfile, exports by report, drawing and the command line."""
    if room(path) in {"tables", "designfile", "report", "drawing", "exports", "__main__"}:
        return
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Call):
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            assert called not in {"open", "read_text", "read_bytes", "write_text", "write_bytes"}, f"{path.name} opens a file"


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_module_stays_one_idea_long(path):
    assert len(path.read_text().splitlines()) <= 300, "split it: it is two ideas (aim at 40 to 300 lines)"
