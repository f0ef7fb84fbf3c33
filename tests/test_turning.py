"""The view that turns: what the page is sent is the parts, and a reader can turn, cut and follow it
in a browser.
"""

import base64
import json
import os

import numpy as np
import pytest
from bench.browser import chromium, page, server
from shapely.geometry import Polygon as Shape
from shapely.ops import unary_union
from test_browser import REQUIRED

from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.geometry.mesh import meshes
from fireplace_calc.panels.picture.turning import Turning, packed

KINDS = {
    "points": "<f4",
    "normals": "<f4",
    "faces": "<u4",
    "owner": "<u2",
    "cap": "u1",
    "edges": "<u4",
    "sharp": "u1",
}
MOST = 400_000
"""What one change may send. [bytes]"""


def unpacked(state):
    got = {name: np.frombuffer(state[name], kind) for name, kind in KINDS.items()}
    return got | {
        name: got[name].reshape(-1, wide)
        for name, wide in (("points", 3), ("normals", 3), ("faces", 3), ("edges", 4))
    }


def volumes(state):
    """Volume inside the faces of each part, by the divergence theorem. [m3]"""
    a, b, c = (state["points"][state["faces"][:, k]].astype(float) for k in range(3))
    return np.bincount(state["owner"], np.einsum("ij,ij->i", a, np.cross(b, c)) / 6)


@pytest.mark.parametrize("away", ["", "left half", "front half"])
def test_the_page_is_sent_the_parts(boathouse, away):
    """Volumes of what was packed, in single precision, are those of the skins."""
    made = build_geometry(boathouse)
    sent = packed(made)
    skins = {skin.name: skin.volume for skin in meshes(made, away)}
    found = volumes(unpacked(sent["states"][away]))
    names = [part["name"] for part in sent["parts"]]
    assert names == [part.name for part in made.parts]
    for name, volume in zip(names, found, strict=False):
        assert volume == pytest.approx(skins.get(name, 0.0), rel=1e-3, abs=1e-5), name
    assert sum(len(value) for state in sent["states"].values() for value in state.values()) < MOST


@pytest.mark.parametrize(
    "told", [{}, {"opening.head": "segmental", "opening.rise": "5 in"}], ids=["straight", "arch"]
)
def test_the_cut_faces_are_the_section(boathouse, told):
    """Area marked as cut is the area of each part's own section on the centre line (shapely
    measures that).
    """
    made = build_geometry(change(boathouse, told))
    sent = packed(made)
    state = unpacked(sent["states"]["left half"])
    a, b, c = (state["points"][state["faces"][:, k]].astype(float) for k in range(3))
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1) / 2
    cut = np.bincount(state["owner"], area * state["cap"], minlength=len(made.parts))
    assert not unpacked(sent["states"][""])["cap"].any()
    for part, found in zip(made.parts, cut, strict=True):
        section = unary_union([Shape(p).buffer(0) for p in part.section()]).area
        assert found == pytest.approx(section, rel=2e-3, abs=1e-5), part.name


def test_put_sends_another_design_and_refuses_a_wrong_word(boathouse):
    view = Turning(boathouse)
    before = view.shown
    view.put(change(boathouse, {"flue.sections": boathouse.flue.sections + 1}))
    assert view.shown["boxes"]["whole"][5] > before["boxes"]["whole"][5]
    assert view.shown["states"][""]["points"] != before["states"][""]["points"]
    view.put(build_geometry(boathouse))
    assert view.shown == before and view.title == boathouse.name
    with pytest.raises(Exception, match="theme"):
        Turning(boathouse, theme="sepia")


INK = """(canvas) => {
  const data = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data, seen = new Set();
  for (let k = 0; k < data.length; k += 4) seen.add(data[k] << 16 | data[k + 1] << 8 | data[k + 2]);
  return seen.size;
}"""
NOTEBOOK = [
    (
        "from fireplace_calc import Design, change\nfrom fireplace_calc.panels.picture.turning"
        " import Turning\nimport ipywidgets as w\nview = Turning(Design())\nwider ="
        " w.Button(description='Another design')\nwider.on_click(lambda _:"
        " view.put(change(Design(), {'opening.width': '60 in', 'name': 'A wide"
        " one'})))\nw.VBox([wider, view])"
    ),
]


def test_a_reader_turns_cuts_and_changes_it(tmp_path):
    """By keyboard in JupyterLab. The picture must not be blank, each act must change it and say so."""
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out (Debian: apt-get install"
            " chromium)"
        )
    root = tmp_path.resolve()
    cells = [
        {
            "cell_type": "code",
            "execution_count": None,
            "id": f"c{k}",
            "metadata": {},
            "outputs": [],
            "source": text,
        }
        for k, text in enumerate(NOTEBOOK)
    ]
    (root / "turn.ipynb").write_text(
        json.dumps(
            {
                "cells": cells,
                "metadata": {
                    "fireplace": {"run_on_open": True},
                    "kernelspec": {
                        "name": "python3",
                        "display_name": "Python 3",
                        "language": "python",
                    },
                },
                "nbformat": 4,
                "nbformat_minor": 5,
            }
        )
    )
    with server("lab", root / "turn.ipynb", root) as address, page() as view:
        failed = []
        view.on("pageerror", lambda error: failed.append(str(error)))
        view.goto(address)
        # not one of the supplied notebooks: it asks
        view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
        canvas = view.locator("canvas.turning-canvas")
        canvas.wait_for(timeout=60_000)
        said = view.locator(".turning-said span").first

        def on_idle(words):
            view.wait_for_function(
                "([words]) => document.querySelector('.turning-said"
                " span').textContent.includes(words)",
                arg=[words],
                timeout=10_000,
            )
            return base64.b64decode(canvas.evaluate("(c) => c.toDataURL()").split(",")[1])

        assert canvas.get_attribute(
            "role"
        ) == "img" and "A plain fireplace" in canvas.get_attribute("aria-label")
        pictures = [on_idle("30° round to the left")]
        assert canvas.evaluate(INK) > 20, "blank"
        canvas.focus()
        canvas.press("ArrowRight")
        pictures.append(on_idle("20° round to the left"))
        assert "20° round to the left" in canvas.get_attribute("aria-label")
        canvas.press("+")
        pictures.append(on_idle("times as large"))
        for letter in "mydd0bx":  # a notebook's own commands, were they let through
            canvas.press(letter)
        assert (
            view.locator(".jp-Notebook .jp-Cell").count() == len(cells) and canvas.is_visible()
        ), "a letter reached the notebook"
        canvas.press("3")
        pictures.append(on_idle("from straight above"))
        cut = view.get_by_role("button", name="Left half", exact=True)
        cut.press("Enter")
        pictures.append(on_idle("left half cut away"))
        assert cut.get_attribute("aria-pressed") == "true"
        view.get_by_role("button", name="Another design", exact=True).press("Enter")
        view.wait_for_function(
            "() => document.querySelector('.turning-canvas').ariaLabel.includes('A wide one')",
            timeout=10_000,
        )
        view.wait_for_timeout(400)
        pictures.append(on_idle("left half cut away"))  # the reader's place is kept
        assert len(set(pictures)) == len(pictures), "an act changed nothing"
        names = view.evaluate(
            "() => [...document.querySelectorAll('.turning button')].map((b) => b.ariaLabel ||"
            " b.textContent)"
        )
        assert len(set(names)) == len(names) and all(names)
        assert said.text_content().startswith("The fireplace") and failed == []
