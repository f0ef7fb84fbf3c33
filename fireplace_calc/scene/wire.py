"""What the page is sent of a scene: plain values, and numbers as bytes.

A form goes over once however often it stands: a thing is a form and where its first corner lies.
"""

from __future__ import annotations

from base64 import b64encode
from dataclasses import asdict
from hashlib import blake2b
from typing import TYPE_CHECKING, Any

from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

    from fireplace_calc.base.arrays import Array

COLUMNS = ("key", "name", "stuff", "kind", "part", "item", "smooth", "step", "cut", "away")
"""Of what is packed of things: what stays as long as the same things stand there."""
STEP = 1e-4
"""Outlines are sent in whole steps of a tenth of a millimeter. [m]"""
REACH = 32767
"""Largest whole number that two bytes hold."""
MOST_CORNERS = 65535
"""Of one thing, for its faces count corners in two bytes."""
FEW_CORNERS = 256
"""Of a form whose faces count corners in one byte."""
COARSE = 1e-4
"""What only stands in the room goes over in whole steps, where none is longer than this. [m]"""


def pack_setting(things: Sequence[Thing], held: Collection[str] = ()) -> dict[str, Any]:
    """What stands in the room and does not follow the fireplace.

    Parameters
    ----------
    things : sequence of Thing
    held : collection of str
        Forms that the page already holds, as of ``pack_things``.

    Returns
    -------
    dict
        As of ``pack_things``.
    """
    return pack_things(things, held)


def pack_fireplace(
    things: Sequence[Thing],
    measures: RoomMeasures,
    standpoints: Sequence[Standpoint] = (),
    title: str = "",
    held: Collection[str] = (),
) -> dict[str, Any]:
    """What follows the sliders: masonry and trim, the room's measures, where one can stand.

    Parameters
    ----------
    things : sequence of Thing
    measures : RoomMeasures
    standpoints : sequence of Standpoint
    title : str
        Name of the design, as it is spoken.
    held : collection of str
        Forms that the page already holds, as of ``pack_things``.

    Returns
    -------
    dict
        As of ``pack_things``; with ``room``, ``standpoints`` and ``title``. [m, deg]
    """
    return {
        **pack_things(things, held),
        "room": asdict(measures),
        "standpoints": [
            {
                **asdict(standpoint),
                "stands": _short(standpoint.stands),
                "looks": _short(standpoint.looks),
            }
            for standpoint in standpoints
        ],
        "title": title,
    }


def pack_things(things: Sequence[Thing], held: Collection[str] = ()) -> dict[str, Any]:
    """Things by columns, and every form once.

    Parameters
    ----------
    things : sequence of Thing
        Of at most ``MOST_CORNERS`` corners each.
    held : collection of str
        Names of forms that the page already holds: they are only named.

    Returns
    -------
    dict
        ``key``, ``name``, ``stuff``, ``kind``, ``part``, ``item``, ``smooth``, ``away``, ``step``,
        ``cut``: a list each, an entry a thing. ``form``: the name of its form, by
        content. ``at``: where the form's nought lies, three float32 a thing. [m] ``forms``: names
        of those that are sent, ``sizes``: of each its corners, faces and step [m], ``points``:
        their corners, one form after the other, as float32 [m], or as int16 in steps where the
        step is more than nought. ``faces``: three corners of the form a face, as uint8, or as
        uint16 where it has more than ``FEW_CORNERS``.

    Raises
    ------
    ValueError
        For a thing of too many corners.
    """
    import numpy as np

    forms: dict[str, None] = {}
    sizes: list[tuple[int, int, float]] = []
    points: list[bytes] = []
    faces: list[bytes] = []
    form: list[str] = []
    at: list[Array] = []
    for thing in things:
        if len(thing.points) > MOST_CORNERS:
            raise ValueError(
                f"{thing.key} has {len(thing.points)} corners; at most {MOST_CORNERS} go over."
            )
        foot = thing.points[0] if len(thing.points) else np.zeros(3)
        # Rounded to a hundredth of a millimeter, so that equal forms are found equal wherever they
        # stand.
        own = np.round(thing.points - foot, 5).astype("<f4") + np.float32(0)
        joined = thing.faces.astype("<u1" if len(own) <= FEW_CORNERS else "<u2")
        same = own.tobytes() + joined.tobytes() + thing.kind.encode()
        name = b64encode(blake2b(same, digest_size=6).digest()).decode()
        if name not in forms and name not in held:
            forms[name] = None
            step = _step(float(np.abs(own).max(initial=0.0))) if thing.kind == "setting" else 0.0
            sizes.append((len(own), len(joined), step))
            points.append((np.round(own / step).astype("<i2") if step else own).tobytes())
            faces.append(joined.tobytes())
        form.append(name)
        at.append(foot)
    return {
        **{column: [getattr(thing, column) for thing in things] for column in COLUMNS},
        "form": form,
        "at": np.asarray(at, "<f4").tobytes(),
        "forms": list(forms),
        "sizes": sizes,
        "points": b"".join(points),
        "faces": b"".join(faces),
    }


