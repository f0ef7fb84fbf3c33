"""The drawing set on paper."""

import re
from functools import cache

import numpy as np
import pytest
import shapely
from pypdf import PdfReader
from sampled import sampled
from shapely import affinity

from fireplace_calc import assess, change
from fireplace_calc.base.units import FEET_INCHES, FOOT, INCH, SYSTEMS, InputError
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.annotation.beside_section import ABOVE
from fireplace_calc.drawing.papers.full_papers import EDGE, PAPERS, USUAL, pages, paper_set
from fireplace_calc.drawing.papers.written_sheets import tables
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import Table, wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.style import SMALL, WEIGHT
from fireplace_calc.drawing.views.layout import ARCHITECT
from fireplace_calc.drawing.views.throat_detail import OVER, UNDER
from fireplace_calc.editing.file_text import fingerprint

MM = 25.4 / 72


@pytest.mark.parametrize("size", sampled(["letter", "A4", "A3"], 1))
@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"opening.width": "96 in", "flue.sections": 40},
        {"opening.width": "18 in", "flue.sections": 4},
        {
            "opening.extension": "24 in",
            "firebox.bond": "herringbone 45",
            "opening.head": "segmental",
        },
    ],
)
def test_every_page_is_clean(boathouse, size, changes):
    for design, units in ((boathouse, FEET_INCHES), (Design(), "millimetres")):
        for name, sheet in pages(assess(change(design, changes)), units, size):
            assert (sheet.width, sheet.height) == PAPERS[size]
            assert collisions(sheet) == [], (design.name, name)


def test_a_page_tells_which_inputs_it_was_drawn_from(boathouse):
    def told(design):
        written = [n.text for _, sheet in pages(assess(design), FEET_INCHES) for n in sheet.labels]
        return {text.partition("Inputs ")[2] for text in written if "Inputs " in text}

    assert told(boathouse) == {f"{fingerprint(boathouse)}."}
    assert told(change(boathouse, {"work.people": 3})) != told(boathouse)


def test_a_paper_nobody_has_is_named(boathouse):
    with pytest.raises(InputError, match="letter, 11x17, A4, A3"):
        pages(assess(boathouse), FEET_INCHES, "B5")


def test_words_wrap_within_their_room():
    for room in (20.0, 45.0, 120.0):
        text = (
            "Every brick of the lining to the underside of the smokeshelfwithoutanyspacewhatsoever,"
            " cut wet."
        )
        lines = wrapped(text, room)
        assert all(width(line, SMALL) <= room + 1e-6 for line in lines)
        assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_no_heading_is_broken_within_a_word(boathouse):
    """On the narrowest paper, every table of the set."""
    room = PAPERS["letter"][0] - 2 * EDGE - 6 - 5.5
    for design in (boathouse, Design()):
        shown = [
            part
            for _, parts in tables(assess(design), FEET_INCHES)
            for part in parts
            if isinstance(part, Table)
        ]
        assert len(shown) > 5
        for table in shown:
            whole = sum(column.share for column in table.columns)
            for column in table.columns:
                assert all(
                    width(word, SMALL, True) <= room * column.share / whole - 2
                    for word in column.heading.split()
                ), column


def test_progress_is_told_sheet_by_sheet(boathouse, tmp_path):
    heard = []
    paper_set(
        assess(boathouse),
        tmp_path / "set.pdf",
        told=lambda done, of, name: heard.append((done, of)),
    )
    assert heard == [(k, heard[0][1]) for k in range(heard[0][1] + 1)]
    assert len(PdfReader(tmp_path / "set.pdf").pages) == heard[0][1]


def test_written_sheets_can_be_searched(boathouse, tmp_path):
    paper_set(assess(boathouse), tmp_path / "set.pdf")
    text = "".join(page.extract_text() for page in PdfReader(tmp_path / "set.pdf").pages)
    for finding in assess(boathouse).findings:
        assert finding.verdict == "does not apply" or finding.key in text


