"""Pictures of a set: clean on every step, in both unit systems, and they show what stands."""

from datetime import datetime
from types import SimpleNamespace

import numpy as np
import pytest
from sampled import sampled
from set_strategies import made as made_set
from set_strategies import random_set, stood

from fireplace_calc import change
from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.pieces.built_picture import built_sheet, built_view, pole_marks
from fireplace_calc.drawing.pieces.card_picture import (
    ABOVE,
    _from_above,
    _near,
    _standing,
    card_sheet,
)
from fireplace_calc.drawing.pieces.growing import build_sheet
from fireplace_calc.drawing.pieces.set_pictures import SetPictures, pictures_of
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.views.laid_bricks import section_lines
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.geometry.visible.viewpoint import FRONT
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.pieces.standing.as_built import AsBuilt, MeasuredTop


def middling(**choice):
    made = read_set((DATA / "sets" / "middling.toml").read_text())
    return SetPictures(as_wanted(choose(made, Choice(**choice))), made.lining)


@pytest.fixture(scope="module")
def pictures():
    return middling(extensions=2)


def marked(sheet):
    """Area of everything drawn in the tone of what is set now. [mm2]"""
    total = 0.0
    for (_, tone), polygons in sheet.fills.items():
        if tone.startswith("set "):
            for x, y in (ring.T for rings in polygons for ring in rings):
                total += float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)
    return total


def words(sheet):
    return " ".join(label.text for label in sheet.labels)


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
def test_every_step_of_the_middling_set_is_clean(pictures, units):
    assert collisions(build_sheet(pictures, 0, units)) == []
    for step in range(1, len(pictures.cards) + 1):
        assert collisions(build_sheet(pictures, step, units)) == [], step
        assert collisions(card_sheet(pictures, step, units)) == [], step


@pytest.mark.parametrize("seed", sampled(range(4), 1))
def test_steps_of_random_sets_are_clean(seed):
    made = SetPictures(stood(random_set(seed)), made_set(random_set(seed)).lining)
    for step in range(1, len(made.cards) + 1, 5):
        for units in SYSTEMS:
            assert collisions(card_sheet(made, step, units)) == [], step
            assert collisions(build_sheet(made, step, units)) == [], step


def test_the_piece_just_set_is_marked_and_no_other(pictures):
    for step, card in enumerate(pictures.cards, 1):
        area = marked(build_sheet(pictures, step))
        assert (area > 1.0) == (card.placed is not None), card.name
    assert marked(build_sheet(pictures, 0)) == 0


def test_a_marked_front_is_as_large_as_the_piece(pictures):
    """The straight lintel from the front, by hand: 53 by 9 in, at the sheet's own scale, which the line
    it stands over gives: 53 in and 0.1 m either way."""
    step = next(c.number for c in pictures.cards if c.name == "LS.1")
    sheet = build_sheet(pictures, step)
    ground = min(sheet.lines["ground", "ink"], key=lambda line: line[:, 0].min())
    scale = np.ptp(ground[:, 0]) / (53 * INCH + 0.2)
    fronts = sheet.fills[1, "set front"]
    sizes = [np.ptp(rings[0], axis=0) for rings in fronts]
    assert any(size == pytest.approx(np.array([53, 9]) * INCH * scale, rel=1e-4) for size in sizes)


def test_the_level_beside_the_front_is_the_piece_s_top(pictures):
    step = next(c.number for c in pictures.cards if c.name == "N2.1")
    top = 3.5 + 3 * 10.375 + 2 * 6.375 + 9.375 + 5.375
    assert top == 62.125
    assert "5'-2 1/8\"" in words(build_sheet(pictures, step, FEET_INCHES))
    assert "1578" in words(build_sheet(pictures, step, MILLIMETRES)).replace(" ", "")


def test_the_window_holds_what_stands_under_the_flue_until_that_begins(pictures):
    first = next(c.number for c in pictures.cards if c.placed and c.placed.piece.role == "flue")
    assert pictures.shown(1) == pictures.shown(first - 1) == pictures.standing(first - 1)
    under, whole = pictures.shown(1), len(pictures.order)
    assert pictures.shown(first) == pictures.shown(first + 5) == min(under + 6, whole)
    assert pictures.shown(first + 6) == min(under + 12, whole)
    assert pictures.shown(len(pictures.cards)) == whole


