"""The two pages for a client: all of it on the paper and nothing over anything, the assessment's own
figures, names and mark, as PDF and as a picture.
"""

import re
from base64 import b64encode
from dataclasses import replace
from io import BytesIO
from types import SimpleNamespace

import pytest
from PIL import Image
from pypdf import PdfReader
from sampled import sampled

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA, rows
from fireplace_calc.base.units import FOOT, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.client_pages import beside_it
from fireplace_calc.drawing.client_pages.leaf import Leaf, broken, measured
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign, widened
from fireplace_calc.drawing.client_pages.painted import as_pdf, as_png
from fireplace_calc.drawing.client_pages.two_pages import client_pages
from fireplace_calc.drawing.plates.sizes import PAPERS
from fireplace_calc.report.for_client import three_sentences
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.for_client.handed_over import LARGEST_MARK, Names, mark_words, names_of
from fireplace_calc.report.for_client.three_sentences import client_cautions, client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.scene.records import Standpoint

LAID = load(DATA / "designs" / "boathouse-laid.toml")
FEET, METRIC = "feet-inches", "millimetres"


def dot(color="#884422", size=(4, 3)):
    file = BytesIO()
    Image.new("RGB", size, color).save(file, "PNG")
    return file.getvalue()


DOT = dot()
CHANGES = (
    {},
    {"opening.width": "60 in"},
    {"hearth.front": "30 in"},
    {"surround.face": "stone"},
    {"opening.head": "segmental"},
    {"base.hearth_level": "0 in"},
    {"lintel.height": "1 in", "opening.width": "90 in"},
)
NAMED = ("As it is", "Wide", "Deep hearth", "Stone", "With a low arch for the lake side", "Low",
         "W" * 60)  # fmt: skip


@pytest.fixture(scope="module")
def options():
    return [
        NamedDesign(name, assess(change(LAID, changes)))
        for name, changes in zip(NAMED, CHANGES, strict=True)
    ]


def pages_of(chosen, others, units, size=None, names=None, asked=None):
    def picture(result, standpoint, width, height):
        if asked is not None:
            asked.append((result, standpoint, width, height))
        return DOT

    return client_pages(chosen, others, names, units, size, pictures=picture)


def said(page):
    return re.sub(r"\s+", " ", " ".join(line.text for line in page.words))


@pytest.mark.parametrize("count", [0, 1, 2, 3, 4, 6])
@pytest.mark.parametrize(
    ("units", "size"),
    sampled([(FEET, "letter"), (METRIC, "A4"), (METRIC, "A3"), (FEET, "11x17")], 2),
)
def test_all_of_it_stands_on_the_paper_and_nothing_on_anything_else(options, units, size, count):
    names = Names(
        "Everybody who lives in the long house by the lake, invented", "Hearth Invented", DOT
    )
    for number in (0, 6):
        chosen = options[number]
        others = [one for one in options if one is not chosen][:count]
        for page in pages_of(chosen, others, units, size, names):
            assert (page.width, page.height) == PAPERS[size]
            edge = 0.05 * page.width
            boxes = [(one.box, one) for one in (*page.words, *page.pictures)]
            for (left, top, right, bottom), one in boxes:
                assert left >= edge and right <= page.width - edge + 0.2, one
                assert top >= edge - 1e-6 and bottom <= page.height - edge + 0.5, one
            for k, (one, what) in enumerate(boxes):
                for other, that in boxes[k + 1 :]:
                    across = min(one[2], other[2]) - max(one[0], other[0])
                    down = min(one[3], other[3]) - max(one[1], other[1])
                    assert across < 0.05 or down < 0.05, (what, that)
            assert min(line.size for line in page.words) >= 7.0


@pytest.mark.parametrize("units", [FEET, METRIC])
def test_they_say_what_the_assessment_says(options, units):
    first, second = pages_of(
        options[0], options[1:4], units, names=Names("Client", "Designer Mine")
    )
    chosen = option_words(options[0].result, units)
    for words in (*client_sentences(options[0].result, units), chosen.price, chosen.without,
                  chosen.stands_on, "for Client", "Designer Mine", "DM", "As it is",
                  "Invented example"):  # fmt: skip
        assert words in said(first), words
    for one in options[1:4]:
        told = option_words(one.result, units)
        for words in (one.name, told.price, *client_sentences(one.result, units)):
            assert words in said(second), words
    for words in (*client_cautions(units), chosen.headline, *chosen.short, chosen.weight):
        assert words in said(second), words


