"""Every published example of the old handbooks by the project's own functions.

The rows stand in ``data/examples_handbook.csv`` with source, tolerance and confidence; each is
worked here by a function of the product, never by arithmetic of the test, and held to its figure in
``test_published_cases``.
"""

from math import ceil, degrees

import pytest

from fireplace_calc.base.tables import rows
from fireplace_calc.base.tables.mortars import mix
from fireplace_calc.base.units import CUFT, CUYD, FOOT, INCH, SQFT, SQIN, in_unit
from fireplace_calc.brickwork.unit import COMMON, Unit, block, in_mass
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.parts import part
from fireplace_calc.geometry.polygons import area, box
from fireplace_calc.geometry.solids import prism
from fireplace_calc.takeoff import handbook, handbook_flues, take_off
from fireplace_calc.takeoff.rows import to_order
from fireplace_calc.takeoff.rules_of_thumb import second_opinion

TABLE = {row["id"]: row for row in rows("examples_handbook.csv")}
LINERS = ("8.5x13", "13x13", "8.5x8.5")
"""Of the bulletin's estimate, two fireplaces and a furnace."""
BRICK = 6100.0
"""6.1 thousand, which the bulletin goes on with."""


def slab(wide, deep, thick, *holes):
    """A slab of the geometry with upright holes through it."""
    return part(
        "slab",
        "concrete",
        [prism(0.0, thick, box(0.0, wide, 0.0, deep))],
        [prism(0.0, thick, hole) for hole in holes],
    )


def with_flue(**changes):
    return build_geometry(
        change(Design(), {f"flue.{name}": value for name, value in changes.items()})
    )


def liner_outline(size):
    """Outside of a liner as the geometry cuts it level."""
    liner = with_flue(size=size).by_name["flue liner"]
    return liner.plan(liner.bottom + 0.1)[0][0]


def cap_with_flues():
    """4.5 x 2.66 x 0.5 ft with the three liners let through it, side by side."""
    holes, left = [], 0.05
    for size in LINERS:
        outline = liner_outline(size)
        wide, deep = (max(p[k] for p in outline) - min(p[k] for p in outline) for k in (0, 1))
        holes.append(box(left, left + wide, 0.05, 0.05 + deep))
        left += wide + 0.05
    return slab(4.5 * FOOT, 2.66 * FOOT, 0.5 * FOOT, *holes)


def footing():
    """A design whose footing comes out 7 x 3.75 x 1 ft."""
    return change(
        Design(),
        {
            "opening.width": "48 in",
            "firebox.back_width": "30 in",
            "firebox.depth": "24-1/2 in",
            "base.footing_thickness": "1 ft",
            "waste.concrete": "0 %",
        },
    )


def liner_length():
    """28, 20 and 20 ft of liner, as the takeoff counts it."""
    feet = 0.0
    for size, sections in zip(LINERS, (14, 10, 10), strict=True):
        made = with_flue(size=size, sections=sections, section_height="24 in", joint="0 in")
        net = {row.item: row.net for row in take_off(made)}["Clay flue liner"]
        assert made.frame.flue_length == pytest.approx(net * made.design.flue.section_height)
        feet += made.frame.flue_length / FOOT
    return feet


def ratio(width, height, size):
    """Opening over the bare inside of its flue, as drawn."""
    made = build_geometry(
        change(
            Design(),
            {
                "opening.width": f"{width} in",
                "opening.standard_height": f"{height} in",
                "flue.size": size,
            },
        )
    )
    return made.frame.opening_area / made.frame.bore.area


def corbel_slope():
    """From the level, of a flue carried over by half of each course's height all the way up."""
    return 90 - degrees(with_flue(offset="20 in", offset_rise="40 in").frame.offset_slope)


