"""Coats as the page paints them, by the same modules in Node: as many bricks as were laid, each where
it was laid; colors, relief and joints as the stuff says; no seam; the same every time.
"""

import json
import shutil
import subprocess
from dataclasses import asdict
from pathlib import Path

import numpy as np
import pytest
from sampled import sampled
from scipy import ndimage
from shapely.geometry import Polygon

from fireplace_calc import Design, assess, change
from fireplace_calc.base.units import INCH
from fireplace_calc.brickwork.face_bond import lapped
from fireplace_calc.brickwork.seen.coursing_of_face import bonded_units
from fireplace_calc.scene.layouts.all_layouts import face_layouts
from fireplace_calc.scene.stuffs import MORTARS, stuffs

SCRIPT = Path(__file__).with_name("paint_coats.mjs")
NODE = shutil.which("node")
BY_EIGHTS = [list(stuffs())[k::8] for k in range(8)]
pytestmark = pytest.mark.skipif(NODE is None, reason="Node is not installed")


def look(name, **changes):
    return {**asdict(stuffs()[name]), "source": "", **changes}


def painted(folder, jobs):
    """By name: color and relief as (rows, columns, 4), the lowest row first, and a digest."""
    made = subprocess.run(
        [NODE, str(SCRIPT), str(folder)],
        input=json.dumps(jobs),
        capture_output=True,
        text=True,
        check=True,
    )
    found = {}
    for name, (w, h, digest) in json.loads(made.stdout).items():
        planes = [
            np.fromfile(folder / f"{name}.{kind}", np.uint8).reshape(h, w, 4).astype(float)
            for kind in ("colour", "relief")
        ]
        found[name] = (*planes, digest)
    return found


def stacked(joint):
    """Bricks above one another, none over an end. [m]"""
    bond = lapped(2.75 * INCH, 8.5 * INCH, "stack")
    rings = bonded_units(bond, (0.5 * INCH, 0.5 * INCH), 4, 9)
    sizes = {"width": 4 * bond.module, "height": 9 * bond.course, "joint": joint}
    return {"stuff": look("brick"), "rings": rings.tolist(), "dots": 700, **sizes}


@pytest.fixture(scope="module")
def brick(tmp_path_factory):
    tints = {tint: stuffs()[name].tones[0] for tint, name in MORTARS.items()}
    return painted(
        tmp_path_factory.mktemp("brick"), {tint: stacked(color) for tint, color in tints.items()}
    )


def is_unit(relief):
    """Dots of the units: those that are not as rough as the mortar between them."""
    return relief[..., 3] < 0.95 * 255


def test_as_many_bricks_are_painted_as_are_laid_each_in_its_place(brick):
    """Counted as connected patches by scipy, each within 2 mm of its outline's middle and within a
    tenth of its area.
    """
    _, relief, _ = brick["gray"]
    job = stacked("#999999")
    dots = relief.shape[1] / job["width"]
    labels, _ = ndimage.label(is_unit(relief))
    sizes = np.bincount(labels.ravel())[1:]
    shapes = [Polygon(ring) for ring in job["rings"]]
    whole = np.flatnonzero(sizes > shapes[0].area * dots**2 / 2) + 1
    assert len(whole) == len(shapes) == 36
    middles = np.array(ndimage.center_of_mass(labels > 0, labels, whole))[:, ::-1] / dots
    for shape in shapes:
        off = np.hypot(*(middles - (shape.centroid.x, shape.centroid.y)).T)
        assert off.min() < 0.002
        size = sizes[whole[off.argmin()] - 1] / dots**2
        assert size == pytest.approx(shape.area, rel=0.1)


def test_mortar_has_its_tint_and_the_brick_keeps_its_own(brick):
    joints = {}
    for tint, (color, relief, _) in brick.items():
        joints[tint] = color[~is_unit(relief)][:, :3].mean(axis=0)
    light = {tint: value.mean() for tint, value in joints.items()}
    assert light["charcoal"] < light["gray"] - 30 < light["white"] - 50
    assert joints["buff"][0] - joints["buff"][2] > joints["gray"][0] - joints["gray"][2] + 15
    bricks = [color[is_unit(relief)][:, :3].mean() for color, relief, _ in brick.values()]
    assert np.ptp(bricks) < 8


