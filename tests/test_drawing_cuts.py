"""What the knife goes through, courses of a face, and the check that letters keep off hatching."""

from contextlib import suppress

import numpy as np
import pytest

from fireplace_calc import assess, change
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.annotation.beside_section import ABOVE
from fireplace_calc.drawing.composed.compose import single
from fireplace_calc.drawing.roof.roof_view import _ceiling
from fireplace_calc.drawing.sheets.hatch import coursing, lines_in
from fireplace_calc.drawing.sheets.ink_layers import layers
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet, View
from fireplace_calc.drawing.sheets.style import HATCHES, THEMES
from fireplace_calc.drawing.views.cuts import clip_top, cut_parts
from fireplace_calc.drawing.views.section_view import section_ends
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import Part
from fireplace_calc.geometry.polygons import box, overlap


def drawn(*cuts):
    """Total length by weight [mm] of parts cut at 100 mm to the metre."""
    sheet = Sheet(400, 400)
    cut_parts(
        View(sheet, 0.0, 0.0, 100.0),
        [(Part("p", material, ()), [polygon]) for material, polygon in cuts],
    )
    return {
        weight: sum(float(np.hypot(*np.diff(p, axis=0).T).sum()) for p in runs)
        for (weight, _), runs in sheet.lines.items()
    }


def test_two_materials_meet_in_a_thin_line_and_face_air_in_a_heavy_one():
    assert drawn(("brick", box(0, 1, 0, 1)), ("block", box(1, 2, 0, 1))) == pytest.approx(
        {"cut": 600, "seen": 100}
    )


def test_a_joint_inside_one_material_is_not_drawn():
    assert drawn(("brick", box(0, 1, 0, 1)), ("brick", box(1, 2, 0, 1))) == pytest.approx(
        {"cut": 600}
    )


def test_only_the_shared_part_of_an_edge_is_thin():
    assert drawn(("brick", box(0, 1, 0, 1)), ("block", box(1, 2, 0, 0.4))) == pytest.approx(
        {"cut": 100 * (1 + 1 + 1 + 0.6 + 1 + 1 + 0.4), "seen": 40}
    )


def test_what_is_thinner_than_a_pen_can_show_is_edged_lightly():
    assert drawn(("parging", box(0, 1, 0, 0.005))) == pytest.approx({"seen": 201})


def test_common_is_the_overlap():
    assert sorted(overlap(box(0, 2, 0, 2), box(1, 3, 1, 3))) == [(1, 1), (1, 2), (2, 1), (2, 2)]
    assert overlap(box(0, 1, 0, 1), box(2, 3, 2, 3)) == []


def test_holes_may_overlap_each_other_and_the_outline():
    """1600 less two squares of 400 and 400 that share 100 (plain geometry)."""
    outer, a, b = (
        np.array(r, float) for r in (box(0, 40, 0, 40), box(10, 30, 10, 30), box(20, 50, 20, 60))
    )
    for angle in (0.0, 45.0, 90.0):
        segments = lines_in([outer], angle, 0.05, 0.0, [a, b])
        assert np.hypot(*(segments[:, 1] - segments[:, 0]).T).sum() * 0.05 == pytest.approx(
            900, rel=0.002
        )


def test_head_joints_stand_over_the_middle_of_the_unit_below():
    found = coursing(
        [np.array(box(1, 39, 0, 12), float)],
        [np.array(box(10, 30, 4, 8), float)],
        (20.0, 0.0),
        4.0,
        10.0,
    )
    heads = found[np.abs(found[:, 0, 0] - found[:, 1, 0]) < 1e-9]
    low = heads[:, :, 1].min(axis=1)
    assert sorted(np.round(heads[low < 1, 0, 0], 3)) == [10, 20, 30]
    assert sorted(np.round(heads[(low > 3) & (low < 5), 0, 0], 3)) == [
        5,
        35,
    ], "none inside the hole"
    assert sorted(np.round(heads[low > 7, 0, 0], 3)) == [10, 20, 30]


def test_a_letter_over_hatching_is_found():
    sheet = Sheet(100, 100)
    sheet.text(50, 50, "throat")
    assert collisions(sheet) == []
    sheet.fill([np.array(box(30, 70, 40, 60), float)], "brick", "brick")
    assert any("across hatching" in fault for fault in collisions(sheet))


def test_only_level_and_upright_lines_are_put_on_whole_dots():
    sheet = Sheet(100, 100)
    sheet.line([(0, 0), (10, 0), (10, 10)])
    sheet.line([(0, 0), (10, 3)])
    crisp = [
        (layer.crisp, len(layer.path.vertices))
        for layer in layers(sheet, THEMES["light"])
        if layer.edge
    ]
    assert sorted(crisp) == [(False, 2), (True, 3)]


