"""Options on their page: one standpoint, what changed marked and told, two of them wiped."""

import asyncio
import re

import pytest
from empty_room import empty_the_room
from pypdf import PdfReader
from test_client_pages import DOT, dot

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.drawing.client_pages import page_plan
from fireplace_calc.editing.jobs.options import shown as on_the_shelf
from fireplace_calc.exports import one_file
from fireplace_calc.panels import html, panel
from fireplace_calc.panels.folds.for_client import THIS
from fireplace_calc.panels.options import picture_desk
from fireplace_calc.panels.options.picture_desk import PictureDesk
from fireplace_calc.panels.scene import scene_view
from fireplace_calc.panels.scene.scene_view import SceneView
from fireplace_calc.report.alternatives import changed_inputs
from fireplace_calc.report.for_client.handed_over import MARK, Names, names_of
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.scene.still.option_pictures import marks, one_standpoint, option_picture

LAID = load(DATA / "designs" / "boathouse-laid.toml")
FEET, SMALL = "feet-inches", (90, 60)


@pytest.fixture(autouse=True)
def small(monkeypatch):
    """Pictures that are made in no time: few dots, and a room with nothing in it."""
    monkeypatch.setattr(picture_desk.PictureDesk.__init__, "__defaults__", (SMALL,))
    empty_the_room(monkeypatch)


@pytest.fixture
def fold():
    page = panel(LAID, folds=("options",))
    page.open("options")
    return page.folds["options"]


def keep(fold, name, **changes):
    fold.panel.put(change(fold.panel.design, {k.replace("__", "."): v for k, v in changes.items()}))
    fold.name.value = name
    fold._put_aside()


def test_every_option_has_its_picture_from_one_standpoint_and_the_first_no_mark(fold):
    keep(fold, "As it is")
    keep(fold, "Deep hearth", hearth__front="30 in")
    keep(fold, "Wide", opening__width="56 in")
    assert fold.desk.standpoint == one_standpoint(fold.results)
    first, deep, wide = (card.image.value for card in fold.cards[:3])
    assert "As it is, in its room" in first and "wipe-mark" not in first
    assert all("data:image/jpeg" in shown for shown in (first, deep, wide))
    pictures = [option_picture(r, fold.desk.standpoint, *SMALL) for r in fold.results]
    for shown, picture in zip((deep, wide), pictures[1:], strict=True):
        expected = [", ".join(m.names) for m in marks(pictures[0], picture)]
        assert re.findall(r'wipe-mark" title="([^"]*)"', shown) == expected != []


def test_two_are_wiped_with_what_they_differ_in(fold):
    assert fold.wipe.names == [] and fold.wipe.left == ""
    keep(fold, "As it is")
    keep(fold, "Deep hearth", hearth__front="30 in")
    assert [name for _, name in fold.wipe.names] == ["As it is", "Deep hearth", "This design"]
    assert (fold.wipe.left_key, fold.wipe.right_key) == ("1", "2")
    told = changed_inputs(*(result.design for result in fold.results))
    assert told and len(fold.wipe.said) == len(told) == 1
    assert all(word in fold.wipe.said[0] for word in told[0])
    assert {name for m in fold.wipe.marks for name in m["names"]} >= {"hearth extension"}
    assert fold.wipe.left != fold.wipe.right
    fold.wipe.left_key = "2"
    assert fold.wipe.right_key == "1" and "where the left one has" in fold.wipe.said[0]
    fold.wipe.right_key = "2"
    assert fold.wipe.left == fold.wipe.right and fold.wipe.said == [] == fold.wipe.marks
    fold.wipe.left_key, fold.wipe.right_key = "1", "this"
    fold.panel.put(change(fold.panel.design, {"surround.face": "stone"}))
    fold.update()
    assert any(words.startswith("Face") and "stone" in words for words in fold.wipe.said)
    fold._remove(1)
    assert fold.wipe.left_key == "2", "what is gone is not shown any more"
    fold._remove(2)
    assert fold.wipe.names == []


def test_a_picture_that_is_still_to_come_is_said_to_be_made(fold):
    keep(fold, "As it is")
    card = fold.cards[0]
    (option,) = on_the_shelf(fold.panel.session.shelf)
    words, made = card.words.value, card.image.value
    card.show(option, option_words(fold.results[0], FEET, None), None, ())
    assert (
        card.image.value == html.remark("The picture is being made.") and made != card.image.value
    )
    assert card.words.value == words and card.name.value == "As it is"
    assert (card.back.description, card.away.description) == (
        "Bring back As it is",
        "Remove As it is",
    )


def test_an_option_that_was_put_aside_meanwhile_waits_for_its_words(fold):
    """A picture is ready before the fold has followed."""
    keep(fold, "As it is")
    before = [card.image.value for card in fold.cards], fold.wipe.get_state()
    fold.panel.session.put_aside("Another")
    fold.show()
    assert ([card.image.value for card in fold.cards], fold.wipe.get_state()) == before
    fold.update()
    assert [card.name.value for card in fold.cards] == ["As it is", "Another"]


def test_an_options_words_follow_its_name(fold):
    keep(fold, "As it is")
    keep(fold, "Other", hearth__front="30 in")
    fold.cards[0].name.value = "The quiet one"
    assert fold.wipe.names[0] == ["1", "The quiet one"]
    assert "The quiet one, in its room" in fold.cards[0].image.value