def test_joints_lie_back_and_the_relief_is_a_direction(brick):
    """At the lower edge of a brick the face leans down to the joint, at its upper edge up."""
    _, relief, _ = brick["gray"]
    normal = (relief[..., :3] - 128) / 127
    assert np.linalg.norm(normal, axis=-1) == pytest.approx(1, abs=0.02)
    unit = is_unit(relief)
    top = unit & ~np.roll(unit, -2, axis=0)
    foot = unit & ~np.roll(unit, 2, axis=0)
    assert normal[top][:, 1].mean() > 0.15 and normal[foot][:, 1].mean() < -0.15
    assert abs(normal[..., :2].mean()) < 0.02


def test_no_two_bricks_are_alike(brick):
    color, _, _ = brick["gray"]
    job = stacked("")
    dots = color.shape[1] / job["width"]
    cuts = []
    for ring in job["rings"]:
        x, y = (np.array(ring[0]) * dots + 12).astype(int)
        cut = color[y : y + 16, x : x + 110, :3].mean(axis=-1)
        fine = cut - ndimage.gaussian_filter(cut, 6)  # a burnt end is no likeness
        cuts.append((fine - fine.mean()).ravel() / fine.std())
    alike = np.array(cuts) @ np.array(cuts).T / len(cuts[0])
    np.fill_diagonal(alike, 0)
    assert alike.max() < 0.4


@pytest.mark.parametrize("names", sampled(BY_EIGHTS, 1), ids=lambda names: names[0])
def test_every_stuff_is_painted_in_its_tones_without_a_seam(tmp_path, names):
    """The mean of a coat is within a fifth of the mean of its tones; across the ends of the patch
    dots differ no more than they do beside each other elsewhere.
    """
    jobs = {name.replace(" ", "_"): {"stuff": look(name, dots=60.0)} for name in names}
    for name, (color, relief, _) in painted(tmp_path, jobs).items():
        stuff = stuffs()[name.replace("_", " ")]
        tones = [[int(tone[k : k + 2], 16) for k in (1, 3, 5)] for tone in stuff.tones]
        first = np.array(tones if stuff.painter != "pile" else tones[:1], float)
        seen = color[..., :3].mean(axis=(0, 1))
        low, high = first.min(axis=0) * 0.7 - 8, first.max(axis=0) * 1.15 + 8
        assert (low < seen).all() and (seen < high).all(), name
        assert (color[..., 3] == 255).all()
        rough = relief[..., 3].mean() / 255
        assert rough == pytest.approx(stuff.rough, abs=0.1), name
        if stuff.painter in ("slab", "cast", "board", "wood", "endgrain"):
            continue  # a single unit ends at the ends
        for axis in (0, 1):
            step = np.abs(np.diff(color[..., :3], axis=axis)).mean()
            seam = np.abs(np.take(color, 0, axis) - np.take(color, -1, axis))[..., :3].mean()
            assert seam < 2.5 * step + 4, (name, axis)


def test_a_coat_is_the_same_every_time(tmp_path):
    jobs = {"one": stacked("#999999"), "two": stacked("#999999")}
    made = painted(tmp_path, jobs)
    assert made["one"][2] == made["two"][2]


def test_a_face_of_stone_has_as_many_stones_as_its_layout(tmp_path):
    result = assess(change(Design(), {"surround.face": "stone"}))
    laid = next(one for one in face_layouts(result) if one.stuff == "stone face" and not one.normal)
    job = {
        "stuff": look("stone face"),
        "width": laid.width,
        "height": laid.height,
        "rings": [ring.tolist() for ring in laid.rings],
        "joint": laid.joint,
        "repeats": laid.repeats,
        "dots": 500,
    }
    _, relief, _ = painted(tmp_path, {"stone": job})["stone"]
    labels, many = ndimage.label(relief[..., 3] < 0.955 * 255)
    dots = relief.shape[1] / laid.width
    whole = (np.bincount(labels.ravel())[1:] > 0.004 * dots**2).sum()
    inside = [
        ring
        for ring in laid.rings
        if Polygon(ring)
        .intersection(
            Polygon([(0, 0), (laid.width, 0), (laid.width, laid.height), (0, laid.height)])
        )
        .area
        > 0.004
    ]
    assert whole == pytest.approx(len(inside), abs=0.03 * len(inside)) and many > 100
