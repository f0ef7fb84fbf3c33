"""Do the pieces of a set meet; and what is said when they do not."""

import pytest

from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.geometry.assembled.assembly import as_wanted, assemble
from fireplace_calc.geometry.assembled.fitting import fit
from fireplace_calc.geometry.assembled.readings import lined, read_off
from fireplace_calc.pieces.choice import Choice, choose, extensions_of, heads_of
from fireplace_calc.pieces.set_text import read_set

MIDDLING = (DATA / "sets" / "middling.toml").read_text()
SHIPPED = shipped_sets()


def stood(text, **choice):
    return as_wanted(choose(read_set(text), Choice(**choice)))


@pytest.mark.parametrize("name", SHIPPED)
def test_every_shipped_set_fits_in_every_choice(name):
    made = read_set((DATA / "sets" / f"{name}.toml").read_text())
    for width in range(len(made.widths)):
        for extensions in range(extensions_of(made) + 1):
            for head in heads_of(made) or ("straight",):
                lifts = choose(made, Choice(width, extensions, head))
                assert fit(as_wanted(lifts)) == ()


WORSE = {
    "back too wide": (
        "outline = [[0, 0], [37.5, 0]",
        "outline = [[0, 0], [38.5, 0]",
        "WB.1",
        "inside",
    ),
    "back too deep in its rebate": (
        "at = [-18.75, 20.375]",
        "at = [-18.75, 19.75]",
        "WB.1",
        "WR.1",
    ),
    "wall too tall": (
        'mark = "WL"\nname = "left wall"\nmirror = "WR"',
        'mark = "WL"\nname = "left wall"\nmirror = "WR"\nheight = 10.5',
        "WL",
        "WR",
    ),
    "shelf finds no seat": ("at = [-24, 14]", "at = [-24, 24]", "SH.1", "seat"),
    "lintel too short": (
        "outline = [[0, 0], [53, 0], [53, 5], [0, 5]]",
        "outline = [[1.5, 0], [51.5, 0], [51.5, 5], [1.5, 5]]",
        "LS.1",
        "bears",
    ),
    "nest deeper than its mate": (
        "nest = { tongue = 0.75, socket = 1,",
        "nest = { tongue = 1.75, socket = 1,",
        "F8",
        "inside",
    ),
    "bore beside the collar": (
        'role = "flue"\nat = [0, 11.875]',
        'role = "flue"\nat = [3, 11.875]',
        "F8",
        "CT",
    ),
    "leak in the throat": (
        "outline = [[0, 0], [5, 0], [5, 5.25], [43, 5.25], [43, 0], [48, 0], [48, 8.5], [0, 8.5]]",
        "outline = [[0, 0], [5, 0], [5, 5.25], [40, 5.25], [40, 8.5], [0, 8.5]]",
        "N2.1",
        "SH.1 and N1.1 leave 9",
    ),
}


@pytest.mark.parametrize("case", WORSE)
def test_a_misfit_names_its_pieces_and_the_measure(case):
    old, new, piece, says = WORSE[case]
    assert old in MIDDLING
    try:
        found = " ".join(m.says for m in fit(stood(MIDDLING.replace(old, new, 1))))
    except ValueError as refused:
        found = str(refused)
    assert piece in found and says in found, found


@pytest.mark.parametrize(
    ("at", "kind", "by"), [("0.25", "wide", 1 / 16), ("0.03125", "tight", 1 / 16)]
)
def test_two_pieces_too_near_or_too_far_are_named_with_the_measure(at, kind, by):
    """The two base plates stand so far each side of the middle: twice that is their joint, which may
    be 1/8 to 7/16 in.
    """
    assert "at = [0.125, 0]" in MIDDLING
    (found,) = fit(stood(MIDDLING.replace("at = [0.125, 0]", f"at = [{at}, 0]", 1)))
    assert found.kind == kind and found.by / INCH == pytest.approx(by, abs=1e-5)
    assert sorted(name[:2] for name in found.names) == ["PL", "PR"], found


def test_a_joint_out_of_its_range_is_a_misfit():
    lifts = choose(read_set(MIDDLING), Choice())
    wanted = as_wanted(lifts)
    rises = [b - a for a, b in zip((0.0, *wanted.tops), wanted.tops, strict=False)]
    rises[1] += 0.25 * INCH
    found = fit(assemble(lifts, rises))
    assert [m.kind for m in found] == ["wide"] * 3
    assert 'its bed is 5/8" (15.9 mm), 1/8" (3.2 mm) too thick' in found[0].says


def test_lengths_are_read_off_the_pieces():
    """By hand, in inches: plate 3 on a bed of 1/2; three courses of 10 on 3/8; the lintel on 3/8; top
    walls 9; throat 5, reducer 16, collar 3, each on 3/8. Side: from 22-3/8 in front to 17-1/2 at a depth
    of 20, the splits and their joint square to it."""
    r = read_off(stood(MIDDLING))
    inches = {
        "plate_top": 3.5,
        "opening_top": 3.5 + 3 * 10.375 + 0.375,
        "throat_bottom": 3.5 + 3 * 10.375 + 9.375,
        "throat_top": 3.5 + 3 * 10.375 + 9.375 + 5.375,
        "head_top": 3.5 + 3 * 10.375 + 9.375 + 5.375 + 16.375 + 3.375,
        "half_width": 22.375,
        "depth": 20.375,
        "lintel_bearing": 4.125,
        "throat_front": 5,
        "throat_back": 10.5,
        "throat_width": 38,
        "bore_width": 15,
        "flue_half": 10,
        "half_over_all": 26.5,
        "deep_over_all": 23.75,
    }
    for name, wanted in inches.items():
        assert getattr(r, name) / INCH == pytest.approx(wanted, abs=1e-5), name
    assert r.splay == pytest.approx(4.875 / 20, abs=1e-6)
    half, back, depth = lined(r, read_set(MIDDLING).lining)
    aside = 1.375 * (1 + (4.875 / 20) ** 2) ** 0.5
    assert half / INCH == pytest.approx(22.375 - aside, abs=1e-5)
    assert depth / INCH == pytest.approx(19.0, abs=1e-5)
    assert back / INCH == pytest.approx(22.375 - aside - 19 * 4.875 / 20, abs=1e-5)


def test_an_extension_brings_its_joint_along():
    flat, raised = (read_off(stood(MIDDLING, extensions=n)) for n in (0, 2))
    assert (raised.opening_top - flat.opening_top) / INCH == pytest.approx(12.75)
