"""A small set, and what is said, word for word, of every field that is told wrong: which table, which
field, what came, what is wanted. Invented.
"""

import pytest

from fireplace_calc.base.units import InputError
from fireplace_calc.pieces.choice import Choice, across, choose
from fireplace_calc.pieces.records import ArchCut, Round, Tapered
from fireplace_calc.pieces.set_text import read_set

PLATE = "[[0, 0], [20, 0], [20, 20], [0, 20]]"
NEST = "{ tongue = 0.75, socket = 1, wall = 1, clearance = 0.25 }"
ARCH = "{ span = 30, rise = 4, width = 40, depth = 5 }"
LIFTS = """\
[[lift]]
name = "base"
pieces = ["A"]
[[lift]]
name = "lintel"
pieces = ["5"]
[[lift]]
name = "flue"
pieces = ["F"]
repeat = [2, 9]
"""
SMALL = f"""\
name = "Small"
unit = "in"
density = 2000
bed = [0.25, 0.375, 0.5]
perpend = [0.125, 0.25, 0.5]
[lining]
thickness = 1.25
floor = 2.5
[[piece]]
mark = "A"
role = "base plate"
outline = {PLATE}
height = 3
[[piece]]
mark = "5"
role = "lintel"
arch = {ARCH}
height = 9
[[piece]]
mark = "F"
role = "flue"
outline = [[-10, -10], [10, -10], [10, 10], [-10, 10]]
bore = 12
nest = {NEST}
height = 8
{LIFTS}"""
TOLD_NEST = "{'tongue': 0.75, 'socket': 1, 'wall': 1, 'clearance': 0.25}"
TOLD_ARCH = "{'span': 30, 'rise': 4, 'width': 40, 'depth': 5}"
PAIR = "a pair: to the right of the center line, and set back"
KINDS = "refractory concrete, reinforced refractory concrete, clay, lightweight concrete"
WIDE = 'repeat = [2, 9]\n[[width]]\nname = "wide"\n'
WRONG = {
    "no thickness": ("thickness = 1.25\n", "", "The lining", "thickness", "missing", "a length"),
    "density": ("= 2000", '= "heavy"', "The set", "density", "'heavy'", "a number in kg/m3"),
    "yes for a density": ("= 2000", "= true", "The set", "density", "True", "a number in kg/m3"),
    "blank name": ('"base"', '"  "', "Lift 1", "name", "' '", "a name"),
    "one mark": ('= ["A"]', '= "A"', "Lift 1", "pieces", "'A'", "a list of marks"),
    "a number": ('["A"]', '["A", 1]', "Lift 1", "pieces", "['A', 1]", "a list of marks"),
    "place": ("height = 3", "height = 3\nat = 4", "Piece A", "at", "4", PAIR),
    "of three": ("height = 3", "height = 3\nat = [1, 2, 3]", "Piece A", "at", "[1, 2, 3]", PAIR),
    "all tongue": (
        "\nheight = 8",
        "\nover_all = 0.75",
        "Piece F",
        "over_all",
        "0.75",
        "more than the tongue",
    ),
    "arch and outline": (
        "height = 9",
        f"height = 9\noutline = {PLATE}",
        "Piece 5",
        "arch",
        TOLD_ARCH,
        "either an arch or an outline",
    ),
    "no outline": (
        f"outline = {PLATE}\n",
        "",
        "Piece A",
        "outline",
        "missing",
        "the corners of its outline, or an arch",
    ),
    "no bore": ("bore = 12\n", "", "Piece F", "nest", TOLD_NEST, "a bore to nest round"),
    "material": (
        "height = 3",
        'height = 3\nmaterial = "brick"',
        "Piece A",
        "material",
        "'brick'",
        f"one of {KINDS}",
    ),
    "empty lift": ('pieces = ["A"]\n', "", "Lift 1", "pieces", "missing", "at least one mark"),
    "extension": (
        '["A"]',
        '["A"]\nextension = 1',
        "Lift 1",
        "extension",
        "1",
        "true or false",
    ),
    "name twice": (
        'name = "lintel"',
        'name = "base"',
        "Lift 2",
        "name",
        "'base'",
        "a name that no other lift has",
    ),
    "swap": (
        "repeat = [2, 9]\n",
        WIDE + 'swap = ["A"]\n',
        "Width 1",
        "swap",
        "['A']",
        "a mark for each mark that changes",
    ),
    "swap for a number": (
        "repeat = [2, 9]\n",
        WIDE + "swap = { A = 5 }\n",
        "Width 1",
        "swap",
        "{'A': 5}",
        "marks of the set, and 5 is none",
    ),
    "swap of nothing": (
        "repeat = [2, 9]\n",
        WIDE + 'swap = { B = "A" }\n',
        "Width 1",
        "swap",
        "{'B': 'A'}",
        "marks of the set, and 'B' is none",
    ),
    "head is a number": (
        '["A"]',
        '["A"]\nheads = { straight = 5 }',
        "Lift 1",
        "heads",
        "{'straight': 5}",
        "marks of the set, and 5 is none",
    ),
    "head is a list": (
        '["A"]',
        '["A"]\nheads = { straight = ["A"] }',
        "Lift 1",
        "heads",
        "{'straight': ['A']}",
        "marks of the set, and ['A'] is none",
    ),
    "lining": (
        "[lining]\nthickness = 1.25\nfloor = 2.5\n",
        "lining = 1.25\n",
        "The set",
        "lining",
        "1.25",
        "a table of thickness, joint, floor and after",
    ),
    "limits": (
        "[lining]",
        "limits = 13\n[lining]",
        "The set",
        "limits",
        "13",
        "a table of raise, stack and approval",
    ),
    "corner twice": (
        PLATE,
        "[[0, 0], [20, 0], [20, 0], [0, 20]]",
        "Piece A",
        "outline",
        "[[0, 0], [20, 0], [20, 0], [0, 20]]",
        "a ring whose sides do not cross is wanted; measure it in order",
    ),
    "top runs back": (
        "height = 3",
        "height = 3\ntop = [[0, 0], [0, 20], [20, 20], [20, 0]]",
        "Piece A",
        "top",
        "[[0, 0], [0, 20], [20, 20], [20, 0]]",
        "corners in the order of the outline's",
    ),
    "top half round": (
        "height = 3",
        "height = 3\ntop = [[20, 20], [0, 20], [0, 0], [20, 0]]",
        "Piece A",
        "top",
        "[[20, 20], [0, 20], [0, 0], [20, 0]]",
        "sides parallel to the outline's, one by one is wanted; a side that turns from bottom to top is not flat",
    ),
    "hole in no round": (
        "height = 3",
        f"height = 3\ncut = [{{ outline = {PLATE}, hole = 2 }}]",
        "Piece A, cut",
        "hole",
        "2",
        "a round solid to be in",
    ),
    "nest": (
        f"nest = {NEST}",
        "nest = 1",
        "Piece F",
        "nest",
        "1",
        "a table of tongue, socket, wall and clearance",
    ),
    "arch": (
        f"arch = {ARCH}",
        "arch = 30",
        "Piece 5",
        "arch",
        "30",
        "a table of span, rise, width and depth",
    ),
    "arch set back": (
        "height = 9",
        "height = 9\nat = [0, 1]",
        "Piece 5",
        "at",
        "[0, 1]",
        "[0, 0] for an arch, which stands at the front on the center line",
    ),
}
"""What stands in the file, what is put in its place, and which table, which field, what came, what is
wanted."""


