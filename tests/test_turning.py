"""The view that turns: what the page is sent is the parts; the browser tests turn it."""

import numpy as np
import pytest
from shapely.geometry import Polygon as Shape
from shapely.ops import unary_union

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
