"""Sets broken on purpose: each kind of misfit is refused with a sentence that names the pieces and the
measure.

``SETS=2000 pytest tests/test_pieces_misfits.py`` breaks as many of each kind, by hand.
"""

import json
import os
import re
import tomllib
from dataclasses import replace

import pytest
from manifold3d import CrossSection
from sampled import sampled
from set_strategies import random_set, stood, text

from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.clash import _thickness, clash
from fireplace_calc.geometry.assembled.fitting import _pair, fit
from fireplace_calc.geometry.assembled.joints import seam
from fireplace_calc.geometry.assembled.lowering import _levels
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.records import JointRange
from fireplace_calc.pieces.set_text import read_set

COUNT = int(os.environ.get("SETS", "25"))
MEASURE = re.compile(r"\d\" \(\d+\.\d mm\)|: \d+(?: \d+/\d+|/\d+)?\" too much")


def piece(raw, *marks):
    return next(p for p in raw["piece"] if p["mark"] in marks)


def unit(raw):
    """An inch in the file's unit."""
    return 25.4 if raw["unit"] == "mm" else 1.0


def shift(raw, mark, dx=0.0, dy=0.0, field="outline"):
    one, inch = piece(raw, mark), unit(raw)
    for name in (field, "top"):
        if name in one:
            one[name] = [[x + dx * inch, y + dy * inch] for x, y in one[name]]


def grow(raw, mark, by):
    """Wider by so much at either end."""
    one, inch = piece(raw, mark), unit(raw)
    one["outline"] = [[x + (by * inch if x > 0 else -by * inch), y] for x, y in one["outline"]]


def own_left_wall(raw, **fields):
    """The left wall told by itself, so that it can differ."""
    left, right = piece(raw, "WL"), piece(raw, "WR")
    if "mirror" in left:
        left.clear()
        left.update(mark="WL", role="wall", height=right["height"])
        left["outline"] = [[-x, y] for x, y in reversed(right["outline"])]
    left.update(fields)
    return left


def drop(raw, lift, mark):
    next(one for one in raw["lift"] if one["name"] == lift)["pieces"].remove(mark)
    still = {m for one in raw["lift"] for m in one["pieces"]}
    raw["piece"] = [p for p in raw["piece"] if p["mark"] in still]
    for one in raw["piece"]:
        if "after" in one:
            one["after"] = [m for m in one["after"] if m == "lining" or m in still]
    if "lining" in raw:
        raw["lining"]["after"] = [m for m in raw["lining"]["after"] if m in still]


def wall_too_high(raw):
    left = own_left_wall(raw)
    left["height"] += 1.0 * unit(raw)


def back_too_wide(raw):
    grow(raw, "WB", 1.0)


def back_too_narrow(raw):
    grow(raw, "WB", -3.0)


def back_shifted(raw):
    shift(raw, "WB", dx=1.5)


def back_too_far_forward(raw):
    shift(raw, "WB", dy=-0.75)


def back_too_far_back(raw):
    shift(raw, "WB", dy=1.5)


def wall_moved_out(raw):
    own_left_wall(raw)
    shift(raw, "WL", dx=-2.0)


def wall_moved_back(raw):
    own_left_wall(raw)
    shift(raw, "WL", dy=2.0)


def lintel_too_short(raw):
    grow(raw, "LS", -(4.5))


def lintel_shifted(raw):
    shift(raw, "LS", dx=5.0)


def lintel_too_deep(raw):
    one, inch = piece(raw, "LS"), unit(raw)
    rear = max(y for _, y in one["outline"])
    one["outline"] = [[x, y + inch if y == rear else y] for x, y in one["outline"]]


def throat_shifted(raw):
    shift(raw, "NB", dy=1.5)


def throat_front_missing(raw):
    drop(raw, "throat", "NF")


def reducer_half_moved(raw):
    shift(raw, "RR", dx=1.0)  # its mirror moves along, and the two part


def reducer_too_small(raw):
    one = piece(raw, "R")
    one["outline"] = [[0.4 * x, y] for x, y in one["outline"]]
    one["top"] = [[0.4 * x, y] for x, y in one["top"]]
    one.pop("cut")


def flue_shifted(raw):
    one, inch = piece(raw, "F"), unit(raw)
    one["at"] = [one["at"][0] + 40 * inch, one["at"][1]]


def tongue_too_long(raw):
    piece(raw, "F")["nest"]["tongue"] += 1.5 * unit(raw)


def plates_too_short(raw):
    one = piece(raw, "P")
    one["outline"] = [[x, 0.3 * y] for x, y in one["outline"]]