@pytest.mark.parametrize("case", WRONG)
def test_what_is_told_wrong_is_said_word_for_word(case):
    old, new, where, field, came, wanted = WRONG[case]
    assert SMALL.count(old) == 1
    with pytest.raises(InputError) as refused:
        read_set(SMALL.replace(old, new))
    says = wanted if " is wanted" in wanted else f"{wanted} is wanted"
    assert str(refused.value) == f"{where}, {field}: it is {came}, but {says}."
    assert refused.value.name == field
    assert refused.value.allowed == wanted.partition(" is wanted")[0]
    # Blanks in a row are one blank in a sentence; what came is kept as it came.
    assert refused.value.received == ("'  '" if case == "blank name" else came)


def test_a_set_without_lifts_asks_for_one_to_two_hundred():
    with pytest.raises(InputError) as refused:
        read_set(SMALL.replace(LIFTS, ""))
    assert str(refused.value) == "The set has 0 lifts; 1 to 200 are wanted, from the base up."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("lift", "pieces whose tops come level", 0)


def test_a_head_that_the_set_does_not_have_is_refused_with_those_it_has():
    one = 'pieces = ["A"]\nheads = { straight = "5" }'
    made = read_set(SMALL.replace('pieces = ["A"]', one))
    with pytest.raises(InputError) as refused:
        choose(made, Choice(head="segmental"))
    assert str(refused.value) == "Head is segmental, but Small comes with straight."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("head", "straight", "segmental")
    both = read_set(
        SMALL.replace(
            'pieces = ["A"]', 'pieces = ["A"]\nheads = { straight = "5", segmental = "F" }'
        )
    )
    with pytest.raises(InputError) as refused:
        choose(both, Choice(head="flat"))
    assert str(refused.value) == "Head is flat, but Small comes with straight or segmental."
    assert refused.value.allowed == "straight, segmental"


def test_how_far_solids_reach_to_both_sides():
    ring = ((-3.0, 0.0), (4.0, 0.0), (4.0, 2.0))
    top = ((-2.0, 0.0), (7.0, 0.0), (7.0, 2.0))
    assert across((Tapered(0.0, 1.0, ring, top),)) == (-3.0, 7.0)
    assert across((Round(0.0, 1.0, 1.5, (4.0, 9.0)),)) == (2.5, 5.5)
    assert across((ArchCut(1.0, 6.0, 2.0),)) == (-3.0, 3.0)
    assert across((ArchCut(1.0, 6.0, 2.0), Round(0.0, 1.0, 1.5, (4.0, 9.0)))) == (-3.0, 5.5)