def test_pdf_has_every_page_of_the_right_paper(boathouse, tmp_path):
    for units in SYSTEMS:
        paper_set(assess(boathouse), tmp_path / "set.pdf", units)
        book = PdfReader(tmp_path / "set.pdf")
        assert len(book.pages) == len(pages(assess(boathouse), units)) > 6
        assert book.metadata.title == boathouse.name
        for page in book.pages:
            assert (
                float(page.mediabox.width) * MM,
                float(page.mediabox.height) * MM,
            ) == pytest.approx(PAPERS[USUAL[units]], abs=0.1)


@pytest.mark.parametrize("units", sampled(SYSTEMS, 1))
def test_front_elevation_measured_back_off_the_pdf_is_to_scale(boathouse, tmp_path, units):
    """The heavy outline of the opening, read from the page's own path operators, against the scale
    in its title.
    """
    paper_set(assess(boathouse), tmp_path / "set.pdf", units)
    content = PdfReader(tmp_path / "set.pdf").pages[0].get_contents().get_data().decode("latin-1")
    _, sheet = pages(assess(boathouse), units)[0]
    written = [n.text for n in sheet.labels]
    denominator = next(d for d, text in ARCHITECT[units].items() if text in written)
    wanted = boathouse.opening.width * 1000 / denominator
    runs = re.findall(r"([-\d.]+) ([-\d.]+) m((?:\s+[-\d.]+ [-\d.]+ l)+)", content)
    widths = []
    for x, y, rest in runs:
        points = (
            np.array(
                [
                    [float(x), float(y)],
                    *[[float(a), float(b)] for a, b in re.findall(r"([-\d.]+) ([-\d.]+) l", rest)],
                ]
            )
            * MM
        )
        widths += list(np.abs(np.diff(points[:, 0])))
    assert min(abs(w - wanted) for w in widths) < 0.2


# -- measured back off the page -------------------------------------------------------------------
TRUE = 0.2
"""What a page measured back may be off. [mm]"""
PAGES = [("feet-inches", "letter"), ("millimetres", "A4")]
BUILT = {
    "example": None,
    "as it comes": {},
    "modular, arched, wide": {
        "method": "modular",
        "firebox.lining": "refractory section",
        "opening.head": "segmental",
        "opening.width": "60 in",
        "opening.rise": "5 in",
    },
    "round, tall, herringbone": {
        "flue.shape": "round",
        "flue.size": "12",
        "flue.sections": 14,
        "firebox.bond": "herringbone 45",
        "base.hearth_level": "12 in",
    },
}
LAID = ("as it comes", "round, tall, herringbone")


class Page:
    """A page of the file: its words, the scale it says, and what is stroked and filled on it, read
    from its own path operators. [mm]
    """

    def __init__(self, page, units):
        content = page.get_contents().get_data().decode("latin-1")
        self.text = page.extract_text()
        said = sorted(ARCHITECT[units], key=lambda d: -len(ARCHITECT[units][d]))
        self.scale = 1000 / next(d for d in said if ARCHITECT[units][d] in self.text)
        self.strokes, self.fills = [], []
        self.bold = []
        for pen, path, operator in re.findall(
            r"([\d.]+) w\s+[^w]*?n ((?:[-\d.]+ [-\d.]+ [ml]\s+)+)(S|f|B)\s", content
        ):
            for run in re.split(r"(?<=l)\s+(?=[-\d.]+ [-\d.]+ m)", path.strip()):
                points = (
                    np.array(
                        [
                            [float(x), float(y)]
                            for x, y in re.findall(r"([-\d.]+) ([-\d.]+) [ml]", run)
                        ]
                    )
                    * MM
                )
                (self.fills if operator == "f" else self.strokes).append(points)
                if operator != "f" and float(pen) * MM > WEIGHT["hidden"] + 1e-3:
                    self.bold.append(points)

    def mm(self, points):
        """A model outline as large as it is printed. [mm]"""
        return shapely.Polygon(np.asarray(points) * self.scale)

    def find(self, wanted, runs, shift=None):
        """Where an outline of the model stands on the page: how far it is moved. [mm]"""
        low = np.array(wanted.bounds[:2])
        for run in runs:
            if len(run) < 4 or np.hypot(*(run[0] - run[-1])) > 1e-6:
                continue
            by = run.min(axis=0) - low
            if (
                np.abs(np.ptp(run, axis=0) - np.ptp(np.array(wanted.exterior.coords), axis=0)).max()
                > TRUE
            ):
                continue
            if shift is not None and np.abs(by - shift).max() > TRUE:
                continue
            if (
                shapely.hausdorff_distance(shapely.Polygon(run), affinity.translate(wanted, *by))
                < TRUE
            ):
                return by
        return None

    def drawn(self, line, shift):
        """Whether a line of the model, moved, is stroked all along by the pen of what is cut or
        seen, to 0.2 mm.
        """
        near = shapely.union_all(
            [shapely.LineString(run) for run in self.bold if len(run) > 1]
        ).buffer(TRUE)
        return shapely.difference(affinity.translate(line, *shift), near).length < TRUE


