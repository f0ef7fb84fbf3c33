"""Small functions at their ends, asked by hand: what no invented design comes to, and what is said
then.
"""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from fireplace_calc import Design, assess, change
from fireplace_calc.base.resources import SETS
from fireplace_calc.base.tables.draft import coefficients
from fireplace_calc.base.tables.erection import allowed_off
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.brickwork.bonds import basketweave_joint, brick_corners
from fireplace_calc.brickwork.unit import Unit
from fireplace_calc.build.mortar import fahrenheit
from fireplace_calc.build.on_site.set_in import list_set_in
from fireplace_calc.build.order import _sorted_by_level
from fireplace_calc.build.setting.staging_wording import _against
from fireplace_calc.draft.odds import _between as drawn_between
from fireplace_calc.draft.physics import weather
from fireplace_calc.drawing.lessons.figures.word_leaders import within
from fireplace_calc.geometry.assembled.joints import _between
from fireplace_calc.geometry.assembled.solids import extent
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.standing_solids import _bed
from fireplace_calc.heat.conduction import march
from fireplace_calc.heat.conduction.mesh import HeatMesh, NotWorked
from fireplace_calc.heat.conduction.raster import reach_the_wall
from fireplace_calc.heat.cuts.below_hearth import hearth_layers
from fireplace_calc.heat.cuts.from_geometry import solid
from fireplace_calc.heat.cuts.section_cut import section_mesh
from fireplace_calc.pieces.records import Round
from fireplace_calc.pieces.set_text import read_set
from fireplace_calc.pieces.standing.inspector_record import RecordRow
from fireplace_calc.rules.book import Book
from fireplace_calc.rules.tracing.traced import Reading, Traced
from fireplace_calc.structure.loads.hill import hill_at
from fireplace_calc.takeoff import shares
from fireplace_calc.takeoff.facing import facing_of


def test_a_measure_without_its_length_has_the_widest_tolerance():
    """TMS 602, article 3.3 F, from memory: 1/4 in 10 ft, 3/8 in 20 ft, 1/2 at most."""
    assert allowed_off("plumb", None) == pytest.approx(0.5 * INCH)


@pytest.mark.parametrize(
    ("kelvin", "taken"), [(150, False), (151, True), (399, True), (400, False)]
)
def test_a_temperature_in_another_unit_is_refused(kelvin, taken):
    if taken:
        assert fahrenheit(kelvin) == pytest.approx(kelvin * 1.8 - 459.67)
        return
    with pytest.raises(InputError) as refused:
        fahrenheit(kelvin)
    assert str(refused.value) == (
        f"Temperature is {kelvin} K, but 150 to 400 K is allowed; mind the unit."
    )
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("Temperature", "150 to 400 K", kelvin)


def test_parts_that_wait_for_each_other_are_named_in_their_ring():
    parts = [SimpleNamespace(name=name) for name in ("footing", "slab", "walls")]
    with pytest.raises(ValueError, match="none can be built first") as refused:
        _sorted_by_level(parts, {0: set(), 1: {2}, 2: {1}})
    words = str(refused.value)
    assert words.startswith("These parts wait for each other and none can be built first: ")
    assert set(words.partition(": ")[2].rstrip(".").split(", ")) == {"slab", "walls"}


@pytest.mark.parametrize(
    ("both", "words"),
    [
        (100.4, "cost no more carrying"),
        (99.6, "cost no more carrying"),
        (100.6, "cost 1 % more carrying"),
        (112.0, "cost 12 % more carrying"),
        (99.4, "spare 1 % of it"),
        (80.0, "spare 20 % of it"),
    ],
)
def test_what_piles_cost_in_carrying_is_said_from_half_a_percent_on(both, words):
    assert _against(both, 100.0) == words
    assert _against(both, 0.0) == "cost no more carrying"


def test_a_range_is_drawn_between_its_ends_and_asked_for_where_there_is_none(monkeypatch):
    known = coefficients()["wind in the house"]
    drawn = drawn_between(np.random.default_rng(1), known, 500)
    assert known.low <= drawn.min() and drawn.max() <= known.high
    for end in ("low", "high"):
        without = replace(known, **{end: None})
        with pytest.raises(ValueError, match=r"^A published range is needed, but .* has none\.$"):
            drawn_between(np.random.default_rng(1), without, 5)
        monkeypatch.setattr(weather, "coefficients", lambda it=without: {"wind in the house": it})
        with pytest.raises(ValueError, match=r"^A published range is needed, but .* has none\.$"):
            weather.wind_range(SimpleNamespace(low=-0.1, high=0.2))