def test_a_card_says_what_its_words_say(pictures):
    step = next(c.number for c in pictures.cards if c.name == "WR.2")
    said = words(card_sheet(pictures, step))
    assert "WR.2  right wall" in said and f"Step {step} of {len(pictures.cards)}" in said
    assert "Rests on" in said and "WR.1" in said
    # Its place from above: inner edge 17 1/2 in, 9 in wide.
    assert "1'-5 1/2\"" in said and '9"' in said


def test_the_lining_is_a_card_without_a_picture_of_a_piece(pictures):
    step = next(c.number for c in pictures.cards if c.placed is None)
    sheet = card_sheet(pictures, step)
    assert marked(sheet) == 0 and "Firebrick lining" in words(sheet)
    assert pictures.standing(step) == pictures.standing(step - 1)


NOON = datetime(2027, 5, 3, 12, 0)


def as_measured(plan, sixteenths):
    """The lowest lifts, each so many sixteenths over the story pole."""
    tops = zip(plan.chain, plan.tops, sixteenths, strict=False)
    return AsBuilt(
        "a job",
        tops=tuple(MeasuredTop(r.name, top + n * INCH / 16, NOON) for r, top, n in tops),
    )


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
@pytest.mark.parametrize("sections", [4, 40])
@pytest.mark.parametrize("name", ["small", "middling", "wide"])
def test_wanted_against_built_is_clean(name, sections, units):
    """Nothing, some, and all of it measured; the window on the screen and the whole on paper."""
    design = change(Design(), {"pieces.set": name, "flue.sections": sections})
    up = set_up(design)
    pictures = SetPictures(up.assembly, design.piece_set.lining)
    for count in (0, 1, 5, len(up.plan.chain)):
        built = as_measured(up.plan, [(-2, 0, 1, 16, -1)[n % 5] for n in range(count)])
        assert collisions(built_sheet(pictures, up.plan, built, units)) == [], count
        sheet = Sheet(300.0, 186.0)
        built_view(sheet, Cell(6.0, 6.0, 294.0, 180.0), pictures, up.plan, built, units)
        assert collisions(sheet) == [], count


def test_the_pole_says_what_is_wanted_what_stands_and_what_is_left():
    """By hand: three courses on a pole, the second 1/8 in low; what is to come moves down with it."""
    design = change(Design(), {"pieces.set": "small"})
    up = set_up(design)
    marks, count = pole_marks(up.plan, as_measured(up.plan, (0, 1, -2)))
    assert count == 3
    assert [m.stands for m in marks[:4]] == [True, True, True, False]
    assert [m.words.partition(": ")[2] for m in marks[:3]] == [
        "stands as wanted",
        'stands 1/16" high',
        'stands 1/8" low, out of tolerance',  # 3/16 in thinner than told
    ]
    assert marks[3].now - marks[3].wanted == pytest.approx(-INCH / 8)
    assert marks[3].words.partition(": ")[2].startswith("now build to")
    skipped = AsBuilt(tops=(MeasuredTop(up.plan.chain[1].name, up.plan.tops[1], NOON),))
    marks, count = pole_marks(up.plan, skipped)
    assert count == 2 and marks[0].now is None and "stands, not measured" in marks[0].words
    assert "to come" in marks[2].words