OURS = {
    "FB1889-flue-1": lambda: handbook_flues.flue_area(7.5 * SQFT, 22 * FOOT) / SQIN,
    "FB1889-flue-2": lambda: handbook_flues.flue_area(1080 * SQIN, 30 * FOOT, lined=False) / SQIN,
    "FB1889-flue-3": lambda: (
        area(
            box(
                0,
                handbook_flues.brick_flue(108 * SQIN)[0],
                0,
                handbook_flues.brick_flue(108 * SQIN)[1],
            )
        )
        / SQIN
    ),
    "FB1889-chimney-1": lambda: handbook.courses(30 * FOOT),
    "FB1889-chimney-2": lambda: handbook.brick_by_courses(30 * FOOT, 15.5),
    "FB1889-chimney-3": lambda: handbook.brick_by_courses(30 * FOOT, 15.5, solid_base=100),
    "FB1889-volume-1": lambda: (
        slab(368 * FOOT, FOOT, FOOT, box(0, 99 * FOOT, 0, FOOT)).volume / CUFT
    ),
    "FB1889-volume-2": lambda: handbook.wall_measure(269 * CUFT),
    "FB1889-mortar-1": lambda: to_order(mix(handbook.mortar(BRICK)).lime, 0.0, 1),
    "FB1889-mortar-2": lambda: to_order(mix(handbook.mortar(BRICK)).cement, 0.0, 1),
    "FB1889-mortar-3": lambda: to_order(mix(handbook.mortar(BRICK)).sand / CUFT, 0.0, 1),
    "FB1889-mortar-4": lambda: in_unit(110 * CUFT, "yd3"),
    "FB1889-concrete-1": lambda: build_geometry(footing()).by_name["footing"].volume / CUFT,
    "FB1889-concrete-2": lambda: slab(4.5 * FOOT, 2.66 * FOOT, 0.5 * FOOT).volume / CUFT,
    "FB1889-concrete-3": lambda: cap_with_flues().volume / CUFT,
    "FB1889-flues-area": lambda: sum(area(liner_outline(size)) for size in LINERS) / SQFT,
    "FB1889-flue-lengths": liner_length,
    "FB1230-flue-1": lambda: handbook_flues.older_flue_area(8.25 * SQFT) / SQIN,
    "FB1230-flue-2": lambda: (
        area(
            box(
                0,
                handbook_flues.brick_flue(107 * SQIN)[0],
                0,
                handbook_flues.brick_flue(107 * SQIN)[1],
            )
        )
        / SQIN
    ),
    "NAV-brick-1": lambda: SQFT * COMMON.per_area,
    "NAV-brick-2": lambda: 112 * SQFT * COMMON.per_area,
    "NAV-brick-3": lambda: to_order(112 * SQFT * COMMON.per_area, 0.10, 10),
    "NAV-mortar-1": lambda: handbook.mortar(760, thick=False) / CUFT,
    "NAV-mortar-2": lambda: to_order(handbook.mortar(760, thick=False) / CUFT, 0.20, 0.1),
    "NAV-mortar-3": lambda: 1000 * COMMON.joint_volume / CUFT,
    "TEK14-cmu": lambda: 100 * SQFT * block(build_geometry(Design())).per_area,
    "BIA36A-slope": corbel_slope,
    "FB1889-T3-ratio-1": lambda: ratio(36, 28, "8.5x18"),
    "FB1889-T3-ratio-2": lambda: ratio(48, 36, "13x18"),
    "FB1889-T3-ratio-3": lambda: ratio(60, 40, "18x18"),
}


def test_the_misprint_is_an_area_off_a_volume():
    """FB1889-concrete-3: as printed 5.9 ft3 less 2.48 is 3.42, and 2.48 are square feet; half a
    foot of them is 1.24 ft3, which leaves 4.66 by the printed figures and 4.76 by sizes. Only this
    row is held to a corrected figure.
    """
    cap, flues, net = (
        float(TABLE[f"FB1889-{name}"]["published"])
        for name in ("concrete-2", "flues-area", "concrete-3")
    )
    assert cap - flues == pytest.approx(net)
    assert cap - flues * 0.5 == pytest.approx(4.66)
    assert OURS["FB1889-concrete-3"]() == pytest.approx(4.763, abs=0.001)
    assert abs(OURS["FB1889-concrete-3"]() - net) > 1.3
    assert [key for key, row in TABLE.items() if row["corrected"]] == ["FB1889-concrete-3"]


def test_ratios_to_their_second_decimal():
    """FB1889-T3-ratio-1 to -3 worked out beside the table: 9.19, 9.45, 9.67; and 8.5x13, as printed
    for 36 x 28, is 12.5.
    """
    assert [OURS[f"FB1889-T3-ratio-{k}"]() for k in (1, 2, 3)] == pytest.approx(
        [9.19, 9.45, 9.67], abs=0.005
    )
    assert ratio(36, 28, "8.5x13") == pytest.approx(12.52, abs=0.005)


