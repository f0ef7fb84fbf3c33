"""A set whose pieces face the fire themselves: no firebrick inside, the fire on the base plates."""

import re

import pytest

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.__main__ import main
from fireplace_calc.base.resources import DATA
from fireplace_calc.base.units import INCH, SYSTEMS
from fireplace_calc.brickwork.seen.lining_courses import section_joints
from fireplace_calc.build.setting.cards import cards_of
from fireplace_calc.drawing import elevations, single
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.editing.sets.piece_sets import shipped_sets
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.geometry.mesh import part_body

SHIPPED = shipped_sets()
CHOICES = {
    "as it comes": {},
    "arch, raised, no facing": {
        "opening.head": "segmental",
        "opening.extension": "6 in",
        "pieces.facing": "0 in",
    },
}


@pytest.fixture(scope="module")
def bare(tmp_path_factory):
    """A design of a shipped set with its lining taken out of the file."""
    folder = tmp_path_factory.mktemp("bare")
    for name in SHIPPED:
        text = (DATA / "sets" / f"{name}.toml").read_text()
        without, taken = re.subn(r"\[lining\]\n(?:[a-z].*\n)+", "", text)
        assert taken == 1
        (folder / f"bare_{name}.toml").write_text(without)
        (folder / f"{name}_job.toml").write_text(f'[pieces]\nset = "bare_{name}"\n')
    return {name: load(folder / f"{name}_job.toml") for name in SHIPPED}


@pytest.mark.parametrize("choice", CHOICES)
@pytest.mark.parametrize("name", SHIPPED)
def test_parts_and_voids_fill_the_block_and_nothing_stands_in_anything(bare, name, choice):
    made = build_geometry(change(bare[name], CHOICES[choice]))
    filled = sum(p.volume for p in made.parts + made.voids)
    assert filled == pytest.approx(made.outer.volume, rel=1e-7)
    assert all(p.volume > 0 for p in made.parts + made.voids)
    bodies = [
        (p.name, part_body(p)) for p in made.parts + made.voids if p.name != "gap for movement"
    ]
    for k, (one, solid) in enumerate(bodies):
        for other, against in bodies[:k]:
            common = (solid ^ against).volume()
            assert common < 1e-5 * min(solid.volume(), against.volume()) + 1e-6, (one, other)


@pytest.mark.parametrize("name", SHIPPED)
def test_nothing_is_of_firebrick_and_the_fire_lies_on_the_base_plates(bare, name):
    shown = assess(bare[name])
    made, up = shown.geometry, set_up(bare[name])
    assert not {"firebox lining", "firebox floor"} & set(made.by_name)
    assert not any("irebrick" in row.item for row in shown.takeoff)
    plate = next(p for p in up.assembly.placed if p.piece.role == "base plate")
    assert plate.top + made.frame.plate_bottom == pytest.approx(made.frame.hearth, abs=1e-9)
    assert made.by_name["base plates"].top == pytest.approx(made.frame.hearth, abs=1e-9)
    assert (made.facing_fire.name, made.under_fire.name) == ("firebox walls", "base plates")
    assert bare[name].opening.width == pytest.approx(2 * up.read.half_width)
    assert bare[name].firebox.floor == pytest.approx(plate.piece.height)


def test_the_wall_is_measured_from_the_pieces(bare):
    """By hand, in inches: the back of the middling set is 3 thick, a side 4-1/8 in front, square to its
    slope 4-1/8 / sqrt(1 + (4-7/8 / 20)^2) = 4.01; 3-5/8 of brick stand behind the gap. IRC R1001.5: 8 lined,
    10 not; National Building Code of Canada 9.22.2.2: 50 mm faces the fire."""
    box = bare["middling"].firebox
    assert (box.lining, box.lining_thickness / INCH) == (
        "refractory section",
        pytest.approx(3, abs=1e-4),
    )
    assert box.wall / INCH == pytest.approx(3 + 3.625, abs=1e-4)
    verdicts = []
    for changes in (
        {},
        {"firebox.lining_approved": "yes"},
        {"firebox.lining_approved": "yes", "pieces.around": "5 in"},
        {"firebox.lining_approved": "no", "pieces.around": "5 in"},
        {"firebox.lining_approved": "no", "pieces.around": "7 in"},
    ):
        found = {f.key: f.verdict for f in assess(change(bare["middling"], changes)).findings}
        verdicts.append((found["FBX-01"], found["FBX-02"]))
    away = "does not apply"
    assert verdicts == [
        ("not checked", "not checked"),
        ("falls short", away),
        ("meets", away),
        (away, "falls short"),
        (away, "meets"),
    ]
    found = {f.key: f for f in assess(bare["middling"], "Canada NBC").findings}
    assert found["CA-042"].provided == pytest.approx(76.2, abs=0.01)


