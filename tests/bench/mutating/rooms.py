"""Which tests should find a fault in which room, the quickest and likeliest first; and faults that
nobody can find.
"""

from __future__ import annotations

import ast
import csv
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
PACKAGE = ROOT / "fireplace_calc"
EQUIVALENT = Path(__file__).with_name("equivalent.csv")

TESTS = {
    "base": "at_the_limit units heat_answer tables record developers design takeoff draft_air places draft_examples asked_by_hand as_told",
    "pieces": "as_told as_drawn pieces_joints pieces_tolerance pieces_as_built pieces_set pieces_refused pieces_measured pieces_fit random_sets pieces_design casting casting_forms measuring pieces_misfits set_pictures setting_cards setting_mortar setting_order asked_by_hand",
    "design": "developers record design designfile hood",
    "editing": "at_the_limit as_entered mantel pieces_measured record designfile consistency rules_second_flue design kept_comments jobs start_mine pieces_design assess session geometry assumptions field_ranges facts controls whole_files survey as_told",
    "geometry": "as_built polygons breast across_corner mantel pins_set casting pieces_misfits pieces_random pieces_design pieces_set pieces_fit setting_order setting_mortar visible pieces_bare pins_place pins_order beside geometry mesh drawing_cuts seat asked_by_hand",
    "rules": "as_judged facts rules_limits pins_clauses rules_traps rules_ground rules_abroad rules_others rules_missing assess rules_words rules_second_flue rules_steel_unit rules_metric rules_honest assumptions missing books pieces_design asked_by_hand",
    "brickwork": "as_built fitted courses cutting pins_order brickwork takeoff stone_face rods seat breast published_cases asked_by_hand",
    "takeoff": "pins_order pins_formulas goods takeoff yard for_client breast mantel pieces_design handbook_examples handbook_table3 exports cli prices published_cases seat as_reckoned asked_by_hand",
    "structure": "pins_structure pins_formulas low_wall structure_examples structure published_cases as_reckoned asked_by_hand",
    "draft": "pins_draft pins_formulas draft_measured draft_doors hood draft_air draft_examples draft_findings draft_roots draft_properties draft_first_hour sweep as_reckoned asked_by_hand",
    "heat": "heat_below heat_answer heat_cases heat_properties heat_beside heat_said heat_fold published_cases heat_designs heat_bars heat_paper as_heated asked_by_hand",
    "build": "casting_forms pallet_list setting_staging setting_order setting_mortar setting_cards pins_work pins_formulas lifting build work_chart seat pieces_everywhere structure_examples courses as_drawn as_reckoned asked_by_hand as_told across_corner",
    "assessment": "assess",
    "explore": "as_printed together mending charts_by_axes remedies sweep drawing_air handbook_examples panels draft_findings controls as_told",
    "proportion": "as_told proportion room_by_hand room_view onesheet across_corner scene_room as_drawn",
    "report": "heat_below heat_said report for_client said books developers writing assess cli draft_findings onesheet inspector cover prices client client_pages yard assumptions missing exported_look room_to_turn",
    "survey": "as_told survey survey_fold survey_sheets",
    "lessons": "as_drawn answers written drill lessons_pencil lesson_marks courses lesson_page course class_pages class fault_hunt lessons panels class_papers as_shown as_pressed as_told",
    "drawing": "as_drawn as_printed lesson_marks setting_cards set_pictures sheets views room_by_hand written charts_by_axes cap marked drawing_cuts archview room_view"
    " drill courses course cutting yard class_papers drawing_air onesheet papers drawing drawing_reuse pieces_measured drawn_page drawn_stage survey_sheets rods plates plan_sheets set_out details cover inspector work_chart client_pages pictures seat casting_forms pieces_bare setting_staging takeoff mantel across_corner breast heat_said heat_paper as_told as_shown",
    "scene": "as_drawn as_seen scene_masonry scene_stuffs scene_layouts scene_room scene_sky scene_wire scene_view still room_to_turn options scene_paint across_corner mantel start_mine as_told",
    "exports": "as_printed exported_look exports cli dxf room_to_turn client_pages pictures whole_files as_drawn",
    "panels": "lesson_page class_pages measuring casting_forms step_by_step controls written job said session panels turning lessons jobs start_mine survey_fold page field_ranges options client heat_fold scene_view pieces_everywhere as_drawn as_shown as_pressed",
}
"""By the room's folder, names of test modules."""
EVERYWHERE = "as_answered"
"""A test that asks every room."""
OTHERS = ("bench", "browser", "install", "server", "walk_measure", "walks")
"""Tests that are no unit tests of the package."""
FEW = 3
"""So many test files are about a module; what more of them import is used by all. [-]"""
AS_IT_WAS = "test_as_"
"""How the files are called of the tests that know no more of a figure than what it was before."""


def room(path: Path) -> str:
    """Room of a module: its folder in the package, or its own name."""
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


@cache
def _imported(test: Path) -> frozenset[str]:
    found = set()
    for node in ast.walk(ast.parse(test.read_text())):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{a.name}" for a in node.names}
        elif isinstance(node, ast.Import):
            found |= {a.name for a in node.names}
    return frozenset(found)


def likeliest(path: Path, sooner: bool = False) -> list[str]:
    """Test files for a module: those of its room that import it by name, then the rest of the
    room's, and at the end those that hold what is there to what was there. Sooner a fault is found
    where these come first, but for the few that are about this module.
    """
    dotted = ".".join(path.relative_to(ROOT).with_suffix("").parts)
    names = (*TESTS[room(path)].split(), EVERYWHERE)
    files = [ROOT / "tests" / f"test_{name}.py" for name in names]
    held = [f for f in files if f.name.startswith(AS_IT_WAS)]
    about = [f for f in files if dotted in _imported(f) and f not in held]
    if sooner:
        own = [f for f in files if path.stem in f.stem]
        first = [*(about if len(about) <= FEW else own), *held]
    else:
        first = about
    files.sort(key=lambda f: (f not in first, f in held))
    return [str(f.relative_to(ROOT)) for f in dict.fromkeys((*first, *files))]


@cache
def everywhere() -> frozenset[str]:
    """Every file of unit tests, without those that need a browser, a server or a wheel, or are about these scripts."""
    named = {f"tests/{path.name}" for path in (ROOT / "tests").glob("test_*.py")}
    return frozenset(named - {f"tests/test_{name}.py" for name in OTHERS})


@cache
def equivalent() -> dict[tuple[str, str, str], str]:
    """Faults that change nothing anybody can see: file, line and the line with the fault in it, to
    the reason.
    """
    if not EQUIVALENT.exists():
        return {}
    with EQUIVALENT.open(newline="") as file:
        return {(r["file"], r["line"], r["mutant"]): r["reason"] for r in csv.DictReader(file)}