def test_the_liner_that_the_bulletin_names():
    """FB1889-flue-1: 90 in2 call for 8.5x18 or a 12 in round; and both sides of a liner's own area."""
    assert (
        handbook_flues.next_liner(90 * SQIN, "rectangular") == "8.5x18"
        and handbook_flues.next_liner(90 * SQIN, "round") == "12"
    )
    own = handbook_flues.inside_area("13x13", "rectangular")
    assert (
        handbook_flues.next_liner(own, "rectangular") == "13x13"
        and handbook_flues.next_liner(1.0001 * own, "rectangular") == "13x18"
    )
    assert handbook_flues.next_liner(300 * SQIN, "rectangular") is None
    assert handbook_flues.next_liner(90 * SQIN, "rectangular", ["12x12", "13x13"]) == "12x12"
    assert handbook_flues.stock("rectangular") == (
        "8.5x8.5",
        "8.5x13",
        "8.5x18",
        "13x13",
        "13x18",
        "18x18",
    )


@pytest.mark.parametrize(
    ("height", "lined", "part"),
    [(22, True, 12), (21.99, True, 10), (40, False, 10), (10, False, 10)],
)
def test_flue_by_height_and_lining(height, lined, part):
    """USDA FB 1889 (1941), flue section (read twice): both sides of 22 ft, lined or not."""
    assert handbook_flues.flue_area(1.2, height * FOOT, lined) == pytest.approx(1.2 / part)


def test_a_brick_flue_is_whole_half_bricks():
    for wanted in range(20, 500, 7):
        short, long = handbook_flues.brick_flue(wanted * SQIN)
        assert (
            short * long >= wanted * SQIN * (1 - 1e-9)
            and 8 * INCH - 1e-9 <= short <= long <= 2 * short + 1e-9
        )
        assert all(
            (side / (4 * INCH)) == pytest.approx(round(side / (4 * INCH))) for side in (short, long)
        )
    assert handbook_flues.brick_flue(128.0 * SQIN)[1] / INCH == pytest.approx(16)
    assert handbook_flues.brick_flue(128.1 * SQIN)[0] / INCH == pytest.approx(12)


def test_concrete_taken_as_a_yard():
    """FB1889-concrete-1: 26.25 ft3 taken as a cubic yard: 5 sacks, 0.46 yd3 of sand, 0.92 of
    gravel; the order is a yard too.
    """
    row = {r.item: r for r in take_off(build_geometry(footing()))}["Footing concrete"]
    made = handbook.concrete(row.order * CUYD)
    assert (row.order, made.cement, made.sand / CUYD, made.gravel / CUYD) == (
        1.0,
        5.0,
        pytest.approx(0.46),
        pytest.approx(0.92),
    )
    assert "5 sacks" in row.note and "0.92" in row.note


def test_the_printed_mortar_factor_and_ours():
    """NAV-mortar-1 takes 11.7 to the thousand as printed; by our own joints, 11.66, the wall's 8.9
    ft3 are 8.87 (the manual rounds its factor up).
    """
    assert 760 * COMMON.joint_volume / CUFT == pytest.approx(8.865, abs=0.001)


def test_second_opinions_say_what_the_handbook_says():
    made = build_geometry(Design())
    said = {o.what: o for o in second_opinion(made, take_off(made))}
    assert said["Flue area"].counted == pytest.approx(11.25**2)
    assert (
        said["Flue area"].by_rule == pytest.approx(36 * 30 / 12)
        and "8.5x18 outside or 12 round" in said["Flue area"].why
    )
    assert said["Flue area, older rule"].by_rule == pytest.approx(7.5 * 13)
    unlined = build_geometry(change(Design(), {"flue.liner": "unlined"}))
    found = {o.what: o for o in second_opinion(unlined, take_off(unlined))}["Flue area"]
    assert found.by_rule == pytest.approx(108) and "8 x 16 in" in found.why
    low = build_geometry(change(Design(), {"flue.sections": 5}))
    assert {o.what: o for o in second_opinion(low, take_off(low))}[
        "Flue area"
    ].by_rule == pytest.approx(108)
    # 21'-7" over a hearth that is raised 16 in itself: less than 22 ft, a tenth
    raised = build_geometry(change(Design(), {"flue.sections": 8, "base.hearth_level": "16 in"}))
    assert {o.what: o for o in second_opinion(raised, take_off(raised))}[
        "Flue area"
    ].by_rule == pytest.approx(108)
    stack = said["Brick of the chimney walls, by courses"]
    assert stack.by_rule / stack.counted == pytest.approx(4.5 * 2.75 / 12)
    bare = {o.what for o in second_opinion(made, ())}
    assert "Flue area" in bare  # nothing is counted: no opinion on brick
    assert not bare & {"Firebrick", "Refractory mortar", "Mortar, one wythe"}


