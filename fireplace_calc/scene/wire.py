"""What the page is sent of a scene: plain values, and numbers as bytes.

A form goes over once however often it stands: a thing is a form and where its first corner lies.
"""

from __future__ import annotations

from dataclasses import asdict
from hashlib import blake2b
from typing import TYPE_CHECKING, Any

from fireplace_calc.scene.records import FaceLayout, RoomMeasures, Standpoint, Thing

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

    from fireplace_calc.base.arrays import Array

STEP = 1e-4
"""Outlines are sent in whole steps of a tenth of a millimeter. [m]"""
REACH = 32767
"""Largest whole number that two bytes hold."""
MOST_CORNERS = 65535
"""Of one thing, for its faces count corners in two bytes."""


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
        "standpoints": [asdict(standpoint) for standpoint in standpoints],
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
        content. ``at``: where the form's nought lies, three numbers a thing. [m] ``forms``: names
        of those that are sent, ``sizes``: corners and faces of each, ``points``: their corners,
        one form after the other, as float32. [m] ``faces``: three corners of the form a face, as
        uint16.

    Raises
    ------
    ValueError
        For a thing of too many corners.
    """
    import numpy as np

    forms: dict[str, None] = {}
    sizes: list[list[int]] = []
    points: list[bytes] = []
    faces: list[bytes] = []
    form: list[str] = []
    at: list[float] = []
    for thing in things:
        if len(thing.points) > MOST_CORNERS:
            raise ValueError(
                f"{thing.key} has {len(thing.points)} corners; at most {MOST_CORNERS} go over."
            )
        foot = thing.points[0] if len(thing.points) else np.zeros(3)
        # Rounded to a hundredth of a millimeter, so that equal forms are found equal wherever they
        # stand.
        own = np.round(thing.points - foot, 5).astype("<f4") + np.float32(0)
        joined = thing.faces.astype("<u2")
        same = own.tobytes() + joined.tobytes()
        name = blake2b(same, digest_size=6).hexdigest()
        if name not in forms and name not in held:
            forms[name] = None
            sizes.append([len(own), len(joined)])
            points.append(own.tobytes())
            faces.append(joined.tobytes())
        form.append(name)
        at.extend(float(v) for v in np.round(foot, 5))
    columns = ("key", "name", "stuff", "kind", "part", "item", "smooth", "step", "cut")
    return {
        **{column: [getattr(thing, column) for thing in things] for column in columns},
        "away": [list(thing.away) for thing in things],
        "form": form,
        "at": at,
        "forms": list(forms),
        "sizes": sizes,
        "points": b"".join(points),
        "faces": b"".join(faces),
    }


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
        ``laid``: of each layout in turn ``pattern`` (a key), ``origin``, ``along``, ``up``,
        ``normal`` [m] and ``things``. ``patterns``: by key, each that is not held: ``stuff``,
        ``width``, ``height`` [m], ``repeats``, ``joint`` (color of the joints), ``step`` [m],
        ``counts`` (corners of each outline, uint16) and ``rings`` (two numbers a corner, int16,
        in steps).
    """
    laid, patterns = [], {}
    for layout in layouts:
        pattern = _pattern(layout)
        key = _content(pattern)
        laid.append(
            {
                "pattern": key,
                "origin": list(layout.origin),
                "along": list(layout.along) if layout.along else None,
                "up": list(layout.up) if layout.up else None,
                "normal": list(layout.normal) if layout.normal else None,
                "things": list(layout.things),
            }
        )
        if key not in held:
            patterns[key] = pattern
    return {"laid": laid, "patterns": patterns}


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