@pytest.fixture(scope="module")
def printed(boathouse, tmp_path_factory):
    """By name of a design, unit system and paper: the drawings of its set by name, and the geometry
    they show; each printed once.
    """

    @cache
    def make(name, units, size):
        result = assess(boathouse if BUILT[name] is None else change(Design(), BUILT[name]))
        path = tmp_path_factory.mktemp("set") / "set.pdf"
        paper_set(result, path, units, size, drawings_only=True)
        names = [title for title, _ in pages(result, units, size, drawings_only=True)]
        return {
            title: Page(page, units)
            for title, page in zip(names, PdfReader(path).pages, strict=True)
        }, result.geometry

    return make


def upright_cuts(page, geometry, window):
    """Every part's cut within a window [m], as printed; tiny scraps left out. [mm]"""
    for part in geometry.parts:
        for ring in part.section():
            kept = shapely.intersection(shapely.Polygon(ring), window)
            for piece in getattr(kept, "geoms", [kept]):
                if piece.geom_type == "Polygon" and piece.area * page.scale**2 > 1.0:
                    yield (
                        part.name,
                        page.mm(
                            shapely.remove_repeated_points(piece.normalize(), 1e-9).exterior.coords
                        ),
                    )


@pytest.mark.parametrize(("units", "size"), sampled(PAGES, 1))
@pytest.mark.parametrize("name", sampled(BUILT, 2))
def test_section_and_throat_detail_measured_back_are_to_scale(printed, name, units, size):
    """Every part's outline, filled, stands in its place; and where masonry meets air a line is
    stroked.
    """
    book, made = printed(name, units, size)
    f = made.frame
    top, low = min(f.shoulder_top + ABOVE, f.crown_bottom), max(f.opening_top - UNDER, f.hearth)
    over = min(f.flue_start + OVER, f.crown_bottom)
    for page, bottom, above in (
        (book["Section"], -99.0, top),
        (book["Throat and smoke chamber"], low, over),
    ):
        window = shapely.box(-99.0, bottom, 99.0, above)
        if bottom > 0:
            window = shapely.box(-0.02, bottom, f.block_back + 0.02, above)
        cuts = list(upright_cuts(page, made, window))
        assert len(cuts) > 6
        biggest = max(cuts, key=lambda cut: cut[1].area)
        shift = page.find(biggest[1], page.fills)
        assert shift is not None, biggest[0]
        for part, wanted in cuts:
            assert page.find(wanted, page.fills, shift) is not None, part
        solid = shapely.union_all([cut.buffer(1e-3, join_style="mitre") for _, cut in cuts])
        inner = affinity.scale(window, page.scale, page.scale, origin=(0, 0)).buffer(-0.5)
        against_air = shapely.intersection(solid.boundary, inner)
        assert against_air.length > 300 and page.drawn(against_air, shift)
        stretched = affinity.scale(against_air, 1.01, 1.01)
        assert not page.drawn(stretched, shift), "one percent off is seen"


