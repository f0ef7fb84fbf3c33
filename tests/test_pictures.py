"""Every sheet, view and chart as a picture of its own, and a look before it is printed."""

import base64
import io
import re
import xml.etree.ElementTree as ET

import pytest
from PIL import Image

from fireplace_calc import assess, load
from fireplace_calc.__main__ import main
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.composed.catalogue import CATALOGUE
from fireplace_calc.drawing.page.saved_picture import picture
from fireplace_calc.drawing.plates.whole_set import sheets as set_of
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.exports.picture_files import pictures, write_pictures
from fireplace_calc.panels import panel

PLAIN = load(DATA / "designs" / "plain.toml")


@pytest.fixture(scope="module")
def made():
    return pictures(assess(PLAIN), "millimetres", "A4")


def test_a_picture_is_as_large_as_its_sheet():
    """SVG 2: width and height with their unit; PNG: pHYs in dots to a meter, as Pillow reads it."""
    sheet = Sheet(297.0, 210.0)
    sheet.line([(10, 10), (20, 10)], "cut")
    sheet.text(30, 30, "Throat")
    root = ET.fromstring(picture(sheet, "svg"))
    assert (root.get("width"), root.get("height")) == ("297mm", "210mm")
    left, top, wide, high = map(float, root.get("viewBox").split())
    assert wide / high == pytest.approx(297 / 210, rel=1e-6) and left == top == 0
    image = Image.open(io.BytesIO(picture(sheet, "png")))
    across, up = image.info["dpi"]
    assert image.width / across * 25.4 == pytest.approx(297.0, abs=0.3)
    assert image.height / up * 25.4 == pytest.approx(210.0, abs=0.3)
    dark = image.convert("L").point(lambda value: 255 * (value < 128)).getbbox()
    assert dark[0] / across * 25.4 == pytest.approx(10.0, abs=0.4), "where the line begins"


def test_a_picture_names_no_library_and_needs_no_font():
    sheet = Sheet(99.0, 99.0)
    sheet.text(30, 30, "Throat")
    svg, png = picture(sheet, "svg"), picture(sheet, "png")
    assert b"atplotlib" not in svg + png and b"<text" not in svg and svg.count(b"<use") >= 5


def test_a_kind_that_is_none_is_refused():
    with pytest.raises(InputError, match="svg and png"):
        picture(Sheet(9.0, 9.0), "gif")


def test_sheets_come_as_they_are_printed_then_every_view_and_chart(made):
    result = assess(PLAIN)
    printed = set_of(result, "millimetres", "A4")
    sheets = [one for one in made if one.key.startswith("sheet-")]
    assert [one.name for one in sheets] == [
        f"Sheet {n} of {len(printed)}: {name}" for n, (name, _) in enumerate(printed, 1)
    ]
    for one, (_, sheet) in zip(sheets, printed, strict=True):
        assert [n.text for n in one.sheet.labels] == [n.text for n in sheet.labels]
    views = {one.key.removeprefix("view-") for one in made if one.key.startswith("view-")}
    assert views == {key for key, view in CATALOGUE.items() if view.suits(result.geometry)}
    assert sum(one.key.startswith("chart-") for one in made) == 4
    assert len({one.key for one in made}) == len(made), "each its own file"
    assert len({one.name for one in made}) == len(made), "each its own name"
    for one in made:
        assert (one.sheet.width, one.sheet.height) == (297.0, 210.0)
        for label in one.sheet.labels:
            left, low, right, top = label.extent
            assert left > -1 and right < 298 and low > -1 and top < 211, (one.key, label.text)


def test_each_is_written_whole_and_can_be_stopped(tmp_path):
    writing = write_pictures(assess(PLAIN), tmp_path / "pictures", "svg", "millimetres", "A4")
    done, of, _ = next(writing)
    assert done == 0 and of > 15
    for _ in range(3):
        next(writing)
    writing.close()
    left = sorted(path.name for path in (tmp_path / "pictures").iterdir())
    assert len(left) == 3 and all(name.endswith(".svg") for name in left)
    for name in left:
        assert ET.fromstring((tmp_path / "pictures" / name).read_bytes()).get("width") == "297mm"


