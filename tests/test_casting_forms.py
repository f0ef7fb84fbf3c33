"""Forms, mix and bags for somebody who casts his own, and the papers and the command that tell them."""

from dataclasses import replace
from math import pi

import numpy as np
import pytest

from fireplace_calc import change, load
from fireplace_calc.base.tables.castable import castable
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, MILLIMETRES, POUND
from fireplace_calc.build.casting.forms_list import _shape, castable_row, form_rows, liner_volume
from fireplace_calc.build.casting.forms_wording import (
    HEADINGS,
    casting_cautions,
    form_words,
    forms_summary,
)
from fireplace_calc.build.setting.pallet_list import pallet_rows
from fireplace_calc.design.records import Design
from fireplace_calc.drawing import HEIGHT, WIDTH
from fireplace_calc.drawing.papers.casting_list import forms_sheets, print_forms
from fireplace_calc.drawing.pieces.cast_picture import cast_view
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.editing.sets.piece_sets import find_set, shipped_sets
from fireplace_calc.geometry.assembled.assembly import as_wanted
from fireplace_calc.geometry.assembled.solids import piece_weight
from fireplace_calc.geometry.casting.cutting import cut_into_pieces
from fireplace_calc.geometry.casting.wish import CastingWish
from fireplace_calc.geometry.frame_builder import build_frame
from fireplace_calc.jupyter.command import main
from fireplace_calc.panels import panel
from fireplace_calc.pieces.choice import Choice, choose
from fireplace_calc.pieces.records import Round, Tapered
from fireplace_calc.pieces.set_text import read_set

ROUND = {"flue.shape": "round", "flue.size": "12"}


@pytest.fixture(scope="module")
def cast():
    return cut_into_pieces(change(Design(), ROUND), CastingWish())


@pytest.fixture(scope="module")
def made(cast):
    return as_wanted(choose(cast.made, cast.choice))


@pytest.fixture(scope="module")
def rows(made):
    return {row.piece.mark: row for row in form_rows(made)}


def test_every_piece_has_a_form_and_the_weights_are_those_of_the_delivery(made, rows):
    delivered = {row.piece.mark: row for row in pallet_rows(made)}
    assert list(rows) == list(delivered)
    assert all(rows[m].count == delivered[m].count for m in rows)
    assert all(rows[m].weight == delivered[m].each for m in rows)
    assert all(rows[row.form].form == row.form for row in rows.values())


def test_a_form_is_measured_inside_by_pencil(rows):
    """Plates of a base 4'-5-1/4 in by 2'-3-5/8 in in three strips with joints of a quarter inch."""
    plate = rows["PM"]
    size = [round(v / INCH, 4) for v in (plate.wide, plate.deep, plate.high)]
    assert size == [17.625, 27.625, 3.0]
    assert plate.mix / INCH**3 == pytest.approx(17.625 * 27.625 * 3)
    assert [(round(x / INCH, 4), round(y / INCH, 4)) for x, y in plate.foot] == [
        (0.0, 0.0), (17.625, 0.0), (17.625, 27.625), (0.0, 27.625)]  # fmt: skip
    wall = rows["WR"]
    assert min(x for x, _ in wall.foot) == min(y for _, y in wall.foot) == 0.0
    assert max(y for _, y in wall.foot) == pytest.approx(wall.deep)
    flue = rows["F"]
    assert flue.high - flue.piece.height == pytest.approx(0.75 * INCH)


def test_mix_leaves_the_liner_out(rows, made):
    """A round liner of 12 in and 1 in of wall, bed to bed; the shipped wide set's of 400 by 320 mm."""
    flue = rows["F"]
    ring = pi * (7**2 - 6**2) * INCH**2
    assert liner_volume(flue.piece) == pytest.approx(ring * flue.piece.height)
    assert flue.mix == pytest.approx(flue.weight / flue.piece.density - ring * flue.piece.height)
    wide = find_set("wide").piece("F25")
    assert liner_volume(wide) == pytest.approx((0.44 * 0.36 - 0.4 * 0.32) * 0.25)
    assert all(row.mix == pytest.approx(row.weight / row.piece.density)
               for row in rows.values() if row.piece.mark != "F")  # fmt: skip


def test_an_upright_piece_and_its_other_hand_come_out_of_one_form(rows):
    assert (rows["WL"].form, rows["WL"].turned) == ("WR", True)
    assert (rows["TL"].form, rows["TL"].turned) == ("TR", True)
    # A rectangle is its own other hand; two beams of one size share a form as they are.
    assert (rows["PL"].form, rows["PL"].turned) == ("PR", False)
    assert (rows["LS1"].form, rows["LS1"].turned) == ("LS2", False)
    # A taper turned over stands on its head: it wants a form of its own.
    assert (rows["RL1"].form, rows["RL1"].turned) == ("RL1", False)
    assert rows["WR"].form == "WR" and rows["TR"].form == "TR"
    # Same plan, another height.
    assert rows["TB"].form == "TB"


