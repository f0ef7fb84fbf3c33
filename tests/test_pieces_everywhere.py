"""One piece, one weight, wherever it is told: takeoff, delivery, order of setting, cards, DXF and the
view that turns. Every shipped set in every width, not raised and raised as far as it goes, and
without its lining of firebrick.

Counts come from the set's own file (lifts and marks), apart from what assembles the pieces; weights
from one closed form, which tests/test_pieces_set.py holds against shapely.
"""

import re
import tomllib
from collections import Counter

import ezdxf
import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.build.setting.cards import cards_of
from fireplace_calc.build.setting.pallet_list import pallet_rows
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.exports import write_dxf
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.panels.picture.turning import packed

GRAM = 0.001
"""[kg]"""
SHIPPED = shipped_sets()
WIDTHS = {"narrow": "18 in", "wide": "8 ft", "wide, no lining": "8 ft"}
RAISED = {"not raised": "0 in", "raised": "24 in"}


def designs():
    """Every shipped set, in the narrowest and the widest it comes in, low and raised."""
    for name in SHIPPED:
        told = tomllib.loads((DATA / "sets" / f"{name}.toml").read_text())
        for width in WIDTHS if len(told.get("width", [])) > 1 else list(WIDTHS)[1:]:
            for raised in ("raised",) if "no lining" in width else RAISED:
                marks = () if width == "narrow" else pytest.mark.whole
                case = name, width, raised
                yield pytest.param(case, id=" ".join(case), marks=marks)


@pytest.fixture(scope="module", params=designs())
def work(request, tmp_path_factory):
    """A design with a shipped set: assessed, its pieces by mark, and its file for other programs."""
    name, width, raised = request.param
    folder = tmp_path_factory.mktemp("job")
    text = (DATA / "sets" / f"{name}.toml").read_text()
    if "no lining" in width:
        text, taken = re.subn(r"\[lining\]\n(?:[a-z].*\n)+", "", text)
        assert taken == 1
    (folder / "taken.toml").write_text(text)
    (folder / "job.toml").write_text('[pieces]\nset = "taken"\n')
    told = {"opening.width": WIDTHS[width], "opening.extension": RAISED[raised]}
    result = assess(change(load(folder / "job.toml"), told))
    path = write_dxf(result, folder / "set.dxf")
    return request.param, result, ezdxf.readfile(path)


def counted(name, width, raised, flues):
    """How many of each mark, from the file alone: lifts as often as they are set, extension lifts
    where the firebox is raised, the straight lintel, marks of the width that is taken.
    """
    told = tomllib.loads((DATA / "sets" / f"{name}.toml").read_text())
    swaps = {} if width == "narrow" or "width" not in told else told["width"][-1]["swap"]
    found = Counter()
    lifts = told["lift"]
    for lift in lifts:
        if lift.get("extension") and raised == "not raised":
            continue
        times = flues if "repeat" in lift else 1
        marks = [*lift.get("pieces", []), *([lift["heads"]["straight"]] if "heads" in lift else [])]
        for mark in marks:
            found[swaps.get(mark, mark)] += times
    return found


def told_everywhere(result, document):
    """Count, and weight of all [kg], by mark: from each place where pieces are told."""
    design = result.design
    up = set_up(design)
    steps = order_of_setting(up.assembly, design.piece_set.lining)
    cards = cards_of(up.assembly, design.piece_set.lining)
    pieces = {one.piece.mark: one.piece for one in up.assembly.placed}
    places = {}
    places["takeoff"] = [
        (row.item.removeprefix("Piece ").split(",")[0], row.net, row.weight_kg)
        for row in result.takeoff
        if row.item.startswith("Piece ")
    ]
    places["delivery"] = [
        (row.piece.mark, row.count, row.whole) for row in pallet_rows(up.assembly)
    ]
    places["order"] = [
        (step.placed.piece.mark, 1, piece_weight(step.placed.piece))
        for step in steps
        if step.placed
    ]
    places["cards"] = [
        (card.placed.piece.mark, 1, card.handling.weight) for card in cards if card.placed
    ]
    places["DXF"] = [
        (told["MARK"], 1, float(told["KILOGRAMS"]))
        for insert in document.modelspace().query("INSERT")
        if "MARK" in (told := {a.dxf.tag: a.dxf.text for a in insert.attribs})
    ]
    sent = packed(result.geometry)
    shown = Counter(stand[1] for stand in sent["stands"])
    places["view that turns"] = [
        (part["mark"], shown[k], part["kilograms"] * shown[k])
        for k, part in enumerate(sent["parts"])
        if "mark" in part
    ]
    totals = {}
    for place, rows in places.items():
        count, weight = Counter(), Counter()
        for mark, number, kilograms in rows:
            count[mark] += number
            weight[mark] += kilograms
        totals[place] = count, weight
    return pieces, totals


def test_every_piece_is_told_once_everywhere_with_one_weight(work):
    chosen, result, document = work
    pieces, totals = told_everywhere(result, document)
    wanted = counted(*chosen, result.design.flue.sections)
    for place, (count, weight) in totals.items():
        assert count == wanted, place
        for mark, number in wanted.items():
            alone = piece_weight(pieces[mark])
            # The DXF prints each to the gram, so a sum is off by half a gram a piece at most.
            allowed = number * GRAM / 2 if place == "DXF" else 1e-9
            assert weight[mark] == pytest.approx(number * alone, abs=allowed), (place, mark)


def test_each_piece_has_one_name_and_one_step_everywhere(work):
    """Mark and number, step by step: order, cards, DXF and the view that turns."""
    _, result, document = work
    design = result.design
    up = set_up(design)
    order = {
        step.name: step.number
        for step in order_of_setting(up.assembly, design.piece_set.lining)
        if step.placed
    }
    assert order.keys() == {one.name for one in up.assembly.placed}
    cards = cards_of(up.assembly, design.piece_set.lining)
    assert {card.name: card.number for card in cards if card.placed} == order
    sent = packed(result.geometry)
    assert {p["name"]: p["step"] for p in sent["parts"] if "mark" in p} == order
    told = [
        {a.dxf.tag: a.dxf.text for a in insert.attribs}
        for insert in document.modelspace().query("INSERT")
    ]
    assert {f"{t['MARK']}.{t['NUMBER']}": int(t["STEP"]) for t in told if "MARK" in t} == order