@pytest.mark.whole
def test_the_command_writes_them(tmp_path):
    (tmp_path / "a.toml").write_text('name = "A plain one"\n')
    with pytest.raises(SystemExit):
        main(["--pictures"])
    assert main([str(tmp_path / "a.toml"), "--out", str(tmp_path / "o"), "--pictures", "gif"]) == 2
    assert not (tmp_path / "o").exists()
    main([str(tmp_path / "a.toml"), "--out", str(tmp_path / "o"), "--pictures", "svg"])
    assert (tmp_path / "o" / "pictures" / "view-front.svg").stat().st_size > 10_000


# -- look before you print -----------------------------------------------------------------------
@pytest.fixture(scope="module")
def fold():
    made = panel(PLAIN, folds=("papers",))
    made.open("papers")
    made.folds["papers"].size.value = "A4"
    made.folds["papers"].look.look()
    return made.folds["papers"]


def shown(look):
    """What the picture shows: its words for who cannot see it, and its content."""
    alt = re.search(r'alt="([^"]+)"', look.page.value)[1]
    data = re.search(r'src="data:image/svg\+xml;base64,([^"]+)"', look.page.value)[1]
    return alt, base64.b64decode(data)


def test_nothing_is_shown_before_it_is_asked_for():
    made = panel(PLAIN, folds=("papers",))
    made.open("papers")
    look = made.folds["papers"].look
    look.zoom.value = "double"
    look._turn(1)
    assert look.page.value == "" and look.made == [] and look.which.options == ()


def test_the_first_sheet_is_shown_and_one_turns_to_the_next(fold):
    look = fold.look
    assert look.open.layout.display == "" and "Nothing was written" in fold.job.status.value
    alt, svg = shown(look)
    assert alt.startswith("Sheet 1 of ") and ET.fromstring(svg).get("width") == "297mm"
    look._turn(1)
    assert shown(look)[0].startswith("Sheet 2 of ")
    look._turn(-1)
    look._turn(-1)
    assert look.which.value == look.which.options[-1], "round and round"
    look.which.value = look.which.options[0]


def test_a_zoom_shows_it_at_true_size_and_larger(fold):
    look = fold.look
    look.zoom.value = "true size"
    wide = float(re.search(r"width:(\d+)px", look.page.value)[1])
    assert wide == pytest.approx(297 / 25.4 * 96, abs=1), "96 dots to an inch, as CSS has it"
    look.zoom.value = "double"
    assert float(re.search(r"width:(\d+)px", look.page.value)[1]) == pytest.approx(2 * wide, abs=2)
    look.zoom.value = "as wide as the page"
    assert ";width:100%" in look.page.value
    look.zoom.value = "whole sheet"
    assert "max-height" in look.page.value[look.page.value.index("<img") :]


def test_this_one_alone_comes_as_svg_and_png(fold):
    look = fold.look
    look.which.value = "Section"
    look._save("svg")
    assert 'download="' in fold.link.value and "view-section.svg" in fold.link.value
    look._save("png")
    kind, data = re.search(r"data:([^;]+);base64,([^\"]+)", fold.link.value).groups()
    assert kind == "image/png" and base64.b64decode(data).startswith(b"\x89PNG")


def test_a_change_says_to_look_again_and_shows_what_was_chosen(fold):
    look = fold.look
    assert look.said.value == "" or "look again" not in look.said.value
    fold.units.value = "millimetres"
    assert "look again" in look.said.value
    look.look()
    assert "look again" not in look.said.value and look.which.value == "Section"
    fold.units.value = ""


def test_the_paper_that_is_chosen_is_written_in_its_box(fold):
    """A choice without a value shows as an empty box."""
    assert fold.size.label == "A4" and fold.units.label == "as on the screen"
    assert fold.job.under_way.layout.display == "none", "no Stop where nothing is under way"


def test_a_folder_that_cannot_be_made_is_said(tmp_path):
    (tmp_path / "taken").write_text("a file")
    place = tmp_path / "taken" / "pictures"
    with pytest.raises(InputError) as found:
        next(write_pictures(assess(PLAIN), place))
    assert str(found.value) == f"{place} cannot be made a folder: Not a directory."
    with pytest.raises(InputError, match="taken cannot be made a folder: File exists."):
        next(write_pictures(assess(PLAIN), tmp_path / "taken"))
