"""What the lit scene shows of what is built: the same solids, the same pieces as the list has."""

from collections import Counter
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from strategies import designs
from test_pieces_design import CHOICES, middling

from fireplace_calc import PACKS, assess
from fireplace_calc.base.tables import density
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.mantel.on_face import mantel_parts
from fireplace_calc.geometry.polygons import area
from fireplace_calc.proportion.wall_guides import wall_sides, wall_top
from fireplace_calc.scene.built.hand_set import is_something
from fireplace_calc.scene.built.spread import spread_apart
from fireplace_calc.scene.eyes import INSIDE, OUTSIDE, standpoints
from fireplace_calc.scene.picked import _weighed_thing, about, checks_of_parts, volume_of
from fireplace_calc.scene.shown_masonry import STATES, _standing, last_step, mantel_things, masonry
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.takeoff import share_out

MOST = 16 * 1024
"""What one change may send of what is built, points and faces. [bytes]"""


def shown(result, state):
    return masonry(result, state)


def together(result, sizes):
    """Sizes part by part; of a set a tongue of the collar stands in the flue's part."""
    one = {"smoke chamber walls", "flue casing"} if result.design.piece_set else set()
    yield from (((name,), size) for name, size in sizes.items() if name not in one)
    if one:
        yield tuple(one), sum(sizes[name] for name in one)


def sizes(things):
    return sum(12 * len(t.points) + 6 * len(t.faces) for t in things)


def two_ways(boathouse):
    """Laid and from a set, plain and with all that is odd."""
    odd = {"opening.head": "segmental", "opening.extension": "12 in"}
    laid = change(boathouse, {"method": "laid"} | odd)
    return [boathouse, laid, middling(), middling(**odd)]


@pytest.fixture(scope="module")
def results(boathouse):
    return [assess(design) for design in two_ways(boathouse)]


def test_there_are_five_states(results):
    assert STATES == ("room", "whole", "cut", "apart", "built")
    with pytest.raises(ValueError, match="State is 'lit'"):
        masonry(results[0], "lit")


@pytest.mark.parametrize("state", STATES)
def test_every_thing_has_a_key_and_a_part(results, state):
    for result in results:
        things = masonry(result, state)
        assert things and len({t.key for t in things}) == len(things)
        assert {t.part for t in things} <= {p.name for p in result.parts}
        for thing in things:
            assert thing.faces.min() == 0 and thing.faces.max() == len(thing.points) - 1
            assert thing.name and thing.stuff and thing.kind in ("masonry", "piece")


def test_the_whole_is_all_that_is_built(results):
    """Each part's volume, again by the divergence theorem from what is shown of it.

    Round bores hold a little less than their circles, so what is cast round them is larger.
    """
    for result in results:
        found = Counter()
        for thing in masonry(result, "whole"):
            found[thing.part] += volume_of(thing)
        for names, volume in together(result, {p.name: p.volume for p in result.parts}):
            assert sum(found[n] for n in names) == pytest.approx(volume, rel=5e-3), names
        assert sum(found.values()) == pytest.approx(sum(p.volume for p in result.parts), rel=1e-3)


def test_step_by_step_ends_with_all_that_is_laid(boathouse):
    laid = assess(boathouse)
    things = masonry(laid, "built")
    whole = sum(p.volume for p in laid.parts if "flue" not in p.name)
    built = sum(volume_of(t) for t in things if "flue" not in t.part)
    assert built == pytest.approx(whole, rel=1e-3)
    steps = {t.step for t in (*things, *mantel_things(laid, "built"))}
    assert steps <= set(range(1, last_step(laid) + 1)) and last_step(laid) in steps
    first = [t.part for t in things if t.step == 1]
    assert first == ["footing"]


def test_a_set_goes_up_from_its_base():
    """The base stands before the first piece; what is laid round the set comes after the last."""
    result = assess(middling())
    things = masonry(result, "built")
    assert {t.part for t in things if t.step == 0} >= {"footing", "hearth slab"}
    round_it = [t for t in things if t.part in ("shoulder", "chimney walls", "crown")]
    assert {t.step for t in round_it} == {last_step(result)}
    pieces = [t for t in things if t.kind == "piece"]
    # The lining is one step of its own, and what is laid round the set another.
    assert last_step(result) == len(pieces) + ("firebox lining" in result.geometry.by_name) + 1
    assert len({t.step for t in pieces}) == len(pieces)