def test_sides_that_are_points_or_look_the_same_way_are_no_joint():
    here, there = ((0.0, 0.0), (1.0, 0.0)), ((1.0, 0.01), (0.0, 0.01))
    point = ((0.0, 0.0), (0.0, 0.0))
    assert _between(point, there, 1.0) is None
    assert _between(here, here, 1.0) is None


def test_a_fire_reaches_as_far_as_the_first_solid_and_no_farther_than_there_is_one():
    """Row by row: 0 fire, 1 slot, 2 hollow aside, 3 solid; cells of an inch."""
    which = np.array([[0, 1, 3, 3], [0, 1, 1, 2], [0, 0, 3, 1], [3, 3, 3, 3]])
    reach_the_wall(which, 0, 1, 2, np.arange(5) * INCH)
    assert which.tolist()[1:] == [[0, 1, 1, 2], [0, 0, 3, 1], [3, 3, 3, 3]]


def test_temperatures_that_do_not_settle_are_never_told(monkeypatch):
    """No patience at all: neither the rest nor a step is found."""
    settled = march.Conduction.__new__(march.Conduction)
    monkeypatch.setattr(march, "TURNS", 0)
    settled.bends = SimpleNamespace(count=1)
    settled.mesh = SimpleNamespace(points=3)
    monkeypatch.setattr(march.Conduction, "_driven", lambda self, drives: np.zeros(3))
    for ask in (
        lambda: settled.steady({"room": 20.0, "fire": 600.0}),
        lambda: settled._solved(0.1, np.zeros(3), np.zeros(3), {"room": 20.0}),
    ):
        with pytest.raises(march.NotSettled) as refused:
            ask()
        assert str(refused.value) == march.NO_REST


def test_a_cut_has_as_many_cells_as_it_has_room_between_its_edges():
    with pytest.raises(ValueError, match="cells") as refused:
        HeatMesh(np.arange(4.0), np.arange(3.0), (), np.zeros((3, 2), int))
    assert str(refused.value) == "which is (3, 2), but there are (2, 3) cells."


def test_a_material_that_is_not_in_the_tables_is_named():
    with pytest.raises(NotWorked) as refused:
        solid("cork")
    assert str(refused.value) == "How cork conducts heat is not in the tables."


def test_a_record_within_all_its_tolerances_says_yes():
    def row(*within):
        told = tuple(SimpleNamespace(measure=f"m{n}", within=w) for n, w in enumerate(within))
        return RecordRow(None, 0.0, True, told).verdict

    assert row(True, True) == "yes"
    assert row(True, None) == "as far as measured; not checked: m1"
    assert row(None, None) == "not checked"
    assert row(True, False) == "NO: m1"


def test_a_hill_that_is_not_all_told_raises_no_wind():
    hill = {"loads.hill": "ridge", "loads.exposure": "C", "loads.hill_height": "60 ft"}
    hill |= {"loads.hill_length": "100 ft", "loads.hill_distance": "50 ft"}
    whole = change(Design(), hill).loads
    assert hill_at(whole, 10.0) > 1.0
    for key in ("hill_height", "hill_length", "hill_distance", "exposure"):
        assert hill_at(replace(whole, **{key: None}), 10.0) == 1.0


@pytest.mark.parametrize(("head", "step"), [("straight", "Lintel"), ("segmental", "Arch")])
def test_a_brick_arch_wants_its_centering_in_the_step_in_which_it_is_laid(head, step):
    result = assess(change(Design(), {"lintel.material": "masonry arch", "opening.head": head}))
    (listed,) = (
        one
        for one in list_set_in(result.work, build_geometry(result.design))
        if one.item == "Centering"
    )
    assert listed.step == next(one.number for one in result.work.steps if one.name == step)
    plain = assess(Design())
    items = {one.item for one in list_set_in(plain.work, build_geometry(plain.design))}
    assert "Centering" not in items