def test_bags_by_the_printed_figures(rows):
    """55 lb to a bag, 125 lb to a cubic foot, a twentieth lost: all from memory."""
    listed = tuple(rows.values())
    volume = sum(row.count * row.mix for row in listed)
    net = volume / FOOT**3 * 125 / 55
    row = castable_row(listed)
    assert row.net == pytest.approx(net)
    assert row.order == int(net * 1.05) + 1
    assert row.volume == pytest.approx(volume)
    assert row.weight_kg == pytest.approx(volume * listed[0].piece.density)
    assert (row.unit, row.piece_kg) == ("bag", pytest.approx(55 * POUND))
    assert sum(r.bags for r in listed) == pytest.approx(net)
    assert row.note.count("memory") == 2 and "read the bag" in row.note
    assert castable().waste == 0.05


@pytest.mark.parametrize("units", [FEET_INCHES, MILLIMETRES])
def test_the_list_in_words(made, units):
    words = {row[0]: row for row in form_words(made, units)}
    assert {len(row) for row in words.values()} == {len(HEADINGS)}
    assert words["WL"][1:3] == ("that of WR, turned over", "the same")
    assert words["PM"][1] == "its own" and "Corners" not in words["PM"][2]
    assert "Corners" in words["WR"][2] and "At the head" not in words["WR"][2]
    assert "At the head" in words["RR1"][2]
    if units == FEET_INCHES:
        assert words["PM"][2] == '1\'-5 5/8" x 2\'-3 5/8", 3" high'
        assert 'core 1\'-0" across inside a liner 1" thick' in words["F"][2]
        assert 'tongue 3/4" over the bed; socket 1" deep' in words["F"][2]
        assert 'Corners (8-1/8",0") (11-7/8",0")' in words["WR"][2]
        assert "socket" not in words["CT"][2] and 'tongue 3/4"' in words["CT"][2]
    else:
        assert words["PM"][2] == "448 mm x 702 mm, 76 mm high"
        assert "Corners (206,0) (302,0) (95,619)" in words["WR"][2]
    assert words["F"][3] == str(sum(p.piece.mark == "F" for p in made.placed))
    said = forms_summary(made, units)
    forms = len({row.form for row in form_rows(made)})
    assert said.startswith(f"{forms} forms for {len(made.placed)} pieces. The heaviest is F,")


def test_a_rectangular_core_is_told_by_both_sides():
    made = find_set("wide")
    stood = as_wanted(choose(made, Choice()))
    words = {row[0]: row for row in form_words(stood, MILLIMETRES)}
    assert "core 400 mm x 320 mm inside a liner 20 mm thick" in words["F25"][2]
    assert "tongue 20 mm over the bed; socket 26 mm deep" in words["F25"][2]


@pytest.mark.parametrize("name", shipped_sets())
@pytest.mark.parametrize("head", ["straight", "segmental"])
def test_any_set_has_its_forms(name, head):
    made = find_set(name)
    stood = as_wanted(choose(made, Choice(head=head)))
    rows = form_rows(stood)
    assert sum(row.count for row in rows) == len(stood.placed)
    assert all(row.mix > 0 and row.bags > 0 for row in rows)
    words = {row[0]: row[2] for row in form_words(stood)}
    assert len(words) == len(rows)
    assert ("under it an arch of" in words.get("LA", "")) == (head == "segmental")
    assert "less what its drawing shows cut out" in words["SH"]
    assert "cut out" not in words["N1"]


def test_cautions_come_with_the_list():
    said = casting_cautions()
    for word in ("Silica", "Lifting", "Local code", "bursts", "28 days", "engineer", "10%"):
        assert any(word in s for s in said), word
    assert any(s.startswith("Mixing dry castable") for s in said)


def test_the_list_is_printed_and_nothing_overlaps(cast, made, tmp_path):
    for units in (FEET_INCHES, MILLIMETRES):
        sheets = forms_sheets(made, cast.said, units)
        assert all(not collisions(sheet) for sheet in sheets)
    path = tmp_path / "forms.pdf"
    assert print_forms(made, path, cast.said) >= 3
    assert path.read_bytes().startswith(b"%PDF")