@pytest.mark.parametrize(("units", "size"), sampled(PAGES, 1))
@pytest.mark.parametrize("name", sampled(BUILT, 2))
def test_plan_measured_back_is_to_scale(printed, name, units, size):
    """Floor, lining and walls as the geometry cuts them level, the hearth before them, and the
    stroke round the masonry.
    """
    book, made = printed(name, units, size)
    page, f, d = book["Plan"], made.frame, made.design
    z = f.hearth + min(0.25, max((f.back_bend - f.hearth) / 2, 0.01))
    cuts = [
        shapely.difference(page.mm(adds[0]), page.mm(holes[0]))
        for adds, holes in (
            made.by_name[part].plan(z) for part in ("firebox lining", "firebox walls")
        )
    ]
    shift = page.find(cuts[1], page.fills)
    assert shift is not None and page.find(cuts[0], page.fills, shift) is not None
    floor = page.mm(
        [
            (-f.half_width, 0.0),
            (f.half_width, 0.0),
            (f.half_at(f.depth), f.depth),
            (-f.half_at(f.depth), f.depth),
        ]
    )
    assert page.find(floor, page.fills, shift) is not None
    if d.hearth.front > 0:
        wide = f.half_width + d.hearth.side
        front = page.mm(
            [(-wide, -d.hearth.front), (wide, -d.hearth.front), (wide, 0.0), (-wide, 0.0)]
        )
        assert page.find(front, page.strokes, shift) is not None
    assert page.drawn(shapely.union_all(cuts).boundary, shift)


@pytest.mark.parametrize(("units", "size"), sampled(PAGES, 1))
@pytest.mark.parametrize("name", sampled(BUILT, 2))
def test_roof_view_measured_back_is_to_scale(printed, name, units, size):
    """Liner, crown and chimney as wide and high as the frame has them, the clearances as long, the
    roof as steep.
    """
    book, made = printed(name, units, size)
    page, f, d = book["Against the roof"], made.frame, made.design
    along = d.roof.ridge_runs == "along the opening"
    stack, block = (
        (2 * f.stack_depth, f.block_back) if along else (2 * f.stack_half, 2 * f.block_half)
    )
    inside = stack - 2 * (d.chimney.wall + d.chimney.gap)
    foot = max(f.grade, f.footing_top)
    wide = (f.block_back, f.flue_y + f.stack_depth) if along else (block, f.offset)
    sizes = [
        (inside, f.liner_top - f.crown_top),
        (stack + 2 * d.chimney.overhang, f.crown_top - f.crown_bottom),
    ]
    sizes += [(block, f.crown_bottom - foot)] if along and wide[1] <= block else []
    found = [np.ptp(run, axis=0) for run in page.strokes if len(run) > 3]
    for wanted in sizes:
        assert min(np.abs(span - np.array(wanted) * page.scale).max() for span in found) < TRUE, (
            wanted
        )
    upright = [
        abs(run[1, 1] - run[0, 1])
        for run in page.strokes
        if len(run) == 2 and abs(run[1, 0] - run[0, 0]) < 1e-6
    ]
    for height in (f.crown_top - f.highest_within_reach, f.crown_top - f.uphill_contact):
        assert min(abs(long - height * page.scale) for long in upright) < TRUE
    slopes = [
        abs(step[1] / step[0])
        for run in page.strokes
        if 2 <= len(run) <= 3
        for step in np.diff(run, axis=0)
        if abs(step[0]) > 20.0
    ]
    assert min(abs(slope - d.roof.pitch) for slope in slopes) < 1e-3