def test_a_basketweave_that_does_not_close_is_not_laid():
    unit = Unit(8 * INCH, 3 * INCH, 3 * INCH, 0.5 * INCH)
    assert basketweave_joint(unit) is None
    with pytest.raises(ValueError, match="basketweave") as refused:
        brick_corners("basketweave", unit, (0.0, 0.0, 1.0, 1.0), (0.0, 0.0))
    assert str(refused.value) == (
        f"No basketweave closes with {unit}; ask basketweave_joint first."
    )


def test_a_rule_without_its_source_says_where_to_put_it():
    book = Book("Invented")
    with pytest.raises(LookupError) as refused:
        book.rule("NIL-01", "1", "Title", "m", "length")(lambda facts: None)
    assert refused.value.args == (
        "Rule NIL-01 has no source: put its row into the book's file in data/, such as"
        " data/us_irc_sources.csv.",
    )
    assert book.rules == []


def test_what_a_rule_reads_of_the_design_itself_is_noted_by_its_key():
    reading = Reading()
    facts = Traced(SimpleNamespace(design=Design(method="modular")), reading)
    assert facts.design.method == "modular" and facts.design.opening.width == 36 * INCH
    assert reading.read == {"method", "opening.width"} and reading.blank == set()
    assert reading.values == [("design.method", "modular"), ("design.opening.width", 36 * INCH)]


def test_a_wall_with_an_unknown_gap_behind_it_is_not_worked():
    """Inside the house; outdoors nothing stands behind it."""
    indoors = {"chimney.location": "interior", "clearance.back": "unknown"}
    fire = flue = cells = None  # nobody asks them before
    with pytest.raises(NotWorked) as refused:
        section_mesh(build_geometry(change(Design(), indoors)), fire, flue, cells)
    assert str(refused.value) == "How much air is left behind the masonry is not known."


def test_a_hearth_that_nothing_carries_is_not_worked():
    geometry = build_geometry(Design())
    floor = [part for part in geometry.parts if "slab" not in part.name]
    for parts in ((), floor):
        with pytest.raises(NotWorked) as refused:
            hearth_layers(SimpleNamespace(frame=geometry.frame, parts=parts))
        assert str(refused.value) == (
            "Under the middle of the fire nothing solid carries the hearth."
        )
    assert [layer.name for layer in hearth_layers(geometry)][-1] == "hearth slab"


def test_a_piece_set_dry_has_no_mortar_under_it():
    """The wall's outline by hand: 117.875 in2."""
    made = read_set((SETS / "middling.toml").read_text())
    wall = made.piece("WR")
    assert _bed(wall, (), 0.0) is None
    assert _bed(wall, (), 0.5 * INCH).volume() == pytest.approx(117.875 / 2 * INCH**3, rel=1e-4)


def test_a_wall_as_thick_as_its_facing_is_facing_alone(monkeypatch):
    geometry = build_geometry(Design())
    part = next(one for one in geometry.parts if one.name == "firebox walls")
    known = facing_of(geometry, part.name)
    work = shares._Sharing(geometry)
    there = {one.item for one in work.masonry(part, work.mass, shown=True)}
    monkeypatch.setattr(
        shares, "facing_of", lambda geometry, name: replace(known, volume=2 * part.volume)
    )
    alone = list(work.masonry(part, work.mass, shown=True))
    assert {one.item for one in alone} < there
    assert sum(one.volume for one in alone) == pytest.approx(part.volume)


def test_a_round_piece_reaches_as_far_as_its_circle():
    """Radius 0.3 about (0.1, 0.5): x from -0.2 to 0.4, y from 0.2 to 0.8; 0.25 m high."""
    piece = read_set((SETS / "small.toml").read_text()).pieces[0]
    pot = replace(piece, adds=(Round(0.0, 0.25, 0.3, (0.1, 0.5)),), cuts=())
    assert extent(pot) == pytest.approx((-0.2, 0.4, 0.2, 0.8, 0.0, 0.25))


def test_what_stands_on_a_line_is_within_nothing():
    """Two upright lines 4 apart: between them, on the left one, on the right one, past both."""
    walls = [np.array([(0.0, 0.0), (0.0, 9.0)]), np.array([(4.0, 0.0), (4.0, 9.0)])]
    told = [within(np.array([x, 5.0]), walls) for x in (2.0, 0.0, 4.0, 6.0)]
    assert told == [True, False, False, False]