def test_what_there_is_no_room_for_is_counted(options):
    worst = max(options, key=lambda one: len(option_words(one.result).short))
    short = option_words(worst.result).short
    _, second = pages_of(worst, options[:2], FEET)
    listed = [line for line in short if line in said(second)]
    left = re.search(r"and (\d+) more, on the check sheet", said(second))
    assert len(listed) + (int(left[1]) if left else 0) == len(short)


def test_every_option_is_seen_from_one_standpoint_and_the_chosen_large(options):
    asked = []
    pages_of(options[0], options[1:3], FEET, asked=asked)
    assert [one.name for one in options[:3] for r, *_ in asked if r is one.result] == list(
        NAMED[:3]
    )
    assert len({(eye.stands, eye.looks) for _, eye, _, _ in asked}) == 1
    assert asked[0][2] > 2 * asked[1][2] == 2 * asked[2][2]
    alone = []
    pages_of(options[0], (), FEET, asked=alone)
    assert len({eye.stands for _, eye, _, _ in alone}) == 4, "and from three other places"


@pytest.mark.parametrize(
    ("size", "units", "count", "shape", "letters"),
    [
        ("A3", FEET, 3, 0.665, 13.79),
        ("11x17", FEET, 4, 0.412, 11.40),
        ("letter", FEET, 6, 0.365, 7.84),
        ("A4", FEET, 6, 0.552, 7.10),  # 0.357 with letters of 7.84
    ],
)
def test_letters_become_smaller_before_small_pictures_become_strips(
    options, size, units, count, shape, letters
):
    """Height of a small picture over its width, and the letters under it, in points."""
    asked = []
    _, second = pages_of(options[0], options[1 : 1 + count], units, size, asked=asked)
    _, _, wide, high = asked[-1]
    assert high / wide == pytest.approx(shape, abs=0.005)
    priced = {round(line.size, 2) for line in second.words if line.text.startswith("Materials")}
    assert priced == {letters}


def test_a_wider_picture_sees_as_much_from_top_to_bottom():
    """90 degrees at 3 to 2 are 1 to each side and 2/3 up; at 3 to 1 they are 2 to each side."""
    eye = Standpoint("here", (0, -2, 1), (0, 0, 1), 90.0)
    assert widened(eye, 1.5) == eye
    assert widened(eye, 3.0).angle == pytest.approx(126.869898)