@pytest.mark.parametrize(("units", "size"), sampled(PAGES, 1))
@pytest.mark.parametrize("name", LAID)
def test_brick_sheet_measured_back_is_to_scale(printed, name, units, size):
    """Every brick of every face, whole or cut, stroked in its own shape, and each face in one
    piece.
    """
    book, made = printed(name, units, size)
    page, layouts = book["Brick layout"], lay_brickwork(made).layouts
    assert len(layouts) > 2
    for layout in layouts:
        wanted = [page.mm(piece.ring) for piece in layout.pieces]
        first = max(range(len(wanted)), key=lambda k: wanted[k].area)
        shifts = [by for run in page.strokes if (by := page.find(wanted[first], [run])) is not None]
        assert any(
            all(page.find(brick, page.strokes, shift) is not None for brick in wanted[::7])
            for shift in shifts
        ), layout.face.name


@pytest.mark.parametrize(("units", "size"), sampled(PAGES, 1))
@pytest.mark.parametrize("name", ["example", "modular, arched, wide"])
def test_the_scale_bar_is_as_long_as_it_says(printed, name, units, size):
    """On every drawing of the set: the row of equal boxes over the title block against the figure
    beside it.
    """
    book, _ = printed(name, units, size)
    for title, page in book.items():
        boxes = [
            run
            for run in page.strokes
            if len(run) == 5
            and np.ptp(run[:, 1]) == pytest.approx(1.2, abs=1e-3)
            and run[:, 1].min() == pytest.approx(EDGE + 8.0, abs=1e-3)
        ]
        count, unit = re.findall(r"^ ?(\d+) (ft|in|m|dm)$", page.text, re.MULTILINE)[-1]
        said = int(count) * {"ft": FOOT, "in": INCH, "m": 1.0, "dm": 0.1}[unit]
        whole = max(run[:, 0].max() for run in boxes) - min(run[:, 0].min() for run in boxes)
        assert len(boxes) == int(count) and whole == pytest.approx(said * page.scale, abs=TRUE), (
            title
        )
        assert all(
            np.ptp(run[:, 0]) == pytest.approx(whole / len(boxes), abs=1e-3) for run in boxes
        )


def test_a_folder_that_is_not_there_is_named(boathouse, tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        paper_set(assess(boathouse), tmp_path / "nowhere" / "set.pdf")


def test_pens_on_paper_are_as_wide_as_their_line_and_dashes_end_square(tmp_path):
    """ISO 128: widths in millimetres; a rounded dash of a thin gap would close it. Read back from the
    drawing operators of the page.
    """
    from pypdf.generic import ContentStream

    from fireplace_calc.drawing.sheets.pdf import PdfBook
    from fireplace_calc.drawing.sheets.sheet import Sheet
    from fireplace_calc.drawing.sheets.style import DASHES, WEIGHT

    sheet = Sheet(100, 80)
    for k, weight in enumerate(WEIGHT):
        sheet.line([(10, 10 + 5 * k), (60, 10 + 5 * k)], weight)
    sheet.text(50, 70, "up", turned=True)
    book = PdfBook(str(tmp_path / "pens.pdf"), "title", "subject")
    book.add(sheet)
    book.save()
    reader = PdfReader(tmp_path / "pens.pdf")
    page = reader.pages[0]
    assert [float(v) * 25.4 / 72 for v in page.mediabox[2:]] == pytest.approx([100, 80], abs=0.01)
    assert (reader.metadata.title, reader.metadata.subject) == ("title", "subject")
    pen, drawn = {"w": 1.0, "J": 0, "d": []}, {}
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        name = operator.decode()
        if name in ("w", "J"):
            pen[name] = float(operands[0])
        elif name == "d":
            pen["d"] = [float(v) * 25.4 / 72 for v in operands[0]]
        elif name == "m":
            drawn[round(float(operands[1]) * 25.4 / 72, 2)] = dict(pen)
    for k, (weight, wide) in enumerate(WEIGHT.items()):
        used = drawn[10 + 5 * k]
        assert used["w"] * 25.4 / 72 == pytest.approx(wide, abs=1e-3), weight
        assert used["d"] == pytest.approx(list(DASHES.get(weight, ())), abs=1e-3)
        assert used["J"] == (0 if weight in DASHES else 1), (
            "square ends for dashes, round for others"
        )