# -- further published figures, from memory ------------------------------------------------------------

MODULAR = [  # BIA Technical Notes 10, brick to 100 square feet without waste by nominal size (memory); length, course, count
    ("modular", 8, 8 / 3, 675),
    ("engineer modular", 8, 3.2, 563),
    ("economy", 8, 4, 450),
    ("double", 8, 16 / 3, 338),
    ("roman", 12, 2, 600),
    ("norman", 12, 8 / 3, 450),
    ("norwegian", 12, 3.2, 375),
    ("utility", 12, 4, 300),
]


@pytest.mark.parametrize(
    ("name", "long", "course", "printed"), MODULAR, ids=[row[0] for row in MODULAR]
)
@pytest.mark.parametrize("joint", [3 / 8, 1 / 2])
def test_modular_brick_to_a_hundred_square_feet(name, long, course, printed, joint):
    """BIA Technical Notes 10 (memory): nominal sizes hold their joint, so the joint does not
    matter; half the last digit.
    """
    unit = Unit((long - joint) * INCH, (course - joint) * INCH, 3.625 * INCH, joint * INCH)
    assert 100 * SQFT * unit.per_area == pytest.approx(printed, abs=0.5001)


@pytest.mark.parametrize(("joint", "high", "printed"), [(3 / 8, 2.25, 655), (1 / 2, 2.25, 616)])
def test_standard_brick_to_a_hundred_square_feet(joint, high, printed):
    """8 x 2-1/4 in face: 655 with 3/8 in joints, 616 with 1/2 in, as BIA Technical Notes 10 has
    them (memory).
    """
    assert 100 * SQFT * Unit(
        8 * INCH, high * INCH, 3.75 * INCH, joint * INCH
    ).per_area == pytest.approx(printed, abs=0.6)


@pytest.mark.parametrize(
    ("sizes", "joint", "printed", "tolerance"),
    [((7.625, 2.25, 3.625), 3 / 8, 8.1, 0.05), ((7.5, 2.25, 3.5), 1 / 2, 10.3, 0.1)],
)
def test_mortar_to_a_thousand_modular_brick(sizes, joint, printed, tolerance):
    """BIA Technical Notes 10, table 4 (memory): 8.1 and 10.3 ft3. It reckons with 2-1/4 in brick as
    made; by the course of 2-2/3 in, which its own count of 675 goes by, bed joints are thicker and
    3/8 in gives 8.8.
    """
    unit = Unit(*(side * INCH for side in sizes), joint * INCH)
    assert 1000 * unit.joint_volume / CUFT == pytest.approx(printed, abs=tolerance)
    coursed = Unit(7.625 * INCH, (8 / 3 - 3 / 8) * INCH, 3.625 * INCH, 3 / 8 * INCH)
    assert 1000 * (coursed.module - 7.625 * 2.25 * SQIN) * coursed.depth / CUFT == pytest.approx(
        8.8, abs=0.05
    )


@pytest.mark.parametrize(("high", "printed"), [(7.625, 112.5), (3.625, 225)])
def test_block_by_its_face(high, printed):
    """8 and 4 in high block of 16 in to 100 square feet: 112.5 and 225 (NAVEDTRA 14045 table 4-3,
    memory).
    """
    assert 100 * SQFT * Unit(
        15.625 * INCH, high * INCH, 7.625 * INCH, 0.375 * INCH
    ).per_area == pytest.approx(printed)


def test_straights_to_the_cubic_foot():
    """9 x 4-1/2 x 2-1/2 in: 17.1 dry and 15.6 with 1/8 in joints to the cubic foot (old pocket
    books say 17; memory).
    """
    dry, thin = (
        in_mass(Unit(9 * INCH, 2.5 * INCH, 4.5 * INCH, joint * INCH)).per_volume * CUFT
        for joint in (0.0, 0.125)
    )
    assert (dry, thin) == (pytest.approx(17.07, abs=0.01), pytest.approx(15.6, abs=0.05))
    assert ceil(dry) == 18 and handbook.figure("firebrick") == 17
