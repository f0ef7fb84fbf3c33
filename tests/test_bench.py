"""The scripts under ``tests/bench`` that are run by hand keep up with the package, and find what they are for."""

import ast
import sys
from dataclasses import replace
from pathlib import Path

import pytest
import test_cutting
from sampled import sampled

sys.path.insert(0, str(Path(__file__).parent / "bench"))

import fuzz
from fuzzing import agreement, designs, files, papers
from mutating.rooms import TESTS, equivalent, likeliest, room
from mutating.sites import sites

import fireplace_calc
from fireplace_calc import assess, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.cutting.cut_marks import cut_list_of
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.rods import strips

PACKAGE = Path(fireplace_calc.__file__).parent
SOURCE = '''
"""Doc 1 < 2."""
LIMIT: int = 3
def area(width: float = 1.5, depth: float = 2) -> float:
    """Of a + b."""
    if not width < 1 or depth is None:
        raise InputError(f"{1 + 2} too small", 5 * 6)
    found = max(width, depth) - steps[0] * 4  # 9 + 9
    return found if found >= LIMIT else 12 * INCH
    slope(width, depth)
    floor(width)
    from math import sin
    from units import FOOT, INCH
    return sin(width) < 1e-9
'''


@pytest.mark.parametrize("number", [0, 1, 8, 9])
def test_random_designs_still_go_through(number):
    assert designs.try_one("test", number) in {"assessed", "made by hand", "refused", "taken"}


def test_broken_files_still_go_through():
    assert {files.try_one("test", number) for number in range(12)} == {"refused", "read"}


def test_every_kind_of_try_is_run_in_some_number_at_a_time():
    assert fuzz.CHUNK.keys() == fuzz.KINDS.keys()


@pytest.mark.parametrize("number", sampled([0, 1, 15, 19], 0))
def test_papers_and_files_of_random_designs_and_sets_agree(number):
    """Two random designs and two of random sets; ``fuzz.py agreement=500 dxf=500`` by hand."""
    for tried in (agreement.try_papers, agreement.try_file, agreement.try_sums):
        assert "set" in tried("one", number)


def test_papers_that_do_not_agree_are_found(monkeypatch):
    """A course that the rod has a quarter of an inch too high, and a cut that nobody ordered."""
    result = assess(load(DESIGNS / "plain.toml"))
    real = strips.level
    monkeypatch.setattr(strips, "level", lambda z, units: real(z + INCH / 4 * (z > 2), units))
    with pytest.raises(AssertionError, match="to scale"):
        agreement.rod(result, "feet-inches", "A3")
    cut = cut_list_of(result.geometry)
    monkeypatch.setattr(test_cutting, "cut_list_of", lambda _: replace(cut, stock=cut.stock[1:]))
    with pytest.raises(AssertionError):
        agreement.cuts(result, "feet-inches", "A3")


def test_what_must_hold_of_a_design_is_looked_at(monkeypatch):
    """A footing that lost its volume, a part beside the block, a figure that is none."""
    made = assess(Design())
    part = made.geometry.parts[0]
    for name, value, said in (
        ("volume", -part.volume, "negative volume of footing"),
        ("volume", 2 * part.volume, "do not add up"),
    ):
        before = getattr(part, name)
        object.__setattr__(part, name, value)
        with pytest.raises(designs.Unsound, match=said):
            designs.solid_and_closed(made.geometry)
        object.__setattr__(part, name, before)
    designs.solid_and_closed(made.geometry)
    with pytest.raises(designs.Unsound, match=r"not finite x\.a"):
        designs.finite({"a": [1.0, float("nan")]}, "x")
    assert list(designs.unsound_numbers((1.0, "inf", None))) == []


def test_half_a_file_is_known_as_one(tmp_path):
    for name, content in (
        ("a.pdf", b"%PDF-1.4 ... %%EOF\n"),
        ("a.csv", b"a,b\n1,2\n"),
        ("a.dxf", b"ENDSEC\n" * 5 + b"EOF\n"),
    ):
        path = tmp_path / name
        path.write_bytes(content)
        assert papers.whole(path)
        path.write_bytes(content[:-5])
        assert not papers.whole(path)


def test_faults_are_planted_in_code_and_not_in_words():
    lines = SOURCE.splitlines()
    found = {(s.line, s.planted(lines[s.line - 1]).strip()) for s in sites(SOURCE)}
    for line, planted in (
        (3, "LIMIT: int = 4"),
        (4, "def area(width: float = 1.875, depth: float = 2) -> float:"),
        (6, "if not width >= 1 or depth is None:"),
        (6, "if not width <= 1 or depth is None:"),
        (6, "if not width < 1 and depth is None:"),
        (6, "if not width < 1 or depth is not None:"),
        (6, "if  width < 1 or depth is None:"),
        (8, "found = min(width, depth) - steps[0] * 4  # 9 + 9"),
        (8, "found = max(width, depth) + steps[0] * 4  # 9 + 9"),
        (8, "found = max(width, depth) - steps[1] * 4  # 9 + 9"),
        (8, "found = max(width, depth) - steps[0] / 4  # 9 + 9"),
        (9, "return None"),
        (9, "return found if not (found >= LIMIT) else 12 * INCH"),
        (9, "return found if found >= LIMIT else 12 * FOOT"),
        (10, "slope(depth, width)"),
        (14, "return None"),
        (14, "return sin(width) >= 1e-9"),
    ):
        assert (line, planted) in found
    # neither a name that the module lacks nor a quarter more of a hair
    assert {line for line, _ in found} == {3, 4, 6, 8, 9, 10, 14}
    assert len([line for line, _ in found if line == 14]) == 2


@pytest.mark.whole
def test_every_fault_of_the_package_leaves_a_module_that_can_be_read():
    """One module of each room; what cannot be read would be killed by nothing."""
    for path in sorted(
        {room(p): p for p in PACKAGE.rglob("*.py") if sites(p.read_text())}.values()
    ):
        lines = path.read_text().splitlines()
        for site in sites(path.read_text())[::7]:
            changed = [*lines]
            changed[site.line - 1] = site.planted(lines[site.line - 1])
            ast.parse("\n".join(changed))


def test_the_table_of_tests_names_files_that_are_there():
    modules = {room(path): path for path in sorted(PACKAGE.rglob("*.py"))}
    for test in (test for name in TESTS for test in likeliest(modules[name])):
        assert (PACKAGE.parent / test).exists(), test


def test_what_nobody_can_find_names_a_line_that_stands_and_says_why():
    known = equivalent()
    for (file, line, mutant), why in known.items():
        standing = {text.strip() for text in (PACKAGE / file).read_text().splitlines()}
        assert line in standing, f"{file} has no line {line!r} any more"
        assert mutant != line and len(why) > 10, (file, line)
    assert len(known) > 100