def top_wall_not_set_back(raw):
    own = piece(raw, "TR")
    front = min(y for _, y in own["outline"])
    own["outline"] = [[x, 0.0 if y == front else y] for x, y in own["outline"]]


def bore_too_large(raw):
    one = piece(raw, "F")
    wide = max(x for x, _ in one["outline"]) * 2
    size = wide - 0.6 * unit(raw)
    one["bore"] = size if not isinstance(one["bore"], list) else [size, size]


def extension_wall_missing(raw):
    for lift in raw["lift"]:
        if lift["name"].startswith("extension"):
            lift["pieces"].remove("XR")
    raw["piece"] = [p for p in raw["piece"] if p["mark"] not in ("XR",)]
    left = next((p for p in raw["piece"] if p["mark"] == "XL"), None)
    if left is not None and "mirror" in left:
        wall, high = piece(raw, "WR"), piece(raw, "XB")["height"]
        left.clear()
        left.update(mark="XL", role="extension wall", height=high)
        left["outline"] = [[-x, y] for x, y in reversed(wall["outline"])]


def bore_leaves_a_thin_rim(raw):
    bore_too_large(raw)


def reducer_cut_too_narrow(raw):
    """Its foot ends an inch inside the throat's slot, right and left."""
    one, inch = piece(raw, "R"), unit(raw)
    slot = max(x for x, _ in one["cut"][0]["outline"])
    half = max(x for x, _ in one["outline"])
    share = (slot - inch) / half
    one["outline"] = [[share * x, y] for x, y in one["outline"]]
    one.pop("cut")


KEPT = {"rebate": 24, "left_more": 0, "joint": 4}
SIDE = r"W[LR]\.\d"
KINDS = {
    wall_too_high: ({}, (r"\bWL\b", r"\bW[RB]\b")),
    back_too_wide: (KEPT, (SIDE, r"WB\.1")),
    back_too_narrow: (KEPT, (SIDE, r"WB\.1")),
    back_shifted: (KEPT, (SIDE, r"WB\.1")),
    back_too_far_forward: (KEPT, (SIDE, r"WB\.1")),
    back_too_far_back: (KEPT, (SIDE, r"WB\.1")),
    wall_moved_out: (KEPT, (r"WL\.1", r"WB\.1")),
    wall_moved_back: (KEPT, (r"WL\.1", r"W[RB]\.1")),
    lintel_too_short: ({"arch": 0}, (r"LS\.1", r"[WX][LR]\.\d")),
    lintel_shifted: ({"arch": 0}, (r"LS\.1", r"[WX][LR]\.\d")),
    lintel_too_deep: ({"arch": 0}, (r"LS\.1", r"T[LR]\.1")),
    throat_shifted: ({"throats": 2}, (r"NB\.1", r"NF\.1")),
    throat_front_missing: ({"throats": 2}, (r"NB\.1", r"LS\.1")),
    reducer_half_moved: ({"reducers": 2}, (r"RL\.1", r"RR\.1")),
    reducer_too_small: ({"reducers": 1}, (r"\bR\.1", r"(?:N[BF]?|SH)\.1")),
    reducer_cut_too_narrow: ({"reducers": 1}, (r"\bR\.1", r"(?:N[BF]?|SH)\.1")),
    flue_shifted: ({"nest": 8}, (r"\bF\.1", r"\bC\.1")),
    tongue_too_long: ({"nest": 8, "flues": 4}, (r"\bF\.1", r"\bF\.2")),
    plates_too_short: ({"plates": 1}, (r"WB\.1", r"P\.1")),
    top_wall_not_set_back: ({"left_more": 0}, (r"TR\.1", r"LS\.1")),
    bore_too_large: ({"nest": 0, "flues": 3, "round": 0}, (r"\bF\.1", r"\bR[LR]?\.1")),
    bore_leaves_a_thin_rim: ({"nest": 0, "flues": 3, "round": 1}, (r"\bF\.2", r"\bF\.1")),
    extension_wall_missing: ({"extensions": 2}, (r"XB\.1", r"W[RB]\.\d")),
}


def inline(value):
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{k} = {inline(v)}" for k, v in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(map(inline, value)) + "]"
    return json.dumps(value)


def written(raw):
    """A set's file from what was read of one; a writer of our own, for it is written a thousand times."""
    lines = [f"{k} = {inline(v)}" for k, v in raw.items() if k not in ("piece", "lift", "width")]
    for name in ("piece", "lift", "width"):
        for one in raw.get(name, []):
            lines += [f"[[{name}]]", *(f"{k} = {inline(v)}" for k, v in one.items())]
    return "\n".join(lines)


