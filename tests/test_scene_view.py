"""The lit scene as a widget: what is sent, and what is answered; pages are tried in a browser."""

import asyncio
from statistics import median

import pytest

from fireplace_calc import assess
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES
from fireplace_calc.editing.changes import change
from fireplace_calc.panels.folds.folds import InItsRoom
from fireplace_calc.panels.live_panel import Panel
from fireplace_calc.panels.scene import scene_view
from fireplace_calc.panels.scene.scene_view import SceneView
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.scene.shown_masonry import STATES, last_step, masonry

MOST = 16 * 1024
"""What one change may send. [bytes]"""


def sent(view):
    """Messages of a view to its page from here on."""
    told = []
    view.send = lambda content, buffers=None: told.append(content)
    return told


def bytes_of(value):
    """Bytes and letters of a message, roughly as they go over."""
    if isinstance(value, bytes):
        return len(value)
    if isinstance(value, dict):
        return sum(len(key) + bytes_of(held) for key, held in value.items())
    if isinstance(value, (list, tuple)):
        return sum(map(bytes_of, value))
    return len(str(value))


@pytest.fixture
def view(boathouse):
    return SceneView(boathouse)


@pytest.mark.parametrize("state", STATES)
def test_the_page_is_sent_what_is_built(boathouse, state):
    made = SceneView(boathouse, mode=state)
    built = {thing.key for thing in masonry(assess(boathouse), state)}
    assert built <= set(made.columns["key"])


def test_a_change_sends_little_and_the_room_only_once(view, boathouse):
    view.put(change(boathouse, {"opening.width": "40 in"}), moving=True)
    changed, sent = set(), []
    view.observe(lambda event: changed.add(event["name"]))
    for wide in ("40.5 in", "41 in", "41.5 in", "42 in", "42.5 in", "43 in", "43.5 in"):
        changed.clear()
        view.put(change(boathouse, {"opening.width": wide}), moving=True)
        assert "fireplace" in changed and "words" not in changed
        sent.append(sum(bytes_of(getattr(view, name)) for name in changed))
    # Where the laid fire grows by its next step, logs and grate go over too.
    assert median(sent) <= MOST * 3 / 4 and max(sent) <= MOST, sent


def test_what_is_said_of_it_is_the_assessment(view, boathouse):
    assert view.words["title"] == boathouse.name
    assert view.words["short"] == shortfall(view.result).headline
    wide = change(boathouse, {"opening.width": "40 in"})
    view.put(wide)
    assert "3'-4\" wide" in view.words["opening"]
    view.units = MILLIMETRES
    assert "1 016 mm wide" in view.words["opening"]


def test_the_fold_follows_the_design_and_the_readers_units(boathouse):
    panel = Panel(boathouse)
    fold = InItsRoom(panel)
    fold.update()
    scene = fold.scene
    assert fold.widget.children == (scene,) and scene.units == FEET_INCHES
    panel.set_inputs({"opening.width": "40 in"})
    panel.set_units(MILLIMETRES)
    fold.update()
    assert fold.scene is scene and "1 016 mm wide" in scene.words["opening"]
    told = sent(scene)
    scene._heard(scene, {"ask": "about", "key": "lintel"}, [])
    assert told[0]["weight"].endswith("kg")


def test_step_by_step_counts_the_steps_of_the_work(view):
    assert view.steps == last_step(view.result) > 10
    view.mode = "built"
    assert max(view.columns["step"]) == view.steps


def test_whoever_picks_a_part_is_told_of_it(view):
    told = sent(view)
    view._heard(view, {"ask": "about", "key": "firebox lining"}, [])
    (about,) = told
    assert about["tell"] == "about" and about["key"] == "firebox lining"
    view._heard(view, {"ask": "about", "key": "nothing of the kind"}, [])
    assert len(told) == 1


def test_of_a_part_that_is_cut_the_whole_is_told(view):
    told = sent(view)
    view._heard(view, {"ask": "about", "key": "firebox lining"}, [])
    view.mode = "cut"
    view._heard(view, {"ask": "about", "key": "firebox lining"}, [])
    whole, cut = (message for message in told if message.get("tell") == "about")
    assert (cut["size"], cut["weight"]) == (whole["size"], whole["weight"])


def test_a_page_that_opens_later_is_sent_every_layout(view, boathouse):
    view.put(change(boathouse, {"opening.width": "40 in"}))
    named = set(view.layouts["laid"])
    assert set(view.layouts["patterns"]) < named
    view._heard(view, {"ask": "ready"}, [])
    assert set(view.layouts["patterns"]) == named


def test_a_page_that_opens_later_is_sent_every_form(view, boathouse):
    for wide in ("40 in", "41 in"):
        view.put(change(boathouse, {"opening.width": wide}))
    assert set(view.fireplace["forms"]) < set(view.fireplace["form"])
    view._heard(view, {"ask": "ready"}, [])
    assert set(view.fireplace["forms"]) == set(view.fireplace["form"])
    assert set(view.setting["forms"]) == set(view.setting["form"])
    on_page = {*view.setting["key"], *view.columns["key"]}
    assert {t.key for t in (*view.scene.setting, *view.scene.fireplace)} == on_page


def test_a_picture_comes_back_as_the_page_made_it(view):
    told = sent(view)

    async def ask():
        waiting = asyncio.ensure_future(view.picture(640, 400, "Close", "Dusk"))
        await asyncio.sleep(0)
        (asked,) = told
        assert (asked["width"], asked["height"], asked["eye"], asked["hour"]) == (
            *(640, 400),
            *("Close", "Dusk"),
        )
        view._heard(view, {"picture": asked["id"]}, [memoryview(b"PNG")])
        return await waiting

    assert asyncio.run(ask()) == b"PNG"


def test_without_a_page_there_is_no_picture(view, monkeypatch):
    monkeypatch.setattr(scene_view, "PATIENCE", 0.01)
    with pytest.raises(TimeoutError, match="No page shows the scene"):
        asyncio.run(view.picture())


def test_the_room_is_sent_once_and_what_moves_in_it_goes_with_the_fireplace(view, boathouse):
    """All of the room is on the page at any time, and nothing of it twice."""

    def on_page():
        return [*view.setting["key"], *(k for k in view.columns["key"] if k in room)]

    sent_again = []
    assert "wall at the fireplace" not in view.setting["key"]
    room = {t.key for t in view.scene.setting}
    view.observe(lambda event: sent_again.append(event), "setting")
    assert sorted(on_page()) == sorted(room) and "floor" in room
    for number, wide in enumerate(("40 in", "41 in", "43 in", "41 in", "46 in")):
        view.put(change(boathouse, {"opening.width": wide}), moving=True)
        room = {t.key for t in view.scene.setting}
        assert sorted(on_page()) == sorted(room)
        if number:
            assert "wall at the fireplace" in view.columns["key"]
    assert len(sent_again) <= 2
    view.put(change(boathouse, {"hearth.front": "40 in"}), moving=True)
    room = {t.key for t in view.scene.setting}
    assert sorted(on_page()) == sorted(room)