def _step(reach: float) -> float:
    """Of five digits, so large that two bytes reach the farthest corner; nought where that is too
    coarse. [m]
    """
    step = float(f"{reach / (REACH - 8):.4e}")
    return step if step <= COARSE else 0.0


def bytes_of(size: tuple[int, int, float]) -> tuple[int, int]:
    """How many bytes a form takes.

    Parameters
    ----------
    size : tuple of int, int and float
        One of the ``sizes`` of ``pack_things``.

    Returns
    -------
    int, int
        Of its ``points`` and of its ``faces``.
    """
    corners, faces, step = size
    return corners * (6 if step else 12), faces * (3 if corners <= FEW_CORNERS else 6)


def pack_layouts(layouts: Sequence[FaceLayout], held: Collection[str] = ()) -> dict[str, Any]:
    """How faces are laid: patterns by their content, and where each is laid.

    Parameters
    ----------
    layouts : sequence of FaceLayout
    held : collection of str
        Keys of patterns that the page already holds: they are only named.

    Returns
    -------
    dict
        ``laid``: the key of each layout's pattern; ``origin`` [m], ``along``, ``up``, ``normal``
        and ``things``: a list each, an entry a layout. ``patterns``: by key, each that is not
        held: ``stuff``, ``width``, ``height`` [m], ``repeats``, ``joint`` (color of the joints),
        ``step`` [m], ``counts`` (corners of each outline, uint16) and ``rings`` (two numbers a
        corner, int16, in steps).
    """
    laid, patterns = [], {}
    for layout in layouts:
        pattern = _pattern(layout)
        key = _content(pattern)
        laid.append(key)
        if key not in held:
            patterns[key] = pattern
    return {
        "laid": laid,
        "origin": [_short(layout.origin) for layout in layouts],
        **{way: [getattr(layout, way) for layout in layouts] for way in ("along", "up", "normal")},
        "things": [list(layout.things) for layout in layouts],
        "patterns": patterns,
    }


def _short(point: Sequence[float]) -> list[float]:
    """To a hundredth of a millimeter: more letters say no more. [m]"""
    return [round(float(v), 5) for v in point]


def _pattern(layout: FaceLayout) -> dict[str, Any]:
    import numpy as np

    rings: list[Array] = [np.asarray(ring, float).reshape(-1, 2) for ring in layout.rings]
    corners = np.concatenate(rings) if rings else np.zeros((0, 2))
    step = max(STEP, float(np.abs(corners).max(initial=0.0)) / REACH)
    return {
        "stuff": layout.stuff,
        "width": float(layout.width),
        "height": float(layout.height),
        "repeats": layout.repeats,
        "joint": layout.joint,
        "step": step,
        "counts": np.array([len(ring) for ring in rings], "<u2").tobytes(),
        "rings": np.round(corners / step).astype("<i2").tobytes(),
    }


def _content(pattern: dict[str, Any]) -> str:
    """A name that equal patterns share."""
    digest = blake2b(digest_size=9)
    for name, value in pattern.items():
        digest.update(name.encode())
        digest.update(value if isinstance(value, bytes) else repr(value).encode())
    return digest.hexdigest()