def listed(result):
    """How many of each line are shown, and how many the list has."""
    found = Counter(t.item for t in masonry(result, "apart") if t.item)
    return found, {row.item: row.net for row in result.takeoff if row.item in found}


def test_every_piece_shown_is_on_the_list(results):
    for result in results:
        found, listed_ = listed(result)
        assert found and dict(found) == listed_
    assert "Firebox back section" in listed(results[0])[0]


def test_sections_of_a_ring_are_counted_in_their_names(results):
    """One alone has no number; several have each its own, of as many as there are."""
    names = {t.key: t.name for t in masonry(results[0], "apart") if t.key.startswith("firebox ")}
    found = [key for key in names if key.rpartition(".")[2].isdigit()]
    many = Counter(key.rpartition(".")[0] for key in found)
    for key in found:
        ring, _, k = key.rpartition(".")
        told = names[key].partition(",")[0]
        if many[ring] == 1:
            assert " of " not in told, names[key]
        else:
            assert told.endswith(f" {k} of {many[ring]}"), names[key]
    assert len(many) > 3


@pytest.mark.parametrize("name", CHOICES)
def test_every_piece_of_a_set_is_on_the_list(name):
    found, listed_ = listed(assess(middling(**CHOICES[name])))
    assert dict(found) == listed_


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs())
def test_a_random_fireplace_is_shown_as_it_is_listed(design):
    result = assess(design)
    found, listed_ = listed(result)
    assert dict(found) == listed_
    keys = [t.key for t in masonry(result, "apart")]
    assert len(set(keys)) == len(keys)
    assert {part.name for part in result.parts} <= set(checks_of_parts())
    room = masonry(result, "room")
    assert sizes(room) <= MOST
    top = wall_top(result.geometry)
    for thing in room:
        assert thing.points[:, 2].max() <= top + 1e-6, thing.key


def test_the_room_sees_no_more_than_it_can(results):
    for result in results:
        room = masonry(result, "room")
        assert sizes(room) <= MOST
        assert {"hearth extension", "firebox lining"} <= {t.part for t in room}
        assert not {"footing", "flue liner", "flue casing", "crown"} & {t.part for t in room}
        face = result.design.surround.face
        front = [t for t in room if t.part in ("firebox walls", "masonry round the set")]
        assert any(t.stuff == face for t in front)


def test_the_chimney_over_the_ceiling_has_no_finish(boathouse):
    result = assess(change(boathouse, {"surround.face": "stone"}))
    found = {t.key: t.stuff for t in masonry(result, "whole") if t.part == "chimney walls"}
    assert found == {"chimney walls": "stone face", "chimney walls over the ceiling": "brick"}


def flat_area(thing):
    a, b, c = (thing.points[thing.faces[:, k]] for k in range(3))
    return np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2


def test_what_the_knife_laid_bare_is_the_section(results):
    """Area by area, against the sections that the drawing is made from."""
    for result in results:
        caps, cut = Counter(), masonry(result, "cut")
        for thing in cut:
            if thing.cut:
                assert abs(thing.points[:, 0]).max() < 1e-6
                caps[thing.part] += flat_area(thing)
        assert min(t.points[:, 0].min() for t in cut) > -1e-6
        drawn = {part.name: sum(map(area, part.section())) for part in result.parts}
        for names, size in together(result, drawn):
            bare = sum(caps[name] for name in names)
            assert bare == pytest.approx(size, rel=2e-3, abs=2e-4), names


def test_what_is_drawn_apart_stands_clear(results):
    """No two things in one place: their common volume, solid by solid."""
    for result in results:
        standing = [one for one in _standing(result, "apart") if is_something(one)]
        moved = spread_apart(result.geometry, standing)
        bodies = [(one.key, one.body.translate(moved[one.key])) for one in standing]
        boxes = {key: np.array(body.bounding_box()) for key, body in bodies}
        for (one, solid), (other, against) in combinations(bodies, 2):
            a, b = boxes[one], boxes[other]
            if (a[:3] < b[3:]).all() and (b[:3] < a[3:]).all():
                common = (solid ^ against).volume()
                assert common < 1e-6, (one, other, common)