def test_a_file_that_can_be_searched_and_a_picture_of_its_size(options, tmp_path):
    pages = pages_of(options[0], options[1:3], METRIC, "A4", Names("Client", "Designer"))
    read = PdfReader(BytesIO(as_pdf(pages, "Two pages")))
    assert len(read.pages) == 2 and read.metadata.title == "Two pages"
    text = re.sub(r"\s+", "", "".join(page.extract_text() for page in read.pages))
    for page in pages:
        assert all(re.sub(r"\s+", "", line.text) in text for line in page.words)
    assert len(read.pages[0].images) == 1
    made = Image.open(BytesIO(as_png(pages[0], 60)))
    assert made.size == pytest.approx((297 / 25.4 * 60, 210 / 25.4 * 60), abs=1)
    middle = made.getpixel((made.width // 2, made.height // 3))
    assert middle == pytest.approx((0x88, 0x44, 0x22), abs=3), "the picture, in its color"
    assert made.getpixel((2, 2)) == (255, 255, 255)
    with pytest.raises(InputError, match="11x17"):
        pages_of(options[0], (), METRIC, "A5")


def test_lines_are_as_long_as_their_column_and_lose_no_letter():
    text = f"Some words and {'x' * 90} then more"
    lines = broken(text, 10, 40)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(measured(line, 10) <= 40 for line in lines)
    assert measured("WWW", 10) > 2 * measured("iii", 10) > 0
    assert measured("W", 20, "bold") > measured("W", 20) == pytest.approx(2 * measured("W", 10))
    page = Leaf(100, 100)
    end = page.write(10, 20, 40, text, 10, right=True)
    assert page.words[0].box[2] == pytest.approx(50) and page.foot == pytest.approx(end)
    page.lower(5)
    assert page.foot == pytest.approx(end + 5)


def test_cautions_have_the_tables_distances():
    """3 ft from the fire and 10 ft from the house, read twice (``data/safety.csv``)."""
    far = [float(r["number"]) for r in rows("safety.csv") if r["topic"] == "fire" and r["number"]]
    assert far == [3, 10]
    assert "3'-0\"" in client_cautions()[0] and "10'-0\"" in client_cautions()[2]
    assert f"{round(3 * FOOT * 1000)} mm" in client_cautions(METRIC)[0]
    assert "carbon monoxide alarm" in " ".join(client_cautions())


def test_sentences_tell_the_designs_own():
    for changes, words in (
        ({"base.hearth_level": "0 in"}, "level with the floor"),
        ({"opening.head": "segmental"}, "crown of its arch"),
        ({"surround.face": "stone"}, "its face of stone"),
        ({"house.room_length": None}, "of the wall,"),
    ):
        told = " ".join(client_sentences(assess(change(LAID, changes))))
        assert words in told and words not in " ".join(client_sentences(assess(LAID)))
    short, open_ = shortfall(assess(LAID)), assess(LAID).counts["not checked"]
    told = client_sentences(assess(LAID))[2]
    assert [int(n) for n in re.findall(r"\d+", told)][:3] == [
        len(short.code),
        len(short.judged),
        open_,
    ]
    one = assess(change(LAID, {"surround.trim": []}))
    assert "the top of the opening" in client_sentences(one)[1]


def test_names_are_inputs_and_the_mark_a_word_of_the_job():
    named = change(Design(), {"job.client": "A", "job.drawn": "B. Oak"})
    assert names_of(named, {"paper_mark": mark_words(DOT)}) == Names("A", "B. Oak", DOT)
    for broken_mark in ("no picture", b64encode(b"text").decode(), ""):
        assert names_of(Design(), {"paper_mark": broken_mark}) == names_of(Design()) == Names()
    for content in (b"GIF89a", DOT + b"\0" * LARGEST_MARK):
        with pytest.raises(InputError, match="PNG"):
            mark_words(content)
    assert Names(designer="of Oak And Stone Masons").initials == "OAS"
    assert Names(designer="").initials == "" == Names(designer="lower").initials


@pytest.mark.parametrize(
    ("code", "judged", "still", "says"),
    [
        (0, 0, 0, "Nothing that was checked falls short; as drawn it draws well."),
        (
            1,
            0,
            1,
            "Before it is built, 1 point of the code has to be put right, and 1 of the code is not checked yet;",
        ),
        (
            2,
            1,
            2,
            "2 points of the code and 1 point of draft and structure have to be put right, and 2 of the code are",
        ),
    ],
)
def test_one_point_is_and_more_are(monkeypatch, code, judged, still, says):
    short = SimpleNamespace(
        code=["a"] * code, judged=["b"] * judged, all=["c"] * (code + judged), open=still
    )
    monkeypatch.setattr(three_sentences, "shortfall", lambda result: short)
    result = SimpleNamespace(odds=SimpleNamespace(words="draws well"))
    assert says in three_sentences._to_know(result)


@pytest.mark.parametrize(("many", "listed"), [(3, 3), (25, 25), (26, 24), (40, 24)])
def test_of_more_than_the_page_holds_the_rest_is_counted_in_one_line(monkeypatch, many, listed):
    """As many lines as leave room for two rows under them; the last of all needs no line after it."""
    real = beside_it.option_words
    short = tuple(f"Line {n} falls short." for n in range(many))
    monkeypatch.setattr(beside_it, "option_words", lambda *a: replace(real(*a), short=short))
    _, second = pages_of(NamedDesign("As it is", assess(LAID)), [], FEET)
    lines = [line for line in second.words if line.text.startswith("Line ")]
    assert [line.text for line in lines] == list(short[:listed])
    more = [line for line in second.words if "on the check sheet" in line.text]
    told = f"and {many - listed} more, on the check sheet."
    assert [line.text for line in more] == [told] * (listed < many)
    step = lines[1].y - lines[0].y
    for line in more:
        assert line.x == lines[0].x and line.y - lines[-1].y == pytest.approx(step)
    assert max(line.y for line in second.words) < second.height