def test_pictures_come_one_by_one_while_the_page_goes_on():
    """Where a loop runs, nothing is made at once, each picture is told when it has come, and what
    is not wanted any more is not made.
    """
    results = [assess(change(LAID, {"hearth.front": f"{n} in"})) for n in (20, 24, 28)]

    async def wait():
        told = []
        desk = PictureDesk(lambda: told.append([p is not None for p in desk.want(results)]))
        assert desk.want(results) == [None, None, None]
        for _ in range(400):
            await asyncio.sleep(0.02)
            if len(told) == 3:
                break
        assert told == [[True, False, False], [True, True, False], [True, True, True]]
        other = [assess(change(LAID, {"hearth.side": f"{n} in"})) for n in (14, 16)]
        desk.want(other)
        assert desk.want(results) and not desk._wanted
        return desk

    desk = asyncio.run(wait())
    assert all(picture is not None for picture in desk.want(results))


def test_no_more_pictures_are_held_than_are_needed(monkeypatch):
    monkeypatch.setattr(picture_desk, "MOST_HELD", 3)
    desk = PictureDesk(lambda: None)
    for n in range(16, 21):
        desk.want([assess(change(LAID, {"hearth.front": f"{n} in"}))])
    assert [key[0].hearth.front for key in desk._made] == pytest.approx(
        [n * 0.0254 for n in (18, 19, 20)]
    )


def test_the_client_is_given_pages_a_picture_and_a_room_that_turns(tmp_path, monkeypatch):
    """Each file comes as a link with the names that the job keeps; the chosen option first."""
    monkeypatch.setattr(page_plan, "DOTS", 0.4)
    monkeypatch.setattr(one_file.room_to_turn, "__defaults__", (None, FEET, SMALL, None))
    page = panel(LAID, folds=("papers", "options"), keep=tmp_path)
    page.session.put_aside("Quiet")
    page.put(change(LAID, {"opening.width": "50 in"}))
    page.session.put_aside("Wide")
    page.open("papers")
    fold = page.folds["papers"]
    given = fold.for_client
    fold.update()
    assert given.chosen.options == (THIS, "Quiet", "Wide")
    for key, name in (("client", "A. Client"), ("drawn", "Oak Hearths"), ("checked", "N. Body")):
        given.names[f"job.{key}"].value = name
    given._marked([{"content": DOT}])
    kept = panel(LAID, folds=(), keep=tmp_path).session
    assert names_of(kept.design, kept.words) == Names("A. Client", "Oak Hearths", DOT)
    assert kept.design.job.checked == "N. Body"
    page.set_input("job.client", "B. Client")
    fold.update()
    assert given.names["job.client"].value == "B. Client"
    assert given.names["job.drawn"].value == "Oak Hearths"
    page.undo()
    fold.update()
    assert given.names["job.client"].value == "A. Client"
    chosen, others = given.designs()
    assert chosen.result.design == page.design and [one.name for one in others] == ["Quiet"]
    given.chosen.value = "Quiet"
    chosen, others = given.designs()
    assert (chosen.name, [one.name for one in others]) == ("Quiet", ["Wide"])
    for name, begins in (("pdf", b"%PDF"), ("png", b"\x89PNG"), ("html", b"<!doctype html>")):
        given._write(f"for-the-client.{name}")
        (kept,) = tmp_path.glob(f"*-for-the-client.{name}")
        assert kept.read_bytes().startswith(begins) and kept.name in fold.link.value
    text = kept.read_text()
    assert "for A. Client" in text and text.index('value="Quiet"') < text.index('value="Wide"')
    given._marked([{"content": b"GIF"}])
    assert "a PNG of at most" in page.said.value and given.panel.session.words[MARK]
    page.put(change(LAID, {"opening.width": "44 in"}))
    page.session.put_aside("Deep")
    fold.update()
    assert given.chosen.options == (THIS, "Quiet", "Wide", "Deep") and given.chosen.value == "Quiet"


@pytest.mark.parametrize("lost", [False, True])
def test_the_page_lights_the_pictures_of_the_pages(tmp_path, monkeypatch, lost):
    """Each picture that stands on them is asked of the page, of its own design, finer than the
    still; what the page loses is drawn without it, and said.
    """
    monkeypatch.setattr(page_plan, "DOTS", 0.4)
    asked = []

    class Scene(SceneView):
        async def picture(self, width=0, height=0, eye="", hour=""):
            asked.append((self.result.design.surround.face, width, height, eye.stands))
            if lost and len(asked) == 2:
                raise TimeoutError
            return dot("#00ff00", (width, height))

    monkeypatch.setattr(scene_view, "SceneView", Scene)
    page = panel(LAID, folds=("papers",), keep=tmp_path)
    page.session.put_aside("Brick")
    page.put(change(LAID, {"surround.face": "stone"}))
    page.open("papers")
    given = page.folds["papers"].for_client
    given.by_page.value = True

    async def write():
        given._write("for-the-client.pdf")
        await given.lit
        await page.folds["papers"].job.task

    asyncio.run(write())
    assert [face for face, *_ in asked] == ["stone", "brick"] and not given.stage.children
    assert len({stands for *_, stands in asked}) == 1
    (kept,) = tmp_path.glob("*-for-the-client.pdf")
    shown = [
        sheet.images[0].image.convert("RGB").getpixel((3, 3)) for sheet in PdfReader(kept).pages
    ]
    green = [colour[1] > 250 and colour[0] < 5 for colour in shown]
    assert green == [True, not lost] and ("1 of 2" in given.said.value) == lost