def test_a_thing_weighs_what_the_list_says(results):
    """All that is told, added up, is the weight of the whole but for face, mantel and mortar."""
    for result in results:
        told = Counter()
        for thing in masonry(result, "whole"):
            words = about(result, thing)
            pounds = words["weight"].replace(",", "").removesuffix("lb")
            told[thing.part] += float(pounds or 0) * 0.45359237
        due = Counter()
        for share in share_out(result.geometry):
            due[share.part] += share.weight
        for part in result.parts:
            if result.design.piece_set and part.material == "refractory":
                continue  # mortar by its own volume, pieces by the scale
            assert told[part.name] == pytest.approx(due[part.name], rel=5e-3, abs=1.0), part.name


def test_a_piece_of_a_set_weighs_what_its_line_says():
    result = assess(middling())
    lines = {row.item: row for row in result.takeoff}
    for thing in masonry(result, "apart"):
        if thing.item:
            line = lines[thing.item]
            assert (
                about(result, thing)["weight"] == f"{line.weight_kg / line.net / 0.45359237:.0f} lb"
            )


def test_sections_weigh_together_what_their_line_says(boathouse):
    """A list that counts the mean piece, and pieces as large as they are drawn."""
    result = assess(boathouse)
    drawn = sum(
        volume_of(t) * density("refractory")
        for t in masonry(result, "apart")
        if t.part == "firebox lining"
    )
    counted = sum(
        s.weight
        for s in share_out(result.geometry)
        if s.part == "firebox lining" and s.material == "refractory"
    )
    assert drawn == pytest.approx(counted, rel=0.03)


def test_every_check_speaks_of_a_part_or_of_none(results):
    for result in results:
        assert {part.name for part in result.parts} <= set(checks_of_parts())
    told = set().union(*checks_of_parts().values())
    for name, pack in PACKS.items():
        keys = {rule.key for rule in pack.rules if not rule.outside}
        assert keys <= told, (name, sorted(keys - told))
    judged = {f.key for r in results for f in (*r.judgement, *r.structure.findings)}
    assert judged <= told, sorted(judged - told)
    every = {rule.key for pack in PACKS.values() for rule in pack.rules} | judged
    assert told <= every, sorted(told - every)


def test_a_check_that_falls_short_is_told_at_its_part(boathouse):
    """A hearth too narrow in front: IRC R1001.10."""
    result = assess(change(boathouse, {"hearth.front": "10 in"}))
    (hearth,) = (t for t in masonry(result, "room") if t.key == "hearth extension")
    told = about(result, hearth)
    first = told["checks"][0]
    assert (first["key"], first["verdict"]) == ("HTH-07", "falls short")
    assert "fall" in told["said"] and told["size"].count("'") >= 1
    metric = about(result, hearth, "millimetres")
    assert "254 mm deep" in metric["size"]


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs())
def test_whoever_looks_stands_in_the_room(design):
    geometry = assess(design).geometry
    found = {p.name: p for p in standpoints(geometry)}
    assert tuple(found) == (*INSIDE, *OUTSIDE)
    left, right = wall_sides(geometry)
    if design.house.room_length is None:
        left, right = min(left, -3.0), max(right, 3.0)
    deep = design.house.room_width or 5.0
    for name in INSIDE:
        x, y, z = found[name].stands
        assert left < x < right and -deep < y < 0 < z < wall_top(geometry), name
        assert y < -design.hearth.front or deep < design.hearth.front + 0.5
    assert found["Seated"].stands[2] < found["Standing"].stands[2]


MANTELS = ("shelf", "beam on corbels", "pilasters and frieze", "paneled overmantel")


@pytest.mark.parametrize("stuff", ["wood", "painted wood", "stone"])
@pytest.mark.parametrize("family", MANTELS)
def test_a_mantel_is_shown_as_it_is_listed(family, stuff):
    """Volume by its skin is that of the solids; weight and price of all its things are the list's."""
    result = assess(change(Design(), {"mantel.family": family, "mantel.material": stuff}))
    things = mantel_things(result, "room")
    parts = mantel_parts(result.geometry)
    assert [t.name for t in things] == [p.name for p in parts]
    for thing, part in zip(things, parts, strict=True):
        assert volume_of(thing) == pytest.approx(part.group.volume, rel=1e-5)
        assert (thing.stuff, thing.kind, thing.part) == (stuff, "trim", "mantel")
        assert stuff in stuffs()
    (row,) = [r for r in result.takeoff if r.item.startswith("Mantel")]
    found = [_weighed_thing(result, thing) for thing in things]
    assert sum(one.weight for one in found) == pytest.approx(row.weight_kg, rel=1e-5)
    assert sum(dict(one.goods)[row.item] for one in found) == pytest.approx(1, rel=1e-5)
    assert sizes(things) < MOST / 2