def test_the_ceiling_stops_at_a_flue_led_aside(boathouse):
    """The gap lies between the stack's own faces at the level of the ceiling."""
    geometry = assess(
        change(
            boathouse,
            {
                "roof.ridge_runs": "front to back",
                "flue.offset": "18 in",
                "flue.offset_rise": "8 ft",
                "house.ceiling": "11 ft",
            },
        )
    ).geometry
    sheet, ceiling = Sheet(300, 186), geometry.design.house.ceiling
    _ceiling(View(sheet, 100.0, 0.0, 10.0), geometry, (-3.0, 3.0))
    left, right = sheet.lines["fine", "ink"]
    aside, stack = (
        geometry.frame.shift_at(ceiling) - geometry.frame.offset,
        2 * geometry.frame.stack_half,
    )
    assert -geometry.frame.offset < aside < 0.0
    assert (left[1, 0], right[0, 0]) == pytest.approx(
        (100 + 10 * (aside - stack), 100 + 10 * aside)
    )


@pytest.mark.parametrize(("view", "wider"), [("plan", 1.6), ("detail", 1.6), ("section", 1.0)])
def test_broad_cuts_of_a_large_view_are_hatched_wider(view, wider):
    """Brick: the lines of a large plan and throat stand 1.6 times 1.6 mm apart, elsewhere 1.6 mm
    (our own choice of spacing).
    """
    sheet = single(view, build_geometry(Design()))
    whole = Sheet(
        sheet.width,
        sheet.height,
        hatched={"brick": sheet.hatched["brick"]},
        hatch_size=sheet.hatch_size,
    ).fine_lines()
    gaps = np.diff(np.unique(np.round((whole[:, 0, 1] - whole[:, 0, 0]) / np.sqrt(2), 3)))
    assert gaps.min() == pytest.approx(1.6 * wider, abs=0.01)


def made_of() -> dict[str, Design]:
    """A design for every material that a part can be of."""
    found = {}
    for key, spec in all_inputs().items():
        for word in spec.choices if spec.kind == "choice" else ():
            with suppress(InputError):
                design = change(Design(), {key: word})
                for part in build_geometry(design).parts:
                    found.setdefault(part.material, design)
    return found


@pytest.mark.parametrize(("material", "design"), made_of().items(), ids=made_of())
def test_every_material_of_a_part_has_a_hatch_and_a_tone_on_every_paper(material, design):
    assert material in HATCHES
    for theme in THEMES.values():
        assert material in theme.tones
        list(layers(single("section", build_geometry(design)), theme))


@pytest.mark.parametrize("crown", ["mortar", "metal"])
def test_a_crown_low_over_the_shoulder_is_not_in_the_section(crown, boathouse):
    """The section breaks off at the crown's underside, which the crown only touches there."""
    short = change(boathouse, {"flue.sections": 4, "chimney.cap_material": crown})
    raised = change(short, {"chimney.shoulder": "34 in"})
    f = build_geometry(raised).frame
    assert f.crown_bottom < f.shoulder_top + ABOVE
    sheet = single("section", build_geometry(raised))
    for theme in THEMES.values():
        list(layers(sheet, theme))
    assert crown not in {tone for _, tone in sheet.fills}
    shape = box(0, 1, 2, 3)
    assert clip_top(shape, 2) == () and clip_top(shape, 3) == shape
    assert sorted(clip_top(shape, 2.5)) == sorted(box(0, 1, 2, 2.5))


@pytest.mark.parametrize(
    ("changes", "front"),
    [
        ({"hearth.front": "20 in"}, 20 * 0.0254),
        ({"hearth.front": "0 in", "base.footing_projection": "6 in"}, 6 * 0.0254),
        ({"hearth.front": "0 in", "base.footing_projection": "0 in"}, 0.1),
    ],
)
def test_a_section_begins_a_stride_before_what_stands_out_farthest(changes, front):
    """Hearth, then footing, then ten centimeters where neither stands out; 12 cm of ground more."""
    geometry = build_geometry(change(Design(), changes))
    assert section_ends(geometry)[0] == pytest.approx(-front - 0.12)


@pytest.mark.parametrize("view", ["section", "detail"])
@pytest.mark.parametrize("bars", [1, 3, None])
def test_bars_of_a_reinforced_lintel_are_dots_where_they_lie(view, bars):
    """As many as are told, each as thick as its bar, at even places across the breast; none that
    nobody has told. Counted beside the same section without them.
    """

    def steel(number):
        made = build_geometry(
            change(
                Design(),
                {
                    "lintel.material": "reinforced masonry",
                    "lintel.height": "7-5/8 in",
                    "lintel.bars": number,
                    "lintel.bar": "No. 4",
                    "lintel.bar_center": "2-1/2 in",
                },
            )
        )
        sheet = single(view, made, "feet-inches")
        assert collisions(sheet) == []
        fills = [
            ring for (_, tone), many in sheet.fills.items() if tone == "steel" for ring in many
        ]
        return [ring[0] for ring in fills if len(ring[0]) >= 16]

    dots = steel(bars)
    assert len(dots) - len(steel(None)) == (bars or 0)
    if bars:
        wide = [np.ptp(dot[:, 0]) for dot in dots]
        middles = sorted(float(dot[:, 0].mean()) for dot in dots)
        assert max(wide) == pytest.approx(min(wide))
        if bars == 3:  # 8 in of breast: a third of it apart, 16/3 bars
            gaps = np.diff(middles)
            assert gaps == pytest.approx([wide[0] * 16 / 3] * 2, rel=0.01)