def said_of(raw, recipe):
    """What is said of a set, sentence by sentence, by reading or by fitting."""
    try:
        lifts = choose(
            read_set(written(raw)), Choice(extensions=recipe.extensions, flues=recipe.flues)
        )
        return [f.says for f in fit(as_wanted(lifts))]
    except InputError as refused:
        return [str(refused)]


@pytest.mark.parametrize("kind", sampled(KINDS, 6), ids=lambda kind: kind.__name__)
def test_one_sentence_names_both_pieces_and_the_measure(kind):
    fixed, (one, other) = KINDS[kind]
    for seed in range(COUNT):
        recipe = replace(random_set(seed), **fixed)
        raw = tomllib.loads(text(recipe))
        kind(raw)
        said = said_of(raw, recipe)
        assert said, (kind.__name__, seed, "passes")
        assert any(re.search(one, s) and re.search(other, s) and MEASURE.search(s) for s in said), (
            seed,
            said,
        )


def test_how_thick_an_overlap_is_by_the_widest_circle_in_it():
    """A square of 80 mm takes a circle of 80; a ring from 60 to 100 mm across one of 20 between."""
    square = CrossSection.square((0.08, 0.08), True)
    ring = CrossSection.circle(0.05, 256) - CrossSection.circle(0.03, 256)
    assert _thickness(square) == pytest.approx(0.08, abs=1e-5)
    assert _thickness(ring) == pytest.approx(0.02, abs=1e-4)


def test_two_pieces_allow_the_joint_that_both_do():
    """From 1/4 to 1/2 in by the one, from 1/8 to 3/8 by the other: from 1/4 to 3/8."""
    piece = random_pieces()[0]
    one = replace(piece, perpend=JointRange(1 / 4, 3 / 8, 1 / 2))
    other = replace(piece, perpend=JointRange(1 / 8, 1 / 4, 3 / 8))
    assert _pair(one, other) == _pair(other, one) == (1 / 4, 3 / 8)


def test_a_piece_is_looked_at_inside_and_half_way_between_its_levels():
    piece = random_pieces()[0]
    (solid, *_), high = piece.adds, piece.height
    block = replace(
        piece, adds=(replace(solid, bottom=0.0, top=high, upper=solid.lower),), cuts=(), plain=None
    )
    assert _levels(block) == pytest.approx([0.0, high / 2, high], abs=1e-4)


def random_pieces():
    """Those of a lift of walls."""
    return [placed.piece for placed in stood(random_set(0)).by_lift[0]]


def test_the_joint_of_two_pieces_is_measured_at_foot_and_head():
    """One leans back by a centimeter from foot to head: 1 cm apart below, 2 cm above."""
    made = random_pieces()[0]
    (solid, *_), high = made.adds, made.height

    def block(left, right, lean):
        lower = ((left, 0.0), (right, 0.0), (right, 0.2), (left, 0.2))
        upper = tuple((x + (lean if x == left else 0.0), y) for x, y in lower)
        whole = replace(solid, bottom=0.0, top=high, lower=lower, upper=upper)
        joint = JointRange(0.0, 0.01, 0.03)
        return replace(made, adds=(whole,), cuts=(), plain=None, perpend=joint)

    found = seam(block(0.0, 0.1, 0.0), block(0.11, 0.3, 0.01))
    assert (found.least, found.most) == pytest.approx((0.01, 0.02), abs=1e-6)


def test_how_far_a_wedge_stands_in_another_piece_is_measured_half_way_up_what_they_share():
    """Between 30 and 50 cm to the right, from 5 to 15 cm up, the overlap is 4 cm thick below and
    nothing above: 2 cm in the middle, less than the 10 it is high.
    """
    made = random_pieces()[0]
    (solid, *_), _ = made.adds, made.height

    def block(lower, upper, bottom, top):
        whole = replace(solid, bottom=bottom, top=top, lower=lower, upper=upper)
        return replace(made, adds=(whole,), cuts=(), plain=None, height=top)

    def box_(x0, x1, y0, y1):
        return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))

    fixed = block(box_(0.3, 0.5, 0.0, 0.1), box_(0.3, 0.5, 0.0, 0.1), 0.05, 0.25)
    wedge = block(box_(0.2, 0.6, 0.06, 0.3), box_(0.2, 0.6, 0.1, 0.3), 0.05, 0.15)
    by, way = clash(fixed, wedge, 0.0)
    assert (by, way) == (pytest.approx(0.02, abs=1e-4), "in plan")
    assert clash(fixed, wedge, 0.195) == (pytest.approx(0.005, abs=1e-6), "in height")