def test_a_mantel_of_brick_and_pieces_told_one_by_one():
    brick = assess(change(Design(), {"mantel.family": "shelf", "mantel.material": "brick"}))
    (shelf,) = mantel_things(brick, "whole")
    told = about(brick, shelf)
    assert shelf.stuff == "brick" and told["price"] and "CLR-07" not in str(told["checks"])
    assert _weighed_thing(brick, shelf).weight == pytest.approx(
        sum(s.weight for s in share_out(brick.geometry) if s.part == "mantel"), rel=1e-5
    )
    trim = [
        {"name": "leg", "place": "beside", "distance": "8 in", "projection": "1 in"},
        {"name": "shelf", "distance": "13 in", "projection": "6 in", "combustible": False},
    ]
    mixed = assess(change(Design(), {"surround.trim": trim}))
    things = mantel_things(mixed, "room")
    assert [(t.key, t.name, t.stuff) for t in things] == [
        ("leg", "leg", "wood"),
        ("leg 2", "leg", "wood"),
        ("shelf", "shelf", "stone"),
    ]
    found = about(mixed, things[2])
    assert "CLR-07" in {check["key"] for check in about(mixed, things[0])["checks"]}
    assert found["weight"] and found["goods"] == ["Mantel and trim, stone, 100 % of the line"]


def test_a_mantel_is_cut_moved_and_hung_with_all_else(boathouse):
    design = change(boathouse, {"method": "laid", "mantel.family": "beam on corbels"})
    result = assess(design)
    whole = sum(map(volume_of, mantel_things(result, "whole")))
    cut = mantel_things(result, "cut")
    assert min(t.points[:, 0].min() for t in cut) > -1e-6
    bare = [t for t in cut if t.cut]
    assert [t.stuff for t in bare] == ["wood"]
    assert sum(volume_of(t) for t in cut) == pytest.approx(whole / 2, rel=1e-4)
    apart = mantel_things(result, "apart")
    assert all(t.away[1] < -0.2 for t in apart)
    walls = [t.away[2] for t in masonry(result, "apart") if t.part == "firebox walls"]
    assert {t.away[2] for t in apart} == {max(walls)}
    steps = {t.step for t in mantel_things(result, "built")}
    (work,) = [s.number for s in result.work.steps if s.name == "Mantel and trim"]
    assert steps == {work} and last_step(result) == work
    of_set = assess(change(middling(), {"mantel.family": "shelf"}))
    (shelf,) = mantel_things(of_set, "built")
    assert shelf.step == last_step(of_set) > max(t.step for t in masonry(of_set, "built"))
    assert mantel_things(assess(Design()), "room") == ()


@pytest.mark.parametrize("across", [-1, 1])
@pytest.mark.parametrize("up", [-1, 1])
def test_all_that_lies_behind_the_fire_is_behind_it_however_far(across, up):
    """Of a cube far behind it, low or high, left or right, nothing is left out; of one before it all is."""
    from manifold3d import Manifold

    from fireplace_calc.geometry.builder import build_geometry
    from fireplace_calc.scene.built.hand_set import FAR, _behind_the_fire

    behind = _behind_the_fire(build_geometry(Design()))
    cube = Manifold.cube((0.1, 0.1, 0.1), True)
    for y, share in ((0.9, 1.0), (-0.9, 0.0)):
        at = cube.translate((0.9 * FAR * across, y * FAR, 0.9 * FAR * up))
        assert (at ^ behind).volume() == pytest.approx(share * 0.001)


def test_a_section_weighs_as_much_as_it_is_large_and_what_is_no_part_nothing(boathouse):
    """Drawn a foot each way, of refractory: a cubic foot of it by the table."""
    result = assess(change(boathouse, {}))
    section = next(t for t in masonry(result, "apart") if t.item.startswith("Firebox side"))
    low, size = section.points.min(axis=0), np.ptp(section.points, axis=0)
    twice = replace(section, points=low + 2 * (section.points - low))
    one, other = _weighed_thing(result, section), _weighed_thing(result, twice)
    assert one.weight == pytest.approx(volume_of(section) * density(section.stuff))
    assert other.weight == pytest.approx(8 * one.weight) and size.min() > 0
    assert one.goods and one.goods == other.goods
    nothing = _weighed_thing(result, replace(section, part="nothing", item=""))
    assert (nothing.weight, nothing.goods) == (0.0, ())