def test_a_side_that_is_thinner_than_the_back_counts_as_the_wall(tmp_path):
    """By hand, in inches: 12 back the inside of the middling wall has come in to 4-7/8 (1 - 12/20) = 1.95;
    a corner of its outside put at 3 there leaves 1.05 across, 1.05 / sqrt(1 + (4-7/8 / 20)^2) square to
    the face; splits and their joint 1-3/8, brick 3-5/8."""
    text = (DATA / "sets" / "middling.toml").read_text()
    side = "[9, 0], [9, 3], [5, 23.75]"
    assert side in text
    thin = load_lined(tmp_path, text.replace(side, "[9, 0], [9, 6], [3, 12], [5, 23.75]"))
    least = 1.05 / (1 + (4.875 / 20) ** 2) ** 0.5
    assert thin.firebox.wall / INCH == pytest.approx(least + 1.375 + 3.625, abs=1e-3)
    lined = load_lined(tmp_path, text)
    assert lined.firebox.wall / INCH == pytest.approx(3 + 1.375 + 3.625, abs=1e-3)


def load_lined(folder, text):
    (folder / "own.toml").write_text(text)
    (folder / "job.toml").write_text('[pieces]\nset = "own"\n')
    return load(folder / "job.toml")


@pytest.mark.parametrize("name", SHIPPED)
def test_every_piece_has_its_row_and_its_card_and_nothing_is_lined(bare, name):
    shown, up = assess(bare[name]), set_up(bare[name])
    placed = up.assembly.placed
    assert sum(r.net for r in shown.takeoff if r.item.startswith("Piece ")) == len(placed)
    cards = cards_of(up.assembly, None)
    assert sorted(c.name for c in cards) == sorted(p.name for p in placed)
    names = [s.name for s in shown.work.steps]
    assert not any("ining" in n for n in names)
    assert names.index("Throat back") < names.index("Throat front")


@pytest.mark.parametrize("pack", sorted(PACKS))
def test_every_code_is_asked(bare, pack):
    shown = assess(bare["small"], pack)
    assert shown.findings and shown.draft and shown.structure


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("choice", CHOICES)
@pytest.mark.parametrize("name", SHIPPED)
def test_every_view_is_clean(bare, name, choice, units):
    made = build_geometry(change(bare[name], CHOICES[choice]))
    assert collisions(elevations(made, units)) == []
    for view in CATALOGUE.values():
        if view.suits(made):
            assert collisions(single(view.key, made, units)) == [], view.key


def test_joints_between_the_pieces_are_drawn_where_they_are(bare):
    made, up = build_geometry(bare["middling"]), set_up(bare["middling"])
    tops = [round(p.level + made.frame.plate_bottom, 9) for p in up.assembly.placed]
    drawn = section_joints(made)
    assert len(drawn) == 4 and {round(z, 9) for z in drawn} <= set(tops)


def test_the_command_writes_every_file(bare, tmp_path):
    text = (DATA / "sets" / "small.toml").read_text()
    (tmp_path / "own.toml").write_text(re.sub(r"\[lining\]\n(?:[a-z].*\n)+", "", text))
    (tmp_path / "job.toml").write_text('[pieces]\nset = "own"\n')
    assert main([str(tmp_path / "job.toml"), "--out", str(tmp_path / "out")]) in (0, 1)
    assert len(list((tmp_path / "out").iterdir())) >= 5