def test_the_command_writes_the_set_and_its_forms_and_a_design_takes_it(tmp_path, capsys):
    job, out = tmp_path / "job.toml", tmp_path / "own.toml"
    job.write_text('name = "My own"\n')
    assert main(["cast", str(job), "--most", "200 lb", "--out", str(out)]) == 0
    said = capsys.readouterr().out
    assert (tmp_path / "own-forms.pdf").read_bytes().startswith(b"%PDF")
    heaviest = max(map(piece_weight, read_set(out.read_text()).pieces))
    assert heaviest <= 200 * POUND and f"({heaviest:.0f} kg)" in said
    assert "The back stands upright" in said
    lines = said.partition("beside the set's:\n")[2]
    (tmp_path / "built.toml").write_text(lines)
    laid, built = load(job), load(tmp_path / "built.toml")
    assert built.pieces.set == "own" and not built.overruled
    assert built.opening.width == pytest.approx(laid.opening.width, abs=INCH / 8)
    tops = [build_frame(d).liner_top - build_frame(d).hearth for d in (laid, built)]
    assert tops[1] == pytest.approx(tops[0], abs=INCH / 16)
    # The same again is no harm; another cut under that name is left alone.
    assert main(["cast", str(job), "--most", "200 lb", "--out", str(out)]) == 0
    before = out.read_bytes()
    capsys.readouterr()
    assert main(["cast", str(job), "--most", "60 kg", "--out", str(out)]) == 1
    assert "Left alone" in capsys.readouterr().err and out.read_bytes() == before
    metric = tmp_path / "mine.toml"
    assert main(["cast", str(job), "--units", MILLIMETRES, "--out", str(metric)]) == 0
    assert read_set(metric.read_text()).metric
    assert max(map(piece_weight, read_set(metric.read_text()).pieces)) <= 60


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["job.toml", "--out", "set.txt"], "ends in .toml"),
        (["job.toml", "--out", "set.toml", "--most", "20 kg"], "lintel weighs"),
        (["job.toml", "--out", "set.toml", "--most", "20 in"], "Heaviest piece"),
        (["job.toml", "--out", "nowhere/set.toml", "--most", "90 kg"], "cannot be written"),
        (["none.toml", "--out", "set.toml"], "none.toml"),
    ],
)
def test_the_command_says_what_it_cannot_do(tmp_path, monkeypatch, capsys, arguments, said):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text('name = "My own"\n')
    assert main(["cast", *arguments]) == 2
    assert said in capsys.readouterr().err
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]


@pytest.mark.parametrize("units", [FEET_INCHES, MILLIMETRES])
def test_every_form_is_drawn_once_and_no_word_lies_on_another(made, units):
    sheet = Sheet(WIDTH, HEIGHT)
    cast_view(sheet, Cell(6.0, 6.0, WIDTH - 6.0, HEIGHT - 6.0), made, units)
    assert not collisions(sheet)
    words = [label.text for label in sheet.labels]
    rows = form_rows(made)
    assert sum(", " in word or " x " in word for word in words) == len({r.form for r in rows})
    for row in rows:
        assert sum(f"{row.piece.mark} x {row.count}" in word.split(", ") for word in words) == 1


def test_the_fold_cuts_the_design_as_it_stands(tmp_path, monkeypatch):
    shown = panel(Design(), folds=("casting",), keep=tmp_path)
    shown.open("casting")
    fold = shown.folds["casting"]
    assert fold.made is not None and len(fold.made.made.pieces) == 21
    assert "59 kg" in fold.list.value and "No piece over" in fold.said.value
    first = fold.board.widget.drawn["bodies"]
    assert len(first[0]) > 1000
    fold.slider.value = 200
    heavy = fold.made
    assert max(map(piece_weight, heavy.made.pieces)) > 60
    assert fold.board.widget.drawn["bodies"] != first
    fold.hand_set()
    laid = next(tmp_path.rglob("cast-set.toml"))
    assert laid.read_text() == heavy.text and "cast-set.toml" in fold.link.value
    fold.hand_forms()
    assert next(tmp_path.rglob("cast-set-forms.pdf")).read_bytes().startswith(b"%PDF")
    # What cannot be cut is said, and the last picture does not stand for it.
    fold.slider.value = 20
    assert fold.made is None and "lintel weighs" in fold.said.value
    assert fold.board.widget.drawn == {} and not fold.list.value
    fold.hand_set()
    fold.hand_forms()
    assert not fold.link.value
    fold.slider.value = 150
    assert fold.board.widget.drawn and fold.made.text != heavy.text
    shown.set_units(MILLIMETRES)
    drawn = []
    monkeypatch.setattr(fold.board, "show", drawn.extend)
    fold.update()
    assert fold.made.made.metric
    ((_, sheet),) = drawn
    points = np.concatenate([line for lines in sheet.lines.values() for line in lines])
    low, high = points.min(axis=0), points.max(axis=0)
    assert (low >= 6).all() and (high <= (WIDTH - 6, HEIGHT - 6)).all(), "within its margins"
    assert low + high == pytest.approx((WIDTH, HEIGHT), abs=12), "and in their middle"


SQUARE = ((0.0, 0.0), (0.5, 0.0), (0.5, 0.5), (0.0, 0.5))


def test_two_forms_with_other_bores_are_two():
    """The same block round a bore of 10 and of 12 in; moved as a whole it is the same form."""
    block = Tapered(0.0, 0.3, SQUARE, SQUARE)

    def shape(radius, x=0.0):
        moved = tuple((a + x, b) for a, b in SQUARE)
        cut = Round(0.0, 0.3, radius, (0.25 + x, 0.25))
        return _shape((replace(block, lower=moved, upper=moved),), (cut,))

    assert shape(0.127) == shape(0.127, 2.0) != shape(0.1524)
