"""The file that turns: whole in itself, small enough for a mail, each form once, the assessment's own
words; and that the bytes on it are those of the scene.
"""

import json
import re
from base64 import b64decode
from dataclasses import asdict

import numpy as np
import pytest
from test_client_pages import DOT

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import InputError
from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
from fireplace_calc.exports import one_file
from fireplace_calc.exports.one_file import LARGEST, _bytes, room_to_turn
from fireplace_calc.report.for_client.fallen_short import shortfall
from fireplace_calc.report.for_client.handed_over import Names
from fireplace_calc.report.for_client.three_sentences import client_cautions, client_sentences
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.scene.sky import sun_table
from fireplace_calc.scene.still import light_dots
from fireplace_calc.scene.stuffs import stuffs
from fireplace_calc.scene.whole_scene import gather_scene

LAID = load(DATA / "designs" / "boathouse-laid.toml")
SMALL = (60, 40)
OPTIONS = [
    NamedDesign("As it is", assess(LAID)),
    NamedDesign("Wide & <low>", assess(change(LAID, {"opening.width": "52 in"}))),
]


@pytest.fixture(scope="module")
def page():
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(light_dots, "SHADOW", 30)
        return _page()


def _page():
    return room_to_turn(OPTIONS, Names("A & B", "Oak Hearths", DOT), poster=SMALL)


@pytest.fixture(scope="module")
def told(page):
    (text,) = re.findall(r'<script type="application/json" id="told">(.*?)</script>', page, re.S)
    return json.loads(text)


def test_it_asks_nobody_for_anything_and_fits_into_a_mail(page):
    assert len(page.encode()) < LARGEST
    outside = re.sub(r"<script.*?</script>", "", page, flags=re.S)
    assert not re.findall(r'(?:src|href)="(?!data:)', outside) and "<link" not in page
    assert "url(" not in outside and "@import" not in outside
    policy = re.search(r'Content-Security-Policy" content="([^"]*)"', page)[1]
    assert "default-src 'none'" in policy and "http" not in policy and "connect-src" not in policy
    assert page.count("<script") == page.count("</script>") == 2


def test_every_form_stands_once_and_gives_the_solids_back(told):
    """Corners within the hundredth of a millimeter to which they are packed, faces to the last."""
    forms = told["forms"]
    named = {form for one in told["options"] for part in ("setting", "fireplace")
             for form in one["traits"][part]["form"]}  # fmt: skip
    assert named == set(forms)
    for option, one in zip(OPTIONS, told["options"], strict=True):
        packed = one["traits"]["fireplace"]
        things = gather_scene(option.result).fireplace
        assert packed["key"] == [thing.key for thing in things]
        feet = np.frombuffer(b64decode(packed["at"]["$bytes"]), "<f4").reshape(-1, 3)
        for k, thing in enumerate(things):
            form = forms[packed["form"][k]]
            corners, count, step = form["size"]
            points = np.frombuffer(b64decode(form["points"]["$bytes"]), "<i2" if step else "<f4")
            faces = np.frombuffer(
                b64decode(form["faces"]["$bytes"]), "<u1" if corners <= 256 else "<u2"
            ).reshape(-1, 3)
            assert [len(points) / 3, len(faces)] == [corners, count]
            stands = points.reshape(-1, 3) * (step or 1) + feet[k]
            assert np.abs(stands - thing.points).max() < 2e-5
            assert (faces == thing.faces).all()
        assert set(one["layouts"]["laid"]) <= set(told["patterns"])
        assert set(one["about"]) == {thing.key for thing in things}


def test_each_option_has_its_words_and_all_have_the_cautions(page, told):
    from html import escape, unescape

    for option, one in zip(OPTIONS, told["options"], strict=True):
        said, words = unescape(one["words"]), option_words(option.result)
        for line in (*client_sentences(option.result), words.price, words.without, words.headline,
                     words.stands_on, *words.short, words.weight, words.draft):  # fmt: skip
            assert line in said, line
        assert one["poster"].startswith("data:image/jpeg;base64,")
        assert f'value="{escape(one["name"])}"' in page
    assert all(escape(text) in page for text in client_cautions())
    assert "for A &amp; B" in page and "Oak Hearths" in page and "Invented example" in page
    assert "Wide & <low>" not in re.sub(r"<script.*?</script>", "", page, flags=re.S)


def test_what_all_options_share_is_told_once(told):
    """Looks without their sources, which no page shows; a room by day, built to the end."""
    shared = told["shared"]
    looks = {
        name: {key: value for key, value in asdict(stuff).items() if key != "source"}
        for name, stuff in stuffs().items()
    }
    assert shared["looks"] == json.loads(json.dumps(looks, default=_bytes)) and "brick" in str(
        list(looks)
    )
    assert shared["sun"] == json.loads(
        json.dumps(sun_table(OPTIONS[0].result.design), default=_bytes)
    )
    rest = {name: value for name, value in shared.items() if name not in ("looks", "sun")}
    assert rest == {
        "mode": "room",
        "units": "feet-inches",
        "step": -1,
        "steps": 0,
        "bare": True,
        "hour": "Day",
        "hatches": {},
    }
    for option, one in zip(OPTIONS, told["options"], strict=True):
        words = one["traits"]["words"]
        assert one["name"] == words["title"] == option.name
        assert words["opening"] == client_sentences(option.result)[0]
        assert words["short"] == shortfall(option.result).headline


def test_what_cannot_be_shown_is_refused():
    with pytest.raises(ValueError, match="one at least"):
        room_to_turn([])
    with pytest.raises(ValueError, match="each otherwise"):
        room_to_turn([OPTIONS[0], OPTIONS[0]])
    with pytest.raises(InputError, match="Units"):
        room_to_turn(OPTIONS, units="yards")


def test_bytes_go_along_as_letters_and_numbers_of_arrays_as_numbers():
    """*Man* in base 64 is *TWFu* (RFC 4648)."""
    assert _bytes(b"Man") == {"$bytes": "TWFu"}
    for number in (np.float64(2.5), np.int32(7), np.bool_(True)):
        told = _bytes(number)
        assert told == number and type(told) in (float, int, bool)


def test_a_page_built_without_its_export_is_refused(monkeypatch):
    real = one_file.page_source
    monkeypatch.setattr(
        one_file, "page_source",
        lambda *at: "let a = 1;" if at[-1] == "scene.js" else real(*at),
    )  # fmt: skip
    with pytest.raises(
        ValueError, match="^The scene's page gives no default export; build it anew.$"
    ):
        one_file._page(OPTIONS, Names("", "", b""), "feet-inches", "{}")