def test_both_ticks_are_drawn_to_scale():
    """One inch high: the tick on the right of the pole stands an inch over the one on the left."""
    design = change(Design(), {"pieces.set": "small"})
    up = set_up(design)
    pictures = SetPictures(up.assembly, design.piece_set.lining)
    sheet = built_sheet(pictures, up.plan, as_measured(up.plan, (0, 16)))
    flags = [
        line for (weight, _), lines in sheet.lines.items() for line in lines if weight == "flag"
    ]
    low, high = sorted(line[0, 1] for line in flags)
    scale = (high - low) / (up.plan.tops[1] - up.plan.tops[0] + INCH)
    ticks = [
        line[0, 1]
        for line in sheet.lines["seen", "ink"]
        if len(line) == 2 and line[0, 1] == line[1, 1] and np.ptp(line[:, 0]) == pytest.approx(5.5)
    ]
    assert min(abs(high - y - INCH * scale) for y in ticks) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize(
    ("name", "head"), [("small", "segmental"), ("middling", "straight"), ("wide", "straight")]
)
def test_the_lining_of_a_design_is_drawn_in_its_turn(name, head, units):
    design = change(
        Design(),
        {"pieces.set": name, "flue.sections": 12, "opening.head": head, "house.ceiling": "9 ft"},
    )
    made = pictures_of(design)
    step = next(c.number for c in made.cards if c.placed is None)
    assert made.standing(step) == made.standing(step - 1) + 1
    for shown in (step - 1, step, step + 1, len(made.cards)):
        assert collisions(card_sheet(made, shown, units)) == [], shown
        assert collisions(build_sheet(made, shown, units)) == [], shown
    assert marked(card_sheet(made, step)) > 100 and marked(build_sheet(made, step)) > 100
    lined = build_sheet(made, step + 1)
    assert lined.hatched["firebrick"] and not build_sheet(made, step - 1).hatched["firebrick"]
    said = words(card_sheet(made, step, units))
    for head_word in ("Brick", "Mortar", "Time"):
        assert head_word in said
    assert len(made.drawn) == len(made.order) + 1
    # By hand: the back of the lining from the front, between its sides.
    frame = build_geometry(design).frame
    sheet = build_sheet(made, step, units)
    ground = min(sheet.lines["ground", "ink"], key=lambda line: line[:, 0].min())
    reach = made.stages(FRONT).bounds(made.shown(step))
    scale = np.ptp(ground[:, 0]) / (reach[2] - reach[0] + 0.2)
    widths = [np.ptp(rings[0][:, 0]) for rings in sheet.fills[1, "set front"]]
    assert any(w == pytest.approx(frame.back_width * scale, rel=1e-4) for w in widths)


def test_the_side_beyond_the_section_begins_where_the_lining_does():
    """Behind the facing and the gap, as far back as the firebox is deep: no brick in the reveal or
    across the lintel.
    """
    geometry = build_geometry(change(Design(), {"pieces.set": "middling"}))
    f = geometry.frame
    sheet = Sheet(300.0, 300.0)
    view = section(sheet, Cell(0.0, 0.0, 300.0, 300.0), geometry, FEET_INCHES)
    before = len(sheet.hatches)
    section_lines(view, geometry)
    (lines,) = sheet.hatches[before:]
    across = (lines[:, :, 0] - view.x0) / view.scale
    assert across.min() == pytest.approx(f.set_back, abs=0.1 * INCH) and f.set_back > 4 * INCH
    assert across.max() == pytest.approx(f.depth, abs=0.1 * INCH)
    lintel = (across < f.breast - 0.001) & ((lines[:, :, 1] - view.y0) / view.scale > f.opening_top)
    assert not lintel.all(axis=1).any()


def test_three_views_of_a_step_share_the_sheet(pictures):
    """Of 300 mm the front has 108, less 22 for its level and 6; the section 90, less 6 at either side:
    their middles at 62 and 153. The level stands 3 mm beside the pieces, at the top of the left wall
    in the first course: 3-1/2, a bed and 10 in.
    """
    step = next(c.number for c in pictures.cards if c.name == "WL.1")
    sheet = build_sheet(pictures, step)
    front, section_ = sorted(sheet.lines["ground", "ink"], key=lambda line: line[0, 0])
    assert front[:, 0].mean() == pytest.approx(62.0) and section_[:, 0].mean() == pytest.approx(153)
    assert front[0, 1] == front[1, 1] == section_[0, 1] == pytest.approx(section_[1, 1])
    scale = np.ptp(front[:, 0]) / (53 * INCH + 0.2)
    (said,) = [one for one in sheet.labels if one.text.startswith("1'-")]
    assert said.x == pytest.approx(front[0, 0] + 0.1 * scale - 3.0)
    assert said.y - front[0, 1] == pytest.approx(13.875 * INCH * scale)
    names = {one.text: one.x for one in sheet.labels}
    assert (names["Front"], names["Section on the center line"]) == (2, pytest.approx(110))
    assert names[f"{step}. WL.1  left wall"] == pytest.approx(200)


def test_before_the_first_piece_stands_there_is_nothing_to_draw():
    none = SimpleNamespace(standing=lambda step: 0, drawn=(), cards=[SimpleNamespace(placed=None)])
    assert _near(none, 1, ABOVE) == []
    sheet = Sheet(200.0, 100.0)
    _standing(sheet, Cell(0.0, 0.0, 100.0, 100.0), none, 1)
    _from_above(sheet, Cell(100.0, 0.0, 200.0, 100.0), none, 1, FEET_INCHES)
    assert not (sheet.lines or sheet.fills or sheet.labels)
